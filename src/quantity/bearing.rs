//! Directions over ground.

/// The sixteen points of the compass from north, clockwise, 22.5° apart.
pub(super) const POINTS: [&str; 16] = [
    "N", "NNE", "NE", "ENE", "E", "ESE", "SE", "SSE", "S", "SSW", "SW", "WSW", "W", "WNW", "NW", "NNW",
];

/// A direction, in degrees clockwise from north, always from 0 up to but not including 360.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
pub struct Bearing(f64);

impl Bearing {
    /// North.
    pub const NORTH: Self = Self(0.0);
    /// East.
    pub const EAST: Self = Self(90.0);

    /// Two bearings closer than this are the same: a millionth of a degree, 2 µm over 100 m of row.
    pub const TOLERANCE_DEGREES: f64 = 1e-6;

    /// From degrees clockwise from north; any finite number is turned into the same direction from 0 to 360.
    /// A number that is not finite gives north: readers of files and fields refuse it before it comes here.
    pub fn degrees(degrees: f64) -> Self {
        if !degrees.is_finite() {
            return Self::NORTH;
        }
        let turned = degrees.rem_euclid(360.0);
        // rem_euclid of a tiny negative number rounds up to 360 itself.
        Self(if turned >= 360.0 { 0.0 } else { turned })
    }

    /// In degrees clockwise from north, 0 to 360.
    pub const fn to_degrees(self) -> f64 {
        self.0
    }

    /// The unit step (east, north) in this direction. The four main directions are exact, so rows drawn
    /// north to south have the same east coordinate to the last bit.
    pub fn unit(self) -> (f64, f64) {
        match self.0 {
            0.0 => (0.0, 1.0),
            90.0 => (1.0, 0.0),
            180.0 => (0.0, -1.0),
            270.0 => (-1.0, 0.0),
            degrees => degrees.to_radians().sin_cos(),
        }
    }

    /// The direction a quarter turn to the left of this one.
    pub fn left(self) -> Self {
        Self::degrees(self.0 - 90.0)
    }

    /// The direction a quarter turn to the right of this one.
    pub fn right(self) -> Self {
        Self::degrees(self.0 + 90.0)
    }
}
