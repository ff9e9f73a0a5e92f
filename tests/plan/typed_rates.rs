//! What rates that a grower types come to on a bed: what was put down, lime, and credits over what is wanted.

use proptest::prelude::*;
use quillet::agronomy::Nutrient;
use quillet::layout::{
    Amount, BedChange, Credit, CreditKind, Dressing, Injecting, Layout, Lime, NutrientRate, Placement, Recommendation,
    When,
};
use quillet::plan::{CountedOn, Plan};
use quillet::quantity::{Bearing, Length, Mass, MassPerArea, MassPerLength, RateUnit};

use super::feeding::side_dressing;
use super::{bed, change, changes, close, plan, rectangle};

/// The 30 by 35 ft plot of the trade's rule: 11 rows of 30 ft, 3 ft apart.
fn eleven_rows() -> Layout {
    change(&rectangle(30.0, 35.0), BedChange::SetBearing(Bearing::EAST))
}

fn along(pounds: f64) -> Amount {
    Amount::PerRowLength(MassPerLength::pounds_per_100_feet(pounds))
}

fn over_ground(pounds: f64) -> Amount {
    Amount::PerArea(MassPerArea::pounds_per_1000_square_feet(pounds))
}

const BESIDE: Placement = Placement::SideDress { strip: None };

/// What a rate comes to on the eleven rows, in pounds.
fn pounds(rate: Amount, placement: Placement) -> f64 {
    let layout = eleven_rows();
    let on = CountedOn::of(rate, placement, &layout.beds[0], bed(&plan(&layout)));
    on.weight(rate).map_or(f64::NAN, Mass::to_pounds)
}

#[test]
fn what_was_put_down_as_a_rate_counts_what_the_dressing_counts() {
    // 330 ft of row; 330 × 3 ft = 990 sq ft of strips; 1,050 sq ft of ground. Arithmetic.
    close(pounds(along(3.0), BESIDE), 9.9, 1e-9);
    close(pounds(along(3.0), Placement::Broadcast), 9.9, 1e-9);
    close(pounds(over_ground(10.0), BESIDE), 9.9, 1e-9);
    close(pounds(over_ground(10.0), Placement::Broadcast), 10.5, 1e-9);
    let strip = Some(Length::feet(1.0));
    close(pounds(over_ground(10.0), Placement::Band { strip }), 3.3, 1e-9);
    // Nothing is planted, so nothing comes to the plants.
    assert!(pounds(Amount::PerPlant(Mass::ounces(1.0)), BESIDE).is_nan());
}

#[test]
fn a_dressing_of_that_rate_comes_to_the_same_weight_once() {
    let layout = changes(&eleven_rows(), [BedChange::SetCrop(super::crop("sweet_corn"))]);
    let strip = Some(Length::feet(1.0));
    let through = Injecting {
        strip,
        times: 3,
        ..Injecting::default()
    };
    for placement in [
        Placement::Broadcast,
        BESIDE,
        Placement::Band { strip },
        Placement::Injected(through),
    ] {
        for rate in [over_ground(10.0), along(3.0), Amount::PerPlant(Mass::ounces(0.1))] {
            let dressing = Dressing {
                placement,
                ..side_dressing("urea", rate, When::Unsaid)
            };
            let layout = change(&layout, BedChange::AddDressing(dressing));
            let plan = plan(&layout);
            let on = CountedOn::of(rate, placement, &layout.beds[0], bed(&plan));
            let once = bed(&plan).dressings[0].each_planned();
            close(on.weight(rate).unwrap() / once, 1.0, 1e-9);
        }
    }
}

proptest! {
    #[test]
    fn a_weight_on_the_bed_is_a_rate_and_back(weight in 0.0..1e4_f64, kind in 0_usize..4) {
        let layout = eleven_rows();
        let plan = plan(&layout);
        let (kind, placement) = [
            (along(1.0), BESIDE),
            (over_ground(1.0), BESIDE),
            (over_ground(1.0), Placement::Broadcast),
            (over_ground(1.0), Placement::Band { strip: Some(Length::feet(1.0)) }),
        ][kind];
        let on = CountedOn::of(kind, placement, &layout.beds[0], bed(&plan));
        let again = on.rate(Mass::pounds(weight)).and_then(|rate| on.weight(rate)).unwrap();
        prop_assert!((again.to_pounds() - weight).abs() <= 1e-9 * weight.max(1.0));
    }
}

