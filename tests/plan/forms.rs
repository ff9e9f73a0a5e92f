//! The order of what is no seed, of trays from several lots, and of one cultivar in several forms.

use jiff::civil::date;
use quillet::catalog::{Catalog, PlantingMethod};
use quillet::geometry::{Lines, Point};
use quillet::layout::{
    BedChange, Edit, Layout, LotContents, LotGermination, OwnCultivar, OwnValues, Packet, Raised, SeedAmount, SeedEdit,
    Sowing,
};
use quillet::plan::{ColumnKind, Ledger, OrderLine, Plan, Things};
use quillet::quantity::{Bearing, Fraction, Length, Mass, Units};

use super::order::{corn, lot, part, seed};
use super::{bed, change, changes, close, crop, plan, rectangle};

/// One row of 100 ft, the crop 1 ft apart: 100 places.
fn row_of(id: &str) -> Layout {
    let north = BedChange::SetBearing(Bearing::NORTH);
    let set_crop = BedChange::SetCrop(crop(id));
    let apart = BedChange::SetInRow(Some(Length::feet(1.0)));
    let between = BedChange::SetRowSpacing(Length::feet(3.0));
    changes(&rectangle(3.0, 100.0), [north, set_crop, apart, between])
}

/// The layout with another plot of 3 by 100 ft and a bed on it like the first.
fn with_another_bed(layout: &Layout, id: &str) -> Layout {
    let from = 50.0 * layout.plots.len() as f64;
    let outline = [(from, 0.0), (from + 3.0, 0.0), (from + 3.0, 100.0), (from, 100.0)];
    let outline = outline.map(|(x, y)| Point::feet(x, y)).into();
    let layout = layout.apply(&Edit::AddPlotWithBed { name: None, outline }).unwrap();
    let bed = layout.beds.last().unwrap().id;
    [
        BedChange::SetBearing(Bearing::NORTH),
        BedChange::SetCrop(crop(id)),
        BedChange::SetInRow(Some(Length::feet(1.0))),
        BedChange::SetRowSpacing(Length::feet(3.0)),
    ]
    .into_iter()
    .fold(layout, |layout, change| layout.apply(&Edit::Bed(bed, change)).unwrap())
}

fn last_bed(layout: &Layout, change: BedChange) -> Layout {
    let bed = layout.beds.last().unwrap().id;
    layout.apply(&Edit::Bed(bed, change)).unwrap()
}

fn line_of(plan: &Plan, things: Things) -> &OrderLine {
    plan.order.lines.iter().find(|line| line.things == things).unwrap()
}

#[test]
fn every_crop_that_is_no_seed_is_ordered_as_what_it_is() {
    for (id, things) in [
        ("potato", Things::SeedPieces),
        ("garlic", Things::Cloves),
        ("shallot", Things::Bulbs),
        ("sweetpotato", Things::Slips),
        ("asparagus", Things::Crowns),
        ("strawberry", Things::BareRoot),
        ("tomato", Things::Plants),
    ] {
        let layout = change(&row_of(id), BedChange::SetSpare(part(0.1)));
        let plan = plan(&layout);
        let line = line_of(&plan, things);
        assert_eq!(
            (line.need.count, line.plants, line.to_buy.count),
            (110, 100, 110),
            "{id}"
        );
        assert_eq!(bed(&plan).rows[0].set_out, 110, "{id}");
        assert_eq!(bed(&plan).things(), Some(things));
    }
}

