//! What cannot be ground or rows, and the sentence that says so.

use quillet::geometry::{
    Clearing, MAX_CORNERS, MAX_ROW_LINES, Point, Region, RegionError, RingName, RowError, RowRule, fit_rows, ground,
};
use quillet::quantity::Length;

use super::shapes::{rectangle, ring, rule, star};

#[track_caller]
fn refused(outline: &[Point]) -> RegionError {
    Region::new(outline).unwrap_err()
}

#[test]
fn fewer_than_three_different_corners_are_refused() {
    for (corners, distinct) in [
        (vec![], 0),
        (vec![(1.0, 1.0)], 1),
        (vec![(1.0, 1.0), (1.0, 1.0), (1.0, 1.0), (1.0, 1.0)], 1),
        (vec![(1.0, 1.0), (5.0, 1.0)], 2),
        (vec![(1.0, 1.0), (5.0, 1.0), (1.0, 1.0), (5.0, 1.0), (5.0, 1.0)], 2),
    ] {
        let want = RegionError::TooFewCorners {
            ring: RingName::Outline,
            distinct,
        };
        assert_eq!(refused(&ring(&corners)), want);
    }
    assert_eq!(
        refused(&ring(&[(1.0, 1.0), (5.0, 1.0)])).to_string(),
        "The outline has two corners and needs at least three different ones. Add the missing corners."
    );
}

#[test]
fn corners_on_one_line_are_refused() {
    for corners in [
        ring(&[(0.0, 0.0), (5.0, 5.0), (9.0, 9.0)]),
        ring(&[(0.0, 0.0), (9.0, 0.0), (5.0, 0.0), (2.0, 0.0)]),
        ring(&[(0.1, 0.3), (1.1, 3.3), (2.1, 6.3), (0.6, 1.8)]),
        rectangle(0.0, 0.0, 1e-6, 1e-6),
        rectangle(0.0, 0.0, 1e-9, 100.0),
    ] {
        let error = refused(&corners);
        assert!(
            matches!(
                error,
                RegionError::NoArea {
                    ring: RingName::Outline,
                    ..
                } | RegionError::TooFewCorners { .. }
            ),
            "{error:?}"
        );
    }
    assert_eq!(
        refused(&ring(&[(3.048, 0.0), (8.0, 0.0), (9.0, 0.0)])).to_string(),
        "The outline encloses no ground: its corners lie on one line, at 10.0 ft east, 0.0 ft north (3.05 m, 0.00 m). \
         Move a corner off that line."
    );
}

#[test]
fn a_crossing_outline_is_refused_with_the_place_and_the_sides() {
    let bowtie = ring(&[(0.0, 0.0), (12.192, 12.192), (12.192, 0.0), (0.0, 12.192)]);
    let error = refused(&bowtie);
    let RegionError::SelfCrossing { ring: name, at, sides } = error.clone() else {
        panic!("{error:?}");
    };
    assert_eq!((name, sides), (RingName::Outline, (0, 2)));
    assert!(at.distance(Point::metres(6.096, 6.096)).to_metres() < 1e-9);
    assert_eq!(
        error.to_string(),
        "The outline crosses itself where side 1 meets side 3, at 20.0 ft east, 20.0 ft north (6.10 m, 6.10 m). \
         Move a corner of one of these sides, or put the corners in the order you walk them."
    );
}

#[test]
fn sides_are_numbered_as_typed_even_when_corners_repeat() {
    let corners = ring(&[
        (0.0, 0.0),
        (0.0, 0.0),
        (0.0, 0.0),
        (10.0, 10.0),
        (10.0, 10.0),
        (10.0, 0.0),
        (0.0, 10.0),
        (0.0, 0.0),
    ]);
    // The crossing sides start at typed corners 0 (its first mention) and 5.
    assert!(matches!(
        refused(&corners),
        RegionError::SelfCrossing { sides: (0, 5), .. }
    ));
}

#[test]
fn outlines_that_run_over_themselves_are_refused() {
    let square = [(0.0, 0.0), (4.0, 0.0), (4.0, 4.0), (0.0, 4.0)];
    let twice: Vec<_> = square.iter().chain(&square).copied().collect();
    assert!(matches!(refused(&ring(&twice)), RegionError::SelfCrossing { .. }));
    // Two lobes that meet in a corner, gone round in opposite directions: the path passes through itself there.
    let eight = ring(&[(0.0, 0.0), (1.0, 1.0), (2.0, 2.0), (2.0, 0.0), (1.0, 1.0), (0.0, 2.0)]);
    assert!(matches!(refused(&eight), RegionError::SelfCrossing { .. }));
}

