//! Where row lines lie and what they keep.

use std::ops::Range;

use quillet::geometry::{Bounds, Clearing, Point, Region, Remainder, RowFit, RowRule, fit_rows, ground};
use quillet::quantity::{Bearing, Length};

use super::shapes::{rectangle, ring, ring_feet, rule, star};

fn feet_rule(bearing: f64, spacing: f64, margin: f64, headland: f64, remainder: Remainder) -> RowRule {
    RowRule {
        spacing: Length::feet(spacing),
        edge_margin: Length::feet(margin),
        headland: Length::feet(headland),
        remainder,
        ..rule(bearing, 1.0, 0.0)
    }
}

fn across(fit: &RowFit) -> Vec<f64> {
    fit.rows().map(|row| row.across.to_feet()).collect()
}

/// Source: computed by N = floor((W - 2m) / s + 1e-6) + 1 and r = (W - 2m) - (N - 1) s; not published.
#[test]
fn lines_in_a_width_follow_the_rule() {
    for (width, margin, spacing, lines, remainder) in [
        (50.0, 1.5, 3.0, 16, 2.0),
        (48.0, 2.0, 3.5, 13, 2.0),
        (96.5, 1.25, 2.5, 38, 1.5),
        (60.0, 1.5, 3.0, 20, 0.0),
        (30.0, 1.0, 30.0, 1, 28.0),
        (2.0, 1.2, 3.0, 0, 0.0),
        (35.0, 1.5, 3.0, 11, 2.0),
    ] {
        let region = Region::new(&ring_feet(&[(0.0, 0.0), (width, 0.0), (width, 100.0), (0.0, 100.0)])).unwrap();
        let fit = fit_rows(&region, &feet_rule(0.0, spacing, margin, 0.0, Remainder::Centred)).unwrap();
        assert_eq!(
            (fit.row_lines, fit.row_count()),
            (lines, lines),
            "{width} ft at {spacing} ft"
        );
        assert!(
            (fit.remainder.to_feet() - remainder).abs() < 1e-9,
            "{:?}",
            fit.remainder
        );
    }
}

/// Source: feet of row per acre = 43,560 / spacing; 7,260 at 6 ft: *Mid-Atlantic Commercial Vegetable Production
/// Recommendations*, linear-bed-foot values. An acre 72 ft wide is 605 ft long.
#[test]
fn a_margin_of_half_a_spacing_agrees_with_row_feet_per_acre() {
    let acre = Region::new(&ring_feet(&[(0.0, 0.0), (72.0, 0.0), (72.0, 605.0), (0.0, 605.0)])).unwrap();
    for (spacing, per_acre) in [
        (6.0, 7260.0),
        (3.0, 14_520.0),
        (4.0, 10_890.0),
        (2.0, 21_780.0),
        (1.0, 43_560.0),
    ] {
        let fit = fit_rows(&acre, &feet_rule(0.0, spacing, spacing / 2.0, 0.0, Remainder::Centred)).unwrap();
        assert!(
            (fit.total_length().to_feet() - per_acre).abs() < 1e-6,
            "{spacing} ft: {:?}",
            fit.total_length()
        );
    }
}

/// Source: computed; 50 ft by 100 ft, rows north at 3 ft. The same with a 6 ft headland, and a right triangle.
#[test]
fn worked_layouts_give_their_row_feet() {
    let field = ring_feet(&[(0.0, 0.0), (50.0, 0.0), (50.0, 100.0), (0.0, 100.0)]);
    let triangle = ring_feet(&[(0.0, 0.0), (90.0, 0.0), (0.0, 60.0)]);
    for (outline, margin, headland, remainder, lines, rows, feet) in [
        (&field, 1.5, 0.0, Remainder::Right, 16, 16, 1600.0),
        (&field, 2.0, 6.0, Remainder::Right, 16, 16, 1408.0),
        (&triangle, 1.0, 2.0, Remainder::Right, 30, 28, 793.333_333),
        (&triangle, 1.0, 2.0, Remainder::Centred, 30, 28, 784.0),
    ] {
        let region = Region::new(outline).unwrap();
        let fit = fit_rows(&region, &feet_rule(0.0, 3.0, margin, headland, remainder)).unwrap();
        assert_eq!((fit.row_lines, fit.row_count()), (lines, rows));
        assert!(
            (fit.total_length().to_feet() - feet).abs() < 1e-5,
            "{:?}",
            fit.total_length().to_feet()
        );
    }
}

#[test]
fn the_left_over_width_goes_to_the_hand_that_is_named() {
    let region = Region::new(&ring_feet(&[(0.0, 0.0), (10.0, 0.0), (10.0, 40.0), (0.0, 40.0)])).unwrap();
    for (remainder, want) in [
        (Remainder::Right, [1.0, 4.0, 7.0]),
        (Remainder::Centred, [2.0, 5.0, 8.0]),
        (Remainder::Left, [3.0, 6.0, 9.0]),
    ] {
        let fit = fit_rows(&region, &feet_rule(0.0, 3.0, 1.0, 0.0, remainder)).unwrap();
        for (got, want) in across(&fit).iter().zip(want) {
            assert!((got - want).abs() < 1e-12, "{remainder:?}: {got}");
        }
        assert!((fit.remainder.to_feet() - 2.0).abs() < 1e-12);
    }
}

