//! What rows may give, from published yields. A range to plan by, never a promise.

use super::unworkable::{Unworkable, not_negative};
use crate::quantity::Length;

/// What rows may give, in the unit of the published yield: pounds, ears, bunches.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Harvest {
    /// The lower published yield.
    pub low: f64,
    /// The upper published yield; the same where a source gives one number, which is then an average, and a good or a
    /// bad year lies well to either side of it.
    pub high: f64,
}

/// The length that garden yields are published for.
pub const YIELD_LENGTH: Length = Length::feet(100.0);

/// What a length of row may give: length ÷ 100 ft × each end of the published yield.
///
/// # Errors
/// When a number is less than nothing or none, or the ends are the wrong way round.
///
/// # Source
/// C. Marr, "Vegetable Garden Planting Guide", MF-315, Kansas State University Cooperative Extension: "average crop
/// expected per 100 feet". Taken in proportion to the length: common practice, no source.
pub fn harvest(length: Length, low_per_100_feet: f64, high_per_100_feet: f64) -> Result<Harvest, Unworkable> {
    not_negative(length.to_metres(), "the row's length")?;
    not_negative(low_per_100_feet, "the published yield")?;
    not_negative(high_per_100_feet, "the published yield")?;
    if low_per_100_feet > high_per_100_feet {
        return Err(Unworkable::MoreThanAll("the lower yield", "the upper yield"));
    }
    let hundreds = length / YIELD_LENGTH;
    Ok(Harvest {
        low: low_per_100_feet * hundreds,
        high: high_per_100_feet * hundreds,
    })
}
