//! Which rows stand for all where there is no room for each: every fifth, say.

/// Steps between numbers and between rows, in the order they are tried.
const STEPS: [u32; 19] = [
    1,
    2,
    5,
    10,
    20,
    50,
    100,
    200,
    500,
    1000,
    2000,
    5000,
    10_000,
    20_000,
    50_000,
    100_000,
    1_000_000,
    10_000_000,
    100_000_000,
];

/// The first of the steps 1, 2, 5, 10, 20, 50, … that is no smaller than `least`.
pub(super) fn step_of(least: f64) -> u32 {
    STEPS
        .into_iter()
        .find(|&step| f64::from(step) >= least)
        .unwrap_or(u32::MAX)
}
