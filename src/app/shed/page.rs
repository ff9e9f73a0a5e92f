//! The page of a material: what it is, what can be done with it, which dressings are of it, and all its values.

use egui::{Id, RichText, Ui};

use super::values::Page;
use super::{ShedView, Shown};
use crate::app::command::Command;
use crate::app::desk::Desk;
use crate::app::form;
use crate::app::theme::{self, ThemeInForce as _};
use crate::catalog::{Catalog, MaterialId};
use crate::layout::{Edit, Item, Label, ShedEdit};
use crate::plan::feeding::KnownMaterial;

impl ShedView {
    /// Draws the page. Gives back whether the shed stays open.
    pub(super) fn page(&mut self, ui: &mut Ui, desk: &Desk, out: &mut Vec<Command>) -> bool {
        let open = self.open.as_ref().and_then(|open| desk.material_book().get(open));
        let Some(known) = open else {
            form::follows(
                ui,
                "Choose a material on the left. What you know of your own bag goes over what is published.",
            );
            return true;
        };
        let layout = desk.layout();
        let id = &known.material.id;
        let catalogue = Catalog::built_in().material(id);
        let label = known
            .shed
            .and_then(|kept| layout.shed_entry(kept))
            .map_or_else(Label::default, |kept| kept.label.clone());
        let mut stays = true;
        let scroll = egui::ScrollArea::vertical()
            .id_salt(("page of", &id.0))
            .auto_shrink([false, false]);
        scroll.show(ui, |ui| {
            head(ui, known, &label);
            if catalogue.is_none() {
                name(ui, known, &label, out);
            }
            let uses = uses(desk, id);
            self.deeds(ui, known, &uses, out);
            stays = used_in(ui, &uses, out);
            let page = Page {
                known,
                catalogue,
                label,
                shopping: desk.plan().shopping.lines.iter().find(|line| line.material == *id),
                units: layout.units,
                field: Id::unique(("shed", &id.0)),
            };
            if let Some(label) = page.show(ui) {
                out.push(Command::Edit(Edit::Shed(set(known, label))));
            }
            ui.add_space(20.0);
        });
        stays
    }

    /// Putting it in, taking it out, and mixing with it.
    fn deeds(&mut self, ui: &mut Ui, known: &KnownMaterial, uses: &[Use], out: &mut Vec<Command>) {
        let id = &known.material.id;
        let is_own = Catalog::built_in().material(id).is_none();
        ui.horizontal_wrapped(|ui| match known.shed {
            None => {
                if ui.button("Put it in the shed").clicked() {
                    out.push(Command::Edit(Edit::Shed(ShedEdit::Put(id.clone(), Label::default()))));
                }
            }
            Some(kept) => {
                let words = if is_own {
                    "Remove material"
                } else {
                    "Take it out of the shed"
                };
                let free = !is_own || uses.is_empty();
                if ui.add_enabled(free, egui::Button::new(words)).clicked() {
                    out.push(Command::Edit(Edit::Shed(ShedEdit::Remove(kept))));
                }
                if ui.button("Mix with it for a bed").clicked() {
                    self.shown = Shown::Mix;
                }
            }
        });
        if is_own && !uses.is_empty() {
            form::follows(
                ui,
                "It cannot be removed while a dressing is of it: choose another material there first.",
            );
        }
    }
}

/// A dressing that is of the material.
struct Use {
    item: Item,
    words: String,
}

fn uses(desk: &Desk, id: &MaterialId) -> Vec<Use> {
    let beds = desk.layout().beds.iter();
    beds.flat_map(|bed| {
        let of_it = bed.dressings.iter().filter(|dressing| dressing.material == *id);
        of_it.map(|dressing| Use {
            item: Item::Dressing(bed.id, dressing.id),
            words: format!("{}, {}", bed.name, dressing.name),
        })
    })
    .collect()
}

/// The dressings that are of it; a click goes there. Gives back whether the shed stays open.
fn used_in(ui: &mut Ui, uses: &[Use], out: &mut Vec<Command>) -> bool {
    let mut stays = true;
    if uses.is_empty() {
        return stays;
    }
    let soft = theme::colours(ui.theme_in_force()).soft;
    ui.horizontal_wrapped(|ui| {
        ui.label(RichText::new("Used in").size(13.0).color(soft));
        for of in uses.iter().take(MOST_USES) {
            let words = RichText::new(&of.words).size(13.0);
            if ui.add(egui::Button::new(words)).clicked() {
                out.push(Command::GoTo(of.item));
                stays = false;
            }
        }
        if uses.len() > MOST_USES {
            form::follows(ui, format!("and {} more", uses.len() - MOST_USES));
        }
    });
    stays
}

/// More uses than fit on a page.
const MOST_USES: usize = 12;

/// Name, analysis, and whose it is.
fn head(ui: &mut Ui, known: &KnownMaterial, label: &Label) {
    let colours = theme::colours(ui.theme_in_force());
    ui.add(egui::Label::new(RichText::new(&known.material.name).font(theme::bold(22.0))).wrap());
    let form = if known.material.liquid { "a liquid, " } else { "" };
    let about = format!("{form}{}", known.analysis().label());
    ui.label(RichText::new(about).size(14.0).color(colours.soft));
    let is_own = Catalog::built_in().material(&known.material.id).is_none();
    // Always one line: a first value puts the material in the shed, and no field may move by that.
    let (whose, colour) = match known.shed {
        None => ("not in the shed", colours.soft),
        Some(_) if is_own => ("a material of yours, by its label", colours.accent),
        Some(_) if *label == Label::default() => ("in the shed", colours.accent),
        Some(_) => ("in the shed, with what you know of it", colours.accent),
    };
    ui.label(RichText::new(whose).size(13.0).color(colour));
    ui.add_space(6.0);
}

fn name(ui: &mut Ui, known: &KnownMaterial, label: &Label, out: &mut Vec<Command>) {
    let id = Id::unique(("name of own material", &known.material.id.0));
    let mut accepted = None;
    ui.allocate_ui(egui::vec2(400.0, 26.0), |ui| {
        ui.set_width(400.0);
        accepted = form::field(ui, id, "Name", &label.name, form::read_name);
    });
    if let Some(name) = accepted {
        let label = Label { name, ..label.clone() };
        out.push(Command::Edit(Edit::Shed(set(known, label))));
    }
}

/// The edit that puts what is known of it where the page has it.
fn set(known: &KnownMaterial, label: Label) -> ShedEdit {
    match known.shed {
        Some(kept) => ShedEdit::Set(kept, label),
        None => ShedEdit::Put(known.material.id.clone(), label),
    }
}
