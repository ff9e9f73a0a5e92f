//! How much drip tape rows take.

use super::unworkable::{Unworkable, not_negative};
use crate::quantity::Length;

/// Tape for one row: every line runs along every piece, and each piece of each line takes `spare` more for the
/// fittings at its ends.
///
/// # Errors
/// When a length is less than nothing or no number.
///
/// # Source
/// Common practice, no source: arithmetic.
pub fn tape_for_row(length: Length, pieces: usize, lines: u8, spare: Length) -> Result<Length, Unworkable> {
    not_negative(length.to_metres(), "the row's length")?;
    not_negative(spare.to_metres(), "the spare tape")?;
    Ok((length + spare * pieces as f64) * f64::from(lines))
}
