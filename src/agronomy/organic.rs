//! Organic sources: what of their nitrogen a crop gets, and the share that a restricted one may have.

use super::amount::{Amount, amount_not_negative, amount_positive};
use super::nutrient::{Nutrient, product_for};
use super::unworkable::{Unworkable, positive};
use crate::catalog::Analysis;
use crate::quantity::Fraction;

/// The product whose available nitrogen is so much: nitrogen ÷ (part × availability).
///
/// # Errors
/// When the material holds no nitrogen, or none of it becomes available.
///
/// # Source
/// Pacific Northwest Extension bulletins PNW 646 and PNW 533, and Gale et al. (2006), Journal of Environmental Quality
/// 35:2321–2332 (availabilities from memory: about 75 % for meals high in nitrogen, about 10 % for finished compost).
pub fn product_for_available<Q: Amount>(nitrogen: Q, analysis: Analysis, available: Fraction) -> Result<Q, Unworkable> {
    let available = positive(available.get(), "the share of nitrogen that becomes available")?;
    Ok(product_for(nitrogen, Nutrient::Nitrogen, analysis)? / available)
}

/// How nitrogen from a restricted source stands to what the rule allows.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RestrictedNitrogen<Q> {
    /// Its share of the crop's whole requirement; may be over 1.
    pub share: f64,
    /// The most that the rule allows over the season.
    pub most: Q,
}

impl<Q> RestrictedNitrogen<Q> {
    /// Whether it is more than the rule allows.
    pub fn is_over(&self) -> bool {
        // What unit factors lose is no breach.
        self.share > SODIUM_NITRATE_SHARE * (1.0 + 1e-9)
    }
}

/// A fifth of the crop's total nitrogen requirement.
const SODIUM_NITRATE_SHARE: f64 = 0.20;

/// Holds all nitrogen that a crop gets from sodium nitrate over the season against its total nitrogen requirement (not
/// against what is applied). The certifier decides; some other countries' rules and some buyers allow none.
///
/// # Errors
/// When the requirement is nothing, or an amount is less than nothing or no number.
///
/// # Source
/// 7 CFR 205.602(h): sodium nitrate is prohibited unless its use is restricted to no more than 20 % of the crop's total
/// nitrogen requirement (eCFR copy current to 24 March 2026).
pub fn sodium_nitrate_share<Q: Amount>(given: Q, requirement: Q) -> Result<RestrictedNitrogen<Q>, Unworkable> {
    let given = amount_not_negative(given, "the nitrogen given")?;
    let requirement = amount_positive(requirement, "the crop's nitrogen requirement")?;
    Ok(RestrictedNitrogen {
        share: given / requirement,
        most: requirement * SODIUM_NITRATE_SHARE,
    })
}
