//! How much seed a stand takes.

use super::unworkable::{Unworkable, not_negative, positive, round_up};
use crate::quantity::{Fraction, Mass};

/// Seeds to sow for a stand: plants × good seeds for each ÷ the part that comes up, and a spare part of that on top,
/// rounded up once at the end.
///
/// `seeds_per_plant` counts good seeds, before thinning; with plants, sets or pieces it is 1 and `germination` is the
/// whole. `spare` is a part of the need, 0.1 for a tenth more.
///
/// # Errors
/// When `seeds_per_plant` or `germination` is nothing, or the seeds come to more than any farm has.
///
/// # Source
/// Common practice, no source: arithmetic.
///
/// # Examples
/// ```
/// # use quillet::{agronomy::seeds_needed, quantity::Fraction};
/// // 660 plants, two good seeds each, three quarters come up: 1,760; a tenth more is 1,936.
/// let part = |value| Fraction::new(value).unwrap_or_default();
/// assert_eq!(seeds_needed(660, 2.0, part(0.75), part(0.0)), Ok(1760));
/// assert_eq!(seeds_needed(660, 2.0, part(0.75), part(0.1)), Ok(1936));
/// ```
pub fn seeds_needed(
    plants: u64,
    seeds_per_plant: f64,
    germination: Fraction,
    spare: Fraction,
) -> Result<u64, Unworkable> {
    let seeds_per_plant = positive(seeds_per_plant, "the number of seeds for each plant")?;
    let germination = positive(germination.get(), "germination")?;
    let need = plants as f64 * seeds_per_plant / germination;
    round_up(need * (1.0 + spare.get()), "the seeds")
}

/// What so many seeds, sets or pieces weigh.
///
/// # Errors
/// When the weight of one is nothing or no number.
///
/// # Source
/// Common practice, no source: count × weight of one. A seed table's "seeds per ounce" is 1 oz over the weight of one.
pub fn seed_mass(seeds: u64, weight_of_one: Mass) -> Result<Mass, Unworkable> {
    positive(weight_of_one.to_kilograms(), "the weight of one seed")?;
    let mass = weight_of_one * seeds as f64;
    not_negative(mass.to_kilograms(), "the weight of the seeds").map(|_| mass)
}
