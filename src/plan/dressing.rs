//! What a dressing comes to, row by row.

use super::types::{BedPlan, DressingPlan, GoesBy};
use crate::agronomy::{self, Nutrient, Unworkable};
use crate::catalog::{Analysis, Catalog};
use crate::layout::{Amount, Basis, Bed, Dressing, Placement};
use crate::quantity::{Length, Mass, MassPerArea};

/// Works out one dressing for every row of a bed whose rows are known.
///
/// An amount over ground that is broadcast counts the bed's ground and is shared over rows by their length; banded
/// or put beside the plants it counts row length times the strip that belongs to the row. The two differ by the
/// bed's edges and headlands.
pub(super) fn dressing_plan(dressing: &Dressing, bed: &Bed, plan: &BedPlan, catalog: &Catalog) -> DressingPlan {
    let material = catalog.material(&dressing.material);
    let analysis = material.map(|material| material.analysis.value);
    let mut result = DressingPlan {
        dressing: dressing.id,
        name: dressing.name.clone(),
        material: dressing.material.clone(),
        material_name: material.map_or_else(|| dressing.material.0.clone(), |material| material.name.clone()),
        problem: None,
        rows: vec![Mass::ZERO; plan.rows.len()],
        total: Mass::ZERO,
        goes_by: goes_by(dressing),
        analysis: analysis.unwrap_or_default(),
        density: material
            .and_then(|material| material.bulk_density.as_ref())
            .map(|density| density.value),
    };
    match shares(dressing, bed, plan, analysis) {
        Ok((rows, total)) if total.is_finite() => (result.rows, result.total) = (rows, total),
        Ok(_) => {
            let sentence = "The amount is too large to be worked out. Check its number and its unit.";
            result.problem = Some(sentence.to_owned());
        }
        Err(problem) => result.problem = Some(problem),
    }
    result
}

fn goes_by(dressing: &Dressing) -> GoesBy {
    match (dressing.amount, dressing.placement) {
        (Amount::PerArea(_), Placement::Broadcast) => GoesBy::Ground,
        (Amount::PerArea(_) | Amount::PerRowLength(_), _) => GoesBy::RowFeet,
        (Amount::PerPlant(_), _) => GoesBy::Plants,
    }
}

/// Product for each row and for the bed, or why there is none.
fn shares(
    dressing: &Dressing,
    bed: &Bed,
    plan: &BedPlan,
    analysis: Option<Analysis>,
) -> Result<(Vec<Mass>, Mass), String> {
    let by_row = |share: &dyn Fn(&super::types::Row) -> Result<Mass, Unworkable>| {
        let rows: Vec<Mass> = plan
            .rows
            .iter()
            .map(share)
            .collect::<Result<_, _>>()
            .map_err(sentence)?;
        let total = rows.iter().copied().sum();
        Ok((rows, total))
    };
    match dressing.amount {
        Amount::PerArea(rate) => {
            let rate: MassPerArea = product(rate, dressing, analysis)?;
            match dressing.placement {
                Placement::Broadcast => {
                    let all = plan.totals.row_length;
                    let (rows, _) = by_row(&|row| agronomy::broadcast_share(row.length, all, plan.area, rate))?;
                    // The bed's ground gets its share even where no row fits.
                    Ok((rows, rate * plan.area))
                }
                Placement::Band { .. } | Placement::SideDress { .. } | Placement::Injected(_) => {
                    let strip: Length = dressing.placement.strip().unwrap_or(bed.row_spacing);
                    by_row(&|row| agronomy::banded_share(row.length, strip, rate))
                }
            }
        }
        Amount::PerRowLength(rate) => {
            let rate = product(rate, dressing, analysis)?;
            by_row(&|row| Ok(row.length * rate))
        }
        Amount::PerPlant(each) => {
            let each = product(each, dressing, analysis)?;
            by_row(&|row| Ok(each * row.plants as f64))
        }
    }
}

/// The amount as product: itself, or so much that it holds the nutrient that the amount counts.
fn product<Q: std::ops::Div<f64, Output = Q>>(
    amount: Q,
    dressing: &Dressing,
    analysis: Option<Analysis>,
) -> Result<Q, String> {
    let nutrient = match dressing.basis {
        Basis::Product => return Ok(amount),
        Basis::Nitrogen => Nutrient::Nitrogen,
        Basis::Phosphate => Nutrient::Phosphate,
        Basis::Potash => Nutrient::Potash,
    };
    let analysis = analysis.ok_or_else(|| {
        format!(
            "The catalogue has no material \"{}\", so its analysis is not known. Choose another material, or give the amount as product.",
            dressing.material.0
        )
    })?;
    agronomy::product_for(amount, nutrient, analysis).map_err(sentence)
}

fn sentence(error: Unworkable) -> String {
    error.to_string()
}
