//! What a test of the soil says: classes of phosphorus and potassium, nitrogen for sweet corn by the nitrate test before
//! side-dressing, and what manure of the last years still gives. Nothing here is kept but what the grower takes over.

use egui::{Id, RichText, Ui};

use super::credit::rate_line;
use crate::agronomy::{self, Manure, SoilLevel, TestedFor};
use crate::app::card::Hand;
use crate::app::card::planting::{change, crop_of};
use crate::app::form;
use crate::catalog::{Catalog, Mark};
use crate::layout::{Bed, BedChange, Credit, CreditKind, NutrientRate};
use crate::quantity::{MassPerArea, RateUnit, Units, read_number};

/// What was typed, as long as the window is open.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
struct Typed {
    phosphorus: Option<f64>,
    potassium: Option<f64>,
    nitrate: Option<f64>,
    is_manured: bool,
    is_sand: bool,
    manure: Option<Manure>,
    organic_n: [(MassPerArea, Option<RateUnit>); 3],
}

pub(super) fn show(ui: &mut Ui, hand: &mut Hand<'_>, bed: &Bed, field: Id) {
    let units = hand.desk.layout().units;
    let kept = field.with("soil tests");
    let before: Typed = ui.data(|data| data.get_temp(kept)).unwrap_or_default();
    let mut typed = before;
    classes(ui, field, &mut typed, units);
    if crop_of(hand, bed).is_some_and(|crop| crop.kin.0 == "sweet_corn") {
        nitrate(ui, hand, bed, field, &mut typed, units);
    }
    manure(ui, hand, bed, field, &mut typed, units);
    if typed != before {
        ui.data_mut(|data| data.insert_temp(kept, typed));
    }
}

/// The class that phosphorus and potassium fall into.
fn classes(ui: &mut Ui, field: Id, typed: &mut Typed, units: Units) {
    for (name, nutrient, ppm) in [
        ("P found", TestedFor::Phosphorus, &mut typed.phosphorus),
        ("K found", TestedFor::Potassium, &mut typed.potassium),
    ] {
        if let Some(found) = form::field(ui, field.with(name), name, &shown(*ppm), |text| read_ppm(text, units)) {
            *ppm = found;
        }
        if let Some(level) = ppm.and_then(|ppm| SoilLevel::parts_per_million(ppm).ok()) {
            let class = agronomy::supply_by_mehlich_3(nutrient, level);
            ui.label(RichText::new(format!("{} by Mehlich-3", class.name())).small())
                .on_hover_text(Catalog::built_in().cite_key("RUTGERS-LEVELS", Mark::Read));
        }
    }
    form::follows(
        ui,
        "in ppm by Mehlich-3; a paper in lb/acre has twice the figure, and other extracts have classes of their own",
    );
}

/// Nitrogen for sweet corn, by the test a week before side-dressing.
fn nitrate(ui: &mut Ui, hand: &mut Hand<'_>, bed: &Bed, field: Id, typed: &mut Typed, units: Units) {
    let found = form::field(
        ui,
        field.with("nitrate found"),
        "Nitrate-N",
        &shown(typed.nitrate),
        |text| read_ppm(text, units),
    );
    if let Some(found) = found {
        typed.nitrate = found;
    }
    form::follows(ui, "in ppm of the foot of soil, taken when corn is about a foot tall");
    ui.checkbox(&mut typed.is_manured, "manure or sod went under");
    ui.checkbox(&mut typed.is_sand, "light sand");
    let Some(level) = typed.nitrate.and_then(|ppm| SoilLevel::parts_per_million(ppm).ok()) else {
        return;
    };
    let rate = agronomy::sweet_corn_after_nitrate_test(level, typed.is_manured);
    let halves = match agronomy::side_dressings_of_nitrogen(rate, typed.is_sand) {
        1 => "in one side-dressing",
        _ => "in two halves",
    };
    ui.label(RichText::new(format!(
        "Side-dress {} of nitrogen {halves}",
        rate.show_field(units)
    )))
    .on_hover_text(Catalog::built_in().cite_key("UDEL-PSNT", Mark::Read));
    let take = ui.add(egui::Button::new(RichText::new("Go by this test").size(13.0)));
    if take
        .on_hover_text("Takes it as what is still to be given; what is down already is then no credit any more")
        .clicked()
    {
        let mut paper = bed.feeding.laboratory.unwrap_or_default();
        paper.n = Some(NutrientRate::PerArea(rate));
        // Published, not typed.
        paper.typed_in.n = None;
        change(hand, bed, BedChange::SetRecommendation(Some(paper)));
    }
}

/// What the manure of this year and the two before gives.
fn manure(ui: &mut Ui, hand: &mut Hand<'_>, bed: &Bed, field: Id, typed: &mut Typed, units: Units) {
    let kinds = [
        ("none", None),
        ("cow, under 18 % dry matter", Some(Manure::WetCow)),
        ("cow, 18 % or more", Some(Manure::SolidCow)),
        ("poultry", Some(Manure::Poultry)),
    ];
    let chosen = kinds
        .iter()
        .find(|(_, kind)| *kind == typed.manure)
        .map_or("none", |(name, _)| name);
    if let Some(kind) = form::choices(ui, field.with("manure of years"), "Manure", chosen, &kinds) {
        typed.manure = kind;
    }
    let Some(kind) = typed.manure else { return };
    let years = ["This year", "Last year", "Year before"];
    for (name, amount) in years.into_iter().zip(&mut typed.organic_n) {
        if let Some(typed) = rate_line(ui, field.with(name), name, *amount, units) {
            *amount = typed;
        }
    }
    form::follows(
        ui,
        "organic nitrogen in it, over ground: tons × the pounds to the ton of its analysis",
    );
    let organic_n = typed.organic_n.map(|(rate, _)| rate);
    let gives: MassPerArea = agronomy::manure_release(kind, &organic_n).into_iter().sum();
    ui.label(RichText::new(format!("gives {} of nitrogen this season", gives.show_field(units))).small())
        .on_hover_text(Catalog::built_in().cite_key("CORNELL-CSS412", Mark::Read));
    let add = ui.add(egui::Button::new(
        RichText::new("Count it as what the bed has").size(13.0),
    ));
    if add.clicked() {
        let credit = Credit {
            name: "Manure of three years".to_owned(),
            what: CreditKind::Nitrogen {
                rate: gives,
                typed_in: None,
            },
        };
        change(hand, bed, BedChange::AddCredit(credit));
    }
}

fn shown(ppm: Option<f64>) -> String {
    ppm.map_or_else(String::new, |ppm| crate::quantity::number(ppm, 1))
}

/// Reads parts per million; nothing typed is nothing found.
fn read_ppm(text: &str, units: Units) -> Result<Option<f64>, String> {
    let text = text.trim().trim_end_matches("ppm").trim();
    if text.is_empty() {
        return Ok(None);
    }
    let found = read_number(text, units)
        .ok_or_else(|| format!("“{text}” was not understood; write a plain number, such as 18"))?;
    SoilLevel::parts_per_million(found).map_err(|error| error.to_string())?;
    Ok(Some(found))
}
