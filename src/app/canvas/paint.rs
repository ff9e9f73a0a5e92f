//! From marks of the drawing to shapes of the window. Colours come from the palette; nothing is decided here.

use std::sync::Arc;

use egui::{Color32, FontId, Mesh, Pos2, Rect, Shape, Stroke, Ui, epaint::TextShape, pos2, vec2};

use super::fill;
use super::strokes::{self, Nib};
use super::viewport::Viewport;
use crate::app::theme;
use crate::geometry::Point;
use crate::sheets::{Dash, Hatch, Ink, Mark, Palette, Pen, Words, type_metrics};

/// Words on the screen: where they stand, for clicking on them and for keeping off them.
#[derive(Clone, Debug)]
pub(super) struct Placed {
    /// The words.
    pub(super) text: String,
    /// The upright box round them.
    pub(super) rect: Rect,
}

/// Shapes of a drawing.
#[derive(Clone, Debug, Default)]
pub(super) struct Painted {
    /// In the order in which they lie over each other.
    pub(super) shapes: Vec<Shape>,
    /// Every word on it.
    pub(super) words: Vec<Placed>,
    /// Boxes of paper that lie over the drawing: plates of labels.
    pub(super) plates: Vec<Rect>,
    /// How many of the shapes lie under the first words and plates: what is lit is painted between, so that numbers
    /// and labels stay readable. `None` when there are no words.
    under_words: Option<usize>,
}

impl Painted {
    /// The shapes under the words, and the words with their plates.
    pub(super) fn around_words(&self) -> (&[Shape], &[Shape]) {
        let under = self.under_words.unwrap_or(self.shapes.len());
        self.shapes.split_at_checked(under).unwrap_or((&self.shapes, &[]))
    }
}

/// Paints marks one after the other; those that can be share one mesh.
pub(super) struct Painter<'a> {
    ui: &'a Ui,
    palette: Palette,
    pixel: f32,
    place: &'a dyn Fn(Point) -> Pos2,
    mesh: Mesh,
    painted: Painted,
}

/// The colours of the drawing for the window's theme.
pub(super) fn palette(ui: &Ui) -> Palette {
    if ui.visuals().dark_mode {
        Palette::Dark
    } else {
        Palette::Light
    }
}

/// A colour of the drawing as the window takes it.
pub(super) fn colour(palette: Palette, ink: Ink) -> Color32 {
    let colour = palette.colour(ink);
    Color32::from_rgb(colour.red, colour.green, colour.blue)
}

/// Paints marks in ground metres.
pub(super) fn paint_ground(ui: &Ui, marks: &[Mark], viewport: &Viewport) -> Painted {
    paint(ui, marks, &|at| viewport.to_screen(at))
}

/// Paints marks in points of the screen, y down.
pub(super) fn paint_screen(ui: &Ui, marks: &[Mark]) -> Painted {
    paint(ui, marks, &|at| pos2(at.x as f32, at.y as f32))
}

fn paint(ui: &Ui, marks: &[Mark], place: &dyn Fn(Point) -> Pos2) -> Painted {
    let mut painter = Painter {
        ui,
        palette: palette(ui),
        pixel: 1.0 / ui.pixels_per_point(),
        place,
        mesh: Mesh::default(),
        painted: Painted::default(),
    };
    for mark in marks {
        painter.mark(mark);
    }
    painter.close_mesh();
    painter.painted
}

