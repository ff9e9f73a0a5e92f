//! Fertilizer materials: whole, within bounds, and as published.

use quillet::catalog::{Analysis, Catalog, Mark, Material, MaterialId, OrganicStanding, StockClass};
use quillet::quantity::{Density, Mass, Volume};

/// The material of this id; another one would fail on every number.
fn material(id: &str) -> &'static Material {
    let catalog = Catalog::built_in();
    let found = catalog.material(&MaterialId(id.to_owned()));
    assert!(found.is_some(), "no {id}");
    found.unwrap_or(&catalog.materials()[0])
}

#[track_caller]
fn near(what: &str, number: f64, published: f64, within: f64) {
    assert!((number - published).abs() <= within, "{what}: {number}");
}

fn pounds_per_gallon(density: Density) -> f64 {
    (density * Volume::gallons(1.0)).to_pounds()
}

/// Grams that dissolve in a litre of water.
fn grams_per_litre(id: &str) -> f64 {
    let solubility = material(id).solubility.as_ref();
    solubility.map_or(f64::NAN, |solubility| {
        (solubility.value * Volume::litres(1.0)).to_grams()
    })
}

#[test]
fn every_material_has_what_a_grower_must_know() {
    for material in Catalog::built_in().materials() {
        let id = &material.id.0;
        assert!(
            id.bytes()
                .all(|b| b.is_ascii_lowercase() || b.is_ascii_digit() || b == b'_'),
            "{id}"
        );
        let caution = material.caution.as_ref().map_or("", |caution| &caution.value);
        assert!(caution.ends_with('.'), "{id} has no caution");
        let rule = &material.organic.as_ref().unwrap().value;
        assert!(rule.words.ends_with('.'), "{id}");
        if rule.standing != OrganicStanding::NotAllowed {
            let asks = rule.words.contains("certifier");
            assert!(asks, "{id}: the certifier decides");
        }
        // What was read of the rule carries the date of the text.
        if material.organic.as_ref().unwrap().mark == Mark::Read {
            assert!(rule.words.contains("2026") && rule.words.contains("7 CFR 205."), "{id}");
        }
    }
}

#[test]
fn numbers_are_ones_the_thing_could_have() {
    for material in Catalog::built_in().materials() {
        let id = &material.id.0;
        if let Some(density) = &material.bulk_density {
            let range = if material.liquid { 75.0..=90.0 } else { 30.0..=100.0 };
            assert!(range.contains(&density.value.to_pounds_per_cubic_foot()), "{id}");
        }
        if let Some(salt) = &material.salt_index {
            assert!((4.0..=154.0).contains(&salt.value), "{id}");
        }
        if let Some(solubility) = &material.solubility {
            assert!((0.05..=10.0).contains(&pounds_per_gallon(solubility.value)), "{id}");
        }
        if let Some(sodium) = &material.sodium_part {
            assert!(sodium.value.get() <= 0.28, "{id}: more than the pure salt holds");
        }
        if material.available_n.is_some() {
            assert!(
                material.analysis.value.n.get() > 0.0,
                "{id} has no nitrogen to come free"
            );
            assert!(material.not_for_injection.is_some(), "{id} does not dissolve");
        }
        let nutrients = material.analysis.value != Analysis::default();
        let synthetic = material
            .organic
            .as_ref()
            .is_some_and(|rule| rule.value.standing == OrganicStanding::NotAllowed);
        assert!(nutrients || !synthetic, "{id} would be of no use");
    }
}

#[test]
fn analyses_stand_as_published() {
    // International Fertilizer Industry Association, conversion table; International Plant Nutrition Institute,
    // Nutrient Source Specifics No. 24; Texas A&M, Earth-Kind organic fertilizers; Kansas State University,
    // side-dressing tomatoes (blood meal); grades as sold, common practice, no source.
    for (id, label) in [
        ("urea", "46-0-0"),
        ("ammonium_nitrate", "34-0-0"),
        ("ammonium_sulfate", "21-0-0"),
        ("calcium_nitrate", "15.5-0-0"),
        ("sodium_nitrate_16", "16-0-0"),
        ("sodium_nitrate_15", "15-0-0"),
        ("potassium_nitrate", "13-0-46"),
        ("monoammonium_phosphate", "11-52-0"),
        ("diammonium_phosphate", "18-46-0"),
        ("potassium_chloride", "0-0-60"),
        ("potassium_sulfate", "0-0-50"),
        ("mixed_10_10_10", "10-10-10"),
        ("soluble_20_20_20", "20-20-20"),
        ("blood_meal", "12-1.5-0.6"),
        ("fish_meal", "9-7-0"),
        ("bone_meal", "2-27-0"),
        ("wood_ash", "0-2-6"),
    ] {
        assert_eq!(material(id).analysis.value.label(), label, "{id}");
    }
}

