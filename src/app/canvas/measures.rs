//! The lengths of sides as things that can be clicked and typed over.
//!
//! The drawing sets the measures of plots itself; where it has set one, that is what is clicked. A side of something
//! chosen whose measure the drawing left out is given a small one of its own.

use egui::{
    Align2, CornerRadius, FontId, Id, Key, Modifiers, Pos2, Rect, Role, Sense, Stroke, StrokeKind, TextEdit, Ui,
    WidgetInfo, pos2, vec2,
};

use super::outline::{Outline, outward, sides};
use super::paint::Placed;
use super::pointer_words::{self, PointerWords, theme_of};
use super::viewport::Viewport;
use crate::app::command::Command;
use crate::app::desk::Desk;
use crate::app::step::Step;
use crate::app::theme;
use crate::geometry::Point;
use crate::layout::{BedGround, Item, Layout, OutlineChange};
use crate::quantity::{Bearing, Length};

/// Outlines of more sides than this are walked ones, whose sides nobody types.
const MOST_SIDES: usize = 40;
/// More measures than this on one sheet would crowd out everything else.
const MOST_MEASURES: usize = 160;
/// From a side to its measure, in points, where the drawing has none.
const AWAY: f32 = 13.0;
/// The drawing sets its measures no farther than this from their side, in points.
const FARTHEST: f32 = 46.0;

/// One side and the words of its length.
#[derive(Clone, Debug)]
struct Measure {
    outline: Outline,
    side: usize,
    /// The length as it is typed and read.
    shown: String,
    /// "North side of Lower plot, 62 ft".
    name: String,
    /// Where the words are.
    rect: Rect,
    /// Whether the drawing has set them.
    drawn: bool,
}

/// The length that is being typed.
#[derive(Clone, Debug)]
struct Typing {
    outline: Outline,
    side: usize,
    text: String,
    wrong: Option<String>,
    /// Whether the field still has to be given the keyboard.
    is_new: bool,
}

/// The measures on the sheet, and the one that is being typed over.
#[derive(Clone, Debug, Default)]
pub(super) struct Measures {
    typing: Option<Typing>,
}

impl Measures {
    /// Whether a length is being typed.
    pub(super) const fn is_typing(&self) -> bool {
        self.typing.is_some()
    }

    /// Stops typing without changing anything.
    pub(super) fn close(&mut self) {
        self.typing = None;
    }

    /// Shows the measures and reads what is typed over them.
    pub(super) fn show(
        &mut self,
        ui: &mut Ui,
        desk: &Desk,
        viewport: &Viewport,
        words: &[Placed],
        out: &mut Vec<Command>,
    ) {
        let measures = find(desk, viewport, words);
        for (index, measure) in measures.iter().enumerate() {
            let is_typed = self.typing.as_ref().is_some_and(|typing| typing.is_of(measure));
            if is_typed {
                let following = measures.get((index + 1) % measures.len());
                self.field(ui, desk, measure, following, viewport, out);
            } else {
                self.plate(ui, measure);
            }
        }
        // What is typed over has gone out of sight.
        if self
            .typing
            .as_ref()
            .is_some_and(|typing| !measures.iter().any(|measure| typing.is_of(measure)))
        {
            self.typing = None;
        }
    }

    /// Words that can be clicked.
    fn plate(&mut self, ui: &Ui, measure: &Measure) {
        let response = ui.interact(measure.rect.expand(3.0), id_of(ui, measure), Sense::click());
        response.widget_info(|| WidgetInfo::labeled(Role::Button, true, measure.name.clone()));
        let colours = theme::colours(theme_of(ui));
        let lit = response.hovered() || response.has_focus();
        let painter = ui.painter();
        if lit || !measure.drawn {
            let (fill, edge) = if lit {
                (colours.accent_tint, colours.accent)
            } else {
                (colours.paper, colours.line)
            };
            painter.rect(
                measure.rect.expand2(vec2(5.0, 2.0)),
                CornerRadius::same(4),
                fill,
                Stroke::new(1.0, edge),
                StrokeKind::Inside,
            );
            painter.text(
                measure.rect.center(),
                Align2::CENTER_CENTER,
                &measure.shown,
                FontId::proportional(12.0),
                colours.strong,
            );
        }
        if response.hovered() {
            ui.set_cursor_icon(egui::CursorIcon::Text);
        }
        if response.clicked() {
            self.typing = Some(Typing::of(measure));
        }
    }

