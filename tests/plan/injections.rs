//! Feeding through the tape.

use quillet::agronomy::{Dissolves, Nutrient};
use quillet::catalog::StageId;
use quillet::geometry::Point;
use quillet::layout::{
    Amount, Basis, BedChange, BedGround, BedId, Credit, CreditKind, Dressing, Edit, Injecting, Layout, NutrientRate,
    Placement, PlotChange, Recommendation, Tape, Used, Water, When,
};
use quillet::plan::feeding::{Feeding, Injection, Strength};
use quillet::quantity::{Bearing, Concentration, FlowPerLength, Length, Mass, MassPerArea, MassPerLength, Volume};

use super::feeding::side_dressing;
use super::{change, changes, close, plan, rectangle};

/// Three rows of 100 ft, 6 ft apart, fed 7 lb of nitrogen to the acre a week from 20-20-20.
fn tomatoes(how: Injecting) -> Layout {
    let tape = Tape {
        flow: FlowPerLength::gallons_per_minute_per_100_feet(0.45),
        ..Tape::PLAIN
    };
    changes(
        &rectangle(18.0, 100.0),
        [
            BedChange::SetBearing(Bearing::NORTH),
            BedChange::SetRowSpacing(Length::feet(6.0)),
            BedChange::SetTape(tape),
            BedChange::AddDressing(weekly(how)),
        ],
    )
}

fn weekly(how: Injecting) -> Dressing {
    Dressing {
        name: "Weekly feed".to_owned(),
        basis: Basis::Nitrogen,
        placement: Placement::Injected(how),
        ..side_dressing(
            "soluble_20_20_20",
            Amount::PerArea(MassPerArea::pounds_per_acre(7.0)),
            When::Unsaid,
        )
    }
}

fn injection(layout: &Layout) -> Injection {
    let plan = plan(layout);
    assert_eq!(plan.injections.len(), 1);
    plan.injections[0].clone()
}

fn run(layout: &Layout) -> Strength {
    injection(layout).run.unwrap()
}

#[test]
fn a_weekly_feed_is_as_published() {
    // Mississippi State University Extension P2037, Fertigation: The Basics of Injecting Fertilizer for Field-Grown
    // Tomatoes: 7 lb N/acre/week. Tape flow 0.45 gpm/100 ft: Penn State Extension, Determining How Long to Run Drip
    // Irrigation Systems for Vegetables, 26 June 2013. The rest is arithmetic.
    let layout = tomatoes(Injecting {
        times: 12,
        ..Injecting::default()
    });
    let of_layout = injection(&layout);
    close(of_layout.product.to_pounds(), 1.446, 0.001);
    let run = of_layout.run.unwrap();
    close(run.flow.to_gallons_per_minute(), 1.35, 1e-9);
    close(run.inject.to_minutes(), 370.4, 0.05);
    close(run.nitrogen.to_parts_per_million(), 69.3, 0.05);
    close(run.feed.to_gallons(), 500.0, 1e-9);
    // On the strips of the rows, 1,800 sq ft, 500 gal lie 0.4456 in deep (0.62338 gal to the inch and square foot).
    close(run.depth.to_inches(), 500.0 / (1800.0 * 0.623_377), 1e-4);
    // The bed's total is all twelve weeks.
    close(plan(&layout).beds[0].dressings[0].total.to_pounds(), 12.0 * 1.446, 0.01);
}

