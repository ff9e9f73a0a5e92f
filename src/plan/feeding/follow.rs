//! Dressings that are still ahead follow what was really used of those before.

use super::super::types::DressingPlan;
use crate::agronomy::Nutrient;
use crate::layout::{Basis, Bed, Dressing};
use crate::quantity::{Length, Mass};

/// Puts what was really used in the place of what was planned, and shares what it was more or less over the dressings
/// that are still ahead: nutrient by nutrient, over those that are given for it, by how much of it each was to bring.
/// None goes below nothing. `lengths` are those of the bed's rows.
pub(in crate::plan) fn follow_what_was_used(bed: &Bed, plans: &mut [DressingPlan], lengths: &[Length]) {
    for (dressing, plan) in bed.dressings.iter().zip(plans.iter_mut()) {
        if let Some(used) = dressing.used {
            set_total(plan, used.amount, lengths);
            plan.is_done = true;
        }
    }
    if bed.feeding.holds_to_plan {
        return;
    }
    for nutrient in Nutrient::ALL {
        let mut more = Mass::ZERO;
        let mut ahead = Mass::ZERO;
        for (dressing, plan) in bed.dressings.iter().zip(plans.iter()) {
            let part = plan.part_of(nutrient);
            if plan.is_done {
                more += (plan.total - plan.planned) * part;
            } else if given_for(dressing, plan) == Some(nutrient) {
                ahead += plan.planned * part;
            }
        }
        if more == Mass::ZERO || ahead <= Mass::ZERO {
            continue;
        }
        let factor = (1.0 - more / ahead).max(0.0);
        for (dressing, plan) in bed.dressings.iter().zip(plans.iter_mut()) {
            if !plan.is_done && given_for(dressing, plan) == Some(nutrient) {
                let total = plan.planned * factor;
                set_total(plan, total, lengths);
            }
        }
    }
}

/// The nutrient that a dressing is given for: the one its amount counts, or the first on the label that is there.
fn given_for(dressing: &Dressing, plan: &DressingPlan) -> Option<Nutrient> {
    match dressing.basis {
        Basis::Nitrogen => Some(Nutrient::Nitrogen),
        Basis::Phosphate => Some(Nutrient::Phosphate),
        Basis::Potash => Some(Nutrient::Potash),
        Basis::Product => Nutrient::ALL.into_iter().find(|&nutrient| plan.part_of(nutrient) > 0.0),
    }
}

/// Gives a dressing another total, shared over the rows as before; by their length where nothing was planned.
fn set_total(plan: &mut DressingPlan, total: Mass, lengths: &[Length]) {
    let rows: Mass = plan.rows.iter().copied().sum();
    if rows > Mass::ZERO && plan.total > Mass::ZERO {
        let factor = total / plan.total;
        for row in &mut plan.rows {
            *row = *row * factor;
        }
    } else {
        let all: Length = lengths.iter().copied().sum();
        if all > Length::ZERO {
            plan.rows = lengths.iter().map(|length| total * (*length / all)).collect();
        }
    }
    plan.total = total;
}