    /// The field over the words.
    fn field(
        &mut self,
        ui: &mut Ui,
        desk: &Desk,
        measure: &Measure,
        following: Option<&Measure>,
        viewport: &Viewport,
        out: &mut Vec<Command>,
    ) {
        let Some(typing) = &mut self.typing else { return };
        let sheet = viewport.screen();
        let size = vec2(96.0, 26.0);
        let middle = pos2(
            measure.rect.center().x.clamp(
                sheet.left() + size.x / 2.0 + 4.0,
                (sheet.right() - size.x / 2.0 - 4.0).max(sheet.left() + size.x / 2.0 + 4.0),
            ),
            measure.rect.center().y.clamp(
                sheet.top() + size.y / 2.0 + 4.0,
                (sheet.bottom() - size.y / 2.0 - 4.0).max(sheet.top() + size.y / 2.0 + 4.0),
            ),
        );
        let rect = Rect::from_center_size(middle, size);
        let id = id_of(ui, measure).with("field");
        // Tab goes on to the next side, and must not leave the field by itself.
        let focused = ui.memory(|memory| memory.has_focus(id));
        let tab = focused && ui.input_mut(|input| input.consume_key(Modifiers::NONE, Key::Tab));
        let response = ui.put(
            rect,
            TextEdit::singleline(&mut typing.text)
                .id(id)
                .desired_width(size.x)
                .align(Align2::CENTER_CENTER),
        );
        response.widget_info(|| WidgetInfo::labeled(Role::TextInput, true, measure.name.clone()));
        if typing.is_new {
            response.request_focus();
            select_all(ui, id, &typing.text);
            typing.is_new = false;
            return;
        }
        if response.changed() {
            typing.wrong = None;
        }
        if let Some(sentence) = &typing.wrong {
            pointer_words::show_at(
                ui,
                &PointerWords::wrong(sentence.clone()),
                rect.left_bottom() - vec2(18.0, 12.0),
                sheet,
            );
        }
        if ui.input(|input| input.key_pressed(Key::Escape)) {
            self.typing = None;
            return;
        }
        if !(response.lost_focus() || tab) {
            return;
        }
        let (text, shown) = (typing.text.trim().to_owned(), measure.shown.trim());
        let done = if text == shown {
            Ok(())
        } else {
            set_length(desk, measure, &text).map(|edit| out.push(Command::Edit(edit)))
        };
        match done {
            Ok(()) => self.typing = following.filter(|_| tab).map(Typing::of),
            Err(sentence) => {
                typing.wrong = Some(sentence);
                // Left by Enter or Tab, the field stays for another try; left by a click elsewhere, it stays open too.
                response.request_focus();
            }
        }
    }
}

impl Typing {
    fn of(measure: &Measure) -> Self {
        Self {
            outline: measure.outline,
            side: measure.side,
            text: measure.shown.clone(),
            wrong: None,
            is_new: true,
        }
    }

    fn is_of(&self, measure: &Measure) -> bool {
        self.outline == measure.outline && self.side == measure.side
    }
}

fn id_of(ui: &Ui, measure: &Measure) -> Id {
    ui.scope_id().with(("length of side", measure.outline, measure.side))
}

fn select_all(ui: &Ui, id: Id, text: &str) {
    let mut state = egui::text_edit::TextEditState::load(ui, id).unwrap_or_default();
    let all = egui::text::CCursorRange::two(
        egui::text::CCursor::new(0),
        egui::text::CCursor::new(text.chars().count()),
    );
    state.cursor.set_char_range(Some(all));
    state.store(ui, id);
}

/// The edit that gives a side the length typed, tried on the layout first so that the reason stands at the field.
fn set_length(desk: &Desk, measure: &Measure, text: &str) -> Result<crate::layout::Edit, String> {
    let layout = desk.settled();
    let length = Length::parse(text, layout.units).map_err(|error| error.to_string())?;
    if length <= Length::TOLERANCE {
        return Err("A side must be longer than nothing".to_owned());
    }
    let edit = measure.outline.changed(OutlineChange::SetSideLength {
        side: measure.side,
        length,
    });
    layout
        .apply(&edit)
        .map_err(|error| format!("{error} {}", error.hint()))?;
    Ok(edit)
}

