//! Beds that are planted and of which nothing can be ordered, so that whoever reads the list does not take it for whole.

use crate::layout::{Bed, Layout};
use crate::plan::{BedPlan, Plan, no_in_row};

/// One sentence for each such bed, in the layout's order.
pub(super) fn not_counted(layout: &Layout, plan: &Plan) -> Vec<String> {
    let beds = plan.beds.iter().filter(|of| of.stand.is_none());
    beds.filter_map(|of| sentence(layout.bed(of.bed)?, of)).collect()
}

fn sentence(bed: &Bed, plan: &BedPlan) -> Option<String> {
    let planting = bed
        .planting
        .as_ref()
        .filter(|planting| !planting.crop.is_not_chosen())?;
    let why = match &plan.crop {
        Some(crop) => no_in_row(&crop.name, bed.water),
        None => format!("The crop book has no crop “{}”", planting.crop.0),
    };
    Some(format!("Nothing for {} is in this list. {why}.", bed.name))
}
