//! Rings of corners as the drawing tools measure and change them.
//!
//! A ring is a list of corners in order, either way round, not closed. Side `i` runs from corner `i` to the next,
//! the last one back to corner 0. Nothing here judges whether a ring bounds ground: [`super::Region`] does.

use super::contact::nearest_on_side;
use super::point::Point;
use crate::quantity::{Area, Bearing, Length};

/// A drawn circle strays from the true one by no more than this.
const CIRCLE_TOLERANCE: f64 = 1e-3;
/// No drawn circle has more corners than this, enough for a millimetre up to a radius of 3 km.
const MOST_CIRCLE_CORNERS: f64 = 4096.0;

/// The size of the ground a ring goes round: positive when it runs counter-clockwise, negative when clockwise.
pub fn signed_area(ring: &[Point]) -> Area {
    let Some((&origin, rest)) = ring.split_first() else {
        return Area::ZERO;
    };
    // Measured from a corner, so that a small plot far from the origin keeps its digits.
    let twice: f64 = rest
        .windows(2)
        .map(|pair| {
            let (a, b) = (pair[0], pair[1]);
            (a.x - origin.x) * (b.y - origin.y) - (b.x - origin.x) * (a.y - origin.y)
        })
        .sum();
    Area::square_metres(twice / 2.0)
}

/// The length of all sides together.
pub fn perimeter(ring: &[Point]) -> Length {
    (0..ring.len()).filter_map(|i| side_length(ring, i)).sum()
}

/// The length of a side; `None` when the ring has no such side.
pub fn side_length(ring: &[Point], side: usize) -> Option<Length> {
    ends(ring, side).map(|(from, to)| from.distance(to))
}

/// The direction of a side from its first corner to its second; `None` when there is no such side or it has no length.
pub fn side_bearing(ring: &[Point], side: usize) -> Option<Bearing> {
    let (dx, dy) = direction(ring, side)?;
    Some(Bearing::degrees(dx.atan2(dy).to_degrees()))
}

/// The place nearest to `place` on any side, and which side it is on; `None` without corners. The first of several
/// equally near sides.
pub fn nearest_place(ring: &[Point], place: Point) -> Option<(usize, Point)> {
    let mut nearest: Option<(usize, Point)> = None;
    for side in 0..ring.len() {
        let (from, to) = ends(ring, side)?;
        let here = nearest_on_side(from, to, place);
        if nearest.is_none_or(|(_, best)| here.distance(place) < best.distance(place)) {
            nearest = Some((side, here));
        }
    }
    nearest
}

/// The place on the side from `from` to `to` that is nearest to `place`.
pub fn nearest_on(from: Point, to: Point, place: Point) -> Point {
    nearest_on_side(from, to, place)
}

/// The four corners of an upright rectangle from any two opposite ones, counter-clockwise from the south-west.
pub fn rectangle(one: Point, other: Point) -> [Point; 4] {
    let (west, east) = (one.x.min(other.x), one.x.max(other.x));
    let (south, north) = (one.y.min(other.y), one.y.max(other.y));
    [(west, south), (east, south), (east, north), (west, north)].map(|(x, y)| Point::metres(x, y))
}

/// A ring that stands for a circle and encloses exactly its area: corners lie outside the true circle and the middles
/// of sides inside, neither by more than a millimetre (up to a radius of 3 km; beyond, the ring has 4,096 corners).
/// Counter-clockwise from due east.
///
/// A radius that is zero, negative or not a number gives no corners, which [`super::Region`] then refuses as too few.
pub fn circle_ring(centre: Point, radius: Length) -> Vec<Point> {
    let r = radius.to_metres();
    if !r.is_finite() || r <= 0.0 || !centre.is_finite() {
        return Vec::new();
    }
    // A side of a regular ring within the circle strays by r (1 - cos(pi / n)); sharing it out only helps.
    let half = (1.0 - CIRCLE_TOLERANCE / r).max(0.0).acos();
    let n = (std::f64::consts::PI / half).ceil().clamp(12.0, MOST_CIRCLE_CORNERS);
    let part = std::f64::consts::TAU / n;
    // n corners at reach R enclose n R² sin(part) / 2.
    let reach = r * (part / part.sin()).sqrt();
    (0..n as usize)
        .map(|i| {
            let (sin, cos) = (part * i as f64).sin_cos();
            Point::metres(centre.x + reach * cos, centre.y + reach * sin)
        })
        .collect()
}

/// Whether a place lies inside rings: an outline, or an outline with holes in it. A place on a side may be told either
/// way.
pub fn is_inside(rings: impl IntoIterator<Item = impl AsRef<[Point]>>, place: Point) -> bool {
    rings.into_iter().fold(false, |inside, ring| {
        let ring = ring.as_ref();
        let sides = ring.iter().zip(ring.iter().cycle().skip(1));
        sides.fold(inside, |inside, (&from, &to)| inside ^ is_under(from, to, place))
    })
}

/// Whether `place` lies on the east of a side that passes its height. A place is inside a ring when an odd number of
/// sides say so; a place on a side may be told either way.
pub(super) fn is_under(from: Point, to: Point, place: Point) -> bool {
    (from.y > place.y) != (to.y > place.y)
        && place.x < (to.x - from.x) * ((place.y - from.y) / (to.y - from.y)) + from.x
}

fn ends(ring: &[Point], side: usize) -> Option<(Point, Point)> {
    let from = *ring.get(side)?;
    let to = *ring.get(side + 1).or_else(|| ring.first())?;
    Some((from, to))
}

fn direction(ring: &[Point], side: usize) -> Option<(f64, f64)> {
    let (from, to) = ends(ring, side)?;
    let length = from.distance(to).to_metres();
    (length.is_finite() && length > 0.0).then(|| ((to.x - from.x) / length, (to.y - from.y) / length))
}
