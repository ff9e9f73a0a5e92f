//! Unions, differences and intersections of ground. The only file that names the crate behind them.
//!
//! Always on 64-bit whole numbers: the crate's 32-bit engine moves every corner by up to a micrometre, so that
//! neighbouring beds would no longer share their edges exactly.

use i_overlay::core::fill_rule::FillRule;
use i_overlay::core::overlay_rule::OverlayRule;
use i_overlay::float::simplify::SimplifyShape;
use i_overlay::float::single::SingleFloatOverlay;

use super::NO_AREA;
use super::piece::Ground;
use super::point::Point;
use super::polygon::signed_area;

type Ring = Vec<[f64; 2]>;

/// The ground inside one ring whose sides touch: in where an odd number of sides lie between it and far away.
pub(super) fn tidy_even_odd(ring: &[Point]) -> Vec<Ground> {
    ground(vec![plain(ring)].simplify_shape_as::<i64>(FillRule::EvenOdd))
}

/// The ground that any of the rings goes round.
///
/// Rings that go round the same ground in opposite directions would cancel out: all but a lone ring must be
/// counter-clockwise round ground and clockwise round holes.
pub(super) fn union_of_rings(rings: &[&[Point]]) -> Vec<Ground> {
    let rings: Vec<Ring> = rings.iter().map(|ring| plain(ring)).collect();
    ground(rings.simplify_shape_as::<i64>(FillRule::NonZero))
}

/// The ground of `from` that none of the oriented rings of `take` goes round.
pub(super) fn difference(from: &[Ground], take: &[&[Point]]) -> Vec<Ground> {
    combine(from, take, OverlayRule::Difference)
}

/// The ground of `one` that an oriented ring of `other` goes round.
pub(super) fn intersection(one: &[Ground], other: &[&[Point]]) -> Vec<Ground> {
    combine(one, other, OverlayRule::Intersect)
}

fn combine(one: &[Ground], other: &[&[Point]], rule: OverlayRule) -> Vec<Ground> {
    if one.is_empty() || other.is_empty() {
        return match rule {
            OverlayRule::Difference => one.to_vec(),
            _ => Vec::new(),
        };
    }
    let one: Vec<Ring> = one.iter().flat_map(Ground::rings).map(plain).collect();
    let other: Vec<Ring> = other.iter().map(|ring| plain(ring)).collect();
    ground(one.overlay_as::<i64>(&other, rule, FillRule::NonZero))
}

fn plain(ring: &[Point]) -> Ring {
    ring.iter().map(|point| [point.x, point.y]).collect()
}

fn points(ring: Ring) -> Vec<Point> {
    let mut points: Vec<Point> = ring.into_iter().map(|[x, y]| Point::metres(x, y)).collect();
    points.dedup();
    while points.len() > 1 && points.first() == points.last() {
        points.pop();
    }
    points
}

/// Back to points, leaving out what rounding left behind.
fn ground(shapes: Vec<Vec<Ring>>) -> Vec<Ground> {
    let mut pieces = Vec::with_capacity(shapes.len());
    for shape in shapes {
        let mut rings = shape
            .into_iter()
            .map(points)
            .filter(|ring| signed_area(ring).to_square_metres().abs() >= NO_AREA);
        // The first ring is the outer one: counter-clockwise. If it was too small to keep, so are its holes.
        if let Some(outer) = rings.next()
            && signed_area(&outer).to_square_metres() > 0.0
        {
            pieces.push(Ground::oriented(outer, rings.collect()));
        }
    }
    pieces
}
