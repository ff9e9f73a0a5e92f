//! How a bed's crop is put in the ground, and what each way asks for.

use egui::{Id, Ui};

use super::planting::{change, crop_of, from_crop, stand};
use super::{Hand, length_line, outcome, raised};
use crate::app::form;
use crate::app::seed_words::{plain, read_part, read_spare, read_weight_of_one};
use crate::catalog::{Catalog, Crop, Mark, PlantingMethod};
use crate::layout::limits::MOST_SEEDS_PER_PLANT;
use crate::layout::{Bed, BedChange, Planting, Raised, Sowing};
use crate::plan::{GerminationFrom, Stand, Things};
use crate::quantity::{Length, Units};

/// Way, what it asks for, germination, what is added on top, and what follows.
pub(super) fn show(ui: &mut Ui, hand: &mut Hand<'_>, bed: &Bed, field: Id) {
    let Some(planting) = &bed.planting else {
        form::follows(ui, "choose a crop first");
        return;
    };
    let Some(stand) = stand(hand, bed) else {
        form::follows(
            ui,
            "give the spacing under “In the row” first: without it no place can be counted",
        );
        return;
    };
    let units = hand.desk.layout().units;
    let crop = crop_of(hand, bed);
    way(ui, hand, bed, planting, &stand, field);
    if planting.sowing.is_some() {
        if form::yours(ui, "use the crop's usual way") {
            change(hand, bed, BedChange::SetSowing(None));
        }
    } else if let Some(crop) = crop {
        let words = format!("{}, the crop's usual way", usual_things(crop).name());
        from_crop(ui, &words, Some(Catalog::built_in().cite_value(&crop.method)));
    }
    asked(ui, hand, bed, planting, &stand, field);
    if stand.sowing.takes_seed() {
        comes_up(ui, hand, bed, planting, &stand, crop, field);
    }
    let label = if stand.sowing.takes_seed() {
        "Spare seed".to_owned()
    } else {
        format!("Spare {}", things(hand, bed).name())
    };
    if let Some(spare) = form::field(ui, field.with("spare seed"), &label, &planting.spare.show(), read_spare) {
        change(hand, bed, BedChange::SetSpare(spare));
    }
    end_gap(ui, hand, bed, field, stand.end_gap, planting.end_gap.is_some(), units);
    if let Some(plan) = hand.desk.plan().bed(bed.id).cloned() {
        outcome::show(ui, hand, bed, &plan, &stand);
    }
}

/// What the crop's usual way puts in the ground.
const fn usual_things(crop: &Crop) -> Things {
    match crop.method.value {
        PlantingMethod::Transplant => Things::Plants,
        method => Things::on_shelf(method),
    }
}

/// The ways there are, each as it begins when it is chosen.
fn ways(stand: &Stand, crop: Option<&Crop>) -> [Sowing; 6] {
    let of_book = crop
        .and_then(|crop| crop.seeds_per_plant.as_ref())
        .map(|seeds| seeds.value);
    let seeds = stand
        .seeds_per_plant
        .or(of_book)
        .filter(|seeds| *seeds >= 1.0)
        .unwrap_or(1.0);
    let whole = seeds.ceil().min(9.0) as u16;
    let begun = |sowing: Sowing| {
        // The way in force stays as it is.
        if std::mem::discriminant(&sowing) == std::mem::discriminant(&stand.sowing) {
            stand.sowing
        } else {
            sowing
        }
    };
    [
        Sowing::Seed { seeds_per_plant: seeds },
        Sowing::Dropped { seeds_per_place: whole },
        Sowing::Hills {
            seeds_per_hill: 5,
            plants_per_hill: 2,
        },
        Sowing::Raised(Raised::PLAIN),
        Sowing::Pieces { each: None },
        Sowing::Plants,
    ]
    .map(begun)
}

const fn way_words(sowing: Sowing) -> &'static str {
    match sowing {
        Sowing::Seed { .. } => "drilled and thinned",
        Sowing::Dropped { .. } => "dropped at spacing",
        Sowing::Hills { .. } => "sown in hills",
        Sowing::Raised(_) => "raised in trays",
        Sowing::Pieces { .. } => "sets or pieces",
        Sowing::Plants => "plants or slips",
    }
}

