//! A place on the ground.

use crate::quantity::Length;

/// A place on the ground in plan coordinates: `x` metres east and `y` metres north of the layout's own origin.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Point {
    /// Metres east.
    pub x: f64,
    /// Metres north.
    pub y: f64,
}

impl Point {
    /// From metres east and metres north.
    pub const fn metres(x: f64, y: f64) -> Self {
        Self { x, y }
    }

    /// From feet east and feet north.
    pub const fn feet(x: f64, y: f64) -> Self {
        Self {
            x: Length::feet(x).to_metres(),
            y: Length::feet(y).to_metres(),
        }
    }

    /// The straight distance to another point.
    pub fn distance(self, other: Self) -> Length {
        Length::metres((self.x - other.x).hypot(self.y - other.y))
    }

    /// The point reached by going `east` and `north` from here.
    pub fn offset(self, east: Length, north: Length) -> Self {
        Self {
            x: self.x + east.to_metres(),
            y: self.y + north.to_metres(),
        }
    }

    /// The point a part `t` of the way to another: 0 is here, 1 is there.
    pub fn towards(self, other: Self, t: f64) -> Self {
        Self {
            x: self.x + (other.x - self.x) * t,
            y: self.y + (other.y - self.y) * t,
        }
    }

    /// Whether both coordinates are finite numbers.
    pub const fn is_finite(self) -> bool {
        self.x.is_finite() && self.y.is_finite()
    }
}