impl Painter<'_> {
    fn colour(&self, ink: Ink) -> Color32 {
        colour(self.palette, ink)
    }

    fn nib(&self, pen: Pen) -> Nib {
        Nib {
            width: pen.width,
            colour: self.colour(pen.ink),
            pixel: self.pixel,
        }
    }

    fn close_mesh(&mut self) {
        if !self.mesh.is_empty() {
            let mesh = std::mem::take(&mut self.mesh);
            self.painted.shapes.push(Shape::mesh(Arc::new(mesh)));
        }
    }

    /// What comes from here on lies over what is lit.
    fn begin_words(&mut self) {
        if self.painted.under_words.is_none() {
            self.close_mesh();
            self.painted.under_words = Some(self.painted.shapes.len());
        }
    }

    fn push(&mut self, shape: Shape) {
        self.close_mesh();
        self.painted.shapes.push(shape);
    }

    fn mark(&mut self, mark: &Mark) {
        match mark {
            Mark::Line { points, closed, pen } => self.line(points, *closed, *pen),
            Mark::Strokes { strokes, pen } => {
                let strokes: Vec<[Pos2; 2]> = strokes.iter().map(|ends| ends.map(self.place)).collect();
                let nib = self.nib(*pen);
                strokes::dashed(&mut self.mesh, &strokes, pen.dash.pattern(), nib);
            }
            Mark::Dots { at, radius, ink } => {
                let nib = Nib {
                    width: 0.0,
                    colour: self.colour(*ink),
                    pixel: self.pixel,
                };
                let place = self.place;
                strokes::dots(&mut self.mesh, at.iter().map(|&at| place(at)), *radius, nib);
            }
            Mark::Fill { rings, ink } => self.fill(rings, *ink),
            Mark::Hatch { rings, hatch, pen } => self.hatch(rings, *hatch, *pen),
            Mark::Words(words) => self.words(words),
        }
    }

    fn line(&mut self, points: &[Point], closed: bool, pen: Pen) {
        let mut points: Vec<Pos2> = points.iter().map(|&at| (self.place)(at)).collect();
        let stroke = Stroke::new(pen.width, self.colour(pen.ink));
        if pen.dash == Dash::Solid {
            self.push(if closed {
                Shape::closed_line(points, stroke)
            } else {
                Shape::line(points, stroke)
            });
            return;
        }
        if let (true, Some(&first)) = (closed, points.first()) {
            points.push(first);
        }
        let nib = self.nib(pen);
        strokes::dashed_line(&mut self.mesh, &points, pen.dash.pattern(), nib);
    }

    fn fill(&mut self, rings: &[Vec<Point>], ink: Ink) {
        let rings: Vec<Vec<Pos2>> = rings
            .iter()
            .map(|ring| ring.iter().map(|&at| (self.place)(at)).collect())
            .collect();
        if let ([ring], Ink::Paper) = (rings.as_slice(), ink)
            && ring.len() == 4
        {
            self.begin_words();
            self.painted.plates.push(Rect::from_points(ring));
        }
        let colour = self.colour(ink);
        fill::fill(&mut self.mesh, &rings, colour);
        // The mesh has hard edges: small shapes that stand alone, such as the head of an arrow, get a soft one.
        if let [ring] = rings.as_slice()
            && ink == Ink::Strong
        {
            self.push(Shape::closed_line(ring.clone(), Stroke::new(0.6, colour)));
        }
    }

    fn hatch(&mut self, rings: &[Vec<Point>], hatch: Hatch, pen: Pen) {
        let place = |at: &Point| {
            let at = (self.place)(*at);
            Point::metres(f64::from(at.x), f64::from(at.y))
        };
        let rings: Vec<Vec<Point>> = rings.iter().map(|ring| ring.iter().map(place).collect()).collect();
        let screen = |at: Point| pos2(at.x as f32, at.y as f32);
        let strokes: Vec<[Pos2; 2]> = hatch.strokes(&rings).into_iter().map(|ends| ends.map(screen)).collect();
        let nib = self.nib(pen);
        strokes::dashed(&mut self.mesh, &strokes, pen.dash.pattern(), nib);
    }

    fn words(&mut self, words: &Words) {
        let at = (self.place)(words.at);
        let colour = self.colour(words.face.ink);
        let Some(shape) = text_shape(self.ui, words, at, colour) else {
            return;
        };
        let rect = shape.visual_bounding_rect();
        self.begin_words();
        if let Some(ink) = words.plate {
            let plate = self.colour(ink);
            let box_of_words = Rect::from_min_size(Pos2::ZERO, shape.galley.size()).expand2(vec2(2.0, -1.0));
            let rotation = egui::emath::Rot2::from_angle(shape.angle);
            let corner = |corner: Pos2| shape.pos + rotation * corner.to_vec2();
            let ring = [
                box_of_words.left_top(),
                box_of_words.right_top(),
                box_of_words.right_bottom(),
                box_of_words.left_bottom(),
            ];
            fill::fill(&mut self.mesh, &[ring.map(corner).to_vec()], plate);
        }
        self.painted.words.push(Placed {
            text: words.text.clone(),
            rect,
        });
        self.push(shape.into());
    }
}

/// Words set with a part of them at a place; `turn` is degrees anticlockwise. `None` where there is nothing to set.
fn text_shape(ui: &Ui, words: &Words, at: Pos2, colour: Color32) -> Option<TextShape> {
    let face = words.face;
    if !at.is_finite() || words.text.is_empty() {
        return None;
    }
    let font = if face.bold {
        theme::bold(face.size)
    } else {
        FontId::proportional(face.size)
    };
    // Signs that the font lacks are told the same way on the screen and on paper.
    let galley = ui.fonts_mut(|fonts| fonts.layout_no_wrap(type_metrics::printable(&words.text), font, colour));
    let row = galley.rows.first()?;
    let baseline = row.pos.y + row.row.glyphs.first().map_or(0.0, |glyph| glyph.pos.y);
    let (right, down) = type_metrics::from_anchor(words.anchor, f64::from(galley.size().x), face.size);
    let angle = -words.turn.to_radians();
    let from_anchor = vec2(right as f32, down as f32 - baseline);
    let mut pos = at + egui::emath::Rot2::from_angle(angle) * from_anchor;
    if angle == 0.0 {
        // Upright words stand on whole pixels, where they are sharpest.
        let pixels = ui.pixels_per_point();
        pos = pos2((pos.x * pixels).round() / pixels, (pos.y * pixels).round() / pixels);
    }
    let mut shape = TextShape::new(pos, galley, colour);
    shape.angle = angle;
    Some(shape)
}
