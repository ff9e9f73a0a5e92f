//! Programmes of feeding: whole, fit for their crops, and as published.

use quillet::catalog::{
    Catalog, CropId, Mark, MaterialId, Programme, ProgrammeId, ProgrammeStep, RateOf, StepAmount, StepPlacement,
};

fn programme(id: &str) -> &'static Programme {
    let catalog = Catalog::built_in();
    let found = catalog.programme(&ProgrammeId(id.to_owned()));
    assert!(found.is_some(), "no {id}");
    found.unwrap_or(&catalog.programmes()[0])
}

/// Both ends of a rate: pounds per acre, or pounds for 100 feet of row.
fn rate(step: &ProgrammeStep) -> (f64, f64) {
    let round = |value: f64| (value * 1000.0).round() / 1000.0;
    match &step.rate.amount {
        StepAmount::OverGround(ends) => (
            round(ends.low.value.to_pounds_per_acre()),
            round(ends.high.value.to_pounds_per_acre()),
        ),
        StepAmount::AlongRow(ends) => (
            round(ends.low.value.to_pounds_per_100_feet()),
            round(ends.high.value.to_pounds_per_100_feet()),
        ),
    }
}

#[test]
fn the_main_heavy_feeders_have_one() {
    for id in [
        "sweet_corn",
        "tomato",
        "pepper_bell",
        "eggplant",
        "onion_seed",
        "garlic",
        "potato",
        "cabbage",
        "broccoli",
        "cauliflower",
        "kale",
        "cucumber",
        "squash_summer",
        "pumpkin",
        "watermelon",
        "okra",
    ] {
        let crop = CropId(id.to_owned());
        assert!(Catalog::built_in().programmes_for(&crop).count() > 0, "{id}");
    }
    let corn = CropId("sweet_corn".to_owned());
    assert_eq!(Catalog::built_in().programmes_for(&corn).count(), 4);
    let basil = CropId("basil".to_owned());
    assert_eq!(Catalog::built_in().programmes_for(&basil).count(), 0);
}

#[test]
fn every_programme_can_be_laid_down() {
    let catalog = Catalog::built_in();
    for programme in catalog.programmes() {
        let id = &programme.id.0;
        assert!(programme.note.value.ends_with('.'), "{id}");
        for step in &programme.steps {
            assert!(catalog.stage(&step.stage.value).is_some(), "{id}");
            let material = catalog.material(&step.material);
            assert!(
                material.is_some_and(|material| material.analysis.value.n.get() > 0.0),
                "{id}"
            );
            // What goes through tape dissolves; what is repeated is so no more often than a season has weeks.
            if step.placement == StepPlacement::Injected {
                assert!(material.is_some_and(|material| material.solubility.is_some()), "{id}");
                assert!(step.repeat.is_some(), "{id}");
            }
            if let Some(repeat) = &step.repeat {
                assert!(repeat.times.value * repeat.every_days.value <= 100, "{id}");
            }
        }
    }
}

#[test]
fn no_programme_gives_more_nitrogen_than_the_highest_published_figure() {
    let catalog = Catalog::built_in();
    for programme in catalog.programmes() {
        let over_ground = programme
            .steps
            .iter()
            .filter(|step| step.rate.of == RateOf::Nitrogen && matches!(step.rate.amount, StepAmount::OverGround(_)));
        let least: f64 = over_ground
            .map(|step| rate(step).0 * f64::from(step.repeat.as_ref().map_or(1, |repeat| repeat.times.value)))
            .sum();
        for crop in &programme.crops {
            if let Some(most) = catalog.highest_nitrogen(crop) {
                let most = most.value.to_pounds_per_acre();
                assert!(least <= most + 0.1, "{}: {least} over {most}", programme.id.0);
            }
        }
    }
}

