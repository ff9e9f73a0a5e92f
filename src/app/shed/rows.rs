//! The lines of a material's page: what it is, its value or a field for it, and whose it is. The source stands in full
//! where the pointer rests.

use egui::{Align, Id, Layout as Direction, Response, RichText, Ui, vec2};

use super::words::Origin;
use crate::app::form;
use crate::app::theme::{self, ThemeInForce as _};
use crate::app::unit_field::unit_field;

const LABEL: f32 = 168.0;
const VALUE: f32 = 150.0;

/// The head of a group of values.
pub(super) fn group(ui: &mut Ui, title: &str) {
    ui.add_space(12.0);
    ui.label(RichText::new(title).font(theme::bold(15.0)));
    ui.add_space(2.0);
    form::rule(ui);
    ui.add_space(2.0);
}

/// Words that take the whole width.
pub(super) fn broad(ui: &mut Ui, words: &str, from: &Origin) {
    let colours = theme::colours(ui.theme_in_force());
    ui.scope(|ui| {
        ui.set_max_width(ui.available_width().min(640.0));
        let words = RichText::new(words).size(14.0).color(colours.strong);
        ui.add(egui::Label::new(words).wrap()).on_hover_text(&from.full);
        let short = RichText::new(&from.short).small().color(colours.soft);
        ui.add(egui::Label::new(short).wrap()).on_hover_text(&from.full);
    });
    end(ui);
}

/// A value to read.
pub(super) fn read_only(ui: &mut Ui, label: &str, value: &str, from: &Origin) {
    line(
        ui,
        label,
        from,
        |ui| {
            ui.add_space(3.0);
            let strong = theme::colours(ui.theme_in_force()).strong;
            ui.add(egui::Label::new(RichText::new(value).size(14.0).color(strong)).wrap())
        },
        |ui| beside(ui, from),
    );
    end(ui);
}

/// Whose a value is.
pub(super) struct Whose<'a> {
    /// Whether it is the grower's.
    pub(super) is_own: bool,
    /// How the way back is worded; none where there is nothing to go back to.
    pub(super) back: Option<&'a str>,
    /// Where it comes from when it is not the grower's.
    pub(super) from: Origin,
}

/// A value in a field, which may be the grower's own. A new value, or `None` inside for the one under it again.
pub(super) fn own<T>(
    ui: &mut Ui,
    id: Id,
    label: &str,
    shown: &str,
    whose: &Whose<'_>,
    read: impl FnOnce(&str) -> Result<Option<T>, String>,
) -> Option<Option<T>> {
    let mut change = None;
    let mut wrong = None;
    let mut given_back = false;
    line(
        ui,
        label,
        &whose.from,
        |ui| {
            let reply = unit_field(ui, id, shown, VALUE - 12.0, read);
            change = reply.accepted;
            wrong = reply.wrong;
            reply.response
        },
        |ui| given_back = way_back(ui, whose),
    );
    if let Some(sentence) = &wrong {
        form::wrong(ui, sentence);
    }
    end(ui);
    if given_back { Some(None) } else { change }
}

/// A value out of a few, which may be the grower's own.
pub(super) fn choice<T: Copy>(ui: &mut Ui, id: Id, label: &str, shown: &str, all: &[(&str, T)]) -> Option<T> {
    let mut picked = None;
    line(
        ui,
        label,
        &Origin::default(),
        |ui| {
            egui::ComboBox::from_id_salt(id)
                .width(VALUE + 20.0)
                .truncate()
                .selected_text(shown)
                .show_ui(ui, |ui| {
                    for (name, value) in all {
                        if ui.selectable_label(*name == shown, *name).clicked() {
                            picked = Some(*value);
                        }
                    }
                })
                .response
        },
        |_| {},
    );
    end(ui);
    picked
}

fn way_back(ui: &mut Ui, whose: &Whose<'_>) -> bool {
    match whose.back.filter(|_| whose.is_own) {
        Some(back) => form::yours(ui, back),
        None => {
            beside(ui, &whose.from);
            false
        }
    }
}

fn beside(ui: &mut Ui, from: &Origin) {
    let soft = theme::colours(ui.theme_in_force()).soft;
    let short = RichText::new(&from.short).small().color(soft);
    let note = ui.add(egui::Label::new(short).wrap());
    if !from.full.is_empty() {
        note.on_hover_text(&from.full);
    }
}

fn line(ui: &mut Ui, label: &str, from: &Origin, add: impl FnOnce(&mut Ui) -> Response, note: impl FnOnce(&mut Ui)) {
    let soft = theme::colours(ui.theme_in_force()).soft;
    let explain = |response: Response| {
        if !from.full.is_empty() {
            response.on_hover_text(&from.full);
        }
    };
    ui.horizontal_top(|ui| {
        let named = column(ui, LABEL, |ui| {
            ui.add_space(4.0);
            ui.add(egui::Label::new(RichText::new(label).size(13.0).color(soft)).wrap())
        });
        let value = column(ui, VALUE, |ui| ui.label_inputs_by(named.id, add));
        explain(named);
        explain(value);
        let room = ui.available_width().min(420.0);
        column(ui, room, |ui| {
            ui.add_space(5.0);
            note(ui);
        });
    });
}

fn end(ui: &mut Ui) {
    ui.add_space(2.0);
    form::rule(ui);
    ui.add_space(2.0);
}

/// A column of that width, whatever stands in it.
pub(super) fn column<R>(ui: &mut Ui, width: f32, add: impl FnOnce(&mut Ui) -> R) -> R {
    ui.allocate_ui_with_layout(vec2(width, 20.0), Direction::top_down(Align::Min), |ui| {
        ui.set_width(width);
        add(ui)
    })
    .inner
}
