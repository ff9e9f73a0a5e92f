//! What a bed's crop does not say, where a crop of the grower's own starts from nothing, and what that leaves out.

use std::sync::Arc;

use super::types::{BedPlan, HeadsUp};
use crate::catalog::Crop;
use crate::layout::{Bed, Item, Water};

/// What is missing: the in-row spacing for the bed's water. Without it no plant can be counted, and no seed.
pub(super) fn missing_in_row(bed: &Bed, plan: &BedPlan, crop: &Crop) -> Option<Arc<HeadsUp>> {
    if plan.stand.is_some() {
        return None;
    }
    Some(Arc::new(HeadsUp {
        about: Item::Bed(bed.id),
        what: format!("{}.", no_in_row(&crop.name, bed.water)),
        why: format!(
            "No plant of {} can be counted, and no seed. Type the spacing in the bed, under “In the row”, or in the crop book.",
            bed.name
        ),
        source: "The crop book as entered".to_owned(),
    }))
}

/// That the crop book has no in-row spacing of a crop for a bed's water, in words without a full stop.
pub fn no_in_row(crop: &str, water: Water) -> String {
    let where_it = if water.through_tape() {
        "where all its water comes through the tape"
    } else {
        "where water may run short"
    };
    format!("The crop book has no in-row spacing of {crop} {where_it}")
}