#[test]
fn sweet_corn_is_fed_as_published() {
    // ATTRA: 50 lb of nitrogen per acre at planting, 60 to 80 at 12 to 18 in.
    let once = programme("sweet_corn_planting_and_once");
    assert_eq!(rate(&once.steps[0]), (50.0, 50.0));
    assert_eq!(rate(&once.steps[1]), (60.0, 80.0));
    assert_eq!(once.steps[1].stage.value.0, "corn_12_to_18_in");
    // Kansas State University: 2 lb of 16-0-0 for 100 ft, at 8 to 10 in and a week after tassels.
    let twice = programme("sweet_corn_two_side_dressings");
    assert_eq!(rate(&twice.steps[0]), (2.0, 2.0));
    assert_eq!(twice.steps[0].rate.of, RateOf::Product);
    assert_eq!(twice.steps[1].stage.value.0, "week_after_tassels");
    // Common practice, no source: 10 lb of a 15 % material for 1,000 sq ft, about 65 lb of nitrogen per acre.
    let soluble = programme("sweet_corn_soluble_then_nitrogen");
    let first = &soluble.steps[1];
    assert_eq!(first.material, MaterialId("sodium_nitrate_15".to_owned()));
    assert!((rate(first).0 * 0.15 - 65.34).abs() < 0.01);
    assert_eq!(soluble.steps[0].placement, StepPlacement::Injected);
    assert_eq!(soluble.steps[0].repeat.as_ref().unwrap().times.value, 3);
}

#[test]
fn tomatoes_are_fed_as_published() {
    // Kansas State University: for 30 ft of row 1/2 lb of 21-0-0, 14 oz of blood meal at 12 %, or 4 oz of urea.
    let three = programme("tomato_three_side_dressings");
    let (low, high) = rate(&three.steps[0]);
    for nitrogen in [0.5 * 0.21, 14.0 / 16.0 * 0.12, 4.0 / 16.0 * 0.46] {
        let for_100_ft = nitrogen / 30.0 * 100.0;
        assert!(low - 1e-9 <= for_100_ft && for_100_ft <= high + 1e-3, "{for_100_ft}");
    }
    // Extension Foundation, article 34836: 5 tablespoons for 10 ft; Louisiana State University: 13 oz to the pint, which
    // is 32 of them.
    let twice = programme("tomato_four_and_eight_weeks");
    assert!((rate(&twice.steps[0]).0 - 5.0 / 32.0 * 13.0 / 16.0 * 10.0).abs() < 1e-3);
    // Mississippi State University, P2037: 7 lb per acre and week.
    let tape = programme("tomato_through_tape");
    assert_eq!(rate(&tape.steps[1]), (7.0, 7.0));
    assert_eq!(tape.steps[1].repeat.as_ref().unwrap().every_days.value, 7);
    assert_eq!(tape.steps[1].repeat.as_ref().unwrap().times.mark, Mark::CommonPractice);
}

#[test]
fn others_are_fed_as_published() {
    let rates = |id: &str| programme(id).steps.iter().map(rate).collect::<Vec<_>>();
    // Midwest Vegetable Guide 2022, pages 122 and 221.
    assert_eq!(rates("vines_planting_and_running"), [(40.0, 60.0), (30.0, 45.0)]);
    assert_eq!(rates("vines_through_tape")[1], (3.0, 6.0));
    assert_eq!(rates("onion_planting_and_june"), [(70.0, 70.0), (90.0, 100.0)]);
    assert_eq!(rates("leek_planting_and_four_leaves")[1], (40.0, 50.0));
    assert_eq!(rates("garlic_fall_planted"), [(25.0, 25.0), (20.0, 40.0)]);
    // University of Delaware: cabbage 100 to 150 in two, broccoli 150 to 200 in three.
    let sum = |id: &str| {
        rates(id)
            .iter()
            .fold((0.0, 0.0), |sum, end| (sum.0 + end.0, sum.1 + end.1))
    };
    assert_eq!(sum("cabbage_two_parts"), (100.0, 150.0));
    let (low, high) = sum("broccoli_three_parts");
    assert!((low - 150.0).abs() < 0.2 && (high - 200.0).abs() < 0.2);
    // Louisiana State University AgCenter: 40 to 80 before planting, 30 to 50 each time.
    assert_eq!(rates("cole_fall"), [(40.0, 80.0), (30.0, 50.0), (30.0, 50.0)]);
    // University of Maine: 30 lb of 10-10-10 for 1,000 sq ft.
    assert_eq!(rates("potato_planting_and_six_weeks")[0], (1306.8, 1306.8));
}
