//! Weights, volumes, and how heavy a volume of something is.

use super::newtype::{product, quantity};

quantity! {
    /// A weight of seed, product or nutrient.
    Mass, kilograms, to_kilograms, "kilograms"
}

quantity! {
    /// A volume, liquid or heaped level in a cup.
    Volume, cubic_metres, to_cubic_metres, "cubic metres"
}

quantity! {
    /// How heavy a volume of a material is, poured and level.
    Density, kilograms_per_cubic_metre, to_kilograms_per_cubic_metre, "kilograms per cubic metre"
}

product!(
    Volume * Density = Mass,
    to_cubic_metres,
    to_kilograms_per_cubic_metre,
    kilograms,
    cubic_metres,
    kilograms_per_cubic_metre,
    to_kilograms
);

/// Kilograms in an avoirdupois pound, exactly (NIST Special Publication 811, 2008, Appendix B.8).
const KILOGRAMS_PER_POUND: f64 = 0.453_592_37;
/// Cubic metres in a US gallon of 231 cubic inches, exactly (NIST Special Publication 811, 2008, Appendix B.8).
const CUBIC_METRES_PER_GALLON: f64 = 0.003_785_411_784;

impl Mass {
    /// From grams.
    pub const fn grams(grams: f64) -> Self {
        Self::kilograms(grams / 1000.0)
    }

    /// From avoirdupois pounds.
    pub const fn pounds(pounds: f64) -> Self {
        Self::kilograms(pounds * KILOGRAMS_PER_POUND)
    }

    /// From avoirdupois ounces, sixteen to the pound.
    pub const fn ounces(ounces: f64) -> Self {
        Self::pounds(ounces / 16.0)
    }

    /// In grams.
    pub const fn to_grams(self) -> f64 {
        self.to_kilograms() * 1000.0
    }

    /// In avoirdupois pounds.
    pub const fn to_pounds(self) -> f64 {
        self.to_kilograms() / KILOGRAMS_PER_POUND
    }

    /// In avoirdupois ounces.
    pub const fn to_ounces(self) -> f64 {
        self.to_pounds() * 16.0
    }
}

impl Volume {
    /// From US gallons.
    pub const fn gallons(gallons: f64) -> Self {
        Self::cubic_metres(gallons * CUBIC_METRES_PER_GALLON)
    }

    /// From US cups, sixteen to the gallon.
    pub const fn cups(cups: f64) -> Self {
        Self::gallons(cups / 16.0)
    }

    /// From US liquid pints, eight to the gallon. (A dry pint is a sixth larger.)
    pub const fn pints(pints: f64) -> Self {
        Self::gallons(pints / 8.0)
    }

    /// From US tablespoons, sixteen to the cup.
    pub const fn tablespoons(tablespoons: f64) -> Self {
        Self::cups(tablespoons / 16.0)
    }

    /// From US teaspoons, three to the tablespoon.
    pub const fn teaspoons(teaspoons: f64) -> Self {
        Self::tablespoons(teaspoons / 3.0)
    }

    /// From litres.
    pub const fn litres(litres: f64) -> Self {
        Self::cubic_metres(litres / 1000.0)
    }

    /// In US gallons.
    pub const fn to_gallons(self) -> f64 {
        self.to_cubic_metres() / CUBIC_METRES_PER_GALLON
    }

    /// In US cups.
    pub const fn to_cups(self) -> f64 {
        self.to_gallons() * 16.0
    }

    /// In US tablespoons.
    pub const fn to_tablespoons(self) -> f64 {
        self.to_cups() * 16.0
    }

    /// In US teaspoons.
    pub const fn to_teaspoons(self) -> f64 {
        self.to_tablespoons() * 3.0
    }

    /// In litres.
    pub const fn to_litres(self) -> f64 {
        self.to_cubic_metres() * 1000.0
    }
}

impl Density {
    /// From pounds per cubic foot, as handbooks print bulk densities.
    pub const fn pounds_per_cubic_foot(value: f64) -> Self {
        let foot = super::length::METRES_PER_FOOT;
        Self::kilograms_per_cubic_metre(value * KILOGRAMS_PER_POUND / (foot * foot * foot))
    }

    /// In pounds per cubic foot.
    pub const fn to_pounds_per_cubic_foot(self) -> f64 {
        let foot = super::length::METRES_PER_FOOT;
        self.to_kilograms_per_cubic_metre() * (foot * foot * foot) / KILOGRAMS_PER_POUND
    }
}
