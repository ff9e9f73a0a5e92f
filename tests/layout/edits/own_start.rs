//! Crops of the grower's own that start from nothing, and packets for each form.

use quillet::catalog::{CropId, PlantingMethod};
use quillet::layout::{BedChange, Edit, Form, Kind, OwnStart, OwnValues, Packet, SeedAmount, SeedEdit, check};

use super::{check_edit, check_refused, corn};
use crate::garden::{applied, garden};

fn blank(name: &str, method: Option<PlantingMethod>) -> SeedEdit {
    SeedEdit::AddOwnCrop {
        start: OwnStart::Blank(Kind {
            botanical: " Basella alba ".to_owned(),
            family: " Basellaceae ".to_owned(),
        }),
        name: name.to_owned(),
        values: OwnValues {
            method,
            ..OwnValues::default()
        },
    }
}

#[test]
fn a_crop_from_nothing_is_added_changed_and_removed() {
    let add = Edit::Seed(blank("Hill spinach", Some(PlantingMethod::Drilled)));
    let after = check_edit(add, "add Hill spinach");
    let own = after.own_crops[0].clone();
    assert_eq!((own.id.0.as_str(), own.based_on()), ("own_hill_spinach", None));
    assert!(!own.is_over_catalogue());
    let OwnStart::Blank(kind) = &own.start else {
        panic!("it starts from nothing")
    };
    assert_eq!(
        (kind.botanical.as_str(), kind.family.as_str()),
        ("Basella alba", "Basellaceae")
    );
    let kind = SeedEdit::SetOwnKind {
        crop: own.id.clone(),
        kind: Kind {
            family: "Amaranthaceae".to_owned(),
            ..kind.clone()
        },
    };
    let kind = Edit::Seed(kind);
    assert_eq!(kind.label(&after), "change Hill spinach");
    let changed = applied(&after, &[kind]);
    assert!(matches!(&changed.own_crops[0].start, OwnStart::Blank(kind) if kind.family == "Amaranthaceae"));
    assert_eq!(check(&changed), []);
    // It stays while a bed is planted with it.
    let planted = applied(&after, &[corn(BedChange::SetCrop(own.id.clone()))]);
    let remove = Edit::Seed(SeedEdit::RemoveOwnCrop(own.id.clone()));
    assert!(planted.apply(&remove).is_err());
    assert_eq!(applied(&after, &[remove]), garden());
}

#[test]
fn a_crop_from_nothing_says_how_it_is_put_in_the_ground() {
    let missing = "Hill spinach: how it is put in the ground is missing.";
    check_refused(&Edit::Seed(blank("Hill spinach", None)), missing);
    let after = applied(
        &garden(),
        &[Edit::Seed(blank("Hill spinach", Some(PlantingMethod::Slip)))],
    );
    let crop = after.own_crops[0].id.clone();
    for edit in [
        SeedEdit::SetOwnCrop {
            crop: crop.clone(),
            name: "Hill spinach".to_owned(),
            values: OwnValues::default(),
        },
        SeedEdit::SetOwnValues {
            crop,
            values: OwnValues {
                days_to_harvest: Some(70),
                ..OwnValues::default()
            },
        },
    ] {
        let error = after.apply(&Edit::Seed(edit)).expect_err("its way would be lost");
        assert_eq!(error.to_string(), missing);
    }
}

#[test]
fn only_a_crop_from_nothing_has_a_kind_of_its_own() {
    let own = SeedEdit::AddOwnCrop {
        start: OwnStart::Crop(CropId("carrot".to_owned())),
        name: "Long carrot".to_owned(),
        values: OwnValues::default(),
    };
    let layout = applied(&garden(), &[Edit::Seed(own)]);
    let kind = SeedEdit::SetOwnKind {
        crop: layout.own_crops[0].id.clone(),
        kind: Kind::default(),
    };
    assert!(layout.apply(&Edit::Seed(kind)).is_err());
    let keeps = |years| SeedEdit::SetOwnValues {
        crop: CropId("carrot".to_owned()),
        values: OwnValues {
            seed_keeps_years: Some(years),
            ..OwnValues::default()
        },
    };
    check_edit(Edit::Seed(keeps(50)), "set own values of Carrot");
    let message = "carrot: the number of years that seed keeps must be from 1 to 50.";
    check_refused(&Edit::Seed(keeps(0)), message);
    check_refused(&Edit::Seed(keeps(51)), message);
}

#[test]
fn packets_are_kept_for_each_form() {
    let of = |form, holds: &[u64]| {
        let sizes = holds.iter().map(|count| Packet {
            amount: SeedAmount::Count(*count),
            price: None,
        });
        Edit::Seed(SeedEdit::SetPackets {
            crop: CropId("onion_seed".to_owned()),
            cultivar: String::new(),
            form,
            sizes: sizes.collect(),
        })
    };
    let (seed, sets) = (of(None, &[250]), of(Some(Form::Pieces), &[40, 100]));
    let both = applied(&garden(), &[seed, sets]);
    assert_eq!(both.packets.len(), 2);
    assert_eq!(check(&both), []);
    let other = applied(&both, &[of(Some(Form::Pieces), &[])]);
    assert_eq!((other.packets.len(), other.packets[0].form), (1, None));
}
