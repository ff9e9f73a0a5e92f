//! What rows may give, from published yields. A range to plan by, never a promise.

use std::ops::Mul;

use crate::quantity::Length;

/// What rows may give: a weight, or a number of ears, heads or bunches.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Harvest<Q> {
    /// The lower published yield.
    pub low: Q,
    /// The upper published yield; the same where a source gives one number, which is then an average, and a good or a
    /// bad year lies well to either side of it.
    pub high: Q,
}

impl<Q: PartialEq> Harvest<Q> {
    /// Whether one average stands behind it and no range.
    pub fn is_average(&self) -> bool {
        self.low == self.high
    }
}

/// What a length of row may give: length × each end of the published yield for a length.
///
/// # Source
/// C. Marr, "Vegetable Garden Planting Guide", MF-315, Kansas State University Cooperative Extension: "average crop
/// expected per 100 feet". Taken in proportion to the length: common practice, no source.
pub fn harvest<R: Mul<Length, Output = Q>, Q>(length: Length, low: R, high: R) -> Harvest<Q> {
    Harvest {
        low: low * length,
        high: high * length,
    }
}
