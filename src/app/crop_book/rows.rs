//! The lines of a crop's page: what it is, its value or a field for it, and where the value comes from.

use egui::{Align, Id, Layout as Direction, RichText, Ui, vec2};

use crate::app::form;
use crate::app::theme::{self, ThemeInForce as _};
use crate::app::unit_field::unit_field;

const LABEL: f32 = 180.0;
const VALUE: f32 = 190.0;

/// What was done to a value in this frame.
pub(super) enum Change<T> {
    /// The grower's own value.
    Own(T),
    /// The crop's again.
    Back,
}

/// The head of a group of values.
pub(super) fn group(ui: &mut Ui, title: &str) {
    ui.add_space(14.0);
    ui.label(RichText::new(title).font(theme::bold(15.0)));
    ui.add_space(2.0);
    form::rule(ui);
    ui.add_space(2.0);
}

/// Words that take the whole width, with their source below.
pub(super) fn broad(ui: &mut Ui, words: &str, source: &str) {
    let colours = theme::colours(ui.theme_in_force());
    ui.scope(|ui| {
        ui.set_max_width((LABEL + VALUE + 620.0).min(ui.available_width()));
        ui.add(egui::Label::new(RichText::new(words).size(14.0).color(colours.strong)).wrap());
        ui.add(egui::Label::new(RichText::new(source).small().color(colours.soft)).wrap());
    });
    ui.add_space(2.0);
    form::rule(ui);
    ui.add_space(2.0);
}

/// What there is to say of the value above.
pub(super) fn beneath(ui: &mut Ui, words: &str) {
    let colours = theme::colours(ui.theme_in_force());
    ui.horizontal_top(|ui| {
        column(ui, LABEL, |_| {});
        let room = ui.available_width().min(VALUE + 620.0);
        column(ui, room, |ui| {
            ui.add(egui::Label::new(RichText::new(words).size(13.0).color(colours.strong)).wrap());
        });
    });
    ui.add_space(2.0);
    form::rule(ui);
    ui.add_space(2.0);
}

/// A value to read.
pub(super) fn read_only(ui: &mut Ui, label: &str, value: &str, source: &str) {
    line(ui, label, source, |ui| {
        ui.add_space(3.0);
        let strong = theme::colours(ui.theme_in_force()).strong;
        ui.add(egui::Label::new(RichText::new(value).size(14.0).color(strong)).wrap());
    });
}

/// A value in a field, which may be the grower's own. `back` words the way back to the value under it, and `source` says
/// then what that is.
#[expect(clippy::too_many_arguments, reason = "everything one line is drawn from")]
pub(super) fn own<T>(
    ui: &mut Ui,
    id: Id,
    label: &str,
    shown: &str,
    is_own: bool,
    back: &str,
    source: &str,
    read: impl FnOnce(&str) -> Result<T, String>,
) -> Option<Change<T>> {
    let mut change = None;
    line(ui, label, source, |ui| {
        let reply = unit_field(ui, id, shown, VALUE - 12.0, read);
        change = reply.accepted.map(Change::Own);
        if let Some(sentence) = &reply.wrong {
            form::wrong(ui, sentence);
        }
        if is_own && form::yours(ui, back) {
            change = Some(Change::Back);
        }
    });
    change
}

/// A value out of a few, which may be the grower's own.
#[expect(clippy::too_many_arguments, reason = "everything one line is drawn from")]
pub(super) fn own_choice<T: Copy>(
    ui: &mut Ui,
    id: Id,
    label: &str,
    shown: &str,
    is_own: bool,
    back: &str,
    source: &str,
    all: &[(&str, T)],
) -> Option<Change<T>> {
    let mut change = None;
    line(ui, label, source, |ui| {
        egui::ComboBox::from_id_salt(id)
            .width(VALUE - 12.0)
            .truncate()
            .selected_text(shown)
            .show_ui(ui, |ui| {
                for (name, value) in all {
                    if ui.selectable_label(*name == shown, *name).clicked() {
                        change = Some(Change::Own(*value));
                    }
                }
            });
        if is_own && form::yours(ui, back) {
            change = Some(Change::Back);
        }
    });
    change
}

fn line(ui: &mut Ui, label: &str, source: &str, add: impl FnOnce(&mut Ui)) {
    let soft = theme::colours(ui.theme_in_force()).soft;
    ui.horizontal_top(|ui| {
        let named = column(ui, LABEL, |ui| {
            ui.add_space(4.0);
            ui.add(egui::Label::new(RichText::new(label).size(13.0).color(soft)).wrap())
        });
        column(ui, VALUE, |ui| ui.label_inputs_by(named.id, add));
        let room = ui.available_width().min(620.0);
        column(ui, room, |ui| {
            ui.add_space(4.0);
            ui.add(egui::Label::new(RichText::new(source).small().color(soft)).wrap());
        });
    });
    ui.add_space(2.0);
    form::rule(ui);
    ui.add_space(2.0);
}

/// A column of that width, whatever stands in it.
fn column<R>(ui: &mut Ui, width: f32, add: impl FnOnce(&mut Ui) -> R) -> R {
    ui.allocate_ui_with_layout(vec2(width, 20.0), Direction::top_down(Align::Min), |ui| {
        ui.set_width(width);
        add(ui)
    })
    .inner
}
