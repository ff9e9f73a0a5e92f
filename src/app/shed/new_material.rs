//! A new material of the grower's own, by its label.

use egui::{Id, RichText, Ui};

use super::words::{price, read_at_hand, read_bag, weight};
use crate::app::command::Command;
use crate::app::desk::Desk;
use crate::app::feed_words::read_analysis;
use crate::app::form;
use crate::app::seed_words::read_price;
use crate::app::theme;
use crate::catalog::MaterialId;
use crate::layout::{Edit, Label, ShedEdit, ShedId};
use crate::plan::feeding::KnownMaterial;

/// What is typed of a new material so far.
#[derive(Default)]
pub(super) struct NewMaterial {
    label: Label,
    started: bool,
    /// What stood in the shed before it was put there.
    before: Option<Vec<ShedId>>,
}

impl NewMaterial {
    /// The material that was put in, once it is there.
    pub(super) fn arrived(&mut self, desk: &Desk) -> Option<MaterialId> {
        let before = self.before.take()?;
        let new = desk.layout().shed.iter().find(|kept| !before.contains(&kept.id))?;
        *self = Self::default();
        Some(new.material.clone())
    }

    /// Draws the fields in the order of a label, and the button that puts it in.
    pub(super) fn show(&mut self, ui: &mut Ui, desk: &Desk, out: &mut Vec<Command>) {
        ui.scope(|ui| {
            ui.set_max_width(430.0);
            self.fields(ui, desk);
        });
        ui.add_space(8.0);
        let ready = !self.label.name.is_empty() && self.label.analysis.is_some();
        if ui.add_enabled(ready, egui::Button::new("Put it in the shed")).clicked() {
            self.before = Some(desk.layout().shed.iter().map(|kept| kept.id).collect());
            out.push(Command::Edit(Edit::Shed(ShedEdit::AddOwn(self.label.clone()))));
        }
        if !ready {
            form::follows(ui, "It needs a name and an analysis first.");
        }
    }

    fn fields(&mut self, ui: &mut Ui, desk: &Desk) {
        let units = desk.layout().units;
        ui.label(RichText::new("A new material by its label").font(theme::bold(22.0)));
        form::follows(ui, "Its own name and the three numbers; the rest can wait.");
        ui.add_space(6.0);
        let field = Id::unique("new material");
        let name = field.with("name");
        if !self.started {
            // The click that led here would take the keys away again.
            if ui.input(|input| input.pointer.any_click()) {
                ui.ctx().request_repaint();
            } else {
                ui.memory_mut(|memory| memory.request_focus(name));
                self.started = true;
            }
        }
        let book = desk.material_book();
        let read = |text: &str| {
            let same = |known: &&KnownMaterial| known.material.name.eq_ignore_ascii_case(text);
            match book.all().iter().find(same) {
                Some(_) => Err(format!(
                    "there is a material named “{text}” already; give it another name"
                )),
                None => form::read_name(text),
            }
        };
        if let Some(name) = form::field(ui, name, "Name", &self.label.name, read) {
            self.label.name = name;
        }
        let shown = self
            .label
            .analysis
            .map_or_else(String::new, |analysis| analysis.label());
        if let Some(analysis) = form::field(ui, field.with("analysis"), "Analysis", &shown, read_analysis) {
            self.label.analysis = Some(analysis);
        }
        form::follows(ui, "nitrogen, phosphate (P2O5) and potash (K2O) in percent, as 15-0-0");
        let shown = weight(self.label.bag, units);
        if let Some(bag) = form::field(ui, field.with("bag"), "A bag holds", &shown, |text| {
            read_bag(text, units)
        }) {
            self.label.bag = bag;
        }
        let shown = self.label.price.map_or_else(String::new, price);
        if let Some(price) = form::field(ui, field.with("price"), "A bag costs", &shown, read_price) {
            self.label.price = price;
        }
        let (shown, bag) = (weight(self.label.at_hand, units), self.label.bag);
        let read = |text: &str| read_at_hand(text, bag, units);
        if let Some(at_hand) = form::field(ui, field.with("at hand"), "At hand", &shown, read) {
            self.label.at_hand = at_hand;
        }
        form::follows(ui, "at the start of the season, by weight or in bags");
    }
}
