//! A bed split in two, and beds over what others leave free.

use jiff::civil::date;
use quillet::geometry::{Point, Remainder};
use quillet::layout::{BedChange, BedGround, BedId, Edit, Injecting, Layout, Placement, PlotId, Used};
use quillet::quantity::{Bearing, Mass};

use crate::garden::{CORN, LOWER, SIDE_DRESSING, STRIP, applied, garden, rectangle};

use super::{check_edit, check_refused, corn};

fn split(at: (f64, f64), bearing: Bearing) -> Edit {
    Edit::SplitBed {
        bed: CORN,
        at: Point::feet(at.0, at.1),
        bearing,
    }
}

fn corners_in_feet(layout: &Layout, bed: BedId) -> Vec<(f64, f64)> {
    let bed = layout.bed(bed).expect("the bed is there");
    let BedGround::Corners(corners) = &bed.ground else {
        panic!("{} has an outline of its own", bed.name)
    };
    let feet = |metres: f64| (metres / 0.3048 * 1e6).round() / 1e6 + 0.0;
    let mut corners: Vec<(f64, f64)> = corners.iter().map(|corner| (feet(corner.x), feet(corner.y))).collect();
    corners.sort_by(|a, b| a.partial_cmp(b).expect("numbers"));
    corners
}

#[test]
fn what_lies_on_the_right_hand_becomes_a_bed_of_its_own() {
    let before = garden();
    let new = BedId(before.next_id());
    let after = check_edit(split((20.0, 0.0), Bearing::NORTH), "split Corn block");
    assert_eq!(
        corners_in_feet(&after, CORN),
        [(0.0, 0.0), (0.0, 48.0), (20.0, 0.0), (20.0, 48.0)]
    );
    assert_eq!(
        corners_in_feet(&after, new),
        [(20.0, 0.0), (20.0, 48.0), (62.0, 0.0), (62.0, 48.0)]
    );
    let (stayed, new) = (after.bed(CORN).expect("it stayed"), after.bed(new).expect("it is new"));
    assert_eq!(
        (stayed.name.as_str(), new.name.as_str()),
        ("Corn block", "Corn block 2")
    );
    assert_eq!(new.planting, stayed.planting);
    assert_eq!(new.dressings.len(), 1);
    assert_ne!(new.dressings[0].id, stayed.dressings[0].id);
    assert_eq!(new.dressings[0].amount, stayed.dressings[0].amount);
    // It is listed after the bed that it was part of.
    let order: Vec<&str> = after.beds.iter().map(|bed| bed.name.as_str()).collect();
    assert_eq!(order, ["Corn block", "Corn block 2", "Beans"]);
}

#[test]
fn left_over_width_goes_away_from_a_line_along_the_rows() {
    let rows_north = corn(BedChange::SetBearing(Bearing::NORTH));
    let before = applied(&garden(), &[rows_north]);
    let new = BedId(before.next_id());
    let on = |line: Bearing| {
        let after = applied(&before, &[split((20.0, 0.0), line)]);
        let remainder = |bed: BedId| after.bed(bed).expect("it is there").remainder;
        (remainder(CORN), remainder(new))
    };
    assert_eq!(on(Bearing::NORTH), (Remainder::Left, Remainder::Right));
    // Seen along a line that runs the other way, the bed that stays is the eastern one.
    assert_eq!(on(Bearing::degrees(180.0)), (Remainder::Right, Remainder::Left));
    let across = applied(&before, &[split((0.0, 20.0), Bearing::EAST)]);
    assert_eq!(across.bed(CORN).map(|bed| bed.remainder), Some(Remainder::Centred));
}

#[test]
fn what_was_used_is_shared_by_ground() {
    // The bed is drawn 20 ft past the plot, where nothing can be put down, and a shed and a pear stand east of the line.
    let past_the_plot = BedGround::Corners(rectangle(-20.0, 0.0, 82.0, 48.0));
    let before = applied(&garden(), &[corn(BedChange::SetGround(past_the_plot))]);
    let mut dressing = before
        .bed(CORN)
        .and_then(|bed| bed.dressing(SIDE_DRESSING))
        .expect("it is there")
        .clone();
    dressing.used = vec![Used {
        amount: Mass::pounds(30.0),
        on: Some(date(2026, 6, 12)),
    }];
    let before = applied(&before, &[corn(BedChange::SetDressing(dressing))]);
    let new = BedId(before.next_id());
    let after = applied(&before, &[split((20.0, 0.0), Bearing::NORTH)]);
    let pounds = |bed: BedId| {
        let used = after
            .bed(bed)
            .and_then(|bed| bed.dressings[0].used.first().copied())
            .expect("it was used");
        assert_eq!(used.on, Some(date(2026, 6, 12)));
        used.amount.to_pounds()
    };
    let west = 20.0 * 48.0;
    let east = 42.0 * 48.0 - 8.0 * 10.0 - std::f64::consts::PI * 1.5 * 1.5;
    // The pear is drawn as a polygon round its circle.
    assert!((pounds(CORN) - 30.0 * west / (west + east)).abs() < 1e-3);
    assert!((pounds(CORN) + pounds(new) - 30.0).abs() < 1e-9);
}

