//! Cuts what was typed into numbers, words and marks.

use std::iter::Peekable;
use std::str::CharIndices;

use super::error::{ParseError, ParseProblem, QuantityKind, Result};
use super::numeral;
use crate::quantity::Units;

/// What a piece of the text is.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Token {
    /// A number, its fraction taken in.
    Number(f64),
    /// A word in lower case, without a full stop after an abbreviation; `m2` and `ft²` are words, too, ending in 2.
    Word(String),
    /// A single prime or quote.
    FootMark,
    /// A double prime or quote, or two single ones.
    InchMark,
    /// A degree sign.
    Degree,
    /// A percent sign.
    Percent,
    /// A slash between a weight and what it is spread over.
    Slash,
    /// A hyphen or minus sign, and whether there is a space before it.
    Hyphen {
        /// Whether it stands apart from what comes before.
        apart: bool,
    },
    /// A comma between two measures.
    Comma,
}

/// A token and where it stands in the text.
#[derive(Clone, Debug)]
pub(super) struct Piece {
    pub(super) token: Token,
    pub(super) start: usize,
    pub(super) end: usize,
}

/// Cuts the text up. An empty text gives [`ParseProblem::Empty`].
pub(super) fn pieces(text: &str, kind: QuantityKind, units: Units) -> Result<Vec<Piece>> {
    if text.trim().is_empty() {
        return Err(ParseError::new(kind, ParseProblem::Empty, ""));
    }
    let mut lexer = Lexer {
        text,
        kind,
        units,
        chars: text.char_indices().peekable(),
    };
    let mut pieces = Vec::new();
    let mut after_space = true;
    while let Some((start, character)) = lexer.peek() {
        if character.is_whitespace() {
            lexer.chars.next();
            after_space = true;
            continue;
        }
        let token = lexer.token(start, character, after_space)?;
        pieces.push(Piece {
            token,
            start,
            end: lexer.position(),
        });
        after_space = false;
    }
    Ok(pieces)
}

struct Lexer<'a> {
    text: &'a str,
    kind: QuantityKind,
    units: Units,
    chars: Peekable<CharIndices<'a>>,
}

impl<'a> Lexer<'a> {
    fn peek(&mut self) -> Option<(usize, char)> {
        self.chars.peek().copied()
    }

    /// Where the next character stands; the end of the text when there is none.
    fn position(&mut self) -> usize {
        self.peek().map_or(self.text.len(), |(at, _)| at)
    }

