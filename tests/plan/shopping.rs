//! What to buy of fertilizer, in bags.

use quillet::catalog::{Analysis, MaterialId};
use quillet::layout::{Amount, Basis, BedChange, Dressing, Edit, Label, Layout, Placement, ShedEdit, When};
use quillet::plan::feeding::ShoppingLine;
use quillet::quantity::{Mass, MassPerArea};

use super::feeding::side_dressing;
use super::{change, close, plan, rectangle};

/// A third of an acre with 120 lb of nitrogen and of potash to the acre from a 15-0-15.
fn third_of_an_acre(label: &Label) -> Layout {
    let layout = rectangle(120.0, 121.0);
    let label = Label {
        name: "Barn mix".to_owned(),
        analysis: Analysis::percent(15.0, 0.0, 15.0),
        ..label.clone()
    };
    let layout = layout.apply(&Edit::Shed(ShedEdit::AddOwn(label))).unwrap();
    let dressing = Dressing {
        basis: Basis::Nitrogen,
        placement: Placement::Broadcast,
        ..side_dressing(
            "own_barn_mix",
            Amount::PerArea(MassPerArea::pounds_per_acre(120.0)),
            When::Unsaid,
        )
    };
    change(&layout, BedChange::AddDressing(dressing))
}

fn line(label: &Label) -> ShoppingLine {
    let plan = plan(&third_of_an_acre(label));
    assert_eq!(plan.shopping.lines.len(), 1);
    plan.shopping.lines[0].clone()
}

fn fifty_pound_bags() -> Label {
    Label {
        bag: Some(Mass::pounds(50.0)),
        price: Some(24.5),
        ..Label::default()
    }
}

#[test]
fn whole_bags_are_bought_and_the_rest_is_left_over() {
    // Common practice, no source (arithmetic): 1/3 acre at 120 lb N is 40 lb, 266.67 lb of 15-0-15, 5.333 bags of 50
    // lb; buy 6, and 33.33 lb are left.
    let line = line(&fifty_pound_bags());
    close(line.need.to_pounds(), 266.667, 0.001);
    assert_eq!(line.bags, Some(6));
    close(line.left_over.unwrap().to_pounds(), 33.333, 0.001);
    close(line.cost.unwrap(), 147.0, 1e-9);
}

#[test]
fn what_is_at_hand_is_used_first() {
    let label = |pounds| Label {
        at_hand: Some(Mass::pounds(pounds)),
        ..fifty_pound_bags()
    };
    let some = line(&label(20.0));
    close(some.to_buy.to_pounds(), 246.667, 0.001);
    assert_eq!(some.bags, Some(5));
    let enough = line(&label(300.0));
    assert_eq!((enough.to_buy, enough.cost), (Mass::ZERO, Some(0.0)));
    close(enough.left_over.unwrap().to_pounds(), 33.333, 0.001);
}

#[test]
fn a_missing_price_or_bag_is_not_nothing() {
    let no_price = line(&Label {
        price: None,
        ..fifty_pound_bags()
    });
    assert_eq!((no_price.bags, no_price.cost), (Some(6), None));
    let no_bag = line(&Label::default());
    assert_eq!((no_bag.bags, no_bag.cost, no_bag.left_over), (None, None, None));
    assert_eq!(plan(&third_of_an_acre(&Label::default())).shopping.unpriced, 1);
}

#[test]
fn a_material_of_the_catalogue_takes_its_bag_from_the_shed() {
    let layout = change(
        &rectangle(30.0, 35.0),
        BedChange::AddDressing(side_dressing(
            "urea",
            Amount::PerArea(MassPerArea::pounds_per_1000_square_feet(10.0)),
            When::Unsaid,
        )),
    );
    assert_eq!(plan(&layout).shopping.lines[0].bags, None);
    let label = Label {
        analysis: Analysis::percent(45.0, 0.0, 0.0),
        cup: Some(Mass::ounces(6.0)),
        ..fifty_pound_bags()
    };
    let put = ShedEdit::Put(MaterialId("urea".to_owned()), label);
    let plan = plan(&layout.apply(&Edit::Shed(put)).unwrap());
    assert_eq!(plan.shopping.lines[0].bags, Some(1));
    let dressing = &plan.beds[0].dressings[0];
    // The label in hand goes before the catalogue.
    close(dressing.analysis.n.to_percent(), 45.0, 1e-9);
    close(dressing.volume(Mass::ounces(6.0)).unwrap().to_cups(), 1.0, 1e-9);
}