#[test]
fn a_bed_that_is_split_is_still_fed_in_one_run() {
    // 42 ft hold seven rows of 6 ft.
    let layout = tomatoes(Injecting::default());
    let wide = [(0.0, 0.0), (42.0, 0.0), (42.0, 100.0), (0.0, 100.0)].map(|(x, y)| Point::feet(x, y));
    let layout = change(&layout, BedChange::SetGround(BedGround::WholePlot));
    let outline = PlotChange::SetOutline(wide.to_vec());
    let layout = layout.apply(&Edit::Plot(layout.plots[0].id, outline)).unwrap();
    let before = run(&layout);
    let line = plan(&layout).beds[0].line_after_row(3).unwrap();
    let split = layout.apply(&line.edit(layout.beds[0].id)).unwrap();
    let injection = injection(&split);
    assert_eq!(injection.of.len(), 2);
    let after = injection.run.unwrap();
    close(
        after.nitrogen.to_parts_per_million(),
        before.nitrogen.to_parts_per_million(),
        1e-6,
    );
    close(
        after.flow.to_gallons_per_minute(),
        before.flow.to_gallons_per_minute(),
        1e-9,
    );
}

#[test]
fn the_last_outlet_gets_feed_late_and_rinsing_lasts_as_long() {
    let run_of = |how| run(&tomatoes(how));
    let run = run_of(Injecting::default());
    // 300 ft of five-eighths tape hold 4.78 gal, 50 ft of three-quarter pipe 1.15 gal; of 100 outlets the harmonic
    // number is 5.187: (1.15 + 4.78 × 5.187) ÷ 1.35. Plain arithmetic.
    let gallons = |inches: f64, feet: f64| std::f64::consts::FRAC_PI_4 * inches * inches * feet * 12.0 / 231.0;
    let harmonic: f64 = (1..=100).map(|k| 1.0 / f64::from(k)).sum();
    let minutes = (gallons(0.75, 50.0) + gallons(0.625, 300.0) * harmonic) / 1.35;
    close(run.advance.to_minutes(), minutes, 1e-6);
    close(run.rinse.to_minutes(), minutes, 1e-6);
    let near = run_of(Injecting {
        supply: Length::ZERO,
        ..Injecting::default()
    });
    assert!(near.advance < run.advance);
}

#[test]
fn a_tank_that_is_too_small_is_said() {
    // Lorenz and Maynard (1980), Knott's Handbook for Vegetable Growers, 2nd ed., solubility table as reproduced:
    // potassium nitrate 108 lb to 100 gal of cold water. 1 lb of K2O from 13-0-46 is 2.174 lb, 2.01 gal at least.
    let feed = |gallons: f64| {
        let how = Injecting {
            tank: Volume::gallons(gallons),
            ..Injecting::default()
        };
        let per_acre = 1.0 / 1800.0 * 43_560.0;
        let dressing = Dressing {
            basis: Basis::Potash,
            material: quillet::catalog::MaterialId("potassium_nitrate".to_owned()),
            amount: Amount::PerArea(MassPerArea::pounds_per_acre(per_acre)),
            ..weekly(how)
        };
        let layout = tomatoes(how);
        let old = layout.beds[0].dressings[0].id;
        let layout = changes(
            &layout,
            [BedChange::RemoveDressing(old), BedChange::AddDressing(dressing)],
        );
        run(&layout).dissolving.unwrap()
    };
    let (water, stands) = feed(1.5);
    assert_eq!(stands, Dissolves::Not);
    close(water.least.to_gallons(), 2.01, 0.01);
    assert_eq!(feed(2.1).1, Dissolves::Barely);
    assert_eq!(feed(2.6).1, Dissolves::Well);
}

#[test]
fn one_part_to_a_hundred_is_not_one_in_a_hundred() {
    // University of Massachusetts fact sheet, Ratios and Concentrations, counts one gallon in 100; other pages add it
    // to 100: 1 % apart.
    let with = |to_water| {
        run(&tomatoes(Injecting {
            to_water,
            ..Injecting::default()
        }))
    };
    let (one_in, one_to) = (with(false).nitrogen, with(true).nitrogen);
    close(one_in / one_to, 1.01, 1e-9);
}

