//! What was really used, typed back, and how the dressings still ahead follow.

use egui::{Id, RichText, Ui};

use crate::app::day_words;
use crate::app::feed_words::read_used;
use crate::app::form;
use crate::layout::{Bed, Dressing, Used};
use crate::plan::{BedPlan, DressingPlan};
use crate::quantity::{Mass, Units};
use crate::sheets::dressing_words;

pub(super) fn show(
    ui: &mut Ui,
    field: Id,
    dressing: &mut Dressing,
    bed: &Bed,
    plans: Option<(&BedPlan, &DressingPlan)>,
    (units, season): (Units, i16),
) {
    form::section(ui, "Really used");
    let density = plans.and_then(|(_, plan)| plan.density);
    let used = dressing.used;
    let shown = used.map_or_else(String::new, |used| used.amount.show_product(units));
    let read = |text: &str| read_used(text, density, units);
    if let Some(amount) = form::field(ui, field.with("used"), "Amount used", &shown, read) {
        dressing.used = amount.map(|amount| Used {
            amount,
            on: used.and_then(|used| used.on),
        });
    }
    let Some(used) = used else {
        form::follows(
            ui,
            "once it is down: on the whole bed, by weight or by measure; the dressings after it follow",
        );
        return;
    };
    let shown = used.on.map_or_else(String::new, |day| day_words::day(day, season));
    let read = |text: &str| day_words::read_day(text, season);
    if let Some(on) = form::field(ui, field.with("used on"), "Done on", &shown, read) {
        dressing.used = Some(Used { on, ..used });
    }
    if let Some((bed_plan, plan)) = plans {
        against_plan(ui, plan, units);
        follow(ui, bed, bed_plan, units);
    }
    form::follows(ui, "empty the amount, and it is not done yet again");
}

/// More or less than planned.
fn against_plan(ui: &mut Ui, plan: &DressingPlan, units: Units) {
    let words = dressing_words::against_plan(plan.planned, plan.total, units);
    ui.label(RichText::new(form::heading(&words)).size(13.0));
}

/// How the dressings still ahead follow.
fn follow(ui: &mut Ui, bed: &Bed, plan: &BedPlan, units: Units) {
    let mut ahead = false;
    let mut any = false;
    for other in plan
        .dressings
        .iter()
        .filter(|other| !other.is_done && other.problem.is_none())
    {
        ahead = true;
        let (from, to) = (other.planned.show_product(units), other.total.show_product(units));
        if from == to {
            continue;
        }
        any = true;
        let words = if other.total == Mass::ZERO {
            format!("“{}” is not needed any more", other.name)
        } else if other.total < other.planned {
            format!("“{}” shrinks from {from} to {to}", other.name)
        } else {
            format!("“{}” grows from {from} to {to}", other.name)
        };
        ui.label(RichText::new(words).size(13.0));
    }
    if bed.feeding.holds_to_plan && ahead {
        form::follows(ui, "the others stay as planned, as the bed's card says");
    } else if ahead && !any {
        form::follows(ui, "the dressings still ahead stay as they are");
    }
}
