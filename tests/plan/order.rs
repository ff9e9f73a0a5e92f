//! The order: what the rows take, what the shelf gives, what is bought, and what is worked out again.

use jiff::civil::date;
use quillet::layout::{
    BedChange, Edit, Item, Layout, LotContents, LotGermination, OwnCultivar, OwnStart, OwnValues, Packet, Raised,
    SeedAmount, SeedEdit, Sowing,
};
use quillet::plan::{CropBook, OrderLine, Plan, Planner, Things};
use quillet::quantity::{Bearing, Fraction, Length, Mass};

use super::{bed, change, changes, close, crop, plan, rectangle};

pub(crate) fn part(value: f64) -> Fraction {
    Fraction::new(value).unwrap()
}

/// Eleven rows of 60 places: a 30 by 35 ft plot of sweet corn, rows 3 ft apart, 6 in between plants.
pub(crate) fn corn() -> Layout {
    let east = BedChange::SetBearing(Bearing::EAST);
    let in_row = BedChange::SetInRow(Some(Length::inches(6.0)));
    let germination = BedChange::SetGermination(Some(part(0.8)));
    let set_crop = BedChange::SetCrop(crop("sweet_corn"));
    changes(&rectangle(30.0, 35.0), [east, set_crop, in_row, germination])
}

fn line(plan: &Plan) -> &OrderLine {
    assert_eq!(plan.order.lines.len(), 1);
    &plan.order.lines[0]
}

pub(crate) fn seed(layout: &Layout, edit: SeedEdit) -> Layout {
    layout.apply(&Edit::Seed(edit)).unwrap()
}

pub(crate) fn lot(layout: &Layout, year: i16, seeds: u64, germination: LotGermination) -> Layout {
    cultivar_lot(layout, "", year, seeds, germination)
}

fn cultivar_lot(layout: &Layout, cultivar: &str, year: i16, seeds: u64, germination: LotGermination) -> Layout {
    let contents = LotContents {
        crop: crop("sweet_corn"),
        cultivar: cultivar.to_owned(),
        form: None,
        year,
        amount: SeedAmount::Count(seeds),
        germination,
    };
    seed(layout, SeedEdit::AddLot(contents))
}

fn sown(sowing: Sowing) -> Layout {
    change(&corn(), BedChange::SetSowing(Some(sowing)))
}

#[test]
fn drilled_seed_is_what_the_rows_say() {
    let layout = change(
        &sown(Sowing::Seed { seeds_per_plant: 2.0 }),
        BedChange::SetFieldEmergence(Some(part(0.75))),
    );
    let plan = plan(&layout);
    // 60 × 2 ÷ (0.8 × 0.75) = 200 for each of eleven rows.
    assert!(bed(&plan).rows.iter().all(|row| row.seeds == 200));
    let line = line(&plan);
    assert_eq!(
        (line.things, line.need.count, line.to_buy.count),
        (Things::Seeds, 2200, 2200)
    );
    assert_eq!((line.plants_before_thinning, line.plants), (1320, 660));
    assert_eq!(line.beds.len(), 1);
    let mass = bed(&plan).totals.seed_mass.unwrap();
    close(line.need.mass.unwrap().to_grams(), mass.to_grams(), 1e-9);
}

#[test]
fn dropped_seed_and_hills() {
    let dropped = plan(&sown(Sowing::Dropped { seeds_per_place: 2 }));
    assert!(bed(&dropped).rows.iter().all(|row| row.seeds == 150));
    assert_eq!(line(&dropped).plants_before_thinning, 1320);
    let hills = Sowing::Hills {
        seeds_per_hill: 4,
        plants_per_hill: 2,
    };
    let hills = plan(&change(&sown(hills), BedChange::SetInRow(Some(Length::feet(5.0)))));
    // Six hills on 30 ft, four good seeds each at 80 %: 30 seeds a row, two plants left in a hill.
    assert!(bed(&hills).rows.iter().all(|row| row.seeds == 30 && row.plants == 12));
    assert_eq!((line(&hills).plants_before_thinning, line(&hills).plants), (264, 132));
}