#[test]
fn beds_of_one_zone_are_fed_in_one_run() {
    let how = Injecting::default();
    let layout = change(&tomatoes(how), BedChange::SetZone("Lower".to_owned()));
    let outline = [(30.0, 0.0), (48.0, 0.0), (48.0, 100.0), (30.0, 100.0)].map(|(x, y)| Point::feet(x, y));
    let layout = layout
        .apply(&Edit::AddPlotWithBed {
            name: None,
            outline: outline.into(),
        })
        .unwrap();
    let second = layout.beds[1].id;
    let first = layout.beds[0].as_ref().clone();
    let apply = |layout: &Layout, change| layout.apply(&Edit::Bed(second, change)).unwrap();
    let mut layout = apply(&layout, BedChange::SetZone("lower".to_owned()));
    for change in [
        BedChange::SetBearing(first.bearing),
        BedChange::SetRowSpacing(first.row_spacing),
        BedChange::SetTape(first.tape),
        BedChange::AddDressing(weekly(how)),
    ] {
        layout = apply(&layout, change);
    }
    let together = injection(&layout);
    assert_eq!(together.zone, "Lower");
    let beds: Vec<BedId> = together.of.iter().map(|(bed, _)| *bed).collect();
    assert_eq!(beds, [layout.beds[0].id, second]);
    close(together.product.to_pounds(), 2.0 * 1.446, 0.001);
    close(together.run.unwrap().flow.to_gallons_per_minute(), 2.7, 1e-9);
    // On another day it is another run.
    let later = Dressing {
        when: When::Day("2027-07-01".parse().unwrap()),
        ..layout.beds[1].dressings[0].clone()
    };
    assert_eq!(plan(&apply(&layout, BedChange::SetDressing(later))).injections.len(), 2);
    // Calcium in the one bed's run and phosphate in the other's share a stock all the same.
    let calcium = Dressing {
        material: quillet::catalog::MaterialId("calcium_nitrate".to_owned()),
        ..layout.beds[1].dressings[0].clone()
    };
    let clash = plan(&apply(&layout, BedChange::SetDressing(calcium)));
    assert!(
        clash
            .heads_up
            .iter()
            .any(|it| it.what.contains("must not share a stock"))
    );
    // Another zone runs by itself.
    let apart = apply(&layout, BedChange::SetZone("Upper".to_owned()));
    assert_eq!(plan(&apart).injections.len(), 2);
}

#[test]
fn the_days_of_a_weekly_feed_follow_from_the_first() {
    let how = Injecting {
        times: 3,
        ..Injecting::default()
    };
    let layout = tomatoes(how);
    let days = |layout: &Layout| -> Vec<String> {
        let feedings = injection(layout).feedings;
        let day = |feeding: &Feeding| feeding.day.map(|day| day.to_string()).unwrap_or_default();
        feedings.iter().map(day).collect()
    };
    assert_eq!(days(&layout), ["", "", ""]);
    let mut dressing = Dressing {
        when: When::Day("2027-06-28".parse().unwrap()),
        ..layout.beds[0].dressings[0].clone()
    };
    let dated = change(&layout, BedChange::SetDressing(dressing.clone()));
    assert_eq!(days(&dated), ["2027-06-28", "2027-07-05", "2027-07-12"]);
    // One that was late moves those after it.
    dressing.used = vec![used(1.5, Some("2027-06-30"))];
    let late = change(&layout, BedChange::SetDressing(dressing));
    assert_eq!(days(&late), ["2027-06-30", "2027-07-07", "2027-07-14"]);
}

fn used(pounds: f64, on: Option<&str>) -> Used {
    Used {
        amount: Mass::pounds(pounds),
        on: on.map(|day| day.parse().unwrap()),
    }
}

