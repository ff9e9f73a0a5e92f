//! A finished sheet: marks in points of paper, with what each group of them is for.

use crate::sheets::mark::{Mark, Words};

/// A finished sheet. Places are in points of 1/72 in from the top left corner, **y down**.
#[derive(Clone, Debug, PartialEq)]
pub struct Frame {
    /// Width of the paper in points.
    pub width: f64,
    /// Height of the paper in points.
    pub height: f64,
    /// What the whole print is called.
    pub title: String,
    /// The groups of marks in reading order; later ones lie over earlier ones.
    pub parts: Vec<Part>,
}

/// A group of marks that belong together.
#[derive(Clone, Debug, PartialEq)]
pub struct Part {
    /// What it is for, so that a screen reader can tell it.
    pub role: Role,
    /// Its marks.
    pub marks: Vec<Mark>,
}

/// What a group of marks is for.
#[derive(Clone, Debug, PartialEq)]
pub enum Role {
    /// Lines and words that only help the eye, or repeat what another page said.
    Ornament,
    /// The title of the print.
    Title,
    /// A heading under the title.
    Heading,
    /// A sentence or some words.
    Sentence,
    /// A picture, with words for those who cannot see it.
    Figure(String),
    /// A cell of a table. Parts with the same table and line stand side by side in it.
    Cell {
        /// Which table of the print, from 0.
        table: usize,
        /// Which line of the table, from 0; lines go on over pages.
        line: usize,
        /// Whether it heads something.
        head: CellHead,
    },
}

/// Whether a cell heads something.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CellHead {
    /// It does not.
    None,
    /// The column below it.
    Column,
    /// The line to the right of it.
    Line,
}

impl Role {
    /// The head of a column, in the first line of its table; where a later sheet repeats it, for the eye alone.
    pub(super) const fn column_head(table: usize, again: bool) -> Self {
        if again {
            return Self::Ornament;
        }
        Self::Cell {
            table,
            line: 0,
            head: CellHead::Column,
        }
    }
}

impl Frame {
    /// Every mark of the sheet, from the lowest to the uppermost.
    pub fn marks(&self) -> impl Iterator<Item = &Mark> {
        self.parts.iter().flat_map(|part| &part.marks)
    }

    /// All words of the sheet, in reading order.
    pub fn words(&self) -> impl Iterator<Item = &str> {
        self.marks().filter_map(|mark| match mark {
            Mark::Words(Words { text, .. }) => Some(text.as_str()),
            _ => None,
        })
    }
}
