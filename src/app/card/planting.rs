//! What grows in the bed: crop, cultivar, water, spacing in the row, seed.

use egui::{Id, RichText, Ui};

use super::{Hand, length_line};
use crate::app::command::Command;
use crate::app::form;
use crate::app::picker::{Choice, picker};
use crate::catalog::{Catalog, Crop, Sourced};
use crate::layout::{Bed, BedChange, Edit, Sowing, Water};
use crate::plan::{InRowFrom, Stand};
use crate::quantity::{Fraction, Length};

/// The crop of the bed, if one is planted that the catalogue has.
pub(super) fn catalogue_crop(bed: &Bed) -> Option<&'static Crop> {
    bed.planting
        .as_ref()
        .and_then(|planting| Catalog::built_in().crop(&planting.crop))
}

/// Where a value of the catalogue comes from, in words.
pub(super) fn source<T>(value: &Sourced<T>) -> String {
    let catalog = Catalog::built_in();
    let cited: Vec<&str> = value
        .sources
        .iter()
        .filter_map(|key| catalog.citation(key))
        .map(|citation| citation.text.as_str())
        .collect();
    format!("{}\n{}", cited.join("\n"), value.mark.words())
}

fn change(hand: &mut Hand<'_>, bed: &Bed, change: BedChange) {
    hand.out.push(Command::Edit(Edit::Bed(bed.id, change)));
}

/// The crop, chosen by part of its name, and the cultivar.
pub(super) fn crop(ui: &mut Ui, hand: &mut Hand<'_>, bed: &Bed, field: Id) {
    let crops = Catalog::built_in().crops();
    let mut choices: Vec<Choice> = crops
        .iter()
        .map(|crop| Choice {
            name: crop.name.clone(),
            note: crop.family.clone(),
        })
        .collect();
    choices.push(Choice {
        name: "Nothing yet".to_owned(),
        note: String::new(),
    });
    let current = match (&bed.planting, catalogue_crop(bed)) {
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
            Some(crop) => change(hand, bed, BedChange::SetCrop(crop.id.clone())),
            None => change(hand, bed, BedChange::SetPlanting(None)),
        }
    }
    let Some(planting) = &bed.planting else {
        form::follows(ui, "choose what grows here, and plants and seed are counted");
        return;
    };
    if catalogue_crop(bed).is_none() {
        form::wrong(
            ui,
            &format!("the catalogue has no crop “{}”; choose another", planting.crop.0),
        );
    }
    let cultivar = form::field(
        ui,
        field.with("cultivar"),
        "Cultivar",
        &planting.cultivar,
        form::read_words,
    );
    if let Some(cultivar) = cultivar {
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
    let Some(stand) = stand(hand, bed) else { return };
    let units = hand.desk.layout().units;
    if let Some(in_row) = length_line::short(ui, field.with("in row"), "In the row", stand.in_row, units) {
        change(hand, bed, BedChange::SetInRow(Some(in_row)));
    }
    let crop = catalogue_crop(bed);
    match stand.in_row_from {
        InRowFrom::Grower => {
            if form::yours(ui, "use the crop's own") {
                change(hand, bed, BedChange::SetInRow(None));
            }
        }
        InRowFrom::CropWatered => {
            let words = "by the crop, all the water it asks for";
            from_crop(ui, words, crop.map(|crop| source(&crop.in_row_watered)));
        }
        InRowFrom::CropDry => {
            let words = "by the crop, wider where water may run short";
            from_crop(ui, words, crop.map(|crop| source(&crop.in_row_dry)));
        }
    }
}

fn from_crop(ui: &mut Ui, words: &str, source: Option<String>) {
    let label = ui.label(RichText::new(words).small().weak());
    if let Some(source) = source {
        label.on_hover_text(source);
    }
}

fn stand(hand: &Hand<'_>, bed: &Bed) -> Option<Stand> {
    hand.desk.plan().bed(bed.id)?.stand
}

