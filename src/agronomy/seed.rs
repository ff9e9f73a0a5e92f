//! How much seed, and how many sets or pieces, a stand takes.

use super::unworkable::{Unworkable, not_negative, positive, round_up};
use crate::quantity::{Fraction, Mass};

/// Seeds to sow for a stand: plants × good seeds for each ÷ the part that comes up, and a spare part of that on top,
/// rounded up once at the end.
///
/// `seeds_per_plant` counts good seeds, before thinning; with plants, sets or pieces it is 1 and `germination` is the
/// whole. `spare` is a part of the need, 0.1 for a tenth more. Where the field takes a part of what germinates,
/// `germination` is [`comes_up`] of both.
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

/// The part of the seeds sown that comes up in the field: germination in the test × the part of those that get through
/// crust, cold and birds.
///
/// # Source
/// Common practice, no source: arithmetic. A germination test is made in warmth and even damp, so fewer come up
/// outside.
pub fn comes_up(germination: Fraction, field_emergence: Fraction) -> Fraction {
    Fraction::new(germination.get() * field_emergence.get()).unwrap_or_default()
}

/// Plants that come up and are still to be thinned: plants that are to stand × good seeds for each, rounded up.
///
/// # Errors
/// When `seeds_per_plant` is nothing, or the plants come to more than any farm has.
///
/// # Source
/// Common practice, no source: arithmetic.
pub fn plants_before_thinning(plants: u64, seeds_per_plant: f64) -> Result<u64, Unworkable> {
    let seeds_per_plant = positive(seeds_per_plant, "the number of seeds for each plant")?;
    round_up(plants as f64 * seeds_per_plant, "the plants")
}

/// The part of places at which at least one plant comes up, with `seeds` sown at each: 1 − (1 − p)ⁿ.
///
/// # Source
/// Common practice, no source: the chance that not all of n seeds fail, seeds failing one apart from the other.
pub fn places_filled(seeds: u16, comes_up: Fraction) -> Fraction {
    Fraction::new(1.0 - (1.0 - comes_up.get()).powi(i32::from(seeds))).unwrap_or_default()
}

/// What to drop by hand in each place so that so many good seeds fall there on average.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SeedsInEach {
    /// The whole number at or under the average.
    pub fewest: u16,
    /// The whole number at or over it.
    pub most: u16,
    /// Seeds for each place, on average.
    pub average: f64,
    /// The part of the places at which at least one plant comes up.
    pub filled: Fraction,
}

/// Seeds to drop in each place for so many good ones: good seeds ÷ the part that comes up, which is seldom whole, so some
/// places get the whole number under it and the others the one over it.
///
/// # Errors
/// When nothing is sown, nothing comes up, or a place takes more than 65,000 seeds.
///
/// # Source
/// Common practice, no source: arithmetic; the places that stay empty by [`places_filled`].
pub fn seeds_in_each(good_seeds: f64, comes_up: Fraction) -> Result<SeedsInEach, Unworkable> {
    let good = positive(good_seeds, "the number of seeds for each place")?;
    let average = good / positive(comes_up.get(), "germination")?;
    let most = u16::try_from(round_up(average, "the seeds")?).map_err(|_| Unworkable::TooMany("the seeds"))?;
    let fewest = if f64::from(most) - average < 1e-9 {
        most
    } else {
        most.saturating_sub(1)
    };
    let with_most = 1.0 - (f64::from(most) - average);
    let filled = |seeds| places_filled(seeds, comes_up).get();
    let filled = if fewest == most {
        filled(most)
    } else {
        filled(most) * with_most + filled(fewest) * (1.0 - with_most)
    };
    Ok(SeedsInEach {
        fewest,
        most,
        average,
        filled: Fraction::new(filled).unwrap_or_default(),
    })
}

/// Sets, cloves, seed pieces, slips, crowns or bought plants for so many places, a spare part on top, rounded up.
///
/// # Errors
/// When they come to more than any farm has.
///
/// # Source
/// Common practice, no source: arithmetic; one for each place.
pub fn pieces_needed(places: u64, spare: Fraction) -> Result<u64, Unworkable> {
    round_up(places as f64 * (1.0 + spare.get()), "the pieces")
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

/// Seeds in a weight, not rounded.
///
/// # Errors
/// When the weight of one is nothing, or the weight is less than nothing.
///
/// # Source
/// Common practice, no source: weight ÷ weight of one.
pub fn seeds_in(mass: Mass, weight_of_one: Mass) -> Result<f64, Unworkable> {
    not_negative(mass.to_kilograms(), "the weight of the seeds")?;
    Ok(mass / Mass::kilograms(positive(weight_of_one.to_kilograms(), "the weight of one seed")?))
}