#[test]
fn rows_east_begin_on_the_north_side_and_run_from_west_to_east() {
    let region = Region::new(&rectangle(0.0, 0.0, 50.0, 100.0)).unwrap();
    let fit = fit_rows(&region, &rule(90.0, 10.0, 5.0)).unwrap();
    let first = fit.row(0).unwrap().pieces().next().unwrap();
    assert_eq!(
        (first.start(), first.end()),
        (Point::metres(0.0, 95.0), Point::metres(50.0, 95.0))
    );
    assert_eq!(
        fit.row(9).unwrap().pieces().next().unwrap().start(),
        Point::metres(0.0, 5.0)
    );
    assert_eq!(fit.row(10), None);
}

#[test]
fn rows_right_on_the_edges_are_rows() {
    // Edge margin zero and a width of whole spacings: the outermost rows run along the fence.
    let region = Region::new(&rectangle(3.0, 0.0, 33.0, 20.0)).unwrap();
    for bearing in [0.0, 180.0] {
        let fit = fit_rows(&region, &rule(bearing, 3.0, 0.0)).unwrap();
        assert_eq!((fit.row_lines, fit.row_count()), (11, 11));
        assert!(fit.rows().all(|row| (row.length().to_metres() - 20.0).abs() < 1e-12));
    }
    // Turned by any angle, where no corner is on its line to the last bit.
    for bearing in [17.0, 45.0, 123.4, 300.1] {
        let (sin, cos) = f64::to_radians(bearing).sin_cos();
        let turned: Vec<Point> = rectangle(3.0, 0.0, 33.0, 20.0)
            .iter()
            .map(|p| Point::metres(p.x * cos + p.y * sin, p.y * cos - p.x * sin))
            .collect();
        let fit = fit_rows(&Region::new(&turned).unwrap(), &rule(bearing, 3.0, 0.0)).unwrap();
        assert_eq!(fit.row_count(), 11, "{bearing}");
        assert!(
            (fit.total_length().to_metres() - 220.0).abs() < 1e-9,
            "{bearing}: {:?}",
            fit.total_length()
        );
    }
}

#[test]
fn a_row_along_the_edge_of_an_obstacle_is_unbroken_on_either_hand() {
    let shed = Clearing {
        ring: rectangle(4.0, 5.0, 8.0, 9.0),
        clear: Length::ZERO,
    };
    let region = ground(&rectangle(0.0, 0.0, 12.0, 20.0), None, &[shed], Length::ZERO).unwrap();
    let fit = fit_rows(&region, &rule(0.0, 2.0, 0.0)).unwrap();
    let pieces: Vec<usize> = fit.rows().map(|row| row.piece_count()).collect();
    // Lines at 0, 2, 4, 6, 8, 10 and 12 m; the shed lies between 4 and 8.
    assert_eq!(pieces, [1, 1, 1, 2, 1, 1, 1]);
}

#[test]
fn a_row_through_the_tips_of_notches_and_obstacles_is_cut_by_neither() {
    let notched = ring(&[
        (0.0, 0.0),
        (10.0, 0.0),
        (10.0, 20.0),
        (7.0, 20.0),
        (5.0, 12.0),
        (3.0, 20.0),
        (0.0, 20.0),
    ]);
    let kite = Clearing {
        ring: ring(&[(5.0, 4.0), (7.0, 6.0), (9.0, 4.0), (7.0, 2.0)]),
        clear: Length::ZERO,
    };
    let region = ground(&notched, None, &[kite], Length::ZERO).unwrap();
    let fit = fit_rows(&region, &rule(0.0, 5.0, 0.0)).unwrap();
    let middle: Vec<_> = fit.row(1).unwrap().pieces().map(|p| (p.start().y, p.end().y)).collect();
    assert_eq!(middle, [(0.0, 12.0)]);
}

#[test]
fn headlands_come_off_both_ends_of_every_piece_and_short_pieces_go() {
    let tree = Clearing {
        ring: rectangle(4.0, 8.0, 6.0, 10.0),
        clear: Length::metres(1.0),
    };
    let region = ground(&rectangle(0.0, 0.0, 10.0, 30.0), None, &[tree], Length::ZERO).unwrap();
    let with = RowRule {
        headland: Length::metres(2.0),
        shortest: Length::metres(3.5),
        ..rule(0.0, 5.0, 0.0)
    };
    let fit = fit_rows(&region, &with).unwrap();
    let middle: Vec<_> = fit.row(1).unwrap().pieces().map(|p| (p.start().y, p.end().y)).collect();
    // South of the tree 7 m are free: 3 m after both headlands, too short. North of it 19 m.
    assert_eq!(middle.len(), 1);
    assert!(
        (middle[0].0 - 13.0).abs() < 1e-9 && (middle[0].1 - 28.0).abs() < 1e-9,
        "{middle:?}"
    );
    let keeps_three = RowRule {
        shortest: Length::metres(3.0),
        ..with
    };
    assert_eq!(
        fit_rows(&region, &keeps_three).unwrap().row(1).unwrap().piece_count(),
        2
    );
}

