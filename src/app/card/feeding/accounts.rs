//! The three accounts of a bed: wanted against what it has, what is planned, and what is done.

use egui::{Align, Grid, Layout, RichText, Ui};

use crate::agronomy::Nutrient;
use crate::app::card::Hand;
use crate::app::card::planting::change;
use crate::app::form;
use crate::app::theme::{self, ThemeInForce as _};
use crate::layout::{Bed, BedChange};
use crate::plan::feeding::{Account, Standing};
use crate::quantity::{MassPerArea, Units};
use crate::sheets::feeding_list::{rate_unit, rate_words, standing_words};

/// One number of an account, where it is known.
type OfAccount = fn(&Account) -> Option<MassPerArea>;

pub(super) fn show(ui: &mut Ui, hand: &mut Hand<'_>, bed: &Bed) {
    let units = hand.desk.layout().units;
    let Some(plan) = hand.desk.plan().bed(bed.id).cloned() else {
        return;
    };
    let accounts = &plan.feeding.accounts;
    let any_done = accounts.iter().any(|account| account.done > MassPerArea::ZERO);
    Grid::new(("accounts", bed.id))
        .num_columns(4)
        .spacing([6.0, 2.0])
        .min_row_height(18.0)
        .show(ui, |ui| {
            let soft = theme::colours(ui.theme_in_force()).soft;
            ui.label(RichText::new(rate_unit(units)).small().color(soft));
            for name in ["N", "P2O5", "K2O"] {
                right(ui, RichText::new(name).small().color(soft));
            }
            ui.end_row();
            let lines: [(&str, OfAccount, bool); 6] = [
                ("wanted", |account| account.wanted, true),
                ("has already", |account| Some(account.credited), true),
                ("still to give", |account| account.to_give, true),
                ("planned", |account| Some(account.planned), true),
                ("done", |account| Some(account.done), any_done),
                ("still ahead", |account| Some(account.ahead), any_done),
            ];
            for (name, of, is_shown) in lines {
                if !is_shown {
                    continue;
                }
                ui.label(RichText::new(name).size(13.0));
                for account in accounts {
                    let words = of(account).map_or_else(|| "–".to_owned(), |rate| rate_words(rate, units));
                    right(ui, RichText::new(words).size(13.0));
                }
                ui.end_row();
            }
        });
    let mut unsaid = Vec::new();
    for nutrient in Nutrient::ALL {
        let account = plan.feeding.account(nutrient);
        standing(ui, nutrient, account, units);
        if account.wanted.is_none() && account.given() > MassPerArea::ZERO {
            unsaid.push(nutrient.name());
        }
    }
    if !unsaid.is_empty() {
        let unsaid = unsaid.join(" and ");
        form::follows(
            ui,
            format!("How much {unsaid} is wanted is not known: a soil test says"),
        );
    }
    if bed.dressings.is_empty() {
        return;
    }
    let mut follows = !bed.feeding.holds_to_plan;
    if ui
        .checkbox(&mut follows, RichText::new("Dressings follow what was used").size(13.0))
        .on_hover_text("What was really used more or less than planned is made up in the dressings still ahead")
        .changed()
    {
        change(hand, bed, BedChange::SetHoldsToPlan(!follows));
    }
}

/// How an account stands, in words.
fn standing(ui: &mut Ui, nutrient: Nutrient, account: &Account, units: Units) {
    let name = form::heading(nutrient.name());
    let words = format!("{name}: {}", standing_words(account, units));
    match account.standing() {
        Standing::NotKnown => {}
        Standing::Enough | Standing::UnderGuide(_) => form::follows(ui, words),
        Standing::Under(_) | Standing::Over(_) => form::wrong(ui, &words),
    }
}

/// A number at the right of its column.
fn right(ui: &mut Ui, words: RichText) {
    let size = egui::vec2(COLUMN, 18.0);
    ui.allocate_ui_with_layout(size, Layout::right_to_left(Align::Center), |ui| {
        ui.set_min_width(COLUMN);
        ui.label(words);
    });
}

/// Room for `1,234`.
const COLUMN: f32 = 46.0;
