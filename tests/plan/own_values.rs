//! What follows from values of the grower's own beside the catalogue's, and what buying tables say beside the need.

use quillet::layout::{
    BedChange, LotContents, LotGermination, OwnCultivar, OwnHarvest, OwnValues, SeedAmount, SeedEdit,
};
use quillet::plan::{BuyingBeside, ColumnKind, CropBook, GerminationFrom, HarvestAmount, Ledger, TableBuys};
use quillet::quantity::{CountPerLength, Length, Mass, MassPerLength, Units};

use super::order::{corn, part, seed};
use super::{bed, bed_id, change, close, crop, plan};

fn over_corn(values: OwnValues) -> SeedEdit {
    SeedEdit::SetOwnValues {
        crop: crop("sweet_corn"),
        values,
    }
}

#[test]
fn a_germination_in_the_crop_book_goes_before_the_legal_minimum_and_after_the_beds() {
    let germination = |value: f64| OwnValues {
        germination: Some(part(value)),
        ..OwnValues::default()
    };
    let of_bed = seed(&corn(), over_corn(germination(0.5)));
    let stand = bed(&plan(&of_bed)).stand.unwrap();
    assert_eq!(
        (stand.germination, stand.germination_from),
        (part(0.8), GerminationFrom::Grower)
    );

    let of_book = change(&of_bed, BedChange::SetGermination(None));
    let stand = bed(&plan(&of_book)).stand.unwrap();
    assert_eq!(
        (stand.germination, stand.germination_from),
        (part(0.5), GerminationFrom::CropBook)
    );
    // Two good seeds a plant, 60 places a row: 120 ÷ 0.5.
    assert!(bed(&plan(&of_book)).rows.iter().all(|row| row.seeds == 240));

    let cultivar = OwnCultivar {
        crop: crop("sweet_corn"),
        name: "Late White".to_owned(),
        values: germination(0.6),
    };
    let named = change(&of_book, BedChange::SetCultivar("Late White".to_owned()));
    let of_cultivar = seed(&named, SeedEdit::AddCultivar(cultivar));
    assert!(bed(&plan(&of_cultivar)).rows.iter().all(|row| row.seeds == 200));
}

#[test]
fn a_harvest_of_ones_own_takes_the_place_of_the_published_one() {
    let own = |harvest| OwnValues {
        harvest: Some(harvest),
        ..OwnValues::default()
    };
    let ears = seed(
        &corn(),
        over_corn(own(OwnHarvest::Number(CountPerLength::per_100_feet(150.0)))),
    );
    let harvest = bed(&plan(&ears)).harvest.clone().unwrap();
    assert_eq!(harvest.what, "ears");
    // Eleven rows of 30 ft.
    let HarvestAmount::Number(amount) = harvest.amount else {
        panic!("ears are counted")
    };
    close(amount.low, 495.0, 1e-6);
    close(amount.high, 495.0, 1e-6);
    assert_eq!(harvest.sources.1.words(), "the grower's own");

    let weighed = seed(
        &corn(),
        over_corn(own(OwnHarvest::Weight(MassPerLength::pounds_per_100_feet(100.0)))),
    );
    let harvest = bed(&plan(&weighed)).harvest.clone().unwrap();
    let HarvestAmount::Weight(amount) = harvest.amount else {
        panic!("it is weighed")
    };
    close(amount.low.to_pounds(), 330.0, 1e-6);
    assert_eq!(harvest.what, "produce", "a weight is none of ears");
}

#[test]
fn an_empty_lot_is_nothing_to_mention() {
    let with = |amount, germination| {
        let contents = LotContents {
            crop: crop("sweet_corn"),
            cultivar: String::new(),
            form: None,
            year: 2025,
            amount,
            germination,
        };
        plan(&seed(&corn(), SeedEdit::AddLot(contents))).heads_up.len()
    };
    let weak = LotGermination::Tag(part(0.3));
    assert_eq!(with(SeedAmount::Weight(Mass::ZERO), LotGermination::NotKnown), 0);
    assert_eq!(with(SeedAmount::Count(0), weak), 0);
    assert_eq!(with(SeedAmount::Count(1), LotGermination::NotKnown), 1);
    assert_eq!(with(SeedAmount::Count(1), weak), 1);
}

#[test]
fn a_buying_table_is_set_beside_the_need_and_never_makes_it() {
    let layout = corn();
    let plan = plan(&layout);
    let book = CropBook::of(&layout);
    let table = book.crop(&crop("sweet_corn")).unwrap().buying.clone().unwrap();
    let beside = BuyingBeside::of(&plan, bed_id(&layout), &table).unwrap();
    close(beside.row_length.to_feet(), 330.0, 1e-6);
    assert_eq!(beside.need.count, 1650);
    // U.S. Department of Agriculture, Home and Garden Bulletin 202, table of seed, depth and distances (from memory):
    // 2 oz for 100 ft.
    let TableBuys::Weight(low, high) = beside.table else {
        panic!("seed is weighed")
    };
    close(low.to_ounces(), 6.6, 1e-6);
    assert_eq!(low, high);
    // 1,650 seeds at 150 to the ounce (Texas Agricultural Extension Service, Vegetable Grower's Handbook, Table 2)
    // are 11 oz.
    close(beside.times.unwrap().0, 0.6, 1e-6);

    let thinner = change(&layout, BedChange::SetInRow(Some(Length::inches(12.0))));
    let thin = super::plan(&thinner);
    let beside = BuyingBeside::of(&thin, bed_id(&thinner), &table).unwrap();
    assert!(beside.need.count < 1650, "the need follows the places");
    close(beside.row_length.to_feet(), 330.0, 1e-6);
    let TableBuys::Weight(again, _) = beside.table else {
        panic!("seed is weighed")
    };
    assert_eq!(again, low, "the table only sees row feet");
}

#[test]
fn the_ledger_weighs_seed_in_the_unit_of_the_card() {
    // 1,650 seeds are 11 oz, and 3,300 are more than a pound.
    for (in_row, unit) in [(6.0, "oz"), (3.0, "lb")] {
        let layout = change(&corn(), BedChange::SetInRow(Some(Length::inches(in_row))));
        let plan = plan(&layout);
        let ledger = Ledger::of(bed(&plan), Units::Customary);
        let column = ledger
            .columns
            .iter()
            .find(|column| column.kind == ColumnKind::SeedWeight)
            .unwrap();
        assert_eq!(column.unit, unit);
        let on_card = bed(&plan).totals.seed_mass.unwrap().show_seed(Units::Customary);
        assert!(on_card.ends_with(unit), "{on_card}");
    }
}

#[test]
fn an_own_crop_based_on_nothing_known_is_mentioned() {
    let text = r#"(version: 2, name: "Old", season: 2027,
        own_crops: [(id: "own_broom", based_on: "broomcorn", name: "Broom corn", values: ())])"#;
    let layout = quillet::layout::file::read(text).unwrap();
    let heads_up = plan(&layout).heads_up;
    let what: Vec<_> = heads_up.iter().map(|heads_up| heads_up.what.as_str()).collect();
    assert_eq!(
        what,
        ["“Broom corn”, a crop of your own, is based on “broomcorn”, which the catalogue has not."]
    );
    let known = text.replace("broomcorn", "sweet_corn");
    assert!(plan(&quillet::layout::file::read(&known).unwrap()).heads_up.is_empty());
}
