//! The line over the ledger: what is shown, what else can be shown there, and what can be done with the table.

use egui::{RichText, Ui};

use super::action::Action;
use super::command::Command;
use super::desk::Desk;
use super::ledger::Shown;
use super::theme::{self, ThemeInForce as _};
use crate::layout::BedId;
use crate::quantity::counted;
use crate::sheets::stand_words;

/// Draws the line. Gives back what is shown from now on.
pub(super) fn show(ui: &mut Ui, desk: &Desk, bed: Option<BedId>, shown: Shown, out: &mut Vec<Command>) -> Shown {
    let soft = theme::colours(ui.theme_in_force()).soft;
    let mut next = shown;
    ui.horizontal(|ui| {
        let (title, about) = match shown {
            Shown::AllBeds => ("All beds".to_owned(), String::new()),
            Shown::Order => ("Order list".to_owned(), order_words(desk)),
            Shown::Feeding => ("Fertilizer list".to_owned(), feeding_words(desk)),
            Shown::Account => bed.map_or_else(
                || ("Account".to_owned(), String::new()),
                |bed| {
                    let (name, about) = bed_words(desk, bed);
                    (format!("Account of {name}"), about)
                },
            ),
            Shown::Bed => bed.map_or_else(|| ("Ledger".to_owned(), String::new()), |bed| bed_words(desk, bed)),
        };
        ui.with_layout(egui::Layout::right_to_left(egui::Align::Center), |ui| {
            ui.spacing_mut().item_spacing.x = 4.0;
            let quiet = |words: &str| egui::Button::new(RichText::new(words).size(13.0)).frame_when_inactive(false);
            let actions: &[Action] = match shown {
                Shown::Order => &[Action::SaveOrderSheet, Action::SaveOrder, Action::PrintOrder],
                Shown::Feeding | Shown::Account => &[
                    Action::SaveFeedingSheet,
                    Action::SaveFeeding,
                    Action::CopyFeeding,
                    Action::PrintFeeding,
                ],
                Shown::Bed | Shown::AllBeds => &[Action::SaveTable, Action::CopyLedger],
            };
            for &action in actions {
                if ui
                    .add_enabled(bed.is_some(), quiet(short(action)))
                    .on_hover_text(action.tooltip())
                    .clicked()
                {
                    out.push(Command::Act(action));
                }
            }
            for (other, words) in [
                (Shown::Account, Action::BedAccount.label()),
                (Shown::Feeding, Action::FertilizerList.label()),
                (Shown::Order, Action::OrderList.label()),
                (Shown::AllBeds, "All beds"),
                (Shown::Bed, "One bed"),
            ] {
                if other != shown && ui.add(quiet(words)).clicked() {
                    next = other;
                }
            }
            // What room the buttons leave: the rest is told when pointed at.
            ui.add_space(12.0);
            ui.with_layout(egui::Layout::left_to_right(egui::Align::Center), |ui| {
                ui.spacing_mut().item_spacing.x = 8.0;
                ui.label(RichText::new(title).font(theme::bold(14.0)));
                ui.add(egui::Label::new(RichText::new(about).size(13.0).color(soft)).truncate());
            });
        });
    });
    next
}

/// How many lines there are, and how many of them have to be bought.
fn order_words(desk: &Desk) -> String {
    let lines = &desk.plan().order.lines;
    let to_buy = lines.iter().filter(|line| line.to_buy.count > 0).count();
    match (lines.len(), to_buy) {
        (0, _) => String::new(),
        (_, 0) => "the shelf has it all".to_owned(),
        (all, to_buy) => format!("{to_buy} of {all} to buy"),
    }
}

/// An action's name, short where the line's own title says what it is about.
const fn short(action: Action) -> &'static str {
    match action {
        Action::PrintFeeding => "On paper…",
        Action::CopyFeeding => "Copy",
        Action::SaveFeeding => "As CSV…",
        Action::SaveFeedingSheet => "As spreadsheet…",
        action => action.label(),
    }
}

/// How many dressings there are, and how many of them are done.
fn feeding_words(desk: &Desk) -> String {
    let plan = desk.plan();
    let dressings = plan.beds.iter().flat_map(|bed| &bed.dressings);
    let (all, done) = dressings.fold((0u64, 0u64), |(all, done), dressing| {
        (all + 1, done + u64::from(dressing.is_done()))
    });
    match (all, done) {
        (0, _) => String::new(),
        (all, 0) => counted(all, "dressing", "dressings"),
        (all, done) => format!("{done} of {} done", counted(all, "dressing", "dressings")),
    }
}

fn bed_words(desk: &Desk, id: BedId) -> (String, String) {
    let layout = desk.layout();
    let Some(bed) = layout.bed(id) else {
        return ("Ledger".to_owned(), String::new());
    };
    let plan = desk.plan().bed(id);
    let mut about = Vec::new();
    match plan.and_then(|plan| plan.crop.as_ref()) {
        Some(crop) if crop.cultivar.is_empty() => about.push(crop.name.to_lowercase()),
        Some(crop) => about.push(format!("{}, {}", crop.name.to_lowercase(), crop.cultivar)),
        None => about.push("no crop yet".to_owned()),
    }
    about.push(bed.water.name().to_owned());
    if bed.lines.per_row > 1 {
        about.push(stand_words::rows(bed, layout.units));
    }
    let in_row = plan.map_or_else(String::new, |plan| stand_words::in_row(plan, layout.units));
    let seed_at = plan.map_or_else(String::new, |plan| stand_words::seed_at(plan));
    about.extend([in_row, seed_at].into_iter().filter(|words| !words.is_empty()));
    (bed.name.clone(), about.join(" · "))
}
