//! One piece of ground with its holes.

use super::point::Point;
use super::polygon::signed_area;
use crate::quantity::Area;

/// One piece of ground: an outer ring and the holes in it. Rings are not closed; the outer one runs counter-clockwise
/// and holes clockwise, so ground always lies on the left.
#[derive(Clone, Debug, PartialEq)]
pub struct Ground {
    outer: Vec<Point>,
    holes: Vec<Vec<Point>>,
}

impl Ground {
    /// From an outer ring in either direction, kept as it is but for the direction.
    pub(super) fn from_outer(outer: Vec<Point>) -> Self {
        Self::oriented(outer, Vec::new())
    }

    pub(super) fn oriented(outer: Vec<Point>, holes: Vec<Vec<Point>>) -> Self {
        Self {
            outer: turned(outer, true),
            holes: holes.into_iter().map(|hole| turned(hole, false)).collect(),
        }
    }

    pub(super) fn add_hole(&mut self, hole: Vec<Point>) {
        self.holes.push(turned(hole, false));
    }

    /// The outer ring, counter-clockwise, not closed.
    pub fn outer(&self) -> &[Point] {
        &self.outer
    }

    /// The holes, each clockwise, not closed.
    pub fn holes(&self) -> &[Vec<Point>] {
        &self.holes
    }

    /// The outer ring, then the holes.
    pub fn rings(&self) -> impl Iterator<Item = &[Point]> {
        std::iter::once(self.outer.as_slice()).chain(self.holes.iter().map(Vec::as_slice))
    }

    /// Its size, holes left out.
    pub fn area(&self) -> Area {
        self.rings().map(signed_area).sum()
    }
}

/// The ring running counter-clockwise or clockwise, starting from the same corner.
fn turned(mut ring: Vec<Point>, counter_clockwise: bool) -> Vec<Point> {
    if (signed_area(&ring).to_square_metres() > 0.0) != counter_clockwise
        && let Some(rest) = ring.get_mut(1..)
    {
        rest.reverse();
    }
    ring
}