/// A feed of four weeks with so much used of it, in order.
fn begun(pounds: &[f64]) -> Layout {
    let layout = tomatoes(Injecting {
        times: 4,
        ..Injecting::default()
    });
    let dressing = Dressing {
        basis: Basis::Product,
        amount: Amount::PerRowLength(MassPerLength::pounds_per_100_feet(1.0)),
        used: pounds.iter().map(|pounds| used(*pounds, None)).collect(),
        ..layout.beds[0].dressings[0].clone()
    };
    let hungry = Recommendation {
        n: Some(NutrientRate::PerArea(MassPerArea::pounds_per_acre(500.0))),
        ..Recommendation::default()
    };
    let layout = change(&layout, BedChange::SetRecommendation(Some(hungry)));
    change(&layout, BedChange::SetDressing(dressing))
}

#[test]
fn the_feedings_still_ahead_follow_those_that_are_done() {
    // 3 lb a time over 300 ft of row, 12 lb in all.
    let products = |layout: &Layout| -> Vec<f64> {
        let run = injection(layout);
        run.feedings.iter().map(|feeding| feeding.product.to_pounds()).collect()
    };
    for (all, expected) in [
        (&[][..], [3.0, 3.0, 3.0, 3.0]),
        (&[6.0], [6.0, 2.0, 2.0, 2.0]),
        (&[6.0, 0.0], [6.0, 0.0, 3.0, 3.0]),
        (&[1.5, 1.5], [1.5, 1.5, 4.5, 4.5]),
        (&[3.0, 3.0, 9.0], [3.0, 3.0, 9.0, 0.0]),
        (&[3.0, 3.0, 3.0, 4.0], [3.0, 3.0, 3.0, 4.0]),
    ] {
        let layout = begun(all);
        for (product, expected) in products(&layout).into_iter().zip(expected) {
            close(product, expected, 1e-9);
        }
        let plan = plan(&layout);
        let dressing = &plan.beds[0].dressings[0];
        let done: f64 = all.iter().sum();
        close(dressing.done.to_pounds(), done, 1e-9);
        close(dressing.total.to_pounds(), expected.iter().sum(), 1e-9);
        assert_eq!(usize::from(dressing.times_done), all.len());
        assert_eq!(dressing.is_done(), all.len() == 4);
        let rows: Mass = dressing.rows.iter().copied().sum();
        close(rows.to_pounds(), expected.iter().sum(), 1e-9);
        // What is bought knows what of it is done, and so does the account.
        close(plan.shopping.lines[0].done.to_pounds(), done, 1e-9);
        let account = plan.beds[0].feeding.account(Nutrient::Nitrogen);
        let ahead = dressing.total.to_pounds() - done;
        close(
            account.done.to_pounds_per_acre() * ahead,
            account.ahead.to_pounds_per_acre() * done,
            1e-9,
        );
        // The next run takes what is next.
        let next = expected.get(all.len()).copied().unwrap_or(3.0);
        close(injection(&layout).product.to_pounds(), next, 1e-9);
    }
}

/// Two equal beds of one zone, each with so much used of its weekly feeds of 3 lb.
fn two_beds(first: &[f64], other: &[f64], other_times: u16) -> Layout {
    let layout = change(&begun(first), BedChange::SetZone("Lower".to_owned()));
    let outline = [(30.0, 0.0), (48.0, 0.0), (48.0, 100.0), (30.0, 100.0)].map(|(x, y)| Point::feet(x, y));
    let layout = layout
        .apply(&Edit::AddPlotWithBed {
            name: None,
            outline: outline.into(),
        })
        .unwrap();
    let (one, id) = (layout.beds[0].clone(), layout.beds[1].id);
    let feed = Dressing {
        used: other.iter().map(|pounds| used(*pounds, None)).collect(),
        placement: Placement::Injected(Injecting {
            times: other_times,
            ..Injecting::default()
        }),
        ..one.dressings[0].clone()
    };
    let changes = [
        BedChange::SetBearing(Bearing::NORTH),
        BedChange::SetRowSpacing(Length::feet(6.0)),
        BedChange::SetTape(one.tape),
        BedChange::SetWater(one.water),
        BedChange::SetZone("Lower".to_owned()),
        BedChange::SetRecommendation(one.feeding.laboratory),
        BedChange::AddDressing(feed),
    ];
    changes
        .into_iter()
        .fold(layout, |layout, change| layout.apply(&Edit::Bed(id, change)).unwrap())
}

