//! What is shown of rows adds up to what is shown of their bed.

use proptest::prelude::*;
use quillet::catalog::MaterialId;
use quillet::layout::{Amount, Basis, BedChange, Dressing, DressingId, Placement, When};
use quillet::plan::Ledger;
use quillet::quantity::{Bearing, Length, MassPerArea, Units};

use super::{bed, changes, crop, plan, rectangle};

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]

    #[test]
    fn shown_rows_add_up_to_the_shown_bed(
        wide in 12.0..200.0f64,
        deep in 12.0..200.0f64,
        bearing in 0.0..180.0f64,
        spacing in 8.0..60.0f64,
        rate in 0.5..60.0f64,
        metric in any::<bool>(),
        broadcast in any::<bool>(),
    ) {
        let placement = if broadcast { Placement::Broadcast } else { Placement::SideDress { strip: None } };
        let layout = changes(&rectangle(wide, deep), [
            BedChange::SetBearing(Bearing::degrees(bearing)),
            BedChange::SetRowSpacing(Length::inches(spacing)),
            BedChange::SetCrop(crop("carrot")),
            BedChange::AddDressing(Dressing {
                id: DressingId(0),
                name: "before planting".to_owned(),
                material: MaterialId("urea".to_owned()),
                basis: Basis::Product,
                amount: Amount::PerArea(MassPerArea::pounds_per_1000_square_feet(rate)),
                typed_in: None,
                placement,
                when: When::Unsaid,
        used: Vec::new(),
            }),
        ]);
        let plan = plan(&layout);
        let bed = bed(&plan);
        let units = if metric { Units::Metric } else { Units::Customary };
        let ledger = Ledger::of(bed, units);
        prop_assert!(ledger.columns.len() >= 6, "{:?}", ledger.columns.len());
        for column in &ledger.columns {
            prop_assert_eq!(column.steps.len(), bed.rows.len());
            prop_assert_eq!(column.steps.iter().sum::<i64>(), column.total, "{}", &column.title);
            prop_assert!(column.steps.iter().all(|&steps| steps >= 0));
        }
        // No row is shown a whole step off, and the bed no more than half a step.
        let length = &ledger.columns[0];
        let step = 10f64.powi(-i32::from(length.decimals));
        let in_unit = |length: Length| if metric { length.to_metres() } else { length.to_feet() };
        for (row, shown) in bed.rows.iter().zip(&length.steps) {
            prop_assert!((in_unit(row.length) - *shown as f64 * step).abs() < step * 1.001);
        }
        prop_assert!((in_unit(bed.totals.row_length) - length.total as f64 * step).abs() <= step * 0.501);
    }
}

#[test]
fn thousands_are_marked_and_units_stand_behind() {
    let layout = changes(&rectangle(300.0, 160.0), [BedChange::SetCrop(crop("sweet_corn"))]);
    let plan = plan(&layout);
    let ledger = Ledger::of(bed(&plan), Units::Customary);
    assert_eq!(ledger.columns[0].cell(0), "160\u{a0}ft");
    assert_eq!(ledger.columns[0].total(), "16,000\u{a0}ft");
    assert_eq!(ledger.columns[1].total(), "32,000");
}

#[test]
fn sums_of_the_layout_are_those_of_its_beds() {
    let layout = changes(&rectangle(60.0, 40.0), [BedChange::SetCrop(crop("sweet_corn"))]);
    let plan = plan(&layout);
    assert_eq!(plan.totals, bed(&plan).totals);
    assert_eq!(plan.crops.len(), 1);
    assert_eq!(plan.crops[0].totals, bed(&plan).totals);
}
