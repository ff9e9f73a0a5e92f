//! Splitting a bed between rows leaves every row where it stood; across them, every row keeps its length.

use proptest::prelude::*;
use quillet::geometry::{Point, Remainder};
use quillet::layout::{BedChange, Edit, Layout, ObstacleKind, PlotChange, Shape};
use quillet::plan::{BedPlan, SplitLine};
use quillet::quantity::{Bearing, Length, Units};

use super::{bed, changes, plan, rectangle};

fn split(layout: &Layout, line: SplitLine) -> Layout {
    let edit = Edit::SplitBed {
        bed: layout.beds[0].id,
        at: line.at,
        bearing: line.bearing,
    };
    layout.apply(&edit).unwrap()
}

/// The layout with a square shed of so many feet in its first plot, its south-west corner at this place.
fn with_shed(layout: &Layout, (x, y): (f64, f64), side: f64, clear: f64) -> Layout {
    let corners = [(x, y), (x + side, y), (x + side, y + side), (x, y + side)];
    let change = PlotChange::AddObstacle {
        name: None,
        kind: ObstacleKind::Building,
        shape: Shape::Corners(corners.map(|(x, y)| Point::feet(x, y)).to_vec()),
        clear: Length::feet(clear),
    };
    layout.apply(&Edit::Plot(layout.plots[0].id, change)).unwrap()
}

/// A plot `wide` by `deep` feet with a bed that fills it, each corner pulled along its side by such a part of it.
fn slanted(wide: f64, deep: f64, [a, b, c, d]: [f64; 4]) -> Layout {
    let layout = rectangle(wide, deep);
    let corners = [
        (a * wide, 0.0),
        (wide, b * deep),
        (wide * (1.0 + c), deep),
        (0.0, deep * (1.0 + d)),
    ];
    let outline = PlotChange::SetOutline(corners.map(|(x, y)| Point::feet(x, y)).to_vec());
    layout.apply(&Edit::Plot(layout.plots[0].id, outline)).unwrap()
}

/// Rows of both parts of a bed of so many metres, split after a row.
fn split_after(number: u32, (wide, deep): (f64, f64), rules: impl IntoIterator<Item = BedChange>) -> (u64, Vec<u64>) {
    let feet = |metres: f64| metres / 0.3048;
    let layout = changes(
        &rectangle(feet(wide), feet(deep)),
        [BedChange::SetBearing(Bearing::NORTH)],
    );
    let layout = changes(&layout, rules);
    let before = plan(&layout);
    let line = bed(&before).line_after_row(number).unwrap();
    let outcome = line.outcome(&layout, layout.beds[0].id).unwrap();
    assert!(outcome.rows_stay, "{outcome:?}");
    let after = plan(&split(&layout, line));
    let rows = after.beds.iter().map(|part| part.totals.rows).collect();
    (bed(&before).totals.rows, rows)
}

#[test]
fn a_clear_strip_moves_no_row() {
    // 12 m less twice 0.3 m of clear strip and twice 0.4 m of margin: 10.6 m hold 13 spacings of 0.8 m.
    let rules = [
        BedChange::SetRowSpacing(Length::metres(0.8)),
        BedChange::SetClear(Length::metres(0.3)),
        BedChange::SetRemainder(Remainder::Right),
    ];
    assert_eq!(split_after(6, (12.0, 20.0), rules), (14, vec![6, 8]));
}

#[test]
fn a_clear_strip_wider_than_half_a_spacing_moves_no_row() {
    // 10 m less twice 1 m and twice 0.4 m: 7.2 m hold 9 spacings of 0.8 m.
    let rules = [
        BedChange::SetRowSpacing(Length::metres(0.8)),
        BedChange::SetClear(Length::metres(1.0)),
    ];
    assert_eq!(split_after(4, (10.0, 20.0), rules), (10, vec![4, 6]));
}

#[test]
fn a_margin_of_its_own_moves_no_row() {
    // 35 ft less twice 3 ft: 29 ft hold 9 spacings of 3 ft.
    let wide = Length::feet(35.0).to_metres();
    let margin = |feet: f64| {
        [
            BedChange::SetRowSpacing(Length::feet(3.0)),
            BedChange::SetEdgeMargin(Some(Length::feet(feet))),
        ]
    };
    assert_eq!(split_after(5, (wide, 12.0), margin(3.0)), (10, vec![5, 5]));
    // 35 ft hold 11 spacings of 3 ft, so 12 rows from edge to edge.
    assert_eq!(split_after(5, (wide, 12.0), margin(0.0)), (12, vec![5, 7]));
}

fn ends(plan: &BedPlan) -> Vec<(Point, Point)> {
    plan.pieces.iter().map(|piece| (piece.start, piece.end)).collect()
}

