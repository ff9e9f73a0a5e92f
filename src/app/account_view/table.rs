//! The three accounts as a small table beside the plot.

use egui::{Align, Layout, RichText, Ui, vec2};

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
    egui::ScrollArea::vertical()
        .id_salt("accounts")
        .auto_shrink([false, true])
        .show(ui, |ui| {
            line(
                ui,
                |ui| {
                    ui.label(RichText::new(rate_unit(units)).size(12.0).color(colours.soft));
                },
                &HEADS.map(|head| RichText::new(head).size(12.0).color(colours.soft)),
            );
            for account in accounts {
                let font = if account.nutrient == chosen {
                    theme::bold(13.0)
                } else {
                    egui::FontId::proportional(13.0)
                };
                let words = |text: &str| RichText::new(text).font(font.clone()).color(colours.strong);
                let numbers = [
                    &account.wanted,
                    &account.has,
                    &account.to_give,
                    &account.planned,
                    &account.done,
                    &account.ahead,
                ];
                let numbers = numbers.map(|number| words(if number.is_empty() { "?" } else { number }));
                let name = words(&form::heading(account.nutrient.name()));
                let link = |ui: &mut Ui| {
                    let link = egui::Label::new(name).sense(egui::Sense::click());
                    if ui.add(link).on_hover_cursor(egui::CursorIcon::PointingHand).clicked() {
                        clicked = Some(account.nutrient);
                    }
                };
                line(ui, link, &numbers);
            }
            ui.add_space(4.0);
            for account in accounts {
                let colour = if account.is_off { colours.accent } else { colours.soft };
                let name = form::heading(account.nutrient.name());
                let words = RichText::new(format!("{name}: {}", account.standing)).size(13.0);
                let label = ui.label(words.color(colour));
                // Who says what is wanted is a line to hover over, and stands in full on the sheets and on the bed's card.
                if !account.wanted_from.is_empty() {
                    let range = match account.range.as_str() {
                        "" => String::new(),
                        range => format!("{range} {} published.\n", rate_unit(units)),
                    };
                    label.on_hover_text(format!("{range}{}", form::capital(&account.wanted_from)));
                }
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

const HEADS: [&str; 6] = ["wanted", "has", "to give", "planned", "done", "ahead"];
/// Widths of the names and of a number.
const NAME: f32 = 84.0;
const NUMBER: f32 = 50.0;

/// A line: a name, and numbers set to the right in their columns.
fn line(ui: &mut Ui, name: impl FnOnce(&mut Ui), numbers: &[RichText; 6]) {
    ui.horizontal(|ui| {
        ui.spacing_mut().item_spacing.x = 6.0;
        ui.allocate_ui_with_layout(vec2(NAME, 18.0), Layout::left_to_right(Align::Center), |ui| {
            ui.set_min_width(NAME);
            name(ui);
        });
        for number in numbers {
            ui.allocate_ui_with_layout(vec2(NUMBER, 18.0), Layout::right_to_left(Align::Center), |ui| {
                ui.set_min_width(NUMBER);
                ui.label(number.clone());
            });
        }
    });
}
