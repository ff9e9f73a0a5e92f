//! The materials on the left: found by a part of their name or by their analysis, those in the shed first.

use egui::{Id, RichText, TextEdit, Ui};

use super::{ShedView, Shown};
use crate::app::desk::Desk;
use crate::app::form;
use crate::app::theme::{self, ThemeInForce as _};
use crate::plan::feeding::KnownMaterial;

/// Which materials are listed.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) enum Kept {
    /// All, those in the shed first.
    #[default]
    All,
    /// Those in the shed.
    InShed,
    /// Those that organic rules allow, as far as anyone here knows.
    Organic,
}

impl Kept {
    const fn words(self) -> &'static str {
        match self {
            Self::All => "all",
            Self::InShed => "in the shed",
            Self::Organic => "allowed by organic rules",
        }
    }

    fn has(self, known: &KnownMaterial) -> bool {
        match self {
            Self::All => true,
            Self::InShed => known.shed.is_some(),
            Self::Organic => known.is_organic() == Some(true),
        }
    }
}

/// What is looked for among the materials.
#[derive(Clone, Debug, Default)]
pub(super) struct Search {
    find: String,
    kept: Kept,
}

impl ShedView {
    /// Draws the search and what it finds.
    pub(super) fn list(&mut self, ui: &mut Ui, desk: &Desk) {
        let mixes = self.shown == Shown::Mix;
        let search = if mixes { &mut self.of_mix } else { &mut self.of_pages };
        let field = TextEdit::singleline(&mut search.find)
            .id(Id::unique(("find in the shed", mixes)))
            .hint_text("Part of a name, or an analysis")
            .desired_width(f32::INFINITY);
        let field = ui.add(field).accessible_name("Find a material");
        let first_time = !self.started;
        if first_time {
            field.request_focus();
            self.started = true;
        }
        let all = [Kept::All, Kept::InShed, Kept::Organic].map(|kept| (kept.words(), kept));
        let picked = form::choices(
            ui,
            Id::unique(("kept in the shed", mixes)),
            "Show",
            search.kept.words(),
            &all,
        );
        if let Some(kept) = picked {
            search.kept = kept;
        }
        let Search { find, kept } = search.clone();
        let mut found = desk.material_book().find(&find);
        found.retain(|known| kept.has(known));
        let (in_shed, others): (Vec<_>, Vec<_>) = found.into_iter().partition(|known| known.shed.is_some());
        let entered = field.lost_focus() && ui.input(|input| input.key_pressed(egui::Key::Enter));
        let first = in_shed.first().or_else(|| others.first());
        if entered
            && self.shown != Shown::Mix
            && let Some(first) = first
        {
            self.open = Some(first.material.id.clone());
            self.shown = Shown::Material;
        }
        if self.shown == Shown::Mix {
            ui.checkbox(&mut self.mixing.only_at_hand, "Only what is at hand");
        } else if ui.button("New material by its label…").clicked() {
            self.new = super::new_material::NewMaterial::default();
            self.shown = Shown::New;
        }
        ui.add_space(2.0);
        egui::ScrollArea::vertical()
            .id_salt(("materials", self.shown == Shown::Mix))
            .auto_shrink([false, false])
            .show(ui, |ui| {
                ui.spacing_mut().item_spacing.y = 1.0;
                let not_found = "nothing has that in its name or analysis";
                let none = match find.trim() {
                    "" if desk.layout().shed.is_empty() => "nothing yet: open a material and put it in",
                    _ => not_found,
                };
                self.part(ui, desk, "In the shed", &in_shed, none, first_time);
                if kept != Kept::InShed {
                    self.part(ui, desk, "Others", &others, not_found, first_time);
                }
            });
    }

    /// One part of the list, with its heading.
    fn part(
        &mut self,
        ui: &mut Ui,
        desk: &Desk,
        title: &str,
        materials: &[&KnownMaterial],
        none: &str,
        first_time: bool,
    ) {
        let soft = theme::colours(ui.theme_in_force()).soft;
        ui.add_space(6.0);
        ui.label(RichText::new(title).size(12.0).color(soft));
        if materials.is_empty() {
            form::follows(ui, none);
        }
        for known in materials {
            let id = &known.material.id;
            if self.shown == Shown::Mix {
                self.mixing.tick(ui, desk, known);
                continue;
            }
            let open = self.shown == Shown::Material && self.open.as_ref() == Some(id);
            let line = form::list_line(ui, open, &known.material.name, &known.analysis().label());
            if open && first_time {
                line.scroll_to_me(Some(egui::Align::Center));
            }
            if line.clicked() {
                self.open = Some(id.clone());
                self.shown = Shown::Material;
            }
        }
    }
}
