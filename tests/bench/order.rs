//! How long the order takes: `cargo bench --bench order`.

#![expect(
    clippy::expect_used,
    reason = "a test or bench that cannot go on says so by stopping"
)]

use std::sync::Arc;

use quillet::catalog::{Catalog, CropId};
use quillet::geometry::Point;
use quillet::layout::{
    Bed, BedGround, Edit, Layout, LotGermination, LotId, Packet, PacketList, Planting, SeedAmount, SeedLot,
};
use quillet::plan::{CropBook, Planner};
use quillet::quantity::{Fraction, Length, Mass, Units};

fn main() {
    divan::main();
}

/// One plot with 1,000 beds of 4 by 20 ft, planted with 300 cultivars of all crops, a lot and a list of packets each.
fn thousand_beds() -> Layout {
    let outline = [(0.0, 0.0), (200.0, 0.0), (200.0, 600.0), (0.0, 600.0)].map(|(x, y)| Point::feet(x, y));
    let mut layout = Layout::empty(2027, Units::Customary)
        .apply(&Edit::AddPlot {
            name: None,
            outline: outline.into(),
        })
        .expect("a plot");
    let plot = layout.plots[0].clone();
    let crops: Vec<CropId> = Catalog::built_in().crops().iter().map(|crop| crop.id.clone()).collect();
    let of = |number: usize| {
        (
            crops[number % crops.len()].clone(),
            format!("Cultivar {}", number % 300),
        )
    };
    for number in 0..1000_u32 {
        let (x, y) = (f64::from(number % 40) * 5.0, f64::from(number / 40) * 24.0);
        let corners = [(x, y), (x + 4.0, y), (x + 4.0, y + 20.0), (x, y + 20.0)].map(|(x, y)| Point::feet(x, y));
        let ground = BedGround::Corners(corners.into());
        let (crop, cultivar) = of(number as usize % 300);
        let id = quillet::layout::BedId(number + 10);
        let bed = Bed {
            planting: Some(Planting {
                cultivar,
                ..Planting::of(crop)
            }),
            ..layout.new_bed(&plot, ground, Some(format!("Bed {number}")), id)
        };
        layout.beds.push(Arc::new(bed));
    }
    for number in 0..300_u32 {
        let (crop, cultivar) = of(number as usize);
        layout.lots.push(Arc::new(SeedLot {
            id: LotId(number + 5000),
            crop: crop.clone(),
            cultivar: cultivar.clone(),
            form: None,
            year: 2025,
            amount: SeedAmount::Count(100),
            germination: LotGermination::Tag(Fraction::ONE),
        }));
        let packet = |amount, price| Packet {
            amount,
            price: Some(price),
        };
        layout.packets.push(Arc::new(PacketList {
            crop,
            cultivar,
            form: None,
            sizes: vec![
                packet(SeedAmount::Count(250), 4.0),
                packet(SeedAmount::Count(1000), 13.0),
                packet(SeedAmount::Weight(Mass::ounces(1.0)), 21.0),
                packet(SeedAmount::Weight(Mass::pounds(1.0)), 160.0),
            ],
        }));
    }
    layout
}

/// The same layout with another shelf, so that every line of the order is worked out again and no bed is.
fn restocked(layout: &Layout) -> Layout {
    let mut other = layout.clone();
    if let Some(lot) = other.lots.first_mut() {
        *lot = Arc::new(lot.as_ref().clone());
    }
    other
}

/// All 300 lines of the order, the beds' rows being known: the time of the whole plan.
#[divan::bench]
fn whole_order(bencher: divan::Bencher) {
    let layout = thousand_beds();
    let layouts = [layout.clone(), restocked(&layout)];
    let mut planner = Planner::default();
    planner.plan(&layouts[0]);
    let mut turn = 0;
    bencher.bench_local(|| {
        turn += 1;
        planner.plan(&layouts[turn % 2]).order.lines.len()
    });
}

/// One bed changed: its line, and the plan of all 1,000 beds.
#[divan::bench]
fn one_bed_changed(bencher: divan::Bencher) {
    let layout = thousand_beds();
    let bed = layout.beds[500].id;
    let mut planner = Planner::default();
    planner.plan(&layout);
    let mut turn = 0u32;
    bencher.bench_local(|| {
        turn += 1;
        let headland = Length::inches(f64::from(turn % 12));
        let change = quillet::layout::BedChange::SetHeadland(headland);
        let changed = layout.apply(&Edit::Bed(bed, change)).ok()?;
        Some(planner.plan(&changed).order.lines.len())
    });
}

/// Finding in the crop book as one types.
#[divan::bench]
fn finding(bencher: divan::Bencher) {
    let book = CropBook::of(&thousand_beds());
    bencher.bench_local(|| book.find("be").len());
}
