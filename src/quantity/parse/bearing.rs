//! Directions: `0`, `45°`, `NE`, `north-east`, `N 30 E`, `S 12° 30' W`.

use super::error::{ParseProblem, QuantityKind, Result};
use super::lexer::Token;
use super::sum::Reader;
use crate::quantity::bearing::POINTS;
use crate::quantity::{Bearing, Units};

impl Bearing {
    /// Reads a direction: degrees clockwise from north (`0`, `45°`, `-10`), a compass point (`N`, `NE`, `NNW`,
    /// `north-east`), or an angle off north or south as deeds write it (`N 30 E`, `S 12° 30' W`).
    ///
    /// # Errors
    /// When a part is not understood, when degrees are outside −360 to 360, or when the angle of a deed's bearing is
    /// outside 0 to 90.
    pub fn parse(text: &str) -> Result<Self> {
        // A comma in an angle can only be a decimal mark, but one before three digits is no way to write degrees.
        let mut reader = Reader::new(text, QuantityKind::Bearing, Units::Metric)?;
        let bearing = match reader.peek() {
            Some(Token::Word(_)) => named(&mut reader)?,
            _ => {
                let negative = matches!(reader.peek(), Some(Token::Hyphen { .. }));
                if negative {
                    reader.step();
                }
                let angle = angle(&mut reader)?;
                if angle > 360.0 {
                    return Err(reader.about_all(ParseProblem::OutOfRange));
                }
                Self::degrees(if negative { -angle } else { angle })
            }
        };
        if reader.done() {
            Ok(bearing)
        } else {
            Err(reader.not_understood())
        }
    }
}

/// Degrees, with minutes and seconds if they are there.
fn angle(reader: &mut Reader<'_>) -> Result<f64> {
    let mut angle = reader.number()?;
    let marked = reader.take(&Token::Degree) || reader.take_word(&["deg", "degree", "degrees"]);
    if marked && matches!(reader.peek(), Some(Token::Number(_))) {
        angle += below_sixty(reader, &Token::FootMark)? / 60.0;
        if matches!(reader.peek(), Some(Token::Number(_))) {
            angle += below_sixty(reader, &Token::InchMark)? / 3600.0;
        }
    }
    Ok(angle)
}

/// Minutes or seconds, and the mark that says so.
fn below_sixty(reader: &mut Reader<'_>, mark: &Token) -> Result<f64> {
    let number = reader.number()?;
    if !reader.take(mark) {
        return Err(reader.not_understood());
    }
    if number < 60.0 {
        Ok(number)
    } else {
        Err(reader.about_all(ParseProblem::OutOfRange))
    }
}

/// A compass point, or an angle from north or south towards east or west.
fn named(reader: &mut Reader<'_>) -> Result<Bearing> {
    let Some(Token::Word(first)) = reader.peek().cloned() else {
        return Err(reader.not_understood());
    };
    // "n30e" is cut into "n", 30 and "e" already; a name of several words is joined here.
    let mut name = first;
    let first_is_pole = matches!(short(&name).as_str(), "n" | "s");
    if !first_is_pole && point(&short(&name)).is_none() {
        return Err(reader.not_understood());
    }
    reader.step();
    if first_is_pole && matches!(reader.peek(), Some(Token::Number(_))) {
        let north = short(&name) == "n";
        let angle = angle(reader)?;
        let east = match reader.peek() {
            Some(Token::Word(word)) if short(word) == "e" => true,
            Some(Token::Word(word)) if short(word) == "w" => false,
            _ => return Err(reader.not_understood()),
        };
        reader.step();
        if angle > 90.0 {
            return Err(reader.about_all(ParseProblem::OutOfRange));
        }
        let from_north = if north { angle } else { 180.0 - angle };
        return Ok(Bearing::degrees(if east { from_north } else { -from_north }));
    }
    while !reader.done() {
        reader.take(&Token::Hyphen { apart: false });
        match reader.peek() {
            Some(Token::Word(word)) => name.push_str(word),
            _ => return Err(reader.not_understood()),
        }
        reader.step();
    }
    point(&short(&name))
        .map(Bearing::degrees)
        .ok_or_else(|| reader.about_all(ParseProblem::NotUnderstood))
}

/// A compass point's letters: "northeast" and "ne" are both "ne".
fn short(name: &str) -> String {
    name.replace("north", "n")
        .replace("south", "s")
        .replace("east", "e")
        .replace("west", "w")
}

/// The degrees of one of the sixteen points, a quarter of a right angle apart.
fn point(letters: &str) -> Option<f64> {
    POINTS
        .iter()
        .zip(0_u8..)
        .find_map(|(name, index)| name.eq_ignore_ascii_case(letters).then(|| f64::from(index) * 22.5))
}
