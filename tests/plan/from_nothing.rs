//! A crop of the grower's own that starts from nothing: what it does not say is not counted, not guessed, and asked for.

use quillet::catalog::PlantingMethod;
use quillet::layout::{
    BedChange, Kind, Layout, LotContents, LotGermination, OwnStart, OwnValues, Packet, SeedAmount, SeedEdit, Sowing,
    Water,
};
use quillet::plan::{ColumnKind, CropBook, GerminationFrom, Ledger, Plan, Things};
use quillet::quantity::{Bearing, Length, Mass, Units};
use quillet::sheets::order_list::OrderList;

use super::order::{part, seed};
use super::{bed, change, changes, close, plan, rectangle};

/// One row of 100 ft, planted with a crop of which only its way is known.
fn row_of(method: PlantingMethod, values: OwnValues) -> Layout {
    let add = SeedEdit::AddOwnCrop {
        start: OwnStart::Blank(Kind {
            botanical: String::new(),
            family: "Basellaceae".to_owned(),
        }),
        name: "Hill spinach".to_owned(),
        values: OwnValues {
            method: Some(method),
            ..values
        },
    };
    let layout = seed(&rectangle(3.0, 100.0), add);
    let own = layout.own_crops[0].id.clone();
    changes(
        &layout,
        [
            BedChange::SetBearing(Bearing::NORTH),
            BedChange::SetCrop(own),
            BedChange::SetRowSpacing(Length::feet(3.0)),
            BedChange::SetWater(Water::Rain),
        ],
    )
}

fn a_foot_apart() -> OwnValues {
    OwnValues {
        in_row_watered: Some(Length::feet(1.0)),
        in_row_dry: Some(Length::feet(2.0)),
        ..OwnValues::default()
    }
}

fn set(layout: &Layout, values: OwnValues) -> Layout {
    let crop = layout.own_crops[0].id.clone();
    let name = layout.own_crops[0].name.clone();
    let method = layout.own_crops[0].values.method;
    seed(
        layout,
        SeedEdit::SetOwnCrop {
            crop,
            name,
            values: OwnValues { method, ..values },
        },
    )
}

fn said<'a>(plan: &'a Plan, words: &str) -> Option<&'a str> {
    let heads_up = plan.heads_up.iter().find(|heads_up| heads_up.what.contains(words));
    heads_up.map(|heads_up| heads_up.why.as_str())
}

#[test]
fn without_a_spacing_no_plant_is_counted_and_the_plan_says_where_to_type_it() {
    let layout = row_of(PlantingMethod::Drilled, OwnValues::default());
    let missing = plan(&layout);
    assert_eq!(bed(&missing).totals.rows, 1, "rows stand by the bed's own spacing");
    assert_eq!((bed(&missing).totals.plants, bed(&missing).stand), (0, None));
    assert!(missing.order.lines.is_empty(), "nothing is made up to order");
    let why = said(&missing, "no in-row spacing of Hill spinach where water may run short").unwrap();
    assert!(why.contains("In the row") && why.contains("crop book"), "{why}");

    // Typed in the bed, or in the crop book, it is counted.
    let typed = plan(&change(&layout, BedChange::SetInRow(Some(Length::feet(1.0)))));
    assert_eq!(bed(&typed).totals.plants, 100);
    assert!(said(&typed, "no in-row spacing").is_none());
    let in_book = set(&layout, a_foot_apart());
    assert_eq!(bed(&plan(&in_book)).totals.plants, 50, "water may run short: 2 ft");
    let drip = change(&in_book, BedChange::SetWater(Water::BuriedDrip));
    assert_eq!(bed(&plan(&drip)).totals.plants, 100, "all its water: 1 ft");
}

#[test]
fn one_spacing_says_nothing_of_the_other_water() {
    let watered = OwnValues {
        in_row_watered: Some(Length::feet(1.0)),
        ..OwnValues::default()
    };
    let layout = row_of(PlantingMethod::Drilled, watered);
    assert_eq!(bed(&plan(&layout)).totals.plants, 0);
    let drip = change(&layout, BedChange::SetWater(Water::SurfaceDrip));
    assert_eq!(bed(&plan(&drip)).totals.plants, 100);
}

#[test]
fn seed_of_unknown_weight_is_a_count_and_no_ounces() {
    let values = OwnValues {
        germination: Some(part(0.8)),
        ..a_foot_apart()
    };
    let layout = row_of(PlantingMethod::Drilled, values);
    let packets = |amount| SeedEdit::SetPackets {
        crop: layout.own_crops[0].id.clone(),
        cultivar: String::new(),
        form: None,
        sizes: vec![Packet { amount, price: None }],
    };
    let by_count = plan(&seed(&layout, packets(SeedAmount::Count(50))));
    let line = &by_count.order.lines[0];
    // 50 places ÷ 0.8.
    assert_eq!((line.to_buy.count, line.to_buy.mass, line.need.mass), (63, None, None));
    assert_eq!(line.packets.as_ref().map(|packets| packets.sizes[0].count), Some(2));
    let why = said(&by_count, "weight of one seed of Hill spinach").unwrap();
    assert!(
        why.contains("a count without a weight") && why.contains("crop book"),
        "{why}"
    );

    let ounce = packets(SeedAmount::Weight(Mass::ounces(1.0)));
    let by_weight = seed(&layout, ounce);
    let lot = LotContents {
        crop: layout.own_crops[0].id.clone(),
        cultivar: String::new(),
        form: None,
        year: 2026,
        amount: SeedAmount::Weight(Mass::ounces(0.5)),
        germination: LotGermination::Tag(part(0.9)),
    };
    let by_weight = seed(&by_weight, SeedEdit::AddLot(lot));
    let plan_by_weight = plan(&by_weight);
    let line = &plan_by_weight.order.lines[0];
    assert!(line.packets_problem.as_ref().unwrap().contains("weight of one"));
    assert_eq!(line.drawn_count(), 0);
    assert!(
        said(&plan_by_weight, "weight of one seed")
            .unwrap()
            .contains("Packets and lots by weight")
    );

    // A hundred seeds in an ounce: half an ounce is 50 seeds, worth 56 at 80 %.
    let known = plan(&set(
        &by_weight,
        OwnValues {
            seed_weight: Some(Mass::ounces(0.01)),
            ..values
        },
    ));
    let line = &known.order.lines[0];
    close(line.need.mass.unwrap().to_ounces(), 0.63, 1e-9);
    assert_eq!((line.drawn_count(), line.to_buy.count), (50, 7));
    assert!(said(&known, "weight of one seed").is_none());
}