/// How it is put in the ground, germination, spare seed, end gap.
pub(super) fn seed(ui: &mut Ui, hand: &mut Hand<'_>, bed: &Bed, field: Id) {
    let (Some(planting), Some(stand)) = (&bed.planting, stand(hand, bed)) else {
        form::follows(ui, "choose a crop first");
        return;
    };
    let units = hand.desk.layout().units;
    let crop = catalogue_crop(bed);
    let seeds_per_plant = stand.seeds_per_plant.unwrap_or(1.0);
    let all = [
        ("the crop's usual way", None),
        ("seed", Some(Sowing::Seed { seeds_per_plant })),
        ("plants, sets or pieces", Some(Sowing::Plants)),
    ];
    let chosen = match planting.sowing {
        None => "the crop's usual way",
        Some(Sowing::Seed { .. }) => "seed",
        Some(Sowing::Plants) => "plants, sets or pieces",
        Some(other) => other.name(),
    };
    if let Some(sowing) = form::choices(ui, field.with("sowing"), "Put in as", chosen, &all) {
        change(hand, bed, BedChange::SetSowing(sowing));
    }
    if planting.sowing.is_none()
        && let Some(crop) = crop
    {
        from_crop(
            ui,
            &format!("{}, by the crop", crop.method.value.things()),
            Some(source(&crop.method)),
        );
    }
    if let Some(seeds_per_plant) = stand.seeds_per_plant {
        let shown = plain(seeds_per_plant);
        let read = |text: &str| {
            let wrong = || format!("“{text}” is not understood; write a number of 1 or more, such as 1.5");
            text.parse::<f64>()
                .ok()
                .filter(|number| *number >= 1.0 && number.is_finite())
                .ok_or_else(wrong)
        };
        let drilled = matches!(stand.sowing, Sowing::Seed { .. });
        let typed = drilled.then(|| form::field(ui, field.with("seeds"), "Seeds a plant", &shown, read));
        if let Some(seeds_per_plant) = typed.flatten() {
            change(hand, bed, BedChange::SetSowing(Some(Sowing::Seed { seeds_per_plant })));
        }
        if planting.sowing.is_none() {
            form::follows(ui, "good seeds for each plant that is to stand; the rest is thinned");
        } else if form::yours(ui, "use the crop's own") {
            change(hand, bed, BedChange::SetSowing(None));
        }
        let read = |text: &str| Fraction::parse_percent(text).map_err(|error| error.to_string());
        let germination = form::field(
            ui,
            field.with("germination"),
            "Germination",
            &stand.germination.show(),
            read,
        );
        if let Some(germination) = germination {
            change(hand, bed, BedChange::SetGermination(Some(germination)));
        }
        if planting.germination.is_some() {
            if form::yours(ui, "use the legal minimum") {
                change(hand, bed, BedChange::SetGermination(None));
            }
        } else {
            let least = crop.and_then(|crop| crop.least_germination.as_ref()).map(source);
            from_crop(
                ui,
                "the least the law lets seed of this kind be sold with; your packet or test goes first",
                least,
            );
        }
        if let Some(spare) = form::field(
            ui,
            field.with("spare seed"),
            "Seed on top",
            &planting.spare.show(),
            read,
        ) {
            change(hand, bed, BedChange::SetSpare(spare));
        }
    }
    end_gap(ui, hand, bed, field, stand.end_gap, planting.end_gap.is_some(), units);
}

fn end_gap(
    ui: &mut Ui,
    hand: &mut Hand<'_>,
    bed: &Bed,
    field: Id,
    in_force: Length,
    is_yours: bool,
    units: crate::quantity::Units,
) {
    if let Some(end_gap) = length_line::short(ui, field.with("end gap"), "End gap", in_force, units) {
        change(hand, bed, BedChange::SetEndGap(Some(end_gap)));
    }
    if is_yours {
        if form::yours(ui, "use half the in-row spacing") {
            change(hand, bed, BedChange::SetEndGap(None));
        }
    } else {
        form::follows(ui, "from a row's end to its first plant: half the in-row spacing");
    }
}

/// A number without zeros at its end.
fn plain(number: f64) -> String {
    let text = format!("{number:.2}");
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}
