//! What lots on the shelf are worth, and what is said of old ones.

use jiff::civil::date;
use quillet::layout::{BedChange, Item, LotGermination, OwnValues, SeedEdit, Sowing};
use quillet::sheets::order_list::OrderList;

use super::order::{corn, lot, part, seed};
use super::{changes, crop, plan};

/// Need less what the lots are worth is what is to buy, and the list says so.
#[test]
fn what_is_drawn_is_worth_what_it_spares() {
    let sowing = BedChange::SetSowing(Some(Sowing::Seed { seeds_per_plant: 1.0 }));
    let field = BedChange::SetFieldEmergence(Some(part(0.75)));
    let layout = changes(&corn(), [sowing, field]);
    let layout = lot(&layout, 2026, 87, LotGermination::Tag(part(0.775)));
    let plan = plan(&layout);
    let line = &plan.order.lines[0];
    // 60 ÷ (0.8 × 0.75) = 100 a row. 87 × 0.775 ÷ 0.8 = 84.3 seeds to buy are spared: 84 whole ones.
    assert_eq!(
        (line.need.count, line.drawn_count(), line.drawn_worth()),
        (1100, 87, 84)
    );
    assert_eq!(line.need.count - line.drawn_worth(), line.to_buy.count);
    let words = &OrderList::of(&layout, &plan).lines[0];
    assert!(
        words.from_shelf[0].ends_with("77.5 % up, worth 84 at 80 %"),
        "{:?}",
        words.from_shelf
    );
    assert_eq!(
        words.comes_up,
        "80 % counted on to come up in a test, 75 % of that in the field"
    );
}

/// Sweet corn keeps about 2 years: Iowa State University Extension and Outreach, Life Expectancy of Vegetable Seeds, 1999,
/// table. The season is 2027.
#[test]
fn old_seed_gives_nothing_until_it_is_known_how_much_comes_up() {
    let drawn = |year, germination| {
        let layout = lot(&corn(), year, 100, germination);
        let plan = plan(&layout);
        let about = Item::Lot(layout.lots[0].id);
        let said = plan.heads_up.iter().find(|heads_up| heads_up.about == about).cloned();
        (plan.order.lines[0].drawn_count(), said)
    };
    let (count, said) = drawn(2012, LotGermination::NotKnown);
    let said = said.unwrap();
    assert_eq!(count, 0);
    assert!(
        said.what.contains("15 years old") && said.what.contains("2 years"),
        "{}",
        said.what
    );
    assert!(said.why.starts_with("Nothing is drawn from it"), "{}", said.why);
    assert!(said.source.contains("Iowa State University"), "{}", said.source);

    assert_eq!(drawn(2025, LotGermination::NotKnown).0, 100, "two years are kept");
    assert_eq!(drawn(2024, LotGermination::NotKnown).0, 0, "three are not");
    let (count, said) = drawn(2024, LotGermination::Tag(part(0.9)));
    assert_eq!(count, 100);
    assert!(said.unwrap().why.contains("may come up worse"));
    let (count, said) = drawn(
        2012,
        LotGermination::OwnTest {
            came_up: 45,
            of: 50,
            on: None,
        },
    );
    assert_eq!(count, 100);
    assert!(said.is_none(), "{said:?}");
}

#[test]
fn a_lot_of_a_year_to_come_gives_nothing_and_says_so() {
    let layout = lot(&corn(), 2031, 100, LotGermination::Tag(part(0.9)));
    let early = plan(&layout);
    assert_eq!(early.order.lines[0].drawn_count(), 0);
    let said = early
        .heads_up
        .iter()
        .find(|heads_up| heads_up.about == Item::Lot(layout.lots[0].id));
    assert!(said.unwrap().what.contains("after the season 2027"));
    // With the season the same planner counts it again.
    let mut planner = quillet::plan::Planner::default();
    planner.plan(&layout);
    let mut later = layout;
    later.season = 2031;
    assert_eq!(planner.plan(&later).order.lines[0].drawn_count(), 100);
}

/// The table is Iowa State University's as above; the grower's own figure goes before it.
#[test]
fn how_long_seed_keeps_may_be_the_growers_own() {
    let keeps = |years| SeedEdit::SetOwnValues {
        crop: crop("sweet_corn"),
        values: OwnValues {
            seed_keeps_years: Some(years),
            ..OwnValues::default()
        },
    };
    let layout = lot(&corn(), 2023, 100, LotGermination::NotKnown);
    assert_eq!(
        plan(&layout).order.lines[0].drawn_count(),
        0,
        "four years are more than two"
    );
    let longer = seed(&layout, keeps(4));
    assert_eq!(plan(&longer).order.lines[0].drawn_count(), 100);
    let shorter = plan(&seed(&layout, keeps(3)));
    assert_eq!(shorter.order.lines[0].drawn_count(), 0);
    let said = shorter
        .heads_up
        .iter()
        .find(|said| said.what.contains("was not tested"))
        .unwrap();
    assert!(said.what.contains("keeps for 3 years"), "{}", said.what);
    assert_eq!(said.source, "Your own figure in the crop book");
}

#[test]
fn an_old_test_is_said_with_its_day_and_an_undated_one_is_not() {
    let said = |on: Option<jiff::civil::Date>| {
        let test = LotGermination::OwnTest {
            came_up: 38,
            of: 40,
            on,
        };
        let layout = lot(&corn(), 2025, 100, test);
        let plan = plan(&layout);
        assert_eq!(plan.order.lines[0].drawn_count(), 100, "it is drawn from all the same");
        let about = Item::Lot(layout.lots[0].id);
        plan.heads_up.iter().find(|said| said.about == about).cloned()
    };
    assert!(said(None).is_none());
    assert!(said(Some(date(2027, 2, 12))).is_none());
    assert!(said(Some(date(2026, 12, 30))).is_none());
    let old = said(Some(date(2026, 2, 12))).unwrap();
    assert!(
        old.what.ends_with("38 of 40, is of 12 February 2026.") && old.why.contains("test it again"),
        "{old:?}"
    );
    assert_eq!(old.source, "Common practice, no source");
    let slip = said(Some(date(2028, 2, 12))).unwrap();
    assert!(slip.what.contains("after the season 2027"), "{}", slip.what);
}
