//! Values of the grower's own: put over a crop, or standing alone in one that starts from nothing.

use crate::catalog::{Crop, Ends, Mark, PlantingMethod, RowAmount, RowMeasure, SourceKey, Sourced};
use crate::layout::{Kind, OwnCrop, OwnHarvest, OwnValues};

/// A crop with other values in it, each marked as the grower's own.
pub(super) fn with_own(base: &Crop, values: &OwnValues) -> Crop {
    let mut crop = base.clone();
    if let Some(method) = values.method {
        if !method.is_same_on_shelf(base.method.value) {
            // What is published is of the other thing: depth and weight of a seed say nothing of a set.
            crop.depth = None;
            crop.field_seed = None;
            crop.seed_weight = None;
            crop.seed_weight_range = None;
            crop.buying = None;
        }
        crop.method = own(method);
    }
    if let Some(spacing) = values.row_spacing {
        crop.row_spacing = Some(both(spacing));
    }
    if let Some(spacing) = values.in_row_watered {
        crop.in_row_watered = Some(own(spacing));
    }
    if let Some(spacing) = values.in_row_dry {
        crop.in_row_dry = Some(own(spacing));
    }
    if let Some(depth) = values.depth {
        crop.depth = Some(both(depth));
    }
    if let Some(weight) = values.seed_weight {
        crop.seed_weight = Some(own(weight));
    }
    if let Some(seeds) = values.seeds_per_plant {
        crop.seeds_per_plant = Some(own(seeds));
    }
    if let Some(height) = values.height {
        crop.height = Some(own(height));
        crop.height_range = Some(both(height));
    }
    if let Some(part) = values.germination {
        crop.germination = Some(own(part));
    }
    if let Some(years) = values.seed_keeps_years {
        crop.seed_keeps_years = Some(own(years));
    }
    if let Some(days) = values.days_to_harvest {
        crop.days_to_harvest = Some(both(days));
    }
    if let Some(harvest) = values.harvest {
        crop.harvest = Some(own_harvest(base.harvest.as_ref(), harvest));
    }
    if let Some(nitrogen) = values.season_nitrogen {
        crop.season_nitrogen = Some(own(nitrogen));
    }
    crop
}

/// A crop of which only its name, its kind and its way into the ground are known; everything else is left out, and nothing
/// is put in its place.
pub(super) fn blank(crop: &OwnCrop, kind: &Kind) -> Crop {
    Crop {
        id: crop.id.clone(),
        // No text of the catalogue speaks of it.
        kin: crop.id.clone(),
        name: crop.name.clone(),
        also_called: Vec::new(),
        botanical: kind.botanical.clone(),
        family: kind.family.clone(),
        row_spacing: None,
        in_row: None,
        in_row_watered: None,
        in_row_dry: None,
        depth: None,
        seed_weight: None,
        seed_weight_range: None,
        buying: None,
        field_seed: None,
        least_germination: None,
        germination: None,
        seed_keeps_years: None,
        // A crop without a way is refused where it is made and where it is read.
        method: own(crop.values.method.unwrap_or(PlantingMethod::Drilled)),
        also_method: None,
        seeds_per_plant: None,
        height: None,
        height_range: None,
        soil: None,
        days_to_harvest: None,
        hilled: None,
        hardiness: None,
        weeks_from_last_frost: None,
        least_rows: None,
        nitrogen_need: None,
        season_nitrogen: None,
        harvest: None,
        water_use: None,
        roots: None,
        stages: None,
        notes: Vec::new(),
    }
}

/// What the grower harvests, of what the catalogue weighs or counts where it weighs or counts as the grower does.
fn own_harvest(base: Option<&RowAmount>, harvest: OwnHarvest) -> RowAmount {
    let (measure, or_else) = match harvest {
        OwnHarvest::Weight(rate) => (RowMeasure::Weight(both(rate)), "produce"),
        OwnHarvest::Number(number) => (RowMeasure::Number(both(number)), "pieces"),
    };
    let alike = base.filter(|base| std::mem::discriminant(&base.measure) == std::mem::discriminant(&measure));
    RowAmount {
        what: alike.map_or_else(|| or_else.to_owned(), |base| base.what.clone()),
        measure,
    }
}

fn own<T>(value: T) -> Sourced<T> {
    Sourced {
        value,
        sources: vec![SourceKey(GROWER.to_owned())],
        mark: Mark::Grower,
    }
}

fn both<T: Copy>(value: T) -> Ends<T> {
    Ends {
        low: own(value),
        high: own(value),
    }
}

/// The key of values of the grower's own; no source of the catalogue has it.
const GROWER: &str = "GROWER";