fn way(ui: &mut Ui, hand: &mut Hand<'_>, bed: &Bed, planting: &Planting, stand: &Stand, field: Id) {
    let ways = ways(stand, crop_of(hand, bed)).map(|sowing| (way_words(sowing), sowing));
    let picked = form::choices(ui, field.with("sowing"), "Put in as", way_words(stand.sowing), &ways);
    if let Some(sowing) = picked.filter(|sowing| planting.sowing != Some(*sowing)) {
        change(hand, bed, BedChange::SetSowing(Some(sowing)));
    }
}

/// What the way asks for.
fn asked(ui: &mut Ui, hand: &mut Hand<'_>, bed: &Bed, planting: &Planting, stand: &Stand, field: Id) {
    let set = |hand: &mut Hand<'_>, sowing| change(hand, bed, BedChange::SetSowing(Some(sowing)));
    let number = |ui: &mut Ui, name: &str, label: &str, value: u16| {
        let read = |text: &str| form::read_whole(text, 1, MOST_SEEDS_PER_PLANT as i32);
        form::field(ui, field.with(name), label, &value.to_string(), read).and_then(|value| u16::try_from(value).ok())
    };
    match stand.sowing {
        Sowing::Seed { seeds_per_plant } => {
            let read = |text: &str| {
                let wrong = || format!("“{text}” is not understood; write a number of 1 or more, such as 1.5");
                text.parse::<f64>()
                    .ok()
                    .filter(|number| *number >= 1.0 && number.is_finite())
                    .ok_or_else(wrong)
            };
            let shown = plain(seeds_per_plant);
            if let Some(seeds_per_plant) = form::field(ui, field.with("seeds"), "Good seeds", &shown, read) {
                set(hand, Sowing::Seed { seeds_per_plant });
            }
            form::follows(ui, "that come up, for each plant that is to stand; the rest is thinned");
        }
        Sowing::Dropped { seeds_per_place } => {
            if let Some(seeds_per_place) = number(ui, "dropped", "Good seeds", seeds_per_place) {
                set(hand, Sowing::Dropped { seeds_per_place });
            }
            form::follows(
                ui,
                "that come up, for each place, and are thinned to one; what to drop for them stands below",
            );
        }
        Sowing::Hills {
            seeds_per_hill,
            plants_per_hill,
        } => {
            if let Some(seeds_per_hill) = number(ui, "hill seeds", "Good seeds", seeds_per_hill) {
                set(
                    hand,
                    Sowing::Hills {
                        seeds_per_hill,
                        plants_per_hill,
                    },
                );
            }
            if let Some(plants_per_hill) = number(ui, "hill plants", "Plants a hill", plants_per_hill) {
                set(
                    hand,
                    Sowing::Hills {
                        seeds_per_hill,
                        plants_per_hill,
                    },
                );
            }
            form::follows(
                ui,
                "good seeds come up, so many plants are left standing in each hill; “in the row” is from hill to hill",
            );
        }
        Sowing::Raised(raised) => {
            raised::show(ui, hand, bed, planting, raised, field);
        }
        Sowing::Pieces { .. } => pieces(ui, hand, bed, planting, field),
        Sowing::Plants => {
            let from = match things(hand, bed) {
                Things::Slips => "slips, bought or from your own roots",
                Things::Crowns => "crowns, bought",
                Things::BareRoot => "bare-root plants, bought",
                Things::Divisions => "divisions of old plants",
                _ => "bought, or from elsewhere",
            };
            form::follows(ui, format!("{from}; one in each place"));
        }
    }
}

