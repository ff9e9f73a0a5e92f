//! Rows and plants over ground, as handbooks tabulate them. What truly fits a plot is counted row by row elsewhere;
//! these are the figures to compare it with.

use super::unworkable::{Unworkable, positive_length};
use crate::quantity::{Area, Length};

/// Row length on so much ground: area ÷ row spacing. On an acre, 43,560 ÷ spacing in feet.
///
/// # Errors
/// When the spacing is nothing.
///
/// # Source
/// Mid-Atlantic Commercial Vegetable Production Recommendations, linear-bed-foot values (7,260 at 6 ft).
pub fn row_length_per_area(area: Area, row_spacing: Length) -> Result<Length, Unworkable> {
    Ok(area / positive_length(row_spacing, "the row spacing")?)
}

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

/// Whole in-row spaces on a piece of row. Plants stand in each space, so this is the count when the ends are left half
/// a space free; one more stands when the first and the last are set on the very ends.
///
/// # Errors
/// When the spacing is nothing, or the length is no number.
///
/// # Source
/// University of Maine Cooperative Extension, Planting Chart for the Home Vegetable Garden: 6 to 7 plants on 10 ft at
/// 18 in, which is both counts.
pub fn spaces_in(length: Length, in_row: Length) -> Result<u64, Unworkable> {
    let spaces = length / positive_length(in_row, "the in-row spacing")?;
    if !spaces.is_finite() || spaces >= MOST_SPACES {
        return Err(Unworkable::TooMany("the plants"));
    }
    Ok((spaces + FORGIVEN_SPACE).max(0.0).floor() as u64)
}

/// A millionth of a space, which decimal feet lose in binary: 30 ft at 6 in is 60 spaces, never 59.
const FORGIVEN_SPACE: f64 = 1e-6;
/// No row has as many plants, and whole numbers below it are exact.
const MOST_SPACES: f64 = 1e12;

/// The length of row to count a stand on: on it, a plant is a thousand plants to the acre.
///
/// # Errors
/// When the spacing is nothing.
///
/// # Source
/// Common practice, no source: 43.56 ÷ spacing in feet; 17.424 ft at 30 in is widely tabulated.
pub fn stand_sample_length(row_spacing: Length) -> Result<Length, Unworkable> {
    row_length_per_area(Area::acres(0.001), row_spacing)
}
