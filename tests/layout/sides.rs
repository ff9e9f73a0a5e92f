//! Moving a side and setting its length, on outlines worked by hand. All in metres.

use quillet::geometry::Point;
use quillet::layout::{Edit, EditError, Layout, OutlineChange, PlotChange, PlotId};
use quillet::quantity::{Length, Units};

const PLOT: PlotId = PlotId(1);

fn points(corners: &[(f64, f64)]) -> Vec<Point> {
    corners.iter().map(|(x, y)| Point::metres(*x, *y)).collect()
}

fn change(corners: &[(f64, f64)], change: PlotChange) -> Result<Vec<Point>, EditError> {
    let layout = Layout::empty(2026, Units::Metric).apply(&Edit::AddPlot {
        name: None,
        outline: points(corners),
    })?;
    let changed = layout.apply(&Edit::Plot(PLOT, change))?;
    Ok(changed.plots[0].outline.clone())
}

#[track_caller]
fn check_side(corners: &[(f64, f64)], side: usize, outward: f64, expected: &[(f64, f64)]) {
    let outward = Length::metres(outward);
    let moved = change(corners, PlotChange::Outline(OutlineChange::MoveSide { side, outward }));
    check_outline(moved, expected);
}

#[track_caller]
fn check_length(corners: &[(f64, f64)], side: usize, length: f64, expected: &[(f64, f64)]) {
    let length = Length::metres(length);
    let changed = change(
        corners,
        PlotChange::Outline(OutlineChange::SetSideLength { side, length }),
    );
    check_outline(changed, expected);
}

#[track_caller]
fn check_outline(outline: Result<Vec<Point>, EditError>, expected: &[(f64, f64)]) {
    let outline = outline.expect("the edit is possible");
    let expected = points(expected);
    let close = outline.len() == expected.len()
        && outline
            .iter()
            .zip(&expected)
            .all(|(a, b)| a.distance(*b) < Length::metres(1e-9));
    assert!(close, "{outline:?} is not {expected:?}");
}

/// 10 m by 5 m, against the clock: sides south, east, north, west.
const RECTANGLE: [(f64, f64); 4] = [(0.0, 0.0), (10.0, 0.0), (10.0, 5.0), (0.0, 5.0)];

#[test]
fn a_side_of_a_rectangle_moves_out_and_in() {
    check_side(&RECTANGLE, 1, 4.0, &[(0.0, 0.0), (14.0, 0.0), (14.0, 5.0), (0.0, 5.0)]);
    check_side(&RECTANGLE, 2, -1.0, &[(0.0, 0.0), (10.0, 0.0), (10.0, 4.0), (0.0, 4.0)]);
    check_side(
        &RECTANGLE,
        3,
        2.0,
        &[(-2.0, 0.0), (10.0, 0.0), (10.0, 5.0), (-2.0, 5.0)],
    );
    check_side(&RECTANGLE, 0, 0.0, &RECTANGLE);
}

#[test]
fn outward_is_outward_whichever_way_round_the_corners_run() {
    let mut clockwise = RECTANGLE;
    clockwise.reverse();
    // Reversed: (0,5) (10,5) (10,0) (0,0); its side 1 is the east one.
    check_side(&clockwise, 1, 4.0, &[(0.0, 5.0), (14.0, 5.0), (14.0, 0.0), (0.0, 0.0)]);
}

#[test]
fn neighbours_give_way_along_their_own_direction() {
    // A right trapezoid whose east side slants by 45 degrees. The north side, 6 m long at y = 4, goes up by 2: the
    // slanted side goes on to x = 4 at y = 6, and the west side stays at x = 0.
    let trapezoid = [(0.0, 0.0), (10.0, 0.0), (6.0, 4.0), (0.0, 4.0)];
    check_side(&trapezoid, 2, 2.0, &[(0.0, 0.0), (10.0, 0.0), (4.0, 6.0), (0.0, 6.0)]);
}

