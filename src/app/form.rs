//! The lines of a card: a label on the left, its field on the right, and below it what follows from the value and
//! where it comes from.

use egui::{Align, Id, Layout, RichText, Ui};

pub(super) use crate::quantity::capital as heading;
use crate::sheets::held_together;

use super::theme::{self, ThemeInForce as _};
use super::unit_field::unit_field;

/// Room for the labels.
const LABEL_WIDTH: f32 = 100.0;

/// A line with a label and anything that answers it. What has no name of its own is named by the label.
pub(super) fn line<R>(ui: &mut Ui, label: &str, add: impl FnOnce(&mut Ui) -> R) -> R {
    let soft = theme::colours(ui.theme_in_force()).soft;
    ui.horizontal(|ui| {
        let height = ui.spacing().interact_size.y;
        let named = ui.allocate_ui_with_layout(
            egui::vec2(LABEL_WIDTH, height),
            Layout::left_to_right(Align::Center),
            |ui| {
                ui.set_min_width(LABEL_WIDTH);
                ui.label(RichText::new(label).size(13.0).color(soft))
            },
        );
        ui.label_inputs_by(named.inner.id, add)
    })
    .inner
}

/// A line with a field. Gives back the value when one was accepted.
pub(super) fn field<T>(
    ui: &mut Ui,
    id: Id,
    label: &str,
    shown: &str,
    read: impl FnOnce(&str) -> Result<T, String>,
) -> Option<T> {
    let reply = line(ui, label, |ui| {
        let width = ui.available_width();
        unit_field(ui, id, shown, width, read)
    });
    if let Some(sentence) = &reply.wrong {
        wrong(ui, sentence);
    }
    reply.accepted
}

/// A line with a few choices to drop down, each with its name. Gives back the one that was picked.
pub(super) fn choices<T: Copy>(ui: &mut Ui, id: Id, label: &str, chosen: &str, all: &[(&str, T)]) -> Option<T> {
    let mut picked = None;
    line(ui, label, |ui| {
        egui::ComboBox::from_id_salt(id)
            .width(ui.available_width())
            .wrap()
            .selected_text(chosen)
            .show_ui(ui, |ui| {
                for (name, value) in all {
                    if ui.selectable_label(*name == chosen, *name).clicked() {
                        picked = Some(*value);
                    }
                }
            });
    });
    picked
}

/// What is wrong with the field above, in full.
pub(super) fn wrong(ui: &mut Ui, sentence: &str) {
    let accent = theme::colours(ui.theme_in_force()).accent;
    ui.label(RichText::new(held_together(&capital(sentence))).small().color(accent));
}

/// What follows from the line above, or where its value comes from.
pub(super) fn follows(ui: &mut Ui, text: impl Into<String>) {
    let soft = theme::colours(ui.theme_in_force()).soft;
    ui.label(RichText::new(held_together(&text.into())).small().color(soft));
}

/// Where the value above comes from, with a way back to the value that is used when the grower says nothing.
/// Gives back whether the way back was taken.
pub(super) fn yours(ui: &mut Ui, way_back: &str) -> bool {
    link(ui, "yours", way_back).clicked()
}

/// The same, in a room that is there without the way back as well: what stands below must not move when a value becomes the
/// grower's own.
pub(super) fn yours_or_room(ui: &mut Ui, way_back: Option<&str>) -> bool {
    match way_back {
        Some(way_back) => yours(ui, way_back),
        None => {
            ui.allocate_space(egui::vec2(0.0, ui.spacing().interact_size.y));
            false
        }
    }
}

/// A few words about the line above, and a link behind them.
pub(super) fn link(ui: &mut Ui, about: &str, words: &str) -> egui::Response {
    let colours = theme::colours(ui.theme_in_force());
    ui.horizontal(|ui| {
        ui.spacing_mut().item_spacing.x = 4.0;
        ui.label(RichText::new(format!("{about} ·")).small().color(colours.soft));
        let words = RichText::new(words).small().color(colours.accent).underline();
        ui.add(egui::Button::new(words).frame(false))
    })
    .inner
}

/// A small heading inside a card.
pub(super) fn section(ui: &mut Ui, title: &str) {
    ui.add_space(6.0);
    rule(ui);
    ui.add_space(2.0);
    ui.label(RichText::new(title).font(theme::bold(14.0)));
}