#[test]
fn lines_that_keep_nothing_are_counted_but_are_no_rows() {
    // A U: the lines between its arms find ground only in its foot.
    let u = ring(&[
        (0.0, 0.0),
        (30.0, 0.0),
        (30.0, 20.0),
        (20.0, 20.0),
        (20.0, 2.0),
        (10.0, 2.0),
        (10.0, 20.0),
        (0.0, 20.0),
    ]);
    let with = RowRule {
        headland: Length::metres(1.0),
        ..rule(0.0, 2.0, 1.0)
    };
    let fit = fit_rows(&Region::new(&u).unwrap(), &with).unwrap();
    assert_eq!((fit.row_lines, fit.row_count()), (15, 10));
    let lines: Vec<usize> = fit.rows().map(|row| row.line).collect();
    assert_eq!(lines, [0, 1, 2, 3, 4, 10, 11, 12, 13, 14]);
    assert_eq!(fit.row(5).unwrap().index, 5);
}

#[test]
fn spacing_wider_than_the_plot_gives_one_row() {
    let region = Region::new(&rectangle(0.0, 0.0, 12.0, 40.0)).unwrap();
    for spacing in [50.0, 1e6, 1e300] {
        let fit = fit_rows(&region, &rule(0.0, spacing, 2.0)).unwrap();
        assert_eq!((fit.row_lines, fit.row_count()), (1, 1));
        assert_eq!(fit.row(0).unwrap().across, Length::metres(6.0));
        assert_eq!(fit.remainder, Length::metres(8.0));
    }
}

#[test]
fn rows_in_a_window_are_those_that_pass_it() {
    let reach: Vec<f64> = (0..40)
        .map(|i| if i % 2 == 0 { 50.0 } else { 22.0 + f64::from(i % 7) })
        .collect();
    let region = Region::new(&star((10.0, -20.0), &reach)).unwrap();
    for bearing in [0.0, 33.0, 90.0, 211.0] {
        let fit = fit_rows(&region, &rule(bearing, 0.7, 0.35)).unwrap();
        let window = Bounds {
            min: Point::metres(0.0, -30.0),
            max: Point::metres(25.0, -8.0),
        };
        let rows: Range<usize> = fit.rows_in(window);
        let (low, high) = fit.along_of(window);
        assert!(!rows.is_empty() && rows.len() < fit.row_count());
        let meets = |p: quillet::geometry::Piece| {
            (0..=2000).any(|i| {
                let at = p.start().towards(p.end(), f64::from(i) / 2000.0);
                at.x >= window.min.x && at.x <= window.max.x && at.y >= window.min.y && at.y <= window.max.y
            })
        };
        for row in fit.rows() {
            let offered = row.pieces_between(low, high);
            assert!(offered.len() <= row.piece_count());
            let offered: Vec<_> = if rows.contains(&row.index) {
                offered.collect()
            } else {
                Vec::new()
            };
            for piece in row.pieces().filter(|p| meets(*p)) {
                assert!(
                    offered.contains(&piece),
                    "row {} at {bearing} is seen but not offered",
                    row.index
                );
            }
        }
        let all = fit.rows_between(Length::metres(-1e9), Length::metres(1e9));
        assert_eq!(all, 0..fit.row_count());
        assert_eq!(fit.rows_between(Length::metres(5.0), Length::metres(-5.0)).len(), 0);
    }
}

#[test]
fn many_threads_give_the_rows_of_one_to_the_last_bit() {
    let reach: Vec<f64> = (0..600)
        .map(|i| if i % 2 == 0 { 80.0 } else { 9.0 + f64::from(i % 11) })
        .collect();
    let outline = star((3.0, 4.0), &reach);
    let hole = Clearing {
        ring: rectangle(1.0, 1.0, 6.0, 6.5),
        clear: Length::ZERO,
    };
    let region = ground(&outline, None, &[hole], Length::ZERO).unwrap();
    let with = RowRule {
        headland: Length::metres(0.3),
        ..rule(29.0, 0.002, 0.001)
    };
    let one = RowFit::on_threads(&region, &with, 1).unwrap();
    assert!(one.piece_count() > 200_000, "{}", one.piece_count());
    for threads in [2, 3, 4] {
        assert!(
            RowFit::on_threads(&region, &with, threads).unwrap() == one,
            "{threads} threads"
        );
    }
    assert_eq!(one.bearing(), Bearing::degrees(29.0));
}