#[test]
fn cups_stand_as_published() {
    let cups_to_the_pound =
        |id: &str| (Mass::pounds(1.0) / material(id).bulk_density.as_ref().unwrap().value).to_cups();
    // Estimated Physical Characteristics of Fertilizer Material, middles of the ranges.
    for (id, cups) in [
        ("urea", 2.602),
        ("diammonium_phosphate", 2.082),
        ("monoammonium_phosphate", 1.915),
        ("triple_superphosphate", 1.710),
        ("potassium_chloride", 1.946),
        ("ammonium_sulfate", 1.856),
        ("potassium_magnesium_sulfate", 1.273),
    ] {
        near(id, cups_to_the_pound(id), cups, 5e-4);
    }
    // Louisiana State University AgCenter, Fertilizer Conversion Table for Small Area: 23 and 13 oz to the pint.
    near(
        "sodium nitrate",
        cups_to_the_pound("sodium_nitrate_16"),
        32.0 / 23.0,
        1e-3,
    );
    near(
        "ammonium nitrate",
        cups_to_the_pound("ammonium_nitrate"),
        32.0 / 13.0,
        2e-3,
    );
    // Oklahoma State University Extension, Tulsa Master Gardeners: two cups to the pound for mixed goods.
    near("10-10-10", cups_to_the_pound("mixed_10_10_10"), 2.0, 1e-4);
    // Estimated Physical Characteristics of Fertilizer Material: solutions, pounds to the gallon.
    for (id, pounds) in [
        ("uan_28", 10.67),
        ("uan_32", 11.06),
        ("ammonium_polyphosphate_10_34_0", 11.65),
    ] {
        assert!(material(id).liquid, "{id}");
        near(
            id,
            pounds_per_gallon(material(id).bulk_density.as_ref().unwrap().value),
            pounds,
            1e-9,
        );
    }
    assert!(!material("urea").liquid);
}

#[test]
fn salt_and_solubility_stand_as_published() {
    // J. J. Mortvedt, Calculating Salt Index, 2001.
    for (id, index) in [
        ("urea", 74.4),
        ("ammonium_nitrate", 104.0),
        ("sodium_nitrate_15", 100.0),
        ("monopotassium_phosphate", 8.4),
        ("potassium_chloride", 116.2),
        ("gypsum", 8.1),
    ] {
        near(id, material(id).salt_index.as_ref().unwrap().value, index, 1e-9);
    }
    // Lorenz and Maynard, Knott's Handbook, 2nd edition, 1980: pounds in 100 gallons of cold water.
    for (id, pounds) in [
        ("ammonium_nitrate", 984.0),
        ("calcium_nitrate", 851.0),
        ("urea", 651.0),
        ("sodium_nitrate_16", 608.0),
        ("diammonium_phosphate", 358.0),
        ("monoammonium_phosphate", 192.0),
        ("potassium_nitrate", 108.0),
        ("triple_superphosphate", 33.0),
        ("zinc_sulfate", 625.0),
    ] {
        let solubility = material(id).solubility.as_ref().unwrap();
        near(id, pounds_per_gallon(solubility.value) * 100.0, pounds, 1e-6);
    }
    // Table of solubility by temperature, grams to the litre at 5 °C.
    for (id, grams) in [
        ("monopotassium_phosphate", 110.0),
        ("potassium_chloride", 229.0),
        ("potassium_sulfate", 80.0),
    ] {
        near(id, grams_per_litre(id), grams, 0.2);
    }
    // The same table has potassium nitrate 133 and urea 780; the handbook agrees within 3 %.
    near("potassium nitrate", grams_per_litre("potassium_nitrate"), 133.0, 4.0);
    near("urea", grams_per_litre("urea"), 780.0, 2.0);
}