#[test]
fn what_comes_up_is_not_assumed() {
    let layout = row_of(PlantingMethod::Drilled, a_foot_apart());
    let open = plan(&layout);
    let line = &open.order.lines[0];
    assert_eq!(line.germination, None);
    assert_eq!(bed(&open).stand.unwrap().germination_from, GerminationFrom::NotKnown);
    let words = &OrderList::of(&layout, &open).lines[0];
    assert_eq!(
        (words.need.as_str(), words.to_buy.as_str()),
        ("at least 50 seeds", "at least 50 seeds")
    );
    assert!(words.comes_up.contains("not known"), "{}", words.comes_up);
    let seeds_of = |plan: &Plan| {
        let columns = Ledger::of(bed(plan), Units::Customary).columns;
        let seeds = columns.into_iter().find(|column| column.kind == ColumnKind::Seeds);
        seeds.unwrap().title
    };
    assert_eq!(
        seeds_of(&open),
        "Good seeds",
        "the ledger does not call them all that is needed"
    );
    let why = said(&open, "How much of Hill spinach comes up is not known").unwrap();
    assert!(why.contains("“Germination”") && why.contains("crop book"), "{why}");

    let own = set(
        &layout,
        OwnValues {
            germination: Some(part(0.5)),
            ..a_foot_apart()
        },
    );
    let known = plan(&own);
    assert_eq!(known.order.lines[0].germination, Some(part(0.5)));
    assert_eq!(seeds_of(&known), "Seeds");
    assert_eq!(OrderList::of(&own, &known).lines[0].need, "100 seeds");
    assert!(said(&known, "comes up").is_none());
}

#[test]
fn nothing_of_the_catalogue_is_in_it() {
    let layout = row_of(PlantingMethod::Bulb, OwnValues::default());
    let book = CropBook::of(&layout);
    let id = &layout.own_crops[0].id;
    let crop = book.crop(id).unwrap();
    assert!(book.is_own(id) && book.starts_from_nothing(id));
    assert_eq!(
        (crop.name.as_str(), crop.family.as_str()),
        ("Hill spinach", "Basellaceae")
    );
    assert_eq!(&crop.kin, id, "no text of another crop speaks of it");
    assert!(crop.row_spacing.is_none() && crop.in_row.is_none() && crop.depth.is_none());
    assert!(crop.seed_weight.is_none() && crop.days_to_harvest.is_none() && crop.harvest.is_none());
    assert!(book.find("basell").iter().any(|found| found.id == *id));
    // Its way is its own: bulbs are counted, and need no germination.
    let bulbs = plan(&change(&layout, BedChange::SetInRow(Some(Length::feet(1.0)))));
    let line = &bulbs.order.lines[0];
    assert_eq!((line.things, line.need.count), (Things::Bulbs, 100));
    assert!(bulbs.heads_up.is_empty(), "{:?}", bulbs.heads_up);
    let sown = change(
        &layout,
        BedChange::SetSowing(Some(Sowing::Seed { seeds_per_plant: 1.0 })),
    );
    assert!(plan(&sown).order.lines.is_empty(), "still no spacing");
}

#[test]
fn sets_are_asked_for_their_weight_only_where_something_goes_by_it() {
    let layout = row_of(PlantingMethod::Set, a_foot_apart());
    let said_of = |layout: &Layout| said(&plan(layout), "weight of one set").map(str::to_owned);
    assert_eq!(said_of(&layout), None);
    let weighed = seed(
        &layout,
        SeedEdit::SetPackets {
            crop: layout.own_crops[0].id.clone(),
            cultivar: String::new(),
            form: None,
            sizes: vec![Packet {
                amount: SeedAmount::Weight(Mass::pounds(1.0)),
                price: None,
            }],
        },
    );
    let why = said_of(&weighed).unwrap();
    assert!(
        why.contains("Packets by weight") && why.contains("“One weighs”"),
        "{why}"
    );
    let each = Some(Mass::ounces(0.4));
    let typed = change(&weighed, BedChange::SetSowing(Some(Sowing::Pieces { each })));
    assert_eq!(said_of(&typed), None);
    // Fifty of 0.4 oz are 20 oz: two bags of a pound.
    assert_eq!(plan(&typed).order.lines[0].packets.as_ref().unwrap().sizes[0].count, 2);
}
