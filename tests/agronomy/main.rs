//! The arithmetic of the trade against published figures, each beside its source.
//!
//! Exact values are asserted; published ones within the tolerance that their own rounding asks for.

mod germination;
mod ground;
mod injecting;
mod mixing;
mod need;
mod nutrient;
mod packets;
mod practice;
mod refusing;
mod seed;
mod sowing;
mod stand;

use quillet::catalog::Analysis;

/// Asserts a value to a part in a thousand million.
#[track_caller]
fn exact(value: f64, expected: f64) {
    assert!(
        (value - expected).abs() <= 1e-9 * expected.abs().max(1e-3),
        "{value} is not {expected}"
    );
}

/// Asserts a value to within a tolerance, half of the last digit printed as a rule.
#[track_caller]
fn near(value: f64, published: f64, tolerance: f64) {
    assert!(
        (value - published).abs() <= tolerance * (1.0 + 1e-9),
        "{value} is not within {tolerance} of {published}"
    );
}

/// The analysis on a label.
fn label(n: f64, p2o5: f64, k2o: f64) -> Analysis {
    Analysis::percent(n, p2o5, k2o).unwrap_or_default()
}
