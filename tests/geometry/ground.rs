//! Where rows may stand.

use quillet::geometry::{Bounds, Clearing, Point, Region, ground, polygon};
use quillet::quantity::Length;

use super::shapes::{rectangle, ring, ring_feet, star};

fn area(region: &Region) -> f64 {
    region.area().to_square_metres()
}

fn clearing(ring: Vec<Point>, clear: f64) -> Clearing {
    Clearing {
        ring,
        clear: Length::metres(clear),
    }
}

#[track_caller]
fn check_area(region: &Region, want: f64) {
    assert!((area(region) - want).abs() < 1e-3, "{} m², not {want}", area(region));
}

fn shape_of(region: &Region) -> Vec<usize> {
    region.pieces().iter().map(|piece| piece.holes().len()).collect()
}

#[test]
fn typed_corners_stay_to_the_last_bit_when_nothing_cuts_them() {
    let outline = ring_feet(&[(0.1, 0.2), (120.3, 7.7), (111.1, 90.9), (33.3, 70.07)]);
    let bed = ring_feet(&[(30.1, 20.2), (90.3, 20.7), (90.1, 50.9)]);
    let post = ring_feet(&[(60.01, 25.03), (63.07, 25.09), (62.0, 28.11)]);
    let alone = ground(&outline, None, &[], Length::ZERO).unwrap();
    assert_eq!(alone.pieces()[0].outer(), outline);
    let within = ground(&outline, Some(&bed), &[clearing(post.clone(), 0.0)], Length::ZERO).unwrap();
    assert_eq!(within.pieces()[0].outer(), bed);
    assert_eq!(within.pieces()[0].holes(), [vec![post[0], post[2], post[1]]]);
    // A grown obstacle leaves the outline alone too, and lying outside changes nothing.
    let grown = ground(
        &outline,
        None,
        &[clearing(post, 1.0), clearing(rectangle(200.0, 0.0, 210.0, 9.0), 2.0)],
        Length::ZERO,
    );
    assert_eq!(grown.unwrap().pieces()[0].outer(), outline);
}

#[test]
fn a_bed_that_shares_sides_with_its_plot_keeps_its_corners() {
    // Corners on a slanted side are on it only to within rounding.
    let (a, b) = (Point::feet(3.3, 1.1), Point::feet(140.7, 31.9));
    let outline = [a, b, Point::feet(120.0, 130.0), Point::feet(-4.4, 101.0)];
    let bed = [a.towards(b, 0.1), a.towards(b, 0.7), Point::feet(70.0, 60.0)];
    let region = ground(&outline, Some(&bed), &[], Length::ZERO).unwrap();
    assert_eq!(region.pieces()[0].outer(), bed);
    let same = ground(&outline, Some(&outline), &[], Length::ZERO).unwrap();
    assert_eq!(same.pieces()[0].outer(), outline);
    let wider = ground(&bed, Some(&outline), &[], Length::ZERO).unwrap();
    assert_eq!(wider.pieces()[0].outer(), bed);
}

#[test]
fn a_bed_that_reaches_over_its_plot_is_cut_off_there() {
    let region = ground(
        &rectangle(0.0, 0.0, 10.0, 10.0),
        Some(&rectangle(4.0, -3.0, 6.0, 15.0)),
        &[],
        Length::ZERO,
    );
    check_area(&region.unwrap(), 20.0);
    let beside = ground(
        &rectangle(0.0, 0.0, 10.0, 10.0),
        Some(&rectangle(20.0, 0.0, 30.0, 10.0)),
        &[],
        Length::ZERO,
    );
    assert!(beside.unwrap().is_empty());
    // A U-shaped plot cuts one bed into two pieces.
    let u = ring(&[
        (0.0, 0.0),
        (9.0, 0.0),
        (9.0, 9.0),
        (6.0, 9.0),
        (6.0, 3.0),
        (3.0, 3.0),
        (3.0, 9.0),
        (0.0, 9.0),
    ]);
    let two = ground(&u, Some(&rectangle(-1.0, 5.0, 10.0, 7.0)), &[], Length::ZERO).unwrap();
    assert_eq!(shape_of(&two), [0, 0]);
    check_area(&two, 12.0);
}

