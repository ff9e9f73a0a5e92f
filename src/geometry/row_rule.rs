//! How rows are to be laid over some ground, and how many lines that makes.

use super::wording::in_metres;
use crate::quantity::{Bearing, Length, count as marked};

/// The most row lines laid over one region: a kilometre at a spacing of a millimetre. More is a slip of the unit.
pub const MAX_ROW_LINES: usize = 1_000_000;

/// The most pieces that rows of one region may be cut into: a quarter of a gigabyte of them.
pub const MAX_PIECES: usize = 16_000_000;

/// A count is not lost for want of this part of a spacing: 30 ft at 6 in is 60 plants although the feet, in binary,
/// may come to a hair less. Far below what can be measured, far above what binary fractions lose on any field.
const COUNT_FORGIVES: f64 = 1e-6;
/// … and what is left of a width or a piece may be this much (metres) below nothing and still hold one.
pub(super) const LENGTH_FORGIVES: f64 = 1e-6;

/// Where the width goes that is left over when the lines do not fill the ground.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Remainder {
    /// Half of it on either side.
    #[default]
    Centred,
    /// On the left hand, seen along the bearing: the last row stands at the edge margin from the right edge.
    Left,
    /// On the right hand, seen along the bearing: the first row stands at the edge margin from the left edge.
    Right,
}

/// How rows are laid over some ground.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RowRule {
    /// The direction rows run in. Rows are numbered from the left hand, seen along it.
    pub bearing: Bearing,
    /// From one row line to the next, square across.
    pub spacing: Length,
    /// From the ground's farthest edge on either hand to the nearest row line. Other edges, of notches and holes, do
    /// not move rows.
    pub edge_margin: Length,
    /// Where the width goes that is left over.
    pub remainder: Remainder,
    /// What every piece of row loses at both of its ends, measured along the row.
    pub headland: Length,
    /// Pieces shorter than this, after the headlands, are dropped. Zero keeps every piece with a length.
    pub shortest: Length,
}

/// Why no rows can be laid.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum RowError {
    /// A spacing that is zero, negative, less than can be measured, or not a number.
    #[error("The row spacing is {}; it has to be a length above zero. Type the distance from one row to the next.", in_metres(*.0))]
    Spacing(Length),
    /// An edge margin that is negative or not a number.
    #[error("The edge margin is {}; it has to be zero or more. Type the distance from the edge to the first row.", in_metres(*.0))]
    EdgeMargin(Length),
    /// A headland that is negative or not a number.
    #[error("The headland is {}; it has to be zero or more. Type the length left free at both ends of a row.", in_metres(*.0))]
    Headland(Length),
    /// A shortest row that is negative or not a number.
    #[error("The shortest row worth planting is {}; it has to be zero or more. Type zero to keep every piece.", in_metres(*.0))]
    Shortest(Length),
    /// More row lines than the program lays.
    #[error(
        "That would make {} rows; up to {} can be laid over one bed. Type a wider row spacing, and check its unit.",
        marked(*count), marked(*limit as u64)
    )]
    TooManyRows {
        /// How many lines the rule asks for.
        count: u64,
        /// How many there may be.
        limit: usize,
    },
    /// Rows cut into more pieces than the program keeps.
    #[error(
        "The bed's edges would cut its rows into {} pieces; up to {} can be kept. Type a wider row spacing or simplify the outline.",
        marked(*count), marked(*limit as u64)
    )]
    TooManyPieces {
        /// How many pieces there would be, at most.
        count: u64,
        /// How many there may be.
        limit: usize,
    },
}

/// Where the row lines of a rule lie across some ground.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct RowLines {
    /// Across coordinate of the first line from the left hand, in metres.
    pub(super) first: f64,
    /// From line to line, in metres.
    pub(super) spacing: f64,
    /// How many lines.
    pub(super) count: usize,
    /// The width left over, in metres.
    pub(super) remainder: f64,
}

impl RowRule {
    /// Whether every length of the rule is one.
    ///
    /// # Errors
    /// The first that is not.
    pub fn checked(&self) -> Result<(), RowError> {
        if !self.spacing.is_finite() || self.spacing < Length::TOLERANCE {
            return Err(RowError::Spacing(self.spacing));
        }
        let none_or_more = |length: Length| length.is_finite() && length >= Length::ZERO;
        if !none_or_more(self.edge_margin) {
            return Err(RowError::EdgeMargin(self.edge_margin));
        }
        if !none_or_more(self.headland) {
            return Err(RowError::Headland(self.headland));
        }
        if !none_or_more(self.shortest) {
            return Err(RowError::Shortest(self.shortest));
        }
        Ok(())
    }

    /// The lines laid over ground that reaches from `left` to `right` (metres, across).
    pub(super) fn lines(&self, left: f64, right: f64) -> Result<RowLines, RowError> {
        self.checked()?;
        let (spacing, margin) = (self.spacing.to_metres(), self.edge_margin.to_metres());
        let free = (right - left) - 2.0 * margin;
        let wanted = count_along(free, spacing);
        let count = usize::try_from(wanted).unwrap_or(usize::MAX);
        if count > MAX_ROW_LINES {
            return Err(RowError::TooManyRows {
                count: wanted,
                limit: MAX_ROW_LINES,
            });
        }
        let remainder = match count {
            0 => 0.0,
            count => (free - (count - 1) as f64 * spacing).max(0.0),
        };
        let before = match self.remainder {
            Remainder::Centred => remainder / 2.0,
            Remainder::Left => remainder,
            Remainder::Right => 0.0,
        };
        Ok(RowLines {
            first: left + margin + before,
            // One line alone has no next: any step will do, and a plain one keeps the arithmetic small.
            spacing: if count > 1 { spacing } else { 1.0 },
            count,
            remainder,
        })
    }
}

/// How many things stand on `free` metres when the first stands at its start and the next ones `spacing` apart:
/// ⌊free / spacing + ε⌋ + 1, and none when `free` is below nothing or not a number.
pub(super) fn count_along(free: f64, spacing: f64) -> u64 {
    if free >= -LENGTH_FORGIVES {
        // A count beyond what a whole number holds stays at the largest one.
        ((free.max(0.0) / spacing + COUNT_FORGIVES).floor() as u64).saturating_add(1)
    } else {
        0
    }
}
