//! The units growers name, and how they name them.

use crate::quantity::length::METRES_PER_FOOT;
use crate::quantity::{Area, Length, Mass, Span, Units, Volume};

/// A unit that can be named after a number.
pub(in crate::quantity) trait Unit: Copy {
    /// The unit of this name: lower case, without a full stop, with one space between two words.
    fn named(name: &str) -> Option<Self>;
    /// One of it in SI.
    fn size(self) -> f64;
    /// The unit of a foot mark, if it has one.
    fn foot_mark() -> Option<Self> {
        None
    }
    /// The unit of an inch mark, if it has one.
    fn inch_mark() -> Option<Self> {
        None
    }
    /// The unit that a number without one has after a number in this unit.
    fn next_smaller(self) -> Option<Self> {
        None
    }
}

/// A unit of length that a field can take for a number typed without one.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LengthUnit {
    /// International feet of 0.3048 m.
    Feet,
    /// Inches, twelve to the foot.
    Inches,
    /// Yards of three feet.
    Yards,
    /// Metres.
    Metres,
    /// Centimetres.
    Centimetres,
    /// Millimetres.
    Millimetres,
}

impl LengthUnit {
    /// The family it belongs to.
    pub const fn units(self) -> Units {
        match self {
            Self::Feet | Self::Inches | Self::Yards => Units::Customary,
            Self::Metres | Self::Centimetres | Self::Millimetres => Units::Metric,
        }
    }
}

impl LengthUnit {
    /// As it is written.
    pub(in crate::quantity) const fn symbol(self) -> &'static str {
        match self {
            Self::Feet => "ft",
            Self::Inches => "in",
            Self::Yards => "yd",
            Self::Metres => "m",
            Self::Centimetres => "cm",
            Self::Millimetres => "mm",
        }
    }
}

impl Unit for LengthUnit {
    fn named(name: &str) -> Option<Self> {
        Some(match name {
            "ft" | "foot" | "feet" => Self::Feet,
            "in" | "inch" | "inches" | "ins" => Self::Inches,
            "yd" | "yds" | "yard" | "yards" => Self::Yards,
            "m" | "metre" | "metres" | "meter" | "meters" => Self::Metres,
            "cm" | "centimetre" | "centimetres" | "centimeter" | "centimeters" => Self::Centimetres,
            "mm" | "millimetre" | "millimetres" | "millimeter" | "millimeters" => Self::Millimetres,
            _ => return None,
        })
    }

    fn size(self) -> f64 {
        match self {
            Self::Feet => METRES_PER_FOOT,
            Self::Inches => Length::inches(1.0).to_metres(),
            Self::Yards => Length::feet(3.0).to_metres(),
            Self::Metres => 1.0,
            Self::Centimetres => 0.01,
            Self::Millimetres => 0.001,
        }
    }

    fn foot_mark() -> Option<Self> {
        Some(Self::Feet)
    }

    fn inch_mark() -> Option<Self> {
        Some(Self::Inches)
    }

    fn next_smaller(self) -> Option<Self> {
        (self == Self::Feet).then_some(Self::Inches)
    }
}

/// A unit of weight that a field can take for a number typed without one.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MassUnit {
    /// Avoirdupois pounds.
    Pounds,
    /// Avoirdupois ounces, sixteen to the pound.
    Ounces,
    /// Short tons of 2,000 lb.
    ShortTons,
    /// Grams.
    Grams,
    /// Kilograms.
    Kilograms,
    /// Tonnes of 1,000 kg.
    Tonnes,
}

impl MassUnit {
    /// The family it belongs to.
    pub const fn units(self) -> Units {
        match self {
            Self::Pounds | Self::Ounces | Self::ShortTons => Units::Customary,
            Self::Grams | Self::Kilograms | Self::Tonnes => Units::Metric,
        }
    }
}

impl MassUnit {
    /// As it is written for one of it.
    pub(in crate::quantity) const fn symbol(self) -> &'static str {
        match self {
            Self::Pounds => "lb",
            Self::Ounces => "oz",
            Self::ShortTons => "ton",
            Self::Grams => "g",
            Self::Kilograms => "kg",
            Self::Tonnes => "t",
        }
    }
}

impl Unit for MassUnit {
    fn named(name: &str) -> Option<Self> {
        Some(match name {
            "lb" | "lbs" | "pound" | "pounds" => Self::Pounds,
            "oz" | "ounce" | "ounces" => Self::Ounces,
            "ton" | "tons" => Self::ShortTons,
            "g" | "gram" | "grams" => Self::Grams,
            "kg" | "kilogram" | "kilograms" => Self::Kilograms,
            "t" | "tonne" | "tonnes" => Self::Tonnes,
            _ => return None,
        })
    }

    fn size(self) -> f64 {
        match self {
            Self::Pounds => Mass::pounds(1.0).to_kilograms(),
            Self::Ounces => Mass::ounces(1.0).to_kilograms(),
            Self::ShortTons => Mass::pounds(2000.0).to_kilograms(),
            Self::Grams => 0.001,
            Self::Kilograms => 1.0,
            Self::Tonnes => 1000.0,
        }
    }
}