/// The title of a part that folds, no wider than there is room for; a wider one would push the panel open.
pub(super) fn folded_title(ui: &Ui, title: &str) -> egui::WidgetText {
    let strong = theme::colours(ui.theme_in_force()).strong;
    let mut job = egui::text::LayoutJob::simple_singleline(title.to_owned(), egui::FontId::proportional(13.0), strong);
    job.wrap = egui::text::TextWrapping::truncate_at_width((ui.available_width() - 24.0).max(0.0));
    ui.painter().layout_job(job).into()
}

/// A hairline over the whole width.
pub(super) fn rule(ui: &mut Ui) {
    let line = theme::colours(ui.theme_in_force()).line;
    let (rect, _) = ui.allocate_exact_size(egui::vec2(ui.available_width(), 1.0), egui::Sense::hover());
    ui.painter()
        .hline(rect.x_range(), rect.center().y, egui::Stroke::new(1.0, line));
}

/// A text with a few quieter words behind it.
fn with_note(ui: &Ui, text: &str, note: &str) -> egui::text::LayoutJob {
    let colours = theme::colours(ui.theme_in_force());
    let mut job = egui::text::LayoutJob::default();
    let format = |size: f32, color| egui::TextFormat {
        font_id: egui::FontId::proportional(size),
        color,
        ..Default::default()
    };
    job.append(text, 0.0, format(13.0, colours.strong));
    if !note.is_empty() {
        job.append(note, 8.0, format(12.0, colours.soft));
    }
    job
}

/// A text that takes the whole width and may be clicked, for lists.
pub(super) fn list_line(ui: &mut Ui, chosen: bool, text: &str, note: &str) -> egui::Response {
    let mut job = with_note(ui, text, note);
    job.wrap = egui::text::TextWrapping::truncate_at_width(ui.available_width() - 12.0);
    let button = egui::Button::new(job)
        .selected(chosen)
        .frame_when_inactive(chosen)
        .min_size(egui::vec2(ui.available_width(), 24.0));
    ui.with_layout(Layout::top_down_justified(Align::Min), |ui| {
        ui.spacing_mut().button_padding = egui::vec2(6.0, 2.0);
        ui.add(button)
    })
    .inner
}

/// A line that opens and closes what stands below it: a text on as many lines as it needs, and a few words about it.
pub(super) fn opening_line(ui: &mut Ui, open: bool, text: &str, note: &str) -> egui::Response {
    let button = egui::Button::new(with_note(ui, text, note))
        .selected(open)
        .frame_when_inactive(open)
        .wrap()
        .min_size(egui::vec2(ui.available_width() - OPENER, 24.0));
    ui.horizontal_top(|ui| {
        ui.spacing_mut().item_spacing.x = 0.0;
        // The mark opens and closes as the words do.
        let (room, mark) = ui.allocate_exact_size(egui::vec2(OPENER, 24.0), egui::Sense::click());
        let response = ui
            .with_layout(Layout::top_down_justified(Align::Min), |ui| {
                ui.spacing_mut().button_padding = egui::vec2(6.0, 2.0);
                ui.add(button)
            })
            .inner;
        let mut icon = response.clone();
        icon.rect = egui::Rect::from_center_size(room.center(), egui::vec2(8.0, 8.0));
        let openness = if open { 1.0 } else { 0.0 };
        egui::collapsing_header::paint_default_icon(ui, openness, &icon);
        response | mark
    })
    .inner
}

/// Room for the mark that says whether a line is open.
const OPENER: f32 = 14.0;

/// A sentence that starts with a capital and ends with a full stop.
pub(super) fn capital(sentence: &str) -> String {
    let mut text = heading(sentence);
    if !text.ends_with(['.', '!', '?']) {
        text.push('.');
    }
    text
}

/// A name as it was typed; what a name may be is checked where the change is made.
pub(super) fn read_name(text: &str) -> Result<String, String> {
    if text.is_empty() {
        return Err("A name has at least one letter".to_owned());
    }
    Ok(text.to_owned())
}

/// Words as they were typed; none are fine.
pub(super) fn read_words(text: &str) -> Result<String, String> {
    Ok(text.to_owned())
}

/// A whole number in a range.
pub(super) fn read_whole(text: &str, from: i32, to: i32) -> Result<i32, String> {
    text.parse::<i32>()
        .ok()
        .filter(|number| (from..=to).contains(number))
        .ok_or_else(|| format!("“{text}” is not understood; write a whole number from {from} to {to}"))
}
