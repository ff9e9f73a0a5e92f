//! The crop book over the whole window: crops found by name, family and season; every value of a crop with its source;
//! own crops, cultivars and values.

mod buying;
mod fresh;
mod list;
mod page;
mod plant;
mod seed;
mod values;
mod words;

use egui::Ui;
use fresh::Fresh;

use super::command::Command;
use super::desk::Desk;
use super::theme::{self, ThemeInForce as _};
use super::top_bar;
use super::value_lines::ValueLines;
use crate::catalog::{CropId, Season};

/// The columns of a crop's page.
const LINES: ValueLines = ValueLines {
    label: 180.0,
    value: 190.0,
    note: 620.0,
};

/// The crop book while it is open.
#[derive(Default)]
pub(super) struct BookView {
    /// What is typed to find crops.
    find: String,
    family: Option<String>,
    season: Option<Season>,
    /// The crop that is open, and which of its cultivars; none for the crop itself.
    open: Option<(CropId, String)>,
    /// Focus is given to the search once, when the book opens.
    started: bool,
    /// A crop or cultivar that was asked for and is opened as soon as it is there.
    awaited: Option<Awaited>,
    /// A crop from nothing that is being made.
    fresh: Option<Fresh>,
}

/// What is opened as soon as it is there.
enum Awaited {
    /// The own crop that was not there before.
    Crop(Vec<CropId>),
    /// The cultivar of that name.
    Cultivar(CropId, String),
}

impl BookView {
    /// The book, open at a crop and one of its cultivars.
    pub(super) fn at(crop: CropId, cultivar: String) -> Self {
        Self {
            open: Some((crop, cultivar)),
            ..Self::default()
        }
    }

    /// Draws the book. Gives back whether it stays open.
    pub(super) fn show(&mut self, ui: &mut Ui, desk: &Desk, out: &mut Vec<Command>) -> bool {
        self.settle(desk);
        let colours = theme::colours(ui.theme_in_force());
        let mut stays = true;
        let bar = egui::Frame::new()
            .fill(colours.panel)
            .inner_margin(egui::Margin::symmetric(20, 0));
        egui::Panel::top("bar of the crop book")
            .exact_size(48.0)
            .frame(bar)
            .show(ui, |ui| stays = top_bar::page_head(ui, "Crop book", desk, out));
        top_bar::wrong_strip(ui, desk, out);
        let side = egui::Frame::new()
            .fill(colours.panel)
            .inner_margin(egui::Margin::symmetric(14, 12));
        egui::Panel::left("crops of the book")
            .exact_size(300.0)
            .resizable(false)
            .frame(side)
            .show(ui, |ui| self.list(ui, desk));
        let paper = egui::Frame::new()
            .fill(colours.paper)
            .inner_margin(egui::Margin::symmetric(28, 18));
        egui::CentralPanel::default()
            .frame(paper)
            .show(ui, |ui| stays &= self.page(ui, desk, out));
        stays
    }

    /// Opens a cultivar as soon as it is there; one of that name that is there already is not it.
    fn await_cultivar(&mut self, desk: &Desk, crop: &CropId, name: String) {
        let book = desk.crop_book();
        if !book.cultivars_of(crop).any(|cultivar| cultivar.name == name) {
            self.awaited = Some(Awaited::Cultivar(crop.clone(), name));
        }
    }

    /// Opens what was waited for, and leaves what is gone.
    fn settle(&mut self, desk: &Desk) {
        let book = desk.crop_book();
        match &self.awaited {
            Some(Awaited::Crop(before)) => {
                let own = &desk.layout().own_crops;
                if let Some(new) = own.iter().find(|own| !before.contains(&own.id)) {
                    self.open = Some((new.id.clone(), String::new()));
                    self.fresh = None;
                }
                self.awaited = None;
            }
            Some(Awaited::Cultivar(crop, name)) => {
                if book.cultivars_of(crop).any(|cultivar| cultivar.name == *name) {
                    self.open = Some((crop.clone(), name.clone()));
                }
                self.awaited = None;
            }
            None => {}
        }
        if self.open.as_ref().is_some_and(|(crop, _)| book.crop(crop).is_none()) {
            self.open = None;
        }
    }
}
