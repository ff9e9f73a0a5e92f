//! What grows in the bed: crop, cultivar, water, spacing in the row.

use egui::{Id, RichText, Ui};

use super::{Hand, cultivar, length_line};
use crate::app::command::Command;
use crate::app::form;
use crate::app::picker::{Choice, picker};
use crate::app::seed_words::cultivar_dropped;
use crate::catalog::{Catalog, Crop};
use crate::layout::{Bed, BedChange, Edit, Water};
use crate::plan::{InRowFrom, Stand, no_in_row};
use crate::quantity::Units;

/// The crop of the bed with the grower's own values in it, if one is planted that the crop book has.
pub(super) fn crop_of<'a>(hand: &Hand<'a>, bed: &Bed) -> Option<&'a Crop> {
    let planting = bed.planting.as_ref()?;
    hand.desk.crop_book().cultivar(&planting.crop, &planting.cultivar)
}

pub(super) fn change(hand: &mut Hand<'_>, bed: &Bed, change: BedChange) {
    hand.out.push(Command::Edit(Edit::Bed(bed.id, change)));
}

/// The crop, chosen by part of its name, and the cultivar.
pub(super) fn crop(ui: &mut Ui, hand: &mut Hand<'_>, bed: &Bed, field: Id) {
    let book = hand.desk.crop_book();
    let crops = book.crops();
    let mut choices: Vec<Choice> = crops
        .iter()
        .map(|crop| Choice::of_crop(crop, book, hand.desk.layout()))
        .collect();
    choices.push(Choice::named("Nothing yet", ""));
    let known = bed.planting.as_ref().and_then(|planting| book.crop(&planting.crop));
    let current = match (&bed.planting, known) {
        (_, Some(crop)) => crop.name.clone(),
        (Some(planting), None) => planting.crop.0.clone(),
        (None, None) => String::new(),
    };
    let picked = form::line(ui, "Crop", |ui| {
        let width = ui.available_width();
        picker(ui, field.with("crop"), "Crop", &current, &choices, width)
    });
    if let Some(index) = picked {
        match crops.get(index) {
            Some(crop) => {
                change(hand, bed, BedChange::SetCrop(crop.id.clone()));
                hand.out
                    .extend(cultivar_dropped(bed, &current, &crop.id).map(Command::Say));
            }
            None => change(hand, bed, BedChange::SetPlanting(None)),
        }
    }
    let Some(planting) = &bed.planting else {
        form::follows(ui, "choose what grows here, and plants and seed are counted");
        return;
    };
    if let Some(crop) = known {
        let family = if crop.family.is_empty() {
            "family not known"
        } else {
            &crop.family
        };
        let look_up = form::link(ui, family, "look it up");
        if look_up.on_hover_text("Open the crop book at this crop").clicked() {
            hand.out
                .push(Command::OpenBook(planting.crop.clone(), planting.cultivar.clone()));
        }
    } else {
        form::wrong(
            ui,
            &format!("the crop book has no crop “{}”; choose another", planting.crop.0),
        );
    }
    if let Some(cultivar) = cultivar::show(ui, hand, field, &planting.crop, &planting.cultivar) {
        change(hand, bed, BedChange::SetCultivar(cultivar));
    }
}

/// How the bed gets its water.
pub(super) fn water(ui: &mut Ui, hand: &mut Hand<'_>, bed: &Bed) {
    let all = Water::ALL.map(|water| (water.name(), water));
    let field = Id::unique(("water of bed", bed.id));
    if let Some(water) = form::choices(ui, field, "Water", bed.water.name(), &all) {
        change(hand, bed, BedChange::SetWater(water));
    }
}

/// From plant to plant, and where that comes from.
pub(super) fn in_row(ui: &mut Ui, hand: &mut Hand<'_>, bed: &Bed, field: Id) {
    let units = hand.desk.layout().units;
    let Some(stand) = stand(hand, bed) else {
        return missing_in_row(ui, hand, bed, field, units);
    };
    if let Some(in_row) = length_line::short(ui, field.with("in row"), "In the row", stand.in_row, units) {
        change(hand, bed, BedChange::SetInRow(Some(in_row)));
    }
    let crop = crop_of(hand, bed);
    let hills = match stand.sowing.plants_per_place() {
        0 | 1 => String::new(),
        plants => format!(", times the {plants} plants of a hill"),
    };
    match stand.in_row_from {
        InRowFrom::Grower => {
            if form::yours(ui, "use the crop's own") {
                change(hand, bed, BedChange::SetInRow(None));
            }
        }
        InRowFrom::CropWatered => {
            let words = "the crop's closer spacing, as all its water comes through the tape";
            from_crop(
                ui,
                &(words.to_owned() + &hills),
                crop.and_then(|crop| crop.in_row_watered.as_ref())
                    .map(|spacing| Catalog::built_in().cite_value(spacing)),
            );
        }
        InRowFrom::CropDry => {
            let words = "the crop's wider spacing, as water may run short without tape";
            from_crop(
                ui,
                &(words.to_owned() + &hills),
                crop.and_then(|crop| crop.in_row_dry.as_ref())
                    .map(|spacing| Catalog::built_in().cite_value(spacing)),
            );
        }
    }
}

/// The field of the in-row spacing where neither the bed nor the crop book has one: no plant can be counted without it.
fn missing_in_row(ui: &mut Ui, hand: &mut Hand<'_>, bed: &Bed, field: Id, units: Units) {
    let Some(planting) = &bed.planting else { return };
    let bare = match units {
        Units::Customary => "in",
        Units::Metric => "cm",
    };
    let read = |text: &str| length_line::read_short(text, bare, units);
    if let Some(in_row) = form::field(ui, field.with("in row"), "In the row", "", read) {
        change(hand, bed, BedChange::SetInRow(Some(in_row)));
    }
    let book = hand.desk.crop_book();
    let Some(crop) = book.crop(&planting.crop) else { return };
    form::wrong(
        ui,
        &format!(
            "{}, so no plant can be counted; type it here for this bed, or in the crop book for all",
            no_in_row(&crop.name, bed.water)
        ),
    );
}

pub(super) fn from_crop(ui: &mut Ui, words: &str, source: Option<String>) {
    let label = ui.label(RichText::new(words).small().weak());
    if let Some(source) = source {
        label.on_hover_text(source);
    }
}

pub(super) fn stand(hand: &Hand<'_>, bed: &Bed) -> Option<Stand> {
    hand.desk.plan().bed(bed.id)?.stand
}
