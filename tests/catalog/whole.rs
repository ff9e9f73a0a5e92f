//! The catalogue is whole, and its numbers fit each other.

use quillet::catalog::{Catalog, Crop, CropId, Ends, Hardiness, Mark, PlantingMethod, RowMeasure};
use quillet::plan::Things;
use quillet::quantity::Length;

const IDS: [&str; 76] = [
    "sweet_corn",
    "popcorn",
    "field_corn",
    "sorghum_sweet",
    "tomato",
    "tomatillo",
    "pepper_bell",
    "pepper_hot",
    "eggplant",
    "potato",
    "sweetpotato",
    "bean_snap_bush",
    "bean_snap_pole",
    "bean_lima_bush",
    "bean_lima_pole",
    "bean_dry",
    "bean_yardlong",
    "bean_broad",
    "southern_pea",
    "pea_english",
    "pea_edible_pod",
    "edamame",
    "peanut",
    "okra",
    "cucumber",
    "cucumber_pickling",
    "squash_summer",
    "squash_winter",
    "pumpkin",
    "watermelon",
    "cantaloupe",
    "honeydew",
    "onion_seed",
    "onion_transplant",
    "onion_set",
    "onion_green",
    "garlic",
    "leek",
    "shallot",
    "chives",
    "carrot",
    "parsnip",
    "parsley",
    "celery",
    "celeriac",
    "dill",
    "cilantro",
    "beet",
    "chard",
    "spinach",
    "spinach_nz",
    "cabbage",
    "cabbage_chinese",
    "pak_choi",
    "broccoli",
    "cauliflower",
    "brussels_sprouts",
    "kohlrabi",
    "collard",
    "kale",
    "mustard",
    "arugula",
    "turnip_root",
    "turnip_greens",
    "rutabaga",
    "radish",
    "lettuce_leaf",
    "lettuce_head",
    "endive",
    "salsify",
    "artichoke",
    "sunflower",
    "asparagus",
    "rhubarb",
    "strawberry",
    "basil",
];

fn crops() -> &'static [Crop] {
    Catalog::built_in().crops()
}

#[test]
fn all_crops_are_there() {
    for id in IDS {
        assert!(Catalog::built_in().crop(&CropId(id.to_owned())).is_some(), "{id}");
    }
    assert_eq!(crops().len(), IDS.len());
}

#[test]
fn names_are_unlike_each_other() {
    for pair in crops().windows(2) {
        assert_ne!(pair[0].name, pair[1].name);
    }
}

#[test]
fn numbers_are_ones_the_thing_could_have() {
    for crop in crops() {
        let name = &crop.name;
        if let Some(rate) = &crop.field_seed {
            let pounds = |ends: &Ends<_>| -> [f64; 2] {
                let of = |value: quillet::quantity::MassPerArea| value.to_pounds_per_acre();
                [of(ends.low.value), of(ends.high.value)]
            };
            assert!(pounds(rate).iter().all(|rate| (0.25..=250.0).contains(rate)), "{name}");
        }
        if let Some(water) = &crop.water_use {
            assert!((0.2..=0.8).contains(&water.initial.value), "{name}");
            assert!((0.8..=1.25).contains(&water.middle.value), "{name}");
            assert!(
                water.initial.value <= water.middle.value,
                "{name}: it uses most when it is grown"
            );
            assert!(!water.row.is_empty());
        }
        if let Some(roots) = &crop.roots {
            assert!(roots.effective.value >= Length::metres(0.2), "{name}");
            assert!(roots.deepest.value <= Length::metres(2.0), "{name}");
            assert!((0.15..=0.7).contains(&roots.depletion.value.get()), "{name}");
        }
        if let Some(soil) = &crop.soil {
            let warmth = soil.least.as_ref().map(|least| least.value.to_fahrenheit());
            assert!(warmth.is_some_and(|least| (31.0..=66.0).contains(&least)), "{name}");
            // Crops of cold soil are not tender ones.
            if warmth.is_some_and(|least| least < 41.0) {
                assert!(
                    crop.hardiness
                        .as_ref()
                        .is_some_and(|class| class.value <= Hardiness::HalfHardy),
                    "{name}"
                );
            }
        }
        for amount in crop.buying.iter().chain(&crop.harvest) {
            assert!(!amount.what.is_empty() && amount.what != "None", "{name}");
            match &amount.measure {
                RowMeasure::Weight(ends) => {
                    assert!(ends.low.value.to_pounds_per_100_feet() > 0.005, "{name}");
                    assert!(ends.high.value.to_pounds_per_100_feet() <= 200.0, "{name}");
                }
                RowMeasure::Number(ends) => {
                    assert!(ends.low.value.to_per_100_feet() >= 20.0, "{name}");
                    assert!(ends.high.value.to_per_100_feet() <= 450.0, "{name}");
                }
            }
        }
        if let (Some(days), Some(weeks)) = (&crop.days_to_harvest, &crop.weeks_from_last_frost) {
            assert!((20..=250).contains(&days.low.value) && days.high.value <= 250, "{name}");
            assert!((-8..=3).contains(&weeks.low.value), "{name}");
            let tender = crop
                .hardiness
                .as_ref()
                .is_some_and(|class| class.value >= Hardiness::Tender);
            assert!(!tender || weeks.low.value >= -1, "{name} is planted into frost");
        }
    }
}