#[test]
fn a_run_counts_only_the_beds_on_which_it_is_still_ahead() {
    let pounds = |layout: &Layout| -> Vec<f64> {
        let run = injection(layout);
        run.feedings.iter().map(|feeding| feeding.product.to_pounds()).collect()
    };
    let same = |layout: &Layout, expected: &[f64]| {
        let found = pounds(layout);
        assert_eq!(found.len(), expected.len(), "{found:?}");
        for (found, expected) in found.iter().zip(expected) {
            close(*found, *expected, 1e-9);
        }
    };
    let even = two_beds(&[3.0], &[3.0], 4);
    same(&even, &[6.0, 6.0, 6.0, 6.0]);
    assert!(!injection(&even).is_uneven);
    // 5 and 5 lb used on one bed leave 1 lb each for it; the other has 3 lb each ahead.
    let uneven = two_beds(&[5.0, 5.0], &[], 4);
    same(&uneven, &[3.0, 3.0, 4.0, 4.0]);
    let run = injection(&uneven);
    assert!(run.is_uneven && run.feedings.iter().all(|feeding| !feeding.is_done));
    close(run.product.to_pounds(), 3.0, 1e-9);
    // A bed with more runs than the first keeps them all.
    let longer = two_beds(&[3.0; 4], &[3.0; 4], 6);
    same(&longer, &[6.0, 6.0, 6.0, 6.0, 3.0, 3.0]);
    let run = injection(&longer);
    assert!(run.feedings[3].is_done && !run.feedings[4].is_done);
    close(run.product.to_pounds(), 3.0, 1e-9);
}

#[test]
fn a_series_that_begins_before_planting_is_drawn_on_its_days() {
    let dressing = Dressing {
        when: When::Day("2027-04-26".parse().unwrap()),
        ..begun(&[]).beds[0].dressings[0].clone()
    };
    let layout = changes(
        &begun(&[]),
        [
            BedChange::SetCrop(super::crop("sweet_corn")),
            BedChange::SetPlanted(Some("2027-05-10".parse().unwrap())),
            BedChange::SetDressing(dressing),
        ],
    );
    let plan = plan(&layout);
    let feeding = &plan.beds[0].feeding;
    // 26 April, 3, 10 and 17 May: the first three by planting, the last a week after it.
    let days = f64::from(feeding.days_to_harvest.unwrap());
    let at: Vec<f64> = feeding.steps.iter().map(|step| step.at).collect();
    assert_eq!(at[..3], [0.0, 0.0, 0.0]);
    close(at[3], 7.0 / days, 1e-12);
}

#[test]
fn more_feedings_than_planned_stay_counted() {
    let layout = begun(&[3.0, 3.0, 3.0]);
    let Placement::Injected(how) = layout.beds[0].dressings[0].placement else {
        panic!("through the tape")
    };
    let fewer = Dressing {
        placement: Placement::Injected(Injecting { times: 2, ..how }),
        ..layout.beds[0].dressings[0].clone()
    };
    let plan = plan(&change(&layout, BedChange::SetDressing(fewer)));
    let dressing = &plan.beds[0].dressings[0];
    close(dressing.total.to_pounds(), 9.0, 1e-9);
    close(dressing.planned.to_pounds(), 6.0, 1e-9);
    assert!(dressing.is_done());
    assert_eq!(plan.injections[0].feedings.len(), 3);
}

