//! One credit, with the fields that its kind asks for.

use egui::{Id, RichText, Ui};

use super::compost;
use crate::agronomy;
use crate::app::card::{Hand, length_line};
use crate::app::feed_words::{read_ppm, read_rate};
use crate::app::form;
use crate::catalog::{Catalog, Mark};
use crate::layout::{Credit, CreditKind, NutrientUnits};
use crate::quantity::{Concentration, Fraction, Length, MassPerArea, RateUnit, Units};

/// The kinds, each as it begins: with nothing that was not measured.
pub(super) fn new_ones() -> Vec<(&'static str, Credit)> {
    let new = |name: &str, what| Credit {
        name: name.to_owned(),
        what,
    };
    vec![
        ("Compost", compost::new_compost()),
        ("Manure", compost::new_manure()),
        (
            "Legume or soil",
            new(
                "Legume or soil",
                CreditKind::Nitrogen {
                    rate: MassPerArea::ZERO,
                    typed_in: None,
                },
            ),
        ),
        (
            "Nitrate in the water",
            new(
                "Nitrate in the water",
                CreditKind::Water {
                    nitrate_n: Concentration::ZERO,
                    as_nitrate: false,
                    depth: Length::ZERO,
                },
            ),
        ),
        (
            "Already down",
            new(
                "Already down",
                CreditKind::Down {
                    n: MassPerArea::ZERO,
                    p2o5: MassPerArea::ZERO,
                    k2o: MassPerArea::ZERO,
                    typed_in: NutrientUnits::default(),
                },
            ),
        ),
    ]
}

/// Draws its fields. Gives it back when it was changed.
pub(super) fn show(ui: &mut Ui, hand: &Hand<'_>, credit: &Credit, field: Id) -> Option<Credit> {
    let units = hand.desk.layout().units;
    let mut changed = credit.clone();
    if let Some(name) = form::field(ui, field.with("name"), "Called", &credit.name, form::read_name) {
        changed.name = name;
    }
    match credit.what {
        CreditKind::Compost { .. } => compost::show(ui, hand, field, &mut changed),
        CreditKind::Nitrogen { rate, typed_in } => {
            if let Some((rate, typed_in)) = rate_line(ui, field.with("nitrogen"), "Brings N", (rate, typed_in), units) {
                changed.what = CreditKind::Nitrogen { rate, typed_in };
            }
            from_soil(ui, field, &mut changed);
        }
        CreditKind::Water {
            nitrate_n,
            as_nitrate,
            depth,
        } => water(ui, field, &mut changed, (nitrate_n, as_nitrate, depth), units),
        CreditKind::Down {
            mut n,
            mut p2o5,
            mut k2o,
            mut typed_in,
        } => {
            for (id, label, rate, unit) in [
                ("n", "N down", &mut n, &mut typed_in.n),
                ("p2o5", "P2O5 down", &mut p2o5, &mut typed_in.p2o5),
                ("k2o", "K2O down", &mut k2o, &mut typed_in.k2o),
            ] {
                if let Some(typed) = rate_line(ui, field.with(id), label, (*rate, *unit), units) {
                    (*rate, *unit) = typed;
                }
            }
            changed.what = CreditKind::Down { n, p2o5, k2o, typed_in };
            form::follows(ui, "what was put down before this plan began, and still counts");
        }
    }
    (changed != *credit).then_some(changed)
}

/// A rate that is empty for nothing, with the unit it was typed in.
pub(super) fn rate_line(
    ui: &mut Ui,
    id: Id,
    label: &str,
    (rate, typed_in): (MassPerArea, Option<RateUnit>),
    units: Units,
) -> Option<(MassPerArea, Option<RateUnit>)> {
    let shown = if rate > MassPerArea::ZERO {
        rate.show_field_in(typed_in, units)
    } else {
        String::new()
    };
    form::field(ui, id, label, &shown, |text| read_rate(text, units)).map(Option::unwrap_or_default)
}

/// The published credits of the soil itself.
fn from_soil(ui: &mut Ui, field: Id, changed: &mut Credit) {
    let source = Catalog::built_in().cite_key("UVM-GRUB", Mark::Read);
    let sod = agronomy::legume_sod_credit();
    if ui
        .add(egui::Button::new(RichText::new("A legume sod turned under").size(13.0)))
        .on_hover_text(format!("100 lb/acre for a vigorous stand. {source}"))
        .clicked()
    {
        "Legume sod".clone_into(&mut changed.name);
        changed.what = CreditKind::Nitrogen {
            rate: sod,
            typed_in: None,
        };
    }
    let read = |text: &str| Fraction::parse_percent(text).map_err(|error| error.to_string());
    if let Some(matter) = form::field(ui, field.with("matter"), "Organic matter", "", read) {
        changed.name = format!("Organic matter, {}", matter.show());
        changed.what = CreditKind::Nitrogen {
            rate: agronomy::organic_matter_credit(matter),
            typed_in: None,
        };
    }
    ui.label(
        RichText::new("in percent, by your soil test: 10 lb/acre for each; not twice, where the rate has it already")
            .small()
            .weak(),
    )
    .on_hover_text(source);
}

fn water(
    ui: &mut Ui,
    field: Id,
    changed: &mut Credit,
    (nitrate_n, as_nitrate, depth): (Concentration, bool, Length),
    units: Units,
) {
    let with = |nitrate_n, as_nitrate, depth| CreditKind::Water {
        nitrate_n,
        as_nitrate,
        depth,
    };
    let ways = [("nitrogen, NO3-N", false), ("nitrate, NO3", true)];
    let chosen = if as_nitrate { "nitrate, NO3" } else { "nitrogen, NO3-N" };
    if let Some(now_nitrate) = form::choices(ui, field.with("as nitrate"), "Report gives", chosen, &ways) {
        // The figure stays as it was typed; what it means changes.
        let meant = match (as_nitrate, now_nitrate) {
            (false, true) => agronomy::nitrogen_from_nitrate(nitrate_n),
            (true, false) => agronomy::nitrate_from_nitrogen(nitrate_n),
            _ => nitrate_n,
        };
        changed.what = with(meant, now_nitrate, depth);
    }
    let written = if as_nitrate {
        agronomy::nitrate_from_nitrogen(nitrate_n)
    } else {
        nitrate_n
    };
    let shown = if written > Concentration::ZERO {
        written.show(units)
    } else {
        String::new()
    };
    let read = |text: &str| read_ppm(text, units);
    if let Some(strength) = form::field(ui, field.with("nitrate"), "Water holds", &shown, read) {
        let nitrogen = if as_nitrate {
            agronomy::nitrogen_from_nitrate(strength)
        } else {
            strength
        };
        changed.what = with(nitrogen, as_nitrate, depth);
    }
    form::follows(
        ui,
        "ppm or mg/L on the water report; the two ways are more than fourfold apart, so ask which it is",
    );
    if let Some(depth) = length_line::short(ui, field.with("depth"), "Put on", depth, units) {
        changed.what = with(nitrate_n, as_nitrate, depth);
    }
    form::follows(ui, "water that the bed gets from the well over the season");
}