#[test]
fn repeated_and_straight_corners_direction_and_closing_do_not_matter() {
    let plain = Region::new(&rectangle(0.0, 0.0, 6.0, 4.0)).unwrap();
    let untidy = ring(&[
        (0.0, 0.0),
        (0.0, 0.0),
        (0.0, 2.0),
        (0.0, 4.0),
        (3.0, 4.0),
        (6.0, 4.0),
        (6.0, 4.0),
        (6.0, 0.0),
        (2.0, 0.0),
        (0.0, 0.0),
    ]);
    let region = Region::new(&untidy).unwrap();
    assert_eq!(area(&region), area(&plain));
    assert_eq!(region.bounds(), plain.bounds());
    assert!(polygon::signed_area(region.pieces()[0].outer()).to_square_metres() > 0.0);
    let mut reversed = untidy;
    reversed.reverse();
    assert_eq!(area(&Region::new(&reversed).unwrap()), 24.0);
}

#[test]
fn a_spike_adds_no_ground() {
    let spiked = ring(&[
        (0.0, 0.0),
        (6.0, 0.0),
        (6.0, 2.0),
        (9.0, 2.0),
        (6.0, 2.0),
        (6.0, 4.0),
        (0.0, 4.0),
    ]);
    let region = Region::new(&spiked).unwrap();
    check_area(&region, 24.0);
    assert_eq!(region.bounds().unwrap().max, Point::metres(6.0, 4.0));
}

#[test]
fn an_outline_that_touches_itself_at_a_corner_is_two_pieces() {
    let hourglass = ring(&[(0.0, 0.0), (1.0, 1.0), (2.0, 0.0), (2.0, 2.0), (1.0, 1.0), (0.0, 2.0)]);
    let region = Region::new(&hourglass).unwrap();
    assert_eq!(shape_of(&region), [0, 0]);
    check_area(&region, 2.0);
}

#[test]
fn a_rectangle_drawn_in_is_the_smaller_rectangle() {
    let region = ground(&rectangle(1.0, 2.0, 11.0, 22.0), None, &[], Length::metres(1.5)).unwrap();
    check_area(&region, 7.0 * 17.0);
    assert_eq!(region.pieces()[0].outer().len(), 4);
    let bounds = region.bounds().unwrap();
    let want = Bounds {
        min: Point::metres(2.5, 3.5),
        max: Point::metres(9.5, 20.5),
    };
    assert!(bounds.min.distance(want.min).to_metres() < 1e-9 && bounds.max.distance(want.max).to_metres() < 1e-9);
    assert!(
        ground(&rectangle(0.0, 0.0, 3.0, 9.0), None, &[], Length::metres(1.5))
            .unwrap()
            .is_empty()
    );
}

#[test]
fn drawing_in_rounds_the_inner_corners_and_keeps_the_outer_ones() {
    // An L of 12 m² drawn in by 0.5 m: by hand, two rectangles less a quarter disc's corner at the inner bend.
    let l = ring(&[(0.0, 0.0), (4.0, 0.0), (4.0, 2.0), (2.0, 2.0), (2.0, 4.0), (0.0, 4.0)]);
    let region = ground(&l, None, &[], Length::metres(0.5)).unwrap();
    // Mitred: 3 x 1 and 1 x 2 make 5. Round at the bend (2, 2): the corner square of 0.5 m less a quarter disc is kept.
    let want = 5.0 + 0.25 - std::f64::consts::PI * 0.25 / 4.0;
    check_area(&region, want);
}

#[test]
fn drawing_in_can_part_ground_at_a_neck() {
    let dumbbell = ring(&[
        (0.0, 0.0),
        (10.0, 0.0),
        (10.0, 4.5),
        (14.0, 4.5),
        (14.0, 0.0),
        (24.0, 0.0),
        (24.0, 10.0),
        (14.0, 10.0),
        (14.0, 5.5),
        (10.0, 5.5),
        (10.0, 10.0),
        (0.0, 10.0),
    ]);
    let region = ground(&dumbbell, None, &[], Length::metres(1.0)).unwrap();
    assert_eq!(shape_of(&region), [0, 0]);
    // Round the mouths of the neck the boundary bends, but 1 m from the sides nothing of the bend is left to see.
    assert!(area(&region) >= 128.0 && area(&region) < 128.2, "{}", area(&region));
}