#[test]
fn what_is_set_out_by_number_fits_the_distance_in_the_row() {
    // One hundred feet at the closest and at the widest distance hold what tables tell to buy, with a tenth over for
    // losses, and a quarter less because some tables buy for wider rows than others plant.
    for crop in crops() {
        let Some(amount) = crop.buying.as_ref().filter(|_| !crop.method.value.is_sown()) else {
            continue;
        };
        let RowMeasure::Number(ends) = &amount.measure else {
            continue;
        };
        let most = Length::feet(100.0) / crop.in_row.as_ref().unwrap().low.value * 1.1;
        let least = Length::feet(100.0) / crop.in_row.as_ref().unwrap().high.value * 0.75;
        for number in [&ends.low, &ends.high] {
            let number = number.value.to_per_100_feet();
            assert!(
                (least..=most).contains(&number),
                "{}: {number} of {least} to {most}",
                crop.name
            );
        }
    }
}

#[test]
fn stages_add_up_but_for_four_that_the_table_has_so() {
    let mut slips = Vec::new();
    for crop in crops() {
        for place in crop.stages.iter().flat_map(|stages| &stages.lengths.value) {
            assert!((30..=370).contains(&place.total()), "{}", crop.name);
            assert!(!place.region.is_empty() && !place.planted.is_empty());
            let own = crop
                .stages
                .as_ref()
                .is_some_and(|stages| stages.lengths.mark == Mark::ReadInReprint);
            if let Some(total) = place.printed_total.filter(|_| own) {
                slips.push((crop.id.0.as_str(), place.total(), total));
            }
        }
    }
    slips.sort_unstable();
    // FAO Irrigation and Drainage Paper 56, Table 11, as transcribed.
    assert_eq!(
        slips,
        [
            ("sorghum_sweet", 125, 130),
            ("sorghum_sweet", 130, 140),
            ("southern_pea", 100, 110),
            ("sweet_corn", 100, 110),
        ]
    );
}

#[test]
fn crops_with_no_legal_minimum_are_those_the_list_lacks() {
    let without: Vec<&str> = IDS
        .into_iter()
        .filter(|id| {
            let crop = Catalog::built_in().crop(&CropId((*id).to_owned()));
            crop.is_some_and(|crop| crop.least_germination.is_none())
        })
        .collect();
    assert_eq!(
        without,
        [
            "popcorn",
            "field_corn",
            "sorghum_sweet",
            "potato",
            "sweetpotato",
            "peanut",
            "onion_set",
            "garlic",
            "shallot",
            "cilantro",
            "arugula",
            "sunflower",
            "strawberry",
            "basil",
        ]
    );
}

#[test]
fn ways_of_planting_are_those_of_the_crop() {
    for (id, method, things) in [
        ("sweetpotato", PlantingMethod::Slip, "slips"),
        ("garlic", PlantingMethod::Clove, "cloves"),
        ("shallot", PlantingMethod::Bulb, "bulbs"),
        ("asparagus", PlantingMethod::Crown, "crowns"),
        ("strawberry", PlantingMethod::BareRoot, "bare-root plants"),
        ("onion_transplant", PlantingMethod::Transplant, "seeds"),
    ] {
        let crop = Catalog::built_in().crop(&CropId(id.to_owned())).unwrap();
        assert_eq!(crop.method.value, method, "{id}");
        assert_eq!(Things::on_shelf(method).name(), things);
    }
    let also = |id: &str| {
        Catalog::built_in()
            .crop(&CropId(id.to_owned()))
            .unwrap()
            .also_method
            .clone()
    };
    assert_eq!(
        also("cucumber").map(|also| also.value),
        Some(PlantingMethod::Transplant)
    );
    assert_eq!(also("artichoke").map(|also| also.value), Some(PlantingMethod::Division));
    assert_eq!(also("carrot"), None);
}