#[test]
fn a_side_of_a_triangle_moves_towards_its_tip() {
    // Base 8 at y = 0, tip at (4, 4): raised by 1 the base runs from x = 1 to x = 7.
    let triangle = [(0.0, 0.0), (8.0, 0.0), (4.0, 4.0)];
    check_side(&triangle, 0, -1.0, &[(1.0, 1.0), (7.0, 1.0), (4.0, 4.0)]);
}

#[test]
fn a_side_between_straight_neighbours_goes_off_by_a_step() {
    // The south side of the rectangle is in three parts; the middle one goes out by 1.
    let parted = [(0.0, 0.0), (3.0, 0.0), (7.0, 0.0), (10.0, 0.0), (10.0, 5.0), (0.0, 5.0)];
    let stepped = [
        (0.0, 0.0),
        (3.0, 0.0),
        (3.0, -1.0),
        (7.0, -1.0),
        (7.0, 0.0),
        (10.0, 0.0),
        (10.0, 5.0),
        (0.0, 5.0),
    ];
    check_side(&parted, 1, 1.0, &stepped);
    // The first part: on its west the west side gives way, on its east there is a step.
    let first = [
        (0.0, -1.0),
        (3.0, -1.0),
        (3.0, 0.0),
        (7.0, 0.0),
        (10.0, 0.0),
        (10.0, 5.0),
        (0.0, 5.0),
    ];
    check_side(&parted, 0, 1.0, &first);
}

#[test]
fn a_step_at_the_last_side_keeps_the_order_of_corners() {
    // The west side in two parts; the last side runs from (0, 2) to (0, 0) and goes out by 1.
    let parted = [(0.0, 0.0), (10.0, 0.0), (10.0, 5.0), (0.0, 5.0), (0.0, 2.0)];
    let stepped = [
        (-1.0, 0.0),
        (10.0, 0.0),
        (10.0, 5.0),
        (0.0, 5.0),
        (0.0, 2.0),
        (-1.0, 2.0),
    ];
    check_side(&parted, 4, 1.0, &stepped);
}

#[test]
fn a_side_does_not_fold_the_outline_over() {
    for (side, outward) in [(1, -10.0), (1, -11.0), (2, -5.0)] {
        let outward = Length::metres(outward);
        assert_eq!(
            change(
                &RECTANGLE,
                PlotChange::Outline(OutlineChange::MoveSide { side, outward })
            ),
            Err(EditError::FoldsOver)
        );
    }
    let triangle = [(0.0, 0.0), (8.0, 0.0), (4.0, 4.0)];
    let outward = Length::metres(-5.0);
    assert_eq!(
        change(
            &triangle,
            PlotChange::Outline(OutlineChange::MoveSide { side: 0, outward })
        ),
        Err(EditError::FoldsOver)
    );
}

#[test]
fn a_rectangle_stays_a_rectangle_when_a_side_is_set() {
    check_length(&RECTANGLE, 0, 12.0, &[(0.0, 0.0), (12.0, 0.0), (12.0, 5.0), (0.0, 5.0)]);
    // The end corner of the north side is the north-west one.
    check_length(&RECTANGLE, 2, 4.0, &[(6.0, 0.0), (10.0, 0.0), (10.0, 5.0), (6.0, 5.0)]);
    check_length(
        &RECTANGLE,
        3,
        6.0,
        &[(0.0, -1.0), (10.0, -1.0), (10.0, 5.0), (0.0, 5.0)],
    );
}

#[test]
fn a_turned_rectangle_stays_a_rectangle() {
    // Sides (3, 4) x 2 and (-4, 3): lengths 10 and 5. The first is made 15.
    let turned = [(0.0, 0.0), (6.0, 8.0), (2.0, 11.0), (-4.0, 3.0)];
    check_length(&turned, 0, 15.0, &[(0.0, 0.0), (9.0, 12.0), (5.0, 15.0), (-4.0, 3.0)]);
}

