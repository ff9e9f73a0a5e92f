//! Columns of fixed width whose words break over lines.

use egui::{Align, Label, Layout, Response, RichText, Sense, Ui, vec2};

use crate::app::form;
use crate::app::theme::{self, ThemeInForce as _};
use crate::sheets::held_together;

const GAP: f32 = 18.0;
const SIZE: f32 = 13.0;

/// A column: its head, its least width, and its part of what is left over.
pub(super) type Column = (&'static str, f32, f32);

/// Widths for all the room there is.
pub(super) fn widths<const N: usize>(ui: &Ui, columns: &[Column; N]) -> [f32; N] {
    let least: f32 = columns.iter().map(|column| column.1 + GAP).sum();
    let spare = (ui.available_width() - least - 16.0).max(0.0);
    columns.map(|column| column.1 + column.2 * spare)
}

/// The line of heads, and a rule below.
pub(super) fn heads<const N: usize>(ui: &mut Ui, columns: &[Column; N], widths: &[f32; N]) {
    let soft = theme::colours(ui.theme_in_force()).soft;
    line(ui, |ui| {
        for ((title, ..), width) in columns.iter().zip(widths) {
            cell(ui, *width, &[RichText::new(*title).size(12.0).color(soft)]);
        }
    });
    form::rule(ui);
}

/// One line of the table.
pub(super) fn line<R>(ui: &mut Ui, add: impl FnOnce(&mut Ui) -> R) -> R {
    ui.scope(|ui| {
        ui.spacing_mut().item_spacing = vec2(GAP, 3.0);
        ui.horizontal_top(add).inner
    })
    .inner
}

/// Words one below another in a column; empty ones are left out.
pub(super) fn cell(ui: &mut Ui, width: f32, words: &[RichText]) {
    fixed(ui, width, |ui| {
        for words in words.iter().filter(|words| !words.is_empty()) {
            ui.add(Label::new(words.clone()).wrap());
        }
    });
}

/// As [`cell`], with a first line that can be clicked.
pub(super) fn link_cell(ui: &mut Ui, width: f32, link: RichText, below: &[RichText]) -> Response {
    fixed(ui, width, |ui| {
        let response = ui.add(Label::new(link).sense(Sense::click()).wrap());
        for words in below.iter().filter(|words| !words.is_empty()) {
            ui.add(Label::new(words.clone()).wrap());
        }
        response.on_hover_cursor(egui::CursorIcon::PointingHand)
    })
}

/// A column of that width, whatever stands in it.
pub(super) fn fixed<R>(ui: &mut Ui, width: f32, add: impl FnOnce(&mut Ui) -> R) -> R {
    ui.allocate_ui_with_layout(vec2(width, 18.0), Layout::top_down(Align::Min), |ui| {
        ui.spacing_mut().item_spacing.y = 1.0;
        ui.set_width(width);
        add(ui)
    })
    .inner
}

pub(super) fn plain(ui: &Ui, text: impl Into<String>) -> RichText {
    let colour = theme::colours(ui.theme_in_force()).strong;
    RichText::new(held_together(&text.into())).size(SIZE).color(colour)
}

pub(super) fn soft(ui: &Ui, text: impl Into<String>) -> RichText {
    let colour = theme::colours(ui.theme_in_force()).soft;
    RichText::new(held_together(&text.into())).size(SIZE).color(colour)
}

pub(super) fn bold(ui: &Ui, text: impl Into<String>) -> RichText {
    let colour = theme::colours(ui.theme_in_force()).strong;
    RichText::new(held_together(&text.into()))
        .font(theme::bold(SIZE))
        .color(colour)
}

pub(super) fn accent(ui: &Ui, text: impl Into<String>) -> RichText {
    let colour = theme::colours(ui.theme_in_force()).accent;
    RichText::new(held_together(&text.into())).size(SIZE).color(colour)
}