/// A sum of rows is the bed, in the plan and in the ledger; seed weighs nothing there, and plants are not weighed.
#[test]
fn sets_have_the_weight_of_their_pieces_row_by_row() {
    let each = Some(Mass::ounces(2.0));
    let potato = changes(
        &rectangle(9.0, 100.0),
        [
            BedChange::SetCrop(crop("potato")),
            BedChange::SetRowSpacing(Length::feet(3.0)),
            BedChange::SetInRow(Some(Length::feet(1.0))),
            BedChange::SetSowing(Some(Sowing::Pieces { each })),
        ],
    );
    let pieces = plan(&potato);
    for row in &bed(&pieces).rows {
        close(row.set_out_mass.unwrap().to_ounces(), 200.0, 1e-9);
        close(row.seed_mass.unwrap().to_ounces(), 0.0, 0.0);
    }
    close(bed(&pieces).totals.set_out_mass.unwrap().to_pounds(), 37.5, 1e-9);
    let ledger = Ledger::of(bed(&pieces), Units::Customary);
    let column = |kind| ledger.columns.iter().find(|column| column.kind == kind);
    let counted = column(ColumnKind::SetOut).unwrap();
    assert_eq!(
        (counted.title.as_str(), counted.cell(0).as_str()),
        ("Seed pieces", "100")
    );
    assert_eq!(counted.total(), "300");
    let weighed = column(ColumnKind::SetOutWeight).unwrap();
    assert_eq!(weighed.total().replace('\u{a0}', " "), "38 lb");

    let plants = plan(&change(&potato, BedChange::SetSowing(Some(Sowing::Plants))));
    assert_eq!(bed(&plants).rows[0].set_out_mass, None);
    assert_eq!(line_of(&plants, Things::Plants).need.mass, None);
    let ledger = Ledger::of(bed(&plants), Units::Customary);
    assert!(
        ledger.columns.iter().all(|column| column.kind != ColumnKind::SetOut),
        "the plants stand there already"
    );
}

/// The crop book has the weight of an onion's seed, which says nothing of a set.
#[test]
fn a_set_does_not_weigh_what_a_seed_weighs() {
    let onion = Catalog::built_in().crop(&crop("onion_seed")).unwrap();
    assert!(onion.method.value == PlantingMethod::Drilled && onion.seed_weight.is_some());
    let sets = change(
        &row_of("onion_seed"),
        BedChange::SetSowing(Some(Sowing::Pieces { each: None })),
    );
    let plan = plan(&sets);
    assert_eq!(bed(&plan).totals.set_out_mass, None);
    assert_eq!(
        line_of(&plan, Things::Pieces).need,
        quillet::plan::Quantity { count: 100, mass: None }
    );
}

#[test]
fn rows_of_two_lines_staggered_take_one_less_in_the_second() {
    // 30 ft at 1 ft: 30 places from half a foot on, and 29 between them.
    let lines = |staggered| {
        BedChange::SetLines(Lines {
            per_row: 2,
            apart: Length::inches(8.0),
            staggered,
        })
    };
    let garlic = changes(
        &rectangle(3.0, 30.0),
        [
            BedChange::SetCrop(crop("garlic")),
            BedChange::SetRowSpacing(Length::feet(3.0)),
            BedChange::SetInRow(Some(Length::feet(1.0))),
        ],
    );
    let count = |layout: &Layout| line_of(&plan(layout), Things::Cloves).need.count;
    assert_eq!(count(&change(&garlic, lines(false))), 60);
    assert_eq!(count(&change(&garlic, lines(true))), 59);
}

#[test]
fn spare_seed_is_on_top_and_rounded_up_in_each_row() {
    let sown = BedChange::SetSowing(Some(Sowing::Seed { seeds_per_plant: 1.0 }));
    let layout = changes(&corn(), [sown, BedChange::SetSpare(part(0.05))]);
    let plan = plan(&layout);
    // 60 ÷ 0.8 × 1.05 = 78.75: 79 in each of eleven rows.
    assert!(bed(&plan).rows.iter().all(|row| row.seeds == 79));
    assert_eq!(line_of(&plan, Things::Seeds).to_buy.count, 869);
}

fn tomato_lot(layout: &Layout, year: i16, cells: u64, tag: f64) -> Layout {
    let contents = LotContents {
        crop: crop("tomato"),
        cultivar: String::new(),
        form: None,
        year,
        amount: SeedAmount::Count(cells),
        germination: LotGermination::Tag(part(tag)),
    };
    seed(layout, SeedEdit::AddLot(contents))
}

