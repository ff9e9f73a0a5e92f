//! How much seed, and how many sets or pieces, a stand takes.

use super::unworkable::{Unworkable, not_negative, positive, positive_length, round_up};
use crate::quantity::{Fraction, Length, Mass};

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

/// How many seeds a buying table's "so much for so long a row" is for each plant that is left standing.
///
/// Such tables give amounts to buy: seed for sowing thickly by hand and thinning hard, with some kept for a second
/// sowing, and for cabbage kinds often enough for a whole plant bed. From 2 to 67 seeds for each plant stand behind
/// them, so no need is worked out from one.
///
/// # Errors
/// When the spacing, the row or the weight of one is nothing.
///
/// # Source
/// Common practice, no source: (amount ÷ weight of one) ÷ (length ÷ in-row spacing).
pub fn table_seeds_per_plant(
    amount: Mass,
    length: Length,
    weight_of_one: Mass,
    in_row: Length,
) -> Result<f64, Unworkable> {
    let plants = positive_length(length, "the length of row")? / positive_length(in_row, "the in-row spacing")?;
    Ok(seeds_in(amount, weight_of_one)? / plants)
}
