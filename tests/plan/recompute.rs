//! Only what an edit touched is worked out again.

use std::sync::Arc;

use quillet::geometry::Point;
use quillet::layout::{BedChange, BedGround, Edit, Layout, OutlineChange, PlotChange};
use quillet::plan::Planner;
use quillet::quantity::{Length, Units};

/// One plot with `n` beds of 4 by 20 ft side by side.
fn many_beds(n: usize) -> Layout {
    let wide = n as f64 * 5.0;
    let outline = [(0.0, 0.0), (wide, 0.0), (wide, 24.0), (0.0, 24.0)]
        .map(|(x, y)| Point::feet(x, y))
        .into();
    let mut layout = Layout::empty(2027, Units::Customary)
        .apply(&Edit::AddPlot { name: None, outline })
        .unwrap();
    let plot = layout.plots[0].id;
    for bed in 0..n {
        let west = bed as f64 * 5.0;
        let corners = [(west, 2.0), (west + 4.0, 2.0), (west + 4.0, 22.0), (west, 22.0)];
        let ground = BedGround::Corners(corners.map(|(x, y)| Point::feet(x, y)).into());
        layout = layout
            .apply(&Edit::AddBed {
                plot,
                name: None,
                ground,
            })
            .unwrap();
    }
    layout
}

#[test]
fn one_bed_changed_is_one_bed_worked_out() {
    let layout = many_beds(40);
    let mut planner = Planner::default();
    let before = planner.plan(&layout);
    assert_eq!(planner.worked_out(), 40);
    planner.plan(&layout);
    assert_eq!(planner.worked_out(), 40, "the same layout again costs nothing");

    let bed = layout.beds[17].id;
    let to = Point::feet(17.0 * 5.0 + 4.5, 2.0);
    let moved = layout
        .apply(&Edit::Bed(
            bed,
            BedChange::Outline(OutlineChange::MoveCorner { corner: 1, to }),
        ))
        .unwrap();
    let after = planner.plan(&moved);
    assert_eq!(planner.worked_out(), 41);
    for (index, (one, other)) in before.beds.iter().zip(&after.beds).enumerate() {
        assert_eq!(Arc::ptr_eq(one, other), index != 17, "bed {index}");
    }
    assert!(after.beds[17].area > before.beds[17].area);
}

#[test]
fn a_plot_changed_is_its_own_beds_worked_out() {
    let layout = many_beds(3);
    let outline = [(0.0, 100.0), (30.0, 100.0), (30.0, 140.0), (0.0, 140.0)]
        .map(|(x, y)| Point::feet(x, y))
        .into();
    let layout = layout.apply(&Edit::AddPlotWithBed { name: None, outline }).unwrap();
    let mut planner = Planner::default();
    planner.plan(&layout);
    assert_eq!(planner.worked_out(), 4);
    let second = layout.plots[1].id;
    let change = PlotChange::Outline(OutlineChange::MoveSide {
        side: 3,
        outward: Length::feet(14.0),
    });
    let wider = layout.apply(&Edit::Plot(second, change)).unwrap();
    let plan = planner.plan(&wider);
    assert_eq!(planner.worked_out(), 5);
    assert!((plan.beds[3].area.to_square_feet() - 44.0 * 40.0).abs() < 1e-6);
}

#[test]
fn a_new_name_works_nothing_out() {
    let layout = many_beds(5);
    let mut planner = Planner::default();
    planner.plan(&layout);
    planner.plan(&layout.apply(&Edit::SetName("Alder Bend".to_owned())).unwrap());
    assert_eq!(planner.worked_out(), 5);
}

#[test]
fn a_kept_plan_is_the_one_worked_out_from_nothing() {
    let layout = many_beds(6);
    let mut planner = Planner::default();
    planner.plan(&layout);
    let bed = layout.beds[2].id;
    let changed = layout
        .apply(&Edit::Bed(bed, BedChange::SetRowSpacing(Length::inches(15.0))))
        .unwrap();
    let removed = changed.apply(&Edit::RemoveBed(layout.beds[4].id)).unwrap();
    let (kept, fresh) = (planner.plan(&removed), Planner::default().plan(&removed));
    assert_eq!(kept.totals, fresh.totals);
    assert_eq!(kept.heads_up, fresh.heads_up);
    for (one, other) in kept.beds.iter().zip(&fresh.beds) {
        assert_eq!(one.rows, other.rows);
        assert_eq!(one.pieces, other.pieces);
    }
}

#[test]
fn rows_grow_with_the_side_that_their_bed_lies_on() {
    let outline = [(0.0, 0.0), (62.0, 0.0), (62.0, 48.0), (0.0, 48.0)]
        .map(|(x, y)| Point::feet(x, y))
        .into();
    let layout = Layout::empty(2027, Units::Customary)
        .apply(&Edit::AddPlot { name: None, outline })
        .unwrap();
    let plot = layout.plots[0].id;
    let bed = |layout: &Layout, west: f64, east: f64| {
        let corners = [(west, 0.0), (east, 0.0), (east, 48.0), (west, 48.0)];
        let ground = BedGround::Corners(corners.map(|(x, y)| Point::feet(x, y)).into());
        layout
            .apply(&Edit::AddBed {
                plot,
                name: None,
                ground,
            })
            .unwrap()
    };
    let layout = bed(&bed(&layout, 0.0, 30.0), 30.0, 62.0);
    let change = OutlineChange::MoveSide {
        side: 3,
        outward: Length::feet(14.0),
    };
    let wider = layout.apply(&Edit::Plot(plot, PlotChange::Outline(change))).unwrap();
    let (before, after) = (Planner::default().plan(&layout), Planner::default().plan(&wider));
    assert_eq!(before.beds[0].rows.len(), 10);
    assert_eq!(after.beds[0].rows.len(), 14, "44 ft at 3 ft a row");
    assert!(
        Arc::ptr_eq(&layout.beds[1], &wider.beds[1]),
        "the bed on the other side stays the very same"
    );
}
