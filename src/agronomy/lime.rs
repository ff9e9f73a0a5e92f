//! Lime: how much of the one in hand, and in how many doses.

use super::amount::{Amount, amount_not_negative};
use super::unworkable::{Unworkable, positive};
use crate::quantity::MassPerArea;

/// The lime to spread where a laboratory asks for so much at 100 % calcium carbonate equivalent: amount × 100 ÷ equivalent.
/// The equivalent is the percentage on the label; burnt and hydrated lime are over 100.
///
/// # Errors
/// When the equivalent is nothing or no number, or the amount is less than nothing.
///
/// # Source
/// Penn State Agricultural Analytical Services Laboratory, Home Garden report notes.
pub fn lime_for<Q: Amount>(at_full_strength: Q, carbonate_equivalent_percent: f64) -> Result<Q, Unworkable> {
    let percent = positive(carbonate_equivalent_percent, "the calcium carbonate equivalent")?;
    Ok(amount_not_negative(at_full_strength, "the lime asked for")? * (100.0 / percent))
}

/// The most lime that is spread in one dose: 10 lb per 100 sq ft.
///
/// # Source
/// As [`lime_for`].
pub fn lime_in_one_dose() -> MassPerArea {
    MassPerArea::pounds_per_100_square_feet(10.0)
}

/// In how many doses to spread lime, six months apart: one up to 10 lb per 100 sq ft, two up to 20, three above. The notes
/// have whole pounds; the upper bound of a class belongs to it here.
///
/// # Source
/// As [`lime_for`].
pub fn lime_doses(rate: MassPerArea) -> usize {
    // A hair for what unit factors lose.
    match rate / lime_in_one_dose() * (1.0 - 1e-9) {
        doses if doses <= 1.0 => 1,
        doses if doses <= 2.0 => 2,
        _ => 3,
    }
}
