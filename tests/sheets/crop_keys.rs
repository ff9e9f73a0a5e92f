//! How crops are told apart on the drawing, and that they stay so.

use std::sync::Arc;

use quillet::catalog::CropId;
use quillet::layout::BedId;
use quillet::plan::Planner;
use quillet::sheets::Ink;
use quillet::sheets::drawing::{CropKey, crop_keys};

use crate::sample::garden;

/// The keys of beds of these crops.
fn planted(crops: &[&str]) -> Vec<CropKey> {
    let (mut layout, _) = garden();
    let bed = layout.beds[0].clone();
    layout.beds = crops
        .iter()
        .zip(1..)
        .map(|(crop, id)| {
            let mut bed = (*bed).clone();
            bed.id = BedId(id);
            bed.planting.as_mut().unwrap().crop = CropId((*crop).to_owned());
            Arc::new(bed)
        })
        .collect();
    let plan = Planner::default().plan(&layout);
    crop_keys(&layout, &plan)
}

const TEN: [&str; 10] = [
    "sweet_corn",
    "tomato",
    "squash_summer",
    "bean_snap_bush",
    "potato",
    "carrot",
    "cabbage",
    "onion_set",
    "garlic",
    "pumpkin",
];

#[test]
fn a_crop_keeps_its_key_when_beds_of_others_are_added() {
    let whole = planted(&TEN);
    for many in 1..TEN.len() {
        assert_eq!(planted(&TEN[..many]), whole[..many]);
    }
    // In an earlier bed, too, most crops leave corn's as it was: all but those that ask for the same.
    let alone = &planted(&["sweet_corn"])[0];
    let kept = TEN[1..].iter().filter(|other| {
        let keys = planted(&[other, "sweet_corn"]);
        keys[1].index == alone.index && keys[1].dash == alone.dash && keys[1].hatch == alone.hatch
    });
    assert!(kept.count() >= 5);
}

#[test]
fn ten_crops_are_told_apart_in_colour_and_in_black_and_white() {
    let keys = planted(&TEN);
    for (place, key) in keys.iter().enumerate() {
        for other in &keys[..place] {
            assert!(
                key.dash != other.dash || key.hatch != other.hatch,
                "{} and {}",
                key.name,
                other.name
            );
            assert!(
                key.index != other.index || key.dash != other.dash,
                "{} and {}",
                key.name,
                other.name
            );
            assert!(place >= usize::from(Ink::CROPS) || key.index != other.index);
            assert_ne!(key.letters, other.letters);
        }
    }
}
