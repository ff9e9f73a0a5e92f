//! Pointing and choosing.

use egui_kittest::kittest::Queryable as _;
use quillet::app::step::Step;
use quillet::layout::{Item, ObstacleId};

use crate::table::*;

#[test]
fn on_the_ground_a_click_chooses_the_plot_and_a_second_one_the_bed_that_fills_it() {
    let mut hands = table_with(one_plot());
    click(&mut hands, 30.0, 11.0);
    assert_eq!(hands.state().desk.chosen, Some(Item::Plot(PLOT)));
    click(&mut hands, 30.0, 11.0);
    assert_eq!(hands.state().desk.chosen, Some(Item::Bed(BED)));
}

#[test]
fn a_row_under_the_pointer_is_lit_and_chosen() {
    let mut hands = table_with(one_plot());
    hands.state_mut().desk.step = Step::Rows;
    hands.run();
    // 60 ft hold 20 rows of 3 ft; the fourth stands 10.5 ft from the left.
    let place = at(&hands, 10.5, 8.0);
    hands.hover_at(place);
    hands.run();
    assert_eq!(hands.state().desk.pointed, Some(Item::Row(BED, 4)));
    click(&mut hands, 10.5, 8.0);
    assert_eq!(hands.state().desk.chosen, Some(Item::Row(BED, 4)));
}

#[test]
fn between_rows_the_bed_is_chosen_and_on_the_outline_the_plot() {
    let mut hands = table_with(one_plot());
    hands.state_mut().desk.step = Step::Rows;
    click(&mut hands, 12.0, 8.0);
    assert_eq!(hands.state().desk.chosen, Some(Item::Bed(BED)));
    click(&mut hands, 21.0, 40.0);
    assert_eq!(hands.state().desk.chosen, Some(Item::Plot(PLOT)));
}

#[test]
fn what_stands_in_the_way_is_chosen_before_what_it_stands_on() {
    let mut hands = table_with(with_tree());
    click(&mut hands, 31.0, 21.0);
    assert_eq!(hands.state().desk.chosen, Some(Item::Obstacle(PLOT, ObstacleId(3))));
}

#[test]
fn a_click_beside_everything_lets_go() {
    let mut hands = table_with(part_bed());
    click(&mut hands, 10.0, 10.0);
    assert_eq!(hands.state().desk.chosen, Some(Item::Bed(BED)));
    click(&mut hands, 50.0, -7.0);
    assert_eq!(hands.state().desk.chosen, None);
}

#[test]
fn a_corner_of_what_is_chosen_is_chosen() {
    let mut hands = table_with(part_bed());
    choose(&mut hands, Item::Plot(PLOT));
    click(&mut hands, 60.0, 40.0);
    assert_eq!(hands.state().desk.chosen, Some(Item::Corner(PLOT, 2)));
}

#[test]
fn light_goes_out_when_the_pointer_leaves() {
    let mut hands = table_with(part_bed());
    let place = at(&hands, 40.0, 10.0);
    hands.hover_at(place);
    hands.run();
    assert_eq!(hands.state().desk.pointed, Some(Item::Plot(PLOT)));
    hands.remove_cursor();
    hands.run();
    assert_eq!(hands.state().desk.pointed, None);
}

#[test]
fn light_from_the_ledger_is_left_alone() {
    let mut hands = table_with(part_bed());
    hands.state_mut().desk.pointed = Some(Item::Row(BED, 2));
    hands.run_steps(3);
    assert_eq!(hands.state().desk.pointed, Some(Item::Row(BED, 2)));
}

#[test]
fn things_have_names_for_those_who_cannot_see_them() {
    let hands = table_with(with_tree());
    hands.get_by_label("Plot Lower plot, 2,400 sq ft");
    hands.get_by_label("Bed Corn block, 800 sq ft, 6 rows");
    hands.get_by_label("Pear in Lower plot");
    hands.get_by_label("Row 3 of Corn block, 40 ft");
}

#[test]
fn a_thing_can_be_chosen_by_name() {
    let mut hands = table_with(with_tree());
    hands.get_by_label("Row 3 of Corn block, 40 ft").click_accesskit();
    hands.run();
    assert_eq!(hands.state().desk.chosen, Some(Item::Row(BED, 3)));
}
