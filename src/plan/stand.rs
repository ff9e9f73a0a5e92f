//! How plants stand in the row: the crop's spacing for the bed's water, or the grower's own.

use super::types::{InRowFrom, Stand};
use crate::catalog::Crop;
use crate::layout::{Planting, Sowing, Water};
use crate::quantity::Fraction;

/// How a planting stands. `None` when the catalogue lacks the crop and the grower has given no in-row spacing.
pub(super) fn stand(planting: &Planting, water: Water, crop: Option<&Crop>) -> Option<Stand> {
    let (in_row, in_row_from) = match (planting.in_row, crop) {
        (Some(own), _) => (own, InRowFrom::Grower),
        (None, Some(crop)) if water.through_tape() => (crop.in_row_watered.value, InRowFrom::CropWatered),
        (None, Some(crop)) => (crop.in_row_dry.value, InRowFrom::CropDry),
        (None, None) => return None,
    };
    let seeds_per_plant = match (planting.sowing, crop) {
        (Some(Sowing::Seed { seeds_per_plant }), _) => Some(seeds_per_plant),
        (Some(Sowing::Plants), _) | (None, None) => None,
        (None, Some(crop)) if crop.method.value.is_sown() => {
            Some(crop.seeds_per_plant.as_ref().map_or(1.0, |seeds| seeds.value))
        }
        (None, Some(_)) => None,
    };
    let legal_minimum = crop
        .and_then(|crop| crop.least_germination.as_ref())
        .map(|least| least.value);
    Some(Stand {
        in_row,
        in_row_from,
        end_gap: planting.end_gap.unwrap_or(in_row / 2.0),
        seeds_per_plant,
        germination: planting.germination.or(legal_minimum).unwrap_or(Fraction::ONE),
    })
}
