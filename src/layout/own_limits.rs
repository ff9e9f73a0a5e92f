//! How small and how large values of the grower's own may be that nothing else has. The rest asks [`super::limits`].

use super::limits::{LARGEST_AMOUNT, ValueError, range};
use super::own::{OwnHarvest, OwnValues};
use crate::quantity::MassPerArea;

/// What a length of row gives.
pub(super) fn own_harvest(harvest: OwnHarvest) -> Result<(), ValueError> {
    some_number(
        "the harvest",
        match harvest {
            OwnHarvest::Weight(rate) => rate.to_kilograms_per_metre(),
            OwnHarvest::Number(number) => number.to_per_metre(),
        },
    )
}

/// Nitrogen over ground.
pub(super) fn season_nitrogen(rate: MassPerArea) -> Result<(), ValueError> {
    some_number("the nitrogen for the season", rate.to_kilograms_per_square_metre())
}

/// A number over zero, up to the largest amount.
fn some_number(what: &'static str, number: f64) -> Result<(), ValueError> {
    if number <= 0.0 {
        return Err(ValueError::NotPositive(what));
    }
    range(what, number, 0.0, LARGEST_AMOUNT)
}

/// Years that seed keeps on a shelf. Longer than any table has; a larger number is a slip of the hand.
pub const MOST_YEARS_KEPT: u16 = 50;

/// Years that seed keeps, one or more.
pub(super) fn years_kept(years: u16) -> Result<(), ValueError> {
    range(
        "the number of years that seed keeps",
        f64::from(years),
        1.0,
        f64::from(MOST_YEARS_KEPT),
    )
}

/// A crop that starts from nothing has to say how it is put in the ground: no other crop says it for it.
pub(super) fn way_is_known(values: &OwnValues) -> Result<(), ValueError> {
    match values.method {
        Some(_) => Ok(()),
        None => Err(ValueError::Missing("how it is put in the ground")),
    }
}
