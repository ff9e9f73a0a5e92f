//! What a bed takes, put in the ground in its way: seeds or pieces, plants before and after thinning, trays and the day
//! to sow.

use egui::{RichText, Ui};

use super::Hand;
use crate::agronomy::{self, SeedsInEach};
use crate::app::form;
use crate::app::seed_words::plain;
use crate::app::theme;
use crate::layout::{Bed, Sowing};
use crate::plan::{BedPlan, GerminationFrom, Stand, Things};
use crate::quantity::{Fraction, Mass, Units, count, counted};
use crate::sheets::order_list::{TrayWords, day_words};

pub(super) fn show(ui: &mut Ui, hand: &Hand<'_>, bed: &Bed, plan: &BedPlan, stand: &Stand) {
    let units = hand.desk.layout().units;
    let totals = &plan.totals;
    if totals.plants == 0 {
        return;
    }
    ui.add_space(4.0);
    match stand.sowing {
        Sowing::Raised(_) => trays(ui, hand, bed, stand),
        Sowing::Pieces { .. } | Sowing::Plants => {
            let things = plan.things().unwrap_or(Things::Plants);
            strong(ui, weighed(things.counted(totals.set_out), totals.set_out_mass, units));
            form::follows(ui, format!("for {}", counted(totals.plants, "place", "places")));
        }
        Sowing::Seed { .. } | Sowing::Dropped { .. } | Sowing::Hills { .. } => {
            let seeds = weighed(Things::Seeds.counted(totals.seeds), totals.seed_mass, units);
            strong(ui, at_least(stand, seeds));
            let places = totals.plants / u64::from(stand.sowing.plants_per_place().max(1));
            let place = match stand.sowing {
                Sowing::Hills { .. } => counted(places, "hill", "hills"),
                _ => counted(places, "place", "places"),
            };
            let before = counted(stand.before_thinning(totals.plants), "plant", "plants");
            form::follows(
                ui,
                format!("{place} · {before} before thinning · {} after", count(totals.plants)),
            );
            dropped(ui, stand, places);
        }
    }
}

/// What to drop in each place by hand, and how many places that leaves empty.
fn dropped(ui: &mut Ui, stand: &Stand, places: u64) {
    let (one, many) = match stand.sowing {
        Sowing::Hills { .. } => ("hill", "hills"),
        Sowing::Dropped { .. } => ("place", "places"),
        _ => return,
    };
    let Some(each) = stand
        .seeds_per_place()
        .and_then(|good| each_place(good, stand.comes_up()))
    else {
        return;
    };
    let empty = places as f64 * (1.0 - each.filled.get());
    let empty = if empty < 0.5 {
        format!("hardly any {one} stays empty")
    } else {
        let empty = empty.round() as u64;
        let stay = if empty == 1 { "stays" } else { "stay" };
        format!("about {} {stay} empty", counted(empty, one, many))
    };
    strong(ui, format!("drop {} in each {one}", each_words(each)));
    form::follows(ui, empty);
}

/// Seeds to drop in a place for so many that come up.
pub(super) fn each_place(good: f64, comes_up: Fraction) -> Option<SeedsInEach> {
    agronomy::seeds_in_each(good, comes_up).ok()
}

/// "4 seeds", "3 or 4 seeds (3.2 on average)".
pub(super) fn each_words(each: SeedsInEach) -> String {
    if each.fewest == each.most {
        Things::Seeds.counted(u64::from(each.most))
    } else {
        format!(
            "{} or {} seeds ({} on average)",
            each.fewest,
            each.most,
            plain(each.average)
        )
    }
}

/// Cells and trays as the order counts them, each lot's by its own germination.
fn trays(ui: &mut Ui, hand: &Hand<'_>, bed: &Bed, stand: &Stand) {
    let layout = hand.desk.layout();
    let line = hand.desk.plan().order.line_of(bed.id);
    let Some((line, trays)) = line.and_then(|line| {
        let trays = line.trays.iter().find(|trays| trays.bed == bed.id)?;
        Some((line, trays))
    }) else {
        return;
    };
    let seeds = trays.cells.saturating_mul(u64::from(trays.seeds_per_cell));
    let one = line.beds.iter().find(|of| of.bed == bed.id).and_then(|of| {
        let mass = of.amount.mass.filter(|_| of.amount.count > 0)?;
        Some(mass / of.amount.count as f64)
    });
    let cells = counted(trays.cells, "cell", "cells");
    let seeds_words = Things::Seeds.counted(seeds);
    let mass = one.map(|one| one * seeds as f64);
    let sown = weighed(format!("{cells}, {seeds_words}"), mass, layout.units);
    strong(ui, at_least(stand, sown));
    let words = TrayWords::of(layout, line, trays);
    if !words.seed.is_empty() {
        form::follows(ui, words.seed);
    }
    let mut words = Vec::new();
    words.extend(trays.trays.map(|trays| counted(trays, "tray", "trays")));
    words.extend(trays.sow_on.map(|day| format!("sow on {}", day_words(day))));
    words.push(format!("{} to set out", counted(trays.plants, "plant", "plants")));
    form::follows(ui, words.join(" · "));
}

/// Says of an amount that it takes more, where nobody knows how much of it comes up.
fn at_least(stand: &Stand, amount: String) -> String {
    if stand.germination_from == GerminationFrom::NotKnown {
        format!("at least {amount}")
    } else {
        amount
    }
}

fn strong(ui: &mut Ui, words: String) {
    ui.label(RichText::new(words).font(theme::bold(13.0)));
}

/// A count with its weight, where that is known.
fn weighed(words: String, mass: Option<Mass>, units: Units) -> String {
    match mass {
        Some(mass) => format!("{words}, {}", mass.show_seed(units)),
        None => words,
    }
}
