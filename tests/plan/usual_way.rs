//! Another usual way in the crop book: what was published of seed says nothing of sets, and what lies on the shelf stays
//! what it is.

use quillet::catalog::PlantingMethod;
use quillet::layout::{
    BedChange, Form, Layout, LotContents, LotGermination, OwnCultivar, OwnValues, Packet, SeedAmount, SeedEdit,
};
use quillet::plan::{CropBook, OrderLine, Things};
use quillet::quantity::{Bearing, Length, Mass};

use super::order::seed;
use super::{changes, crop, plan, rectangle};

const METHODS: [PlantingMethod; 10] = [
    PlantingMethod::Drilled,
    PlantingMethod::Transplant,
    PlantingMethod::SeedPiece,
    PlantingMethod::Set,
    PlantingMethod::Clove,
    PlantingMethod::Bulb,
    PlantingMethod::Slip,
    PlantingMethod::Crown,
    PlantingMethod::Division,
    PlantingMethod::BareRoot,
];

fn lot(cultivar: &str) -> SeedEdit {
    SeedEdit::AddLot(LotContents {
        crop: crop("onion_seed"),
        cultivar: cultivar.to_owned(),
        form: None,
        year: 2027,
        amount: SeedAmount::Weight(Mass::pounds(1.0)),
        germination: LotGermination::NotKnown,
    })
}

fn packets(form: Option<Form>, ounces: f64) -> SeedEdit {
    SeedEdit::SetPackets {
        crop: crop("onion_seed"),
        cultivar: String::new(),
        form,
        sizes: vec![Packet {
            amount: SeedAmount::Weight(Mass::ounces(ounces)),
            price: Some(3.0),
        }],
    }
}

/// A row of 100 onions, a pound of seed on the shelf, and packets of an ounce; none of them names its form.
fn onions() -> Layout {
    let planted = [
        BedChange::SetBearing(Bearing::NORTH),
        BedChange::SetCrop(crop("onion_seed")),
        BedChange::SetInRow(Some(Length::feet(1.0))),
        BedChange::SetRowSpacing(Length::feet(3.0)),
    ];
    let layout = changes(&rectangle(3.0, 100.0), planted);
    seed(&seed(&layout, lot("")), packets(None, 1.0))
}

fn over_onions(values: OwnValues) -> SeedEdit {
    SeedEdit::SetOwnValues {
        crop: crop("onion_seed"),
        values,
    }
}

fn sets() -> OwnValues {
    OwnValues {
        method: Some(PlantingMethod::Set),
        ..OwnValues::default()
    }
}

fn line(layout: &Layout) -> OrderLine {
    plan(layout).order.lines[0].as_ref().clone()
}

#[test]
fn a_seed_weighs_nothing_of_a_set() {
    let before = line(&onions());
    assert_eq!(before.things, Things::Seeds);
    assert_eq!(before.to_buy.count, 0, "a pound of seed is enough");

    let layout = seed(&onions(), over_onions(sets()));
    let book = CropBook::of(&layout);
    let onion = book.crop(&crop("onion_seed")).unwrap();
    assert_eq!(onion.seed_weight, None);
    assert_eq!(onion.seed_weight_range, None);
    assert_eq!(onion.buying, None);
    assert_eq!((&onion.depth, &onion.field_seed), (&None, &None));
    let line = line(&layout);
    assert_eq!(
        (line.things, line.need.count, line.to_buy.count),
        (Things::Sets, 100, 100)
    );
    assert_eq!(line.need.mass, None);
    assert!(line.drawn.is_empty(), "seed is no sets");
    assert!(line.packets.is_none() && line.packets_problem.is_none());
    assert_eq!(layout.lots[0].form, Some(Form::Seed));
    assert_eq!(layout.packets[0].form, Some(Form::Seed));

    let weighed = OwnValues {
        seed_weight: Some(Mass::grams(5.0)),
        ..sets()
    };
    let need = self::line(&seed(&layout, over_onions(weighed))).need;
    assert!((need.mass.unwrap().to_grams() - 500.0).abs() < 1e-6);
}

