//! How many plants stand on a piece of row, and where.

use std::ops::RangeInclusive;

use super::row_rule::count_along;
use super::wording::in_metres;
use crate::quantity::Length;

/// Several lines of plants on one row: twin rows on a bed top, say.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lines {
    /// How many lines stand on one row, at least one. They lie evenly to both hands of the row's own line.
    pub per_row: u8,
    /// From one line to the next.
    pub apart: Length,
    /// Whether every second line, from the left hand, starts half an in-row spacing later than the first.
    pub staggered: bool,
}

impl Lines {
    /// One line of plants on the row itself.
    pub const SINGLE: Self = Self {
        per_row: 1,
        apart: Length::ZERO,
        staggered: false,
    };
}

impl Default for Lines {
    fn default() -> Self {
        Self::SINGLE
    }
}

/// Why no plants can be set.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum PlantError {
    /// An in-row spacing that is zero, negative, less than can be measured, or not a number.
    #[error("The in-row spacing is {}; it has to be a length above zero. Type the distance from plant to plant.", in_metres(*.0))]
    InRow(Length),
    /// An end gap that is negative or not a number.
    #[error("The end gap is {}; it has to be zero or more. Type the distance from a row's end to its first plant.", in_metres(*.0))]
    EndGap(Length),
    /// No line of plants on a row.
    #[error("A row has to carry at least one line of plants. Type 1 for a single row.")]
    NoLines,
    /// A distance between lines that is negative or not a number.
    #[error("The distance between the lines of a row is {}; it has to be zero or more. Type it again.", in_metres(*.0))]
    Apart(Length),
}

/// How many plants stand on a piece of row `length` long: ⌊(L − 2e) / p + ε⌋ + 1 when L ≥ 2e, else none, for an in-row
/// spacing p and an end gap e. With e = p / 2 every plant owns a stretch p long, and the count is ⌊L / p⌋.
///
/// # Errors
/// [`PlantError`] when the spacing is no length above zero or the end gap none of zero or more. A length that is
/// negative or not a number holds no plant.
pub fn plants_on(length: Length, in_row: Length, end_gap: Length) -> Result<u64, PlantError> {
    Ok(PlantRule::new(in_row, end_gap, Lines::SINGLE)?.on(length))
}

/// How plants are set along a row. Counting with it cannot fail.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlantRule {
    in_row: Length,
    end_gap: Length,
    lines: Lines,
}

impl PlantRule {
    /// Plants `in_row` apart along the row, the first `end_gap` from each piece's start, on so many lines.
    ///
    /// # Errors
    /// [`PlantError`] for the first value that is none.
    pub fn new(in_row: Length, end_gap: Length, lines: Lines) -> Result<Self, PlantError> {
        let none_or_more = |length: Length| length.is_finite() && length >= Length::ZERO;
        if !in_row.is_finite() || in_row < Length::TOLERANCE {
            return Err(PlantError::InRow(in_row));
        }
        if !none_or_more(end_gap) {
            return Err(PlantError::EndGap(end_gap));
        }
        if lines.per_row == 0 {
            return Err(PlantError::NoLines);
        }
        if !none_or_more(lines.apart) {
            return Err(PlantError::Apart(lines.apart));
        }
        Ok(Self { in_row, end_gap, lines })
    }

    /// From plant to plant along a line.
    pub const fn in_row(&self) -> Length {
        self.in_row
    }

    /// The least distance from a piece's end to a plant.
    pub const fn end_gap(&self) -> Length {
        self.end_gap
    }

    /// The lines on one row.
    pub const fn lines(&self) -> Lines {
        self.lines
    }

    /// How many plants stand on a piece of row of this length, on all of its lines.
    pub fn on(&self, length: Length) -> u64 {
        let even = u64::from(self.lines.per_row.div_ceil(2));
        let odd = u64::from(self.lines.per_row / 2);
        let on_even = self.on_line(length, 0).saturating_mul(even);
        on_even.saturating_add(self.on_line(length, 1).saturating_mul(odd))
    }

    /// How many plants stand on one line, from 0 on the left hand.
    ///
    /// Every line keeps the end gap at both ends. A staggered odd line starts half a spacing later, so it holds
    /// ⌊(L − 2e − p/2) / p + ε⌋ + 1 plants when L ≥ 2e + p/2, else none: as many as its neighbour when what is left
    /// over beyond the last whole spacing is half a spacing or more, and one fewer otherwise.
    pub fn on_line(&self, length: Length, line: u8) -> u64 {
        let free = length - self.end_gap * 2.0 - self.later(line);
        count_along(free.to_metres(), self.in_row.to_metres())
    }

    /// How far to the right of the row a line lies; negative for the left.
    pub fn right_of_row(&self, line: u8) -> Length {
        self.lines.apart * (f64::from(line) - (f64::from(self.lines.per_row) - 1.0) / 2.0)
    }

    /// How far from the start of a piece of row the plants of one line stand, in order; only those between two such
    /// distances, both included. What is left over beyond whole spacings lies at the piece's far end. Takes as long
    /// as there are plants to give, not as long as the piece.
    pub fn along_line(
        &self,
        length: Length,
        line: u8,
        between: RangeInclusive<Length>,
    ) -> impl Iterator<Item = Length> + use<> {
        let (first, in_row) = (self.end_gap + self.later(line), self.in_row);
        let steps = |to: Length| (to - first) / in_row;
        // Negative and beyond: `as` stops at the smallest and largest whole numbers.
        let start = (steps(*between.start()) - STANDS_ON).ceil().max(0.0) as u64;
        let end = (steps(*between.end()) + STANDS_ON + 1.0).floor().max(0.0) as u64;
        (start..end.min(self.on_line(length, line))).map(move |i| first + in_row * i as f64)
    }

    fn later(&self, line: u8) -> Length {
        if self.lines.staggered && line % 2 == 1 {
            self.in_row / 2.0
        } else {
            Length::ZERO
        }
    }
}

/// A plant this part of a spacing outside of a stretch still stands on its end.
const STANDS_ON: f64 = 1e-6;
