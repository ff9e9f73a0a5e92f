//! The cheapest mix of materials that meets nitrogen, phosphate and potash, or what stands in its way.
//!
//! - `model` holds what is asked and answered.
//! - `programme` writes it as a linear programme and has it solved.

mod model;
mod programme;

pub use model::{Blend, Limit, Mix, MixMaterial, MixTarget, MostNutrients, NutrientMiss, Unmet};

use super::nutrient::Nutrient;
use super::unworkable::{Unworkable, not_negative};
use programme::{Programme, Softness};

/// Mixes materials for a target: the cheapest mix that keeps to every limit. Where a material has no price, the lightest
/// mix, and the answer names the materials without one. Among equally cheap mixes, materials that stand first are
/// preferred.
///
/// Nitrogen counts with its availability throughout, in what is wanted and in what must not be gone over.
///
/// Where no mix keeps to every limit, two are given instead: the one that is short by the least and, that being so, over
/// by the least; and the one that is over nothing and, that being so, short by the least. Beside them stands each limit
/// without which all others could be kept.
///
/// # Errors
/// When there is no material, a number is less than nothing or none, the most of a nutrient is below its least, or more is
/// wanted than any farm gives.
///
/// # Source
/// Linear programming (G. B. Dantzig, "Maximization of a linear function of variables subject to linear inequalities",
/// 1947; from memory), by a library.
pub fn mix(materials: &[MixMaterial], target: &MixTarget) -> Result<Mix, Unworkable> {
    check(materials, target)?;
    let programme = Programme::new(materials, target);
    if let Some(amounts) = programme.solve(Softness::Hard, None) {
        return Ok(Mix::Met(Blend::new(amounts, materials, target)));
    }
    // Both of these can always be met: the first by being short and over, the second by no material at all.
    let blend = |softness| {
        let amounts = programme.solve(softness, None).unwrap_or_default();
        Blend::new(amounts, materials, target)
    };
    Ok(Mix::Unmet(Unmet {
        least_short: blend(Softness::ShortAndOver),
        never_over: blend(Softness::Short),
        in_the_way: limits(materials, target)
            .into_iter()
            .filter(|&limit| programme.solve(Softness::Hard, Some(limit)).is_some())
            .collect(),
    }))
}

/// Every limit that is set.
fn limits(materials: &[MixMaterial], target: &MixTarget) -> Vec<Limit> {
    let mut limits = Vec::new();
    for nutrient in Nutrient::ALL {
        if target.least.of(nutrient).to_kilograms() > 0.0 {
            limits.push(Limit::Least(nutrient));
        }
        if target.most.of(nutrient).is_some() {
            limits.push(Limit::Most(nutrient));
        }
    }
    for (place, material) in materials.iter().enumerate() {
        if material.at_hand.is_some() {
            limits.push(Limit::AtHand(place));
        }
    }
    if target.restricted_n.is_some() && materials.iter().any(|material| material.is_restricted) {
        limits.push(Limit::Restricted);
    }
    limits
}

/// More of a nutrient than any farm gives: a million tonnes.
const MOST_KILOGRAMS: f64 = 1e9;

/// Refuses what the solver must never see.
fn check(materials: &[MixMaterial], target: &MixTarget) -> Result<(), Unworkable> {
    if materials.is_empty() {
        return Err(Unworkable::NoMaterial);
    }
    for material in materials {
        not_negative(material.price_per_kilogram.unwrap_or(0.0), "the price of a material")?;
        if let Some(most) = material.at_hand {
            not_negative(most.to_kilograms(), "the most of a material")?;
        }
    }
    if let Some(most) = target.restricted_n {
        not_negative(most.to_kilograms(), "the nitrogen that is allowed")?;
    }
    for nutrient in Nutrient::ALL {
        let least = not_negative(target.least.of(nutrient).to_kilograms(), "the nutrient wanted")?;
        if least > MOST_KILOGRAMS {
            return Err(Unworkable::TooMany("the nutrients wanted"));
        }
        if let Some(most) = target.most.of(nutrient) {
            let most = not_negative(most.to_kilograms(), "the most of a nutrient")?;
            if least > most {
                return Err(Unworkable::MoreThanAll("the least of a nutrient", "the most of it"));
            }
        }
    }
    Ok(())
}
