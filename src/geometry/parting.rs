//! Parting an outline in two along a straight line.

use super::SAME_PLACE;
use super::boolean;
use super::bounds::Bounds;
use super::piece::Ground;
use super::point::Point;
use super::region_error::{RegionError, RingName};
use super::ring::TypedRing;
use crate::quantity::Bearing;

/// What an outline comes to on either side of a line.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Parted {
    /// The pieces on the left hand, seen along the line's bearing.
    pub left: Vec<Ground>,
    /// The pieces on the right hand.
    pub right: Vec<Ground>,
}

/// Parts the ground inside `outline` along the line through `at` that runs at `bearing`.
///
/// Corners that the line does not make stay as they are to the last bit, and both sides share the new ones. A bent
/// outline may come to several pieces on one side; one that the line misses comes to none on the other.
///
/// # Errors
/// [`RegionError`] when the corners bound no ground.
pub fn part(outline: &[Point], at: Point, bearing: Bearing) -> Result<Parted, RegionError> {
    let ground = TypedRing::read(outline, RingName::Bed)?.enclosed()?;
    let Some(bounds) = Bounds::of(ground.iter().flat_map(Ground::outer)) else {
        return Ok(Parted::default());
    };
    let half = left_half(bounds, at, bearing);
    let typed = |ring: &[Point]| -> Vec<Point> { ring.iter().map(|corner| as_typed(*corner, outline)).collect() };
    let pieces = |ground: Vec<Ground>| -> Vec<Ground> {
        ground
            .iter()
            .map(|piece| {
                let holes = piece.holes().iter().map(|hole| typed(hole)).collect();
                Ground::oriented(typed(piece.outer()), holes)
            })
            .collect()
    };
    Ok(Parted {
        left: pieces(boolean::intersection(&ground, &[&half])),
        right: pieces(boolean::difference(&ground, &[&half])),
    })
}

/// A rectangle on the left hand of the line that covers all of the bounds on that hand, counter-clockwise.
fn left_half(bounds: Bounds, at: Point, bearing: Bearing) -> [Point; 4] {
    let (ux, uy) = bearing.unit();
    let corners = [
        bounds.min,
        Point::metres(bounds.max.x, bounds.min.y),
        bounds.max,
        Point::metres(bounds.min.x, bounds.max.y),
    ];
    let farthest = corners.map(|corner| at.distance(corner).to_metres());
    let reach = farthest.into_iter().fold(1.0, f64::max) * 1.01;
    // Along the line first, then to the left of it: counter-clockwise.
    let place = |along: f64, left: f64| Point::metres(at.x + along * ux - left * uy, at.y + along * uy + left * ux);
    [
        place(-reach, 0.0),
        place(reach, 0.0),
        place(reach, reach),
        place(-reach, reach),
    ]
}

/// The corner as it was typed, where the arithmetic only rounded it.
fn as_typed(corner: Point, outline: &[Point]) -> Point {
    let same = |typed: &&Point| {
        // Far from the origin binary fractions lose more.
        let forgiven = SAME_PLACE.max(1e-13 * (typed.x.abs() + typed.y.abs()));
        (typed.x - corner.x).abs() <= forgiven && (typed.y - corner.y).abs() <= forgiven
    };
    outline.iter().find(same).copied().unwrap_or(corner)
}