/// Where left-over width goes.
fn remainder() -> impl Strategy<Value = Remainder> {
    prop::sample::select(vec![Remainder::Left, Remainder::Centred, Remainder::Right])
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(256))]

    #[test]
    fn rows_stay_where_they_stood(
        wide in 20.0..120.0f64,
        deep in 20.0..120.0f64,
        quarter in 0..4_i32,
        spacing in 12.0..60.0f64,
        after in 0.0..1.0f64,
        margin in prop::option::of(0.0..5.0f64),
        clear in prop_oneof![Just(0.0), 0.0..5.0f64],
        remainder in remainder(),
        shed in prop::option::of((0.0..1.0f64, 0.0..1.0f64, 2.0..12.0f64, 0.0..3.0f64)),
        other_way in prop::bool::ANY,
        slant in prop_oneof![Just([0.0; 4]), [-0.3..0.3f64, -0.3..0.3f64, -0.3..0.3f64, -0.3..0.3f64]],
        turn in prop_oneof![Just(0.0), -30.0..30.0f64],
    ) {
        let mut layout = changes(&slanted(wide, deep, slant), [
            BedChange::SetBearing(Bearing::degrees(f64::from(quarter) * 90.0 + turn)),
            BedChange::SetRowSpacing(Length::inches(spacing)),
            BedChange::SetEdgeMargin(margin.map(Length::feet)),
            BedChange::SetClear(Length::feet(clear)),
            BedChange::SetRemainder(remainder),
        ]);
        if let Some((x, y, side, clear)) = shed {
            layout = with_shed(&layout, (x * wide, y * deep), side, clear);
        }
        let before = plan(&layout);
        let whole = bed(&before);
        prop_assume!(whole.rows.len() > 1);
        let index = ((whole.rows.len() - 1) as f64 * after) as usize;
        let mut line = whole.line_after_row(whole.rows[index].number).expect("not the last row");
        if other_way {
            line.bearing = Bearing::degrees(line.bearing.to_degrees() + 180.0);
        }
        let outcome = line.outcome(&layout, layout.beds[0].id).unwrap();
        let after = plan(&split(&layout, line));
        let rows: Vec<usize> = after.beds.iter().map(|part| part.rows.len()).collect();
        prop_assert_eq!(&outcome.rows, &rows);
        prop_assert!(outcome.rows_stay, "{outcome:?} of {}", whole.rows.len());
        prop_assert_eq!(after.beds.len(), 2);
        let left_first = if other_way { [1, 0] } else { [0, 1] };
        prop_assert_eq!(rows[left_first[0]], index + 1);
        let both: Vec<(Point, Point)> = left_first.into_iter().flat_map(|part| ends(&after.beds[part])).collect();
        prop_assert_eq!(both.len(), whole.pieces.len());
        for (now, then) in both.iter().zip(ends(whole)) {
            prop_assert!(now.0.distance(then.0).to_metres() < 1e-4, "{now:?} stood at {then:?}");
            prop_assert!(now.1.distance(then.1).to_metres() < 1e-4, "{now:?} stood at {then:?}");
        }
        // The parts do not lie over each other.
        let both: f64 = after.beds.iter().map(|part| part.area.to_square_metres()).sum();
        prop_assert!(both < whole.area.to_square_metres() + 1e-6);
    }

    #[test]
    fn rows_cut_across_keep_their_length(
        wide in 20.0..200.0f64,
        deep in 20.0..200.0f64,
        part in 0.2..0.8f64,
    ) {
        let layout = changes(&rectangle(wide, deep), [BedChange::SetBearing(Bearing::NORTH)]);
        let before = plan(&layout);
        let whole = bed(&before);
        prop_assume!(!whole.rows.is_empty());
        let from_south = Length::feet(deep * part);
        let line = whole.line_across_rows(from_south).expect("within the bed");
        let after = plan(&split(&layout, line));
        prop_assert_eq!(after.beds[0].rows.len(), whole.rows.len());
        prop_assert_eq!(after.beds[1].rows.len(), whole.rows.len());
        // Where the rows begin stays the bed.
        let length = |bed: usize| after.beds[bed].rows[0].length.to_metres();
        prop_assert!((length(0) - from_south.to_metres()).abs() < 1e-6);
        prop_assert!((length(1) - (Length::feet(deep) - from_south).to_metres()).abs() < 1e-6);
    }
}

