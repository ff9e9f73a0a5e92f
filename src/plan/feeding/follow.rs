//! Dressings that are still ahead follow what was really used of those before.

use super::super::types::{DressingPlan, counted_nutrient};
use super::time::DressingTimes;
use crate::agronomy::Nutrient;
use crate::layout::{Bed, Dressing};
use crate::quantity::{Length, Mass, MassPerArea};

/// Puts what was really used in the place of what was planned, and shares what it was more or less over what was to come at
/// its time or later, however late it was done: nutrient by nutrient, over the dressings that are given for it, by how much
/// of it each was still to bring. Of a dressing that is given several times, the feedings still ahead follow alike, as long
/// as one of them was to come. None goes below nothing. Where less was used, they make up for it no further than what is
/// still to be given. `times` are when the dressings fall, `lengths` those of the bed's rows, and `to_give` is what the bed
/// wants after its credits, where somebody says.
pub(in crate::plan) fn follow_what_was_used(
    bed: &Bed,
    plans: &mut [DressingPlan],
    times: &[DressingTimes],
    lengths: &[Length],
    to_give: impl Fn(Nutrient) -> Option<MassPerArea>,
) {
    for (dressing, plan) in bed.dressings.iter().zip(plans.iter_mut()) {
        if !dressing.used.is_empty() {
            plan.done = dressing.used.iter().map(|used| used.amount).sum();
            plan.times_done = u16::try_from(dressing.used.len()).unwrap_or(u16::MAX);
            set_total(plan, plan.done + plan.planned_ahead(), lengths);
        }
    }
    if bed.feeding.holds_to_plan {
        return;
    }
    for nutrient in Nutrient::ALL {
        let parts = parts_less(nutrient, bed, plans, times);
        // Nothing grows on a bed that has enough.
        let given: MassPerArea = plans.iter().map(|plan| plan.rate() * plan.part_of(nutrient)).sum();
        let ahead = |plan: &DressingPlan| plan.over_ground(plan.planned_ahead()) * plan.part_of(nutrient);
        let grows: MassPerArea = plans
            .iter()
            .zip(&parts)
            .map(|(plan, part)| ahead(plan) * (-part).max(0.0))
            .sum();
        let room = to_give(nutrient).map_or(grows, |to_give| (to_give - given).max(MassPerArea::ZERO));
        let growth = if grows > room { room / grows } else { 1.0 };
        for (plan, part) in plans.iter_mut().zip(parts) {
            let part = if part < 0.0 { part * growth } else { part };
            if part != 0.0 {
                let ahead = plan.planned_ahead() * (1.0 - part).max(0.0);
                set_total(plan, plan.done + ahead, lengths);
            }
        }
    }
}

/// What each dressing is to bring less of a nutrient, as a part of what it was still to bring; below nothing where more.
fn parts_less(nutrient: Nutrient, bed: &Bed, plans: &[DressingPlan], times: &[DressingTimes]) -> Vec<f64> {
    let is_given_for = |place: usize| {
        let pair = bed.dressings.get(place).zip(plans.get(place));
        pair.is_some_and(|(dressing, plan)| !plan.is_done() && given_for(dressing, plan) == Some(nutrient))
    };
    // The last of its feedings is the last that can follow.
    let is_to_come = |place: usize, at: f64| {
        let last = times.get(place).and_then(|times| times.feedings.last());
        last.is_some_and(|last| last.planned >= at)
    };
    let mut parts = vec![0.0; plans.len()];
    for (done, times) in plans.iter().zip(times) {
        let last_done = usize::from(done.times_done).checked_sub(1);
        let Some(at) = last_done.and_then(|last| times.feedings.get(last)) else {
            continue;
        };
        let was_planned = done.planned - done.planned_ahead();
        let more = (done.done - was_planned) * done.part_of(nutrient);
        let later: Vec<usize> = (0..plans.len())
            .filter(|&place| is_given_for(place) && is_to_come(place, at.planned))
            .collect();
        let brings = |&place: &usize| {
            plans
                .get(place)
                .map(|plan| plan.planned_ahead() * plan.part_of(nutrient))
        };
        let ahead: Mass = later.iter().filter_map(brings).sum();
        if ahead > Mass::ZERO {
            for place in later {
                if let Some(part) = parts.get_mut(place) {
                    *part += more / ahead;
                }
            }
        }
    }
    parts
}

/// The nutrient that a dressing is given for: the one its amount counts, or the first on the label that is there.
fn given_for(dressing: &Dressing, plan: &DressingPlan) -> Option<Nutrient> {
    let first_there = || Nutrient::ALL.into_iter().find(|&nutrient| plan.part_of(nutrient) > 0.0);
    counted_nutrient(dressing.basis).or_else(first_there)
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
