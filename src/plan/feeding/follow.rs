//! Dressings that are still ahead follow what was really used of those before.

use super::super::types::DressingPlan;
use crate::agronomy::Nutrient;
use crate::layout::{Basis, Bed, Dressing};
use crate::quantity::{Length, Mass, MassPerArea};

/// Puts what was really used in the place of what was planned, and shares what it was more or less over the dressings
/// that were to come at its time or later, however late it was done: nutrient by nutrient, over those that are given for it, by how much of it each was to
/// bring. None goes below nothing. Where less was used, they make up for it no further than what is
/// still to be given. `times` are those planned for the dressings, `lengths` those of the bed's rows, and `to_give` is what
/// the bed wants after its credits, where somebody says.
pub(in crate::plan) fn follow_what_was_used(
    bed: &Bed,
    plans: &mut [DressingPlan],
    times: &[f64],
    lengths: &[Length],
    to_give: impl Fn(Nutrient) -> Option<MassPerArea>,
) {
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
        let is_given_for = |place: usize| {
            let pair = bed.dressings.get(place).zip(plans.get(place));
            pair.is_some_and(|(dressing, plan)| !plan.is_done && given_for(dressing, plan) == Some(nutrient))
        };
        // What each dressing ahead is to bring more or less of it, as a part of what it was to bring.
        let mut parts = vec![0.0; plans.len()];
        for (done, at) in plans.iter().zip(times).filter(|(plan, _)| plan.is_done) {
            let more = (done.total - done.planned) * done.part_of(nutrient);
            let later: Vec<usize> = (0..plans.len())
                .filter(|&place| is_given_for(place) && times.get(place).is_some_and(|time| time >= at))
                .collect();
            let brings = |&place: &usize| plans.get(place).map(|plan| plan.planned * plan.part_of(nutrient));
            let ahead: Mass = later.iter().filter_map(brings).sum();
            if ahead > Mass::ZERO {
                for place in later {
                    if let Some(part) = parts.get_mut(place) {
                        *part += more / ahead;
                    }
                }
            }
        }
        // Nothing grows on a bed that has enough.
        let given: MassPerArea = plans.iter().map(|plan| plan.rate() * plan.part_of(nutrient)).sum();
        let grows: MassPerArea = plans
            .iter()
            .zip(&parts)
            .map(|(plan, part)| plan.planned_rate() * (plan.part_of(nutrient) * (-part).max(0.0)))
            .sum();
        let room = to_give(nutrient).map_or(grows, |to_give| (to_give - given).max(MassPerArea::ZERO));
        let growth = if grows > room { room / grows } else { 1.0 };
        for (plan, part) in plans.iter_mut().zip(parts) {
            let part = if part < 0.0 { part * growth } else { part };
            if part != 0.0 {
                let total = plan.planned * (1.0 - part).max(0.0);
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
