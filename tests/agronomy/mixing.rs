//! Mixing: by hand, and against a second solver.
//!
//! `mix-cases.json` holds 200 random mixes solved by HiGHS; `mix-cases.py` beside it made it, and says how.

#![expect(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test or bench that cannot go on says so by stopping"
)]

use proptest::prelude::*;
use quillet::agronomy::{
    Blend, Limit, Mix, MixMaterial, MixTarget, MostNutrients, Nutrient, NutrientMiss, Nutrients, Unmet, Unworkable,
    along_row, mix,
};
use quillet::catalog::Analysis;
use quillet::quantity::{Fraction, Length, Mass, MassPerArea};
use serde_json::Value;

use crate::{exact, label};

const CASES: &str = include_str!("mix-cases.json");

fn material(n: f64, p2o5: f64, k2o: f64) -> MixMaterial {
    MixMaterial {
        analysis: label(n, p2o5, k2o),
        available: Fraction::ONE,
        price_per_kilogram: Some(1.0),
        at_hand: None,
        is_restricted: false,
    }
}

fn pounds(n: f64, p2o5: f64, k2o: f64) -> Nutrients {
    Nutrients {
        n: Mass::pounds(n),
        p2o5: Mass::pounds(p2o5),
        k2o: Mass::pounds(k2o),
    }
}

fn at_least(n: f64, p2o5: f64, k2o: f64) -> MixTarget {
    MixTarget {
        least: pounds(n, p2o5, k2o),
        most: MostNutrients::default(),
        restricted_n: None,
    }
}

#[track_caller]
fn met(materials: &[MixMaterial], target: MixTarget) -> Blend {
    match mix(materials, &target) {
        Ok(Mix::Met(blend)) => blend,
        other => panic!("not met: {other:?}"),
    }
}

#[track_caller]
fn unmet(materials: &[MixMaterial], target: MixTarget) -> Unmet {
    match mix(materials, &target) {
        Ok(Mix::Unmet(unmet)) => unmet,
        other => panic!("met, or refused: {other:?}"),
    }
}

/// Compares with what solving by hand gives, to a part in a hundred million.
#[track_caller]
fn weighs(blend: &Blend, expected: &[f64]) {
    assert_eq!(blend.amounts.len(), expected.len());
    for (amount, &expected) in blend.amounts.iter().zip(expected) {
        let got = amount.to_pounds();
        assert!(
            (got - expected).abs() <= 1e-8 * expected.max(1.0),
            "{got} is not {expected}"
        );
    }
}

#[test]
fn three_straight_products() {
    // Common practice, no source: phosphate first, then the nitrogen that is left, then potash. 120-60-90 lb/acre from
    // 46-0-0, 18-46-0 and 0-0-60: 209.83, 130.43 and 150.00 lb; on 36 in rows 1.4451, 0.8983 and 1.0331 lb per 100 ft.
    let materials = [
        material(46.0, 0.0, 0.0),
        material(18.0, 46.0, 0.0),
        material(0.0, 0.0, 60.0),
    ];
    let blend = met(&materials, MixTarget::exactly(pounds(120.0, 60.0, 90.0)));
    let phosphate = 60.0 / 0.46;
    let urea = (120.0 - 0.18 * phosphate) / 0.46;
    weighs(&blend, &[urea, phosphate, 150.0]);
    assert_eq!(blend.misses, []);
    let all: Mass = blend.amounts.iter().copied().sum();
    assert!((all.to_pounds() - 490.26).abs() < 0.005);
    for (amount, printed) in blend.amounts.iter().zip([1.4451, 0.8983, 1.0331]) {
        let rate = MassPerArea::pounds_per_acre(amount.to_pounds());
        let along = along_row(rate, Length::inches(36.0), 1).unwrap_or_default();
        assert!((along.to_pounds_per_100_feet() - printed).abs() <= 5e-5 * 1.000_001);
    }
}

#[test]
fn a_complete_product_and_nitrogen() {
    // Common practice, no source: 100-80-80 from 10-20-20 and 21-0-0: 400 and 285.71 lb.
    let materials = [material(10.0, 20.0, 20.0), material(21.0, 0.0, 0.0)];
    let blend = met(&materials, MixTarget::exactly(pounds(100.0, 80.0, 80.0)));
    weighs(&blend, &[400.0, 60.0 / 0.21]);
    assert!((blend.supplied.n.to_pounds() - 100.0).abs() < 1e-6);
}

