//! What a bed wants: by the soil laboratory's paper, or by the general rates published for the crop.

use egui::{Id, RichText, Ui};

use super::paper;
use crate::agronomy::Nutrient;
use crate::app::card::Hand;
use crate::app::card::planting::{change, crop_of};
use crate::app::form;
use crate::catalog::{Catalog, Mark, NeedKind};
use crate::layout::{Bed, BedChange, Recommendation};
use crate::plan::feeding::{Want, WantFrom};
use crate::quantity::Units;
use crate::sheets::feeding_list::{rate_unit, rate_words};

pub(super) fn show(ui: &mut Ui, hand: &mut Hand<'_>, bed: &Bed, field: Id) {
    let paper = bed.feeding.laboratory;
    let ways = [("my soil test", true), ("published rates", false)];
    let chosen = if paper.is_some() {
        "my soil test"
    } else {
        "published rates"
    };
    // What was typed from the paper comes back when the grower turns to it again.
    let put_by = field.with("paper put by");
    if let Some(by_paper) = form::choices(ui, field.with("need from"), "Go by", chosen, &ways)
        && by_paper != paper.is_some()
    {
        if let Some(paper) = paper {
            ui.data_mut(|data| data.insert_temp(put_by, paper));
        }
        let kept: Option<Recommendation> = ui.data(|data| data.get_temp(put_by));
        let next = by_paper.then(|| kept.unwrap_or_default());
        change(hand, bed, BedChange::SetRecommendation(next));
    }
    match paper {
        Some(paper) => paper::show(ui, hand, bed, paper, field),
        None => {
            condition(ui, hand, bed, field);
            published(ui, hand, bed);
        }
    }
}

/// Which of several published rates holds here, where texts give them for different ground.
fn condition(ui: &mut Ui, hand: &mut Hand<'_>, bed: &Bed, field: Id) {
    let Some(crop) = crop_of(hand, bed) else { return };
    let mut conditions: Vec<&str> = Vec::new();
    let needs = Catalog::built_in().needs_of(&crop.kin).iter();
    for need in needs.filter(|need| need.kind == NeedKind::Recommendation) {
        if !conditions.contains(&need.condition.as_str()) {
            conditions.push(&need.condition);
        }
    }
    if conditions.len() < 2 {
        return;
    }
    let name = |condition: &'static str| if condition.is_empty() { "anywhere" } else { condition };
    let ways: Vec<(&str, &str)> = conditions
        .iter()
        .map(|&condition| (name(condition), condition))
        .collect();
    let chosen = bed
        .feeding
        .published
        .as_deref()
        .and_then(|chosen| conditions.iter().copied().find(|condition| *condition == chosen))
        .or_else(|| conditions.first().copied())
        .map_or("", name);
    if let Some(condition) = form::choices(ui, field.with("condition"), "Ground", chosen, &ways) {
        change(hand, bed, BedChange::SetPublished(Some(condition.to_owned())));
    }
}

/// The published general rates, each named as such.
fn published(ui: &mut Ui, hand: &Hand<'_>, bed: &Bed) {
    let Some(crop) = crop_of(hand, bed) else {
        form::follows(
            ui,
            "choose a crop to see the rates published for it, or go by your soil test",
        );
        return;
    };
    let units = hand.desk.layout().units;
    let Some(plan) = hand.desk.plan().bed(bed.id) else {
        return;
    };
    let wants = &plan.feeding.wants;
    let mut silent = Vec::new();
    let mut said = String::new();
    for nutrient in Nutrient::ALL {
        let Some(want) = wants.of(nutrient) else {
            silent.push(nutrient.name());
            continue;
        };
        one(ui, nutrient, want, units, &mut said);
    }
    if silent.len() == Nutrient::ALL.len() {
        form::follows(
            ui,
            format!(
                "no general rate is published here for {}; type in what your soil laboratory says",
                crop.name.to_lowercase()
            ),
        );
    } else if !silent.is_empty() {
        form::follows(
            ui,
            format!(
                "no rate of {} is published here for it: that goes by a soil test",
                silent.join(" or ")
            ),
        );
    }
}

/// One published rate. Its condition is said once where several rates share it.
fn one(ui: &mut Ui, nutrient: Nutrient, want: &Want, units: Units, said: &mut String) {
    let WantFrom::Published { condition, sources } = &want.from else {
        return;
    };
    let unit = rate_unit(units);
    let rate = if rate_words(want.low, units) == rate_words(want.high, units) {
        format!("{} {unit}", rate_words(want.rate, units))
    } else {
        format!(
            "{} to {} {unit}, counted as {}",
            rate_words(want.low, units),
            rate_words(want.high, units),
            rate_words(want.rate, units)
        )
    };
    let is_yours = sources.1 == Mark::Grower;
    let words = format!("{} {rate}", form::heading(nutrient.name()));
    ui.label(RichText::new(words).size(13.0))
        .on_hover_text(Catalog::built_in().cite(&sources.0, sources.1));
    let about = match (is_yours, condition.as_str()) {
        (true, _) => "your own rate, from the crop book".to_owned(),
        (false, "") => "a published general rate, not a test of this soil".to_owned(),
        (false, condition) => format!("published general rate: {condition}"),
    };
    if *said != about {
        form::follows(ui, about.clone());
        *said = about;
    }
}
