//! Wanted against planned and done, through the season.

use jiff::civil::Date;

use super::super::types::{BedPlan, DressingPlan};
use super::credits::credits;
use super::types::{Account, BedFeeding, FeedingStep, LimePlan, NutrientRates, Want, WantFrom};
use super::want::wants;
use crate::agronomy::{self, Nutrient};
use crate::catalog::{Catalog, Crop, Mark, NitrogenNeed};
use crate::layout::{Bed, Placement, Planting, Sowing, When};
use crate::quantity::MassPerArea;

/// What feeding a bed comes to, its dressings being worked out.
pub(in crate::plan) fn bed_feeding(bed: &Bed, plan: &BedPlan, crop: Option<&Crop>) -> BedFeeding {
    let wants = wants(bed, crop);
    let credits = credits(&bed.feeding.credits);
    let planted = bed.planting.as_ref().and_then(planted_on);
    let days_to_harvest = crop.and_then(|crop| {
        let days = crop.days_to_harvest.as_ref()?;
        Some(days.low.value.midpoint(days.high.value))
    });
    let steps = steps(bed, plan, planted, days_to_harvest);
    let accounts = Nutrient::ALL.map(|nutrient| {
        let wanted = wants.of(nutrient).map(|want| want.rate);
        let given: Vec<MassPerArea> = credits.iter().map(|credit| credit.gives.of(nutrient)).collect();
        let mut account = Account {
            wanted,
            credited: given.iter().copied().sum(),
            to_give: wanted.and_then(|wanted| Some(agronomy::after_credits(wanted, &given).ok()?.still)),
            is_guide: is_guide(wants.of(nutrient), nutrient, crop),
            ..Account::default()
        };
        for step in &steps {
            account.planned += step.planned.of(nutrient);
            let brings = step.brings.of(nutrient);
            if step.is_done {
                account.done += brings;
            } else {
                account.ahead += brings;
            }
        }
        account
    });
    BedFeeding {
        wants,
        credits,
        steps,
        accounts,
        planted,
        days_to_harvest,
        lime: lime(bed, plan),
    }
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
    is_general || nutrient == Nutrient::Nitrogen && feeds_itself
}

/// The day a bed is planted: as noted, or the day its plants are set out.
fn planted_on(planting: &Planting) -> Option<Date> {
    planting.planted.or(match planting.sowing {
        Some(Sowing::Raised(raised)) => raised.set_out,
        _ => None,
    })
}

/// Every dressing that can be worked out, in order of time; those of one time in the bed's order.
fn steps(bed: &Bed, plan: &BedPlan, planted: Option<Date>, days: Option<u16>) -> Vec<FeedingStep> {
    let mut steps: Vec<FeedingStep> = Vec::new();
    let mut before = 0.0;
    for (dressing, of_plan) in bed.dressings.iter().zip(&plan.dressings) {
        if of_plan.problem.is_some() {
            continue;
        }
        let on = dressing.used.and_then(|used| used.on);
        let at = on
            .and_then(|day| part_of_season(day, planted, days))
            .or_else(|| at(&dressing.when, planted, days))
            .or_else(|| usual(dressing.placement))
            // One without a time follows the one before it in the list.
            .unwrap_or(before);
        before = at;
        steps.push(FeedingStep {
            dressing: dressing.id,
            name: dressing.name.clone(),
            at,
            planned: rates(of_plan, of_plan.planned_rate()),
            brings: rates(of_plan, of_plan.rate()),
            is_done: of_plan.is_done,
        });
    }
    steps.sort_by(|a, b| a.at.total_cmp(&b.at));
    steps
}

/// When something falls, as a part of the time from planting to harvest.
fn at(when: &When, planted: Option<Date>, days: Option<u16>) -> Option<f64> {
    match when {
        When::Stage(stage) => Some(Catalog::built_in().stage(stage)?.at.value.get()),
        When::Day(day) => part_of_season(*day, planted, days),
        When::Unsaid | When::Words(_) => None,
    }
}

/// What is broadcast or banded without a time goes down at planting.
const fn usual(placement: Placement) -> Option<f64> {
    match placement {
        Placement::Broadcast | Placement::Band { .. } => Some(0.0),
        Placement::SideDress { .. } | Placement::Injected(_) => None,
    }
}

fn part_of_season(day: Date, planted: Option<Date>, days: Option<u16>) -> Option<f64> {
    let since = planted?.until(day).ok()?.get_days();
    let days = days.filter(|days| *days > 0)?;
    Some((f64::from(since) / f64::from(days)).clamp(0.0, 1.0))
}

fn rates(plan: &DressingPlan, product: MassPerArea) -> NutrientRates {
    NutrientRates::in_product(product, plan.analysis, plan.available_n)
}

fn lime(bed: &Bed, plan: &BedPlan) -> Option<LimePlan> {
    let lime = bed.feeding.laboratory.as_ref()?.lime?;
    let rate = agronomy::lime_for(lime.rate, lime.purity * 100.0).ok()?;
    Some(LimePlan {
        rate,
        total: rate * plan.area,
        doses: agronomy::lime_doses(lime.rate),
    })
}
