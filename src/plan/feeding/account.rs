//! Wanted against planned and done, through the season.

use super::super::types::{BedPlan, DressingPlan};
use super::credits::credits;
use super::time::{DressingTimes, SeasonOfBed};
use super::types::{Account, BedFeeding, FeedingStep, LimePlan, NutrientRates, Want, WantFrom};
use super::want::wants;
use crate::agronomy::{self, Nutrient};
use crate::catalog::{Crop, Mark, NitrogenNeed};
use crate::layout::Bed;
use crate::quantity::{Mass, MassPerArea};

/// What a bed wants and has, before anything is put down.
pub(in crate::plan) fn opened(bed: &Bed, crop: Option<&Crop>, season: SeasonOfBed) -> BedFeeding {
    let wants = wants(bed, crop);
    let credits = credits(&bed.feeding.credits);
    let accounts = Nutrient::ALL.map(|nutrient| {
        let wanted = wants.of(nutrient).map(|want| want.rate);
        let given: Vec<MassPerArea> = credits.iter().map(|credit| credit.gives.of(nutrient)).collect();
        let after = wanted.and_then(|wanted| agronomy::after_credits(wanted, &given).ok());
        Account {
            wanted,
            credited: given.iter().copied().sum(),
            to_give: after.map(|after| after.still),
            over_credited: after.map_or(MassPerArea::ZERO, |after| after.over),
            is_guide: is_guide(wants.of(nutrient), nutrient, crop),
            ..Account::default()
        }
    });
    BedFeeding {
        wants,
        credits,
        accounts,
        planted: season.planted,
        days_to_harvest: season.days,
        ..BedFeeding::default()
    }
}

/// Puts the bed's dressings, being worked out, on its accounts, and its lime beside them.
pub(in crate::plan) fn put_on_account(bed: &Bed, plan: &mut BedPlan, times: &[DressingTimes]) {
    let steps = steps(bed, plan, times);
    for (nutrient, account) in Nutrient::ALL.into_iter().zip(&mut plan.feeding.accounts) {
        for step in &steps {
            account.planned += step.planned.of(nutrient);
            let brings = step.brings.of(nutrient);
            if step.is_done {
                account.done += brings;
            } else {
                account.ahead += brings;
            }
        }
    }
    plan.feeding.lime = lime(bed, plan);
    plan.feeding.steps = steps;
}

/// Whether what is wanted is a guide only, so that less of it is no matter: of phosphate and potash the soil may hold plenty,
/// which only a laboratory tells; a crop may find or make most of its nitrogen; and a rate may come from memory.
fn is_guide(want: Option<&Want>, nutrient: Nutrient, crop: Option<&Crop>) -> bool {
    let is_general = want.is_some_and(|want| match &want.from {
        WantFrom::Laboratory => false,
        WantFrom::Published { sources, .. } => nutrient != Nutrient::Nitrogen || sources.1 == Mark::FromMemory,
    });
    let need = crop.and_then(|crop| crop.nitrogen_need.as_ref());
    let feeds_itself = need.is_some_and(|need| need.value == NitrogenNeed::Light);
    let is_laboratory = want.is_some_and(|want| want.from == WantFrom::Laboratory);
    is_general || nutrient == Nutrient::Nitrogen && feeds_itself && !is_laboratory
}

/// Every feeding of every dressing, in order of time; those of one time in the bed's order. Of a dressing that cannot be worked
/// out, only what was used.
fn steps(bed: &Bed, plan: &BedPlan, times: &[DressingTimes]) -> Vec<FeedingStep> {
    let dressings = bed.dressings.iter().zip(&plan.dressings).zip(times);
    let mut steps: Vec<FeedingStep> = dressings
        .flat_map(|((dressing, of_plan), times)| {
            let counted = match of_plan.problem {
                None => times.feedings.len(),
                Some(_) => dressing.used.len(),
            };
            let each = times.feedings.iter().take(counted).enumerate();
            each.map(move |(feeding, time)| {
                let used = dressing.used.get(feeding);
                let is_planned = feeding < usize::from(of_plan.times);
                let planned = if is_planned { of_plan.each_planned() } else { Mass::ZERO };
                FeedingStep {
                    dressing: dressing.id,
                    name: dressing.name.clone(),
                    feeding,
                    at: time.now,
                    planned_at: time.planned,
                    planned: rates(of_plan, planned),
                    brings: rates(of_plan, used.map_or_else(|| of_plan.each_ahead(), |used| used.amount)),
                    is_done: used.is_some(),
                }
            })
        })
        .collect();
    steps.sort_by(|a, b| a.at.total_cmp(&b.at));
    steps
}

fn rates(plan: &DressingPlan, product: Mass) -> NutrientRates {
    NutrientRates::in_product(plan.over_ground(product), plan.analysis, plan.available_n)
}

fn lime(bed: &Bed, plan: &BedPlan) -> Option<LimePlan> {
    let lime = bed.feeding.laboratory.as_ref()?.lime?;
    let rate = agronomy::lime_for(lime.rate, lime.purity * 100.0).ok()?;
    Some(LimePlan {
        asked: lime.rate,
        typed_in: lime.typed_in,
        purity: lime.purity,
        rate,
        total: rate * plan.area,
        doses: agronomy::lime_doses(lime.rate),
    })
}
