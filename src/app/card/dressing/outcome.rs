//! What a dressing comes to: for the bed, for each row, along the row, and in nutrients.

use egui::{RichText, Ui};

use crate::agronomy::{self, Nutrient};
use crate::app::feed_words::{field_number, field_unit, measure, span, weight};
use crate::app::form;
use crate::app::theme;
use crate::layout::{Amount, Dressing, Placement};
use crate::plan::{BedPlan, DressingPlan, GoesBy};
use crate::quantity::{Length, Mass, Units, counted};

pub(super) fn show(ui: &mut Ui, dressing: &Dressing, bed: &BedPlan, plan: &DressingPlan, units: Units) {
    ui.add_space(4.0);
    form::rule(ui);
    if let Some(problem) = &plan.problem {
        form::wrong(ui, problem);
        return;
    }
    let volume = |mass: Mass| plan.volume(mass).map(|volume| measure(volume, units));
    let with_cups = |mass: Mass| match volume(mass) {
        Some(cups) => format!("{} · {cups}", weight(mass, units)),
        None => weight(mass, units),
    };
    ui.label(RichText::new(with_cups(plan.total)).font(theme::bold(15.0)));
    let by = match plan.goes_by {
        GoesBy::Ground => "for the bed, by its ground, shared over the rows by their length",
        GoesBy::RowFeet if matches!(dressing.amount, Amount::PerArea(_)) => {
            "for the bed, by row feet: row length times the strip"
        }
        GoesBy::RowFeet => "for the bed, by row feet",
        GoesBy::Plants => "for the bed, by plants",
    };
    form::follows(ui, if plan.is_done { "really used on the bed" } else { by });
    if plan.times > 1 {
        form::follows(
            ui,
            format!(
                "in {}, {} each",
                counted(u64::from(plan.times), "run", "runs"),
                weight(plan.total / f64::from(plan.times), units)
            ),
        );
    }
    if !matches!(dressing.placement, Placement::Injected(_)) {
        each_row(ui, dressing, bed, plan, units);
    }
    brings(ui, plan, units);
}

/// What each row takes, and the pace to walk by.
fn each_row(ui: &mut Ui, dressing: &Dressing, bed: &BedPlan, plan: &DressingPlan, units: Units) {
    let rows = || plan.rows.iter().copied().filter(|row| *row > Mass::ZERO);
    let low = rows().fold(None, |low: Option<Mass>, row| {
        Some(low.map_or(row, |low| if row < low { row } else { low }))
    });
    let high = rows().fold(Mass::ZERO, |high, row| if row > high { row } else { high });
    let Some(low) = low else { return };
    let cups = |mass: Mass| plan.volume(mass).map(|volume| measure(volume, units));
    let mut words = span(&weight(low, units), &weight(high, units));
    if let (Some(low), Some(high)) = (cups(low), cups(high)) {
        words = format!("{words}, {}", span(&low, &high));
    }
    ui.label(RichText::new(format!("A row: {words}")).size(13.0));
    if let Amount::PerPlant(_) = dressing.amount {
        let each = plan.total / (bed.totals.plants.max(1) as f64);
        let words = cups(each).map_or_else(
            || weight(each, units),
            |cups| format!("{}, {cups}", weight(each, units)),
        );
        ui.label(RichText::new(format!("A plant: {words}")).size(13.0));
    } else if bed.totals.row_length > Length::ZERO {
        let (stretch, along) = match units {
            Units::Customary => (Length::feet(10.0), "10 ft of row"),
            Units::Metric => (Length::metres(3.0), "3 m of row"),
        };
        let pace = agronomy::per_stretch(plan.total / bed.totals.row_length, stretch);
        if let Ok(pace) = pace {
            let words = cups(pace).map_or_else(
                || weight(pace, units),
                |cups| format!("{}, {cups}", weight(pace, units)),
            );
            ui.label(RichText::new(format!("Each {along}: {words}")).size(13.0));
        }
    }
    form::follows(
        ui,
        if plan.density.is_some() {
            "a cup is a guide only: go by weight where you can"
        } else {
            "for cups, weigh a level cup of it and write it into the shed"
        },
    );
}

/// What it brings over the ground that it counts.
fn brings(ui: &mut Ui, plan: &DressingPlan, units: Units) {
    let parts: Vec<String> = Nutrient::ALL
        .into_iter()
        .map(|nutrient| (nutrient, plan.rate() * plan.part_of(nutrient)))
        .filter(|(_, rate)| field_number(*rate, units) != "0")
        .map(|(nutrient, rate)| format!("{} {}", nutrient.name(), field_number(rate, units)))
        .collect();
    if parts.is_empty() {
        return;
    }
    let free = if plan.available_n.get() < 1.0 && plan.part_of(Nutrient::Nitrogen) > 0.0 {
        format!("; of its nitrogen {} counts this season", plan.available_n.show())
    } else {
        String::new()
    };
    form::follows(ui, format!("brings {} {}{free}", parts.join(", "), field_unit(units)));
}