#[test]
fn going_back_gives_the_seed_its_weight_and_the_shelf_its_use() {
    let layout = seed(&onions(), over_onions(sets()));
    let back = line(&seed(&layout, over_onions(OwnValues::default())));
    assert_eq!((back.things, back.to_buy.count), (Things::Seeds, 0));
    assert!(back.need.mass.is_some());
    assert_eq!(back.drawn.len(), 1);
}

#[test]
fn seed_raised_under_cover_is_the_same_seed() {
    let raised = OwnValues {
        method: Some(PlantingMethod::Transplant),
        ..OwnValues::default()
    };
    let layout = seed(&onions(), over_onions(raised));
    let book = CropBook::of(&layout);
    assert!(book.crop(&crop("onion_seed")).unwrap().seed_weight.is_some());
    assert_eq!(layout.lots[0].form, None);
}

#[test]
fn a_weight_given_for_seed_goes_when_sets_are_planted() {
    let one = Some(Mass::ounces(1.0 / 8000.0));
    let weighed = OwnValues {
        seed_weight: one,
        ..OwnValues::default()
    };
    let layout = seed(&onions(), over_onions(weighed));
    let cultivar = OwnCultivar {
        crop: crop("onion_seed"),
        name: "Red Keeper".to_owned(),
        values: weighed,
    };
    let layout = seed(&layout, SeedEdit::AddCultivar(cultivar));
    let of_sets = seed(
        &layout,
        over_onions(OwnValues {
            method: Some(PlantingMethod::Set),
            ..weighed
        }),
    );
    assert_eq!(of_sets.own_crops[0].values.seed_weight, None);
    assert_eq!(
        of_sets.cultivars[0].values.seed_weight, None,
        "its cultivars are sets now, too"
    );
    // Another value of the crop leaves the weight alone.
    let taller = OwnValues {
        height: Some(Length::feet(2.0)),
        ..weighed
    };
    assert_eq!(seed(&layout, over_onions(taller)).own_crops[0].values.seed_weight, one);
}

#[test]
fn a_cultivar_from_sets_leaves_the_rest_of_the_shelf_alone() {
    let layout = seed(&onions(), lot("Red Keeper"));
    let cultivar = OwnCultivar {
        crop: crop("onion_seed"),
        name: "red keeper".to_owned(),
        values: sets(),
    };
    let added = seed(&layout, SeedEdit::AddCultivar(cultivar));
    let forms: Vec<_> = added.lots.iter().map(|lot| lot.form).collect();
    assert_eq!(forms, [None, Some(Form::Seed)]);
    assert_eq!(added.packets[0].form, None);

    // Sets that were put down while sets were usual stay sets when the cultivar's own way goes.
    let put_down = seed(&added, lot("Red Keeper"));
    let removed = seed(
        &put_down,
        SeedEdit::RemoveCultivar {
            crop: crop("onion_seed"),
            name: "Red Keeper".to_owned(),
        },
    );
    let forms: Vec<_> = removed.lots.iter().map(|lot| lot.form).collect();
    assert_eq!(forms, [None, Some(Form::Seed), Some(Form::Pieces)]);
}

#[test]
fn packets_that_name_their_form_go_before_those_that_do_not() {
    let layout = seed(&onions(), packets(Some(Form::Seed), 4.0));
    assert_eq!(layout.packets.len(), 2);
    let changed = seed(&layout, over_onions(sets()));
    let lists: Vec<_> = changed.packets.iter().map(|list| (list.form, &list.sizes)).collect();
    assert_eq!(lists, [(Some(Form::Seed), &layout.packets[1].sizes)]);
}

#[test]
fn the_usual_form_is_that_of_what_lies_on_the_shelf() {
    for method in METHODS {
        let things = Things::on_shelf(method);
        assert_eq!(things.form(), Form::usual(method), "{method:?}");
        for other in METHODS {
            let is_same = things == Things::on_shelf(other);
            assert_eq!(method.is_same_on_shelf(other), is_same, "{method:?}, {other:?}");
        }
    }
}
