//! Sums over beds, by crop and by material.

use std::collections::BTreeMap;
use std::sync::Arc;

use super::types::{BedPlan, CropSum, MaterialSum, Totals};
use crate::agronomy;
use crate::quantity::Mass;

/// What the beds of each crop come to, in order of the crops' names.
pub(super) fn crop_sums(beds: &[Arc<BedPlan>]) -> Vec<CropSum> {
    let mut sums: BTreeMap<(&str, &str), CropSum> = BTreeMap::new();
    for bed in beds {
        let Some(crop) = &bed.crop else { continue };
        let sum = sums.entry((&crop.name, &crop.id.0)).or_insert_with(|| CropSum {
            crop: crop.id.clone(),
            name: crop.name.clone(),
            totals: Totals {
                seed_mass: Some(Mass::ZERO),
                set_out_mass: Some(Mass::ZERO),
                ..Totals::default()
            },
        });
        sum.totals.add(&bed.totals);
    }
    sums.into_values().collect()
}

/// What the dressings of each material come to, in order of the materials' names.
pub(super) fn material_sums(beds: &[Arc<BedPlan>]) -> Vec<MaterialSum> {
    let mut sums: BTreeMap<(&str, &str), MaterialSum> = BTreeMap::new();
    for dressing in beds.iter().flat_map(|bed| &bed.dressings) {
        if dressing.problem.is_some() {
            continue;
        }
        let sum = sums
            .entry((&dressing.material_name, &dressing.material.0))
            .or_insert_with(|| MaterialSum {
                material: dressing.material.clone(),
                name: dressing.material_name.clone(),
                product: Mass::ZERO,
                n: Mass::ZERO,
                p2o5: Mass::ZERO,
                k2o: Mass::ZERO,
                density: dressing.density,
            });
        sum.product += dressing.total;
        let brings = agronomy::nutrients_in(dressing.total, dressing.analysis);
        sum.n += brings.n;
        sum.p2o5 += brings.p2o5;
        sum.k2o += brings.k2o;
    }
    sums.into_values().collect()
}
