//! Lines cut to what is in sight, with dashes that stand still.

use super::view::View;
use crate::geometry::{Bounds, Point};
use crate::sheets::mark::{Dash, Mark, Pen};

/// Draws a line through points with a pen: as one line where it is in sight as a whole, else the parts of it
/// that are.
pub(super) fn stroke(points: &[Point], closed: bool, pen: Pen, view: &View, marks: &mut Vec<Mark>) {
    let sight = view.cutting();
    if points.len() < 2 || !points.iter().all(|point| point.is_finite()) {
        return;
    }
    if points.iter().all(|&point| sight.contains(point)) {
        marks.push(Mark::Line {
            points: points.to_vec(),
            closed,
            pen,
        });
        return;
    }
    let ends = points.iter().zip(points.iter().cycle().skip(1));
    let strokes: Vec<[Point; 2]> = ends
        .take(if closed { points.len() } else { points.len() - 1 })
        .filter_map(|(&a, &b)| in_step(a, b, pen.dash, &sight, view))
        .collect();
    if !strokes.is_empty() {
        marks.push(Mark::Strokes { strokes, pen });
    }
}

/// The part of a stroke in sight, begun at a whole number of dashes from its true start, so that dashes stand
/// still while the sheet is moved under them.
pub(super) fn in_step(a: Point, b: Point, dash: Dash, sight: &Bounds, view: &View) -> Option<[Point; 2]> {
    let (from, to) = sight.cut(a, b)?;
    let whole = a.distance(b).to_metres();
    let period = view.metres(f64::from(dash.period()));
    let from = if period > 0.0 && whole > 0.0 {
        // Never outside of the sight: on to the next whole dash.
        ((from * whole / period).ceil() * period / whole).max(from)
    } else {
        from
    };
    (from < to).then(|| [a.towards(b, from), a.towards(b, to)])
}
