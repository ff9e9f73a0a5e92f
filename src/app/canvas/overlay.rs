//! What is chosen and what is pointed at, over the drawing: lines in the accent colour, and handles.

use egui::{Color32, CornerRadius, Painter, Pos2, Rect, Shape as Painting, Stroke, StrokeKind, Ui, Vec2};

use super::outline::{Outline, sides};
use super::pick::{Grip, MOST_HANDLES, has_new_corner};
use super::pointer_words::theme_of;
use super::strokes::{self, Nib};
use super::viewport::Viewport;
use crate::app::desk::Desk;
use crate::app::theme::{self, Colours};
use crate::geometry::Bounds;
use crate::geometry::Point;
use crate::geometry::polygon::circle_ring;
use crate::layout::{BedId, Item, Shape};

/// How strongly a thing is lit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Light {
    /// The pointer is over it, on the sheet or in the ledger.
    Pointed,
    /// It is chosen.
    Chosen,
}

/// Paints what is chosen and pointed at.
pub(super) struct Overlay<'a> {
    desk: &'a Desk,
    viewport: &'a Viewport,
    notes: &'a [(Item, Rect)],
    painter: Painter,
    colours: Colours,
    pixel: f32,
}

impl<'a> Overlay<'a> {
    /// For one frame; `notes` are the boxes of the words of notes.
    pub(super) fn new(ui: &Ui, desk: &'a Desk, viewport: &'a Viewport, notes: &'a [(Item, Rect)]) -> Self {
        Self {
            desk,
            viewport,
            notes,
            painter: ui.painter_at(viewport.screen()),
            colours: theme::colours(theme_of(ui)),
            pixel: 1.0 / ui.pixels_per_point(),
        }
    }

    /// Lights up what is chosen and what is pointed at.
    pub(super) fn light_up(&self) {
        if let Some(pointed) = self.desk.pointed.filter(|pointed| Some(*pointed) != self.desk.chosen) {
            self.light(pointed, Light::Pointed);
        }
        if let Some(chosen) = self.desk.chosen {
            self.light(chosen, Light::Chosen);
        }
    }

    /// Sets handles on what is chosen: on its corners, smaller ones in the middle of its sides, and on a circle's
    /// edge. `held` is the handle under the pointer or in the hand.
    pub(super) fn handles(&self, held: Option<Grip>) {
        if let Some(chosen) = self.desk.chosen {
            self.handles_on(chosen, held);
        }
    }
}

