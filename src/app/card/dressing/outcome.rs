//! What a dressing comes to: for the bed, for each row, along the row, and in nutrients.

use egui::{RichText, Ui};

use crate::agronomy::{self, Nutrient};
use crate::app::form;
use crate::app::theme;
use crate::layout::{Amount, Bed, Dressing, Placement};
use crate::plan::{BedPlan, DressingPlan};
use crate::quantity::{Mass, Units, counted};
use crate::sheets::feeding_list::{dressing_words, rate_unit, rate_words, scoop};

pub(super) fn show(
    ui: &mut Ui,
    dressing: &Dressing,
    bed: &Bed,
    (bed_plan, plan): (&BedPlan, &DressingPlan),
    units: Units,
) {
    ui.add_space(4.0);
    form::rule(ui);
    let Some(words) = dressing_words(bed, bed_plan, dressing.id, units) else {
        return;
    };
    if !words.problem.is_empty() {
        form::wrong(ui, &words.problem);
        return;
    }
    let both = |weight: &str, scoops: &str, between: &str| match scoops {
        "" => weight.to_owned(),
        scoops => format!("{weight}{between}{scoops}"),
    };
    ui.label(RichText::new(both(&words.total, &words.scoops, " · ")).font(theme::bold(15.0)));
    let by = format!("for the bed, {}", words.goes_by);
    form::follows(
        ui,
        if plan.is_done() {
            "really used on the bed".to_owned()
        } else {
            by
        },
    );
    if plan.times > 1 {
        runs(ui, plan, units);
    }
    if !matches!(dressing.placement, Placement::Injected(_)) && !words.each_row.is_empty() {
        let row = both(&words.each_row, &words.each_row_scoops, ", ");
        ui.label(RichText::new(format!("A row: {row}")).size(13.0));
        if let Amount::PerPlant(_) = dressing.amount {
            let each: Mass = plan.total / (bed_plan.totals.plants.max(1) as f64);
            let each = both(&each.show_seed(units), &scoop(each, plan.density, units), ", about ");
            ui.label(RichText::new(format!("A plant: {each}")).size(13.0));
        } else if !words.pace.is_empty() {
            ui.label(RichText::new(format!("Pace: {}", words.pace_and_scoop())).size(13.0));
            along_row(ui, dressing, bed, plan, units);
        }
        form::follows(ui, words.scoops_note);
    }
    brings(ui, plan, units);
}

/// How often it is given, and how much each time.
fn runs(ui: &mut Ui, plan: &DressingPlan, units: Units) {
    let runs = counted(u64::from(plan.times.max(plan.times_done)), "run", "runs");
    let each = plan.each_ahead().show_product(units);
    let words = match (plan.times_done, plan.times_ahead()) {
        (_, 0) => format!("in {runs}, all done"),
        (0, _) => format!("in {runs}, {each} each"),
        (done, _) => {
            let given = plan.done.show_product(units);
            format!("in {runs}: {done} done with {given}, {each} each of those ahead")
        }
    };
    form::follows(ui, words);
}

/// What an amount over ground comes to along a row, where that is not what was typed.
fn along_row(ui: &mut Ui, dressing: &Dressing, bed: &Bed, plan: &DressingPlan, units: Units) {
    let by_ground = matches!(dressing.amount, Amount::PerArea(_)) && dressing.placement != Placement::Broadcast;
    if by_ground && let Ok(along) = agronomy::along_row(plan.rate(), bed.row_spacing, 1) {
        form::follows(ui, format!("{} along the row", along.show(units)));
    }
}

/// What it brings over the ground that it counts.
fn brings(ui: &mut Ui, plan: &DressingPlan, units: Units) {
    let parts: Vec<String> = Nutrient::ALL
        .into_iter()
        .map(|nutrient| (nutrient, plan.rate() * plan.part_of(nutrient)))
        .filter(|(_, rate)| rate_words(*rate, units) != "0")
        .map(|(nutrient, rate)| format!("{} {}", nutrient.name(), rate_words(rate, units)))
        .collect();
    if parts.is_empty() {
        return;
    }
    let free = if plan.available_n.get() < 1.0 && plan.part_of(Nutrient::Nitrogen) > 0.0 {
        format!("; of its nitrogen {} counts this season", plan.available_n.show())
    } else {
        String::new()
    };
    form::follows(ui, format!("brings {} {}{free}", parts.join(", "), rate_unit(units)));
}
