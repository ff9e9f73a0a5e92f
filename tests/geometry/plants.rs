//! Plants on a piece of row.

use std::ops::RangeInclusive;

use quillet::geometry::{Lines, Piece, PlantError, PlantRule, Point, Region, fit_rows, plants_on};
use quillet::quantity::Length;

use super::shapes::{rectangle, rule};

fn plants(length_feet: f64, in_row_inches: f64, end_gap_inches: f64) -> u64 {
    plants_on(
        Length::feet(length_feet),
        Length::inches(in_row_inches),
        Length::inches(end_gap_inches),
    )
    .unwrap()
}

/// Source: computed by the stated rule, floor((L - 2e) / p + 1e-6) + 1; not published.
#[test]
fn counts_on_one_piece_follow_the_rule() {
    for (length, in_row, end_gap, want) in [
        (100.0, 12.0, 6.0, 100),
        (100.0, 12.0, 0.0, 101),
        (99.9, 12.0, 6.0, 99),
        (37.5, 9.0, 4.5, 50),
        (250.0, 8.0, 4.0, 375),
        (1.0, 12.0, 6.0, 1),
        (0.4, 12.0, 6.0, 0),
        (30.0, 6.0, 3.0, 60),
    ] {
        assert_eq!(
            plants(length, in_row, end_gap),
            want,
            "{length} ft at {in_row} in, {end_gap} in free"
        );
    }
}

/// Source: 6,272,640 / (row in × in-row in), *Valley Potato Grower*, March 2021, p. 12, Table 1: 36 in by 12 in is
/// 14,520 plants on an acre, whose rows at 3 ft come to 14,520 ft.
#[test]
fn half_a_spacing_free_at_the_ends_agrees_with_tables_per_acre() {
    assert_eq!(plants(14_520.0, 12.0, 6.0), 14_520);
}

/// Source: University of Maine Cooperative Extension, *Planting Chart for the Home Vegetable Garden*: 6 to 7 plants on
/// 10 ft at 18 in. Six own a cell each; seven stand when both ends are set.
#[test]
fn ten_feet_at_eighteen_inches_hold_six_or_with_both_ends_seven() {
    assert_eq!(plants(10.0, 18.0, 9.0), 6);
    assert_eq!(plants(10.0, 18.0, 0.0), 7);
}

#[test]
fn decimal_feet_that_lose_a_hair_in_binary_lose_no_plant() {
    for feet in 1..=3_000 {
        let long = Length::feet(f64::from(feet) / 10.0);
        for (inches, per_ten_feet) in [(6.0, 20), (12.0, 10), (8.0, 15), (10.0, 12), (15.0, 8), (24.0, 5)] {
            let in_row = Length::inches(inches);
            let want = (feet * per_ten_feet) / 100;
            assert_eq!(
                plants_on(long, in_row, in_row / 2.0),
                Ok(want as u64),
                "{feet} tenths at {inches} in"
            );
        }
    }
}

/// Offset rows in a small bed, 4 ft by 25 ft, 12 in apart, 6 in free on every side: four square rows hold 100, four
/// offset ones 25, 24, 25 and 24. Source: computed by counting; the 0.87 between offset rows is from *How to Grow More
/// Vegetables*, Master Chart notes.
#[test]
fn offset_rows_in_a_small_bed_hold_fewer_than_square_ones() {
    let foot = Length::inches(12.0);
    let close = foot * (3.0_f64.sqrt() / 2.0);
    let bed = Region::new(&rectangle(
        0.0,
        0.0,
        Length::feet(4.0).to_metres(),
        Length::feet(25.0).to_metres(),
    ))
    .unwrap();
    let square = fit_rows(&bed, &rule(0.0, foot.to_metres(), 0.1524)).unwrap();
    let offset = fit_rows(&bed, &rule(0.0, close.to_metres(), 0.1524)).unwrap();
    assert_eq!((square.row_count(), offset.row_count()), (4, 4));
    let single = PlantRule::new(foot, Length::inches(6.0), Lines::SINGLE).unwrap();
    let of = |row: &quillet::geometry::Row<'_>| single.on(row.length());
    assert_eq!(square.rows().map(|row| of(&row)).sum::<u64>(), 100);
    let lines = Lines {
        per_row: 4,
        apart: close,
        staggered: true,
    };
    let staggered = PlantRule::new(foot, Length::inches(6.0), lines).unwrap();
    let long = Length::feet(25.0);
    assert_eq!([0, 1, 2, 3].map(|line| staggered.on_line(long, line)), [25, 24, 25, 24]);
    assert_eq!(staggered.on(long), 98);
}

/// Source: 43,560 sq ft / 5 ft of beds × 2 lines at 12 in = 17,424 plants an acre, plain arithmetic.
#[test]
fn twin_rows_on_five_foot_beds_make_17_424_an_acre() {
    let twin = Lines {
        per_row: 2,
        apart: Length::inches(12.0),
        staggered: false,
    };
    let set = PlantRule::new(Length::inches(12.0), Length::inches(6.0), twin).unwrap();
    assert_eq!(set.on(Length::feet(43_560.0 / 5.0)), 17_424);
}