#[test]
fn plants_raised_in_trays() {
    let raised = Raised {
        losses: part(0.1),
        cells_per_tray: Some(128),
        days_in_tray: Some(42),
        set_out: Some(date(2027, 5, 10)),
        ..Raised::PLAIN
    };
    let layout = change(
        &sown(Sowing::Raised(raised)),
        BedChange::SetFieldEmergence(Some(part(0.5))),
    );
    let plan = plan(&layout);
    // 60 ÷ (0.8 × 0.9) = 83.3: 84 cells a row. Under cover the field takes nothing.
    assert!(
        bed(&plan)
            .rows
            .iter()
            .all(|row| row.cells == 84 && row.seeds == 84 && row.set_out == 0)
    );
    let trays = &line(&plan).trays[0];
    assert_eq!((trays.cells, trays.trays, trays.plants), (924, Some(8), 660));
    assert_eq!(trays.sow_on, Some(date(2027, 3, 29)));
    assert_eq!(line(&plan).things, Things::Seeds);
}

#[test]
fn sets_go_by_weight_and_plants_by_count() {
    let each = Some(Mass::ounces(2.0));
    let spare = BedChange::SetSpare(part(0.1));
    let layout = changes(&corn(), [BedChange::SetSowing(Some(Sowing::Pieces { each })), spare]);
    let pieces = plan(&layout);
    assert!(bed(&pieces).rows.iter().all(|row| row.set_out == 66 && row.seeds == 0));
    let line_of = line(&pieces);
    assert_eq!((line_of.things, line_of.need.count), (Things::Pieces, 726));
    close(line_of.need.mass.unwrap().to_ounces(), 1452.0, 1e-6);
    let plants = plan(&sown(Sowing::Plants));
    let line_of = line(&plants);
    assert_eq!(
        (line_of.things, line_of.need.count, line_of.need.mass),
        (Things::Plants, 660, None)
    );
    assert_eq!(bed(&plants).totals.seeds, 0);
}

/// The oldest lot that meets the federal standard goes first, a weak one last; each gives by its own germination.
#[test]
fn lots_are_used_up_from_the_oldest_good_one() {
    let layout = sown(Sowing::Seed { seeds_per_plant: 1.0 });
    // 60 ÷ 0.8 = 75 a row, 825 seeds, of which 660 live ones.
    let layout = lot(&layout, 2026, 300, LotGermination::Tag(part(0.9)));
    let layout = lot(
        &layout,
        2022,
        400,
        LotGermination::OwnTest {
            came_up: 25,
            of: 50,
            on: None,
        },
    );
    let layout = lot(&layout, 2024, 200, LotGermination::Tag(part(0.8)));
    let plan = plan(&layout);
    let line = line(&plan);
    let drawn: Vec<_> = line
        .drawn
        .iter()
        .map(|drawn| (layout.lot(drawn.lot).unwrap().year, drawn.amount.count))
        .collect();
    // 200 × 0.8 = 160; 300 × 0.9 = 270; the weak lot gives 200 of the 230 that are left; 30 ÷ 0.8 are bought.
    assert_eq!(drawn, [(2024, 200), (2026, 300), (2022, 400)]);
    assert_eq!(line.to_buy.count, 38);
    assert_eq!(plan.order.drawn_from(layout.lots[1].id), 400);
}

#[test]
fn a_lot_that_is_enough_is_not_used_up() {
    let layout = lot(
        &sown(Sowing::Seed { seeds_per_plant: 1.0 }),
        2026,
        5000,
        LotGermination::Tag(part(0.75)),
    );
    let plan = plan(&layout);
    // 660 live seeds at 75 %.
    assert_eq!(line(&plan).drawn[0].amount.count, 880);
    assert_eq!(line(&plan).to_buy.count, 0);
}

#[test]
fn dead_lots_and_other_cultivars_give_nothing() {
    let layout = sown(Sowing::Seed { seeds_per_plant: 1.0 });
    let layout = lot(
        &layout,
        2019,
        5000,
        LotGermination::OwnTest {
            came_up: 0,
            of: 20,
            on: None,
        },
    );
    let layout = cultivar_lot(&layout, "Early Amber", 2026, 5000, LotGermination::Tag(part(0.9)));
    let plan = plan(&layout);
    assert!(line(&plan).drawn.is_empty());
    assert_eq!(line(&plan).to_buy.count, 825);
    let said: Vec<_> = plan.heads_up.iter().map(|heads_up| heads_up.what.as_str()).collect();
    assert!(
        said.iter()
            .any(|what| what.contains("are to be bought, and Early Amber of 2026 lies on the shelf.")),
        "{said:?}"
    );
    assert!(said.iter().any(|what| what.starts_with("0 of 20 seeds")), "{said:?}");
    // Named in the bed, in whatever case, it is drawn.
    let named = change(&layout, BedChange::SetCultivar("early amber ".to_owned()));
    assert_eq!(super::plan(&named).order.lines[0].to_buy.count, 0);
}