    /// The text from a position that came from `char_indices` on.
    fn rest(&self, from: usize) -> &'a str {
        self.text.get(from..).unwrap_or("")
    }

    /// Moves on to a position that came from `char_indices`.
    fn skip_to(&mut self, to: usize) {
        while self.peek().is_some_and(|(at, _)| at < to) {
            self.chars.next();
        }
    }

    fn error(&self, problem: ParseProblem, part: &str) -> ParseError {
        ParseError::new(self.kind, problem, part)
    }

    fn token(&mut self, start: usize, character: char, after_space: bool) -> Result<Token> {
        let next_is_digit = self.rest(start).chars().nth(1).is_some_and(|c| c.is_ascii_digit());
        match character {
            '0'..='9' => return self.number(start),
            '.' | ',' if next_is_digit => return self.number(start),
            _ if numeral::glyph(character).is_some() => return self.number(start),
            // The ordinal sign counts as a letter but is typed for degrees.
            _ if character.is_alphabetic() && character != 'º' => return Ok(self.word(start)),
            _ => {}
        }
        self.chars.next();
        Ok(match character {
            '\'' | '’' | '‘' | '′' => {
                // Two single quotes are how a double one is often typed.
                if self.peek().is_some_and(|(_, c)| c == character) {
                    self.chars.next();
                    Token::InchMark
                } else {
                    Token::FootMark
                }
            }
            '"' | '”' | '“' | '″' => Token::InchMark,
            '°' | 'º' => Token::Degree,
            '%' => Token::Percent,
            '/' => Token::Slash,
            '-' | '−' | '–' => Token::Hyphen { apart: after_space },
            ',' => Token::Comma,
            _ => return Err(self.error(ParseProblem::NotUnderstood, character.encode_utf8(&mut [0; 4]))),
        })
    }

    /// A word of letters. A 2 or ² right after it belongs to it when nothing else follows it directly, so that `m2` is
    /// a square metre while `3ft2in` stays feet and inches.
    fn word(&mut self, start: usize) -> Token {
        let letters_end = end_of(self.text, start, char::is_alphabetic);
        let mut word = self.text.get(start..letters_end).unwrap_or("").to_lowercase();
        let mut end = letters_end;
        let mut after = self.rest(letters_end).chars();
        match (after.next(), after.next()) {
            (Some('²'), _) => {
                word.push('2');
                end += '²'.len_utf8();
            }
            (Some('2'), next) if !next.is_some_and(|c| c.is_alphanumeric() || matches!(c, '.' | ',' | '"' | '\'')) => {
                word.push('2');
                end += 1;
            }
            // The full stop of an abbreviation.
            (Some('.'), next) if !next.is_some_and(|c| c.is_ascii_digit()) => end += 1,
            _ => {}
        }
        self.skip_to(end);
        Token::Word(word)
    }

    /// A decimal number, a fraction, or a whole number with a fraction.
    fn number(&mut self, start: usize) -> Result<Token> {
        let run_end = end_of_run(self.text, start);
        let run = self.text.get(start..run_end).unwrap_or("");
        let plain = !run.is_empty() && run.bytes().all(|byte| byte.is_ascii_digit());
        let mut end = run_end;
        let mut value = 0.0;
        let mut problem = None;
        match (plain, fraction_at(self.text, run_end, run)) {
            (true, Some((fraction, fraction_end))) => {
                end = fraction_end;
                fraction.map_or_else(|found| problem = Some(found), |found| value = found);
            }
            _ => {
                if !run.is_empty() {
                    numeral::decimal(run, self.units).map_or_else(|found| problem = Some(found), |found| value = found);
                }
                if (plain || run.is_empty())
                    && let Some((fraction, fraction_end)) = added_fraction(self.text, run_end)
                {
                    end = fraction_end;
                    fraction.map_or_else(|found| problem = Some(found), |found| value += found);
                }
            }
        }
        // A decimal mark with nothing behind it, as in "3. ft".
        if plain && end == run_end && self.rest(end).starts_with('.') {
            end += 1;
        }
        self.skip_to(end);
        problem.map_or(Ok(Token::Number(value)), |problem| {
            Err(self.error(problem, self.text.get(start..end).unwrap_or("")))
        })
    }
}

/// Where the characters that `keep` wants end.
fn end_of(text: &str, start: usize, keep: impl Fn(char) -> bool) -> usize {
    let rest = text.get(start..).unwrap_or("");
    start + rest.find(|c: char| !keep(c)).unwrap_or(rest.len())
}

/// Where a run of digits and marks ends; a mark belongs to it only before a digit.
fn end_of_run(text: &str, start: usize) -> usize {
    let bytes = text.as_bytes();
    let digit = |at: usize| bytes.get(at).is_some_and(u8::is_ascii_digit);
    let mut at = start;
    while digit(at) || (matches!(bytes.get(at), Some(b'.' | b',')) && digit(at + 1)) {
        at += 1;
    }
    at
}

/// A read fraction and where it ends.
type FractionAt = (std::result::Result<f64, ParseProblem>, usize);

/// The rest of a plain fraction whose top has been read, at `/`.
fn fraction_at(text: &str, at: usize, top: &str) -> Option<FractionAt> {
    let slash = text.get(at..)?.chars().next().filter(|c| matches!(c, '/' | '⁄'))?;
    let start = at + slash.len_utf8();
    let end = end_of(text, start, |c| c.is_ascii_digit());
    (end > start).then(|| (numeral::fraction(top, text.get(start..end).unwrap_or("")), end))
}

/// A fraction that adds to the whole number before it: ` 1/2`, `-1/2`, `½`, ` ½`.
fn added_fraction(text: &str, at: usize) -> Option<FractionAt> {
    let start = if text.get(at..)?.starts_with('-') {
        at + 1
    } else {
        end_of(text, at, char::is_whitespace)
    };
    let first = text.get(start..)?.chars().next()?;
    if let Some(value) = numeral::glyph(first) {
        return Some((Ok(value), start + first.len_utf8()));
    }
    let top_end = end_of(text, start, |c| c.is_ascii_digit());
    if start == at || top_end == start {
        return None;
    }
    fraction_at(text, top_end, text.get(start..top_end)?)
}