impl Overlay<'_> {
    fn light(&self, item: Item, light: Light) {
        let layout = self.desk.layout();
        match item {
            Item::Plot(_) | Item::Corner(..) => self.ring_of(item, light),
            Item::Side(plot, side) => {
                self.ring_of(Item::Plot(plot), Light::Pointed);
                let ends = Outline::Plot(plot)
                    .ring(layout)
                    .and_then(|ring| super::outline::ends(ring, side));
                if let Some((from, to)) = ends {
                    self.painter
                        .line_segment([self.at(from), self.at(to)], Stroke::new(4.0, self.colours.accent));
                }
            }
            Item::Bed(bed) | Item::BedCorner(bed, _) | Item::Dressing(bed, _) => self.bed(bed, light),
            Item::Row(bed, number) => {
                if light == Light::Chosen {
                    self.bed(bed, Light::Pointed);
                }
                self.row(bed, number, light);
            }
            Item::Obstacle(plot, obstacle) => {
                let shape = layout
                    .plot(plot)
                    .and_then(|plot| plot.obstacle(obstacle))
                    .map(|obstacle| &obstacle.shape);
                match shape {
                    Some(Shape::Corners(_)) => self.ring_of(item, light),
                    Some(Shape::Circle { centre, radius }) => self.ring(&circle_ring(*centre, *radius), light),
                    None => {}
                }
            }
            Item::Note(_) => {
                if let Some((_, rect)) = self.notes.iter().find(|(note, _)| *note == item) {
                    let stroke = self.stroke(light);
                    self.painter.rect(
                        rect.expand(3.0),
                        CornerRadius::same(4),
                        Color32::TRANSPARENT,
                        stroke,
                        StrokeKind::Outside,
                    );
                }
            }
            Item::Layout | Item::Lot(_) | Item::Shed(_) => {}
        }
    }

    fn at(&self, place: Point) -> Pos2 {
        self.viewport.to_screen(place)
    }

    fn stroke(&self, light: Light) -> Stroke {
        match light {
            Light::Pointed => Stroke::new(1.5, self.colours.accent.gamma_multiply(0.7)),
            Light::Chosen => Stroke::new(2.2, self.colours.accent),
        }
    }

    fn ring_of(&self, item: Item, light: Light) {
        if let Some(ring) = Outline::of(item, self.desk.layout()).and_then(|outline| outline.ring(self.desk.layout())) {
            self.ring(ring, light);
        }
    }

    fn ring(&self, ring: &[Point], light: Light) {
        let points: Vec<Pos2> = ring.iter().map(|place| self.at(*place)).collect();
        // Far outside of the sheet the painter would work for nothing, or lose its precision.
        let sheet = self.viewport.screen().expand(4000.0);
        if points.iter().all(|point| sheet.contains(*point)) {
            self.painter.add(Painting::closed_line(points, self.stroke(light)));
            return;
        }
        let seen = self.seen();
        for (_, from, to) in sides(ring) {
            if let Some((a, b)) = seen.cut(from, to) {
                let ends = [self.at(from.towards(to, a)), self.at(from.towards(to, b))];
                self.painter.line_segment(ends, self.stroke(light));
            }
        }
    }

    fn seen(&self) -> Bounds {
        self.viewport.visible().grown(self.viewport.metres(20.0))
    }

    /// A bed by the outline of its ground, whether it has one of its own or fills its plot.
    fn bed(&self, id: BedId, light: Light) {
        let Some(plan) = self.desk.plan().bed(id) else { return };
        for piece in plan.ground.pieces() {
            self.ring(piece.outer(), light);
        }
        if plan.ground.is_empty() {
            // A bed past its plot has no ground; its own outline shows where it lies.
            self.ring_of(Item::Bed(id), light);
        }
    }

    /// A row by all its pieces: a tint under a line.
    fn row(&self, id: BedId, number: u32, light: Light) {
        /// More pieces than this of one row are not lit one by one.
        const MOST_PIECES: usize = 2_000;
        let Some(plan) = self.desk.plan().bed(id) else { return };
        let Some(row) = plan.row(number) else { return };
        let seen = self.seen();
        let pieces: Vec<[Pos2; 2]> = plan
            .pieces_of(row)
            .iter()
            .filter_map(|piece| {
                let (a, b) = seen.cut(piece.start, piece.end)?;
                Some([
                    self.at(piece.start.towards(piece.end, a)),
                    self.at(piece.start.towards(piece.end, b)),
                ])
            })
            .take(MOST_PIECES)
            .collect();
        let strength = if light == Light::Chosen { 1.0 } else { 0.75 };
        let mut mesh = egui::Mesh::default();
        for (width, colour) in [
            (9.0, self.colours.accent.gamma_multiply(0.28)),
            (2.4, self.colours.accent),
        ] {
            let nib = Nib {
                width,
                colour: colour.gamma_multiply(strength),
                pixel: self.pixel,
            };
            strokes::dashed(&mut mesh, &pieces, &[], nib);
        }
        self.painter.add(Painting::mesh(mesh));
    }

    fn handles_on(&self, chosen: Item, held: Option<Grip>) {
        let layout = self.desk.layout();
        if let Item::Obstacle(plot, obstacle) = chosen
            && let Some(Shape::Circle { centre, radius }) = layout
                .plot(plot)
                .and_then(|plot| plot.obstacle(obstacle))
                .map(|obstacle| &obstacle.shape)
        {
            let lit = matches!(held, Some(Grip::Edge(_)));
            for (east, north) in [(1.0, 0.0), (0.0, 1.0), (-1.0, 0.0), (0.0, -1.0)] {
                self.square(self.at(centre.offset(*radius * east, *radius * north)), 6.0, lit);
            }
            return;
        }
        let Some(outline) = Outline::of(chosen, layout) else {
            return;
        };
        let Some(ring) = outline.ring(layout).filter(|ring| ring.len() <= MOST_HANDLES) else {
            return;
        };
        for (side, from, to) in sides(ring) {
            let (from, to) = (self.at(from), self.at(to));
            let lit = match held {
                Some(Grip::Side(of, index)) => of == outline && index == side,
                _ => false,
            };
            if lit {
                self.painter
                    .line_segment([from, to], Stroke::new(4.0, self.colours.accent));
            }
            if has_new_corner(from, to) {
                let lit = held == Some(Grip::NewCorner(outline, side));
                let middle = from + (to - from) / 2.0;
                let size = if lit { 5.0 } else { 3.5 };
                self.painter
                    .circle(middle, size, self.colours.paper, Stroke::new(1.4, self.colours.accent));
            }
        }
        for (corner, place) in ring.iter().enumerate() {
            let is_chosen = match chosen {
                Item::Corner(_, index) | Item::BedCorner(_, index) => index == corner,
                _ => false,
            };
            let lit = is_chosen || held == Some(Grip::Corner(outline, corner));
            self.square(self.at(*place), if is_chosen { 10.0 } else { 8.0 }, lit);
        }
    }

    fn square(&self, middle: Pos2, size: f32, lit: bool) {
        let rect = Rect::from_center_size(middle, Vec2::splat(if lit { size + 2.0 } else { size }));
        let fill = if lit { self.colours.accent } else { self.colours.paper };
        self.painter.rect(
            rect,
            CornerRadius::same(2),
            fill,
            Stroke::new(1.6, self.colours.accent),
            StrokeKind::Inside,
        );
    }
}