#[test]
fn an_l_stays_square_when_a_side_is_set() {
    let l = [(0.0, 0.0), (10.0, 0.0), (10.0, 4.0), (6.0, 4.0), (6.0, 9.0), (0.0, 9.0)];
    let wider = [(0.0, 0.0), (12.0, 0.0), (12.0, 4.0), (6.0, 4.0), (6.0, 9.0), (0.0, 9.0)];
    check_length(&l, 0, 12.0, &wider);
    // Narrower than the arm above it would fold the side after it over.
    let length = Length::metres(6.0);
    assert_eq!(
        change(
            &l,
            PlotChange::Outline(OutlineChange::SetSideLength { side: 0, length })
        ),
        Err(EditError::FoldsOver)
    );
}

#[test]
fn elsewhere_only_the_end_corner_moves() {
    let kite = [(0.0, 0.0), (4.0, 3.0), (0.0, 6.0), (-7.0, 3.0)];
    check_length(&kite, 0, 10.0, &[(0.0, 0.0), (8.0, 6.0), (0.0, 6.0), (-7.0, 3.0)]);
    let triangle = [(0.0, 0.0), (4.0, 0.0), (4.0, 3.0)];
    check_length(&triangle, 0, 6.0, &[(0.0, 0.0), (6.0, 0.0), (4.0, 3.0)]);
    // Square at the near end of the next side only, and at its far end only.
    let near = [(0.0, 0.0), (10.0, 0.0), (10.0, 4.0), (0.0, 7.0)];
    check_length(&near, 0, 12.0, &[(0.0, 0.0), (12.0, 0.0), (10.0, 4.0), (0.0, 7.0)]);
    let far = [(0.0, -3.0), (10.0, 0.0), (10.0, 4.0), (0.0, 4.0)];
    let twice = 2.0 * 10.0_f64.hypot(3.0);
    check_length(&far, 0, twice, &[(0.0, -3.0), (20.0, 3.0), (10.0, 4.0), (0.0, 4.0)]);
}

#[test]
fn a_typed_length_is_the_length_that_comes_out() {
    let turned = [(0.0, 0.0), (6.1, 8.2), (2.0, 11.0), (-4.0, 3.3)];
    let length = Length::feet(33.25);
    let outline = change(
        &turned,
        PlotChange::Outline(OutlineChange::SetSideLength { side: 1, length }),
    )
    .expect("possible");
    let measured = outline[1].distance(outline[2]);
    assert!((measured - length).abs() < Length::metres(1e-9), "{measured:?}");
}

#[test]
fn a_side_without_length_and_lengths_that_cannot_be_are_refused() {
    let doubled = [(0.0, 0.0), (0.0, 0.0), (10.0, 0.0), (10.0, 5.0)];
    let by = Length::metres(1.0);
    assert_eq!(
        change(
            &doubled,
            PlotChange::Outline(OutlineChange::MoveSide { side: 0, outward: by })
        ),
        Err(EditError::NoLength)
    );
    assert_eq!(
        change(
            &doubled,
            PlotChange::Outline(OutlineChange::SetSideLength { side: 0, length: by })
        ),
        Err(EditError::NoLength)
    );
    assert_eq!(
        change(
            &RECTANGLE,
            PlotChange::Outline(OutlineChange::MoveSide { side: 4, outward: by })
        ),
        Err(EditError::NoSuchCorner)
    );
    let said = |change_to| change(&RECTANGLE, change_to).expect_err("refused").to_string();
    assert_eq!(
        said(PlotChange::Outline(OutlineChange::SetSideLength {
            side: 0,
            length: Length::ZERO
        })),
        "Plot 1: the length of a side must be more than zero."
    );
    assert_eq!(
        said(PlotChange::Outline(OutlineChange::MoveSide {
            side: 0,
            outward: Length::metres(f64::NAN)
        })),
        "Plot 1: the way a side moves is not a number."
    );
}
