//! One or more numbers with units, largest unit first: `3 ft 6 in`, `2 lb 3 oz`, `42 in`.

use super::error::{ParseError, ParseProblem, QuantityKind, Result};
use super::lexer::{Piece, Token, pieces};
use super::unit::Unit;
use crate::quantity::Units;

/// A walk over the pieces of a text.
pub(super) struct Reader<'a> {
    text: &'a str,
    kind: QuantityKind,
    pieces: Vec<Piece>,
    at: usize,
}

impl<'a> Reader<'a> {
    /// Cuts the text up and stands before its first piece.
    pub(super) fn new(text: &'a str, kind: QuantityKind, units: Units) -> Result<Self> {
        Ok(Self {
            text,
            kind,
            pieces: pieces(text, kind, units)?,
            at: 0,
        })
    }

    /// What comes next.
    pub(super) fn peek(&self) -> Option<&Token> {
        self.pieces.get(self.at).map(|piece| &piece.token)
    }

    /// Whether everything has been read.
    pub(super) fn done(&self) -> bool {
        self.at >= self.pieces.len()
    }

    /// Steps over what comes next.
    pub(super) fn step(&mut self) {
        self.at += 1;
    }

    /// Steps over the next piece if it is this one.
    pub(super) fn take(&mut self, token: &Token) -> bool {
        let found = self.peek() == Some(token);
        self.at += usize::from(found);
        found
    }

    /// Steps over the next piece if it is one of these words.
    pub(super) fn take_word(&mut self, words: &[&str]) -> bool {
        let found = matches!(self.peek(), Some(Token::Word(word)) if words.contains(&word.as_str()));
        self.at += usize::from(found);
        found
    }

    /// Steps over a slash or the word "per".
    pub(super) fn take_per(&mut self) -> bool {
        self.take(&Token::Slash) || self.take_word(&["per"])
    }

    /// Where the walk stands.
    pub(super) const fn mark(&self) -> usize {
        self.at
    }

    /// Goes back to a place that [`Reader::mark`] gave.
    pub(super) const fn back_to(&mut self, mark: usize) {
        self.at = mark;
    }

    /// The next number, or an error that quotes what stands there instead.
    pub(super) fn number(&mut self) -> Result<f64> {
        match self.peek() {
            Some(&Token::Number(value)) => {
                self.at += 1;
                Ok(value)
            }
            _ => Err(self.not_understood()),
        }
    }

    /// The unit that comes next: a mark, two words, or one.
    pub(super) fn unit<U: Unit>(&mut self) -> Option<U> {
        let (unit, length) = match self.peek()? {
            Token::FootMark => (U::foot_mark()?, 1),
            Token::InchMark => (U::inch_mark()?, 1),
            Token::Word(first) => {
                let pair = match self.pieces.get(self.at + 1).map(|piece| &piece.token) {
                    Some(Token::Word(second)) => U::named(&format!("{first} {second}")),
                    _ => None,
                };
                match pair {
                    Some(unit) => (unit, 2),
                    None => (U::named(first)?, 1),
                }
            }
            _ => return None,
        };
        self.at += length;
        Some(unit)
    }

    /// An error about the next piece, or about the whole text when nothing is left.
    pub(super) fn not_understood(&self) -> ParseError {
        self.error(ParseProblem::NotUnderstood, self.at)
    }

    /// An error about the whole text.
    pub(super) fn about_all(&self, problem: ParseProblem) -> ParseError {
        ParseError::new(self.kind, problem, self.text)
    }

    fn error(&self, problem: ParseProblem, index: usize) -> ParseError {
        let part = self
            .pieces
            .get(index)
            .and_then(|piece| self.text.get(piece.start..piece.end));
        ParseError::new(self.kind, problem, part.unwrap_or(self.text))
    }

    /// Numbers with units that add up, in SI. Stops before a slash or the word "per".
    ///
    /// `bare` is the unit of a single number that has none; without it the unit must be there.
    pub(super) fn sum<U: Unit>(&mut self, bare: Option<U>) -> Result<f64> {
        self.sum_in(bare).map(|(total, _)| total)
    }

    /// The same, with the smallest unit in it.
    pub(super) fn sum_in<U: Unit>(&mut self, bare: Option<U>) -> Result<(f64, U)> {
        let mut total = 0.0;
        let mut previous: Option<U> = None;
        loop {
            let start = self.at;
            let number = self.number()?;
            let unit = match self.unit::<U>() {
                Some(unit) => unit,
                None if !self.at_end() => return Err(self.not_understood()),
                None => match previous.map_or(bare, Unit::next_smaller) {
                    Some(unit) => unit,
                    None => return Err(self.error(ParseProblem::UnitMissing, start)),
                },
            };
            if previous.is_some_and(|previous| unit.size() >= previous.size()) {
                return Err(self.error(ParseProblem::NotUnderstood, self.at - 1));
            }
            total += number * unit.size();
            previous = Some(unit);
            if self.at_end() {
                return Ok((total, unit));
            }
            // "3 ft, 6 in" and "3'-6"" are written, too; a hyphen that stands apart could mean "less" and is refused.
            let _ = self.take(&Token::Comma) || self.take(&Token::Hyphen { apart: false }) || self.take_word(&["and"]);
        }
    }

    /// Whether the sum ends here.
    fn at_end(&self) -> bool {
        match self.peek() {
            None | Some(Token::Slash) => true,
            Some(Token::Word(word)) => word == "per",
            _ => false,
        }
    }
}

/// Reads the whole text as a sum, in SI, and refuses what is larger than `most` either way.
pub(super) fn parse<U: Unit>(text: &str, kind: QuantityKind, units: Units, bare: Option<U>, most: f64) -> Result<f64> {
    let mut reader = Reader::new(text, kind, units)?;
    let negative = matches!(reader.peek(), Some(Token::Hyphen { .. }));
    if negative {
        reader.step();
    }
    let total = reader.sum(bare)?;
    if !reader.done() {
        return Err(reader.not_understood());
    }
    within(total, most, &reader)?;
    // Adding zero turns "minus nothing" into nothing.
    Ok(if negative { -total + 0.0 } else { total })
}

/// Refuses what is not finite or larger than `most`.
pub(super) fn within(value: f64, most: f64, reader: &Reader<'_>) -> Result<()> {
    if value.is_finite() && value.abs() <= most {
        Ok(())
    } else {
        Err(reader.about_all(ParseProblem::TooLarge))
    }
}
