//! Splitting a bed between rows leaves every row where it stood; across them, every row keeps its length.

use proptest::prelude::*;
use quillet::geometry::Point;
use quillet::layout::{BedChange, Edit, Layout};
use quillet::plan::{BedPlan, SplitLine};
use quillet::quantity::{Bearing, Length};

use super::{bed, changes, plan, rectangle};

fn split(layout: &Layout, line: SplitLine) -> Layout {
    let edit = Edit::SplitBed {
        bed: layout.beds[0].id,
        at: line.at,
        bearing: line.bearing,
    };
    layout.apply(&edit).unwrap()
}

fn ends(plan: &BedPlan) -> Vec<(Point, Point)> {
    plan.pieces.iter().map(|piece| (piece.start, piece.end)).collect()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]

    #[test]
    fn rows_stay_where_they_stood(
        wide in 20.0..200.0f64,
        deep in 20.0..200.0f64,
        quarter in 0..4_i32,
        spacing in 12.0..60.0f64,
        after in 0.0..1.0f64,
    ) {
        let layout = changes(&rectangle(wide, deep), [
            BedChange::SetBearing(Bearing::degrees(f64::from(quarter) * 90.0)),
            BedChange::SetRowSpacing(Length::inches(spacing)),
        ]);
        let before = plan(&layout);
        let whole = bed(&before);
        prop_assume!(whole.rows.len() > 1);
        let number = 1 + ((whole.rows.len() - 1) as f64 * after) as u32;
        let line = whole.line_after_row(number).expect("not the last row");
        let after = plan(&split(&layout, line));
        let stays = ends(&after.beds[0]);
        prop_assert_eq!(stays.len(), number as usize);
        let both: Vec<(Point, Point)> = stays.into_iter().chain(ends(&after.beds[1])).collect();
        prop_assert_eq!(both.len(), whole.rows.len());
        for (now, then) in both.iter().zip(ends(whole)) {
            prop_assert!(now.0.distance(then.0).to_metres() < 1e-6, "{now:?} stood at {then:?}");
            prop_assert!(now.1.distance(then.1).to_metres() < 1e-6, "{now:?} stood at {then:?}");
        }
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
