//! One credit, with the fields that its kind asks for.

use egui::{Id, RichText, Ui};

use crate::agronomy;
use crate::app::card::{Hand, length_line};
use crate::app::feed_words::{part_or_empty, read_analysis, read_ppm, read_rate};
use crate::app::form;
use crate::app::picker::{Choice, picker};
use crate::catalog::{Analysis, Catalog, Mark};
use crate::layout::{Credit, CreditKind};
use crate::quantity::{Concentration, Fraction, Length, MassPerArea, Units};

/// Nitrogen of finished compost that comes free in a season.
///
/// # Source
/// University of Georgia, SARE project LS16-269, final report: composts 1 to 4 % of total nitrogen in 100 days. The upper
/// end, which the grower's own test replaces.
const FREE_OF_COMPOST: f64 = 0.04;

/// What was measured of it.
const MEASURED_FREE: &str = "Measured in 100 days: composts 1 to 4 % of their nitrogen, poultry litters 8 to 37 %, commercial \
                             organic fertilizers 21 to 87 %.";

/// The kinds, each as it begins: with nothing that was not measured.
pub(super) fn new_ones() -> Vec<(&'static str, Credit)> {
    let new = |name: &str, what| Credit {
        name: name.to_owned(),
        what,
    };
    vec![
        (
            "Compost or manure",
            new(
                "Compost",
                CreditKind::Compost {
                    rate: MassPerArea::ZERO,
                    analysis: Analysis::default(),
                    available_n: Fraction::new(FREE_OF_COMPOST).unwrap_or_default(),
                },
            ),
        ),
        (
            "Legume or soil",
            new("Legume or soil", CreditKind::Nitrogen(MassPerArea::ZERO)),
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
        CreditKind::Compost {
            rate,
            analysis,
            available_n,
        } => compost(ui, hand, field, &mut changed, (rate, analysis, available_n)),
        CreditKind::Nitrogen(rate) => {
            if let Some(rate) = rate_line(ui, field.with("nitrogen"), "Brings N", rate, units) {
                changed.what = CreditKind::Nitrogen(rate);
            }
            from_soil(ui, field, &mut changed);
        }
        CreditKind::Water {
            nitrate_n,
            as_nitrate,
            depth,
        } => water(ui, field, &mut changed, (nitrate_n, as_nitrate, depth), units),
        CreditKind::Down { n, p2o5, k2o } => {
            let down = |n, p2o5, k2o| CreditKind::Down { n, p2o5, k2o };
            if let Some(n) = rate_line(ui, field.with("n"), "N down", n, units) {
                changed.what = down(n, p2o5, k2o);
            }
            if let Some(p2o5) = rate_line(ui, field.with("p2o5"), "P2O5 down", p2o5, units) {
                changed.what = down(n, p2o5, k2o);
            }
            if let Some(k2o) = rate_line(ui, field.with("k2o"), "K2O down", k2o, units) {
                changed.what = down(n, p2o5, k2o);
            }
            form::follows(ui, "what was put down before this plan began, and still counts");
        }
    }
    (changed != *credit).then_some(changed)
}

/// A rate that is empty for nothing.
fn rate_line(ui: &mut Ui, id: Id, label: &str, rate: MassPerArea, units: Units) -> Option<MassPerArea> {
    let shown = if rate > MassPerArea::ZERO {
        rate.show_field(units)
    } else {
        String::new()
    };
    form::field(ui, id, label, &shown, |text| read_rate(text, units)).map(Option::unwrap_or_default)
}

fn compost(
    ui: &mut Ui,
    hand: &Hand<'_>,
    field: Id,
    changed: &mut Credit,
    (rate, analysis, available_n): (MassPerArea, Analysis, Fraction),
) {
    let units = hand.desk.layout().units;
    let with = |rate, analysis, available_n| CreditKind::Compost {
        rate,
        analysis,
        available_n,
    };
    let shown = if rate > MassPerArea::ZERO {
        rate.show_garden(units)
    } else {
        String::new()
    };
    let read = |text: &str| read_rate(text, units);
    if let Some(rate) = form::field(ui, field.with("rate"), "How much", &shown, read) {
        changed.what = with(rate.unwrap_or_default(), analysis, available_n);
    }
    form::follows(
        ui,
        match units {
            Units::Customary => "worked in: lb/1000 sq ft, or tons/acre",
            Units::Metric => "worked in: kg/m2, or t/ha",
        },
    );
    let known: Vec<_> = hand
        .desk
        .material_book()
        .all()
        .iter()
        .filter(|known| known.material.available_n.is_some())
        .collect();
    let choices: Vec<Choice> = known
        .iter()
        .map(|known| Choice::named(&known.material.name, known.analysis().label()))
        .collect();
    let picked = form::line(ui, "As published", |ui| {
        let width = ui.available_width();
        picker(ui, field.with("like"), "As published", "", &choices, width)
    });
    if let Some(known) = picked.and_then(|place| known.get(place)) {
        changed.name.clone_from(&known.material.name);
        changed.what = with(rate, known.analysis(), known.available_n);
    }
    form::follows(
        ui,
        "to take over the analysis of a material; a test of your own is better",
    );
    let shown = if analysis == Analysis::default() {
        String::new()
    } else {
        analysis.label()
    };
    if let Some(analysis) = form::field(ui, field.with("analysis"), "Holds", &shown, read_analysis) {
        changed.what = with(rate, analysis, available_n);
    }
    form::follows(
        ui,
        "nitrogen, phosphate and potash in percent of its weight as it is, such as 1-1-1",
    );
    let read = |text: &str| Fraction::parse_percent(text).map_err(|error| error.to_string());
    if let Some(free) = form::field(
        ui,
        field.with("free"),
        "Free this year",
        &part_or_empty(available_n),
        read,
    ) {
        changed.what = with(rate, analysis, free);
    }
    ui.label(
        RichText::new("the part of its nitrogen that this crop gets")
            .small()
            .weak(),
    )
    .on_hover_text(format!(
        "{MEASURED_FREE} {}",
        Catalog::built_in().cite_key("UGA-LS16", Mark::Read)
    ));
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
        changed.what = CreditKind::Nitrogen(sod);
    }
    let read = |text: &str| Fraction::parse_percent(text).map_err(|error| error.to_string());
    if let Some(matter) = form::field(ui, field.with("matter"), "Organic matter", "", read) {
        changed.name = format!("Organic matter, {}", matter.show());
        changed.what = CreditKind::Nitrogen(agronomy::organic_matter_credit(matter));
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
