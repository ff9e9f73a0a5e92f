//! Rows and plants over ground, as handbooks tabulate them. What truly fits a plot is counted row by row elsewhere;
//! these are the figures to compare it with.

use super::unworkable::{Unworkable, positive_length};
use crate::quantity::{Area, Length};

/// Plants on so much ground, not rounded: area ÷ (row spacing × in-row spacing).
///
/// # Errors
/// When a spacing is nothing.
///
/// # Source
/// Valley Potato Grower, March 2021, p. 12, Table 1: 6,272,640 ÷ (row in × in-row in) to the acre.
pub fn plants_per_area(area: Area, row_spacing: Length, in_row: Length) -> Result<f64, Unworkable> {
    let cell = positive_length(row_spacing, "the row spacing")? * positive_length(in_row, "the in-row spacing")?;
    Ok(area / cell)
}