#[test]
fn coordinates_that_are_no_places_are_refused_with_their_corner() {
    for bad in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
        for corner in 0..4 {
            let mut outline = rectangle(0.0, 0.0, 5.0, 5.0);
            outline[corner].y = bad;
            let want = RegionError::NotFinite {
                ring: RingName::Outline,
                corner,
            };
            assert_eq!(refused(&outline), want);
        }
    }
    for far in [1.000_001e6, -2e6, 1e12, 1e300] {
        let mut outline = rectangle(0.0, 0.0, 5.0, 5.0);
        outline[2].x = far;
        let want = RegionError::TooFar {
            ring: RingName::Outline,
            corner: 2,
        };
        assert_eq!(refused(&outline), want);
    }
    let mut outline = rectangle(0.0, 0.0, 5.0, 5.0);
    outline[2].x = f64::NAN;
    assert_eq!(
        refused(&outline).to_string(),
        "Corner 3 of the outline is not a place: a coordinate is not a number. Type the corner again."
    );
    outline[2].x = 1e9;
    assert_eq!(
        refused(&outline).to_string(),
        "Corner 3 of the outline is more than 1,000 km from the layout's origin. Check the corner's numbers and their unit."
    );
}

#[test]
fn too_many_corners_are_refused_with_the_count_and_the_limit() {
    let outline = star((0.0, 0.0), &vec![50.0; MAX_CORNERS + 1]);
    let error = refused(&outline);
    assert_eq!(
        error.to_string(),
        "The outline has 20,001 corners; up to 20,000 can be worked with. Leave out corners that lie close together."
    );
}

#[test]
fn beds_and_obstacles_are_named_in_what_is_said() {
    let plot = rectangle(0.0, 0.0, 20.0, 20.0);
    let bowtie = ring(&[(0.0, 0.0), (4.0, 4.0), (4.0, 0.0), (0.0, 4.0)]);
    let bed = ground(&plot, Some(&bowtie), &[], Length::ZERO).unwrap_err();
    assert!(matches!(
        bed,
        RegionError::SelfCrossing {
            ring: RingName::Bed,
            ..
        }
    ));
    let obstacle = |ring: Vec<Point>, clear: f64| {
        let fine = Clearing {
            ring: rectangle(1.0, 1.0, 2.0, 2.0),
            clear: Length::ZERO,
        };
        let bad = Clearing {
            ring,
            clear: Length::metres(clear),
        };
        ground(&plot, None, &[fine, bad], Length::ZERO).unwrap_err()
    };
    let second = RingName::Obstacle(1);
    let line = obstacle(ring(&[(3.0, 3.0), (9.0, 3.0)]), 1.0);
    assert_eq!(
        line,
        RegionError::TooFewCorners {
            ring: second,
            distinct: 2
        }
    );
    assert_eq!(
        line.to_string(),
        "Obstacle 2 has two corners and needs at least three different ones. Add the missing corners."
    );
    let flat = obstacle(ring(&[(3.0, 3.0), (9.0, 3.0), (5.0, 3.0)]), 1.0);
    assert!(matches!(flat, RegionError::NoArea { ring, .. } if ring == second));
    // Said even of an obstacle that lies far outside.
    let outside = obstacle(ring(&[(300.0, f64::NAN), (900.0, 3.0), (500.0, 3.0)]), 1.0);
    assert_eq!(
        outside,
        RegionError::NotFinite {
            ring: second,
            corner: 0
        }
    );
}

#[test]
fn clear_distances_that_are_none_are_refused() {
    let plot = rectangle(0.0, 0.0, 20.0, 20.0);
    for clear in [-0.5, f64::NAN, f64::INFINITY, 1e7] {
        let clear = Length::metres(clear);
        let error = ground(&plot, None, &[], clear).unwrap_err();
        assert!(matches!(
            error,
            RegionError::Clear {
                ring: RingName::Outline,
                ..
            }
        ));
        let error = ground(&plot, Some(&plot), &[], clear).unwrap_err();
        assert!(matches!(
            error,
            RegionError::Clear {
                ring: RingName::Bed,
                ..
            }
        ));
        let post = Clearing {
            ring: rectangle(1.0, 1.0, 2.0, 2.0),
            clear,
        };
        let error = ground(&plot, None, &[post], Length::ZERO).unwrap_err();
        assert!(matches!(
            error,
            RegionError::Clear {
                ring: RingName::Obstacle(0),
                ..
            }
        ));
    }
    assert_eq!(
        ground(&plot, None, &[], Length::metres(-0.5)).unwrap_err().to_string(),
        "The clear distance of the outline is -0.5 m; it has to be a length from 0 up to 1,000 km. Type it again."
    );
    // As large as the rules allow leaves nothing, and says nothing.
    assert!(ground(&plot, None, &[], Length::metres(1e6)).unwrap().is_empty());
}

