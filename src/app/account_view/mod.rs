//! The account of the bed in hand in the ledger's place: what it wants of a nutrient, what is planned and what is done,
//! as a plot through the season and as a small table.

mod axis;
mod key;
mod plot;
mod table;

use egui::Ui;

use super::desk::Desk;
use super::form;
use crate::agronomy::Nutrient;
use crate::layout::BedId;
use crate::sheets::feeding_list::account_words;

/// How the account is looked at.
pub(super) struct AccountView {
    nutrient: Nutrient,
}

impl Default for AccountView {
    fn default() -> Self {
        Self {
            nutrient: Nutrient::Nitrogen,
        }
    }
}

/// Width of the table beside the plot.
const TABLE: f32 = 430.0;

/// Draws the account of a bed into all the room there is.
pub(super) fn show(ui: &mut Ui, desk: &Desk, bed: Option<BedId>, view: &mut AccountView) {
    let layout = desk.layout();
    let both = bed.and_then(|id| Some((layout.bed(id)?, desk.plan().bed(id)?.clone())));
    let Some((bed, plan)) = both else {
        form::follows(
            ui,
            "Draw a bed, and what it wants and gets through the season stands here.",
        );
        return;
    };
    let units = layout.units;
    let accounts = account_words(&plan.feeding, units);
    ui.horizontal_top(|ui| {
        let room = ui.available_size();
        let beside = room.x >= TABLE + 360.0;
        let width = if beside { room.x - TABLE - 24.0 } else { room.x };
        ui.vertical(|ui| {
            ui.set_width(width);
            ui.horizontal(|ui| {
                for nutrient in Nutrient::ALL {
                    let name = form::heading(nutrient.name());
                    ui.selectable_value(&mut view.nutrient, nutrient, name);
                }
                ui.add_space(10.0);
                key::show(ui);
            });
            plot::show(ui, bed, &plan.feeding, view.nutrient, units);
        });
        if beside {
            ui.add_space(16.0);
            ui.vertical(|ui| {
                ui.set_width(TABLE);
                if let Some(nutrient) = table::show(ui, &accounts, view.nutrient, &plan.feeding, units) {
                    view.nutrient = nutrient;
                }
            });
        }
    });
}
