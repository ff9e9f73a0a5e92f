//! The page of a crop: what it is, its cultivars, what can be done with it, and all its values.

use std::borrow::Cow;

use egui::{Id, RichText, Ui};

use super::plant::plant_in;
use super::values::Page;
use super::{Awaited, BookView};
use crate::app::card::cultivar;
use crate::app::command::Command;
use crate::app::desk::Desk;
use crate::app::form;
use crate::app::theme::{self, ThemeInForce as _};
use crate::app::unit_field::unit_field;
use crate::catalog::{Crop, CropId};
use crate::layout::{Edit, Kind, OwnCrop, OwnCultivar, OwnStart, OwnValues, SeedEdit, same_cultivar};
use crate::plan::BuyingBeside;

impl BookView {
    /// Draws the page. Gives back whether the book stays open.
    pub(super) fn page(&mut self, ui: &mut Ui, desk: &Desk, out: &mut Vec<Command>) -> bool {
        if self.fresh(ui, desk, out) {
            return true;
        }
        let Some((id, cultivar)) = self.open.clone() else {
            form::follows(ui, "Choose a crop on the left.");
            return true;
        };
        let book = desk.crop_book();
        let own_cultivar = book
            .cultivars_of(&id)
            .find(|own| same_cultivar(&own.name, &cultivar))
            .cloned();
        // A cultivar that has no values of its own yet is the crop itself.
        let Some(crop) = book.cultivar(&id, &cultivar).or_else(|| book.crop(&id)) else {
            return true;
        };
        let own_crop = desk.layout().own_crops.iter().find(|own| own.id == id);
        let mut stays = true;
        let scroll = egui::ScrollArea::vertical()
            .id_salt(("page of", &id.0, &cultivar))
            .auto_shrink([false, false]);
        scroll.show(ui, |ui| {
            head(ui, desk, crop, own_crop.map(AsRef::as_ref), own_cultivar.as_ref());
            stays = self.deeds(ui, desk, crop, own_crop.map(AsRef::as_ref), own_cultivar.as_ref(), out);
            self.cultivars(ui, desk, &id, &cultivar, out);
            let values = match (&own_cultivar, own_crop) {
                (Some(own), _) => own.values,
                (None, Some(own)) => own.values,
                (None, None) => OwnValues::default(),
            };
            let under = match (&own_cultivar, own_crop) {
                (Some(_), _) => book.crop(&id).map(Cow::Borrowed),
                (None, Some(own)) => book.under(own),
                (None, None) => None,
            };
            let is_blank = own_cultivar.is_none() && book.starts_from_nothing(&id);
            let page = Page {
                crop,
                under: under.as_deref().unwrap_or(crop),
                is_blank,
                values,
                back: match (&own_cultivar, own_crop) {
                    (Some(_), _) => "use the crop's",
                    (None, Some(_)) if is_blank => "leave it blank",
                    (None, Some(own)) if !own.is_over_catalogue() => "use the one it is based on",
                    _ => "use the catalogue's",
                },
                units: desk.layout().units,
                field: Id::unique(("crop book", &id.0, &cultivar)),
                beside: beside(desk, &id, crop),
            };
            if let Some(values) = page.show(ui) {
                let edit = set_values(&id, values, own_crop.map(AsRef::as_ref), own_cultivar.as_ref());
                out.push(Command::Edit(Edit::Seed(edit)));
            }
            ui.add_space(20.0);
        });
        stays
    }

