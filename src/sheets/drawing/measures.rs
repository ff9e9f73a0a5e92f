//! The measures of a plot's sides, each on a line of its own outside the plot, with a tick at both ends.

use super::layers::Layers;
use super::obstacles::sides;
use super::room::words_box;
use super::view::View;
use crate::geometry::{Bounds, Point, polygon};
use crate::layout::{Layout, Plot};
use crate::quantity::{Area, Length, Units};
use crate::sheets::mark::{Anchor, Dash, Face, Ink, Mark, Pen, Words};
use crate::sheets::type_metrics;

/// Outlines with more corners than this are walked ones: only their whole extent is measured.
const MOST_SIDES: usize = 16;
/// From the outline to its line of measure, in points, on paper.
const AWAY: f32 = 20.0;
/// From the outline to words that stand beside it without a line, in points, on paper.
const CLOSE: f32 = 7.5;
/// How far measures reach past the outline in points, on paper: what a page has to keep free round a drawing.
pub const REACH: f64 = 28.0;

/// Draws the measures of a plot.
pub(super) fn measure_plot(layout: &Layout, plot: &Plot, view: &View, layers: &mut Layers) {
    let Some(bounds) = Bounds::of(&plot.outline) else {
        return;
    };
    let around = Around::of(layout);
    if plot.outline.len() > MOST_SIDES {
        let [south_west, south_east, _, north_west] = bounds.corners();
        for (from, to) in [(south_west, south_east), (north_west, south_west)] {
            on_a_line(from, to, layout.units, &around, view, layers);
        }
        return;
    }
    let clockwise = polygon::signed_area(&plot.outline) < Area::ZERO;
    // Every side is taken anticlockwise, so that the outside lies on its right hand.
    let anticlockwise = |(a, b)| if clockwise { (b, a) } else { (a, b) };
    let all: Vec<(Point, Point)> = sides(&plot.outline).map(anticlockwise).collect();
    let crowded: Vec<(Point, Point)> = all
        .iter()
        .copied()
        .filter(|&side| !(all.len() == 4 && is_told_opposite(side, &all)))
        .filter(|&(a, b)| !on_a_line(a, b, layout.units, &around, view, layers))
        .collect();
    for (a, b) in crowded {
        beside_the_side(a, b, layout.units, view, layers);
    }
}

/// Whether the opposite side of a plot with four corners has the same length and tells it better: the lower and
/// the left one do.
fn is_told_opposite(side: (Point, Point), all: &[(Point, Point)]) -> bool {
    let step = |(a, b): (Point, Point)| (b.x - a.x, b.y - a.y);
    let (x, y) = step(side);
    let same = Length::TOLERANCE.to_metres() * 10.0;
    let opposite = all.iter().any(|&other| {
        let (other_x, other_y) = step(other);
        (x + other_x).abs() < same && (y + other_y).abs() < same
    });
    // Anticlockwise, the lower side runs east and the left one south.
    let tells = if x.abs() >= y.abs() { x > 0.0 } else { y < 0.0 };
    opposite && !tells
}

/// Everything that a line of measure must not run across.
struct Around {
    rings: Vec<Vec<Point>>,
}

impl Around {
    fn of(layout: &Layout) -> Self {
        let plots = layout.plots.iter().map(|plot| plot.outline.clone());
        let obstacles = layout
            .plots
            .iter()
            .flat_map(|plot| &plot.obstacles)
            .map(|obstacle| obstacle.shape.ring());
        Self {
            rings: plots.chain(obstacles).collect(),
        }
    }

    fn is_free(&self, at: Point) -> bool {
        !self.rings.iter().any(|ring| polygon::is_inside([ring], at))
    }
}

/// One side and how its measure is set.
struct Side {
    from: Point,
    to: Point,
    /// Unit step along the side.
    along: (f64, f64),
    /// Length in points.
    points: f64,
    text: String,
    text_width: f64,
    size: f32,
    /// Turn of the words in degrees, so that they read from the left or from below.
    turn: f64,
}

impl Side {
    fn of(from: Point, to: Point, units: Units, view: &View) -> Option<Self> {
        let length = from.distance(to);
        let metres = length.to_metres();
        if !metres.is_finite() || metres <= 0.0 {
            return None;
        }
        let along = ((to.x - from.x) / metres, (to.y - from.y) / metres);
        let text = length.show(units);
        let size = view.letters(8.5);
        let degrees = along.1.atan2(along.0).to_degrees();
        let turn = if degrees > 90.0 + 1e-9 {
            degrees - 180.0
        } else if degrees <= -90.0 + 1e-9 {
            degrees + 180.0
        } else {
            degrees
        };
        Some(Self {
            from,
            to,
            along,
            points: metres * view.points_per_metre,
            text_width: type_metrics::width(&text, size, false),
            text,
            size,
            turn,
        })
    }