fn raised(seeds_per_cell: u16) -> BedChange {
    BedChange::SetSowing(Some(Sowing::Raised(Raised {
        seeds_per_cell,
        ..Raised::PLAIN
    })))
}

/// 60 plants raised in cells of two seeds, four fifths of which come up.
fn sixty_tomatoes() -> Layout {
    changes(
        &rectangle(3.0, 60.0),
        [
            BedChange::SetCrop(crop("tomato")),
            BedChange::SetRowSpacing(Length::feet(3.0)),
            BedChange::SetInRow(Some(Length::feet(1.0))),
            raised(2),
            BedChange::SetGermination(Some(part(0.8))),
        ],
    )
}

/// Common practice, no source: of cells with two seeds 1 − 0.2² = 0.96 have a plant, 60 ÷ 0.96 = 62.5; with a lot of
/// which half comes up 1 − 0.5² = 0.75, 60 ÷ 0.75 = 80.
#[test]
fn trays_count_cells_by_the_seed_that_goes_into_them() {
    let bought = plan(&sixty_tomatoes());
    let line = line_of(&bought, Things::Seeds);
    assert_eq!((line.to_buy.count, line.trays[0].cells), (126, 63));
    assert_eq!(bed(&bought).totals.cells, 63);
    let ledger = Ledger::of(bed(&bought), Units::Customary);
    let cells = ledger.columns.iter().find(|column| column.kind == ColumnKind::Cells);
    assert_eq!(cells.unwrap().total(), "63");

    // 63 cells at 0.96 are 60.48 with a plant; at 0.75 that is 80.64.
    let weak = tomato_lot(&sixty_tomatoes(), 2022, 1000, 0.5);
    let weak = plan(&weak);
    let line = line_of(&weak, Things::Seeds);
    assert_eq!((line.drawn[0].amount.count, line.to_buy.count), (162, 0));
    assert_eq!(line.trays[0].cells, 81);

    // 31 seeds fill 15 cells of two, and one seed stays; the rest of 60.48 − 15 × 0.75 = 49.23 are 52 cells to buy.
    let some = plan(&tomato_lot(&sixty_tomatoes(), 2022, 31, 0.5));
    let line = line_of(&some, Things::Seeds);
    assert_eq!((line.drawn[0].amount.count, line.to_buy.count), (30, 104));
    let from: Vec<_> = line.trays[0]
        .from
        .iter()
        .map(|of| (of.lot.is_some(), of.cells))
        .collect();
    assert_eq!(from, [(true, 15), (false, 52)]);
    assert_eq!(line.trays[0].cells, 67);
}

#[test]
fn beds_that_are_sown_on_one_day_share_trays() {
    let tray = Raised {
        cells_per_tray: Some(72),
        days_in_tray: Some(42),
        set_out: Some(date(2027, 5, 10)),
        ..Raised::PLAIN
    };
    let sown = |raised| BedChange::SetSowing(Some(Sowing::Raised(raised)));
    let first = change(&row_of("tomato"), sown(tray));
    let both = last_bed(&with_another_bed(&first, "tomato"), sown(tray));
    let all_up = BedChange::SetGermination(Some(Fraction::ONE));
    let both = last_bed(&change(&both, all_up.clone()), all_up);
    let together = line_of(&plan(&both), Things::Seeds).trays_together();
    // 100 cells are two trays of 72 for each bed, 200 are three.
    let said: Vec<_> = together
        .iter()
        .map(|of| (of.beds, of.cells, of.trays(), of.sow_on))
        .collect();
    assert_eq!(said, [(2, 200, Some(3), Some(date(2027, 3, 29)))]);
    // The day the bed is planted goes before that of the tray.
    let later = last_bed(&both, BedChange::SetPlanted(Some(date(2027, 5, 17))));
    let line = line_of(&plan(&later), Things::Seeds).clone();
    assert_eq!(line.trays[1].sow_on, Some(date(2027, 4, 5)));
    assert!(line.trays_together().is_empty());
}

