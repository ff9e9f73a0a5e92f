//! How a bed's crop is put in the ground, with what each way asks for and what follows from it.

use egui::{Id, RichText, Ui};

use super::planting::{change, crop_of, from_crop, source, stand};
use super::{Hand, length_line, raised};
use crate::agronomy;
use crate::app::form;
use crate::app::seed_words::{plain, read_part};
use crate::app::theme;
use crate::catalog::{Crop, PlantingMethod};
use crate::layout::{Bed, BedChange, Planting, Raised, Sowing};
use crate::plan::{BedPlan, GerminationFrom, Stand};
use crate::quantity::{Fraction, Length, Mass, MassUnit, Units, count};

/// Way, what it asks for, germination, what is added on top, and what follows.
pub(super) fn show(ui: &mut Ui, hand: &mut Hand<'_>, bed: &Bed, field: Id) {
    let (Some(planting), Some(stand)) = (&bed.planting, stand(hand, bed)) else {
        form::follows(ui, "choose a crop first");
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
        let words = format!("{}, the crop's usual way", crop.method.value.things());
        from_crop(ui, &words, Some(source(&crop.method)));
    }
    asked(ui, hand, bed, planting, &stand, field);
    if stand.sowing.takes_seed() {
        comes_up(ui, hand, bed, planting, &stand, crop, field);
    }
    let read = |text: &str| Fraction::parse_percent(text).map_err(|error| error.to_string());
    let label = if stand.sowing.takes_seed() {
        "Seed on top"
    } else {
        "Spare"
    };
    if let Some(spare) = form::field(ui, field.with("spare seed"), label, &planting.spare.show(), read) {
        change(hand, bed, BedChange::SetSpare(spare));
    }
    end_gap(ui, hand, bed, field, stand.end_gap, planting.end_gap.is_some(), units);
    if let Some(plan) = hand.desk.plan().bed(bed.id).cloned() {
        outcome(ui, &plan, &stand, units);
    }
}

/// The ways there are, each as it begins when it is chosen.
fn ways(stand: &Stand) -> [Sowing; 6] {
    let seeds = stand.seeds_per_plant.filter(|seeds| *seeds >= 1.0).unwrap_or(1.0);
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
    let ways = ways(stand).map(|sowing| (way_words(sowing), sowing));
    let picked = form::choices(ui, field.with("sowing"), "Put in as", way_words(stand.sowing), &ways);
    if let Some(sowing) = picked.filter(|sowing| planting.sowing != Some(*sowing)) {
        change(hand, bed, BedChange::SetSowing(Some(sowing)));
    }
}