#[test]
fn credits_over_what_is_wanted_are_kept_apart() {
    // V. Grubinger, University of Vermont Extension, Nitrogen Management for Annual Vegetable Crops: 100 lb/acre from a
    // legume sod and 10 for each percent of organic matter; a paper that wants 130.
    let acre = MassPerArea::pounds_per_acre;
    let paper = Recommendation {
        n: Some(NutrientRate::PerArea(acre(130.0))),
        ..Recommendation::default()
    };
    let credit = |pounds: f64| {
        BedChange::AddCredit(Credit {
            name: "sod".to_owned(),
            what: CreditKind::Nitrogen {
                rate: acre(pounds),
                typed_in: None,
            },
        })
    };
    let over = |credits: &[f64]| {
        let paper = BedChange::SetRecommendation(Some(paper));
        let all = std::iter::once(paper).chain(credits.iter().map(|&pounds| credit(pounds)));
        let plan = plan(&changes(&eleven_rows(), all));
        let account = *bed(&plan).feeding.account(Nutrient::Nitrogen);
        (
            account.to_give.unwrap().to_pounds_per_acre(),
            account.over_credited.to_pounds_per_acre(),
        )
    };
    assert_eq!(over(&[]).1, 0.0);
    let (to_give, more) = over(&[100.0, 20.0]);
    close(to_give, 10.0, 1e-9);
    assert_eq!(more, 0.0);
    let (to_give, more) = over(&[100.0, 50.0]);
    assert_eq!(to_give, 0.0);
    close(more, 20.0, 1e-9);
}

fn limed(lime: MassPerArea, typed_in: &str) -> Plan {
    let paper = Recommendation {
        lime: Some(Lime {
            rate: lime,
            typed_in: RateUnit::named(typed_in).ok(),
            purity: 1.0,
        }),
        ..Recommendation::default()
    };
    plan(&change(&eleven_rows(), BedChange::SetRecommendation(Some(paper))))
}

#[test]
fn lime_past_ten_times_a_dose_is_mentioned_and_never_refused() {
    // Penn State Agricultural Analytical Services Laboratory, Home Garden report notes: no more than 10 lb to 100 sq ft in
    // one dose, 21 and more in three. Ten times a published rate is what a wrong unit makes (common practice, no source).
    let said = |plan: &Plan| {
        let mut said = plan.heads_up.iter().filter(|said| said.what.starts_with("Lime for"));
        said.next().map(|said| (said.what.clone(), said.source.clone()))
    };
    let pounds = MassPerArea::pounds_per_1000_square_feet;
    assert_eq!(said(&limed(pounds(210.0), "lb/1000 sq ft")), None);
    assert_eq!(said(&limed(pounds(999.0), "lb/1000 sq ft")), None);
    // 4,000 lb/acre typed as if it were for 1,000 sq ft. There is no dressing on the bed.
    let plan = limed(pounds(4000.0), "lb/1000 sq ft");
    let (what, source) = said(&plan).unwrap();
    assert!(
        what.contains("4,000 lb/1,000 sq ft is more than ten times what is spread in one dose, 100 lb/1,000 sq ft"),
        "{what}"
    );
    assert!(source.contains("Penn State"), "{source}");
    close(bed(&plan).feeding.lime.unwrap().total.to_pounds(), 4200.0, 1e-6);
    // In the grower's own unit: 2,000 lb to the ton and 43,560 sq ft to the acre.
    let (what, _) = said(&limed(MassPerArea::tons_per_acre(30.0), "ton/acre")).unwrap();
    assert!(what.contains(": 30 tons/acre is more"), "{what}");
}
