//! Cells of the catalogue against the tables they come from.

use quillet::catalog::{Catalog, Crop, CropId, Hardiness, NitrogenNeed, RowMeasure};
use quillet::quantity::{Length, Mass, Units};

/// The crop of this id; another one would fail on every number.
fn crop(id: &str) -> &'static Crop {
    let catalog = Catalog::built_in();
    let found = catalog.crop(&CropId(id.to_owned()));
    assert!(found.is_some(), "no {id}");
    found.unwrap_or(&catalog.crops()[0])
}

#[track_caller]
fn near(what: &str, number: f64, published: f64) {
    assert!(
        (number - published).abs() < 1e-6 * published.abs().max(1.0),
        "{what}: {number}"
    );
}

#[test]
fn legal_germination() {
    // U.S. Code of Federal Regulations, Title 7, section 201.31, as of 59 FR 64491, 14 December 1994.
    for (id, percent) in [
        ("artichoke", 60.0),
        ("bean_yardlong", 75.0),
        ("beet", 65.0),
        ("brussels_sprouts", 70.0),
        ("celery", 55.0),
        ("chives", 50.0),
        ("collard", 80.0),
        ("cucumber", 80.0),
        ("okra", 50.0),
        ("onion_seed", 70.0),
        ("southern_pea", 75.0),
        ("spinach_nz", 40.0),
        ("tomatillo", 50.0),
        ("turnip_root", 80.0),
        ("watermelon", 70.0),
    ] {
        let least = crop(id).least_germination.as_ref().unwrap();
        near(id, least.value.to_percent(), percent);
    }
}

#[test]
fn seeds_to_the_ounce() {
    // Texas Agricultural Extension Service, Vegetable Grower's Handbook, Table 2: seeds in an ounce.
    for (id, seeds) in [
        ("asparagus", 700.0),
        ("bean_lima_bush", 50.0),
        ("beet", 1600.0),
        ("celery", 72_000.0),
        ("cucumber", 1100.0),
        ("eggplant", 6500.0),
        ("leek", 11_000.0),
        ("okra", 500.0),
        ("onion_seed", 8500.0),
        ("parsnip", 12_000.0),
        ("radish", 2500.0),
        ("spinach", 2800.0),
    ] {
        near(id, crop(id).seeds_per_ounce().unwrap(), seeds);
    }
    // The same table: peas 90 to 175, so that the heaviest seed weighs a ninetieth of an ounce.
    let peas = crop("pea_english").seed_weight_range.as_ref().unwrap();
    near("peas", Mass::ounces(1.0) / peas.high.value, 90.0);
    near("peas", Mass::ounces(1.0) / peas.low.value, 175.0);
    // The same table, field seeding in pounds to the acre: sweet corn 10 to 15, spinach 7 to 15.
    let rate = crop("sweet_corn").field_seed.as_ref().unwrap();
    near("sweet corn", rate.low.value.to_pounds_per_acre(), 10.0);
    near("sweet corn", rate.high.value.to_pounds_per_acre(), 15.0);
    assert_eq!(
        crop("spinach")
            .field_seed
            .as_ref()
            .unwrap()
            .high
            .value
            .show_field(Units::Customary),
        "15 lb/acre"
    );
}

