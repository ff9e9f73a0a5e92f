//! What new things are like and what they are called.

use quillet::geometry::Point;
use quillet::layout::{Bed, BedGround, Edit, Layout, Water};
use quillet::quantity::{Bearing, Length, Units};

use crate::garden::{applied, rectangle};

fn first_bed(units: Units, outline: Vec<Point>) -> Bed {
    let layout = applied(
        &Layout::empty(2026, units),
        &[Edit::AddPlotWithBed { name: None, outline }],
    );
    layout.beds[0].as_ref().clone()
}

#[track_caller]
fn check_bearing(outline: &[(f64, f64)], degrees: f64) {
    let outline = outline.iter().map(|(x, y)| Point::metres(*x, *y)).collect();
    let bearing = first_bed(Units::Metric, outline).bearing;
    assert!((bearing.to_degrees() - degrees).abs() < 1e-9, "{bearing:?}");
}

#[test]
fn rows_run_along_the_longest_side() {
    check_bearing(&[(0.0, 0.0), (10.0, 0.0), (10.0, 20.0), (0.0, 20.0)], 0.0);
    check_bearing(&[(0.0, 0.0), (30.0, 0.0), (30.0, 20.0), (0.0, 20.0)], 90.0);
    // North-east by 3 east and 4 north: atan(3/4).
    check_bearing(
        &[(0.0, 0.0), (6.0, 8.0), (2.0, 11.0), (-4.0, 3.0)],
        0.75_f64.atan().to_degrees(),
    );
    // North-west: the same as 180 less 45.
    check_bearing(&[(0.0, 0.0), (2.0, 2.0), (-8.0, 12.0), (-10.0, 10.0)], 135.0);
}

#[test]
fn the_way_round_does_not_matter() {
    let outline = [(0.0, 0.0), (30.0, 0.0), (30.0, 20.0), (0.0, 20.0)];
    let mut reversed = outline;
    reversed.reverse();
    check_bearing(&reversed, 90.0);
}

#[test]
fn of_equally_long_sides_the_one_closest_to_north_counts() {
    check_bearing(&[(0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (0.0, 10.0)], 0.0);
    check_bearing(&[(0.0, 0.0), (0.0, 10.0), (10.0, 10.0), (10.0, 0.0)], 0.0);
}

#[test]
fn a_bed_with_corners_goes_by_its_own() {
    let layout = applied(
        &Layout::empty(2026, Units::Customary),
        &[
            Edit::AddPlot {
                name: None,
                outline: rectangle(0.0, 0.0, 62.0, 48.0),
            },
            Edit::AddBed {
                plot: quillet::layout::PlotId(1),
                name: None,
                ground: BedGround::Corners(rectangle(0.0, 0.0, 20.0, 48.0)),
            },
        ],
    );
    assert_eq!(layout.beds[0].bearing, Bearing::NORTH);
}

#[test]
fn a_new_bed_in_feet() {
    let bed = first_bed(Units::Customary, rectangle(0.0, 0.0, 30.0, 35.0));
    // Common practice, no source: 3 ft is the standard row spacing of sweet corn.
    assert_eq!(bed.row_spacing, Length::feet(3.0));
    assert_eq!(bed.edge_margin, None);
    assert_eq!(bed.edge_margin_in_force(), Length::feet(1.5));
    assert_eq!((bed.headland, bed.clear), (Length::ZERO, Length::ZERO));
    assert_eq!(bed.shortest, Length::feet(2.0));
    assert_eq!((bed.lines.per_row, bed.lines.staggered), (1, false));
    assert_eq!(bed.water, Water::BuriedDrip);
    assert_eq!((bed.tape.lines_per_row, bed.tape.spare), (1, Length::feet(1.0)));
    assert!(bed.planting.is_none() && bed.dressings.is_empty());
}

#[test]
fn a_new_bed_in_metres() {
    let bed = first_bed(Units::Metric, rectangle(0.0, 0.0, 30.0, 35.0));
    assert_eq!(bed.row_spacing, Length::metres(0.9));
    assert_eq!(bed.shortest, Length::metres(0.6));
    assert_eq!(bed.tape.spare, Length::metres(0.3));
}

#[test]
fn names_take_the_first_number_that_is_free() {
    let add = |name: Option<&str>| Edit::AddPlotWithBed {
        name: name.map(str::to_owned),
        outline: rectangle(0.0, 0.0, 10.0, 10.0),
    };
    let layout = applied(
        &Layout::empty(2026, Units::Customary),
        &[add(None), add(Some("Plot 2")), add(None)],
    );
    let names: Vec<_> = layout.plots.iter().map(|plot| plot.name.as_str()).collect();
    assert_eq!(names, ["Plot 1", "Plot 2", "Plot 3"]);
    let without = applied(&layout, &[Edit::RemovePlot(layout.plots[1].id)]);
    assert_eq!(without.next_plot_name(), "Plot 2");
    assert_eq!(without.next_bed_name(), "Bed 2");
}