/// Plants, as something that a weight is shared out to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct PlantUnit;

impl Unit for PlantUnit {
    fn named(name: &str) -> Option<Self> {
        matches!(name, "plant" | "plants").then_some(Self)
    }

    fn size(self) -> f64 {
        1.0
    }
}

/// A unit of area.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in crate::quantity) enum AreaUnit {
    SquareFeet,
    SquareYards,
    Acres,
    SquareMetres,
    Hectares,
}

impl AreaUnit {
    /// As it is written.
    pub(in crate::quantity) const fn symbol(self) -> &'static str {
        match self {
            Self::SquareFeet => "sq ft",
            Self::SquareYards => "sq yd",
            Self::Acres => "acre",
            Self::SquareMetres => "m²",
            Self::Hectares => "ha",
        }
    }
}

impl Unit for AreaUnit {
    fn named(name: &str) -> Option<Self> {
        Some(match name {
            "sq ft" | "square ft" | "square feet" | "square foot" | "sq feet" | "sqft" | "sf" | "ft2" => {
                Self::SquareFeet
            }
            "sq yd" | "square yards" | "square yard" | "yd2" => Self::SquareYards,
            "acre" | "acres" | "ac" => Self::Acres,
            "m2" | "sq m" | "sqm" | "square metre" | "square metres" | "square meter" | "square meters" => {
                Self::SquareMetres
            }
            "ha" | "hectare" | "hectares" => Self::Hectares,
            _ => return None,
        })
    }

    fn size(self) -> f64 {
        match self {
            Self::SquareFeet => Area::square_feet(1.0).to_square_metres(),
            Self::SquareYards => Area::square_feet(9.0).to_square_metres(),
            Self::Acres => Area::acres(1.0).to_square_metres(),
            Self::SquareMetres => 1.0,
            Self::Hectares => 10_000.0,
        }
    }
}

/// A unit of volume.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum VolumeUnit {
    Gallons,
    Quarts,
    Pints,
    Cups,
    FluidOunces,
    Tablespoons,
    Teaspoons,
    Litres,
    Millilitres,
}

impl Unit for VolumeUnit {
    fn named(name: &str) -> Option<Self> {
        Some(match name {
            "gal" | "gals" | "gallon" | "gallons" => Self::Gallons,
            "qt" | "qts" | "quart" | "quarts" => Self::Quarts,
            "pt" | "pts" | "pint" | "pints" => Self::Pints,
            "cup" | "cups" | "c" => Self::Cups,
            "fl oz" | "fluid ounce" | "fluid ounces" => Self::FluidOunces,
            "tbsp" | "tablespoon" | "tablespoons" => Self::Tablespoons,
            "tsp" | "teaspoon" | "teaspoons" => Self::Teaspoons,
            "l" | "litre" | "litres" | "liter" | "liters" => Self::Litres,
            "ml" | "millilitre" | "millilitres" | "milliliter" | "milliliters" => Self::Millilitres,
            _ => return None,
        })
    }

    fn size(self) -> f64 {
        // US liquid measure: 4 quarts, 8 pints, 16 cups, 128 fluid ounces, 256 tablespoons, 768 teaspoons a gallon.
        let gallon = Volume::gallons(1.0).to_cubic_metres();
        match self {
            Self::Gallons => gallon,
            Self::Quarts => gallon / 4.0,
            Self::Pints => gallon / 8.0,
            Self::Cups => gallon / 16.0,
            Self::FluidOunces => gallon / 128.0,
            Self::Tablespoons => gallon / 256.0,
            Self::Teaspoons => gallon / 768.0,
            Self::Litres => 1e-3,
            Self::Millilitres => 1e-6,
        }
    }
}

/// A unit of weight for what is dissolved in water.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum DissolvedUnit {
    Milligrams,
    Other(MassUnit),
}

impl Unit for DissolvedUnit {
    fn named(name: &str) -> Option<Self> {
        match name {
            "mg" | "milligram" | "milligrams" => Some(Self::Milligrams),
            _ => MassUnit::named(name).map(Self::Other),
        }
    }

    fn size(self) -> f64 {
        match self {
            Self::Milligrams => 1e-6,
            Self::Other(unit) => unit.size(),
        }
    }
}

/// A unit of time.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum TimeUnit {
    Hours,
    Minutes,
    Seconds,
}

impl Unit for TimeUnit {
    fn named(name: &str) -> Option<Self> {
        Some(match name {
            "h" | "hr" | "hrs" | "hour" | "hours" => Self::Hours,
            "min" | "mins" | "minute" | "minutes" => Self::Minutes,
            "s" | "sec" | "secs" | "second" | "seconds" => Self::Seconds,
            _ => return None,
        })
    }

    fn size(self) -> f64 {
        match self {
            Self::Hours => Span::hours(1.0).to_seconds(),
            Self::Minutes => Span::minutes(1.0).to_seconds(),
            Self::Seconds => 1.0,
        }
    }

    fn next_smaller(self) -> Option<Self> {
        (self == Self::Hours).then_some(Self::Minutes)
    }
}
