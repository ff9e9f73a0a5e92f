//! The catalogue that comes with the program.

use quillet::catalog::{Catalog, Crop, CropId, Hilling, Mark, PlantingMethod};
use quillet::plan::CropBook;
use quillet::quantity::{Length, Units};

fn crop(id: &str) -> Option<&'static Crop> {
    Catalog::built_in().crop(&CropId(id.to_owned()))
}

#[test]
fn it_reads_without_a_problem() {
    let catalog = Catalog::built_in();
    assert!(catalog.problems().is_empty(), "{:?}", catalog.problems());
    assert_eq!(catalog.crops().len(), 76);
    assert_eq!(catalog.materials().len(), 46);
}

#[test]
fn entries_are_sorted_and_found_by_part_of_their_name() {
    let catalog = Catalog::built_in();
    assert!(catalog.crops().is_sorted_by_key(|crop| &crop.name));
    assert!(catalog.materials().is_sorted_by_key(|material| &material.name));
    let book = CropBook::default();
    let found = |part: &str| {
        book.find(part)
            .iter()
            .map(|crop| crop.id.0.as_str())
            .collect::<Vec<_>>()
    };
    assert_eq!(found("CORN"), ["field_corn", "popcorn", "sweet_corn"]);
    assert_eq!(found("bush bean"), ["bean_lima_bush", "bean_snap_bush"]);
    assert_eq!(found("pepo"), ["pumpkin", "squash_summer", "squash_winter"]);
    assert_eq!(found("Zucchini"), ["squash_summer"]);
    assert_eq!(found("brassica juncea"), ["mustard"]);
    assert_eq!(found("").len(), 76);
    assert!(found("no such crop").is_empty());
}

#[test]
fn spacings_are_ones_a_grower_could_use() {
    for crop in Catalog::built_in().crops() {
        let inches = |length: Length| length.to_inches();
        let name = &crop.name;
        assert!(
            (6.0..=144.0).contains(&inches(crop.row_spacing.as_ref().unwrap().low.value)),
            "{name}: rows"
        );
        assert!(
            inches(crop.row_spacing.as_ref().unwrap().high.value) <= 144.0,
            "{name}: rows"
        );
        assert!(
            (0.5..=72.0).contains(&inches(crop.in_row_watered.as_ref().unwrap().value)),
            "{name}: in-row"
        );
        assert!(
            crop.in_row_watered.as_ref().unwrap().value <= crop.in_row_dry.as_ref().unwrap().value,
            "{name}: in-row"
        );
        assert!(
            crop.in_row
                .as_ref()
                .unwrap()
                .contains(&crop.in_row_watered.as_ref().unwrap().value),
            "{name}: in-row"
        );
        assert!(
            crop.in_row
                .as_ref()
                .unwrap()
                .contains(&crop.in_row_dry.as_ref().unwrap().value),
            "{name}: in-row"
        );
        assert!(
            (0.0..=6.5).contains(&inches(crop.depth.as_ref().unwrap().high.value)),
            "{name}: depth"
        );
        assert!(
            crop.height
                .as_ref()
                .is_none_or(|height| (0.3..=15.0).contains(&height.value.to_feet())),
            "{name}: height"
        );
        assert!(
            crop.seeds_per_ounce().is_none_or(|seeds| (10.0..=1e6).contains(&seeds)),
            "{name}: seeds"
        );
        assert!(
            crop.least_germination
                .as_ref()
                .is_none_or(|least| least.value.get() >= 0.4),
            "{name}: germination"
        );
        assert!(
            !crop.botanical.is_empty() && crop.family.ends_with("aceae"),
            "{name}: names"
        );
        assert!(
            crop.id.0.bytes().all(|b| b.is_ascii_lowercase() || b == b'_'),
            "{name}: id"
        );
    }
}

#[test]
fn sweet_corn_stands_as_growers_say() {
    // Common practice, no source: about 6 in over buried tape with all the water it asks for; 8 to 12 in where water
    // may run short; rows 3 ft apart.
    let corn = crop("sweet_corn").expect("the catalogue has sweet corn");
    assert_eq!(
        corn.in_row_watered.as_ref().unwrap().value.show_short(Units::Customary),
        "6 in"
    );
    assert_eq!(corn.in_row_watered.as_ref().unwrap().mark, Mark::CommonPractice);
    assert_eq!(
        corn.in_row_dry.as_ref().unwrap().value.show_short(Units::Customary),
        "10 in"
    );
    assert!(corn.row_spacing.as_ref().unwrap().contains(&Length::feet(3.0)));
    assert_eq!(corn.method.value, PlantingMethod::Drilled);
    assert_eq!(corn.hilled.as_ref().map(|hilled| hilled.value), Some(Hilling::Optional));
    // U.S. Code of Federal Regulations, Title 7, section 201.31: sweet corn 75 percent.
    assert_eq!(
        corn.least_germination
            .as_ref()
            .map(|least| least.value.show())
            .as_deref(),
        Some("75 %")
    );
    // Texas Vegetable Grower's Handbook, Table 2: 120 to 180 seeds to the ounce.
    assert!(corn.seeds_per_ounce().is_some_and(|seeds| (seeds - 150.0).abs() < 1e-9));
}

#[test]
fn legal_germination_stands_as_published() {
    // U.S. Code of Federal Regulations, Title 7, section 201.31.
    for (id, percent) in [
        ("tomato", 75.0),
        ("pepper_bell", 55.0),
        ("bean_snap_bush", 70.0),
        ("pea_english", 80.0),
        ("carrot", 55.0),
        ("cabbage", 75.0),
        ("squash_summer", 75.0),
        ("pumpkin", 75.0),
        ("lettuce_head", 80.0),
    ] {
        let least = crop(id)
            .and_then(|crop| crop.least_germination.as_ref())
            .map(|least| least.value.to_percent());
        assert!(
            least.is_some_and(|least| (least - percent).abs() < 1e-9),
            "{id}: {least:?}"
        );
    }
}

#[test]
fn crops_set_out_as_plants_are_not_sown() {
    for (id, method) in [
        ("tomato", PlantingMethod::Transplant),
        ("potato", PlantingMethod::SeedPiece),
        ("onion_set", PlantingMethod::Set),
    ] {
        let crop = crop(id).expect("the catalogue has it");
        assert_eq!(crop.method.value, method);
        assert!(crop.seeds_per_plant.is_none());
    }
}
