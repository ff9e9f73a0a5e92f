//! The fertilizer shed over the whole window: materials found by name or analysis, every value of one with its source,
//! bags, prices and own materials; and mixing for a bed.
//!
//! - `list` is what stands on the left: materials to open, or to mix from.
//! - `page` and `values` are the page of one material, `new_material` the way in for one by its label.
//! - `mixing` is what a mix is asked for, `mix_page` asks it, `mix_found` shows what comes of it.

mod list;
mod mix_found;
mod mix_page;
mod mixing;
mod new_material;
mod page;
mod values;
mod words;

pub(super) use mixing::Mixing;

use egui::Ui;

use super::command::Command;
use super::desk::Desk;
use super::origin::Origin;
use super::theme::{self, ThemeInForce as _};
use super::top_bar;
use crate::catalog::{Catalog, CautionTopic, MaterialId};
use crate::layout::Edit;

/// The shed while it is open.
#[derive(Default)]
pub(super) struct ShedView {
    /// What is typed to find a material to open.
    of_pages: list::Search,
    /// What is typed to find materials to mix from: what was looked for before must not hide what is ticked.
    of_mix: list::Search,
    shown: Shown,
    /// The material that is open.
    open: Option<MaterialId>,
    mixing: Mixing,
    new: new_material::NewMaterial,
    /// Focus is given to the search once, when the shed opens.
    started: bool,
}

/// What stands on the right.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
enum Shown {
    /// The page of a material.
    #[default]
    Material,
    /// A new material by its label.
    New,
    /// Mixing for a bed.
    Mix,
}

impl ShedView {
    /// The shed, open at a material.
    pub(super) fn at(material: MaterialId) -> Self {
        Self {
            open: Some(material),
            ..Self::default()
        }
    }

    /// The shed, open at mixing.
    pub(super) fn mixing() -> Self {
        Self {
            shown: Shown::Mix,
            ..Self::default()
        }
    }

    /// The same with what was asked of a mix before.
    pub(super) fn with(self, mixing: Mixing) -> Self {
        Self { mixing, ..self }
    }

    /// What is asked of a mix, for when the shed is opened again.
    pub(super) fn put_by(self) -> Mixing {
        self.mixing
    }

    /// Draws the shed. Gives back whether it stays open.
    pub(super) fn show(&mut self, ui: &mut Ui, desk: &Desk, out: &mut Vec<Command>) -> bool {
        self.settle(desk);
        let colours = theme::colours(ui.theme_in_force());
        let mut stays = true;
        let bar = egui::Frame::new()
            .fill(colours.panel)
            .inner_margin(egui::Margin::symmetric(20, 0));
        egui::Panel::top("bar of the shed")
            .exact_size(48.0)
            .frame(bar)
            .show(ui, |ui| stays = top_bar::page_head(ui, "Fertilizer shed", desk, out));
        top_bar::wrong_strip(ui, desk, out);
        let rules = egui::Frame::new()
            .fill(colours.panel)
            .inner_margin(egui::Margin::symmetric(20, 4));
        egui::Panel::top("rules of the shed").frame(rules).show(ui, |ui| {
            ui.horizontal(|ui| {
                self.tabs(ui);
                ui.add_space(16.0);
                organic(ui, desk, out);
            });
        });
        let side = egui::Frame::new()
            .fill(colours.panel)
            .inner_margin(egui::Margin::symmetric(14, 12));
        egui::Panel::left("materials of the shed")
            .exact_size(300.0)
            .resizable(false)
            .frame(side)
            .show(ui, |ui| self.list(ui, desk));
        let paper = egui::Frame::new()
            .fill(colours.paper)
            .inner_margin(egui::Margin::symmetric(24, 16));
        egui::CentralPanel::default()
            .frame(paper)
            .show(ui, |ui| match self.shown {
                Shown::Material => stays &= self.page(ui, desk, out),
                Shown::New => self.new.show(ui, desk, out),
                Shown::Mix => stays &= self.mix(ui, desk, out),
            });
        stays
    }

    /// Opens what was waited for, and leaves what is gone.
    fn settle(&mut self, desk: &Desk) {
        if let Some(new) = self.new.arrived(desk) {
            self.open = Some(new);
            self.shown = Shown::Material;
        }
        let book = desk.material_book();
        if self.open.as_ref().is_some_and(|open| book.get(open).is_none()) {
            self.open = None;
        }
    }

    /// What may stand on the right.
    fn tabs(&mut self, ui: &mut Ui) {
        let mixes = self.shown == Shown::Mix;
        if ui.selectable_label(!mixes, "Materials").clicked() && mixes {
            self.shown = Shown::Material;
        }
        if ui.selectable_label(mixes, "Mix for a bed").clicked() {
            self.shown = Shown::Mix;
        }
    }
}

/// Whether the layout is kept within organic rules.
fn organic(ui: &mut Ui, desk: &Desk, out: &mut Vec<Command>) {
    let mut organic = desk.layout().organic;
    let box_ = ui.checkbox(&mut organic, "Keep within organic rules; the certifier decides");
    let box_ = match Catalog::built_in().caution(CautionTopic::Organic) {
        Some(caution) => box_.on_hover_text(format!(
            "{}\n{}",
            caution.sentence.value,
            Origin::value(&caution.sentence).full
        )),
        None => box_,
    };
    if box_.changed() {
        out.push(Command::Edit(Edit::SetOrganic(organic)));
    }
}
