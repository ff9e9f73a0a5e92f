//! The seed shelf in the file: what it looks like, and what is said of one that is wrong.

use jiff::civil::date;
use quillet::catalog::{CropId, PlantingMethod};
use quillet::layout::{
    BedChange, Edit, Layout, LotContents, LotGermination, OwnCultivar, OwnStart, OwnValues, Packet, Raised, SeedAmount,
    SeedEdit, Sowing, check, file,
};
use quillet::quantity::{Fraction, Length, Mass};

use crate::garden::{CORN, applied, garden};

const SEED: &str = include_str!("../files/layout-v2-seed.ron");

/// The garden with a full shelf.
fn shelved() -> Layout {
    let corn = || CropId("sweet_corn".to_owned());
    let part = |part| Fraction::new(part).expect("within a whole");
    let lot = |cultivar: &str, amount, germination| {
        Edit::Seed(SeedEdit::AddLot(LotContents {
            crop: corn(),
            cultivar: cultivar.to_owned(),
            form: None,
            year: 2025,
            amount,
            germination,
        }))
    };
    let raised = Raised {
        losses: part(0.125),
        cells_per_tray: Some(128),
        days_in_tray: Some(35),
        set_out: Some(date(2026, 5, 10)),
        ..Raised::PLAIN
    };
    let edits = [
        Edit::Bed(CORN, BedChange::SetCultivar("Early Amber".to_owned())),
        Edit::Bed(CORN, BedChange::SetSowing(Some(Sowing::Raised(raised)))),
        Edit::Bed(CORN, BedChange::SetFieldEmergence(Some(part(0.75)))),
        lot(
            "Early Amber",
            SeedAmount::Weight(Mass::kilograms(0.125)),
            LotGermination::OwnTest {
                came_up: 41,
                of: 50,
                on: None,
            },
        ),
        lot("", SeedAmount::Count(300), LotGermination::Tag(part(0.85))),
        lot("Late White", SeedAmount::Count(0), LotGermination::NotKnown),
        Edit::Seed(SeedEdit::SetPackets {
            crop: corn(),
            cultivar: "Early Amber".to_owned(),
            form: None,
            sizes: vec![
                Packet {
                    amount: SeedAmount::Count(250),
                    price: Some(4.5),
                },
                Packet {
                    amount: SeedAmount::Weight(Mass::kilograms(0.5)),
                    price: None,
                },
            ],
        }),
        Edit::Seed(SeedEdit::SetOwnValues {
            crop: corn(),
            values: OwnValues {
                in_row_watered: Some(Length::metres(0.2)),
                ..OwnValues::default()
            },
        }),
        Edit::Seed(SeedEdit::AddOwnCrop {
            start: OwnStart::Crop(corn()),
            name: "Broom corn".to_owned(),
            values: OwnValues {
                method: Some(PlantingMethod::Transplant),
                seed_weight: Some(Mass::kilograms(0.000_02)),
                days_to_harvest: Some(110),
                ..OwnValues::default()
            },
        }),
        Edit::Seed(SeedEdit::AddCultivar(OwnCultivar {
            crop: corn(),
            name: "Early Amber".to_owned(),
            values: OwnValues {
                seeds_per_plant: Some(1.5),
                ..OwnValues::default()
            },
        })),
    ];
    applied(&garden(), &edits)
}

#[test]
fn a_full_shelf_reads_back_equal() {
    let layout = shelved();
    assert_eq!(check(&layout), []);
    assert_eq!(file::read(&file::write(&layout)), Ok(layout));
}

#[test]
fn the_shelf_in_the_file_is_what_it_was_the_day_it_was_set() {
    // Old programs and people's own notes rely on it: a change here needs a new version.
    assert_eq!(file::write(&shelved()), SEED);
}

#[test]
fn what_is_wrong_is_said_at_its_place() {
    for (old, new, message) in [
        ("tag(0.85)", "tag(0)", "this part of a whole must be more than zero."),
        ("tag(0.85)", "tag(1.01)", "this part of a whole must be from 0 to 1."),
        ("kg(0.125)", "kg(-0.125)", "this weight must not be less than zero."),
        (
            "one_seed_kg: 2e-5",
            "one_seed_kg: 0",
            "the weight of one seed or piece must be more than zero.",
        ),
        ("price: 4.5", "price: -4.5", "the price must not be less than zero."),
        (
            "field_emergence_part: 0.75",
            "field_emergence_part: 0",
            "this part of a whole must be more than zero.",
        ),
        (
            "set_out: \"2026-05-10\"",
            "set_out: \"10 May\"",
            "this day is none of the calendar.",
        ),
        (
            "days_to_harvest: 110",
            "days_to_harvest: 0",
            "the number of days must be from 1 to 731.",
        ),
        (
            "seeds_per_plant: 1.5",
            "seeds_per_plant: 0.5",
            "the number of seeds for each plant must be from 1 to 1000.",
        ),
        (
            "in_row_watered_m: 0.2",
            "in_row_watred_m: 0.2",
            "there is no key `in_row_watred_m` here.",
        ),
        ("year: 2025", "yaer: 2025", "there is no key `yaer` here."),
        (
            "method: transplant",
            "method: thrown",
            "`thrown` is not one of the words that can stand here.",
        ),
    ] {
        assert!(SEED.contains(old), "{old} is not in the file");
        let text = SEED.replacen(old, new, 1);
        let error = file::read(&text).expect_err(new);
        assert!(error.to_string().ends_with(&format!(": {message}")), "{new}: {error}");
        let line = text.lines().position(|line| line.contains(new)).expect("it is there") + 1;
        let place = error.place().expect("a place");
        assert!((line..=line + 1).contains(&place.line), "{new}: {error}");
        assert!(error.hint().ends_with('.'), "{new}: {}", error.hint());
    }
}