/// A tomato raised in one bed and bought as plants in another: packets of seed are for the seed.
#[test]
fn packets_hold_one_form_of_a_cultivar() {
    let layout = last_bed(
        &with_another_bed(&sixty_tomatoes(), "tomato"),
        BedChange::SetSowing(Some(Sowing::Plants)),
    );
    let sizes = vec![Packet {
        amount: SeedAmount::Count(50),
        price: Some(4.0),
    }];
    let set = SeedEdit::SetPackets {
        crop: crop("tomato"),
        cultivar: String::new(),
        form: None,
        sizes,
    };
    let plan = plan(&seed(&layout, set));
    assert_eq!(plan.order.lines.len(), 2);
    let sown = line_of(&plan, Things::Seeds);
    assert_eq!(sown.packets.as_ref().unwrap().sizes[0].count, 3);
    let bought = line_of(&plan, Things::Plants);
    assert_eq!(
        (bought.need.count, &bought.packets, &bought.packets_problem),
        (100, &None, &None)
    );
    assert_eq!((plan.order.cost, plan.order.unpriced), (12.0, 1));
}

#[test]
fn packets_by_weight_need_the_weight_of_a_seed() {
    let by_weight = |id: &str| SeedEdit::SetPackets {
        crop: crop(id),
        cultivar: String::new(),
        form: None,
        sizes: vec![Packet {
            amount: SeedAmount::Weight(Mass::ounces(1.0)),
            price: None,
        }],
    };
    let one_each = BedChange::SetSowing(Some(Sowing::Seed { seeds_per_plant: 1.0 }));
    let sown = plan(&seed(&change(&corn(), one_each), by_weight("sweet_corn")));
    // 825 seeds at 150 to the ounce are five and a half ounces (Texas Vegetable Grower's Handbook, Table 2).
    let packets = line_of(&sown, Things::Seeds).packets.clone().unwrap();
    assert_eq!((packets.sizes[0].count, packets.cost), (6, None));
    // Onion sets go by a weight that nobody gave; the crop lies on the shelf as seed, so no packet is looked for.
    let sets = change(
        &row_of("onion_seed"),
        BedChange::SetSowing(Some(Sowing::Pieces { each: None })),
    );
    let sets = plan(&seed(&sets, by_weight("onion_seed")));
    assert_eq!(line_of(&sets, Things::Pieces).packets, None);
    let crops = Catalog::built_in().crops();
    let sown = |method| matches!(method, PlantingMethod::Drilled | PlantingMethod::Transplant);
    let unknown = crops
        .iter()
        .find(|crop| crop.seed_weight.is_none() && sown(crop.method.value));
    if let Some(unknown) = unknown {
        let layout = change(
            &row_of(&unknown.id.0),
            BedChange::SetSowing(Some(Sowing::Seed { seeds_per_plant: 1.0 })),
        );
        let plan = plan(&seed(&layout, by_weight(&unknown.id.0)));
        let problem = line_of(&plan, Things::Seeds).packets_problem.clone().unwrap();
        assert!(problem.contains("weight of one"), "{problem}");
    }
}

#[test]
fn nothing_to_buy_costs_nothing_and_has_no_price_missing() {
    let sown = BedChange::SetSowing(Some(Sowing::Seed { seeds_per_plant: 1.0 }));
    let layout = lot(&change(&corn(), sown), 2026, 5000, LotGermination::Tag(part(0.9)));
    let set = SeedEdit::SetPackets {
        crop: crop("sweet_corn"),
        cultivar: String::new(),
        form: None,
        sizes: vec![Packet {
            amount: SeedAmount::Count(100),
            price: None,
        }],
    };
    let plan = plan(&seed(&layout, set));
    assert_eq!((plan.order.cost, plan.order.unpriced), (0.0, 0));
    let words = quillet::sheets::order_list::OrderList::of(&layout, &plan);
    assert_eq!(
        (words.lines[0].cost.as_str(), words.lines[0].to_buy.as_str()),
        ("", "nothing")
    );
}