#[test]
fn too_much_nitrogen_with_the_phosphate_is_seen() {
    // Common practice, no source: 10-60-0 from 18-46-0 and 46-0-0 brings 13.48 lb of nitrogen too much; with 0-46-0 it is
    // 55.556 and 74.879 lb.
    let two = [material(18.0, 46.0, 0.0), material(46.0, 0.0, 0.0)];
    let answer = unmet(&two, MixTarget::exactly(pounds(10.0, 60.0, 0.0)));
    let phosphate = 60.0 / 0.46;
    weighs(&answer.least_short, &[phosphate, 0.0]);
    match answer.least_short.misses[..] {
        [NutrientMiss::Over(Nutrient::Nitrogen, by)] => {
            assert!((by.to_pounds() - (0.18 * phosphate - 10.0)).abs() < 1e-6);
        }
        ref other => panic!("{other:?}"),
    }
    assert_eq!(
        answer.in_the_way,
        [Limit::Most(Nutrient::Nitrogen), Limit::Least(Nutrient::Phosphate)]
    );
    let three = [two[0], two[1], material(0.0, 46.0, 0.0)];
    let blend = met(&three, MixTarget::exactly(pounds(10.0, 60.0, 0.0)));
    // Urea would do with less nitrogen-bearing phosphate at the same price a pound, but weighs more with 0-46-0.
    let by_phosphate = 10.0 / 0.18;
    weighs(&blend, &[by_phosphate, 0.0, (60.0 - 0.46 * by_phosphate) / 0.46]);
}

#[test]
fn three_soluble_salts() {
    // Common practice, no source: 1.2-0.4-1.0 lb from 15.5-0-0, 11-52-0 and 13-0-46: 5.3727, 0.7692 and 2.1739 lb.
    let materials = [
        material(15.5, 0.0, 0.0),
        material(11.0, 52.0, 0.0),
        material(13.0, 0.0, 46.0),
    ];
    let blend = met(&materials, MixTarget::exactly(pounds(1.2, 0.4, 1.0)));
    let (phosphate, potash) = (0.4 / 0.52, 1.0 / 0.46);
    weighs(
        &blend,
        &[(1.2 - 0.11 * phosphate - 0.13 * potash) / 0.155, phosphate, potash],
    );
    assert!((blend.amounts[0].to_pounds() - 5.3727).abs() < 5e-5);
}

#[test]
fn one_complete_product_cannot_fit() {
    // Common practice, no source: 100-50-50 from 10-10-10 alone: 1,000 lb and 50 too much of two, or 500 lb and 50 short.
    let answer = unmet(
        &[material(10.0, 10.0, 10.0)],
        MixTarget::exactly(pounds(100.0, 50.0, 50.0)),
    );
    weighs(&answer.least_short, &[1000.0]);
    weighs(&answer.never_over, &[500.0]);
    let by = |miss: &NutrientMiss| match *miss {
        NutrientMiss::Short(nutrient, by) => (nutrient, -by.to_pounds().round()),
        NutrientMiss::Over(nutrient, by) => (nutrient, by.to_pounds().round()),
    };
    let over: Vec<_> = answer.least_short.misses.iter().map(by).collect();
    assert_eq!(over, [(Nutrient::Phosphate, 50.0), (Nutrient::Potash, 50.0)]);
    let short: Vec<_> = answer.never_over.misses.iter().map(by).collect();
    assert_eq!(short, [(Nutrient::Nitrogen, -50.0)]);
    assert_eq!(answer.in_the_way, [Limit::Least(Nutrient::Nitrogen)]);
}