    /// What can be done with the crop. Gives back whether the book stays open.
    fn deeds(
        &mut self,
        ui: &mut Ui,
        desk: &Desk,
        crop: &Crop,
        own_crop: Option<&OwnCrop>,
        own_cultivar: Option<&OwnCultivar>,
        out: &mut Vec<Command>,
    ) -> bool {
        let mut stays = true;
        // One like it starts with the grower's values, over the catalogue's too.
        let like = own_crop;
        let own_crop = own_crop.filter(|own| !own.is_over_catalogue());
        if let Some(own) = own_cultivar {
            let id = Id::unique(("name of cultivar", &own.crop.0, &own.name));
            if let Some(name) = name_field(ui, id, "Cultivar", &own.name) {
                let to = OwnCultivar {
                    name: name.clone(),
                    ..own.clone()
                };
                self.await_cultivar(desk, &own.crop, name);
                out.push(Command::Edit(Edit::Seed(SeedEdit::SetCultivar {
                    name: own.name.clone(),
                    to,
                })));
            }
        } else if let Some(own) = own_crop {
            let id = Id::unique(("name of own crop", &own.id.0));
            if let Some(name) = name_field(ui, id, "Name", &own.name) {
                out.push(Command::Edit(Edit::Seed(SeedEdit::SetOwnCrop {
                    crop: own.id.clone(),
                    name,
                    values: own.values,
                })));
            }
            if let OwnStart::Blank(kind) = &own.start {
                kind_fields(ui, own, kind, out);
            }
        }
        let layout = desk.layout();
        ui.horizontal_wrapped(|ui| {
            if plant_in(ui, desk, crop, own_cultivar, out) {
                stays = false;
            }
            let tip = "A crop of your own that starts with these values";
            if own_cultivar.is_none() && ui.button("A crop of my own like it").on_hover_text(tip).clicked() {
                self.awaited = Some(Awaited::Crop(
                    layout.own_crops.iter().map(|own| own.id.clone()).collect(),
                ));
                out.push(Command::Edit(Edit::Seed(SeedEdit::AddOwnCrop {
                    start: like.map_or_else(|| OwnStart::Crop(crop.id.clone()), |own| own.start.clone()),
                    name: free_name(desk, &crop.name),
                    values: like.map_or_else(OwnValues::default, |own| own.values),
                })));
            }
            if let Some(own) = own_cultivar {
                if ui.button("Remove cultivar").clicked() {
                    out.push(Command::Edit(Edit::Seed(SeedEdit::RemoveCultivar {
                        crop: own.crop.clone(),
                        name: own.name.clone(),
                    })));
                    self.open = Some((own.crop.clone(), String::new()));
                }
            } else if let Some(own) = own_crop
                && ui.button("Remove crop").clicked()
            {
                out.push(Command::Edit(Edit::Seed(SeedEdit::RemoveOwnCrop(own.id.clone()))));
            }
        });
        stays
    }

    /// The crop itself and its cultivars, to choose from, and a field for a new one.
    fn cultivars(&mut self, ui: &mut Ui, desk: &Desk, id: &CropId, open: &str, out: &mut Vec<Command>) {
        ui.add_space(6.0);
        let names: Vec<String> = desk.crop_book().cultivars_of(id).map(|own| own.name.clone()).collect();
        let soft = theme::colours(ui.theme_in_force()).soft;
        let wrong = ui.horizontal_wrapped(|ui| {
            ui.label(RichText::new("Cultivars").size(13.0).color(soft));
            let is_crop = !names.iter().any(|name| same_cultivar(name, open));
            if ui.selectable_label(is_crop, "The crop itself").clicked() {
                self.open = Some((id.clone(), String::new()));
            }
            for name in &names {
                if ui.selectable_label(same_cultivar(name, open), name).clicked() {
                    self.open = Some((id.clone(), name.clone()));
                }
            }
            let field = Id::unique(("new cultivar", &id.0, names.len()));
            let reply = unit_field(ui, field, "", 150.0, form::read_name);
            reply
                .response
                .on_hover_text("The name of a cultivar that has values of its own")
                .accessible_name("New cultivar");
            let mut add = |view: &mut Self, name: String| {
                view.await_cultivar(desk, id, name.clone());
                out.push(Command::Edit(Edit::Seed(SeedEdit::AddCultivar(OwnCultivar {
                    crop: id.clone(),
                    name,
                    values: OwnValues::default(),
                }))));
            };
            if let Some(name) = reply.accepted {
                add(self, name);
            }
            form::follows(ui, "type a name to add one");
            // Those that beds, shelf and packets name, to be given values of their own.
            let mut elsewhere = cultivar::known(desk.layout(), id);
            elsewhere.retain(|choice| !names.iter().any(|name| same_cultivar(name, &choice.name)));
            for choice in elsewhere {
                let button = egui::Button::new(RichText::new(&choice.name).color(soft));
                let tip = format!("{}; give it values of its own", form::heading(&choice.note));
                if ui.add(button).on_hover_text(tip).clicked() {
                    add(self, choice.name);
                }
            }
            reply.wrong
        });
        if let Some(sentence) = wrong.inner {
            form::wrong(ui, &sentence);
        }
    }
}