#[test]
fn values_that_do_not_fit_each_other_are_said_where_they_stand() {
    // The place is where the brackets close that hold the values: so many lines below.
    for (old, new, below, message) in [
        (
            "came_up: 41",
            "came_up: 51",
            2,
            "the number of seeds that came up is more than the number tested.",
        ),
        (
            "cells_per_tray: 128",
            "cells_per_tray: 0",
            3,
            "the number of cells in a tray must be from 1 to 5000.",
        ),
        (
            "count(250)",
            "count(0)",
            6,
            "what a packet holds must be more than zero.",
        ),
        (
            "name: \"Broom corn\",",
            "",
            6,
            "the name of a crop of your own is empty.",
        ),
    ] {
        assert!(SEED.contains(old), "{old} is not in the file");
        let text = SEED.replacen(old, new, 1);
        let error = file::read(&text).expect_err(message);
        assert!(error.to_string().ends_with(&format!(": {message}")), "{new}: {error}");
        let line = SEED.lines().position(|line| line.contains(old)).expect("it is there") + 1;
        let place = error.place().expect("a place");
        assert_eq!(place.line, line + below, "{new}: {error}");
    }
}

#[test]
fn own_germination_harvest_and_nitrogen_read_back_and_are_checked() {
    let text = |values: &str| {
        format!(r#"(version: 2, name: "Own", season: 2026, own_crops: [(id: "sweet_corn", values: ({values}))])"#)
    };
    let values = "germination_part: 0.92, harvest: count_per_m(4.5), season_nitrogen_kg_per_m2: 0.0125";
    let layout = file::read(&text(values)).expect("it is a layout");
    assert_eq!(check(&layout), []);
    assert_eq!(file::read(&file::write(&layout)), Ok(layout));
    for (values, message) in [
        ("germination_part: 0", "this part of a whole must be more than zero."),
        ("germination_part: 1.01", "this part of a whole must be from 0 to 1."),
        ("harvest: kg_per_m(-1)", "the harvest must be more than zero."),
        (
            "harvest: bushels(3)",
            "`bushels` is not one of the words that can stand here.",
        ),
        (
            "season_nitrogen_kg_per_m2: 0",
            "the nitrogen for the season must be more than zero.",
        ),
    ] {
        let error = file::read(&text(values)).expect_err(values);
        assert!(
            error.to_string().ends_with(&format!(": {message}")),
            "{values}: {error}"
        );
        // All stands on one line; the place is within the values.
        let text = text(values);
        let column = error.place().expect("a place").column;
        let begins = text.find(values).expect("they are there");
        assert!(
            (begins..=begins + values.len() + 2).contains(&column),
            "{values}: {column}"
        );
    }
}

#[test]
fn two_of_one_name_are_said_where_the_second_stands() {
    let cultivars = "cultivars: [\n";
    let again = "cultivars: [\n(crop: \"sweet_corn\", name: \"EARLY AMBER\"),\n";
    let text = SEED.replacen(cultivars, again, 1);
    let error = file::read(&text).expect_err("two cultivars of one name");
    let said = error.to_string();
    assert!(
        said.ends_with("Two cultivars of sweet_corn are named \"Early Amber\"."),
        "{said}"
    );
    let place = error.place().expect("a place");
    assert_eq!(
        text.lines().nth(place.line - 1),
        Some("            name: \"Early Amber\",")
    );
    let crops = "own_crops: [\n";
    let text = SEED.replacen(crops, "own_crops: [\n(id: \"sweet_corn\"),\n", 1);
    let error = file::read(&text).expect_err("two own crops of one id");
    assert!(
        error.to_string().ends_with("Two own crops have the id \"sweet_corn\"."),
        "{error}"
    );
    let lists = "packets: [\n";
    let twice = "packets: [\n(crop: \"sweet_corn\", cultivar: \"early amber\", sizes: [(amount: count(5))]),\n";
    let error = file::read(&SEED.replacen(lists, twice, 1)).expect_err("two lists");
    assert!(
        error
            .to_string()
            .contains("There are two lists of packets of Early Amber (sweet_corn)."),
        "{error}"
    );
}

#[test]
fn what_is_typed_by_hand_may_leave_out_most() {
    let text = r#"(version: 2, name: "By hand", season: 2026,
        lots: [(crop: "carrot", year: 2024, amount: kg(0.01))],
        own_crops: [(id: "carrot", values: (height_m: 0.4))])"#;
    let layout = file::read(text).expect("it is a layout");
    assert_eq!(layout.lots[0].germination, LotGermination::NotKnown);
    assert!(layout.own_crops[0].is_over_catalogue());
    assert_eq!(check(&layout), []);
}