#[test]
fn rows_stay_on_a_slanted_plot_after_whichever_row_it_is_split() {
    let outline = [(2.0, 17.0), (24.0, 15.5), (27.0, 26.0), (14.0, 30.0), (0.0, 25.0)];
    let outline = outline.map(|(x, y)| Point::metres(x, y)).to_vec();
    let layout = Layout::empty(2027, Units::Metric);
    let layout = layout.apply(&Edit::AddPlotWithBed { name: None, outline }).unwrap();
    for (margin, clear, remainder) in [
        (None, 0.3, Remainder::Right),
        (None, 0.6, Remainder::Centred),
        (Some(0.0), 0.0, Remainder::Left),
        (Some(1.0), 0.2, Remainder::Left),
        (Some(0.1), 0.1, Remainder::Centred),
    ] {
        let layout = changes(
            &layout,
            [
                BedChange::SetBearing(Bearing::degrees(94.0)),
                BedChange::SetRowSpacing(Length::metres(0.8)),
                BedChange::SetHeadland(Length::metres(0.5)),
                BedChange::SetEdgeMargin(margin.map(Length::metres)),
                BedChange::SetClear(Length::metres(clear)),
                BedChange::SetRemainder(remainder),
            ],
        );
        let before = plan(&layout);
        let whole = bed(&before);
        for row in whole.rows.iter().rev().skip(1) {
            let line = whole.line_after_row(row.number).expect("not the last row");
            let outcome = line.outcome(&layout, layout.beds[0].id).unwrap();
            let told = format!(
                "margin {margin:?}, clear {clear}, after row {}: {outcome:?}",
                row.number
            );
            assert!(outcome.rows_stay, "{told}");
            assert_eq!(outcome.rows.iter().sum::<usize>(), whole.rows.len(), "{told}");
        }
    }
}

#[test]
fn where_a_part_cannot_hold_its_rows_the_outcome_says_so() {
    // Two arms reach west from a spine. The rows of the lower, shorter one are laid by the edge of the upper one, and
    // one of them stands a hand's breadth from its own edge: nearer than the margin that the arm has as a bed of its own.
    let outline = [
        (0.0, 20.0),
        (6.2, 20.0),
        (6.2, 10.0),
        (3.3, 10.0),
        (3.3, 0.0),
        (12.0, 0.0),
        (12.0, 30.0),
        (0.0, 30.0),
    ];
    let outline = outline.map(|(x, y)| Point::metres(x, y)).to_vec();
    let layout = Layout::empty(2027, Units::Metric);
    let layout = layout.apply(&Edit::AddPlotWithBed { name: None, outline }).unwrap();
    let layout = changes(
        &layout,
        [
            BedChange::SetBearing(Bearing::NORTH),
            BedChange::SetRowSpacing(Length::metres(1.0)),
        ],
    );
    let before = plan(&layout);
    assert_eq!(bed(&before).rows.len(), 12);
    let line = bed(&before).line_after_row(6).expect("not the last row");
    let outcome = line.outcome(&layout, layout.beds[0].id).unwrap();
    // Six rows on the upper arm, six on the spine, and two of the three on the lower arm.
    assert_eq!(outcome.rows, [6, 6, 2]);
    assert!(!outcome.rows_stay);
    let after = plan(&split(&layout, line));
    let rows: Vec<usize> = after.beds.iter().map(|part| part.rows.len()).collect();
    assert_eq!(outcome.rows, rows);
}

#[test]
fn there_is_no_line_after_the_last_row_or_beyond_the_bed() {
    // 35 ft at 3 ft holds 11 rows.
    let layout = changes(&rectangle(35.0, 20.0), [BedChange::SetBearing(Bearing::NORTH)]);
    let before = plan(&layout);
    let whole = bed(&before);
    assert!(whole.line_after_row(10).is_some());
    for number in [0, 11, 12, u32::MAX] {
        assert_eq!(whole.line_after_row(number), None, "row {number}");
    }
    assert_eq!(
        whole.length_along_rows().map(|length| length.to_feet().round()),
        Some(20.0)
    );
    for feet in [-1.0, 0.0, 20.0, 21.0, f64::NAN] {
        assert_eq!(whole.line_across_rows(Length::feet(feet)), None, "{feet} ft");
    }
}

#[test]
fn the_row_at_the_left_hand_of_a_place() {
    let layout = changes(&rectangle(35.0, 20.0), [BedChange::SetBearing(Bearing::NORTH)]);
    let before = plan(&layout);
    let whole = bed(&before);
    // Row 1 stands at 2.5 ft: a foot of the 35 ft is shared by both sides.
    let at = |feet: f64| whole.row_left_of(Point::feet(feet, 10.0));
    assert_eq!(
        [at(0.0), at(2.4), at(2.6), at(5.6), at(34.9), at(90.0)],
        [Some(1), Some(1), Some(1), Some(2), Some(11), Some(11)]
    );
}
