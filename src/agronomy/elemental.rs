//! Phosphorus and phosphate, potassium and potash, nitrogen and nitrate: the same stuff written in two ways.
//!
//! Labels speak of phosphate (P2O5) and potash (K2O), some laboratories of phosphorus (P) and potassium (K), well reports
//! of nitrate (NO3) or of the nitrogen in it. Inside the program everything is in the terms of a label; these are the
//! doors.

use std::ops::{Div, Mul};

// Atomic weights: International Union of Pure and Applied Chemistry, abridged standard atomic weights (from memory).
const PHOSPHORUS: f64 = 30.973_762;
const POTASSIUM: f64 = 39.0983;
const OXYGEN: f64 = 15.999;
const NITROGEN: f64 = 14.007;

/// The part of phosphate that is phosphorus, 0.436427.
const P_IN_P2O5: f64 = 2.0 * PHOSPHORUS / (2.0 * PHOSPHORUS + 5.0 * OXYGEN);
/// The part of potash that is potassium, 0.830151.
const K_IN_K2O: f64 = 2.0 * POTASSIUM / (2.0 * POTASSIUM + OXYGEN);
/// The part of nitrate that is nitrogen, 1 in 4.4267.
const N_IN_NO3: f64 = NITROGEN / (NITROGEN + 3.0 * OXYGEN);

/// Phosphate (P2O5) from phosphorus (P): × 2.29133. The amount may be a weight, a rate or a strength.
///
/// # Source
/// Worked out from atomic weights. Virginia Cooperative Extension SPES-201NP, Table 1a, prints 2.2910; New Mexico State
/// University Guide H-120 prints 2.29.
pub fn phosphate_from_phosphorus<Q: Div<f64, Output = Q>>(phosphorus: Q) -> Q {
    phosphorus / P_IN_P2O5
}

/// Phosphorus (P) from phosphate (P2O5): × 0.436427.
///
/// # Source
/// As [`phosphate_from_phosphorus`]; Virginia Cooperative Extension SPES-201NP, Table 1a, prints 0.4365.
pub fn phosphorus_from_phosphate<Q: Mul<f64, Output = Q>>(phosphate: Q) -> Q {
    phosphate * P_IN_P2O5
}

/// Potash (K2O) from potassium (K): × 1.20460.
///
/// # Source
/// Worked out from atomic weights. Virginia Cooperative Extension SPES-201NP, Table 1a, prints 1.2051, which is not the
/// reciprocal of the 0.8301 beside it; New Mexico State University Guide H-120 prints 1.2.
pub fn potash_from_potassium<Q: Div<f64, Output = Q>>(potassium: Q) -> Q {
    potassium / K_IN_K2O
}

/// Potassium (K) from potash (K2O): × 0.830151.
///
/// # Source
/// As [`potash_from_potassium`]; Virginia Cooperative Extension SPES-201NP, Table 1a, prints 0.8301.
pub fn potassium_from_potash<Q: Mul<f64, Output = Q>>(potash: Q) -> Q {
    potash * K_IN_K2O
}

/// Nitrogen from nitrate (NO3) as a well report may give it: ÷ 4.4267. A report of "nitrate" can mean either, and they
/// are more than fourfold apart: ask which.
///
/// # Source
/// Worked out from atomic weights; common practice, no source, prints 4.43.
pub fn nitrogen_from_nitrate<Q: Mul<f64, Output = Q>>(nitrate: Q) -> Q {
    nitrate * N_IN_NO3
}

/// Nitrate (NO3) from the nitrogen in it: × 4.4267.
///
/// # Source
/// As [`nitrogen_from_nitrate`].
pub fn nitrate_from_nitrogen<Q: Div<f64, Output = Q>>(nitrogen: Q) -> Q {
    nitrogen / N_IN_NO3
}