#[test]
fn a_lot_under_the_federal_standard_is_mentioned_with_its_source() {
    // 7 CFR 201.31: sweet corn 75 %.
    let layout = lot(
        &corn(),
        2023,
        100,
        LotGermination::OwnTest {
            came_up: 31,
            of: 50,
            on: None,
        },
    );
    let layout = lot(&layout, 2026, 100, LotGermination::Tag(part(0.75)));
    let layout = lot(&layout, 2025, 100, LotGermination::NotKnown);
    let plan = plan(&layout);
    let of = |index: usize| {
        let about = Item::Lot(layout.lots[index].id);
        plan.heads_up.iter().find(|heads_up| heads_up.about == about)
    };
    let weak = of(0).unwrap();
    assert!(
        weak.what.contains("31 of 50 seeds") && weak.what.contains("75 %"),
        "{}",
        weak.what
    );
    assert!(weak.source.contains("201.31"), "{}", weak.source);
    assert!(weak.why.contains("under the standard must say so"), "{}", weak.why);
    assert!(of(1).is_none());
    assert!(of(2).unwrap().what.contains("is not known"));
}

#[test]
fn packets_cover_what_is_left_at_the_least_cost() {
    let layout = sown(Sowing::Seed { seeds_per_plant: 1.0 });
    let packet = |seeds, price| Packet {
        amount: SeedAmount::Count(seeds),
        price: Some(price),
    };
    let sizes = vec![packet(100, 3.0), packet(250, 5.0), packet(1000, 19.0)];
    let set = |crop_id: &str, sizes| SeedEdit::SetPackets {
        crop: crop(crop_id),
        cultivar: String::new(),
        form: None,
        sizes,
    };
    let layout = seed(&layout, set("sweet_corn", sizes));
    let plan = plan(&layout);
    // 825 seeds: three of 250 and one of 100 are 18, one of 1,000 is 19.
    let packets = line(&plan).packets.as_ref().unwrap();
    let taken: Vec<_> = packets.sizes.iter().map(|size| size.count).collect();
    assert_eq!(
        (taken, packets.cost, packets.amount.count),
        (vec![1, 3], Some(18.0), 850)
    );
    assert_eq!((plan.order.cost, plan.order.unpriced), (18.0, 0));
    let cleared = seed(&layout, set("sweet_corn", Vec::new()));
    assert!(super::plan(&cleared).order.lines[0].packets.is_none());
}

#[test]
fn own_values_work_out_the_beds_of_their_crop_only() {
    let layout = change(&corn(), BedChange::SetInRow(None));
    let layout = layout
        .apply(&Edit::AddPlotWithBed {
            name: None,
            outline: [(0.0, 50.0), (30.0, 50.0), (30.0, 80.0), (0.0, 80.0)]
                .map(|(x, y)| quillet::geometry::Point::feet(x, y))
                .into(),
        })
        .unwrap();
    let other = layout.beds[1].id;
    let layout = layout
        .apply(&Edit::Bed(other, BedChange::SetCrop(crop("carrot"))))
        .unwrap();
    let mut planner = Planner::default();
    let before = planner.plan(&layout);
    assert_eq!(planner.worked_out(), 2);
    let values = OwnValues {
        in_row_watered: Some(Length::inches(9.0)),
        ..OwnValues::default()
    };
    let own = seed(
        &layout,
        SeedEdit::SetOwnValues {
            crop: crop("sweet_corn"),
            values,
        },
    );
    let after = planner.plan(&own);
    assert_eq!(planner.worked_out(), 3);
    assert_eq!((before.beds[0].totals.plants, after.beds[0].totals.plants), (660, 440));
    let book = CropBook::of(&own);
    assert_eq!(
        book.crop(&crop("sweet_corn"))
            .unwrap()
            .in_row_watered
            .as_ref()
            .unwrap()
            .mark
            .words(),
        "the grower's own"
    );
    // A cultivar's own values go before its crop's.
    let values = OwnValues {
        in_row_watered: Some(Length::inches(12.0)),
        ..OwnValues::default()
    };
    let cultivar = OwnCultivar {
        crop: crop("sweet_corn"),
        name: "Late White".to_owned(),
        values,
    };
    let late = seed(&own, SeedEdit::AddCultivar(cultivar));
    planner.plan(&late);
    assert_eq!(planner.worked_out(), 3, "no bed names the cultivar yet");
    let named = change(&late, BedChange::SetCultivar("late white".to_owned()));
    assert_eq!(planner.plan(&named).beds[0].totals.plants, 330);
    // Without own values the catalogue speaks again.
    let back = seed(
        &own,
        SeedEdit::SetOwnValues {
            crop: crop("sweet_corn"),
            values: OwnValues::default(),
        },
    );
    assert_eq!(planner.plan(&back).beds[0].totals.plants, 660);
}