#[test]
fn soil_temperatures() {
    // Oregon State University Extension Service, Soil temperature conditions for vegetable seed germination (Harrington):
    // least, good from, good to, best, most, in °F.
    for (id, published) in [
        ("sweet_corn", [50.0, 60.0, 95.0, 95.0, 105.0]),
        ("tomato", [50.0, 60.0, 85.0, 85.0, 95.0]),
        ("onion_seed", [35.0, 50.0, 95.0, 75.0, 95.0]),
        ("watermelon", [60.0, 70.0, 95.0, 95.0, 105.0]),
        ("lettuce_head", [35.0, 40.0, 80.0, 75.0, 95.0]),
    ] {
        let soil = crop(id).soil.as_ref().unwrap();
        let good = soil.good.as_ref().unwrap();
        let values = [
            soil.least.as_ref().unwrap().value,
            good.low.value,
            good.high.value,
            soil.best.as_ref().unwrap().value,
            soil.most.as_ref().unwrap().value,
        ];
        for (value, published) in values.into_iter().zip(published) {
            near(id, value.to_fahrenheit(), published);
        }
    }
    // University of California Cooperative Extension, Sacramento County, Garden Notes GN 154: okra 60, 85 to 95, 105; lima
    // beans 60, 75 to 85, 85.
    let okra = crop("okra").soil.as_ref().unwrap();
    assert_eq!(okra.least.as_ref().unwrap().value.show(Units::Customary), "60 °F");
    assert_eq!(okra.good.as_ref().unwrap().low.value.show(Units::Customary), "85 °F");
    assert_eq!(okra.most.as_ref().unwrap().value.show(Units::Metric), "41 °C");
    near(
        "lima",
        crop("bean_lima_bush")
            .soil
            .as_ref()
            .unwrap()
            .most
            .as_ref()
            .unwrap()
            .value
            .to_fahrenheit(),
        85.0,
    );
}

#[test]
fn harvests() {
    // Kansas State University Cooperative Extension, Vegetable Garden Planting Guide, MF-315: pounds for 100 feet.
    for (id, pounds) in [
        ("asparagus", 30.0),
        ("bean_snap_bush", 120.0),
        ("cabbage", 150.0),
        ("tomato", 100.0),
        ("squash_summer", 150.0),
        ("pea_english", 20.0),
    ] {
        let RowMeasure::Weight(ends) = &crop(id).harvest.as_ref().unwrap().measure else {
            panic!("{id} is weighed")
        };
        near(id, ends.low.value.to_pounds_per_100_feet(), pounds);
    }
    // The same: spinach 40 to 50 lb, turnips 50 to 100 lb.
    for (id, low, high) in [("spinach", 40.0, 50.0), ("turnip_root", 50.0, 100.0)] {
        let RowMeasure::Weight(ends) = &crop(id).harvest.as_ref().unwrap().measure else {
            panic!("{id} is weighed")
        };
        near(id, ends.low.value.to_pounds_per_100_feet(), low);
        near(id, ends.high.value.to_pounds_per_100_feet(), high);
    }
    // The same: 10 dozen ears of sweet corn, 40 watermelons, 180 stalks of celery.
    for (id, what, number) in [
        ("sweet_corn", "ears", 120.0),
        ("watermelon", "fruits", 40.0),
        ("celery", "stalks", 180.0),
    ] {
        let harvest = crop(id).harvest.as_ref().unwrap();
        assert_eq!(harvest.what, what);
        let RowMeasure::Number(ends) = &harvest.measure else {
            panic!("{id} is counted")
        };
        near(id, ends.low.value * Length::feet(100.0), number);
    }
}

#[test]
fn water_use_and_roots() {
    // FAO Irrigation and Drainage Paper 56, Tables 12 (Kc ini, mid, end; height in m) and 22 (root depth in m, p).
    for (id, kc, height, roots) in [
        ("sweet_corn", [0.3, 1.15, 1.05], 1.5, [0.8, 1.2, 0.5]),
        ("potato", [0.5, 1.15, 0.75], 0.6, [0.4, 0.6, 0.35]),
        ("carrot", [0.7, 1.05, 0.95], 0.3, [0.5, 1.0, 0.35]),
        ("cantaloupe", [0.5, 0.85, 0.6], 0.3, [0.9, 1.5, 0.45]),
        ("asparagus", [0.5, 0.95, 0.3], 0.5, [1.2, 1.8, 0.45]),
        ("strawberry", [0.4, 0.85, 0.75], 0.2, [0.2, 0.3, 0.2]),
        ("edamame", [0.4, 1.15, 0.5], 0.75, [0.6, 1.3, 0.5]),
    ] {
        let water = crop(id).water_use.as_ref().unwrap();
        for (value, published) in [&water.initial, &water.middle, &water.end].into_iter().zip(kc) {
            near(id, value.value, published);
        }
        near(id, water.height.as_ref().unwrap().value.to_metres(), height);
        let read = crop(id).roots.as_ref().unwrap();
        near(id, read.effective.value.to_metres(), roots[0]);
        near(id, read.deepest.value.to_metres(), roots[1]);
        near(id, read.depletion.value.get(), roots[2]);
    }
    // The same paper, Table 11: tomato planted in January in an arid region, 30, 40, 40 and 25 days.
    let tomato = &crop("tomato").stages.as_ref().unwrap().lengths.value;
    assert_eq!(tomato.len(), 5);
    assert_eq!((tomato[0].initial, tomato[0].late, tomato[0].total()), (30, 25, 135));
}

