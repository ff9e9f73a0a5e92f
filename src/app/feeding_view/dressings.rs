//! What every bed gets, a line a dressing, with its rows one by one when asked.

use std::collections::BTreeMap;
use std::sync::Arc;

use egui::{RichText, Ui};

use super::columns::{Column, accent, bold, cell, fixed, heads, line, link_cell, plain, soft, widths};
use super::lines::{Lines, Seen};
use crate::app::command::Command;
use crate::app::desk::Desk;
use crate::app::form;
use crate::app::theme::{self, ThemeInForce as _};
use crate::layout::{BedId, DressingId, Item};
use crate::plan::BedPlan;
use crate::quantity::Units;
use crate::sheets::feeding_list::{DressingWords, FedBed, FedRow, FeedingList, fed_rows};

const COLUMNS: [Column; 6] = [
    ("Bed and dressing", 150.0, 0.15),
    ("How much of what", 190.0, 0.2),
    ("Where and when", 140.0, 0.15),
    ("Each row", 120.0, 0.1),
    ("Pace", 140.0, 0.15),
    ("In all", 190.0, 0.25),
];

/// Rows shown one by one at most; more are for the ledger and the paper.
const MOST_ROWS: usize = 300;

/// How high a line is taken to be until it was drawn once.
const USUAL_HEIGHT: f32 = 110.0;

type Key = (BedId, DressingId);

/// Rows in words, with the plan and the units that they are of.
type Opened = (Arc<BedPlan>, Units, Vec<FedRow>);

/// The dressings whose rows are shown one by one, with those rows and the plan they are of.
type OpenRows = BTreeMap<Key, Option<Opened>>;

/// How the lines are looked at.
pub(super) struct DressingsView {
    opened: OpenRows,
    lines: Lines<Key>,
}

impl Default for DressingsView {
    fn default() -> Self {
        Self {
            opened: OpenRows::new(),
            lines: Lines::new(USUAL_HEIGHT),
        }
    }
}

impl DressingsView {
    /// Draws the lines that are seen. A click on a dressing goes to it.
    pub(super) fn show(&mut self, ui: &mut Ui, seen: Seen, desk: &Desk, list: &FeedingList, out: &mut Vec<Command>) {
        let widths = widths(ui, &COLUMNS);
        heads(ui, &COLUMNS, &widths);
        let all = list.beds.iter().flat_map(|bed| {
            let of_bed = bed.dressings.iter();
            of_bed.map(move |dressing| ((bed.bed, dressing.dressing), (bed.as_ref(), dressing)))
        });
        let opened = &mut self.opened;
        self.lines
            .show(ui, seen, widths.iter().sum(), all, |ui, (bed, dressing)| {
                show_line(ui, &widths, desk, opened, (bed, dressing), out);
            });
    }
}

/// One dressing, and its rows when asked.
fn show_line(
    ui: &mut Ui,
    widths: &[f32; 6],
    desk: &Desk,
    opened: &mut OpenRows,
    (bed, dressing): (&FedBed, &DressingWords),
    out: &mut Vec<Command>,
) {
    let key = (bed.bed, dressing.dressing);
    let is_open = opened.contains_key(&key);
    let (goes, turned) = dressing_line(ui, widths, bed, dressing, is_open);
    if goes {
        out.push(Command::GoTo(Item::Dressing(bed.bed, dressing.dressing)));
    }
    if let (Some(kept), Some(plan)) = (opened.get_mut(&key), desk.plan().bed(bed.bed)) {
        let units = desk.layout().units;
        let same = |(of, in_units, _): &Opened| Arc::ptr_eq(of, plan) && *in_units == units;
        if !kept.as_ref().is_some_and(same) {
            *kept = Some((plan.clone(), units, fed_rows(plan, dressing.dressing, units)));
        }
        rows(ui, kept.as_ref().map_or(&[], |(.., rows)| rows.as_slice()));
    }
    if turned && opened.remove(&key).is_none() {
        opened.insert(key, None);
    }
    form::rule(ui);
}