#[test]
fn a_grown_obstacle_is_its_sides_pushed_out_and_its_corners_rounded() {
    let tree = polygon::circle_ring(Point::metres(20.0, 20.0), Length::metres(2.0));
    let shed = rectangle(40.0, 10.0, 44.0, 16.0);
    let region = ground(
        &rectangle(0.0, 0.0, 60.0, 40.0),
        None,
        &[clearing(tree, 1.5), clearing(shed, 2.0)],
        Length::ZERO,
    )
    .unwrap();
    assert_eq!(shape_of(&region), [2]);
    let disc = std::f64::consts::PI * 3.5 * 3.5;
    let grown = 4.0 * 6.0 + 20.0 * 2.0 + std::f64::consts::PI * 4.0;
    let off = area(&region) - (2400.0 - disc - grown);
    assert!(off.abs() < 0.02, "{off}");
    // What is kept clear is never less than asked for.
    for corner in region.pieces()[0].holes()[1].iter() {
        let nearest = polygon::nearest_place(&rectangle(40.0, 10.0, 44.0, 16.0), *corner)
            .unwrap()
            .1;
        let far = nearest.distance(*corner).to_metres();
        assert!((2.0 - 1e-9..2.0 + 1e-3).contains(&far), "{far}");
    }
}

#[test]
fn overlapping_touching_and_nested_obstacles_count_once() {
    let plot = rectangle(0.0, 0.0, 100.0, 100.0);
    let pair = |a: Vec<Point>, b: Vec<Point>| {
        ground(&plot, None, &[clearing(a, 0.0), clearing(b, 0.0)], Length::ZERO).unwrap()
    };
    let overlap = pair(rectangle(10.0, 10.0, 20.0, 20.0), rectangle(15.0, 15.0, 25.0, 25.0));
    assert_eq!(shape_of(&overlap), [1]);
    check_area(&overlap, 10_000.0 - 175.0);
    let side_by_side = pair(rectangle(10.0, 10.0, 20.0, 20.0), rectangle(20.0, 10.0, 30.0, 20.0));
    assert_eq!(shape_of(&side_by_side), [1]);
    check_area(&side_by_side, 9800.0);
    let corner = pair(rectangle(10.0, 10.0, 20.0, 20.0), rectangle(20.0, 20.0, 30.0, 30.0));
    check_area(&corner, 9800.0);
    let nested = pair(rectangle(10.0, 10.0, 30.0, 30.0), rectangle(15.0, 15.0, 20.0, 20.0));
    assert_eq!(shape_of(&nested), [1]);
    check_area(&nested, 9600.0);
    let twice = pair(rectangle(10.0, 10.0, 30.0, 30.0), rectangle(10.0, 10.0, 30.0, 30.0));
    check_area(&twice, 9600.0);
    let opposite = pair(
        rectangle(10.0, 10.0, 30.0, 30.0),
        ring(&[(10.0, 10.0), (10.0, 30.0), (30.0, 30.0), (30.0, 10.0)]),
    );
    check_area(&opposite, 9600.0);
}

#[test]
fn obstacles_on_the_outline_bite_into_it_and_one_over_everything_leaves_nothing() {
    let plot = rectangle(0.0, 0.0, 10.0, 10.0);
    let with = |ring: Vec<Point>, clear: f64| ground(&plot, None, &[clearing(ring, clear)], Length::ZERO).unwrap();
    check_area(&with(rectangle(-2.0, 4.0, 3.0, 6.0), 0.0), 94.0);
    // Touching an edge from within, from without, and along its whole length.
    check_area(&with(rectangle(0.0, 4.0, 3.0, 6.0), 0.0), 94.0);
    check_area(&with(rectangle(-3.0, 4.0, 0.0, 6.0), 0.0), 100.0);
    check_area(&with(rectangle(0.0, 0.0, 2.0, 10.0), 0.0), 80.0);
    // Outside, but its clear distance reaches in.
    check_area(&with(rectangle(11.0, -5.0, 14.0, 15.0), 3.0), 80.0);
    // Across the plot: two pieces.
    let parted = with(rectangle(4.0, -1.0, 6.0, 11.0), 0.0);
    assert_eq!(shape_of(&parted), [0, 0]);
    for over in [rectangle(-1.0, -1.0, 11.0, 11.0), rectangle(0.0, 0.0, 10.0, 10.0)] {
        assert!(with(over, 0.0).is_empty());
    }
}