#[test]
fn a_staggered_line_keeps_its_count_when_half_a_spacing_is_left_over() {
    let lines = Lines {
        per_row: 2,
        apart: Length::metres(0.3),
        staggered: true,
    };
    let set = PlantRule::new(Length::metres(1.0), Length::metres(0.25), lines).unwrap();
    // Free for spacings: 10.0, 10.49, 10.5 and 11.0 m. The second line starts half a metre later.
    for (long, first, second) in [(10.5, 11, 10), (10.99, 11, 10), (11.0, 11, 11), (11.5, 12, 11)] {
        let long = Length::metres(long);
        assert_eq!(
            (set.on_line(long, 0), set.on_line(long, 1)),
            (first, second),
            "{long:?}"
        );
        assert_eq!(set.on(long), first + second);
    }
    // Too short for the later start, long enough for the first.
    assert_eq!(
        (set.on_line(Length::metres(0.8), 0), set.on_line(Length::metres(0.8), 1)),
        (1, 0)
    );
}

/// Where the plants of a piece stand, line by line from the left hand.
fn standing(rule: &PlantRule, piece: Piece, between: RangeInclusive<Length>) -> impl Iterator<Item = Point> {
    let rule = *rule;
    (0..rule.lines().per_row).flat_map(move |line| {
        rule.along_line(piece.length(), line, between.clone())
            .map(move |along| piece.place_at(along, rule.right_of_row(line)))
    })
}

#[test]
fn plants_stand_where_they_are_counted() {
    let region = Region::new(&rectangle(5.0, 7.0, 15.0, 37.3)).unwrap();
    let fit = fit_rows(&region, &rule(20.0, 1.1, 0.4)).unwrap();
    let lines = Lines {
        per_row: 3,
        apart: Length::metres(0.2),
        staggered: true,
    };
    let set = PlantRule::new(Length::metres(0.31), Length::metres(0.15), lines).unwrap();
    for piece in fit.rows().flat_map(|row| row.pieces()) {
        let places: Vec<_> = standing(&set, piece, Length::ZERO..=piece.length()).collect();
        assert_eq!(places.len() as u64, set.on(piece.length()));
        let (start, end) = (piece.start(), piece.end());
        let along = |p: Point| {
            let whole = start.distance(end).to_metres().max(1e-12);
            ((p.x - start.x) * (end.x - start.x) + (p.y - start.y) * (end.y - start.y)) / whole
        };
        for &place in &places {
            let at = along(place);
            assert!(
                at >= 0.15 - 1e-6 && at <= piece.length().to_metres() - 0.15 + 1e-6,
                "{at}"
            );
        }
        // A window on the piece gives the same plants as looking through them all.
        let (low, high) = (2.0, 4.5);
        let seen = standing(&set, piece, Length::metres(low)..=Length::metres(high)).count();
        let within = places
            .iter()
            .filter(|&&p| (low - 1e-7..=high + 1e-7).contains(&along(p)))
            .count();
        assert_eq!(seen, within);
    }
}

#[test]
fn neighbouring_lines_lie_evenly_to_both_hands_of_the_row() {
    let lines = Lines {
        per_row: 2,
        apart: Length::metres(0.4),
        staggered: false,
    };
    let set = PlantRule::new(Length::metres(1.0), Length::metres(0.5), lines).unwrap();
    let region = Region::new(&rectangle(0.0, 0.0, 1.0, 3.0)).unwrap();
    let fit = fit_rows(&region, &rule(0.0, 1.0, 0.5)).unwrap();
    let piece = fit.row(0).unwrap().pieces().next().unwrap();
    let places: Vec<_> = standing(&set, piece, Length::ZERO..=piece.length())
        .map(|p| (p.x, p.y))
        .collect();
    let want = [(0.3, 0.5), (0.3, 1.5), (0.3, 2.5), (0.7, 0.5), (0.7, 1.5), (0.7, 2.5)];
    assert_eq!(places.len(), want.len());
    for (got, want) in places.iter().zip(want) {
        assert!((got.0 - want.0).hypot(got.1 - want.1) < 1e-12, "{got:?}, not {want:?}");
    }
}

#[test]
fn a_plant_rule_refuses_what_is_no_length() {
    let metre = Length::metres(1.0);
    let bad = [0.0, -0.3, f64::NAN, f64::INFINITY, 1e-9].map(Length::metres);
    for in_row in bad {
        let refused = plants_on(metre, in_row, Length::ZERO);
        assert!(matches!(refused, Err(PlantError::InRow(_))), "{in_row:?}");
    }
    for length in [-0.1, f64::NAN, f64::NEG_INFINITY].map(Length::metres) {
        assert!(matches!(plants_on(metre, metre, length), Err(PlantError::EndGap(_))));
        let lines = Lines {
            per_row: 2,
            apart: length,
            staggered: false,
        };
        assert!(matches!(PlantRule::new(metre, metre, lines), Err(PlantError::Apart(_))));
    }
    let none = Lines {
        per_row: 0,
        ..Lines::SINGLE
    };
    assert_eq!(PlantRule::new(metre, metre, none), Err(PlantError::NoLines));
    let said = PlantError::InRow(Length::ZERO).to_string();
    assert_eq!(
        said,
        "The in-row spacing is 0 m; it has to be a length above zero. Type the distance from plant to plant."
    );
}

#[test]
fn a_length_that_is_none_holds_no_plant_and_an_endless_one_does_not_overflow() {
    let third = Length::metres(0.3);
    for length in [f64::NAN, -1.0, f64::NEG_INFINITY].map(Length::metres) {
        assert_eq!(plants_on(length, third, Length::ZERO), Ok(0));
    }
    let many = Lines {
        per_row: 255,
        apart: third,
        staggered: true,
    };
    let set = PlantRule::new(Length::metres(1e-4), Length::ZERO, many).unwrap();
    assert_eq!(set.on(Length::metres(f64::INFINITY)), u64::MAX);
    assert_eq!(plants_on(third, Length::metres(1e300), Length::ZERO), Ok(1));
}
