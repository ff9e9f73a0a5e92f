//! Fertilizers are salts: how salty they are, how much sodium they bring, how much of them seed bears near it.

use super::unworkable::{Unworkable, not_negative, positive};
use crate::catalog::Analysis;
use crate::quantity::{Fraction, Length, Mass, MassPerArea, MassPerLength};
use std::ops::Mul;

/// Salt index for each percent of nutrient: index ÷ (N + P2O5 + K2O in percent). It compares materials for the same
/// dose of nutrient; it does not foretell injury at a rate.
///
/// # Errors
/// When the material holds no nutrient, or the index is less than nothing or no number.
///
/// # Source
/// Rader, White and Whittaker (1943), Soil Science 55(3):201–218: sodium nitrate = 100, equal weights. Values as listed on
/// a page crediting Mortvedt (2001), Calculating Salt Index.
pub fn salt_per_unit(salt_index: f64, analysis: Analysis) -> Result<f64, Unworkable> {
    let nutrients = analysis.n.to_percent() + analysis.p2o5.to_percent() + analysis.k2o.to_percent();
    Ok(not_negative(salt_index, "the salt index")? / positive(nutrients, "the nutrients on the label")?)
}

/// The salt index of a dry blend: the parts' indices weighed by their weights.
///
/// # Errors
/// When the blend weighs nothing, or a weight or an index is less than nothing or no number.
///
/// # Source
/// Mortvedt (2001), Calculating Salt Index (method from memory).
pub fn salt_index_of_blend(parts: &[(Mass, f64)]) -> Result<f64, Unworkable> {
    let mut salt = Mass::ZERO;
    let mut whole = Mass::ZERO;
    for &(mass, index) in parts {
        not_negative(mass.to_kilograms(), "the weight of a part")?;
        salt += mass * not_negative(index, "the salt index")?;
        whole += mass;
    }
    positive(whole.to_kilograms(), "the weight of the blend")?;
    Ok(salt / whole)
}

/// The sodium that comes with a material: amount × part. The amount may be a weight or a rate.
///
/// # Source
/// International Plant Nutrition Institute, Nutrient Source Specifics No. 24, Sodium Nitrate: 16 % N, 26 % Na.
pub fn sodium_in<Q: Mul<f64, Output = Q>>(product: Q, sodium: Fraction) -> Q {
    product * sodium.get()
}

/// Where fertilizer lies to the seed of a row.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SeedPlacement {
    /// In the furrow, touching the seed.
    InContact,
    /// In a band about 2 in beside and 2 in below.
    Band {
        /// On soil that holds little: sand, or low in organic matter.
        low_exchange: bool,
    },
}

/// The most nitrogen and potash together along a row that seed of corn bears.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SeedLimit {
    /// Up to here a careful source goes.
    pub careful: MassPerLength,
    /// No source goes further.
    pub most: MassPerLength,
}

/// What seed bears near it, in nitrogen and potash together. Published for an acre of corn at 30 in, but it belongs to
/// the foot of row: wider rows bear no more of it.
///
/// # Source
/// In contact, 6 to 8 lb/acre at 30 in: Kansas State University Agronomy eUpdate, starter fertilizer articles. Band, 100
/// lb/acre, 70 on soil of low exchange capacity: Tri-State Fertilizer Recommendations, Bulletin E-2567 / AY-9-32 (1995),
/// placement section (from memory).
pub fn seed_limit(placement: SeedPlacement) -> SeedLimit {
    let (careful, most) = match placement {
        SeedPlacement::InContact => (6.0, 8.0),
        SeedPlacement::Band { low_exchange: false } => (100.0, 100.0),
        SeedPlacement::Band { low_exchange: true } => (70.0, 70.0),
    };
    let along = |pounds| MassPerArea::pounds_per_acre(pounds) * Length::inches(30.0);
    SeedLimit {
        careful: along(careful),
        most: along(most),
    }
}

/// Nitrogen and potash together in a product, which is what the limits near seed count.
///
/// # Source
/// As [`seed_limit`].
pub fn nitrogen_and_potash<Q: Mul<f64, Output = Q>>(product: Q, analysis: Analysis) -> Q {
    product * (analysis.n.get() + analysis.k2o.get())
}

/// The most product along a row that keeps to a limit of nitrogen and potash together; `None` where it holds neither,
/// and the limit says nothing of it.
///
/// # Source
/// As [`seed_limit`]: limit ÷ (N + K2O).
pub fn most_near_seed(limit: MassPerLength, analysis: Analysis) -> Option<MassPerLength> {
    let part = analysis.n.get() + analysis.k2o.get();
    (part > 0.0).then(|| limit / part)
}
