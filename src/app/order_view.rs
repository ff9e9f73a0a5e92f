//! The order list in the ledger's place: what to buy, what it is for, where it goes and what comes off the shelf.

use egui::{RichText, Ui, vec2};

use super::command::Command;
use super::desk::Desk;
use super::form;
use super::theme::{self, ThemeInForce as _};
use crate::layout::Item;
use crate::sheets::held_together;
use crate::sheets::order_list::{HARVEST_BASIS, OrderList, OrderWords};

/// Widths of the columns: least, and their part of what is left over.
const COLUMNS: [(&str, f32, f32); 8] = [
    ("Crop and cultivar", 170.0, 0.2),
    ("To buy", 140.0, 0.15),
    ("Packets", 110.0, 0.15),
    ("Cost", 54.0, 0.0),
    ("Needed", 140.0, 0.15),
    ("Off the shelf", 150.0, 0.15),
    ("Goes to", 150.0, 0.2),
    ("May give, no promise", 150.0, 0.0),
];
const GAP: f32 = 18.0;

/// Draws the list. A click on a line goes to its beds.
pub(super) fn show(ui: &mut Ui, desk: &Desk, out: &mut Vec<Command>) {
    let plan = desk.plan();
    let list = OrderList::of(desk.layout(), plan);
    for sentence in &list.not_counted {
        form::wrong(ui, sentence);
    }
    if list.lines.is_empty() {
        form::follows(ui, "Choose a crop for a bed, and what it takes is listed here.");
        return;
    }
    let least: f32 = COLUMNS.iter().map(|column| column.1 + GAP).sum();
    let spare = (ui.available_width() - least - 16.0).max(0.0);
    let widths = COLUMNS.map(|column| column.1 + column.2 * spare);
    let colours = theme::colours(ui.theme_in_force());
    let across = egui::ScrollArea::horizontal().id_salt("order list across");
    across.auto_shrink([false, false]).show(ui, |ui| {
        ui.spacing_mut().item_spacing = vec2(GAP, 3.0);
        ui.horizontal(|ui| {
            for ((title, ..), width) in COLUMNS.iter().zip(widths) {
                cell(ui, width, RichText::new(*title).size(12.0).color(colours.soft));
            }
        });
        form::rule(ui);
        // The heads stay while the lines go by.
        let down = egui::ScrollArea::vertical().id_salt("order list");
        down.auto_shrink([false, false]).show(ui, |ui| {
            for (line, words) in plan.order.lines.iter().zip(&list.lines) {
                let goes_to = line.beds.first().map(|of| Item::Bed(of.bed));
                if row(ui, &widths, words)
                    && let Some(item) = goes_to
                {
                    out.push(Command::GoTo(item));
                }
                form::rule(ui);
            }
            if let Some(cost) = list.cost_sentence() {
                ui.label(RichText::new(cost).font(theme::bold(13.0)));
            }
            if list.lines.iter().any(|line| !line.harvest.is_empty()) {
                form::follows(ui, format!("What a crop may give is {HARVEST_BASIS}."));
            }
            for trays in &list.trays {
                form::follows(ui, trays.sentence());
            }
        });
    });
}

/// One line. Gives back whether it was clicked.
fn row(ui: &mut Ui, widths: &[f32; 8], words: &OrderWords) -> bool {
    let colours = theme::colours(ui.theme_in_force());
    let nothing = !words.is_to_buy();
    let plain = |text: &str| RichText::new(text).size(13.0).color(colours.strong);
    let soft = |text: &str| RichText::new(text).size(13.0).color(colours.soft);
    let bold = |text: &str| RichText::new(text).font(theme::bold(13.0)).color(colours.strong);
    ui.horizontal_top(|ui| {
        let [name, buy, packets, cost, need, shelf, goes_to, harvest] = *widths;
        let link = egui::Label::new(bold(&words.name)).sense(egui::Sense::click());
        let clicked = fixed(ui, name, |ui| ui.add(link))
            .on_hover_cursor(egui::CursorIcon::PointingHand)
            .on_hover_text("Go to its bed")
            .clicked();
        cell(
            ui,
            buy,
            if nothing {
                soft(&words.to_buy)
            } else {
                bold(&words.to_buy)
            },
        );
        cell(ui, packets, plain(&held_together(&words.packets)));
        cell(ui, cost, plain(&words.cost));
        cell(ui, need, plain(&words.need));
        cell(ui, shelf, plain(&words.from_shelf.join("\n")));
        cell(ui, goes_to, soft(&words.goes_to.join("\n")));
        cell(ui, harvest, soft(&words.harvest));
        clicked
    })
    .inner
}

fn cell(ui: &mut Ui, width: f32, words: RichText) {
    fixed(ui, width, |ui| ui.add(egui::Label::new(words).wrap()));
}

/// A column of that width, whatever stands in it.
fn fixed<R>(ui: &mut Ui, width: f32, add: impl FnOnce(&mut Ui) -> R) -> R {
    ui.allocate_ui_with_layout(vec2(width, 18.0), egui::Layout::top_down(egui::Align::Min), |ui| {
        ui.set_width(width);
        add(ui)
    })
    .inner
}
