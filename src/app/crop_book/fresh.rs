//! A crop of the grower's own from nothing: its name, its family, and how it goes into the ground. All its other values
//! are typed on its page, as far as they are known.

use egui::{Id, RichText, TextEdit, Ui};

use super::words::{METHODS, method_words};
use super::{Awaited, BookView};
use crate::app::command::Command;
use crate::app::desk::Desk;
use crate::app::form;
use crate::app::theme;
use crate::catalog::PlantingMethod;
use crate::layout::{Edit, Kind, OwnStart, OwnValues, SeedEdit};

/// What is typed of a crop that is not made yet.
#[derive(Clone, Default)]
pub(super) struct Fresh {
    name: String,
    family: String,
    method: Option<PlantingMethod>,
}

impl Fresh {
    /// A crop of that name.
    pub(super) fn named(name: &str) -> Self {
        Self {
            name: name.trim().to_owned(),
            ..Self::default()
        }
    }

    /// What has to be given before it can be made; `None` when nothing is missing.
    fn missing(&self) -> Option<&'static str> {
        match (self.name.trim().is_empty(), self.method) {
            (true, None) => Some("give its name, and say how it is put in the ground"),
            (true, Some(_)) => Some("give its name"),
            (false, None) => Some("say how it is put in the ground"),
            (false, Some(_)) => None,
        }
    }
}

impl BookView {
    /// Draws what is asked of a new crop, in place of a page. Gives back whether one is being made.
    pub(super) fn fresh(&mut self, ui: &mut Ui, desk: &Desk, out: &mut Vec<Command>) -> bool {
        let Some(mut fresh) = self.fresh.clone() else {
            return false;
        };
        ui.label(RichText::new("A crop that the book has not").font(theme::bold(22.0)));
        form::follows(
            ui,
            "It starts with nothing from any other crop. What you do not know stays blank, and whatever needs it says so.",
        );
        ui.add_space(8.0);
        let (mut add, mut leave) = (false, false);
        ui.allocate_ui(egui::vec2(420.0, 26.0), |ui| {
            ui.set_width(420.0);
            words(ui, "Name", &mut fresh.name);
            words(ui, "Plant family", &mut fresh.family);
            form::follows(ui, "may stay empty");
            let all = METHODS.map(|method| (method_words(method), method));
            let chosen = fresh.method.map_or("choose…", method_words);
            let id = Id::unique("way of a new crop");
            fresh.method = form::choices(ui, id, "Usual way", chosen, &all).or(fresh.method);
            ui.add_space(6.0);
            let missing = fresh.missing();
            ui.horizontal(|ui| {
                add = ui.add_enabled(missing.is_none(), egui::Button::new("Add it")).clicked();
                leave = ui.button("Leave it").clicked();
            });
            form::follows(
                ui,
                missing.unwrap_or("its page asks for spacings, seed weight, what comes up and days to harvest"),
            );
        });
        if add && let Some(method) = fresh.method {
            self.awaited = Some(Awaited::Crop(
                desk.layout().own_crops.iter().map(|own| own.id.clone()).collect(),
            ));
            out.push(Command::Edit(Edit::Seed(SeedEdit::AddOwnCrop {
                start: OwnStart::Blank(Kind {
                    botanical: String::new(),
                    family: fresh.family.clone(),
                }),
                name: fresh.name.clone(),
                values: OwnValues {
                    method: Some(method),
                    ..OwnValues::default()
                },
            })));
        }
        // It goes when the crop is there: a name that is taken can still be changed.
        self.fresh = (!leave).then_some(fresh);
        true
    }
}

fn words(ui: &mut Ui, label: &str, text: &mut String) {
    form::line(ui, label, |ui| {
        let field = TextEdit::singleline(text)
            .id(Id::unique(("of a new crop", label)))
            .desired_width(ui.available_width());
        ui.add(field);
    });
}
