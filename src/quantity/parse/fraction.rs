//! Parts of a whole: `85 %`, `0.85`.

use super::error::{ParseProblem, QuantityKind, Result};
use super::lexer::Token;
use super::sum::Reader;
use crate::quantity::{Fraction, Units};

impl Fraction {
    /// Reads a part of a whole: `85 %`, `85 percent`, `0.85`, `3/4`. A number without a percent sign is a part of
    /// one, so `1` is the whole and `85` is refused.
    ///
    /// # Errors
    /// When a part is not understood or the value is outside 0 to 100 %.
    pub fn parse(text: &str) -> Result<Self> {
        read(text, 1.0)
    }

    /// Reads a part of a whole in a field that shows percent: a number without a percent sign is in percent, so `85`
    /// and `85 %` are the same, and `0.5` is half a percent.
    ///
    /// # Errors
    /// As for [`Fraction::parse`].
    pub fn parse_percent(text: &str) -> Result<Self> {
        read(text, 100.0)
    }
}

/// `whole` is the number that means all of it when there is no percent sign.
fn read(text: &str, whole: f64) -> Result<Fraction> {
    let mut reader = Reader::new(text, QuantityKind::Fraction, Units::Metric)?;
    let number = reader.number()?;
    let percent = reader.take(&Token::Percent) || reader.take_word(&["percent", "pct"]);
    if !reader.done() {
        return Err(reader.not_understood());
    }
    let value = number / if percent { 100.0 } else { whole };
    Fraction::new(value).ok_or_else(|| reader.about_all(ParseProblem::OutOfRange))
}
