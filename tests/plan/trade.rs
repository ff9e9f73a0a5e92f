//! Rules of thumb of growers with walk-behind tools and tape: common practice, no source.

use quillet::catalog::Catalog;
use quillet::layout::{BedChange, Layout, Sowing, Water};
use quillet::plan::{ColumnKind, InRowFrom, Ledger};
use quillet::quantity::{Bearing, Fraction, Length, Units};

use super::{bed, change, changes, close, crop, feet, plan, rectangle};

/// A 30 by 35 ft plot, rows 3 ft apart along the 30 ft side, each owning a 3 ft strip: 11 rows, 330 row feet.
/// Common practice, no source.
#[test]
fn eleven_rows_fit_thirty_by_thirty_five_feet() {
    let layout = change(&rectangle(30.0, 35.0), BedChange::SetBearing(Bearing::EAST));
    let plan = plan(&layout);
    assert_eq!(bed(&plan).rows.len(), 11);
    feet(bed(&plan).totals.row_length, 330.0);
    feet(bed(&plan).fit.remainder, 2.0);
    close(bed(&plan).area.to_square_feet(), 1050.0, 1e-6);
}

/// Sweet corn stands about 6 in apart with tape buried under it and all the water it asks for, 8 to 12 in where
/// water may run short. Common practice, no source.
#[test]
fn plants_close_up_when_the_tape_is_buried() {
    let layout = change(&rectangle(30.0, 35.0), BedChange::SetCrop(crop("sweet_corn")));
    let buried = plan(&change(&layout, BedChange::SetWater(Water::BuriedDrip)));
    let stand = bed(&buried).stand.unwrap();
    close(stand.in_row.to_inches(), 6.0, 1e-9);
    assert_eq!(stand.in_row_from, InRowFrom::CropWatered);
    for water in [Water::Overhead, Water::Rain] {
        let dry = plan(&change(&layout, BedChange::SetWater(water)));
        let stand = bed(&dry).stand.unwrap();
        assert!(
            (8.0..=12.0).contains(&stand.in_row.to_inches()),
            "{}",
            stand.in_row.to_inches()
        );
        assert_eq!(stand.in_row_from, InRowFrom::CropDry);
        assert!(bed(&dry).totals.plants < bed(&buried).totals.plants);
    }
}

/// 30 ft at 6 in is 60 plants, never 59: feet in decimals lose a hair in binary.
#[test]
fn sixty_plants_stand_on_thirty_feet_at_six_inches() {
    let east = BedChange::SetBearing(Bearing::EAST);
    let layout = changes(&rectangle(30.0, 35.0), [east, BedChange::SetCrop(crop("sweet_corn"))]);
    let plan = plan(&layout);
    assert!(bed(&plan).rows.iter().all(|row| row.plants == 60));
    assert_eq!(bed(&plan).totals.plants, 660);
}

#[test]
fn a_spacing_of_the_growers_own_stays_and_is_marked() {
    let own = BedChange::SetInRow(Some(Length::inches(7.0)));
    let layout = changes(&rectangle(30.0, 35.0), [BedChange::SetCrop(crop("sweet_corn")), own]);
    let buried = plan(&layout);
    let dry = plan(&change(&layout, BedChange::SetWater(Water::Rain)));
    for plan in [&buried, &dry] {
        let stand = bed(plan).stand.unwrap();
        assert_eq!(stand.in_row_from, InRowFrom::Grower);
        close(stand.in_row.to_inches(), 7.0, 1e-9);
    }
}

#[test]
fn tape_is_counted_only_where_water_comes_through_it() {
    let layout = rectangle(30.0, 35.0);
    let buried = plan(&layout);
    let spare = layout.beds[0].tape.spare.to_feet();
    // Ten rows of 35 ft, each with the spare for its fittings.
    feet(bed(&buried).totals.tape, 10.0 * (35.0 + spare));
    let rain = plan(&change(&layout, BedChange::SetWater(Water::Rain)));
    feet(bed(&rain).totals.tape, 0.0);
}

#[test]
fn tape_has_a_column_where_there_is_tape() {
    let layout = rectangle(30.0, 35.0);
    let tape = |layout| {
        let ledger = Ledger::of(bed(&plan(layout)), Units::Customary);
        let column = ledger.columns.iter().find(|column| column.kind == ColumnKind::Tape);
        column.map(|column| (column.cell(0), column.total()))
    };
    // Ten rows of 35 ft, each with a foot to spare.
    assert_eq!(tape(&layout), Some(("36\u{a0}ft".to_owned(), "360\u{a0}ft".to_owned())));
    assert_eq!(tape(&change(&layout, BedChange::SetWater(Water::Rain))), None);
}

/// Seeds are counted by the grower's germination, and without one by the least that seed of the kind may be sold with.
#[test]
fn seeds_follow_germination_thinning_and_spare() {
    let east = BedChange::SetBearing(Bearing::EAST);
    let layout = changes(&rectangle(30.0, 35.0), [east, BedChange::SetCrop(crop("sweet_corn"))]);
    let corn = Catalog::built_in().crop(&crop("sweet_corn")).unwrap();
    let least = corn.least_germination.as_ref().unwrap().value.get();
    let each = corn.seeds_per_plant.as_ref().map_or(1.0, |seeds| seeds.value);
    assert!(least < 1.0, "the case would show nothing");
    let for_row = |each: f64, germination: f64, spare: f64| (60.0 * each / germination * (1.0 + spare) - 1e-9).ceil();
    let first = |layout: &Layout| bed(&plan(layout)).rows[0].seeds as f64;
    assert_eq!(first(&layout), for_row(each, least, 0.0));
    let part = |part| Fraction::new(part).unwrap();
    let own = changes(
        &layout,
        [
            BedChange::SetGermination(Some(part(0.9))),
            BedChange::SetSpare(part(0.1)),
            BedChange::SetSowing(Some(Sowing::Seed { seeds_per_plant: 2.0 })),
        ],
    );
    assert_eq!(first(&own), for_row(2.0, 0.9, 0.1));
    let set_out = change(&own, BedChange::SetSowing(Some(Sowing::Plants)));
    assert_eq!(first(&set_out), 0.0);
}

#[test]
fn ground_kept_clear_still_counts_as_the_beds_ground() {
    let layout = change(&rectangle(30.0, 35.0), BedChange::SetClear(Length::feet(2.0)));
    let plan = plan(&layout);
    close(bed(&plan).area.to_square_feet(), 1050.0, 1e-6);
    close(bed(&plan).rows_ground.area().to_square_feet(), 26.0 * 31.0, 1e-6);
}
