//! What is wrong with the shelf, with packets, and with the grower's own crops.

use std::collections::BTreeSet;

use super::check::{Found, Problem, subject};
use super::document::Layout;
use super::item::Item;
use super::limits::{self, SEASONS};
use super::own::{OwnCrop, OwnCultivar, OwnStart, OwnValues};
use super::own_limits;
use super::shelf::{LotGermination, PacketList, SeedLot, cultivar_key};
use crate::catalog::CropId;

/// What is wrong with a lot of seed.
pub(super) fn check_lot(lot: &SeedLot) -> Vec<Problem> {
    let name = match lot.cultivar.trim() {
        "" => lot.crop.0.clone(),
        cultivar => format!("{cultivar} ({})", lot.crop.0),
    };
    let mut found = Found::about(Item::Lot(lot.id), &subject(&name, "A lot of seed"));
    found.value(limits::name("the crop", &lot.crop.0));
    found.value(limits::words("the cultivar", &lot.cultivar));
    let (first, last) = (f64::from(*SEASONS.start()), f64::from(*SEASONS.end()));
    found.value(limits::range("the year", f64::from(lot.year), first, last));
    found.value(limits::seed_amount("the amount", lot.amount, limits::Least::Nothing));
    found.value(match lot.germination {
        LotGermination::NotKnown => Ok(()),
        LotGermination::Tag(part) => limits::germination(part),
        LotGermination::OwnTest { came_up, of, .. } => limits::germination_test(came_up, of),
    });
    found.problems
}

/// What is wrong with the packets of a cultivar.
pub(super) fn check_packets(list: &PacketList) -> Vec<Problem> {
    let mut found = Found::about(Item::Layout, &format!("Packets of {}", subject(&list.crop.0, "a crop")));
    found.value(limits::name("the crop", &list.crop.0));
    found.value(limits::words("the cultivar", &list.cultivar));
    found.value(limits::packet_count(list.sizes.len()));
    for packet in &list.sizes {
        let what = "what a packet holds";
        found.value(limits::seed_amount(what, packet.amount, limits::Least::Something));
        if let Some(price) = packet.price {
            found.value(limits::price(price));
        }
    }
    found.problems
}

/// What is wrong with an own crop by itself.
pub(super) fn check_own_crop(crop: &OwnCrop) -> Vec<Problem> {
    let name = if crop.name.trim().is_empty() {
        &crop.id.0
    } else {
        &crop.name
    };
    let mut found = Found::about(Item::Layout, &subject(name, "An own crop"));
    found.value(limits::name("its id", &crop.id.0));
    match &crop.start {
        OwnStart::Crop(based_on) => found.value(limits::name("the crop it is based on", &based_on.0)),
        OwnStart::Blank(kind) => {
            found.value(limits::words("its botanical name", &kind.botanical));
            found.value(limits::words("its family", &kind.family));
            found.value(own_limits::way_is_known(&crop.values));
        }
    }
    found.value(limits::words("its name", &crop.name));
    if !crop.is_over_catalogue() {
        found.value(limits::name("its name", &crop.name));
    }
    check_values(&mut found, &crop.values);
    found.problems
}

/// What is wrong with an own cultivar by itself.
pub(super) fn check_cultivar(cultivar: &OwnCultivar) -> Vec<Problem> {
    let mut found = Found::about(Item::Layout, &subject(&cultivar.name, "A cultivar"));
    found.value(limits::name("its name", &cultivar.name));
    found.value(limits::name("the crop", &cultivar.crop.0));
    check_values(&mut found, &cultivar.values);
    found.problems
}

fn check_values(found: &mut Found, values: &OwnValues) {
    for (what, length) in [
        ("the row spacing", values.row_spacing),
        ("the in-row spacing with water", values.in_row_watered),
        ("the in-row spacing where water may run short", values.in_row_dry),
        ("the depth", values.depth),
        ("the height", values.height),
    ] {
        if let Some(length) = length {
            found.value(limits::spacing(what, length));
        }
    }
    if let Some(weight) = values.seed_weight {
        found.value(limits::one_seed(weight));
    }
    if let Some(seeds) = values.seeds_per_plant {
        found.value(limits::seeds_per_plant(seeds));
    }
    if let Some(part) = values.germination {
        found.value(limits::germination(part));
    }
    if let Some(years) = values.seed_keeps_years {
        found.value(own_limits::years_kept(years));
    }
    if let Some(days) = values.days_to_harvest {
        found.value(limits::days(days));
    }
    if let Some(harvest) = values.harvest {
        found.value(own_limits::own_harvest(harvest));
    }
    if let Some(nitrogen) = values.season_nitrogen {
        found.value(own_limits::season_nitrogen(nitrogen));
    }
}

/// Two own crops, two cultivars of a crop, or two lists of packets of one name; with each, words that stand in a file
/// where the second one does.
pub(super) fn check_twice(layout: &Layout) -> Vec<(Problem, String)> {
    let mut problems = Vec::new();
    let mut twice = |what: String, words: String| {
        let problem = Problem {
            about: Item::Layout,
            what,
            hint: "Give one of them another name, or take it away.".to_owned(),
        };
        problems.push((problem, words));
    };
    let mut ids = BTreeSet::new();
    let mut names = BTreeSet::new();
    for crop in &layout.own_crops {
        let id = &crop.id.0;
        if !ids.insert(id) {
            twice(format!("Two own crops have the id \"{id}\"."), format!("id: {id:?}"));
        }
        let name = crop.name.trim();
        if !name.is_empty() && !names.insert(name.to_lowercase()) {
            twice(
                format!("Two crops are named \"{name}\"."),
                format!("name: {:?}", crop.name),
            );
        }
    }
    let mut cultivars: BTreeSet<(&CropId, String)> = BTreeSet::new();
    for cultivar in &layout.cultivars {
        if !cultivars.insert((&cultivar.crop, cultivar_key(&cultivar.name))) {
            let (crop, name) = (&cultivar.crop.0, cultivar.name.trim());
            let what = format!("Two cultivars of {crop} are named \"{name}\".");
            twice(what, format!("name: {:?}", cultivar.name));
        }
    }
    let mut lists = BTreeSet::new();
    for list in &layout.packets {
        if !lists.insert((&list.crop, cultivar_key(&list.cultivar), list.form)) {
            let crop = &list.crop.0;
            let (whose, words) = match list.cultivar.trim() {
                "" => (crop.clone(), format!("crop: {crop:?}")),
                cultivar => (format!("{cultivar} ({crop})"), format!("cultivar: {:?}", list.cultivar)),
            };
            twice(format!("There are two lists of packets of {whose}."), words);
        }
    }
    problems
}
