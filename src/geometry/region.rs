//! Ground where rows may stand.

use super::bounds::Bounds;
use super::contact::{nearest_on_side, sides_of};
use super::label;
use super::piece::Ground;
use super::point::Point;
use super::polygon;
use super::region_error::{RegionError, RingName};
use super::ring::TypedRing;
use crate::quantity::{Area, Bearing, Length};

/// A place this close to an edge is on the edge: a ten-thousandth of a millimetre. What is computed along a bearing
/// strays far less; what is measured, far more.
pub(super) const ON_EDGE: f64 = 1e-7;

/// Ground where rows may stand: any number of pieces, none at all included, each with any number of holes. Edges
/// belong to the ground. Pieces may touch at a corner but never overlap.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Region {
    pieces: Vec<Ground>,
}

impl Region {
    /// The ground inside an outline. Corners in order, either way round, closed or not, repeated or on one line as
    /// they come; they are kept to the last bit unless sides touch one another.
    ///
    /// # Errors
    /// [`RegionError`] when the corners bound no ground: too few, not numbers, too far, on one line, or crossing.
    pub fn new(outline: &[Point]) -> Result<Self, RegionError> {
        let pieces = TypedRing::read(outline, RingName::Outline)?.enclosed()?;
        Ok(Self { pieces })
    }

    pub(super) fn from_pieces(pieces: Vec<Ground>) -> Self {
        Self { pieces }
    }

    pub(super) fn into_pieces(self) -> Vec<Ground> {
        self.pieces
    }

    /// The pieces of ground.
    pub fn pieces(&self) -> &[Ground] {
        &self.pieces
    }

    /// Every ring of every piece.
    pub fn rings(&self) -> impl Iterator<Item = &[Point]> {
        self.pieces.iter().flat_map(Ground::rings)
    }

    /// Whether there is no ground at all.
    pub fn is_empty(&self) -> bool {
        self.pieces.is_empty()
    }

    /// The size of the ground, holes left out.
    pub fn area(&self) -> Area {
        self.pieces.iter().map(Ground::area).sum()
    }

    /// Whether a place is ground. Edges are.
    pub fn contains(&self, place: Point) -> bool {
        if !place.is_finite() {
            return false;
        }
        let mut inside = false;
        for side in self.rings().flat_map(|ring| sides_of(ring, 0)) {
            if nearest_on_side(side.from, side.to, place).distance(place).to_metres() <= ON_EDGE {
                return true;
            }
            inside ^= polygon::is_under(side.from, side.to, place);
        }
        inside
    }

    /// The upright rectangle round the ground; `None` when there is none.
    pub fn bounds(&self) -> Option<Bounds> {
        Bounds::of(self.pieces.iter().flat_map(Ground::outer))
    }

    /// From where to where the ground reaches, measured to the right of `bearing` from the layout's origin;
    /// `None` when there is no ground.
    pub fn extent_across(&self, bearing: Bearing) -> Option<(Length, Length)> {
        let (ux, uy) = bearing.unit();
        self.reach((uy, -ux))
    }

    fn reach(&self, (ux, uy): (f64, f64)) -> Option<(Length, Length)> {
        let mut places = self.pieces.iter().flat_map(Ground::outer).map(|p| p.x * ux + p.y * uy);
        let first = places.next()?;
        let (low, high) = places.fold((first, first), |(low, high), v| (low.min(v), high.max(v)));
        Some((Length::metres(low), Length::metres(high)))
    }

    /// The point the ground would balance on, which may lie in a hole or beside a bent piece; `None` when there is
    /// no ground.
    pub fn centroid(&self) -> Option<Point> {
        let origin = *self.pieces.first()?.outer().first()?;
        let (mut area, mut x, mut y) = (0.0, 0.0, 0.0);
        for side in self.rings().flat_map(|ring| sides_of(ring, 0)) {
            let (ax, ay) = (side.from.x - origin.x, side.from.y - origin.y);
            let (bx, by) = (side.to.x - origin.x, side.to.y - origin.y);
            let twice = ax * by - bx * ay;
            area += twice / 2.0;
            x += (ax + bx) * twice / 6.0;
            y += (ay + by) * twice / 6.0;
        }
        (area > 0.0).then(|| Point::metres(origin.x + x / area, origin.y + y / area))
    }

    /// A place well inside the ground, for a name to stand on: about as far from every edge as any place in it.
    /// `None` when there is no ground.
    pub fn label_point(&self) -> Option<Point> {
        label::well_inside(&self.pieces, self.centroid())
    }
}
