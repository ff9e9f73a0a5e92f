//! The sheet in the window: looking, choosing, drawing.
//!
//! - `viewport`, `navigate`: what part of the ground is seen.
//! - `scene`, `paint`, `strokes`, `fill`, `furniture`: the drawing as shapes, kept while nothing changes.
//! - `hand`, `pick`, `dragging`, `drag_words`, `needle`, `turning`, `overlay`: choosing and changing what is there.
//! - `drawing`, `snap`, `guides`, `around`, `pointer_words`: drawing something new.
//! - `splitting`: parting a bed in two.
//! - `measures`, `side_lengths`: lengths that can be typed; `access`: names for screen readers and the Tab key.

mod access;
mod around;
mod drag_words;
mod dragging;
mod drawing;
mod drawn;
mod fill;
mod furniture;
mod guides;
mod hand;
mod measures;
mod navigate;
mod needle;
mod nudge;
mod outline;
mod overlay;
mod paint;
mod pencil;
mod pick;
mod pointer_words;
mod scene;
mod side_lengths;
mod snap;
mod splitting;
mod strokes;
mod tool;
mod turning;
mod viewport;

pub use tool::{Drawn, SplitWay, Tool};

use egui::{Rect, Role, Sense, Ui, Vec2, WidgetInfo};

use self::dragging::Held;
use self::drawing::Drawing;
use self::hand::{Hand, Seen, Sight};
use self::measures::Measures;
use self::navigate::Navigation;
use self::needle::Needle;
use self::scene::Scene;
use self::splitting::Splitting;
use self::viewport::Viewport;
use super::command::Command;
use super::desk::Desk;
use crate::geometry::Point;
use crate::layout::Item;
use crate::sheets::drawing::extent;

/// The sheet in the window: what part of it is seen, and what the hand is doing.
#[derive(Debug, Default)]
pub struct Canvas {
    tool: Tool,
    viewport: Viewport,
    navigation: Navigation,
    scene: Scene,
    hand: Hand,
    drawing: Drawing,
    splitting: Splitting,
    measures: Measures,
    /// Whether everything that is drawn has been brought into view since it was last asked for.
    fitted: bool,
    /// Whether the keyboard came to the sheet by keys and not by a click: only then it is ringed.
    by_keys: bool,
    /// What this sheet has lit up, so that it puts out only what it has lit.
    lit: Option<Item>,
}

impl Canvas {
    /// Draws the sheet into all the room there is, and reads the hand.
    pub fn show(&mut self, ui: &mut Ui, desk: &Desk, out: &mut Vec<Command>) {
        let table = ui.available_rect_before_wrap();
        let response = ui.allocate_rect(table, Sense::click_and_drag());
        response.widget_info(|| WidgetInfo::labeled(Role::Canvas, true, "Sheet"));
        let sheet = furniture::sheet_on(table);
        self.viewport.show_on(sheet);
        if !self.fitted {
            self.fit_now(desk);
        }
        if response.contains_pointer()
            && ui.input(|input| input.pointer.primary_pressed())
            && response.is_pointer_button_down_on()
        {
            response.request_focus();
            self.by_keys = false;
        }
        if response.gained_focus() {
            self.by_keys = !ui.input(|input| input.pointer.any_down());
        }
        if response.has_focus() {
            access::keep_arrows(ui, response.id);
        }
        self.navigation.read(ui, &response, &mut self.viewport);
        self.scene.refresh(ui, desk, &self.viewport);
        let needle = self.needle(desk);
        let work_begins = out.len();
        let seen = self.work(ui, &response, desk, needle, out);

        furniture::lay_sheet(ui, table, sheet);
        let whole = ui.clip_rect();
        ui.set_clip_rect(whole.intersect(sheet));
        let (under, over) = self.scene.painted.around_words();
        let overlay = overlay::Overlay::new(ui, desk, &self.viewport, &self.scene.notes);
        ui.painter().extend(under.iter().cloned());
        overlay.light_up();
        ui.painter().extend(over.iter().cloned());
        overlay.handles(seen.held);
        if let Some(needle) = needle {
            needle.paint(ui, &self.viewport, seen.needle);
            needle.name(ui, desk, &self.viewport);
        }
        if let Tool::Split(_) = self.tool {
            self.splitting.paint(ui, desk, &self.viewport);
        } else if self.tool != Tool::Choose {
            pencil::paint(ui, &self.drawing, self.tool, desk.layout(), &self.viewport);
        }
        ui.painter().extend(self.scene.furniture.shapes.iter().cloned());
        access::name_things(ui, desk, &self.viewport, out);
        if self.tool == Tool::Choose && !self.hand.is_dragging() {
            let sight = side_lengths::Sight {
                desk,
                viewport: &self.viewport,
                painted: &self.scene.painted,
            };
            self.measures.show(ui, &sight, out);
        }
        if let Some(pointer) = ui.input(|input| input.pointer.latest_pos()) {
            pointer_words::show_at(ui, &seen.words, pointer, sheet);
        }
        ui.set_clip_rect(whole);
        if !self.measures.is_typing() {
            nudge::read(ui, &response, desk, &mut self.viewport, out);
        }
        self.note_light(desk, &response, work_begins, out);
        if response.has_focus() && self.by_keys {
            let stroke = egui::Stroke::new(1.0, ui.visuals().selection.stroke.color.gamma_multiply(0.6));
            ui.painter()
                .rect_stroke(sheet.expand(2.0), 4, stroke, egui::StrokeKind::Outside);
        }
        if out.len() > work_begins {
            // What was asked for shows in the next frame.
            ui.request_repaint();
        }
    }

