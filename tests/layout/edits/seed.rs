//! The shelf, packets, own crops and cultivars.

use quillet::catalog::CropId;
use quillet::layout::{
    Edit, EditError, Item, Layout, LotContents, LotGermination, LotId, OwnCultivar, OwnStart, OwnValues, Packet,
    SeedAmount, SeedEdit, check,
};
use quillet::quantity::{Fraction, Length, Mass};

use super::{check_edit, check_refused, corn};
use crate::garden::{applied, garden};

fn sweet_corn() -> CropId {
    CropId("sweet_corn".to_owned())
}

fn lot() -> LotContents {
    LotContents {
        crop: sweet_corn(),
        cultivar: " Early Amber ".to_owned(),
        form: None,
        year: 2025,
        amount: SeedAmount::Weight(Mass::ounces(4.0)),
        germination: LotGermination::OwnTest {
            came_up: 41,
            of: 50,
            on: None,
        },
    }
}

fn values(inches: f64) -> OwnValues {
    OwnValues {
        in_row_watered: Some(Length::inches(inches)),
        ..OwnValues::default()
    }
}

fn cultivar(name: &str) -> OwnCultivar {
    OwnCultivar {
        crop: sweet_corn(),
        name: name.to_owned(),
        values: values(7.0),
    }
}

fn own_crop(name: &str) -> SeedEdit {
    SeedEdit::AddOwnCrop {
        start: OwnStart::Crop(sweet_corn()),
        name: name.to_owned(),
        values: values(9.0),
    }
}

fn packets(sizes: Vec<Packet>) -> SeedEdit {
    SeedEdit::SetPackets {
        crop: sweet_corn(),
        cultivar: "Early Amber".to_owned(),
        form: None,
        sizes,
    }
}

#[track_caller]
fn check_seed(edit: SeedEdit, label: &str) -> Layout {
    check_edit(Edit::Seed(edit), label)
}

#[track_caller]
fn refused(edit: SeedEdit, words: &str) {
    check_refused(&Edit::Seed(edit), words);
}

#[track_caller]
fn after(edits: impl IntoIterator<Item = SeedEdit>) -> Layout {
    let edits: Vec<Edit> = edits.into_iter().map(Edit::Seed).collect();
    applied(&garden(), &edits)
}

#[test]
fn lots_are_shelved_changed_and_removed() {
    let after = check_seed(SeedEdit::AddLot(lot()), "shelve Early Amber");
    let shelved = after.lots[0].clone();
    assert_eq!(shelved.cultivar, "Early Amber");
    assert_eq!(shelved.id.0, garden().next_id());
    let less = LotContents {
        amount: SeedAmount::Count(0),
        ..LotContents::from(shelved.as_ref())
    };
    let edit = Edit::Seed(SeedEdit::SetLot(shelved.id, less));
    assert_eq!(edit.label(&after), "change Early Amber of 2025");
    let changed = applied(&after, &[edit]);
    assert_eq!(changed.lots[0].amount, SeedAmount::Count(0));
    let edit = Edit::Seed(SeedEdit::RemoveLot(shelved.id));
    assert_eq!(edit.label(&changed), "remove Early Amber of 2025");
    assert!(applied(&changed, &[edit]).lots.is_empty());
    let gone = Edit::Seed(SeedEdit::RemoveLot(LotId(99)));
    assert_eq!(garden().apply(&gone), Err(EditError::Gone(Item::Lot(LotId(99)))));
}

#[test]
fn lots_that_cannot_be_are_refused() {
    let with = |amount, germination| {
        SeedEdit::AddLot(LotContents {
            amount,
            germination,
            ..lot()
        })
    };
    let tag = LotGermination::Tag;
    let weight = |ounces| SeedAmount::Weight(Mass::ounces(ounces));
    let unknown = LotGermination::NotKnown;
    let subject = "Early Amber (sweet_corn)";
    refused(
        with(weight(-1.0), unknown),
        &format!("{subject}: the amount must not be less than zero."),
    );
    refused(
        with(weight(f64::NAN), unknown),
        &format!("{subject}: the amount is not a number."),
    );
    refused(
        with(weight(4.0), tag(Fraction::ZERO)),
        &format!("{subject}: germination must be more than zero."),
    );
    let none_tested = LotGermination::OwnTest {
        came_up: 0,
        of: 0,
        on: None,
    };
    let message = format!("{subject}: the number of seeds tested must be more than zero.");
    refused(with(weight(4.0), none_tested), &message);
    let too_many = LotGermination::OwnTest {
        came_up: 51,
        of: 50,
        on: None,
    };
    let message = format!("{subject}: the number of seeds that came up is more than the number tested.");
    refused(with(weight(4.0), too_many), &message);
    assert_eq!(
        Fraction::percent(101.0),
        None,
        "no germination over 100 % can be made at all"
    );
}