#[test]
fn an_own_crop_is_planted_like_any_other() {
    let values = OwnValues {
        in_row_watered: Some(Length::inches(10.0)),
        ..OwnValues::default()
    };
    let add = SeedEdit::AddOwnCrop {
        start: OwnStart::Crop(crop("sweet_corn")),
        name: "Broom corn".to_owned(),
        values,
    };
    let layout = seed(&corn(), add);
    let id = layout.own_crops[0].id.clone();
    let layout = change(&layout, BedChange::SetCrop(id.clone()));
    let plan = plan(&layout);
    assert_eq!(line(&plan).crop_name, "Broom corn");
    assert_eq!(bed(&plan).totals.plants, 36 * 11);
    let book = CropBook::of(&layout);
    assert!(book.is_own(&id) && !book.is_own(&crop("sweet_corn")));
    assert!(book.find("BROOM").iter().any(|crop| crop.id == id));
    assert!(book.crops().len() > quillet::catalog::Catalog::built_in().crops().len());
}

#[test]
fn only_the_line_that_an_edit_touched_is_worked_out() {
    let mut layout = corn();
    for north in 1..5 {
        let y = f64::from(north) * 50.0;
        let outline =
            [(0.0, y), (30.0, y), (30.0, y + 30.0), (0.0, y + 30.0)].map(|(x, y)| quillet::geometry::Point::feet(x, y));
        layout = layout
            .apply(&Edit::AddPlotWithBed {
                name: None,
                outline: outline.into(),
            })
            .unwrap();
        let id = layout.beds[north as usize].id;
        layout = layout
            .apply(&Edit::Bed(id, BedChange::SetCrop(crop("carrot"))))
            .unwrap();
        layout = layout
            .apply(&Edit::Bed(id, BedChange::SetCultivar(format!("No {north}"))))
            .unwrap();
    }
    let mut planner = Planner::default();
    planner.plan(&layout);
    assert_eq!(planner.lines_worked_out(), 5);
    planner.plan(&layout);
    assert_eq!(planner.lines_worked_out(), 5);
    let wider = layout
        .apply(&Edit::Bed(layout.beds[2].id, BedChange::SetHeadland(Length::feet(2.0))))
        .unwrap();
    planner.plan(&wider);
    assert_eq!(planner.lines_worked_out(), 6);
}

/// Beds come, go and change their cultivar, forwards and back: the order kept is the order worked out from nothing.
#[test]
fn the_order_kept_is_the_one_worked_out_from_nothing() {
    let mut layouts = vec![corn()];
    let last = |layouts: &[Layout]| layouts[layouts.len() - 1].clone();
    for step in 0..6_u32 {
        let y = f64::from(step + 1) * 50.0;
        let outline =
            [(0.0, y), (30.0, y), (30.0, y + 20.0), (0.0, y + 20.0)].map(|(x, y)| quillet::geometry::Point::feet(x, y));
        let layout = last(&layouts)
            .apply(&Edit::AddPlotWithBed {
                name: None,
                outline: outline.into(),
            })
            .unwrap();
        let id = layout.beds[layout.beds.len() - 1].id;
        let name = if step % 2 == 0 { "carrot" } else { "sweet_corn" };
        let layout = layout.apply(&Edit::Bed(id, BedChange::SetCrop(crop(name)))).unwrap();
        layouts.push(layout.clone());
        let layout = layout
            .apply(&Edit::Bed(id, BedChange::SetCultivar(format!("No {}", step % 3))))
            .unwrap();
        layouts.push(layout.clone());
        let layout = lot(&layout, 2020 + step as i16, 40, LotGermination::NotKnown);
        layouts.push(layout.clone());
        layouts.push(layout.apply(&Edit::RemoveBed(layout.beds[0].id)).unwrap());
    }
    let mut planner = Planner::default();
    let back = layouts.iter().rev().step_by(3);
    for layout in layouts.iter().chain(back) {
        let (kept, fresh) = (planner.plan(layout), Planner::default().plan(layout));
        assert_eq!(kept.order, fresh.order);
        assert_eq!(kept.heads_up, fresh.heads_up);
    }
}
