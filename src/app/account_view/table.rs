//! The three accounts as a small table beside the plot.

use egui::{Align, Grid, Layout, RichText, Ui};

use crate::agronomy::Nutrient;
use crate::app::form;
use crate::app::theme::{self, ThemeInForce as _};
use crate::plan::feeding::BedFeeding;
use crate::quantity::Units;
use crate::sheets::feeding_list::{AccountWords, credit_words, lime_words, rate_unit};

/// Draws the table. Gives back the nutrient that was clicked.
pub(super) fn show(
    ui: &mut Ui,
    accounts: &[AccountWords],
    chosen: Nutrient,
    feeding: &BedFeeding,
    units: Units,
) -> Option<Nutrient> {
    let colours = theme::colours(ui.theme_in_force());
    let mut clicked = None;
    egui::ScrollArea::vertical().id_salt("accounts").show(ui, |ui| {
        Grid::new("accounts of a bed")
            .num_columns(7)
            .spacing([14.0, 4.0])
            .show(ui, |ui| {
                ui.label(RichText::new(rate_unit(units)).size(12.0).color(colours.soft));
                for head in ["wanted", "has", "to give", "planned", "done", "ahead"] {
                    right(ui, RichText::new(head).size(12.0).color(colours.soft));
                }
                ui.end_row();
                for account in accounts {
                    let name = form::heading(account.nutrient.name());
                    let font = if account.nutrient == chosen {
                        theme::bold(13.0)
                    } else {
                        egui::FontId::proportional(13.0)
                    };
                    let words = RichText::new(name).font(font.clone()).color(colours.strong);
                    let link = egui::Label::new(words).sense(egui::Sense::click());
                    if ui.add(link).on_hover_cursor(egui::CursorIcon::PointingHand).clicked() {
                        clicked = Some(account.nutrient);
                    }
                    for number in [
                        &account.wanted,
                        &account.has,
                        &account.to_give,
                        &account.planned,
                        &account.done,
                        &account.ahead,
                    ] {
                        let number = if number.is_empty() { "?" } else { number };
                        right(ui, RichText::new(number).font(font.clone()).color(colours.strong));
                    }
                    ui.end_row();
                }
            });
        ui.add_space(4.0);
        for account in accounts {
            let colour = if account.is_off { colours.accent } else { colours.soft };
            let name = form::heading(account.nutrient.name());
            let words = RichText::new(format!("{name}: {}", account.standing)).size(13.0);
            ui.label(words.color(colour));
        }
        if let Some(account) = accounts.iter().find(|account| account.nutrient == chosen)
            && !account.wanted_from.is_empty()
        {
            let range = match account.range.as_str() {
                "" => String::new(),
                range => format!("{range} {} published. ", rate_unit(units)),
            };
            form::follows(ui, format!("{range}{}", form::capital(&account.wanted_from)));
        }
        for credit in credit_words(feeding, units) {
            form::follows(ui, format!("Has {credit}"));
        }
        let lime = lime_words(feeding, units);
        if !lime.is_empty() {
            form::follows(ui, form::capital(&lime));
        }
    });
    clicked
}

fn right(ui: &mut Ui, words: RichText) {
    ui.with_layout(Layout::right_to_left(Align::Center), |ui| ui.label(words));
}