    /// What the hand is doing.
    pub fn tool(&self) -> Tool {
        self.tool
    }

    /// Takes up a tool.
    pub fn take_up(&mut self, tool: Tool) {
        self.tool = tool;
        self.drawing = Drawing::default();
        self.splitting = Splitting::default();
        self.hand = Hand::default();
        self.measures.close();
    }

    /// Shows everything that is drawn.
    pub fn fit(&mut self) {
        self.fitted = false;
    }

    /// Looks from nearer (above 1) or farther (below 1), about the middle.
    pub fn zoom_by(&mut self, factor: f64) {
        self.viewport.zoom(factor);
    }

    /// Moves the view so that the thing can be seen.
    pub fn bring_into_view(&mut self, desk: &Desk, item: Item) {
        if let Some(bounds) = access::bounds_of(desk, item) {
            self.viewport
                .bring_into_view(bounds, furniture::room_on(self.viewport.screen()));
        }
    }

    /// Points of screen for each metre of ground.
    pub fn points_per_metre(&self) -> f64 {
        self.viewport.points_per_metre()
    }

    /// Where on the screen a place on the ground is.
    pub fn to_screen(&self, at: Point) -> egui::Pos2 {
        self.viewport.to_screen(at)
    }

    /// Which place on the ground is there on the screen.
    pub fn to_ground(&self, at: egui::Pos2) -> Point {
        self.viewport.to_ground(at)
    }

    fn fit_now(&mut self, desk: &Desk) {
        self.fitted = true;
        let sheet: Rect = self.viewport.screen();
        if let Some(extent) = extent(desk.layout()) {
            self.viewport.fit(extent, furniture::room_on(sheet));
        } else {
            self.viewport = Viewport::default();
            self.viewport.show_on(sheet);
        }
    }

    /// The needle of the bed in hand. While it is held it stays where it is, whatever else moves out of the way.
    fn needle(&self, desk: &Desk) -> Option<Needle> {
        if self.tool != Tool::Choose {
            return None;
        }
        if let Hand::Dragging(drag) = &self.hand {
            let Held::Needle(bed, middle) = drag.held else {
                return None;
            };
            return Some(Needle {
                bed,
                middle,
                bearing: desk.layout().bed(bed)?.bearing,
            });
        }
        Needle::of(desk, &self.viewport, &self.scene.painted.plates)
    }

    /// Reads the hand with the tool that it holds.
    fn work(
        &mut self,
        ui: &Ui,
        response: &egui::Response,
        desk: &Desk,
        needle: Option<Needle>,
        out: &mut Vec<Command>,
    ) -> Seen {
        if self.navigation.is_grabbing() {
            return Seen::default();
        }
        if let Tool::Split(_) = self.tool {
            let words = self
                .splitting
                .read(ui, response, &mut self.tool, desk, &self.viewport, out);
            return Seen {
                words,
                ..Seen::default()
            };
        }
        if self.tool != Tool::Choose {
            let words = pencil::read(
                ui,
                response,
                &mut self.tool,
                &mut self.drawing,
                desk,
                &self.viewport,
                out,
            );
            return Seen {
                words,
                ..Seen::default()
            };
        }
        let sight = Sight {
            desk,
            viewport: &self.viewport,
            scene: &self.scene,
            needle,
        };
        let mut pan = Vec2::ZERO;
        let seen = self.hand.read(ui, response, &sight, &mut pan, out);
        if pan != Vec2::ZERO {
            self.viewport.pan(pan);
            self.scene.refresh(ui, desk, &self.viewport);
        }
        seen
    }

    /// Puts out what the pointer has lit once it is elsewhere.
    fn note_light(&mut self, desk: &Desk, response: &egui::Response, since: usize, out: &mut Vec<Command>) {
        let asked = out.iter().skip(since).rev().find_map(|command| match command {
            Command::PointAt(item) => Some(*item),
            _ => None,
        });
        if let Some(item) = asked {
            self.lit = item;
        } else if !response.contains_pointer() && self.lit.is_some() {
            if desk.pointed == self.lit {
                out.push(Command::PointAt(None));
            }
            self.lit = None;
        }
    }
}