#[test]
fn a_feed_that_has_begun_follows_a_dressing_done_beside_it() {
    // The side-dressing falls when corn is a foot high, the feed begins at planting and lasts past it.
    let layout = begun(&[3.0]);
    let beside = Dressing {
        name: "Beside".to_owned(),
        ..side_dressing(
            "soluble_20_20_20",
            Amount::PerRowLength(MassPerLength::pounds_per_100_feet(2.0)),
            When::Stage(StageId("corn_12_to_18_in".to_owned())),
        )
    };
    let crop = BedChange::SetCrop(super::crop("sweet_corn"));
    let layout = changes(
        &layout,
        [
            crop,
            BedChange::SetInRow(Some(Length::feet(1.0))),
            BedChange::AddDressing(beside),
        ],
    );
    let feed = Dressing {
        placement: Placement::Injected(Injecting {
            times: 12,
            ..Injecting::default()
        }),
        when: When::Stage(StageId("at_planting".to_owned())),
        ..layout.beds[0].dressings[0].clone()
    };
    let beside = Dressing {
        used: vec![used(8.2, None)],
        ..layout.beds[0].dressings[1].clone()
    };
    let layout = changes(&layout, [BedChange::SetDressing(feed), BedChange::SetDressing(beside)]);
    // 2.2 lb more than the 6 lb planned comes off the eleven feedings ahead.
    let product = injection(&layout).feedings[5].product;
    close(product.to_pounds(), 3.0 - 2.2 / 11.0, 1e-9);
}

#[test]
fn a_bed_without_tape_cannot_be_fed_through_it() {
    let layout = change(&tomatoes(Injecting::default()), BedChange::SetWater(Water::Rain));
    let sentence = injection(&layout).run.unwrap_err();
    assert!(sentence.contains("has no tape"), "{sentence}");
    // A bed that lost its rows says so too, and nothing panics.
    let narrow = change(
        &tomatoes(Injecting::default()),
        BedChange::SetGround(BedGround::Corners(
            [(0.0, 0.0), (0.1, 0.0), (0.1, 0.1)]
                .map(|(x, y)| Point::feet(x, y))
                .into(),
        )),
    );
    assert!(injection(&narrow).run.is_err());
}

#[test]
fn what_does_not_dissolve_and_what_must_not_share_a_stock_is_mentioned() {
    let how = Injecting {
        tank: Volume::gallons(0.25),
        ..Injecting::default()
    };
    let layout = tomatoes(how);
    let says = |layout: &Layout, words: &str| plan(layout).heads_up.iter().any(|it| it.what.contains(words));
    // 1.446 lb in a quart is far over the 3.5 lb to the gallon that a 20-20-20 gives.
    assert!(says(&layout, "does not dissolve in"));
    let roomy = tomatoes(Injecting::default());
    assert!(!says(&roomy, "does not dissolve in"));
    assert!(!says(&roomy, "must not share a stock"));
    // University of California, Prevention and Mitigation: calcium nitrate with phosphates.
    let calcium = Dressing {
        material: quillet::catalog::MaterialId("calcium_nitrate".to_owned()),
        ..weekly(Injecting::default())
    };
    assert!(says(
        &change(&roomy, BedChange::AddDressing(calcium)),
        "must not share a stock"
    ));
}

#[test]
fn strong_nitrate_in_the_water_is_a_matter_of_health() {
    // United States Environmental Protection Agency: 10 mg/L as nitrogen. A report of 38 mg/L of nitrate is 8.58 mg/L of
    // nitrogen; of nitrogen it is far over.
    let water = |ppm: f64| {
        let credit = Credit {
            name: "the well".to_owned(),
            what: CreditKind::Water {
                nitrate_n: Concentration::parts_per_million(ppm),
                as_nitrate: false,
                depth: Length::inches(12.0),
            },
        };
        let layout = change(&rectangle(30.0, 35.0), BedChange::AddCredit(credit));
        plan(&layout)
            .heads_up
            .iter()
            .any(|it| it.what.contains("drinking water"))
    };
    assert!(!water(8.58));
    assert!(water(38.0));
}