/// The weight of one set, clove or piece.
fn pieces(ui: &mut Ui, hand: &mut Hand<'_>, bed: &Bed, planting: &Planting, field: Id) {
    let units = hand.desk.layout().units;
    let own = match planting.sowing {
        Some(Sowing::Pieces { each }) => each,
        _ => None,
    };
    let crop = crop_of(hand, bed);
    // Of a crop that is usually sown the book has the weight of a seed, which says nothing of a set.
    let of_crop = crop
        .filter(|crop| Things::on_shelf(crop.method.value) != Things::Seeds)
        .and_then(|crop| crop.seed_weight.as_ref());
    let in_force = own.or(of_crop.map(|weight| weight.value));
    let shown = in_force.map_or_else(String::new, |mass| mass.show_seed(units));
    let read = |text: &str| read_weight_of_one(text, units);
    if let Some(each) = form::field(ui, field.with("each"), "One weighs", &shown, read) {
        change(
            hand,
            bed,
            BedChange::SetSowing(Some(Sowing::Pieces { each: Some(each) })),
        );
    }
    match (own, of_crop) {
        (Some(_), _) => form::follows(ui, "set, clove, bulb or seed piece; yours"),
        (None, Some(weight)) => from_crop(
            ui,
            "set, clove or piece, by the crop",
            Some(Catalog::built_in().cite_value(weight)),
        ),
        (None, None) => form::follows(ui, "set, clove or piece; give it, and their weight is counted"),
    }
}

/// Germination and field emergence.
fn comes_up(
    ui: &mut Ui,
    hand: &mut Hand<'_>,
    bed: &Bed,
    planting: &Planting,
    stand: &Stand,
    crop: Option<&Crop>,
    field: Id,
) {
    let shown = match stand.germination_from {
        GerminationFrom::NotKnown => String::new(),
        _ => stand.germination.show(),
    };
    if let Some(germination) = form::field(ui, field.with("germination"), "Germination", &shown, read_part) {
        change(hand, bed, BedChange::SetGermination(Some(germination)));
    }
    match stand.germination_from {
        GerminationFrom::Grower => {
            let way_back = if crop.is_some_and(|crop| crop.germination.is_some()) {
                "use yours of the crop book"
            } else if crop.is_some_and(|crop| crop.least_germination.is_some()) {
                "use the federal standard"
            } else {
                "leave it open"
            };
            if form::yours(ui, way_back) {
                change(hand, bed, BedChange::SetGermination(None));
            }
        }
        GerminationFrom::CropBook => {
            form::follows(ui, "yours, from the crop book; lots on the shelf go by their own");
        }
        GerminationFrom::FederalStandard => {
            let least = crop
                .and_then(|crop| crop.least_germination.as_ref())
                .map(|least| Catalog::built_in().cite_value(least));
            from_crop(
                ui,
                "of seed to buy: the federal standard, and a packet under it must say so; lots on the shelf go by their own",
                least,
            );
        }
        GerminationFrom::NotKnown => form::wrong(
            ui,
            "not known, and there is no federal standard for this kind; only good seeds are counted, so it takes more than \
             is said. Type what the packet or your test says, here or in the crop book",
        ),
    }
    if matches!(stand.sowing, Sowing::Raised(_)) {
        return;
    }
    let shown = stand.field_emergence.show();
    if let Some(part) = form::field(ui, field.with("emergence"), "In the field", &shown, read_part) {
        change(hand, bed, BedChange::SetFieldEmergence(Some(part)));
    }
    if planting.field_emergence.is_some() {
        if form::yours(ui, "count on all of them") {
            change(hand, bed, BedChange::SetFieldEmergence(None));
        }
    } else {
        form::follows(
            ui,
            format!(
                "all that would come up in a test are counted on until you say less ({}); cold, crust and birds take some \
                 of them",
                Mark::CommonPractice.words()
            ),
        );
    }
}

/// What is put in the bed's places.
fn things(hand: &Hand<'_>, bed: &Bed) -> Things {
    let plan = hand.desk.plan().bed(bed.id);
    plan.and_then(|plan| plan.things()).unwrap_or(Things::Plants)
}

fn end_gap(ui: &mut Ui, hand: &mut Hand<'_>, bed: &Bed, field: Id, in_force: Length, is_yours: bool, units: Units) {
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
