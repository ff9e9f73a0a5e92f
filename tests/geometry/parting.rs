//! Outlines parted along a line.

use proptest::prelude::*;
use quillet::geometry::{Ground, Point, part};
use quillet::quantity::Bearing;

use super::shapes::{rectangle, ring, star};

fn square_metres(pieces: &[Ground]) -> f64 {
    pieces.iter().map(|piece| piece.area().to_square_metres()).sum()
}

#[test]
fn a_rectangle_comes_to_two_that_share_the_line_and_keep_their_corners() {
    let outline = rectangle(0.1, 0.2, 18.9, 14.6);
    let parted = part(&outline, Point::metres(7.0, 3.0), Bearing::NORTH).unwrap();
    let [left] = &parted.left[..] else {
        panic!("one piece on the left")
    };
    let [right] = &parted.right[..] else {
        panic!("one piece on the right")
    };
    // West of a line that runs north is the left hand.
    assert!((left.area().to_square_metres() - 6.9 * 14.4).abs() < 1e-9);
    assert!((right.area().to_square_metres() - 11.9 * 14.4).abs() < 1e-9);
    for corner in [outline[0], outline[3]] {
        assert!(left.outer().contains(&corner), "{corner:?} is not kept to the last bit");
    }
    for corner in [outline[1], outline[2]] {
        assert!(
            right.outer().contains(&corner),
            "{corner:?} is not kept to the last bit"
        );
    }
    let shared = left
        .outer()
        .iter()
        .filter(|corner| right.outer().contains(corner))
        .count();
    assert_eq!(shared, 2, "both sides share the ends of the line");
}

#[test]
fn a_bent_outline_comes_to_several_pieces() {
    // A U, open to the north, parted from west to east above its floor: both arms lie on the left hand.
    let outline = ring(&[
        (0.0, 0.0),
        (9.0, 0.0),
        (9.0, 9.0),
        (6.0, 9.0),
        (6.0, 3.0),
        (3.0, 3.0),
        (3.0, 9.0),
        (0.0, 9.0),
    ]);
    let parted = part(&outline, Point::metres(0.0, 5.0), Bearing::EAST).unwrap();
    assert_eq!((parted.left.len(), parted.right.len()), (2, 1));
    assert!((square_metres(&parted.left) - 2.0 * 3.0 * 4.0).abs() < 1e-9);
}

#[test]
fn a_line_that_misses_leaves_all_on_one_hand() {
    let outline = rectangle(0.0, 0.0, 10.0, 5.0);
    let parted = part(&outline, Point::metres(10.0, 0.0), Bearing::NORTH).unwrap();
    assert_eq!(square_metres(&parted.left), 50.0);
    assert!(parted.right.is_empty());
    let parted = part(&outline, Point::metres(400.0, 900.0), Bearing::degrees(180.0)).unwrap();
    assert!(parted.left.is_empty());
    assert_eq!(square_metres(&parted.right), 50.0);
}

#[test]
fn corners_that_bound_no_ground_are_refused() {
    let crossing = ring(&[(0.0, 0.0), (4.0, 4.0), (4.0, 0.0), (0.0, 4.0)]);
    assert!(part(&crossing, Point::metres(2.0, 2.0), Bearing::NORTH).is_err());
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(128))]

    #[test]
    fn both_hands_make_up_the_whole_and_lie_on_their_own(
        reach in prop::collection::vec(2.0..40.0f64, 3..24),
        origin in (-5_000.0..5_000.0f64, -5_000.0..5_000.0f64),
        at in (-30.0..30.0f64, -30.0..30.0f64),
        bearing in 0.0..360.0f64,
    ) {
        let outline = star(origin, &reach);
        let at = Point::metres(origin.0 + at.0, origin.1 + at.1);
        let parted = part(&outline, at, Bearing::degrees(bearing)).unwrap();
        let whole: f64 = square_metres(&parted.left) + square_metres(&parted.right);
        let typed = quillet::geometry::polygon::signed_area(&outline).to_square_metres();
        prop_assert!((whole - typed).abs() < 1e-6 * typed.max(1.0), "{whole} of {typed}");
        let (ux, uy) = Bearing::degrees(bearing).unit();
        for (pieces, hand) in [(&parted.left, -1.0), (&parted.right, 1.0)] {
            for corner in pieces.iter().flat_map(Ground::outer) {
                let right = (corner.x - at.x) * uy - (corner.y - at.y) * ux;
                prop_assert!(right * hand > -1e-6, "{corner:?} lies {right} to the right");
            }
        }
    }
}