    /// The place a part `t` along the side and so many points to its right.
    fn place(&self, t: f64, right: f64, view: &View) -> Point {
        let at = self.from.towards(self.to, t);
        let right = view.metres(right);
        Point::metres(at.x + self.along.1 * right, at.y - self.along.0 * right)
    }

    fn words(&self, at: Point, plate: Option<Ink>) -> Mark {
        Mark::Words(Words {
            at,
            text: self.text.clone(),
            anchor: Anchor::Middle,
            face: Face {
                size: self.size,
                bold: false,
                ink: Ink::Strong,
            },
            turn: self.turn as f32,
            plate,
        })
    }
}

/// Sets the measure on a line of its own; `false` where the side is too short for it or something is in the way.
fn on_a_line(from: Point, to: Point, units: Units, around: &Around, view: &View, layers: &mut Layers) -> bool {
    let Some(side) = Side::of(from, to, units, view) else {
        return true;
    };
    if !Bounds::of([from, to])
        .is_some_and(|bounds| bounds.overlaps(view.cutting()) || bounds.width().min(bounds.height()) == 0.0)
        || side.points < side.text_width + 24.0
    {
        return false;
    }
    let away = f64::from(view.letters(AWAY));
    // Looks every few points along the line for ground that is not free, a little to both sides of it too.
    let looks = (side.points / 6.0).clamp(6.0, 80.0) as u32;
    let is_free = (0..=looks).all(|k| {
        let t = f64::from(k) / f64::from(looks);
        [away - 12.0, away, away + 6.0].into_iter().all(|right| {
            let at = side.place(t, right, view);
            around.is_free(at)
                && layers
                    .room
                    .is_free(Bounds::about(at, view.metres(2.0), view.metres(2.0)))
        })
    });
    let middle = side.place(0.5, away, view);
    let words = words_box(view, middle, &side.text, side.size, false, side.turn, 2.0);
    if !is_free || !layers.room.is_free(words) {
        return false;
    }
    for k in 0..=looks {
        let at = side.place(f64::from(k) / f64::from(looks), away, view);
        layers.room.take(Bounds::about(at, view.metres(4.0), view.metres(4.0)));
    }
    layers.room.take(words);
    let gap = (side.text_width / 2.0 + 5.0) / side.points;
    let ends = [0.0, 0.5 - gap, 0.5 + gap, 1.0].map(|t| side.place(t, away, view));
    let tick = |at: Point| {
        let reach = view.metres(3.0);
        let (x, y) = (side.along.0 - side.along.1, side.along.1 + side.along.0);
        let part = reach / std::f64::consts::SQRT_2;
        [
            Point::metres(at.x - x * part, at.y - y * part),
            Point::metres(at.x + x * part, at.y + y * part),
        ]
    };
    let [start, before, after, end] = ends;
    let cutting = view.cutting();
    let cut = |strokes: Vec<[Point; 2]>| -> Vec<[Point; 2]> {
        let inside = strokes.into_iter();
        inside
            .filter_map(|[a, b]| {
                cutting
                    .cut(a, b)
                    .map(|(from, to)| [a.towards(b, from), a.towards(b, to)])
            })
            .collect()
    };
    let lines = cut(vec![[start, before], [after, end]]);
    let ticks = cut(vec![tick(start), tick(end)]);
    for (strokes, width, ink) in [(lines, 0.5, Ink::Soft), (ticks, 1.0, Ink::Strong)] {
        if !strokes.is_empty() {
            let dash = Dash::Solid;
            let pen = Pen { width, ink, dash };
            layers.measures.push(Mark::Strokes { strokes, pen });
        }
    }
    if view.cutting().contains(middle) {
        layers.words.push(side.words(middle, None));
    }
    true
}

/// Sets the measure close beside its side, outside if it can be, else inside.
fn beside_the_side(from: Point, to: Point, units: Units, view: &View, layers: &mut Layers) {
    let Some(side) = Side::of(from, to, units, view) else {
        return;
    };
    if side.points < side.text_width + 2.0 {
        return;
    }
    let close = f64::from(view.letters(CLOSE));
    for right in [close, -close] {
        for t in [0.5, 0.35, 0.65, 0.2, 0.8] {
            if (t * side.points).min((1.0 - t) * side.points) < side.text_width / 2.0 {
                continue;
            }
            let at = side.place(t, right, view);
            let words = words_box(view, at, &side.text, side.size, false, side.turn, 1.0);
            if view.visible.overlaps(words) && layers.room.claim(words) {
                let plate = (right < 0.0).then_some(Ink::Paper);
                layers.words.push(side.words(at, plate));
                return;
            }
        }
    }
}
