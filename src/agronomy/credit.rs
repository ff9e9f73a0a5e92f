//! What the ground and the water bring by themselves, and what is still to be given.

use super::amount::{Amount, amount_not_negative};
use super::unworkable::{Unworkable, not_negative};
use crate::quantity::{Concentration, Fraction, Length, Mass, MassPerArea};

/// Manure by how fast its organic nitrogen is released.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Manure {
    /// Cow manure with less than 18 % dry matter.
    WetCow,
    /// Cow manure with 18 % dry matter or more.
    SolidCow,
    /// Poultry manure.
    Poultry,
}

impl Manure {
    /// The parts of its organic nitrogen released in the year it is spread, in the year after, and in the one after that.
    ///
    /// # Source
    /// Cornell University, CSS 412, module 2, release of organic nitrogen in manure.
    const fn release(self) -> [f64; 3] {
        let first = match self {
            Self::WetCow => 0.35,
            Self::SolidCow => 0.25,
            Self::Poultry => 0.55,
        };
        [first, 0.12, 0.05]
    }
}

/// Nitrogen that manure releases this year, one amount for each year it was spread in: `organic_nitrogen` holds what was
/// spread this year, last year, and the year before. Earlier years count nothing.
///
/// # Source
/// Cornell University, CSS 412, module 2, release of organic nitrogen in manure.
pub fn manure_release<Q: Amount>(manure: Manure, organic_nitrogen: &[Q]) -> Vec<Q> {
    let release = manure.release().into_iter().chain(std::iter::repeat(0.0));
    organic_nitrogen
        .iter()
        .zip(release)
        .map(|(&nitrogen, part)| nitrogen * part)
        .collect()
}

/// Nitrogen of an organic material that becomes available: amount × nitrogen × availability.
///
/// # Source
/// Total nitrogen: Ohio State University Extension ANR-34 (2016), Table 1. Availability: University of Georgia, SARE
/// project LS16-269, final report (composts 1–4 % of total nitrogen in 100 days, poultry litters 8–37 %, commercial
/// organic fertilizers 21–87 %).
pub fn available_nitrogen<Q: Amount>(material: Q, nitrogen: Fraction, available: Fraction) -> Q {
    material * nitrogen.get() * available.get()
}

/// Nitrogen that soil organic matter brings in a season: 10 lb/acre for each percent of it.
///
/// # Source
/// V. Grubinger, University of Vermont Extension, Nitrogen Management for Annual Vegetable Crops.
pub fn organic_matter_credit(organic_matter: Fraction) -> MassPerArea {
    MassPerArea::pounds_per_acre(10.0 * organic_matter.to_percent())
}

/// Nitrogen that manure worked in brings in its season, by the short rule: 5 lb for each ton.
///
/// # Source
/// As [`organic_matter_credit`].
pub fn worked_in_manure_credit<Q: Amount>(manure: Q) -> Q {
    manure * (Mass::pounds(5.0) / Mass::pounds(2000.0))
}

/// Nitrogen that a vigorous legume sod brings when it is turned under: 100 lb/acre.
///
/// # Source
/// As [`organic_matter_credit`].
pub fn legume_sod_credit() -> MassPerArea {
    MassPerArea::pounds_per_acre(100.0)
}

/// Nitrogen that comes with the water: strength × depth. The strength is of nitrogen; a report of nitrate goes through
/// [`super::nitrogen_from_nitrate`] first.
///
/// # Errors
/// When one of them is less than nothing or no number.
///
/// # Source
/// Common practice, no source: 0.2266 lb/acre for each part per million and inch.
pub fn water_credit(nitrogen: Concentration, depth: Length) -> Result<MassPerArea, Unworkable> {
    let strength = not_negative(nitrogen.to_kilograms_per_cubic_metre(), "the nitrogen in the water")?;
    let depth = not_negative(depth.to_metres(), "the depth of water")?;
    Ok(MassPerArea::kilograms_per_square_metre(strength * depth))
}

/// The most nitrate nitrogen that US drinking water may hold: 10 mg/L.
///
/// # Source
/// United States Environmental Protection Agency, National Pesticide Survey, nitrate fact sheet.
pub const fn drinking_water_limit() -> Concentration {
    Concentration::parts_per_million(10.0)
}

/// A need after its credits.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AfterCredits<Q> {
    /// What is still to be given; never below nothing.
    pub still: Q,
    /// What the credits are more than the need.
    pub over: Q,
}

/// A need less its credits, at nothing where they are more.
///
/// # Errors
/// When the need or a credit is less than nothing or no number.
///
/// # Source
/// As [`organic_matter_credit`].
pub fn after_credits<Q: Amount>(need: Q, credits: &[Q]) -> Result<AfterCredits<Q>, Unworkable> {
    let nothing = Q::default();
    amount_not_negative(need, "the need")?;
    let mut sum = nothing;
    for &credit in credits {
        sum = sum + amount_not_negative(credit, "a credit")?;
    }
    Ok(if sum <= need {
        AfterCredits {
            still: need - sum,
            over: nothing,
        }
    } else {
        AfterCredits {
            still: nothing,
            over: sum - need,
        }
    })
}
