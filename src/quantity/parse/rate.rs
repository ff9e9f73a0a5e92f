//! Weights over ground and along rows: `10 lb/1000 sq ft`, `65 lb/acre`, `3 lb per 100 ft of row`.

use super::error::{ParseProblem, QuantityKind, Result};
use super::lexer::Token;
use super::sum::{Reader, within};
use super::unit::{AreaUnit, LengthUnit, MassUnit, Unit};
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

/// An amount per number and unit, in SI.
pub(super) fn rate<A: Unit, U: Unit>(text: &str, kind: QuantityKind, units: Units, most: f64) -> Result<f64> {
    let mut reader = Reader::new(text, kind, units)?;
    let rate = reader.sum::<A>(None)? / per::<U>(&mut reader)?;
    within(rate, most, &reader)?;
    Ok(rate)
}

/// What an amount is spread over, up to the end of the text, in SI: `/100 ft`, `per acre`, `per 100 ft of row`.
pub(super) fn per<U: Unit>(reader: &mut Reader<'_>) -> Result<f64> {
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
    if number <= 0.0 {
        return Err(reader.about_all(ParseProblem::OutOfRange));
    }
    Ok(number * unit.size())
}