/// Name, botanical name and family, and whose it is.
fn head(ui: &mut Ui, desk: &Desk, crop: &Crop, own_crop: Option<&OwnCrop>, own_cultivar: Option<&OwnCultivar>) {
    let colours = theme::colours(ui.theme_in_force());
    let name = own_cultivar.map_or_else(|| crop.name.clone(), |own| format!("{}, {}", crop.name, own.name));
    ui.label(RichText::new(name).font(theme::bold(22.0)));
    let mut about = vec![crop.botanical.clone(), crop.family.clone()];
    about.retain(|words| !words.is_empty());
    if !crop.also_called.is_empty() {
        about.push(format!("also called {}", crop.also_called.join(", ")));
    }
    if !about.is_empty() {
        ui.label(RichText::new(about.join(" · ")).size(13.0).color(colours.soft));
    }
    let whose = match (own_cultivar, own_crop) {
        (Some(_), _) => Some("a cultivar of yours; what it does not say itself is the crop's".to_owned()),
        (None, Some(own)) if own.is_over_catalogue() => Some("with values of yours over the catalogue's".to_owned()),
        (None, Some(own)) => {
            let base = desk.crop_book().under(own);
            base.map(|base| match own.based_on() {
                Some(_) => format!("a crop of yours, based on {}", base.name),
                None => "a crop of yours; what you leave blank is not known, and what needs it says so".to_owned(),
            })
        }
        (None, None) => None,
    };
    if let Some(whose) = whose {
        ui.label(RichText::new(whose).size(13.0).color(colours.accent));
    }
    ui.add_space(6.0);
}

/// The bed in hand, or the first, that the crop grows in, with its need beside what buying tables say.
fn beside<'a>(desk: &'a Desk, id: &CropId, crop: &Crop) -> Option<(&'a str, BuyingBeside)> {
    let table = crop.buying.as_ref()?;
    let layout = desk.layout();
    let in_hand = desk.bed_in_hand().and_then(|bed| layout.bed(bed));
    let mut beds = in_hand.into_iter().chain(&layout.beds);
    beds.find_map(|bed| {
        bed.planting.as_ref().filter(|planting| planting.crop == *id)?;
        Some((bed.name.as_str(), BuyingBeside::of(desk.plan(), bed.id, table)?))
    })
}

/// Botanical name and family of a crop that starts from nothing.
fn kind_fields(ui: &mut Ui, own: &OwnCrop, kind: &Kind, out: &mut Vec<Command>) {
    let field = |ui: &mut Ui, label: &str, shown: &str| {
        let id = Id::unique((label, &own.id.0));
        let mut accepted = None;
        ui.allocate_ui(egui::vec2(360.0, 26.0), |ui| {
            ui.set_width(360.0);
            accepted = form::field(ui, id, label, shown, form::read_words);
        });
        accepted
    };
    let mut changed = kind.clone();
    if let Some(botanical) = field(ui, "Botanical name", &kind.botanical) {
        changed.botanical = botanical;
    }
    if let Some(family) = field(ui, "Plant family", &kind.family) {
        changed.family = family;
    }
    if changed != *kind {
        out.push(Command::Edit(Edit::Seed(SeedEdit::SetOwnKind {
            crop: own.id.clone(),
            kind: changed,
        })));
    }
}

fn name_field(ui: &mut Ui, id: Id, label: &str, name: &str) -> Option<String> {
    let mut accepted = None;
    ui.allocate_ui(egui::vec2(360.0, 26.0), |ui| {
        ui.set_width(360.0);
        accepted = form::field(ui, id, label, name, form::read_name);
    });
    accepted
}

/// The edit that puts the grower's own values where the page has them.
fn set_values(
    id: &CropId,
    values: OwnValues,
    own_crop: Option<&OwnCrop>,
    own_cultivar: Option<&OwnCultivar>,
) -> SeedEdit {
    match (own_cultivar, own_crop) {
        (Some(own), _) => SeedEdit::SetCultivar {
            name: own.name.clone(),
            to: OwnCultivar { values, ..own.clone() },
        },
        (None, Some(own)) if !own.is_over_catalogue() => SeedEdit::SetOwnCrop {
            crop: id.clone(),
            name: own.name.clone(),
            values,
        },
        _ => SeedEdit::SetOwnValues {
            crop: id.clone(),
            values,
        },
    }
}

/// A name for a crop of the grower's own that no crop has yet.
fn free_name(desk: &Desk, like: &str) -> String {
    let crops = desk.crop_book().crops();
    let is_taken = |name: &str| crops.iter().any(|crop| crop.name.eq_ignore_ascii_case(name));
    let mut name = format!("{like}, mine");
    let mut number = 2u32;
    while is_taken(&name) {
        name = format!("{like}, mine {number}");
        number = number.saturating_add(1);
    }
    name
}
