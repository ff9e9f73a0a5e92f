//! The directions of a bed's rows.

use crate::geometry::Point;
use crate::layout::Bed;

/// The directions of a bed's rows: along them, and across them to the right.
#[derive(Clone, Copy)]
pub(super) struct RowAxes {
    along: (f64, f64),
    across: (f64, f64),
}

impl RowAxes {
    pub(super) fn of(bed: &Bed) -> Self {
        Self {
            along: bed.bearing.unit(),
            across: bed.bearing.right().unit(),
        }
    }

    pub(super) fn across(&self, at: Point) -> f64 {
        at.x * self.across.0 + at.y * self.across.1
    }

    /// The place so many metres further along the rows, and so many to the right of them.
    pub(super) fn shift(&self, at: Point, along: f64, across: f64) -> Point {
        Point::metres(
            at.x + self.along.0 * along + self.across.0 * across,
            at.y + self.along.1 * along + self.across.1 * across,
        )
    }

    /// Half the size of an upright box, measured along and across the rows.
    pub(super) fn half_size(&self, half_width: f64, half_height: f64) -> (f64, f64) {
        let part = |(x, y): (f64, f64)| half_width * x.abs() + half_height * y.abs();
        (part(self.along), part(self.across))
    }
}