#[test]
fn an_obstacle_that_rings_ground_leaves_the_island() {
    // Four walls, each an obstacle, close a courtyard of 4 m by 4 m in.
    let walls = [
        rectangle(10.0, 10.0, 16.0, 11.0),
        rectangle(10.0, 15.0, 16.0, 16.0),
        rectangle(10.0, 10.0, 11.0, 16.0),
        rectangle(15.0, 10.0, 16.0, 16.0),
    ]
    .map(|wall| clearing(wall, 0.0));
    let region = ground(&rectangle(0.0, 0.0, 30.0, 30.0), None, &walls, Length::ZERO).unwrap();
    check_area(&region, 900.0 - 20.0);
    assert!(region.contains(Point::metres(13.0, 13.0)));
    assert!(!region.contains(Point::metres(10.5, 13.0)));
    assert_eq!(region.pieces().len(), 2);
}

#[test]
fn an_obstacle_that_crosses_itself_covers_all_it_goes_round() {
    let bowtie = ring(&[(2.0, 2.0), (6.0, 6.0), (6.0, 2.0), (2.0, 6.0)]);
    let region = ground(
        &rectangle(0.0, 0.0, 10.0, 10.0),
        None,
        &[clearing(bowtie, 0.0)],
        Length::ZERO,
    )
    .unwrap();
    check_area(&region, 92.0);
    let pentagram: Vec<Point> = (0..5)
        .map(|i| {
            let (sin, cos) = (f64::from(i) * 0.8 * std::f64::consts::PI).sin_cos();
            Point::metres(5.0 + 3.0 * cos, 5.0 + 3.0 * sin)
        })
        .collect();
    let starred = ground(
        &rectangle(0.0, 0.0, 10.0, 10.0),
        None,
        &[clearing(pentagram, 0.0)],
        Length::ZERO,
    )
    .unwrap();
    assert!(
        !starred.contains(Point::metres(5.0, 5.0)),
        "the middle, gone round twice, is covered"
    );
}

#[test]
fn more_can_be_taken_out_of_ground_with_holes() {
    let region = ground(
        &rectangle(0.0, 0.0, 20.0, 20.0),
        None,
        &[clearing(rectangle(5.0, 5.0, 7.0, 7.0), 0.0)],
        Length::ZERO,
    );
    let region = region.unwrap();
    // One obstacle inside the hole, one round it, one beside it.
    let inside = region
        .clone()
        .without(&[clearing(rectangle(5.5, 5.5, 6.5, 6.5), 0.0)])
        .unwrap();
    check_area(&inside, 396.0);
    let round_it = region
        .clone()
        .without(&[clearing(rectangle(4.0, 4.0, 8.0, 8.0), 0.0)])
        .unwrap();
    assert_eq!(shape_of(&round_it), [1]);
    check_area(&round_it, 384.0);
    let beside = region
        .without(&[clearing(rectangle(10.0, 10.0, 12.0, 12.0), 0.0)])
        .unwrap();
    assert_eq!(shape_of(&beside), [2]);
    check_area(&beside, 392.0);
}

#[test]
fn slivers_and_far_origins_are_worked_with() {
    let sliver = Region::new(&rectangle(0.0, 0.0, 200.0, 0.002)).unwrap();
    assert!((area(&sliver) - 0.4).abs() < 1e-12);
    assert!(sliver.label_point().is_some());
    // A plot in coordinates of a survey grid, as far out as is allowed.
    let far = ground(
        &rectangle(999_900.0, 999_900.0, 999_950.0, 999_930.0),
        None,
        &[],
        Length::metres(1.0),
    )
    .unwrap();
    assert!((area(&far) - 48.0 * 28.0).abs() < 1e-6, "{}", area(&far));
}

#[test]
fn a_star_of_two_thousand_corners_keeps_its_clear_distance() {
    let reach: Vec<f64> = (0..2000)
        .map(|i| if i % 2 == 0 { 100.0 } else { 60.0 + f64::from(i % 13) })
        .collect();
    let outline = star((0.0, 0.0), &reach);
    let region = Region::new(&outline).unwrap();
    assert_eq!(region.pieces()[0].outer(), outline);
    let drawn_in = ground(&outline, None, &[], Length::metres(0.5)).unwrap();
    assert!(area(&drawn_in) < area(&region) && !drawn_in.is_empty());
    for corner in drawn_in.pieces()[0].outer() {
        let far = polygon::nearest_place(&outline, *corner)
            .unwrap()
            .1
            .distance(*corner)
            .to_metres();
        assert!((0.5 - 1e-9..0.5 + 1e-3).contains(&far), "{far}");
    }
}
