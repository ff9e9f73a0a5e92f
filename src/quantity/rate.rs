//! Amounts over ground and along rows.

use super::length::{Area, Length};
use super::mass::Mass;
use super::newtype::{product, quantity};

quantity! {
    /// A weight spread over ground.
    MassPerArea, kilograms_per_square_metre, to_kilograms_per_square_metre, "kilograms per square metre"
}

quantity! {
    /// A weight laid along a row.
    MassPerLength, kilograms_per_metre, to_kilograms_per_metre, "kilograms per metre"
}

quantity! {
    /// Things along a row: plants, sets, ears.
    CountPerLength, per_metre, to_per_metre, "things per metre"
}

product!(
    MassPerArea * Area = Mass,
    to_kilograms_per_square_metre,
    to_square_metres,
    kilograms,
    kilograms_per_square_metre,
    square_metres,
    to_kilograms
);
product!(
    MassPerLength * Length = Mass,
    to_kilograms_per_metre,
    to_metres,
    kilograms,
    kilograms_per_metre,
    metres,
    to_kilograms
);
product!(
    MassPerArea * Length = MassPerLength,
    to_kilograms_per_square_metre,
    to_metres,
    kilograms_per_metre,
    kilograms_per_square_metre,
    metres,
    to_kilograms_per_metre
);

impl MassPerArea {
    /// From pounds per acre.
    pub fn pounds_per_acre(value: f64) -> Self {
        Mass::pounds(value) / Area::acres(1.0)
    }

    /// From pounds per 1,000 square feet.
    pub fn pounds_per_1000_square_feet(value: f64) -> Self {
        Mass::pounds(value) / Area::square_feet(1000.0)
    }

    /// From pounds per 100 square feet.
    pub fn pounds_per_100_square_feet(value: f64) -> Self {
        Mass::pounds(value) / Area::square_feet(100.0)
    }

    /// From short tons of 2,000 lb per acre.
    pub fn tons_per_acre(value: f64) -> Self {
        Self::pounds_per_acre(value * 2000.0)
    }

    /// From kilograms per hectare.
    pub const fn kilograms_per_hectare(value: f64) -> Self {
        Self::kilograms_per_square_metre(value / 10_000.0)
    }

    /// From grams per square metre.
    pub const fn grams_per_square_metre(value: f64) -> Self {
        Self::kilograms_per_square_metre(value / 1000.0)
    }

    /// In pounds per acre.
    pub fn to_pounds_per_acre(self) -> f64 {
        (self * Area::acres(1.0)).to_pounds()
    }

    /// In pounds per 1,000 square feet.
    pub fn to_pounds_per_1000_square_feet(self) -> f64 {
        (self * Area::square_feet(1000.0)).to_pounds()
    }

    /// In pounds per 100 square feet.
    pub fn to_pounds_per_100_square_feet(self) -> f64 {
        (self * Area::square_feet(100.0)).to_pounds()
    }

    /// In kilograms per hectare.
    pub const fn to_kilograms_per_hectare(self) -> f64 {
        self.to_kilograms_per_square_metre() * 10_000.0
    }

    /// In grams per square metre.
    pub const fn to_grams_per_square_metre(self) -> f64 {
        self.to_kilograms_per_square_metre() * 1000.0
    }
}

impl MassPerLength {
    /// From pounds per 100 feet of row.
    pub fn pounds_per_100_feet(value: f64) -> Self {
        Mass::pounds(value) / Length::feet(100.0)
    }

    /// From grams per metre of row.
    pub const fn grams_per_metre(value: f64) -> Self {
        Self::kilograms_per_metre(value / 1000.0)
    }

    /// In pounds per 100 feet of row.
    pub fn to_pounds_per_100_feet(self) -> f64 {
        (self * Length::feet(100.0)).to_pounds()
    }

    /// In grams per metre of row.
    pub const fn to_grams_per_metre(self) -> f64 {
        self.to_kilograms_per_metre() * 1000.0
    }
}

impl CountPerLength {
    /// From things in 100 feet of row.
    pub const fn per_100_feet(value: f64) -> Self {
        Self::per_metre(value / Length::feet(100.0).to_metres())
    }

    /// In things in 100 feet of row.
    pub const fn to_per_100_feet(self) -> f64 {
        self.to_per_metre() * Length::feet(100.0).to_metres()
    }
}

/// How many stand along a length; not a whole number until the caller makes it one.
impl std::ops::Mul<Length> for CountPerLength {
    type Output = f64;
    fn mul(self, length: Length) -> f64 {
        self.to_per_metre() * length.to_metres()
    }
}
