//! What was really used, typed back, and how the dressings still ahead follow.

use egui::{Id, RichText, Ui};

use crate::app::day_words;
use crate::app::feed_words::read_used;
use crate::app::form;
use crate::layout::{Amount, Basis, Bed, Dressing, Placement, Used};
use crate::plan::{BedPlan, CountedOn, DressingPlan};
use crate::quantity::{Mass, MassPerArea, MassPerLength, RateUnit, Units, counted};
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
    let placement = dressing.placement;
    let on_bed = |rate| CountedOn::of(rate, placement, bed, plans?.0).weight(rate);
    let read = |text: &str| read_used(text, density, on_bed, units);
    let typed_in = field.with("used in");
    if let Some(typed) = form::field(ui, field.with("used"), "Amount used", &shown, read) {
        // The unit of a rate is for the sentence below, as long as the window is open.
        ui.data_mut(|data| match typed.and_then(|typed| typed.unit) {
            Some(unit) => {
                data.insert_temp(typed_in, unit);
            }
            None => data.remove::<RateUnit>(typed_in),
        });
        dressing.used = typed.map(|typed| Used {
            amount: typed.weight,
            on: used.and_then(|used| used.on),
        });
    }
    let Some(used) = used else {
        let rate = match units {
            Units::Customary => "3 lb/100 ft",
            Units::Metric => "40 g/m",
        };
        form::follows(
            ui,
            format!(
                "once it is down: on the whole bed, by weight or by measure, or as a rate such as {rate}; the dressings \
                 after it follow"
            ),
        );
        return;
    };
    if let Some((plan, _)) = plans {
        let unit = ui.data(|data| data.get_temp::<RateUnit>(typed_in));
        as_rate(ui, dressing, bed, plan, (used.amount, unit), units);
    }
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

/// What it was as a rate, over what: in the unit that was typed, or in the usual one for what the dressing counts.
fn as_rate(
    ui: &mut Ui,
    dressing: &Dressing,
    bed: &Bed,
    plan: &BedPlan,
    (weight, typed_in): (Mass, Option<RateUnit>),
    units: Units,
) {
    let kinds = [
        dressing.amount,
        Amount::PerArea(MassPerArea::ZERO),
        Amount::PerRowLength(MassPerLength::ZERO),
        Amount::PerPlant(Mass::ZERO),
    ];
    let of = |kind: Amount| {
        let on = CountedOn::of(kind, dressing.placement, bed, plan);
        Some((on, on.rate(weight)?))
    };
    let in_unit = |unit| {
        kinds
            .into_iter()
            .filter_map(of)
            .find_map(|(on, rate)| Some((on, dressing_words::rate_in(rate, unit, units)?)))
    };
    let usual = || {
        let (on, rate) = of(dressing.amount)?;
        Some((on, dressing_words::rate(rate, None, Basis::Product, units)))
    };
    let Some((on, rate)) = typed_in.and_then(in_unit).or_else(usual) else {
        return;
    };
    let over = match (on, dressing.placement) {
        (CountedOn::Ground(area), Placement::Broadcast) => format!("over {} of ground", area.show(units)),
        (CountedOn::Ground(area), _) => format!("over {} that belong to the rows", area.show(units)),
        (CountedOn::Rows(length), _) => format!("over {} of row", length.show_total(units)),
        (CountedOn::Plants(plants), _) => format!("to {}", counted(plants, "plant", "plants")),
    };
    form::follows(ui, format!("{rate} {over}: {}", weight.show_product(units)));
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