#[test]
fn days_and_hardiness() {
    // North Dakota State University Extension, H-912, 2010: days from planting to market maturity.
    for (id, low, high) in [
        ("potato", 90, 120),
        ("parsnip", 100, 130),
        ("radish", 22, 40),
        ("turnip_root", 40, 75),
    ] {
        let days = crop(id).days_to_harvest.as_ref().unwrap();
        assert_eq!((days.low.value, days.high.value), (low, high), "{id}");
    }
    // Texas Vegetable Grower's Handbook, Table 1.
    for (id, class) in [
        ("potato", Hardiness::HalfHardy),
        ("pepper_hot", Hardiness::Tender),
        ("pepper_bell", Hardiness::VeryTender),
        ("garlic", Hardiness::Hardy),
    ] {
        assert_eq!(crop(id).hardiness.as_ref().unwrap().value, class, "{id}");
    }
    // University of Maryland Extension, Fertilizing Vegetables: sweet corn is a heavy feeder, peas are light ones.
    let need = |id: &str| crop(id).nitrogen_need.as_ref().unwrap().value;
    assert_eq!(need("sweet_corn"), NitrogenNeed::Heavy);
    assert_eq!(need("pea_english"), NitrogenNeed::Light);
}

#[test]
fn distances_where_one_guide_gives_both_ends() {
    // Utah State University Extension, Utah Vegetable Production Guide: eggplants 18 to 24 in apart in the row. University of
    // Georgia, planting chart: collards 8 to 16 in. Purdue HO-203: very hardy crops four to six weeks before the last frost.
    let eggplant = crop("eggplant").in_row.as_ref().unwrap();
    near("eggplant", eggplant.low.value.to_inches(), 18.0);
    near("eggplant", eggplant.high.value.to_inches(), 24.0);
    let collard = crop("collard").in_row.as_ref().unwrap();
    near("collard", collard.low.value.to_inches(), 8.0);
    near("collard", collard.high.value.to_inches(), 16.0);
    let spinach = crop("spinach").weeks_from_last_frost.as_ref().unwrap();
    assert_eq!((spinach.low.value, spinach.high.value), (-6, -4));
}

#[test]
fn years_that_seed_keeps() {
    // Iowa State University Extension and Outreach, Yard and Garden, Life Expectancy of Vegetable Seeds, 2 April 1999, table.
    for (id, years) in [
        ("bean_dry", 3),
        ("chard", 4),
        ("collard", 5),
        ("cucumber", 5),
        ("kohlrabi", 3),
        ("leek", 2),
        ("lettuce_leaf", 6),
        ("okra", 2),
        ("onion_seed", 1),
        ("parsnip", 1),
        ("pepper_bell", 2),
        ("radish", 5),
        ("spinach", 3),
        ("sweet_corn", 2),
        ("turnip_root", 4),
    ] {
        assert_eq!(
            crop(id).seed_keeps_years.as_ref().map(|kept| kept.value),
            Some(years),
            "{id}"
        );
    }
}
