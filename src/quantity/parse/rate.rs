//! Weights over ground and along rows: `10 lb/1000 sq ft`, `65 lb/acre`, `3 lb per 100 ft of row`.

use super::error::{ParseProblem, QuantityKind, Result};
use super::lexer::Token;
use super::sum::{Reader, within};
use super::unit::{AreaUnit, LengthUnit, MassUnit, PlantUnit, Unit};
use crate::quantity::rate_unit::{RateUnit, SpreadOver};
use crate::quantity::{MassPerArea, MassPerLength, Units};

/// Ten times the deepest dressing of compost: a tonne on a square metre.
const MOST_KILOGRAMS_PER_SQUARE_METRE: f64 = 1e3;
/// The same along a row.
const MOST_KILOGRAMS_PER_METRE: f64 = 1e3;

impl MassPerArea {
    /// Reads a weight over ground: `10 lb/1000 sq ft`, `65 lb/acre`, `60 lb/ac`, `30 g/m2`, `70 kg/ha`. Both units
    /// must be there: a bare number could be per acre or per 1,000 sq ft. `units` only settles how a comma is read.
    ///
    /// # Errors
    /// When a unit is missing, or a part is not understood, can be read two ways, or is absurdly large.
    pub fn parse(text: &str, units: Units) -> Result<Self> {
        let kind = QuantityKind::MassPerArea;
        let rate = rate::<MassUnit, AreaUnit>(text, kind, units, MOST_KILOGRAMS_PER_SQUARE_METRE)?;
        Ok(Self::kilograms_per_square_metre(rate))
    }
}

impl MassPerLength {
    /// Reads a weight along a row: `3 lb/100 ft`, `5 oz/10 ft`, `20 g/m`, `3 lb per 100 ft of row`. Both units must
    /// be there. `units` only settles how a comma is read.
    ///
    /// # Errors
    /// When a unit is missing, or a part is not understood, can be read two ways, or is absurdly large.
    pub fn parse(text: &str, units: Units) -> Result<Self> {
        let kind = QuantityKind::MassPerLength;
        let rate = rate::<MassUnit, LengthUnit>(text, kind, units, MOST_KILOGRAMS_PER_METRE)?;
        Ok(Self::kilograms_per_metre(rate))
    }
}

impl RateUnit {
    /// The unit that a rate was typed in: of `120 lb/acre` it is lb/acre, of `5 oz per 10 ft of row` oz/10 ft, of
    /// `2 oz/plant` oz/plant. Where the weight is typed in two units, the smaller one.
    ///
    /// # Errors
    /// When the text is no such rate.
    pub fn of_rate(text: &str, units: Units) -> Result<Self> {
        let mut reader = Reader::new(text, QuantityKind::MassPerArea, units)?;
        let (_, weight) = reader.sum_in::<MassUnit>(None)?;
        let spread = reader.mark();
        let over_ground = per_in(&mut reader).map(|(number, unit)| (number, SpreadOver::Ground(unit)));
        reader.back_to(spread);
        let along_row = per_in(&mut reader).map(|(number, unit)| (number, SpreadOver::Row(unit)));
        reader.back_to(spread);
        let to_plants = per_in(&mut reader).map(|(number, PlantUnit)| (number, SpreadOver::Plants));
        let (number, over) = to_plants.or(along_row).or(over_ground)?;
        Ok(Self::new(weight, number, over))
    }

    /// The unit of this name: `lb/acre`, `lb/1000 sq ft`, `oz/10 ft`, `g/m²`, `oz/plant`. The same for everyone: a
    /// number in it is whole or has a decimal point.
    ///
    /// # Errors
    /// When the name is not understood.
    pub fn named(name: &str) -> Result<Self> {
        // One of it is a rate like any other.
        Self::of_rate(&format!("1 {name}"), Units::Customary)
    }
}

/// An amount per number and unit, in SI.
pub(super) fn rate<A: Unit, U: Unit>(text: &str, kind: QuantityKind, units: Units, most: f64) -> Result<f64> {
    let mut reader = Reader::new(text, kind, units)?;
    let rate = reader.sum::<A>(None)? / per::<U>(&mut reader)?;
    within(rate, most, &reader)?;
    Ok(rate)
}

/// What an amount is spread over, up to the end of the text, in SI: `/100 ft`, `per acre`, `per 100 ft of row`.
pub(super) fn per<U: Unit>(reader: &mut Reader<'_>) -> Result<f64> {
    per_in::<U>(reader).map(|(number, unit)| number * unit.size())
}

/// The same as a number of a unit.
pub(super) fn per_in<U: Unit>(reader: &mut Reader<'_>) -> Result<(f64, U)> {
    if !reader.take_per() {
        return Err(reader.about_all(ParseProblem::UnitMissing));
    }
    let number = if matches!(reader.peek(), Some(Token::Number(_))) {
        reader.number()?
    } else {
        1.0
    };
    reader.take_word(&["row", "bed"]);
    let Some(unit) = reader.unit::<U>() else {
        return Err(reader.not_understood());
    };
    if reader.take_word(&["of"]) && !reader.take_word(&["row", "bed"]) {
        return Err(reader.not_understood());
    }
    if !reader.done() {
        return Err(reader.not_understood());
    }
    if number <= 0.0 || !number.is_finite() {
        return Err(reader.about_all(ParseProblem::OutOfRange));
    }
    Ok((number, unit))
}
