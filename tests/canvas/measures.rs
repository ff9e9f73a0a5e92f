//! Lengths of sides that are typed.

use egui::{Key, Modifiers};
use egui_kittest::kittest::Queryable as _;
use quillet::layout::{BedGround, Item};

use crate::table::*;

fn type_over(hands: &mut Hands, label: &str, text: &str) {
    hands.get_by_label(label).click();
    hands.run_steps(3);
    // All of the old length is selected: what is typed takes its place.
    hands.event(egui::Event::Text(text.to_owned()));
    hands.run_steps(2);
}

#[test]
fn a_side_is_given_the_length_typed() {
    let mut hands = table_with(part_bed());
    type_over(&mut hands, "South side of Lower plot, 60 ft", "52 ft 6 in");
    key(&mut hands, Modifiers::NONE, Key::Enter);
    let corners = corners(&hands);
    // The side opposite gives way, so that the plot stays a rectangle.
    let width = |a: usize, b: usize| (corners[a].0 - corners[b].0).abs();
    assert!((width(2, 3) - 52.5).abs() < 1e-3, "{corners:?}");
    assert!((width(0, 1) - 52.5).abs() < 1e-3, "{corners:?}");
    assert_eq!(steps(&hands), 1);
    assert!(hands.query_by_role(egui::accesskit::Role::TextInput).is_none());
}

#[test]
fn what_cannot_be_read_stays_in_the_field_and_changes_nothing() {
    let mut hands = table_with(part_bed());
    type_over(&mut hands, "South side of Lower plot, 60 ft", "a long way");
    key(&mut hands, Modifiers::NONE, Key::Enter);
    assert_eq!(steps(&hands), 0);
    let field = hands.get_by_role(egui::accesskit::Role::TextInput);
    assert_eq!(field.value().as_deref(), Some("a long way"));
}

#[test]
fn escape_closes_the_field_and_changes_nothing() {
    let mut hands = table_with(part_bed());
    type_over(&mut hands, "South side of Lower plot, 60 ft", "12 ft");
    key(&mut hands, Modifiers::NONE, Key::Escape);
    assert_eq!(steps(&hands), 0);
    assert!(hands.query_by_role(egui::accesskit::Role::TextInput).is_none());
}

#[test]
fn tab_takes_over_and_goes_on_to_the_next_side() {
    let mut hands = table_with(part_bed());
    type_over(&mut hands, "South side of Lower plot, 60 ft", "50");
    key(&mut hands, Modifiers::NONE, Key::Tab);
    assert_eq!(steps(&hands), 1);
    hands.event(egui::Event::Text("30".to_owned()));
    hands.run_steps(2);
    key(&mut hands, Modifiers::NONE, Key::Enter);
    // The next side along the outline is the western one: it keeps its northern end.
    assert_eq!(corners(&hands), [(0.0, 10.0), (50.0, 10.0), (50.0, 40.0), (0.0, 40.0)]);
}

#[test]
fn a_chosen_bed_shows_the_lengths_of_its_own_sides() {
    let mut hands = table_with(part_bed());
    choose(&mut hands, Item::Bed(BED));
    type_over(&mut hands, "South side of Corn block, 20 ft", "24");
    // The sheet under the measure was not clicked.
    assert_eq!(hands.state().desk.chosen, Some(Item::Bed(BED)));
    key(&mut hands, Modifiers::NONE, Key::Enter);
    let BedGround::Corners(ground) = &hands.state().desk.layout().beds[0].ground else {
        panic!("an outline of its own")
    };
    assert_eq!(ring(ground), [(0.0, 0.0), (24.0, 0.0), (24.0, 40.0), (0.0, 40.0)]);
}