#[test]
fn sodium_and_what_comes_free_stand_as_published() {
    // International Plant Nutrition Institute, Nutrient Source Specifics No. 24: 16 % nitrogen, 26 % sodium.
    let nitrate = material("sodium_nitrate_16");
    let sodium = nitrate.sodium_part.as_ref().unwrap().value.get();
    near(
        "sodium to a pound of nitrogen",
        sodium / nitrate.analysis.value.n.get(),
        1.625,
        1e-9,
    );
    // University of Georgia, LS16-269: 1 to 4 % of composts, 8 to 37 % of poultry litters, 21 to 87 % of meals.
    let part = |id: &str| {
        let ends = material(id).available_n.as_ref().unwrap();
        (ends.low.value.to_percent(), ends.high.value.to_percent())
    };
    assert_eq!(part("cottonseed_meal"), (21.0, 87.0));
    assert_eq!(part("chicken_manure"), (8.0, 37.0));
    near("compost", part("poultry_compost").0, 1.0, 1e-9);
    // Pacific Northwest Extension, PNW 646: about 75 % of blood and feather meal, from memory.
    assert_eq!(part("blood_meal"), (75.0, 75.0));
    assert_eq!(
        material("blood_meal").available_n.as_ref().unwrap().low.mark,
        Mark::FromMemory
    );
    assert!(material("urea").available_n.is_none());
}

#[test]
fn the_organic_rule_stands_as_its_text_has_it() {
    let standing = |id: &str| material(id).organic.as_ref().unwrap().value.standing;
    // 7 CFR 205.602(h): no more than 20 % of the crop's total nitrogen requirement.
    let OrganicStanding::Restricted {
        most_of_nitrogen: Some(most),
    } = standing("sodium_nitrate_16")
    else {
        panic!("sodium nitrate is restricted")
    };
    near("sodium nitrate", most.to_percent(), 20.0, 1e-9);
    assert_eq!(standing("sodium_nitrate_15"), standing("sodium_nitrate_16"));
    // 7 CFR 205.602(e): potassium chloride from a mined source only. 205.203(c)(1): raw manure.
    for id in [
        "potassium_chloride",
        "chicken_manure",
        "cattle_manure",
        "poultry_compost",
    ] {
        assert_eq!(
            standing(id),
            OrganicStanding::Restricted { most_of_nitrogen: None },
            "{id}"
        );
    }
    assert_eq!(standing("urea"), OrganicStanding::NotAllowed);
    assert_eq!(standing("feather_meal"), OrganicStanding::Allowed);
    assert_eq!(standing("wood_ash"), OrganicStanding::AskCertifier);
}

#[test]
fn what_must_not_share_a_stock_is_named_both_ways_round() {
    let clash = |a: &str, b: &str| material(a).stock_clash(material(b));
    // University of California, Prevention and Mitigation; NRCS New Mexico Agronomy Technical Note 71.
    for (a, b, pair) in [
        (
            "calcium_nitrate",
            "ammonium_sulfate",
            (StockClass::Calcium, StockClass::Sulfate),
        ),
        (
            "calcium_nitrate",
            "potassium_sulfate",
            (StockClass::Calcium, StockClass::Sulfate),
        ),
        (
            "calcium_nitrate",
            "magnesium_sulfate",
            (StockClass::Calcium, StockClass::Sulfate),
        ),
        (
            "calcium_nitrate",
            "monoammonium_phosphate_soluble",
            (StockClass::Calcium, StockClass::Phosphate),
        ),
        (
            "magnesium_sulfate",
            "soluble_20_20_20",
            (StockClass::Magnesium, StockClass::Phosphate),
        ),
    ] {
        assert_eq!(clash(a, b), Some(pair), "{a} with {b}");
        assert_eq!(clash(b, a), Some((pair.1, pair.0)), "{b} with {a}");
    }
    for (a, b) in [
        ("calcium_nitrate", "potassium_nitrate"),
        ("calcium_nitrate", "urea"),
        ("urea", "potassium_nitrate"),
        ("calcium_nitrate", "calcium_nitrate"),
        ("ammonium_sulfate", "soluble_20_20_20"),
    ] {
        assert_eq!(clash(a, b), None, "{a} with {b}");
    }
}
