//! What a bed has already: a list of credits, each opened to be changed.

use egui::{Id, Ui};

use super::credit;
use crate::agronomy::Nutrient;
use crate::app::card::Hand;
use crate::app::card::planting::change;
use crate::app::form;
use crate::layout::{Bed, BedChange, limits::MOST_CREDITS};
use crate::plan::feeding::NutrientRates;
use crate::quantity::{MassPerArea, Units};
use crate::sheets::feeding_list::{rate_unit, rate_words};

pub(super) fn show(ui: &mut Ui, hand: &mut Hand<'_>, bed: &Bed, field: Id) {
    let units = hand.desk.layout().units;
    let plan = hand.desk.plan().bed(bed.id).cloned();
    let at = field.with("open credit");
    let mut open: Option<usize> = ui.data(|data| data.get_temp(at));
    for (place, credit) in bed.feeding.credits.iter().enumerate() {
        let gives = plan
            .as_ref()
            .and_then(|plan| plan.feeding.credits.get(place))
            .map_or_else(String::new, |credit| gives_words(credit.gives, units));
        let is_open = open == Some(place);
        if form::opening_line(ui, is_open, &credit.name, &gives).clicked() {
            open = if is_open { None } else { Some(place) };
        }
        if is_open {
            let inside = field.with(("credit", place));
            egui::Frame::new()
                .inner_margin(egui::Margin {
                    left: 14,
                    ..egui::Margin::ZERO
                })
                .show(ui, |ui| {
                    if let Some(changed) = credit::show(ui, hand, credit, inside) {
                        change(hand, bed, BedChange::SetCredit(place, changed));
                    }
                    if ui.button("Remove this credit").clicked() {
                        change(hand, bed, BedChange::RemoveCredit(place));
                        open = None;
                    }
                    ui.add_space(4.0);
                });
        }
    }
    if bed.feeding.credits.is_empty() {
        form::follows(
            ui,
            "compost, manure, a legume turned under, nitrate in the water, what is down already: each is counted off",
        );
    }
    if bed.feeding.credits.len() < MOST_CREDITS {
        ui.menu_button("Add what it has", |ui| {
            for (words, new) in credit::new_ones() {
                if ui.button(words).clicked() {
                    open = Some(bed.feeding.credits.len());
                    change(hand, bed, BedChange::AddCredit(new));
                    ui.close();
                }
            }
        });
    }
    ui.data_mut(|data| match open {
        Some(place) => {
            data.insert_temp(at, place);
        }
        None => {
            data.remove::<usize>(at);
        }
    });
}

/// `N 30, P2O5 10 lb/acre`, without what there is none of.
pub(super) fn gives_words(gives: NutrientRates, units: Units) -> String {
    let parts: Vec<String> = [
        ("N", Nutrient::Nitrogen),
        ("P2O5", Nutrient::Phosphate),
        ("K2O", Nutrient::Potash),
    ]
    .into_iter()
    .filter(|(_, nutrient)| gives.of(*nutrient) > MassPerArea::ZERO)
    .map(|(name, nutrient)| format!("{name} {}", rate_words(gives.of(nutrient), units)))
    .collect();
    if parts.is_empty() {
        return "nothing yet".to_owned();
    }
    format!("{} {}", parts.join(", "), rate_unit(units))
}
