//! How long the plan takes after an edit: `cargo bench --bench plan`.

#![expect(
    clippy::expect_used,
    reason = "a test or bench that cannot go on says so by stopping"
)]

use quillet::geometry::Point;
use quillet::layout::{BedChange, BedGround, Edit, Layout, OutlineChange};
use quillet::plan::Planner;
use quillet::quantity::Units;

fn main() {
    divan::main();
}

/// One plot with 1,000 beds of 4 by 20 ft, 40 a line, all planted.
fn thousand_beds() -> Layout {
    let outline = [(0.0, 0.0), (200.0, 0.0), (200.0, 600.0), (0.0, 600.0)]
        .map(|(x, y)| Point::feet(x, y))
        .into();
    let mut layout = Layout::empty(2027, Units::Customary)
        .apply(&Edit::AddPlot { name: None, outline })
        .expect("a plot");
    let plot = layout.plots[0].id;
    for bed in 0..1000 {
        let (x, y) = (f64::from(bed % 40) * 5.0, f64::from(bed / 40) * 24.0);
        let corners = [(x, y), (x + 4.0, y), (x + 4.0, y + 20.0), (x, y + 20.0)].map(|(x, y)| Point::feet(x, y));
        let ground = BedGround::Corners(corners.into());
        layout = layout
            .apply(&Edit::AddBed {
                plot,
                name: None,
                ground,
            })
            .expect("a bed");
        let id = layout.beds[layout.beds.len() - 1].id;
        let crop = quillet::catalog::CropId("carrot".to_owned());
        layout = layout.apply(&Edit::Bed(id, BedChange::SetCrop(crop))).expect("a crop");
    }
    layout
}

/// The plan of 1,000 beds from nothing.
#[divan::bench]
fn from_nothing(bencher: divan::Bencher) {
    let layout = thousand_beds();
    bencher.bench(|| Planner::default().plan(&layout));
}

/// One corner of one bed dragged on: the edit, and the plan of all 1,000 beds after it.
#[divan::bench]
fn one_corner_dragged(bencher: divan::Bencher) {
    let layout = thousand_beds();
    let bed = layout.beds[500].id;
    let mut planner = Planner::default();
    planner.plan(&layout);
    let mut step = 0u32;
    bencher.bench_local(|| {
        step += 1;
        let corner = layout.beds[500].ground.clone();
        let BedGround::Corners(corners) = corner else {
            return None;
        };
        let to = corners[2].towards(corners[1], f64::from(step % 100) / 400.0);
        let moved = layout
            .apply(&Edit::Bed(
                bed,
                BedChange::Outline(OutlineChange::MoveCorner { corner: 2, to }),
            ))
            .ok()?;
        Some(planner.plan(&moved).totals.rows)
    });
}