#[test]
fn parts_that_are_fed_through_their_tape_are_one_zone() {
    let mut dressing = garden().bed(CORN).expect("it is there").dressings[0].clone();
    dressing.placement = Placement::Injected(Injecting::default());
    let before = applied(&garden(), &[corn(BedChange::SetDressing(dressing))]);
    let new = BedId(before.next_id());
    let zones = |before: &Layout| {
        let after = applied(before, &[split((20.0, 0.0), Bearing::NORTH)]);
        [CORN, new].map(|bed| after.bed(bed).expect("it is there").zone.clone())
    };
    assert_eq!(zones(&before), ["Corn block", "Corn block"]);
    let beans = before.beds[1].id;
    let taken = Edit::Bed(beans, BedChange::SetZone("corn block".to_owned()));
    assert_eq!(zones(&applied(&before, &[taken])), ["Corn block 2", "Corn block 2"]);
    let own = corn(BedChange::SetZone("Hill".to_owned()));
    assert_eq!(zones(&applied(&before, &[own])), ["Hill", "Hill"]);
    // A bed that is not fed through its tape runs by itself, as before.
    assert_eq!(zones(&garden()), ["", ""]);
}

#[test]
fn a_bent_bed_comes_to_a_bed_for_each_piece() {
    let mut u = rectangle(0.0, 0.0, 60.0, 40.0);
    u.splice(
        2..2,
        [(60.0, 40.0), (40.0, 40.0), (40.0, 10.0), (20.0, 10.0), (20.0, 40.0)].map(|(x, y)| Point::feet(x, y)),
    );
    u.remove(7);
    let before = applied(&garden(), &[corn(BedChange::SetGround(BedGround::Corners(u)))]);
    let after = applied(&before, &[split((0.0, 20.0), Bearing::EAST)]);
    let names: Vec<&str> = after.beds_of(LOWER).map(|bed| bed.name.as_str()).collect();
    assert_eq!(names, ["Corn block", "Corn block 2", "Corn block 3"]);
}

#[test]
fn a_line_beside_the_bed_is_refused() {
    check_refused(
        &split((70.0, 0.0), Bearing::NORTH),
        "The line does not part Corn block in two.",
    );
    check_refused(
        &Edit::SplitBed {
            bed: BedId(99),
            at: Point::feet(0.0, 0.0),
            bearing: Bearing::NORTH,
        },
        "The bed that was to be changed is not in the layout any more.",
    );
}

#[test]
fn free_ground_is_filled() {
    // The strip's south half has beans in it.
    let before = garden();
    let new = BedId(before.next_id());
    let after = check_edit(Edit::FillPlot(STRIP), "fill Plot 1");
    assert_eq!(
        corners_in_feet(&after, new),
        [(70.0, 24.0), (70.0, 48.0), (80.0, 24.0), (80.0, 48.0)]
    );
    // An empty plot is filled by a bed that follows it.
    let outline = rectangle(100.0, 0.0, 30.0, 30.0);
    let with_plot = applied(&before, &[Edit::AddPlot { name: None, outline }]);
    let plot = PlotId(before.next_id());
    let filled = applied(&with_plot, &[Edit::FillPlot(plot)]);
    assert_eq!(
        filled.beds_of(plot).map(|bed| bed.ground.clone()).collect::<Vec<_>>(),
        [BedGround::WholePlot]
    );
}

#[test]
fn free_ground_in_two_pieces_is_filled_by_two_beds() {
    let middle = Edit::AddBed {
        plot: PlotId(5),
        name: None,
        ground: BedGround::Corners(rectangle(70.0, 30.0, 10.0, 6.0)),
    };
    let after = applied(&garden(), &[middle, Edit::FillPlot(STRIP)]);
    let areas: Vec<f64> = after
        .beds_of(STRIP)
        .map(|bed| match &bed.ground {
            BedGround::WholePlot => panic!("each has an outline of its own"),
            BedGround::Corners(corners) => quillet::geometry::polygon::signed_area(corners)
                .to_square_feet()
                .round(),
        })
        .collect();
    let mut of_new = areas[2..].to_vec();
    of_new.sort_by(f64::total_cmp);
    assert_eq!(of_new, [60.0, 120.0]);
}

#[test]
fn a_full_plot_and_a_ring_of_free_ground_are_refused() {
    check_refused(&Edit::FillPlot(LOWER), "The beds of Lower plot leave no ground free.");
    let filled = applied(&garden(), &[Edit::FillPlot(STRIP)]);
    let error = filled.apply(&Edit::FillPlot(STRIP)).expect_err("nothing is free");
    assert_eq!(error.to_string(), "The beds of Plot 1 leave no ground free.");
    let island = corn(BedChange::SetGround(BedGround::Corners(rectangle(
        20.0, 20.0, 10.0, 10.0,
    ))));
    let error = applied(&garden(), &[island])
        .apply(&Edit::FillPlot(LOWER))
        .expect_err("a ring");
    assert_eq!(
        error.to_string(),
        "What is free of Lower plot goes all round its beds, and a bed has one outline."
    );
    assert!(error.hint().ends_with('.'));
}
