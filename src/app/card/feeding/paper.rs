//! What a soil laboratory's paper recommends, typed as it stands there.

use egui::{Id, Ui};

use super::lime;
use crate::agronomy::Nutrient;
use crate::app::card::Hand;
use crate::app::card::length_line::read_short;
use crate::app::card::planting::change;
use crate::app::feed_words::{from_element, nutrient_rate, read_nutrient_rate, some_length, to_element};
use crate::app::form;
use crate::catalog::Mark;
use crate::layout::{Bed, BedChange, NutrientRate, Recommendation};
use crate::plan::feeding::WantFrom;
use crate::quantity::{Length, RateUnit, Units};

pub(super) fn show(ui: &mut Ui, hand: &mut Hand<'_>, bed: &Bed, paper: Recommendation, field: Id) {
    let units = hand.desk.layout().units;
    let mut changed = paper;
    let ways = [("P2O5 and K2O", false), ("P and K", true)];
    let chosen = if paper.elemental { "P and K" } else { "P2O5 and K2O" };
    if let Some(elemental) = form::choices(ui, field.with("elemental"), "Paper writes", chosen, &ways) {
        changed.elemental = elemental;
        // The figures stay as they were typed; what they mean changes.
        for nutrient in [Nutrient::Phosphate, Nutrient::Potash] {
            let meant = of(&paper, nutrient).map(|rate| match (paper.elemental, elemental) {
                (false, true) => from_element(nutrient, rate),
                (true, false) => to_element(nutrient, rate),
                _ => rate,
            });
            set(&mut changed, nutrient, meant);
        }
    }
    for nutrient in Nutrient::ALL {
        let as_written = |rate| {
            if paper.elemental {
                to_element(nutrient, rate)
            } else {
                rate
            }
        };
        let typed_in = unit_of(&paper, nutrient);
        let shown =
            of(&paper, nutrient).map_or_else(String::new, |rate| nutrient_rate(as_written(rate), typed_in, units));
        let read = |text: &str| read_nutrient_rate(text, units);
        let id = field.with(("recommended", nutrient.name()));
        if let Some(rate) = form::field(ui, id, label(nutrient, paper.elemental), &shown, read) {
            let (rate, unit) = rate.map_or((None, None), |(rate, unit)| (Some(rate), unit));
            let rate = rate.map(|rate| {
                if paper.elemental {
                    from_element(nutrient, rate)
                } else {
                    rate
                }
            });
            set(&mut changed, nutrient, rate);
            set_unit(&mut changed, nutrient, unit);
        }
    }
    form::follows(
        ui,
        "with its unit, as the paper has it: lb/acre, lb/1000 sq ft, lb/100 sq ft, lb/100 ft of row, kg/ha or g/m2",
    );
    left_blank(ui, hand, bed, &paper, units);
    rows_apart(ui, &mut changed, paper, field, units);
    comes_to(ui, hand, bed, &paper, units);
    lime::show(ui, hand, bed, &mut changed, field);
    if changed != paper {
        change(hand, bed, BedChange::SetRecommendation(Some(changed)));
    }
}

const fn label(nutrient: Nutrient, elemental: bool) -> &'static str {
    match (nutrient, elemental) {
        (Nutrient::Nitrogen, _) => "Nitrogen",
        (Nutrient::Phosphate, false) => "Phosphate",
        (Nutrient::Potash, false) => "Potash",
        (Nutrient::Phosphate, true) => "Phosphorus",
        (Nutrient::Potash, true) => "Potassium",
    }
}

const fn of(paper: &Recommendation, nutrient: Nutrient) -> Option<NutrientRate> {
    match nutrient {
        Nutrient::Nitrogen => paper.n,
        Nutrient::Phosphate => paper.p2o5,
        Nutrient::Potash => paper.k2o,
    }
}

const fn unit_of(paper: &Recommendation, nutrient: Nutrient) -> Option<RateUnit> {
    match nutrient {
        Nutrient::Nitrogen => paper.typed_in.n,
        Nutrient::Phosphate => paper.typed_in.p2o5,
        Nutrient::Potash => paper.typed_in.k2o,
    }
}

