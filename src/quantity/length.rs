//! Distances and areas on the ground.

use super::newtype::quantity;

quantity! {
    /// A distance on the ground. May be negative where it is an offset.
    Length, metres, to_metres, "metres"
}

quantity! {
    /// A piece of ground by its size.
    Area, square_metres, to_square_metres, "square metres"
}

/// Metres in a foot, exactly (international foot, 1959 agreement; NIST Special Publication 811, 2008, Appendix B.8).
pub(crate) const METRES_PER_FOOT: f64 = 0.3048;
/// Square feet in an acre. They are international feet here, 4,046.8564224 m² in all; the acre listed in NIST Special
/// Publication 811, 2008, Appendix B.8, is of US survey feet and four millionths larger.
const SQUARE_FEET_PER_ACRE: f64 = 43_560.0;

impl Length {
    /// Two lengths closer than this are the same: a tenth of a millimetre. Far below what any field tape shows,
    /// far above what binary fractions lose over a kilometre.
    pub const TOLERANCE: Self = Self::metres(1e-4);

    /// From feet; 1 ft = 0.3048 m exactly.
    pub const fn feet(feet: f64) -> Self {
        Self::metres(feet * METRES_PER_FOOT)
    }

    /// From inches; 12 in = 1 ft.
    pub const fn inches(inches: f64) -> Self {
        Self::metres(inches * METRES_PER_FOOT / 12.0)
    }

    /// In feet.
    pub const fn to_feet(self) -> f64 {
        self.to_metres() / METRES_PER_FOOT
    }

    /// In inches.
    pub const fn to_inches(self) -> f64 {
        self.to_metres() / METRES_PER_FOOT * 12.0
    }

    /// Whether the two differ by no more than [`Length::TOLERANCE`].
    pub fn approx_eq(self, other: Self) -> bool {
        (self - other).abs() <= Self::TOLERANCE
    }
}

impl Area {
    /// From square feet.
    pub const fn square_feet(square_feet: f64) -> Self {
        Self::square_metres(square_feet * METRES_PER_FOOT * METRES_PER_FOOT)
    }

    /// From acres; 1 acre = 43,560 sq ft.
    pub const fn acres(acres: f64) -> Self {
        Self::square_feet(acres * SQUARE_FEET_PER_ACRE)
    }

    /// In square feet.
    pub const fn to_square_feet(self) -> f64 {
        self.to_square_metres() / (METRES_PER_FOOT * METRES_PER_FOOT)
    }

    /// In acres.
    pub const fn to_acres(self) -> f64 {
        self.to_square_feet() / SQUARE_FEET_PER_ACRE
    }
}

impl std::ops::Mul for Length {
    type Output = Area;
    fn mul(self, other: Self) -> Area {
        Area::square_metres(self.to_metres() * other.to_metres())
    }
}

impl std::ops::Div<Length> for Area {
    type Output = Length;
    fn div(self, other: Length) -> Length {
        Length::metres(self.to_square_metres() / other.to_metres())
    }
}
