//! What lots on the shelf are worth, and what is said of old ones.

use quillet::layout::{BedChange, Item, LotGermination, Sowing};
use quillet::sheets::order_list::OrderList;

use super::order::{corn, lot, part};
use super::{changes, plan};

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
