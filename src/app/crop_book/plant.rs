//! Planting the crop of the page in a bed.

use egui::Ui;

use crate::app::command::Command;
use crate::app::desk::Desk;
use crate::app::seed_words::cultivar_dropped;
use crate::catalog::Crop;
use crate::layout::{Bed, BedChange, Edit, Item, OwnCultivar, same_cultivar, with_cultivar};

/// Plants the crop, or a cultivar of it, in the chosen bed; without one it asks in which. Gives back whether it did.
pub(super) fn plant_in(
    ui: &mut Ui,
    desk: &Desk,
    crop: &Crop,
    cultivar: Option<&OwnCultivar>,
    out: &mut Vec<Command>,
) -> bool {
    let layout = desk.layout();
    let chosen = desk
        .chosen
        .and_then(Item::bed)
        .and_then(|bed| layout.bed(bed))
        .map(AsRef::as_ref);
    let bed: Option<&Bed> = if let Some(bed) = chosen {
        let button = egui::Button::new(format!("Plant it in {}", bed.name));
        let response = ui.add_enabled(!is_planted(bed, crop, cultivar), button);
        let response = response.on_hover_text(in_place_of(desk, bed));
        response.clicked().then_some(bed)
    } else {
        let mut picked = None;
        ui.add_enabled_ui(!layout.beds.is_empty(), |ui| {
            ui.menu_button("Plant it in…", |ui| {
                egui::ScrollArea::vertical().max_height(320.0).show(ui, |ui| {
                    for bed in &layout.beds {
                        let button = egui::Button::new(&bed.name);
                        let response = ui.add_enabled(!is_planted(bed, crop, cultivar), button);
                        if response.on_hover_text(in_place_of(desk, bed)).clicked() {
                            picked = Some(bed.as_ref());
                        }
                    }
                });
            });
        });
        picked
    };
    let Some(bed) = bed else { return false };
    let grows_there = bed.planting.as_ref().is_some_and(|planting| planting.crop == crop.id);
    let change = match cultivar {
        None => BedChange::SetCrop(crop.id.clone()),
        Some(own) if grows_there => BedChange::SetCultivar(own.name.clone()),
        Some(own) => BedChange::SetCropAndCultivar(crop.id.clone(), own.name.clone()),
    };
    out.push(Command::Edit(Edit::Bed(bed.id, change)));
    let before = bed.planting.as_ref().map(|planting| &planting.crop);
    let before = before.and_then(|id| desk.crop_book().crop(id));
    let dropped = before.and_then(|before| cultivar_dropped(bed, &before.name, &crop.id));
    out.extend(dropped.map(Command::Say));
    true
}

/// Whether the bed has the crop already, and the cultivar where one is meant.
fn is_planted(bed: &Bed, crop: &Crop, cultivar: Option<&OwnCultivar>) -> bool {
    bed.planting.as_ref().is_some_and(|planting| {
        planting.crop == crop.id && cultivar.is_none_or(|own| same_cultivar(&planting.cultivar, &own.name))
    })
}

/// What grows in a bed now.
fn in_place_of(desk: &Desk, bed: &Bed) -> String {
    match &bed.planting {
        Some(planting) => {
            let book = desk.crop_book();
            let name = book
                .crop(&planting.crop)
                .map_or(planting.crop.0.as_str(), |crop| crop.name.as_str());
            format!("In place of {}", with_cultivar(name, &planting.cultivar))
        }
        None => "Nothing is planted there yet".to_owned(),
    }
}