#[test]
fn the_limit_in_the_way_is_named() {
    // Arithmetic: 16 lb of nitrogen are 100 lb of 16-0-0; only 60 are at hand, or rules let it give 4.8 lb.
    let mut scarce = material(16.0, 0.0, 0.0);
    scarce.at_hand = Some(Mass::pounds(60.0));
    let answer = unmet(&[scarce], at_least(16.0, 0.0, 0.0));
    assert_eq!(answer.in_the_way, [Limit::Least(Nutrient::Nitrogen), Limit::AtHand(0)]);
    weighs(&answer.least_short, &[60.0]);
    let held = |n: f64| MixTarget {
        restricted_n: Some(Mass::pounds(n)),
        ..at_least(16.0, 0.0, 0.0)
    };
    let mut restricted = material(16.0, 0.0, 0.0);
    restricted.is_restricted = true;
    let answer = unmet(&[restricted], held(4.8));
    assert_eq!(answer.in_the_way, [Limit::Least(Nutrient::Nitrogen), Limit::Restricted]);
    weighs(&answer.never_over, &[30.0]);
    // Two restricted materials share the one limit, whichever of them is at hand.
    let answer = unmet(&[restricted, restricted], held(4.8));
    let both: Mass = answer.never_over.amounts.iter().copied().sum();
    assert!((both.to_pounds() - 30.0).abs() < 1e-6);
    restricted.at_hand = Some(Mass::pounds(60.0));
    let answer = unmet(&[restricted], held(4.8));
    assert_eq!(
        answer.in_the_way,
        [Limit::Least(Nutrient::Nitrogen)],
        "lifting one of two limits on the material helps nothing"
    );
    // Nothing holds potash, and there is too little nitrogen: two things at once.
    let answer = unmet(&[scarce], at_least(16.0, 0.0, 5.0));
    assert_eq!(answer.in_the_way, []);
}

#[test]
fn nitrogen_counts_as_far_as_it_is_available() {
    // Arithmetic: 12 % at 75 % is 9 %; 9 lb of available nitrogen take 100 lb.
    let mut meal = material(12.0, 0.0, 0.0);
    meal.available = Fraction::new(0.75).unwrap_or_default();
    let blend = met(&[meal], at_least(9.0, 0.0, 0.0));
    weighs(&blend, &[100.0]);
    assert!((blend.supplied.n.to_pounds() - 9.0).abs() < 1e-6);
}

#[test]
fn a_missing_price_makes_weight_count_and_is_said() {
    let mut heavy_and_cheap = material(10.0, 0.0, 0.0);
    heavy_and_cheap.price_per_kilogram = Some(0.01);
    let mut light = material(40.0, 0.0, 0.0);
    let blend = met(&[heavy_and_cheap, light], at_least(10.0, 0.0, 0.0));
    weighs(&blend, &[100.0, 0.0]);
    assert!(
        blend
            .cost
            .is_some_and(|cost| (cost - Mass::pounds(1.0).to_kilograms()).abs() < 1e-9)
    );
    light.price_per_kilogram = None;
    let blend = met(&[heavy_and_cheap, light], at_least(10.0, 0.0, 0.0));
    weighs(&blend, &[0.0, 25.0]);
    assert_eq!((blend.cost, blend.unpriced), (None, vec![1]));
}

#[test]
fn of_equals_the_first_is_taken() {
    let same = material(20.0, 0.0, 0.0);
    weighs(&met(&[same; 5], at_least(10.0, 0.0, 0.0)), &[50.0, 0.0, 0.0, 0.0, 0.0]);
    let mut free = same;
    free.price_per_kilogram = Some(0.0);
    weighs(&met(&[free; 2], at_least(10.0, 0.0, 0.0)), &[50.0, 0.0]);
}

#[test]
fn nothing_wanted_takes_nothing() {
    let blend = met(&[material(10.0, 10.0, 10.0)], MixTarget::default());
    weighs(&blend, &[0.0]);
    exact(blend.cost.unwrap_or(f64::NAN), 0.0);
}

#[test]
fn what_cannot_be_mixed_is_refused() {
    let good = material(10.0, 10.0, 10.0);
    let target = at_least(10.0, 0.0, 0.0);
    assert_eq!(mix(&[], &target), Err(Unworkable::NoMaterial));
    for bad in [-1.0, f64::NAN, f64::INFINITY] {
        let mut priced = good;
        priced.price_per_kilogram = Some(bad);
        assert!(mix(&[priced], &target).is_err());
        let mut held = good;
        held.at_hand = Some(Mass::kilograms(bad));
        assert!(mix(&[held], &target).is_err());
        let mut held = target;
        held.restricted_n = Some(Mass::kilograms(bad));
        assert!(mix(&[good], &held).is_err());
        assert!(mix(&[good], &at_least(bad, 0.0, 0.0)).is_err());
        let mut most = target;
        most.most.k2o = Some(Mass::kilograms(bad));
        assert!(mix(&[good], &most).is_err());
    }
    let mut crossed = target;
    crossed.most.n = Some(Mass::pounds(5.0));
    assert_eq!(
        mix(&[good], &crossed),
        Err(Unworkable::MoreThanAll("the least of a nutrient", "the most of it"))
    );
}