#[test]
fn packets_are_set_and_taken_away() {
    let packet = |price| Packet {
        amount: SeedAmount::Count(250),
        price,
    };
    let after = check_seed(packets(vec![packet(Some(4.5))]), "set the packets of Early Amber");
    let again = applied(&after, &[Edit::Seed(packets(vec![packet(None), packet(Some(0.0))]))]);
    assert_eq!((again.packets.len(), again.packets[0].sizes.len()), (1, 2));
    assert!(applied(&again, &[Edit::Seed(packets(Vec::new()))]).packets.is_empty());
    refused(
        packets(vec![packet(Some(-1.0))]),
        "Packets of sweet_corn: the price must not be less than zero.",
    );
    let nothing = Packet {
        amount: SeedAmount::Count(0),
        price: None,
    };
    refused(
        packets(vec![nothing]),
        "Packets of sweet_corn: what a packet holds must be more than zero.",
    );
    let message = "Packets of sweet_corn: the number of packet sizes must be from 1 to 12.";
    refused(packets(vec![packet(None); 13]), message);
}

#[test]
fn own_values_stand_over_the_catalogues_and_go_again() {
    let set = |values| SeedEdit::SetOwnValues {
        crop: sweet_corn(),
        values,
    };
    let after = check_seed(set(values(9.0)), "set own values of Sweet corn");
    assert!(after.own_crops[0].is_over_catalogue());
    let back = applied(&after, &[Edit::Seed(set(OwnValues::default()))]);
    assert_eq!(back, garden());
    let weightless = OwnValues {
        seed_weight: Some(Mass::ZERO),
        ..OwnValues::default()
    };
    let message = "sweet_corn: the weight of one seed or piece must be more than zero.";
    refused(set(weightless), message);
    refused(
        set(values(0.0)),
        "sweet_corn: the in-row spacing with water must be more than zero.",
    );
}

#[test]
fn own_crops_have_names_of_their_own() {
    let after = check_seed(own_crop(" Broom corn "), "add Broom corn");
    let own = after.own_crops[0].clone();
    assert_eq!((own.name.as_str(), own.id.0.as_str()), ("Broom corn", "own_broom_corn"));
    let second = after.apply(&Edit::Seed(own_crop("broom CORN")));
    assert_eq!(second, Err(EditError::NameTaken("broom CORN".to_owned())));
    refused(own_crop("sweet corn"), "There is a crop named \"sweet corn\" already.");
    refused(own_crop(" "), "own_: its name is empty.");
    let renamed = SeedEdit::SetOwnCrop {
        crop: own.id.clone(),
        name: "Sorghum for brooms".to_owned(),
        values: values(8.0),
    };
    let changed = applied(&after, &[Edit::Seed(renamed)]);
    assert_eq!(
        (changed.own_crops[0].id.clone(), changed.own_crops[0].name.as_str()),
        (own.id.clone(), "Sorghum for brooms")
    );
    // It stays while a bed is planted with it.
    let planted = applied(&after, &[corn(quillet::layout::BedChange::SetCrop(own.id.clone()))]);
    let remove = Edit::Seed(SeedEdit::RemoveOwnCrop(own.id.clone()));
    let error = planted.apply(&remove).expect_err("a bed names it");
    assert_eq!(error.to_string(), "Broom corn is still named by Corn block.");
    assert_eq!(applied(&after, &[remove]), garden());
    refused(
        SeedEdit::RemoveOwnCrop(own.id.clone()),
        "The layout has no crop \"own_broom_corn\" of its own.",
    );
}

#[test]
fn two_cultivars_of_one_name_are_refused() {
    let one = after([SeedEdit::AddCultivar(cultivar("Early Amber"))]);
    let error = one
        .apply(&Edit::Seed(SeedEdit::AddCultivar(cultivar("early amber"))))
        .expect_err("it is there");
    assert_eq!(
        error.to_string(),
        "Sweet corn has a cultivar named \"early amber\" already."
    );
    assert!(error.hint().ends_with('.'));
    let other_crop = OwnCultivar {
        crop: CropId("carrot".to_owned()),
        ..cultivar("Early Amber")
    };
    assert_eq!(
        check(&applied(&one, &[Edit::Seed(SeedEdit::AddCultivar(other_crop))])),
        []
    );
}

#[test]
fn a_cultivar_takes_its_new_name_wherever_it_stands() {
    let named = corn(quillet::layout::BedChange::SetCultivar("Early Amber".to_owned()));
    let layout = applied(
        &after([SeedEdit::AddCultivar(cultivar("Early Amber")), SeedEdit::AddLot(lot())]),
        &[named],
    );
    let to = cultivar("Amber, early");
    let edit = SeedEdit::SetCultivar {
        name: "early amber".to_owned(),
        to,
    };
    let renamed = applied(&layout, &[Edit::Seed(edit)]);
    assert_eq!(renamed.cultivars[0].name, "Amber, early");
    assert_eq!(renamed.lots[0].cultivar, "Amber, early");
    assert_eq!(
        renamed.beds[0]
            .planting
            .as_ref()
            .map(|planting| planting.cultivar.as_str()),
        Some("Amber, early")
    );
    let gone = SeedEdit::RemoveCultivar {
        crop: sweet_corn(),
        name: "Early Amber".to_owned(),
    };
    assert!(renamed.apply(&Edit::Seed(gone)).is_err());
}
