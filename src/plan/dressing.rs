//! What a dressing comes to, row by row.

use super::feeding::{KnownMaterial, MaterialBook};
use super::types::{BedPlan, DressingDay, DressingPlan, GoesBy, counted_nutrient};
use crate::agronomy::{self, Nutrient, Unworkable};
use crate::layout::{Amount, Bed, Dressing, Placement};
use crate::quantity::{Area, Fraction, Length, Mass, MassPerArea};

/// Works out one dressing for every row of a bed whose rows are known.
///
/// An amount over ground that is broadcast counts the bed's ground and is shared over rows by their length; banded
/// or put beside the plants it counts row length times the strip that belongs to the row. The two differ by the
/// bed's edges and headlands.
pub(super) fn dressing_plan(dressing: &Dressing, bed: &Bed, plan: &BedPlan, book: &MaterialBook) -> DressingPlan {
    let known = book.get(&dressing.material);
    let times = dressing.placement.times();
    let mut result = DressingPlan {
        dressing: dressing.id,
        name: dressing.name.clone(),
        material: dressing.material.clone(),
        material_name: known.map_or_else(|| dressing.material.0.clone(), |known| known.material.name.clone()),
        problem: None,
        rows: vec![Mass::ZERO; plan.rows.len()],
        total: Mass::ZERO,
        planned: Mass::ZERO,
        done: Mass::ZERO,
        times,
        times_done: 0,
        from: DressingDay::default(),
        is_injected: matches!(dressing.placement, Placement::Injected(_)),
        counted: counted(dressing, bed, plan),
        goes_by: goes_by(dressing),
        analysis: known.map(KnownMaterial::analysis).unwrap_or_default(),
        available_n: known.map_or(Fraction::ONE, |known| known.available_n),
        density: known.and_then(KnownMaterial::density),
    };
    let times = f64::from(times);
    match shares(dressing, bed, plan, known) {
        Ok((rows, total)) if (total * times).is_finite() => {
            result.rows = rows.into_iter().map(|row| row * times).collect();
            result.total = total * times;
            result.planned = result.total;
        }
        Ok(_) => {
            let sentence = "The amount is too large to be worked out. Check its number and its unit.";
            result.problem = Some(sentence.to_owned());
        }
        Err(problem) => result.problem = Some(problem),
    }
    result
}

/// The ground that a dressing feeds.
fn counted(dressing: &Dressing, bed: &Bed, plan: &BedPlan) -> Area {
    match (dressing.amount, dressing.placement) {
        (Amount::PerArea(_), Placement::Broadcast) => plan.area,
        _ => plan.totals.row_length * bed.row_spacing,
    }
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
    known: Option<&KnownMaterial>,
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
            let rate: MassPerArea = product(rate, dressing, known)?;
            if counted(dressing, bed, plan) <= Area::ZERO {
                return Err(
                    "An amount over ground was given, and the bed has no ground for it. Draw the bed, or make room for its rows."
                        .to_owned(),
                );
            }
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
            let rate = product(rate, dressing, known)?;
            by_row(&|row| Ok(row.length * rate))
        }
        Amount::PerPlant(each) => {
            let each = product(each, dressing, known)?;
            by_row(&|row| Ok(each * row.plants as f64))
        }
    }
}

/// The amount as product: itself, or so much that it holds the nutrient that the amount counts.
fn product<Q: agronomy::Amount>(amount: Q, dressing: &Dressing, known: Option<&KnownMaterial>) -> Result<Q, String> {
    let Some(nutrient) = counted_nutrient(dressing.basis) else {
        return Ok(amount);
    };
    let known = known.ok_or_else(|| {
        format!(
            "The catalogue has no material \"{}\", so its analysis is not known. Choose another material, or give the amount as product.",
            dressing.material.0
        )
    })?;
    let analysis = known.analysis();
    if nutrient == Nutrient::Nitrogen {
        return agronomy::product_for_available(amount, analysis, known.available_n).map_err(sentence);
    }
    agronomy::product_for(amount, nutrient, analysis).map_err(sentence)
}

fn sentence(error: Unworkable) -> String {
    error.to_string()
}
