//! Dressings by ground, by row feet and by plants.

use quillet::catalog::MaterialId;
use quillet::layout::{Amount, Basis, BedChange, Dressing, DressingId, Layout, Placement, When};
use quillet::plan::{ColumnKind, GoesBy, Ledger, Plan};
use quillet::quantity::{Bearing, Length, Mass, MassPerArea, MassPerLength, Units};

use super::{bed, change, changes, close, crop, plan, rectangle};

fn dressing(material: &str, basis: Basis, amount: Amount, placement: Placement) -> BedChange {
    BedChange::AddDressing(Dressing {
        id: DressingId(0),
        name: "1st side-dressing".to_owned(),
        material: MaterialId(material.to_owned()),
        basis,
        amount,
        typed_in: None,
        placement,
        when: When::Unsaid,
        used: Vec::new(),
    })
}

/// The 30 by 35 ft plot of the trade's rule: 11 rows of 30 ft.
fn eleven_rows() -> Layout {
    change(&rectangle(30.0, 35.0), BedChange::SetBearing(Bearing::EAST))
}

fn with(change_by: BedChange) -> Plan {
    plan(&change(&eleven_rows(), change_by))
}

/// The first side-dressing of sweet corn with a 15-0-0: 10 lb per 1,000 sq ft, which is 1.5 lb of nitrogen per
/// 1,000 sq ft and about 65 lb per acre. Common practice, no source.
const TEN_POUNDS: f64 = 10.0;

#[test]
fn beside_the_plants_counts_row_feet_and_their_strips() {
    let rate = MassPerArea::pounds_per_1000_square_feet(TEN_POUNDS);
    let placement = Placement::SideDress { strip: None };
    let plan = with(dressing(
        "sodium_nitrate_15",
        Basis::Product,
        Amount::PerArea(rate),
        placement,
    ));
    let dressing = &bed(&plan).dressings[0];
    assert_eq!(dressing.problem, None);
    assert_eq!(dressing.goes_by, GoesBy::RowFeet);
    // 330 row ft × 3 ft = 990 sq ft, so 9.9 lb, 0.9 lb a row.
    close(dressing.total.to_pounds(), 9.9, 1e-9);
    assert!(dressing.rows.iter().all(|row| (row.to_pounds() - 0.9).abs() < 1e-9));
    // 15 % nitrogen: 1.485 lb, and 65 lb on an acre of such strips.
    close(plan.materials[0].n.to_pounds(), 1.485, 1e-9);
    close(plan.materials[0].n.to_pounds() / 990.0 * 43_560.0, 65.34, 0.01);
}

#[test]
fn broadcast_counts_the_ground_and_is_shared_by_length() {
    let rate = MassPerArea::pounds_per_1000_square_feet(TEN_POUNDS);
    let plan = with(dressing(
        "sodium_nitrate_15",
        Basis::Product,
        Amount::PerArea(rate),
        Placement::Broadcast,
    ));
    let dressing = &bed(&plan).dressings[0];
    assert_eq!(dressing.goes_by, GoesBy::Ground);
    // 1,050 sq ft, edges and all: 10.5 lb.
    close(dressing.total.to_pounds(), 10.5, 1e-9);
    close(dressing.rows.iter().map(|row| row.to_pounds()).sum(), 10.5, 1e-9);
}

#[test]
fn an_amount_of_nitrogen_asks_for_more_of_a_weaker_material() {
    let rate = MassPerArea::pounds_per_1000_square_feet(1.5);
    let plan = with(dressing(
        "sodium_nitrate_15",
        Basis::Nitrogen,
        Amount::PerArea(rate),
        Placement::Broadcast,
    ));
    // 1.5 lb N per 1,000 sq ft over 1,050 sq ft is 1.575 lb N, in a 15-0-0 10.5 lb.
    close(bed(&plan).dressings[0].total.to_pounds(), 10.5, 1e-9);
}

#[test]
fn along_the_row_and_by_the_plant() {
    let along = MassPerLength::pounds_per_100_feet(3.0);
    let plan_along = with(dressing(
        "urea",
        Basis::Product,
        Amount::PerRowLength(along),
        Placement::Band { strip: None },
    ));
    close(bed(&plan_along).dressings[0].total.to_pounds(), 9.9, 1e-9);

    let each = Amount::PerPlant(Mass::ounces(0.5));
    let by_plant = dressing("urea", Basis::Product, each, Placement::SideDress { strip: None });
    let layout = changes(&eleven_rows(), [BedChange::SetCrop(crop("sweet_corn")), by_plant]);
    let plan = plan(&layout);
    assert_eq!(bed(&plan).dressings[0].goes_by, GoesBy::Plants);
    // 660 plants × ½ oz = 330 oz.
    close(bed(&plan).dressings[0].total.to_ounces(), 330.0, 1e-6);
}

#[test]
fn a_narrower_strip_takes_less() {
    let rate = Amount::PerArea(MassPerArea::pounds_per_1000_square_feet(TEN_POUNDS));
    let placement = Placement::Band {
        strip: Some(Length::feet(1.0)),
    };
    let plan = with(dressing("sodium_nitrate_15", Basis::Product, rate, placement));
    close(bed(&plan).dressings[0].total.to_pounds(), 3.3, 1e-9);
}

#[test]
fn a_nutrient_that_the_material_lacks_is_said_and_left_out() {
    let rate = Amount::PerArea(MassPerArea::pounds_per_acre(50.0));
    let plan = with(dressing("urea", Basis::Potash, rate, Placement::Broadcast));
    let dressing = &bed(&plan).dressings[0];
    assert!(
        dressing
            .problem
            .as_ref()
            .is_some_and(|problem| problem.contains("no potash")),
        "{:?}",
        dressing.problem
    );
    assert!(plan.materials.is_empty());
    assert!(plan.heads_up.iter().any(|heads_up| heads_up.what.contains("no potash")));
}

#[test]
fn a_material_that_the_catalogue_lacks_still_counts_by_weight() {
    let rate = Amount::PerArea(MassPerArea::pounds_per_1000_square_feet(TEN_POUNDS));
    let plan = with(dressing("grandmothers_mix", Basis::Product, rate, Placement::Broadcast));
    close(bed(&plan).dressings[0].total.to_pounds(), 10.5, 1e-9);
    let by_nitrogen = with(dressing(
        "grandmothers_mix",
        Basis::Nitrogen,
        rate,
        Placement::Broadcast,
    ));
    assert!(
        bed(&by_nitrogen).dressings[0]
            .problem
            .as_ref()
            .is_some_and(|problem| problem.contains("grandmothers_mix"))
    );
}

#[test]
fn cups_follow_where_the_density_is_known() {
    let rate = Amount::PerArea(MassPerArea::pounds_per_1000_square_feet(TEN_POUNDS));
    let plan = with(dressing(
        "sodium_nitrate_15",
        Basis::Product,
        rate,
        Placement::SideDress { strip: None },
    ));
    let bed = bed(&plan);
    let density = bed.dressings[0].density.unwrap();
    let cups_a_row = (Mass::pounds(0.9) / density).to_cups();
    let ledger = Ledger::of(bed, Units::Customary);
    let scoops = ledger
        .columns
        .iter()
        .find(|column| column.kind == ColumnKind::Scoops(0))
        .unwrap();
    close(scoops.number(0).unwrap(), cups_a_row, 0.1);
    close(scoops.total as f64 / 10.0, cups_a_row * 11.0, 0.05);
}
