//! How long feeding takes: `cargo bench --bench feeding`.

#![expect(
    clippy::expect_used,
    reason = "a test or bench that cannot go on says so by stopping"
)]

use quillet::agronomy::{MixMaterial, MixTarget, Nutrients, mix};
use quillet::catalog::{Analysis, Catalog, CropId, MaterialId, StageId};
use quillet::geometry::Point;
use quillet::layout::{Amount, Basis, BedChange, BedGround, Dressing, DressingId, Edit, Layout, Placement, Used, When};
use quillet::plan::Planner;
use quillet::quantity::{Fraction, Mass, MassPerArea, Units};
use quillet::sheets::feeding_list::FeedingList;

fn main() {
    divan::main();
}

fn dressing(stage: &str) -> Dressing {
    Dressing {
        id: DressingId(0),
        name: "Side-dressing".to_owned(),
        material: MaterialId("sodium_nitrate_15".to_owned()),
        basis: Basis::Product,
        amount: Amount::PerArea(MassPerArea::pounds_per_1000_square_feet(10.0)),
        typed_in: None,
        placement: Placement::SideDress { strip: None },
        when: When::Stage(StageId(stage.to_owned())),
        used: Vec::new(),
    }
}

/// One plot with 1,000 beds of 4 by 20 ft in sweet corn, each with three dressings.
fn thousand_beds() -> Layout {
    let outline = [(0.0, 0.0), (200.0, 0.0), (200.0, 600.0), (0.0, 600.0)].map(|(x, y)| Point::feet(x, y));
    let mut layout = Layout::empty(2027, Units::Customary)
        .apply(&Edit::AddPlot {
            name: None,
            outline: outline.into(),
        })
        .expect("a plot");
    let plot = layout.plots[0].id;
    for number in 0..1000_u32 {
        let (x, y) = (f64::from(number % 40) * 5.0, f64::from(number / 40) * 24.0);
        let corners = [(x, y), (x + 4.0, y), (x + 4.0, y + 20.0), (x, y + 20.0)].map(|(x, y)| Point::feet(x, y));
        let ground = BedGround::Corners(corners.into());
        let add = Edit::AddBed {
            plot,
            name: None,
            ground,
        };
        layout = layout.apply(&add).expect("a bed");
        let id = layout.beds[layout.beds.len() - 1].id;
        for change in [
            BedChange::SetCrop(CropId("sweet_corn".to_owned())),
            BedChange::LayDown {
                name: "programme".to_owned(),
                dressings: ["at_planting", "corn_12_to_18_in", "knee_high"].map(dressing).into(),
                in_place: true,
            },
        ] {
            layout = layout.apply(&Edit::Bed(id, change)).expect("a change");
        }
    }
    layout
}

/// What was really used is typed for one bed: the edit, and the plan of all 1,000 beds after it.
#[divan::bench]
fn one_use_typed(bencher: divan::Bencher) {
    let layout = thousand_beds();
    let bed = layout.beds[500].clone();
    let mut planner = Planner::default();
    planner.plan(&layout);
    let mut step = 0u32;
    bencher.bench_local(|| {
        step += 1;
        let used = Used {
            amount: Mass::pounds(f64::from(step % 100) / 10.0),
            on: None,
        };
        let done = Dressing {
            used: vec![used],
            ..bed.dressings[0].clone()
        };
        let after = layout.apply(&Edit::Bed(bed.id, BedChange::SetDressing(done))).ok()?;
        Some(planner.plan(&after).shopping.cost)
    });
}

/// The whole fertilizer list of 3,000 dressings in words.
#[divan::bench]
fn whole_list(bencher: divan::Bencher) {
    let layout = thousand_beds();
    let plan = Planner::default().plan(&layout);
    bencher.bench(|| FeedingList::of(&layout, &plan));
}

/// The cheapest mix of every material in the catalogue.
#[divan::bench]
fn mix_of_all(bencher: divan::Bencher) {
    let price = |number: usize| 0.5 + (number % 7) as f64 / 4.0;
    let materials: Vec<MixMaterial> = Catalog::built_in()
        .materials()
        .iter()
        .enumerate()
        .map(|(number, material)| MixMaterial {
            analysis: material.analysis.value,
            available: Fraction::ONE,
            price_per_kilogram: Some(price(number)),
            at_hand: None,
            is_restricted: false,
        })
        .chain(Analysis::percent(7.0, 3.0, 5.0).map(|analysis| MixMaterial {
            analysis,
            available: Fraction::ONE,
            price_per_kilogram: Some(0.3),
            at_hand: Some(Mass::kilograms(5.0)),
            is_restricted: false,
        }))
        .collect();
    let wanted = Nutrients {
        n: Mass::kilograms(12.0),
        p2o5: Mass::kilograms(6.0),
        k2o: Mass::kilograms(9.0),
    };
    let target = MixTarget {
        least: wanted,
        ..MixTarget::default()
    };
    bencher.bench(|| mix(&materials, &target));
}