/// One line. Gives back whether to go to the dressing, and whether its rows were asked for or put away.
fn dressing_line(ui: &mut Ui, widths: &[f32; 6], bed: &FedBed, words: &DressingWords, is_open: bool) -> (bool, bool) {
    let [name, amount, place, row, pace, total] = *widths;
    line(ui, |ui| {
        let below = [soft(ui, &bed.name), soft(ui, &words.done)];
        let link = bold(ui, &words.name);
        let goes = link_cell(ui, name, link, &below).on_hover_text("Go to it").clicked();
        cell(
            ui,
            amount,
            &[
                plain(ui, &words.amount),
                soft(ui, &words.amount_planned),
                soft(ui, &words.material),
            ],
        );
        cell(ui, place, &[plain(ui, &words.place), soft(ui, &words.when)]);
        if !words.problem.is_empty() {
            cell(ui, row + pace + total, &[accent(ui, &words.problem)]);
            return (goes, false);
        }
        let turned = fixed(ui, row, |ui| {
            // What goes through the tape is not measured out along rows.
            if words.each_row.is_empty() {
                return false;
            }
            ui.label(bold(ui, &words.each_row));
            if !words.each_row_scoops.is_empty() {
                ui.label(plain(ui, &words.each_row_scoops));
            }
            if words.times > 1 {
                ui.label(soft(ui, format!("all {} times", words.times)));
            }
            rows_button(ui, is_open)
        });
        cell(
            ui,
            pace,
            &[plain(ui, words.pace_words()), soft(ui, about(&words.pace_scoop))],
        );
        cell(
            ui,
            total,
            &[
                bold(ui, &words.total),
                soft(ui, words.scoops_words()),
                soft(ui, &words.goes_by),
                plain(ui, &words.changed),
            ],
        );
        (goes, turned)
    })
}

fn about(scoop: &str) -> String {
    if scoop.is_empty() {
        String::new()
    } else {
        format!("about {scoop}")
    }
}

/// A quiet button that shows the rows one by one, or puts them away.
fn rows_button(ui: &mut Ui, is_open: bool) -> bool {
    let accent = theme::colours(ui.theme_in_force()).accent;
    let label = if is_open { "Put rows away" } else { "Row by row" };
    let button = egui::Button::new(RichText::new(label).size(12.0).color(accent).underline());
    ui.add(button.frame(false)).clicked()
}

/// Every row by itself, down and then across, in as many columns as there is room for.
fn rows(ui: &mut Ui, rows: &[FedRow]) {
    const WIDTHS: [f32; 3] = [58.0, 66.0, 78.0];
    const BLOCK: f32 = 300.0;
    let blocks = ((ui.available_width() / BLOCK) as usize).clamp(1, 6);
    let shown = rows.get(..MOST_ROWS).unwrap_or(rows);
    let deep = shown.len().div_ceil(blocks).max(1);
    ui.add_space(4.0);
    for at in 0..deep {
        ui.horizontal(|ui| {
            ui.spacing_mut().item_spacing = egui::vec2(8.0, 2.0);
            for row in shown.iter().skip(at).step_by(deep) {
                let number = soft(ui, format!("row {}", row.number));
                fixed(ui, 62.0, |ui| ui.label(number));
                let cells = [plain(ui, &row.length), bold(ui, &row.weight), plain(ui, &row.scoops)];
                for (words, width) in cells.into_iter().zip(WIDTHS) {
                    let right = egui::Layout::right_to_left(egui::Align::Center);
                    ui.allocate_ui_with_layout(egui::vec2(width, 18.0), right, |ui| {
                        ui.set_min_width(width);
                        ui.label(words)
                    });
                }
                ui.add_space(12.0);
            }
        });
    }
    if rows.len() > shown.len() {
        form::follows(ui, "There are more rows; the ledger and the saved table have them all.");
    }
    ui.add_space(4.0);
}
