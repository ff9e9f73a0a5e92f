//! Keeping clear: the ground within a distance of a boundary.
//!
//! The ground closer than `d` to the boundary of a shape is made up of a rectangle `d` wide along every side and
//! a slice of a disc of radius `d` at every corner that bends away. These are handed to the booleans as they are,
//! so whatever overlaps, closes up or falls apart comes out right without a special case.

use super::piece::Ground;
use super::point::Point;
use crate::quantity::Length;

/// How far a drawn arc may stray from the true one: a twentieth of a millimetre. Half of what counts as the same
/// length; a quarter of it would double the corners.
const ARC_TOLERANCE: f64 = 5e-5;
/// … or a millionth of the radius where that is more, so that no circle needs more than some two thousand corners.
const ARC_TOLERANCE_OF_RADIUS: f64 = 1e-6;

/// On which side of a shape's boundary the band lies.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Band {
    /// On the shape's own ground, to draw it in.
    Inside,
    /// Round it, to grow it.
    Outside,
}

/// Rings, each counter-clockwise, that together cover the band of the given width along the shapes' boundary.
///
/// Arcs are drawn round the true ones, never inside of them: what is kept clear is never less than asked for, and
/// more by at most [`ARC_TOLERANCE`].
pub(super) fn band(shapes: &[Ground], width: Length, side: Band) -> Vec<Vec<Point>> {
    let mut out = Vec::new();
    for ring in shapes.iter().flat_map(Ground::rings) {
        band_along(ring, width.to_metres(), side, &mut out);
    }
    out
}

fn band_along(ring: &[Point], width: f64, side: Band, out: &mut Vec<Vec<Point>>) {
    let n = ring.len();
    // Ground lies on the left of every side, for outer rings and holes alike.
    let sign = match side {
        Band::Inside => 1.0,
        Band::Outside => -1.0,
    };
    let next = |i: usize| if i + 1 == n { 0 } else { i + 1 };
    let out_of_side: Vec<(f64, f64)> = (0..n)
        .map(|i| {
            let (a, b) = (ring[i], ring[next(i)]);
            let (dx, dy) = (b.x - a.x, b.y - a.y);
            let length = dx.hypot(dy);
            (-dy / length * sign, dx / length * sign)
        })
        .collect();
    let step = |p: Point, (nx, ny): (f64, f64)| Point::metres(p.x + nx * width, p.y + ny * width);
    for i in 0..n {
        let (a, b) = (ring[i], ring[next(i)]);
        let (first, second) = (out_of_side[i], out_of_side[next(i)]);
        let (a_out, b_out) = (step(a, first), step(b, first));
        out.push(match side {
            Band::Inside => vec![a, b, b_out, a_out],
            Band::Outside => vec![a, a_out, b_out, b],
        });
        // At b the boundary turns; on the outer side of the turn a slice of a disc is missing.
        let turn = (first.0 * second.1 - first.1 * second.0).atan2(first.0 * second.0 + first.1 * second.1);
        if turn * sign < 0.0 {
            let (start, sweep) = if turn < 0.0 { (second, -turn) } else { (first, turn) };
            let (begin, end) = if turn < 0.0 { (second, first) } else { (first, second) };
            let mut slice = vec![b, step(b, begin)];
            arc_round(b, width, start, sweep, &mut slice);
            slice.push(step(b, end));
            out.push(slice);
        }
    }
}

/// The corners of an open polygon drawn round an arc that starts in the direction `start` and sweeps left.
fn arc_round(centre: Point, radius: f64, start: (f64, f64), sweep: f64, out: &mut Vec<Point>) {
    let parts = arc_parts(radius, sweep);
    let part = sweep / parts as f64;
    let reach = radius / (part / 2.0).cos();
    let from = start.1.atan2(start.0);
    for i in 0..parts {
        let (sin, cos) = (from + part * (i as f64 + 0.5)).sin_cos();
        out.push(Point::metres(centre.x + cos * reach, centre.y + sin * reach));
    }
}

/// In how many equal parts an arc is drawn so that the straight sides stray no farther than the tolerance.
fn arc_parts(radius: f64, sweep: f64) -> usize {
    let stray = ARC_TOLERANCE.max(radius * ARC_TOLERANCE_OF_RADIUS);
    // A side round the arc strays by r (1 / cos(part / 2) - 1). Small circles still get corners 45 degrees apart.
    let part = (2.0 * (radius / (radius + stray)).acos()).min(std::f64::consts::FRAC_PI_4);
    (sweep / part).ceil().max(1.0) as usize
}