/// What the way asks for.
fn asked(ui: &mut Ui, hand: &mut Hand<'_>, bed: &Bed, planting: &Planting, stand: &Stand, field: Id) {
    let set = |hand: &mut Hand<'_>, sowing| change(hand, bed, BedChange::SetSowing(Some(sowing)));
    let number = |ui: &mut Ui, name: &str, label: &str, value: u16| {
        let read = |text: &str| form::read_whole(text, 1, 1000);
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
            if let Some(seeds_per_plant) = form::field(ui, field.with("seeds"), "Seeds a plant", &shown, read) {
                set(hand, Sowing::Seed { seeds_per_plant });
            }
            form::follows(ui, "good seeds for each plant that is to stand; the rest is thinned");
        }
        Sowing::Dropped { seeds_per_place } => {
            if let Some(seeds_per_place) = number(ui, "dropped", "Seeds a place", seeds_per_place) {
                set(hand, Sowing::Dropped { seeds_per_place });
            }
            form::follows(ui, "thinned to one at each place");
        }
        Sowing::Hills {
            seeds_per_hill,
            plants_per_hill,
        } => {
            if let Some(seeds_per_hill) = number(ui, "hill seeds", "Seeds a hill", seeds_per_hill) {
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
            form::follows(ui, "left standing in each; “in the row” is from hill to hill");
        }
        Sowing::Raised(raised) => {
            if let Some(raised) = raised::show(ui, raised, field) {
                set(hand, Sowing::Raised(raised));
            }
        }
        Sowing::Pieces { .. } => pieces(ui, hand, bed, planting, field),
        Sowing::Plants => {
            let words = match crop_of(hand, bed).map(|crop| crop.method.value) {
                Some(PlantingMethod::Slip) => "slips, bought or from your own roots; one in each place",
                Some(PlantingMethod::Crown) => "crowns, bought; one in each place",
                Some(PlantingMethod::BareRoot) => "bare-root plants, bought; one in each place",
                Some(PlantingMethod::Division) => "divisions of old plants; one in each place",
                _ => "bought, or from elsewhere; one in each place",
            };
            form::follows(ui, words);
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
    let of_crop = crop.and_then(|crop| crop.seed_weight.as_ref());
    let in_force = own.or(of_crop.map(|weight| weight.value));
    let shown = in_force.map_or_else(String::new, |mass| mass.show_seed(units));
    let unit = match units {
        Units::Customary => MassUnit::Ounces,
        Units::Metric => MassUnit::Grams,
    };
    let read = |text: &str| match Mass::parse_with(text, unit) {
        Ok(mass) if mass > Mass::ZERO => Ok(mass),
        Ok(_) => Err("One weighs more than nothing; write 2 oz, or 50 g".to_owned()),
        Err(error) => Err(error.to_string()),
    };
    if let Some(each) = form::field(ui, field.with("each"), "One weighs", &shown, read) {
        change(
            hand,
            bed,
            BedChange::SetSowing(Some(Sowing::Pieces { each: Some(each) })),
        );
    }
    match (own, of_crop) {
        (Some(_), _) => form::follows(ui, "set, clove, bulb or seed piece; yours"),
        (None, Some(weight)) => from_crop(ui, "set, clove or piece, by the crop", Some(source(weight))),
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
    let shown = stand.germination.show();
    if let Some(germination) = form::field(ui, field.with("germination"), "Germination", &shown, read_part) {
        change(hand, bed, BedChange::SetGermination(Some(germination)));
    }
    match stand.germination_from {
        GerminationFrom::Grower => {
            let way_back = if crop.is_some_and(|crop| crop.germination.is_some()) {
                "use yours of the crop book"
            } else if crop.is_some_and(|crop| crop.least_germination.is_some()) {
                "use the legal minimum"
            } else {
                "count on every seed"
            };
            if form::yours(ui, way_back) {
                change(hand, bed, BedChange::SetGermination(None));
            }
        }
        GerminationFrom::CropBook => {
            form::follows(ui, "yours, from the crop book; lots on the shelf go by their own");
        }
        GerminationFrom::FederalStandard => {
            let least = crop.and_then(|crop| crop.least_germination.as_ref()).map(source);
            from_crop(
                ui,
                "of seed to buy: the least the law lets it be sold with; lots on the shelf go by their own",
                least,
            );
        }
        GerminationFrom::NotKnown => form::follows(ui, "no legal minimum is known; give what the packet says"),
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
            "of those that would come up in a test, the part that gets through cold, crust and birds",
        );
    }
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

/// What the bed takes: places, seeds or pieces, plants before and after thinning, trays and the day to sow.
fn outcome(ui: &mut Ui, plan: &BedPlan, stand: &Stand, units: Units) {
    let totals = &plan.totals;
    if totals.plants == 0 {
        return;
    }
    ui.add_space(4.0);
    let strong = |ui: &mut Ui, words: String| ui.label(RichText::new(words).font(theme::bold(13.0)));
    let per_place = u64::from(stand.sowing.plants_per_place().max(1));
    let weight = totals
        .seed_mass
        .map_or_else(String::new, |mass| format!(", {}", mass.show_seed(units)));
    match stand.sowing {
        Sowing::Raised(raised) => {
            strong(
                ui,
                format!("{} cells, {} seeds{weight}", count(totals.cells), count(totals.seeds)),
            );
            let mut words = Vec::new();
            if let Some(trays) = raised
                .cells_per_tray
                .and_then(|cells| agronomy::trays_needed(totals.cells, cells).ok())
            {
                words.push(format!(
                    "{} {}",
                    count(trays),
                    if trays == 1 { "tray" } else { "trays" }
                ));
            }
            if let Some(day) = raised
                .set_out
                .zip(raised.days_in_tray)
                .and_then(|(out, days)| agronomy::sow_on(out, days))
            {
                words.push(format!("sow on {}", day.strftime("%-d %B %Y")));
            }
            words.push(format!("{} plants to set out", count(totals.plants)));
            form::follows(ui, words.join(" · "));
        }
        Sowing::Pieces { .. } | Sowing::Plants => {
            let things = plan.crop.as_ref().map_or("pieces", |crop| crop.method.things());
            let things = match stand.sowing {
                Sowing::Plants if !matches!(things, "slips" | "crowns" | "divisions" | "bare-root plants") => "plants",
                Sowing::Pieces { .. } if matches!(things, "seeds" | "plants") => "pieces",
                _ => things,
            };
            strong(ui, format!("{} {things}{weight}", count(totals.set_out)));
            form::follows(ui, format!("for {} places", count(totals.plants)));
        }
        Sowing::Seed { .. } | Sowing::Dropped { .. } | Sowing::Hills { .. } => {
            strong(ui, format!("{} seeds{weight}", count(totals.seeds)));
            let places = totals.plants / per_place;
            let before = stand
                .seeds_per_plant
                .and_then(|seeds| agronomy::plants_before_thinning(totals.plants, seeds).ok());
            let mut words = vec![if matches!(stand.sowing, Sowing::Hills { .. }) {
                format!("{} hills", count(places))
            } else {
                format!("{} places", count(places))
            }];
            words.extend(before.map(|before| format!("{} plants before thinning", count(before))));
            words.push(format!("{} after", count(totals.plants)));
            form::follows(ui, words.join(" · "));
        }
    }
}