/// Weight short and weight over of a blend.
fn misses(blend: &Blend) -> (f64, f64) {
    blend.misses.iter().fold((0.0, 0.0), |(short, over), miss| match *miss {
        NutrientMiss::Short(_, by) => (short + by.to_kilograms(), over),
        NutrientMiss::Over(_, by) => (short, over + by.to_kilograms()),
    })
}

fn of_case(case: &Value) -> (Vec<MixMaterial>, MixTarget) {
    let number = |value: &Value| value.as_f64();
    let materials = case["materials"].as_array().unwrap().iter().map(|row| MixMaterial {
        analysis: label(
            number(&row[0]).unwrap(),
            number(&row[1]).unwrap(),
            number(&row[2]).unwrap(),
        ),
        available: number(&row[3]).and_then(Fraction::new).unwrap(),
        price_per_kilogram: number(&row[4]),
        at_hand: number(&row[5]).map(Mass::kilograms),
        is_restricted: row[6].as_bool().unwrap(),
    });
    let least = |at: usize| Mass::kilograms(number(&case["least"][at]).unwrap());
    let most = |at: usize| number(&case["most"][at]).map(Mass::kilograms);
    let target = MixTarget {
        least: Nutrients {
            n: least(0),
            p2o5: least(1),
            k2o: least(2),
        },
        most: MostNutrients {
            n: most(0),
            p2o5: most(1),
            k2o: most(2),
        },
        restricted_n: number(&case["restricted_n"]).map(Mass::kilograms),
    };
    (materials.collect(), target)
}

fn limit_of(limit: &Value) -> Limit {
    let at = usize::try_from(limit[1].as_u64().unwrap()).unwrap();
    match limit[0].as_str().unwrap() {
        "least" => Limit::Least(Nutrient::ALL[at]),
        "most" => Limit::Most(Nutrient::ALL[at]),
        "at_hand" => Limit::AtHand(at),
        _ => Limit::Restricted,
    }
}

#[test]
fn two_hundred_mixes_agree_with_a_second_solver() {
    let file: Value = serde_json::from_str(CASES).unwrap();
    let cases = file["cases"].as_array().unwrap();
    assert_eq!(cases.len(), 200);
    for (number, case) in cases.iter().enumerate() {
        let (materials, target) = of_case(case);
        let scale = [target.least.n, target.least.p2o5, target.least.k2o]
            .into_iter()
            .fold(Mass::ZERO, Mass::max)
            .to_kilograms();
        let theirs = |key: &str| case[key].as_f64().unwrap();
        match mix(&materials, &target) {
            Ok(Mix::Met(blend)) => {
                assert_eq!(case["met"], true, "case {number} is met here only");
                let weight: Mass = blend.amounts.iter().copied().sum();
                let cost = blend.cost.unwrap_or(weight.to_kilograms());
                let cheapest = theirs("cost");
                assert!(
                    (cost - cheapest).abs() <= 2e-6 * cheapest,
                    "case {number}: {cost} against {cheapest}"
                );
                assert_eq!(blend.misses, [], "case {number}");
            }
            Ok(Mix::Unmet(answer)) => {
                assert_eq!(case["met"], false, "case {number} is met there only");
                let (short, over) = misses(&answer.least_short);
                let missed = theirs("missed");
                assert!(
                    (1000.0 * short + over - missed).abs() <= 2e-6 * missed + 2e-3 * scale,
                    "case {number}: {short} short and {over} over against {missed}"
                );
                let (short, over) = misses(&answer.never_over);
                exact(over, 0.0);
                assert!(
                    (short - theirs("short_never_over")).abs() <= 2e-6 * scale,
                    "case {number}: {short} short against {}",
                    theirs("short_never_over")
                );
                let named = case["in_the_way"].as_array().unwrap().iter().map(limit_of);
                assert_eq!(answer.in_the_way, named.collect::<Vec<_>>(), "case {number}");
            }
            Err(refused) => panic!("case {number}: {refused}"),
        }
    }
}

