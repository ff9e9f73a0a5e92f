//! What lots on the shelf are worth, and what is said of old ones.

use quillet::layout::{BedChange, LotGermination, Sowing};
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
    assert_eq!((line.need.count, line.drawn_count(), line.drawn_worth()), (1100, 87, 84));
    assert_eq!(line.need.count - line.drawn_worth(), line.to_buy.count);
    let words = &OrderList::of(&layout, &plan).lines[0];
    assert!(words.from_shelf[0].ends_with("77.5 % up, worth 84 at 80 %"), "{:?}", words.from_shelf);
    assert_eq!(words.comes_up, "80 % counted on to come up in a test, 75 % of that in the field");
}
