//! The lines of a page of values, of a crop or of a material: what it is, its value or a field for it, and where the value
//! comes from.

use egui::{Align, Id, Layout as Direction, Response, RichText, Ui, vec2};

use super::form;
use super::origin::Origin;
use super::theme::{self, ThemeInForce as _};
use super::unit_field::unit_field;

/// How wide the columns of a page are.
#[derive(Clone, Copy)]
pub(super) struct ValueLines {
    /// What the value is.
    pub(super) label: f32,
    /// The value.
    pub(super) value: f32,
    /// Where it comes from, at most.
    pub(super) note: f32,
}

/// Whose a value is.
#[derive(Default)]
pub(super) struct Whose<'a> {
    /// Whether it is the grower's.
    pub(super) is_own: bool,
    /// How the way back is worded; none where there is nothing to go back to.
    pub(super) back: Option<&'a str>,
    /// Where it comes from; of a value of the grower's own, what lies under it.
    pub(super) from: Origin,
}

impl ValueLines {
    /// The head of a group of values.
    pub(super) fn group(self, ui: &mut Ui, title: &str) {
        ui.add_space(14.0);
        ui.label(RichText::new(title).font(theme::bold(15.0)));
        end(ui);
    }

    /// Words that take the whole width, with their source below.
    pub(super) fn broad(self, ui: &mut Ui, words: &str, from: impl Into<Origin>) {
        let strong = theme::colours(ui.theme_in_force()).strong;
        let from = from.into();
        ui.scope(|ui| {
            ui.set_max_width((self.label + self.value + self.note).min(ui.available_width()));
            let words = RichText::new(words).size(14.0).color(strong);
            explained(ui.add(egui::Label::new(words).wrap()), &from);
            note(ui, &from);
        });
        end(ui);
    }

    /// What there is to say of the value above.
    pub(super) fn beneath(self, ui: &mut Ui, words: &str) {
        let strong = theme::colours(ui.theme_in_force()).strong;
        ui.horizontal_top(|ui| {
            column(ui, self.label, |_| {});
            let room = ui.available_width().min(self.value + self.note);
            column(ui, room, |ui| {
                ui.add(egui::Label::new(RichText::new(words).size(13.0).color(strong)).wrap());
            });
        });
        end(ui);
    }

    /// A value to read.
    pub(super) fn read_only(self, ui: &mut Ui, label: &str, value: &str, from: impl Into<Origin>) {
        let from = from.into();
        let shown = |ui: &mut Ui| {
            ui.add_space(3.0);
            let strong = theme::colours(ui.theme_in_force()).strong;
            ui.add(egui::Label::new(RichText::new(value).size(14.0).color(strong)).wrap())
        };
        self.line(ui, label, &from, shown, |ui| note(ui, &from));
        end(ui);
    }

    /// A value in a field, which may be the grower's own. A new value, or `None` inside for the one under it again.
    pub(super) fn own<T>(
        self,
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
        let field = |ui: &mut Ui| {
            let reply = unit_field(ui, id, shown, self.value - 12.0, read);
            change = reply.accepted;
            wrong = reply.wrong;
            reply.response
        };
        self.line(ui, label, &whose.from, field, |ui| given_back = way_back(ui, whose));
        if let Some(sentence) = &wrong {
            form::wrong(ui, sentence);
        }
        end(ui);
        if given_back { Some(None) } else { change }
    }

    /// A value out of a few, which may be the grower's own. The one that was picked, or `None` inside for the one under it
    /// again.
    pub(super) fn choice<T: Copy>(
        self,
        ui: &mut Ui,
        id: Id,
        label: &str,
        shown: &str,
        whose: &Whose<'_>,
        all: &[(&str, T)],
    ) -> Option<Option<T>> {
        let mut picked = None;
        let mut given_back = false;
        let menu = |ui: &mut Ui| {
            egui::ComboBox::from_id_salt(id)
                .width(self.value - 12.0)
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
        };
        self.line(ui, label, &whose.from, menu, |ui| given_back = way_back(ui, whose));
        end(ui);
        if given_back { Some(None) } else { picked.map(Some) }
    }

    fn line(
        self,
        ui: &mut Ui,
        label: &str,
        from: &Origin,
        add: impl FnOnce(&mut Ui) -> Response,
        note: impl FnOnce(&mut Ui),
    ) {
        let soft = theme::colours(ui.theme_in_force()).soft;
        ui.horizontal_top(|ui| {
            let named = column(ui, self.label, |ui| {
                ui.add_space(4.0);
                ui.add(egui::Label::new(RichText::new(label).size(13.0).color(soft)).wrap())
            });
            let value = column(ui, self.value, |ui| ui.label_inputs_by(named.id, add));
            explained(named, from);
            explained(value, from);
            let room = ui.available_width().min(self.note);
            column(ui, room, |ui| {
                ui.add_space(4.0);
                note(ui);
            });
        });
    }
}

/// The way back from a value of the grower's own, and where the value comes from or what lies under it. Where there may be
/// a way back its room is kept, so that the lines below stay where they are when a value is given.
fn way_back(ui: &mut Ui, whose: &Whose<'_>) -> bool {
    let Some(back) = whose.back else {
        note(ui, &whose.from);
        return false;
    };
    if whose.is_own {
        let given_back = form::yours(ui, back);
        note(ui, &whose.from);
        return given_back;
    }
    let top = ui.cursor().top();
    note(ui, &whose.from);
    let used = ui.cursor().top() - top;
    let room = ui.spacing().interact_size.y - used;
    if room > 0.0 {
        ui.allocate_space(vec2(0.0, room));
    }
    false
}

fn note(ui: &mut Ui, from: &Origin) {
    if from.short.is_empty() {
        return;
    }
    let soft = theme::colours(ui.theme_in_force()).soft;
    let short = RichText::new(&from.short).small().color(soft);
    explained(ui.add(egui::Label::new(short).wrap()), from);
}

/// The source in full, where the pointer rests.
fn explained(response: Response, from: &Origin) {
    if !from.full.is_empty() {
        response.on_hover_text(&from.full);
    }
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
