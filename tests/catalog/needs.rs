//! General rates for a season: whole, in line with the crops, and as published.

use quillet::catalog::{Catalog, CropId, Ends, Mark, NeedKind};
use quillet::quantity::MassPerArea;

fn crop(id: &str) -> CropId {
    CropId(id.to_owned())
}

fn pounds(ends: &Option<Ends<MassPerArea>>) -> Option<(f64, f64)> {
    ends.as_ref()
        .map(|ends| (round(ends.low.value), round(ends.high.value)))
}

fn round(rate: MassPerArea) -> f64 {
    (rate.to_pounds_per_acre() * 100.0).round() / 100.0
}

#[test]
fn the_first_recommendation_is_in_force() {
    // University of Wisconsin-Madison Extension: 130 lb/acre with 2 to 10 % organic matter, 150 below.
    let corn = crop("sweet_corn");
    let need = Catalog::built_in().general_need(&corn).unwrap();
    assert_eq!(pounds(&need.n), Some((130.0, 130.0)));
    assert!(need.condition.contains("2 to 10 % organic matter") && need.p2o5.is_none());
    assert_eq!(pounds(&Catalog::built_in().needs_of(&corn)[1].n), Some((150.0, 150.0)));
    // University of Florida IFAS, CV236: tomato 200-150-225.
    let tomato = Catalog::built_in().general_need(&crop("tomato")).unwrap();
    assert_eq!(
        (pounds(&tomato.n), pounds(&tomato.p2o5), pounds(&tomato.k2o)),
        (Some((200.0, 200.0)), Some((150.0, 150.0)), Some((225.0, 225.0)))
    );
    // University of Delaware, Weekly Crop Update: broccoli 150 to 200, phosphate and potash 100 at a medium test.
    let broccoli = Catalog::built_in().general_need(&crop("broccoli")).unwrap();
    let nitrogen = broccoli.n.as_ref().unwrap();
    assert!((nitrogen.middle().to_pounds_per_acre() - 175.0).abs() < 1e-9);
    assert_eq!(pounds(&broccoli.k2o), Some((100.0, 100.0)));
    // Ontario fertility guide: eggplant up to 70 kg/ha.
    let eggplant = Catalog::built_in().general_need(&crop("eggplant")).unwrap();
    let metric = eggplant.n.as_ref().unwrap().high.value.to_kilograms_per_hectare();
    assert!((metric - 70.0).abs() < 0.01, "{metric}");
    // Uptake alone is no recommendation, and a crop without a published rate has none.
    assert!(!Catalog::built_in().needs_of(&crop("lettuce_head")).is_empty());
    for id in ["lettuce_head", "popcorn", "basil", "no_such_crop"] {
        assert!(Catalog::built_in().general_need(&crop(id)).is_none(), "{id}");
    }
}

#[test]
fn uptake_is_told_from_what_to_give() {
    // New England Vegetable Management Guide, Removal of Nutrients from the Soil, Table 4: carrot 145-25-345.
    let carrot = Catalog::built_in().needs_of(&crop("carrot"));
    let uptake = carrot.iter().find(|need| need.kind == NeedKind::Uptake).unwrap();
    assert_eq!(pounds(&uptake.k2o), Some((345.0, 345.0)));
    assert!(uptake.kind.words().contains("not a recommendation"));
    // North Dakota State University, SF715, Table 1, in elements: phosphorus 11 + 17, potassium 75 + 144; oxides by
    // atomic weights (IUPAC), P to P2O5 2.2914 and K to K2O 1.2046.
    let potato = Catalog::built_in().needs_of(&crop("potato"));
    let uptake = potato.iter().find(|need| need.kind == NeedKind::Uptake).unwrap();
    let close = |ends: &Option<Ends<MassPerArea>>, pounds: f64| {
        let rate = ends.as_ref().unwrap().low.value.to_pounds_per_acre();
        assert!((rate - pounds).abs() < 0.1, "{rate} of {pounds}");
    };
    close(&uptake.n, 90.0 + 128.0);
    close(&uptake.p2o5, (11.0 + 17.0) * 2.2914);
    close(&uptake.k2o, (75.0 + 144.0) * 1.2046);
}

#[test]
fn the_highest_nitrogen_leaves_uptake_out() {
    let highest = |id: &str| {
        Catalog::built_in()
            .highest_nitrogen(&crop(id))
            .map(|most| round(most.value))
    };
    // Mississippi State University Extension: up to 220 lb/acre for sweet corn.
    assert_eq!(highest("sweet_corn"), Some(220.0));
    // University of Florida IFAS, HS1429: potato up to 250.
    assert_eq!(highest("potato"), Some(250.0));
    // New England Vegetable Management Guide has 200 as uptake of cucumbers; the most that is given is Florida's 150.
    assert_eq!(highest("cucumber"), Some(150.0));
    assert_eq!(highest("lettuce_head"), None);
}

#[test]
fn a_crops_own_season_of_nitrogen_stands_among_its_needs() {
    let catalog = Catalog::built_in();
    let mut checked = 0;
    for crop in catalog.crops() {
        let Some(season) = &crop.season_nitrogen else { continue };
        checked += 1;
        let stands = catalog.needs_of(&crop.id).iter().any(|need| {
            let same = need.n.as_ref().is_some_and(|n| n.contains(&season.value));
            need.kind == NeedKind::Recommendation && same && !need.condition.is_empty()
        });
        assert!(stands, "{}: {:?}", crop.name, season.value);
    }
    assert_eq!(checked, 43);
}

#[test]
fn rates_are_ones_a_field_could_get() {
    let catalog = Catalog::built_in();
    for crop in catalog.crops() {
        for need in catalog.needs_of(&crop.id) {
            let name = &crop.name;
            for (ends, most) in [(&need.n, 250.0), (&need.p2o5, 200.0), (&need.k2o, 450.0)] {
                let Some(ends) = ends else { continue };
                assert!((0.0..=most).contains(&ends.high.value.to_pounds_per_acre()), "{name}");
            }
            if let Some(n) = &need.n {
                assert!(n.low.value.to_pounds_per_acre() >= 20.0, "{name}");
            }
            // A number from memory says where it holds.
            let memory = need.n.as_ref().is_some_and(|n| n.low.mark >= Mark::FromMemory);
            assert!(!memory || need.condition.contains("Florida"), "{name}");
        }
    }
}