/// A lot of another cultivar is mentioned as long as its own bed leaves some of it.
#[test]
fn a_lot_that_its_own_bed_uses_up_is_not_offered_to_another() {
    let named = |name: &str| BedChange::SetCultivar(name.to_owned());
    let lot_of = |layout: &Layout, cultivar: &str, count| {
        let contents = LotContents {
            crop: crop("garlic"),
            cultivar: cultivar.to_owned(),
            form: None,
            year: 2026,
            amount: SeedAmount::Count(count),
            germination: LotGermination::NotKnown,
        };
        seed(layout, SeedEdit::AddLot(contents))
    };
    let beds = last_bed(&with_another_bed(&row_of("garlic"), "garlic"), named("Early"));
    let offered = |layout: &Layout| -> Vec<String> {
        let heads_up = plan(layout).heads_up;
        let what = heads_up.iter().map(|heads_up| heads_up.what.clone());
        what.filter(|what| what.contains("on the shelf")).collect()
    };
    assert_eq!(offered(&lot_of(&beds, "Early", 100)), Vec::<String>::new());
    let more = lot_of(&lot_of(&beds, "Early", 101), "Late", 7);
    assert_eq!(
        offered(&more),
        ["100 cloves of Garlic are to be bought, and Early of 2026 and Late of 2026 lie on the shelf."]
    );
    let all_but_one = lot_of(&lot_of(&beds, "", 99), "Late", 7);
    assert!(
        offered(&all_but_one)
            .contains(&"1 clove of Garlic is to be bought, and Late of 2026 lies on the shelf.".to_owned())
    );
}

#[test]
fn a_germination_of_ones_own_is_its_own_source() {
    let values = OwnValues {
        germination: Some(part(0.9)),
        ..OwnValues::default()
    };
    let layout = lot(&corn(), 2025, 100, LotGermination::NotKnown);
    let own = SeedEdit::SetOwnValues {
        crop: crop("sweet_corn"),
        values,
    };
    let plan = plan(&seed(&layout, own));
    let mention = plan
        .heads_up
        .iter()
        .find(|heads_up| heads_up.what.contains("is not known"))
        .unwrap();
    assert!(mention.why.contains("your 90 % in the crop book"), "{}", mention.why);
    assert_eq!(mention.source, "Your own figure in the crop book");
}

#[test]
fn hills_of_two_plants_stand_twice_as_far_apart() {
    let squash = |sowing| {
        let layout = changes(
            &rectangle(6.0, 60.0),
            [
                BedChange::SetCrop(crop("squash_winter")),
                BedChange::SetRowSpacing(Length::feet(6.0)),
                BedChange::SetSowing(Some(sowing)),
            ],
        );
        plan(&layout)
    };
    let one = squash(Sowing::Dropped { seeds_per_place: 2 });
    let two = squash(Sowing::Hills {
        seeds_per_hill: 5,
        plants_per_hill: 2,
    });
    let apart = |plan: &Plan| bed(plan).stand.unwrap().in_row.to_inches();
    close(apart(&two), 2.0 * apart(&one), 1e-9);
    // As many plants, give or take the last hill of the row.
    assert!(bed(&one).totals.plants.abs_diff(bed(&two).totals.plants) <= 1);
}

#[test]
fn the_yield_of_a_line_is_that_of_its_beds() {
    // C. Marr, MF-315, Kansas State University Cooperative Extension: spinach 40 to 50 lb on 100 ft.
    let both = with_another_bed(&row_of("spinach"), "spinach");
    let line = plan(&both).order.lines[0].harvest.clone().unwrap();
    let quillet::plan::HarvestAmount::Weight(range) = line.amount else {
        panic!("spinach is weighed")
    };
    close(range.low.to_pounds(), 80.0, 1e-6);
    close(range.high.to_pounds(), 100.0, 1e-6);
    let cultivar = OwnCultivar {
        crop: crop("spinach"),
        name: "Early".to_owned(),
        values: OwnValues::default(),
    };
    let apart = last_bed(
        &seed(&both, SeedEdit::AddCultivar(cultivar)),
        BedChange::SetCultivar("Early".to_owned()),
    );
    assert_eq!(plan(&apart).order.lines.len(), 2, "each cultivar has its own");
}
