//! Nitrogen for sweet corn by the nitrate test before side-dressing.

use super::soil_test::SoilLevel;
use crate::quantity::MassPerArea;

/// Nitrogen to side-dress sweet corn with, by the nitrate nitrogen found in the soil before. The table has whole
/// parts per million; here the upper bound of a class belongs to it, and what lies above falls into the next.
///
/// # Source
/// Rutgers table as printed in University of Delaware Weekly Crop Update, "PSNT for Sweet Corn": ppm nitrate nitrogen to
/// lb N/acre, without manure 0–15: 160, 16–20: 120, 21–25: 80, 26–30: 40, above: 0; with manure 0–10: 160, 11–15: 120,
/// 16–20: 80, 21–25: 40, above: 0.
pub fn sweet_corn_after_nitrate_test(nitrate_nitrogen: SoilLevel, manured: bool) -> MassPerArea {
    let tops = if manured {
        [10.0, 15.0, 20.0, 25.0]
    } else {
        [15.0, 20.0, 25.0, 30.0]
    };
    let found = nitrate_nitrogen.to_parts_per_million();
    let pounds = tops
        .into_iter()
        .zip([160.0, 120.0, 80.0, 40.0])
        .find_map(|(top, pounds)| (found <= top).then_some(pounds));
    MassPerArea::pounds_per_acre(pounds.unwrap_or(0.0))
}

/// In how many doses to side-dress nitrogen: two where 100 lb/acre or more are due on light sand, when sweet corn is 12 in
/// and 18 to 24 in tall; one otherwise.
///
/// # Source
/// As [`sweet_corn_after_nitrate_test`].
pub fn side_dressings_of_nitrogen(rate: MassPerArea, light_sand: bool) -> usize {
    // A hair below, for what unit factors lose.
    let large = rate.to_pounds_per_acre() >= 100.0 - 1e-9;
    if large && light_sand { 2 } else { 1 }
}