const fn set_unit(paper: &mut Recommendation, nutrient: Nutrient, unit: Option<RateUnit>) {
    match nutrient {
        Nutrient::Nitrogen => paper.typed_in.n = unit,
        Nutrient::Phosphate => paper.typed_in.p2o5 = unit,
        Nutrient::Potash => paper.typed_in.k2o = unit,
    }
}

const fn set(paper: &mut Recommendation, nutrient: Nutrient, rate: Option<NutrientRate>) {
    match nutrient {
        Nutrient::Nitrogen => paper.n = rate,
        Nutrient::Phosphate => paper.p2o5 = rate,
        Nutrient::Potash => paper.k2o = rate,
    }
}

/// How far apart rows stand in the laboratory's acre, where its amounts belong to the foot of row.
fn rows_apart(ui: &mut Ui, changed: &mut Recommendation, paper: Recommendation, field: Id, units: Units) {
    let shown = paper
        .rows_apart
        .map_or_else(String::new, |apart| apart.show_short(units));
    let read = |text: &str| -> Result<Option<Length>, String> {
        if text.is_empty() {
            return Ok(None);
        }
        let bare = if shown.is_empty() { "0 ft" } else { &shown };
        some_length(read_short(text, bare, units)?, text).map(Some)
    };
    if let Some(apart) = form::field(ui, field.with("rows apart"), "Its rows", &shown, read) {
        changed.rows_apart = apart;
    }
    form::follows(
        ui,
        match paper.rows_apart {
            Some(apart) => format!(
                "an acre there has rows {} apart, and each foot of row here gets what it would get there",
                apart.show_short(units)
            ),
            None => {
                "empty: the paper counts the ground, however rows stand. Where it counts beds or rows so far apart, \
                     type how far"
                    .to_owned()
            }
        },
    );
}

/// What counts for a nutrient that the paper says nothing of.
fn left_blank(ui: &mut Ui, hand: &Hand<'_>, bed: &Bed, paper: &Recommendation, units: Units) {
    let Some(plan) = hand.desk.plan().bed(bed.id) else {
        return;
    };
    let (mut counted, mut silent) = (Vec::new(), Vec::new());
    for nutrient in Nutrient::ALL {
        if of(paper, nutrient).is_some() {
            continue;
        }
        match plan.feeding.wants.of(nutrient) {
            Some(want) => {
                let is_yours = matches!(&want.from, WantFrom::Published { sources, .. } if sources.1 == Mark::Grower);
                let whose = if is_yours { ", yours from the crop book" } else { "" };
                counted.push(format!("{} {}{whose}", nutrient.name(), want.rate.show_field(units)));
            }
            None => silent.push(nutrient.name()),
        }
    }
    let mut words = Vec::new();
    if !counted.is_empty() {
        words.push(format!("the general rate counts: {}", counted.join(", ")));
    }
    if !silent.is_empty() {
        words.push(format!("nothing is counted as wanted of {}", silent.join(" or ")));
    }
    if !words.is_empty() {
        form::follows(ui, format!("where it is left blank, {}", words.join("; ")));
    }
}

/// What it is over this bed's ground and in the terms of a label, where the paper writes it another way.
fn comes_to(ui: &mut Ui, hand: &Hand<'_>, bed: &Bed, paper: &Recommendation, units: Units) {
    let over_rows = |rate| matches!(rate, Some(NutrientRate::PerRowLength(_)));
    let along = Nutrient::ALL.into_iter().any(|nutrient| over_rows(of(paper, nutrient)));
    let in_elements = paper.elemental && (paper.p2o5.is_some() || paper.k2o.is_some());
    if !along && !in_elements && paper.rows_apart.is_none() {
        return;
    }
    let Some(plan) = hand.desk.plan().bed(bed.id) else {
        return;
    };
    let wants = &plan.feeding.wants;
    let words: Vec<String> = Nutrient::ALL
        .into_iter()
        .filter_map(|nutrient| {
            let want = wants.of(nutrient)?;
            Some(format!("{} {}", nutrient.name(), want.rate.show_field(units)))
        })
        .collect();
    if !words.is_empty() {
        form::follows(
            ui,
            format!("comes to {} on this bed, as labels count", words.join(", ")),
        );
    }
}