#[test]
fn spacings_and_margins_that_are_none_are_refused() {
    let region = Region::new(&rectangle(0.0, 0.0, 20.0, 20.0)).unwrap();
    let good = rule(0.0, 1.0, 0.5);
    for bad in [0.0, -1.0, f64::NAN, f64::INFINITY, f64::NEG_INFINITY, 1e-9].map(Length::metres) {
        let rule = RowRule { spacing: bad, ..good };
        assert!(matches!(fit_rows(&region, &rule), Err(RowError::Spacing(_))), "{bad:?}");
        assert!(
            matches!(fit_rows(&Region::default(), &rule), Err(RowError::Spacing(_))),
            "{bad:?}"
        );
    }
    for bad in [-0.1, f64::NAN, f64::INFINITY].map(Length::metres) {
        let margin = RowRule {
            edge_margin: bad,
            ..good
        };
        assert!(matches!(fit_rows(&region, &margin), Err(RowError::EdgeMargin(_))));
        let headland = RowRule { headland: bad, ..good };
        assert!(matches!(fit_rows(&region, &headland), Err(RowError::Headland(_))));
        let shortest = RowRule { shortest: bad, ..good };
        assert!(matches!(fit_rows(&region, &shortest), Err(RowError::Shortest(_))));
    }
    assert_eq!(
        RowError::Spacing(Length::metres(-1.0)).to_string(),
        "The row spacing is -1 m; it has to be a length above zero. Type the distance from one row to the next."
    );
    assert!(
        RowError::Headland(Length::metres(f64::NAN))
            .to_string()
            .starts_with("The headland is not a number;")
    );
}

#[test]
fn ten_million_rows_are_refused_with_the_count_and_the_limit() {
    let region = Region::new(&rectangle(0.0, 0.0, 10_000.0, 10.0)).unwrap();
    let error = fit_rows(&region, &rule(0.0, 0.001, 0.0005)).unwrap_err();
    assert_eq!(
        error,
        RowError::TooManyRows {
            count: 10_000_000,
            limit: MAX_ROW_LINES
        }
    );
    assert_eq!(
        error.to_string(),
        "That would make 10,000,000 rows; up to 1,000,000 can be laid over one bed. Type a wider row spacing, and check its unit."
    );
    let most = fit_rows(&region, &rule(0.0, 0.01, 0.005)).unwrap();
    assert_eq!(most.row_count(), MAX_ROW_LINES);
}

#[test]
fn rows_cut_into_too_many_pieces_are_refused() {
    // A comb of fifty teeth, a kilometre wide, cut by a million lines along it.
    let mut corners = vec![(0.0, 0.0), (100.0, 0.0)];
    for tooth in (0..50).rev() {
        let left = 2.0 * f64::from(tooth);
        corners.extend([(left + 1.0, 1000.0), (left + 0.5, 1.0), (left, 1000.0)]);
    }
    let region = Region::new(&ring(&corners)).unwrap();
    let error = fit_rows(&region, &rule(90.0, 0.001, 0.0)).unwrap_err();
    assert!(matches!(error, RowError::TooManyRows { .. }), "{error:?}");
    let error = fit_rows(&region, &rule(90.0, 0.001_001, 0.0)).unwrap_err();
    let RowError::TooManyPieces { count, limit } = error else {
        panic!("{error:?}");
    };
    assert!(count > limit as u64 && count < 60_000_000, "{count}");
}

#[test]
fn ground_of_nothing_has_no_rows() {
    let fit = fit_rows(&Region::default(), &rule(45.0, 1.0, 0.0)).unwrap();
    assert_eq!((fit.row_lines, fit.row_count(), fit.across), (0, 0, Length::ZERO));
    assert_eq!(fit.rows_between(Length::metres(-1.0), Length::metres(1.0)).len(), 0);
    let huge_margin = rule(0.0, 1.0, 1e300);
    let region = Region::new(&rectangle(0.0, 0.0, 20.0, 20.0)).unwrap();
    assert_eq!(fit_rows(&region, &huge_margin).unwrap().row_lines, 0);
}
