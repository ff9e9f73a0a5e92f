//! The card of the layout as a whole: its name and season, and what all beds come to.

use egui::{Id, RichText, Ui};

use super::{Hand, head};
use crate::app::action::Action;
use crate::app::command::Command;
use crate::app::form;
use crate::app::step::Step;
use crate::app::wording::{nutrients, row_length};
use crate::layout::{Edit, Place, limits::SEASONS};
use crate::quantity::counted;
use crate::quantity::{Area, Units, count};

pub(super) fn show(ui: &mut Ui, hand: &mut Hand<'_>) {
    let layout = hand.desk.layout();
    let plan = hand.desk.plan().clone();
    let units = layout.units;
    let field = Id::unique("card of layout");
    let ground: Area = plan
        .plots
        .iter()
        .filter_map(|plot| plot.ground.as_ref().ok())
        .map(crate::geometry::Region::area)
        .sum();
    let plots = layout.plots.len();
    let what = match plots {
        0 => "an empty sheet".to_owned(),
        1 => format!("1 plot · {}", ground.show(units)),
        _ => format!("{plots} plots · {}", ground.show(units)),
    };
    head(ui, &layout.name, &what);
    if let Some(name) = form::field(ui, field.with("name"), "Name", &layout.name, form::read_name) {
        hand.out.push(Command::Edit(Edit::SetName(name)));
    }
    let read_season = |text: &str| form::read_whole(text, i32::from(*SEASONS.start()), i32::from(*SEASONS.end()));
    let season = form::field(
        ui,
        field.with("season"),
        "Season",
        &layout.season.to_string(),
        read_season,
    );
    if let Some(season) = season.and_then(|season| i16::try_from(season).ok()) {
        hand.out.push(Command::Edit(Edit::SetSeason(season)));
    }
    let all = [("feet, pounds", Units::Customary), ("metres, kilograms", Units::Metric)];
    let chosen = all
        .iter()
        .find(|(_, other)| *other == units)
        .map_or("", |(name, _)| *name);
    if let Some(units) = form::choices(ui, field.with("units"), "Units", chosen, &all) {
        hand.out.push(Command::Edit(Edit::SetUnits(units)));
    }
    place(ui, hand, field);
    if hand.desk.step == Step::Outside {
        outside(ui, hand);
    }
    if !layout.beds.is_empty() {
        sums(ui, hand, units);
    }
}

/// The place on earth: a name, latitude and longitude.
fn place(ui: &mut Ui, hand: &mut Hand<'_>, field: Id) {
    let place = hand.desk.layout().place.clone();
    let shown = place
        .as_ref()
        .map_or_else(String::new, |place| format!("{}, {}", place.latitude, place.longitude));
    let read = |text: &str| {
        let wrong = || "Write degrees north and east, as 44.5, -93.2; south and west are negative".to_owned();
        let (north, east) = text.split_once([',', ' ']).ok_or_else(wrong)?;
        let degrees = |part: &str, most: f64| {
            part.trim()
                .parse::<f64>()
                .ok()
                .filter(|degrees| degrees.abs() <= most)
                .ok_or_else(wrong)
        };
        Ok((degrees(north, 90.0)?, degrees(east, 180.0)?))
    };
    if let Some((latitude, longitude)) = form::field(ui, field.with("degrees"), "Place", &shown, read) {
        let name = place.as_ref().map_or_else(String::new, |place| place.name.clone());
        hand.out.push(Command::Edit(Edit::SetPlace(Some(Place {
            name,
            latitude,
            longitude,
        }))));
    }
    form::follows(ui, "degrees north and east, such as 44.5, -93.2");
    let Some(place) = place else { return };
    if let Some(name) = form::field(ui, field.with("place"), "Its name", &place.name, form::read_words) {
        hand.out
            .push(Command::Edit(Edit::SetPlace(Some(Place { name, ..place }))));
    }
}

fn outside(ui: &mut Ui, hand: &mut Hand<'_>) {
    form::section(ui, "To carry outside");
    form::follows(ui, "The map, true to scale, with a ledger for each bed.");
    let has_plots = !hand.desk.layout().plots.is_empty();
    for action in [Action::Print, Action::SaveTable] {
        let button = egui::Button::new(action.label());
        if ui
            .add_enabled(has_plots, button)
            .on_hover_text(action.tooltip())
            .clicked()
        {
            hand.out.push(Command::Act(action));
        }
    }
}

fn sums(ui: &mut Ui, hand: &Hand<'_>, units: Units) {
    let plan = hand.desk.plan();
    form::section(ui, "All beds");
    let totals = &plan.totals;
    ui.label(format!(
        "{} · {} · {}",
        counted(totals.rows, "row", "rows"),
        row_length(totals.row_length, units),
        counted(totals.plants, "plant", "plants")
    ));
    for crop in &plan.crops {
        let seed = crop.totals.seed_mass.filter(|_| crop.totals.seeds > 0);
        let seed = seed.map_or_else(String::new, |mass| format!(" · seed {}", mass.show_seed(units)));
        ui.label(RichText::new(&crop.name).font(crate::app::theme::bold(13.0)));
        form::follows(
            ui,
            format!(
                "{} · {} plants{seed}",
                row_length(crop.totals.row_length, units),
                count(crop.totals.plants)
            ),
        );
    }
    if !plan.materials.is_empty() {
        form::section(ui, "Fertilizer");
    }
    for material in &plan.materials {
        ui.label(RichText::new(&material.name).font(crate::app::theme::bold(13.0)));
        let brings = nutrients(material.n, material.p2o5, material.k2o, units);
        let product = material.product.show_product(units);
        form::follows(
            ui,
            if brings.is_empty() {
                product
            } else {
                format!("{product} · {brings}")
            },
        );
    }
}