/// Every side whose length can be typed now, with where its words are.
fn find(desk: &Desk, viewport: &Viewport, words: &[Placed]) -> Vec<Measure> {
    let layout = desk.layout();
    if desk.is_previewing() {
        return Vec::new();
    }
    let chosen = desk.chosen.and_then(|chosen| Outline::of(chosen, layout));
    let mut measures = Vec::new();
    let mut taken: Vec<Rect> = Vec::new();
    for outline in outlines(desk) {
        let Some(ring) = outline.ring(layout).filter(|ring| ring.len() <= MOST_SIDES) else {
            continue;
        };
        for (side, from, to) in sides(ring) {
            if measures.len() >= MOST_MEASURES {
                return measures;
            }
            let length = from.distance(to);
            if length <= Length::TOLERANCE {
                continue;
            }
            let (a, b) = (viewport.to_screen(from), viewport.to_screen(to));
            let drawn = matches!(outline, Outline::Plot(_))
                .then(|| set_already(a, b, length, layout, words, &taken))
                .flatten();
            let shown = length.show(layout.units);
            let own = || {
                (chosen == Some(outline))
                    .then(|| beside(ring, side, a, b, &shown, viewport))
                    .flatten()
            };
            let Some((rect, drawn)) = drawn
                .map(|rect| (rect, true))
                .or_else(|| own().map(|rect| (rect, false)))
            else {
                continue;
            };
            if !drawn && taken.iter().any(|other| other.intersects(rect)) {
                continue;
            }
            taken.push(rect);
            let name = format!("{} side of {}, {shown}", facing(ring, side), outline.name(layout));
            measures.push(Measure {
                outline,
                side,
                shown,
                name,
                rect,
                drawn,
            });
        }
    }
    measures
}

/// The outlines whose sides show their lengths: every plot while ground is drawn, and what is chosen.
fn outlines(desk: &Desk) -> Vec<Outline> {
    let layout = desk.layout();
    let mut outlines: Vec<Outline> = Vec::new();
    if desk.step == Step::Ground {
        outlines.extend(layout.plots.iter().map(|plot| Outline::Plot(plot.id)));
    }
    let chosen = desk.chosen.and_then(|chosen| Outline::of(chosen, layout));
    // The rows of a bed that fills its plot end at the plot's sides.
    let of_bed = desk
        .chosen
        .and_then(Item::bed)
        .and_then(|bed| layout.bed(bed))
        .map(|bed| match bed.ground {
            BedGround::WholePlot => Outline::Plot(bed.plot),
            BedGround::Corners(_) => Outline::Bed(bed.id),
        });
    for outline in chosen.into_iter().chain(of_bed) {
        if !outlines.contains(&outline) {
            outlines.push(outline);
        }
    }
    outlines
}

/// Where the drawing has set the measure of a side: words that read as its length, close beside it.
fn set_already(a: Pos2, b: Pos2, length: Length, layout: &Layout, words: &[Placed], taken: &[Rect]) -> Option<Rect> {
    /// The drawing rounds to a tenth of a foot or a centimetre.
    const ROUNDED: f64 = 0.02;
    words
        .iter()
        .filter(|placed| placed.text.starts_with(|sign: char| sign.is_ascii_digit()))
        .filter_map(|placed| {
            let off = off_segment(a, b, placed.rect.center());
            (off <= FARTHEST && !taken.contains(&placed.rect)).then_some((off, placed))
        })
        .filter(|(_, placed)| {
            Length::parse(&placed.text, layout.units).is_ok_and(|read| (read - length).abs().to_metres() <= ROUNDED)
        })
        .min_by(|a, b| a.0.total_cmp(&b.0))
        .map(|(_, placed)| placed.rect)
}

/// How far a place is from the middle third of a side: measures stand about its middle.
fn off_segment(a: Pos2, b: Pos2, at: Pos2) -> f32 {
    let along = b - a;
    let length = along.length_sq();
    if length <= 0.0 {
        return f32::INFINITY;
    }
    let t = ((at - a).dot(along) / length).clamp(0.15, 0.85);
    (a + along * t).distance(at)
}

/// A place for a measure beside the middle of a side, inside the outline, where the drawing's own lines of measure
/// do not run. `None` where the side is too short on the screen or out of sight.
fn beside(ring: &[Point], side: usize, a: Pos2, b: Pos2, shown: &str, viewport: &Viewport) -> Option<Rect> {
    let width = 7.0 * shown.chars().count() as f32;
    if a.distance(b) < width.min(46.0) {
        return None;
    }
    let (east, north) = outward(ring, side)?;
    let inward = vec2(-east as f32, north as f32);
    // Handles lie on the middle of the side.
    let middle = a + (b - a) * 0.5 + inward * (AWAY + width.abs() * 0.5 * inward.x.abs());
    let rect = Rect::from_center_size(middle, vec2(width, 15.0));
    viewport.screen().contains_rect(rect).then_some(rect)
}

/// Which way a side faces, in words: "North", "South-east".
fn facing(ring: &[Point], side: usize) -> &'static str {
    const WORDS: [&str; 8] = [
        "North",
        "North-east",
        "East",
        "South-east",
        "South",
        "South-west",
        "West",
        "North-west",
    ];
    let Some((east, north)) = outward(ring, side) else {
        return "One";
    };
    let degrees = Bearing::degrees(east.atan2(north).to_degrees()).to_degrees();
    let eighth = (degrees / 45.0).round() as usize % WORDS.len();
    WORDS.get(eighth).copied().unwrap_or("One")
}
