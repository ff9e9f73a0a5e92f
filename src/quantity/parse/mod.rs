//! One reader for what growers type: `3'6"`, `42 in`, `3 1/2 ft`, `1.1 m`, `10 lb/1000 sq ft`, `NE`.
//!
//! Entry points are the `parse` functions on the quantities themselves. None of them asks whether a number makes
//! sense for the work (a spacing of nothing, say): that belongs to the field it was typed in.
//!
//! # Decimal and thousands marks
//! - Point and comma in one number: the one that comes last is the decimal mark, the other sets off thousands
//!   (`1,050.5` and `1.050,5`).
//! - The same mark more than once sets off thousands (`1,234,567`).
//! - A single point is always the decimal mark (`1.050` is one and a twentieth).
//! - A single comma after one to three digits that do not begin with zero, and before exactly three digits, is a
//!   thousands mark in customary units (`1,050` is a thousand and fifty). In metric units the same is refused: it can
//!   be read two ways a thousandfold apart.
//! - Any other single comma is the decimal mark (`0,9`, `12,5`, `0,125`).

mod bearing;
mod error;
mod fraction;
mod lexer;
mod numeral;
mod rate;
mod sum;
mod unit;
mod water;

pub use error::{ParseError, ParseProblem, QuantityKind};
pub(super) use unit::{AreaUnit, Unit};
pub use unit::{LengthUnit, MassUnit};

use super::{Area, Length, Mass, Units, Volume};
use error::Result;
use unit::VolumeUnit;

/// Larger than any length on any farm: a thousand kilometres.
const MOST_METRES: f64 = 1e6;
/// Larger than any farm: ten thousand square kilometres.
const MOST_SQUARE_METRES: f64 = 1e10;
/// Larger than any farm's stock: a hundred thousand tonnes.
const MOST_KILOGRAMS: f64 = 1e8;
/// Larger than any farm's tank: a hundred thousand cubic metres.
const MOST_CUBIC_METRES: f64 = 1e5;

/// Reads a plain number without a unit, its marks as the module page says: `120`, `1,000`, `62.5`, `62,5`. `None` when it
/// is none, or can be read two ways.
pub fn read_number(text: &str, units: Units) -> Option<f64> {
    numeral::decimal(text.trim(), units).ok()
}

impl Length {
    /// Reads a length: `3'6"`, `3' 6 1/2"`, `3 ft 6 in`, `42"`, `3½ ft`, `1.1m`, `110 cm`, `0,9`, `-2 ft`.
    ///
    /// A number without a unit is in feet in customary units and in metres in metric units; after feet, it is in
    /// inches (`3'6`). A minus sign in front counts for the whole length.
    ///
    /// # Errors
    /// When a part is not understood, can be read two ways, or is absurdly large.
    pub fn parse(text: &str, units: Units) -> Result<Self> {
        let bare = match units {
            Units::Customary => LengthUnit::Feet,
            Units::Metric => LengthUnit::Metres,
        };
        sum::parse(text, QuantityKind::Length, units, Some(bare), MOST_METRES).map(Self::metres)
    }

    /// Reads a length in a field whose own unit is another one, such as inches or centimetres for the spacing in the
    /// row. Everything else is as for [`Length::parse`].
    ///
    /// # Errors
    /// As for [`Length::parse`].
    pub fn parse_with(text: &str, bare: LengthUnit) -> Result<Self> {
        sum::parse(text, QuantityKind::Length, bare.units(), Some(bare), MOST_METRES).map(Self::metres)
    }
}

impl Area {
    /// Reads an area: `2,784 sq ft`, `1/2 acre`, `258 m2`, `1.2 ha`. A number without a unit is in square feet or
    /// square metres.
    ///
    /// # Errors
    /// When a part is not understood, can be read two ways, or is absurdly large.
    pub fn parse(text: &str, units: Units) -> Result<Self> {
        let bare = match units {
            Units::Customary => AreaUnit::SquareFeet,
            Units::Metric => AreaUnit::SquareMetres,
        };
        sum::parse(text, QuantityKind::Area, units, Some(bare), MOST_SQUARE_METRES).map(Self::square_metres)
    }
}

impl Mass {
    /// Reads a weight: `2 lb 3 oz`, `4 oz`, `300 g`, `1.2 kg`. A number without a unit is in pounds or kilograms.
    ///
    /// # Errors
    /// When a part is not understood, can be read two ways, or is absurdly large.
    pub fn parse(text: &str, units: Units) -> Result<Self> {
        let bare = match units {
            Units::Customary => MassUnit::Pounds,
            Units::Metric => MassUnit::Kilograms,
        };
        sum::parse(text, QuantityKind::Mass, units, Some(bare), MOST_KILOGRAMS).map(Self::kilograms)
    }

    /// Reads a weight in a field whose own unit is another one, such as ounces or grams for seed.
    ///
    /// # Errors
    /// As for [`Mass::parse`].
    pub fn parse_with(text: &str, bare: MassUnit) -> Result<Self> {
        sum::parse(text, QuantityKind::Mass, bare.units(), Some(bare), MOST_KILOGRAMS).map(Self::kilograms)
    }
}

impl Volume {
    /// Reads a volume: `2 1/2 cups`, `5 gal`, `3 tbsp`, `20 l`, `250 ml`. The unit must be there: between a cup and
    /// a gallon no guess is safe. `units` only settles how a comma is read.
    ///
    /// # Errors
    /// When the unit is missing, or a part is not understood, can be read two ways, or is absurdly large.
    pub fn parse(text: &str, units: Units) -> Result<Self> {
        sum::parse::<VolumeUnit>(text, QuantityKind::Volume, units, None, MOST_CUBIC_METRES).map(Self::cubic_metres)
    }
}
