//! What to buy, in whole bags.

use egui::{RichText, Ui};

use super::columns::{Column, bold, cell, heads, line, plain, soft, widths};
use super::lines::{Lines, Seen};
use super::part;
use crate::app::form;
use crate::app::theme;
use crate::sheets::feeding_list::{FeedingList, ShoppingWords};

const COLUMNS: [Column; 7] = [
    ("Material", 200.0, 0.4),
    ("To buy", 90.0, 0.1),
    ("Bags", 130.0, 0.2),
    ("Cost", 70.0, 0.1),
    ("Needed", 90.0, 0.1),
    ("At hand", 90.0, 0.05),
    ("Left over", 90.0, 0.05),
];

/// How high a line is taken to be until it was drawn once.
pub(super) const USUAL_HEIGHT: f32 = 40.0;

/// Draws the lines that are seen, and what all cost together.
pub(super) fn show(ui: &mut Ui, seen: Seen, lines: &mut Lines<usize>, list: &FeedingList) {
    if list.shopping.is_empty() {
        return;
    }
    part(ui, "To buy");
    let widths = widths(ui, &COLUMNS);
    heads(ui, &COLUMNS, &widths);
    let all = list.shopping.iter().enumerate();
    lines.show(ui, seen, widths.iter().sum(), all, |ui, words| {
        show_material(ui, widths, words);
        form::rule(ui);
    });
    if !list.cost.is_empty() {
        let note = match list.cost_note.as_str() {
            "" => String::new(),
            note => format!(", {note}"),
        };
        ui.label(RichText::new(format!("All bags {}{note}", list.cost)).font(theme::bold(13.0)));
    }
}

fn show_material(ui: &mut Ui, [name, buy, bags, cost, need, at_hand, left]: [f32; 7], words: &ShoppingWords) {
    line(ui, |ui| {
        let to_buy = if words.is_to_buy() {
            bold(ui, &words.to_buy)
        } else {
            soft(ui, &words.to_buy)
        };
        cell(ui, name, &[bold(ui, &words.name)]);
        cell(ui, buy, &[to_buy]);
        cell(ui, bags, &[plain(ui, &words.bags)]);
        cell(ui, cost, &[plain(ui, &words.cost)]);
        let done = match words.done.as_str() {
            "" => String::new(),
            done => format!("{done} done"),
        };
        cell(ui, need, &[plain(ui, &words.need), soft(ui, done)]);
        cell(ui, at_hand, &[plain(ui, &words.at_hand)]);
        cell(ui, left, &[plain(ui, &words.left_over)]);
    });
}