fn any_material() -> impl Strategy<Value = MixMaterial> {
    let some_mass = proptest::option::weighted(0.3, (0.0..500.0_f64).prop_map(Mass::kilograms));
    (
        (0.0..50.0_f64, 0.0..30.0_f64, 0.0..20.0_f64, 0.0..1.0_f64),
        proptest::option::weighted(0.9, 0.0..5.0_f64),
        some_mass,
        any::<bool>(),
    )
        .prop_map(
            |((n, p2o5, k2o, available), price_per_kilogram, at_hand, is_restricted)| MixMaterial {
                analysis: Analysis::percent(n, p2o5, k2o).unwrap_or_default(),
                available: Fraction::new(available).unwrap_or_default(),
                price_per_kilogram,
                at_hand,
                is_restricted,
            },
        )
}

proptest! {
    /// Whatever is asked, an answer comes; it keeps to the limits on materials, what it says it brings is in the materials,
    /// and one that says it is met is.
    #[test]
    fn nutrients_out_are_nutrients_in(
        materials in proptest::collection::vec(any_material(), 1..7),
        wanted in [0.0..200.0_f64, 0.0..200.0_f64, 0.0..200.0_f64],
        held in proptest::option::of(0.0..50.0_f64),
        room in [proptest::option::of(0.0..50.0_f64), proptest::option::of(0.0..50.0_f64), proptest::option::of(0.0..50.0_f64)],
    ) {
        let least = |at: usize| Mass::kilograms(wanted[at]);
        let most = |at: usize| room[at].map(|room| Mass::kilograms(wanted[at] + room));
        let target = MixTarget {
            least: Nutrients { n: least(0), p2o5: least(1), k2o: least(2) },
            most: MostNutrients { n: most(0), p2o5: most(1), k2o: most(2) },
            restricted_n: held.map(Mass::kilograms),
        };
        let answer = mix(&materials, &target);
        prop_assert!(answer.is_ok(), "{answer:?}");
        let (blends, met) = match answer {
            Ok(Mix::Met(blend)) => (vec![blend], true),
            Ok(Mix::Unmet(unmet)) => (vec![unmet.least_short, unmet.never_over], false),
            Err(_) => (Vec::new(), false),
        };
        for blend in blends {
            prop_assert_eq!(blend.amounts.len(), materials.len());
            let mut nitrogen = Mass::ZERO;
            let mut potash = Mass::ZERO;
            let mut restricted = Mass::ZERO;
            for (amount, material) in blend.amounts.iter().zip(&materials) {
                prop_assert!(amount.is_finite() && *amount >= Mass::ZERO);
                if let Some(limit) = material.at_hand {
                    prop_assert!(*amount <= limit + Mass::kilograms(1e-6), "{amount:?} of {limit:?}");
                }
                if material.is_restricted {
                    restricted += *amount * (material.analysis.n.get() * material.available.get());
                }
                nitrogen += *amount * (material.analysis.n.get() * material.available.get());
                potash += *amount * material.analysis.k2o.get();
            }
            // A part below a hundred-thousandth counts as none.
            let uncounted = blend.amounts.iter().copied().sum::<Mass>() * 1e-5 + Mass::kilograms(1e-6);
            prop_assert!((blend.supplied.n - nitrogen).abs() <= uncounted);
            prop_assert!((blend.supplied.k2o - potash).abs() <= uncounted);
            prop_assert!(target.restricted_n.is_none_or(|most| restricted <= most + uncounted));
            prop_assert_eq!(blend.misses.is_empty(), met, "{:?}", blend.misses);
            if met {
                prop_assert!(blend.supplied.n >= target.least.n - Mass::kilograms(1e-3));
                prop_assert!(target.most.k2o.is_none_or(|most| blend.supplied.k2o <= most + Mass::kilograms(1e-3)));
            }
        }
    }
}
