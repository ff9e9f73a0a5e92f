//! Splitting a bed with the hand.

use egui::{Event, Key, Modifiers};
use quillet::app::canvas::{SplitWay, Tool};
use quillet::layout::{BedChange, BedId, Edit, Item};
use quillet::quantity::Bearing;

use crate::table::*;

fn take_up(hands: &mut Hands, way: SplitWay) {
    hands.state_mut().canvas.take_up(Tool::Split(way));
    hands.run();
}

fn type_in(hands: &mut Hands, text: &str) {
    hands.event(Event::Text(text.to_owned()));
    hands.run();
}

fn rows(hands: &Hands) -> Vec<u64> {
    hands
        .state()
        .desk
        .plan()
        .beds
        .iter()
        .map(|bed| bed.totals.rows)
        .collect()
}

#[test]
fn a_click_between_two_rows_splits_the_bed_there() {
    let mut hands = table_with(one_plot());
    assert_eq!(rows(&hands), [20]);
    take_up(&mut hands, SplitWay::BetweenRows);
    // Rows stand at 1.5 ft, 4.5 ft, …: between row 6 at 16.5 ft and row 7 at 19.5 ft.
    click(&mut hands, 17.0, 20.0);
    assert_eq!(rows(&hands), [6, 14]);
    assert_eq!(steps(&hands), 1);
    assert_eq!(hands.state().canvas.tool(), Tool::Choose);
    assert_eq!(hands.state().desk.chosen, Some(Item::Bed(BedId(3))));
}

#[test]
fn a_number_typed_says_after_which_row() {
    let mut hands = table_with(one_plot());
    take_up(&mut hands, SplitWay::BetweenRows);
    type_in(&mut hands, "12");
    key(&mut hands, Modifiers::NONE, Key::Enter);
    assert_eq!(rows(&hands), [12, 8]);
}

#[test]
fn a_row_that_is_not_there_is_refused_and_the_tool_stays() {
    let mut hands = table_with(one_plot());
    take_up(&mut hands, SplitWay::BetweenRows);
    for wrong in ["20", "99", "0", "7 ft"] {
        type_in(&mut hands, wrong);
        key(&mut hands, Modifiers::NONE, Key::Enter);
        assert_eq!(rows(&hands), [20], "{wrong}");
        assert_eq!(hands.state().canvas.tool(), Tool::Split(SplitWay::BetweenRows));
        for _ in 0..wrong.len() {
            key(&mut hands, Modifiers::NONE, Key::Backspace);
        }
    }
    type_in(&mut hands, "5");
    key(&mut hands, Modifiers::NONE, Key::Enter);
    assert_eq!(rows(&hands), [5, 15]);
}

#[test]
fn a_click_splits_across_the_rows_at_a_whole_step() {
    let mut hands = table_with(one_plot());
    take_up(&mut hands, SplitWay::AcrossRows);
    click(&mut hands, 30.0, 14.9);
    assert_eq!(rows(&hands), [20, 20]);
    let plan = hands.state().desk.plan().clone();
    let mut lengths: Vec<f64> = plan
        .beds
        .iter()
        .map(|bed| bed.rows[0].length.to_feet().round())
        .collect();
    lengths.sort_by(f64::total_cmp);
    assert_eq!(lengths, [15.0, 25.0]);
}

#[test]
fn a_length_typed_says_how_far_along_the_rows() {
    let mut hands = table_with(one_plot());
    take_up(&mut hands, SplitWay::AcrossRows);
    type_in(&mut hands, "12 ft 6 in");
    key(&mut hands, Modifiers::NONE, Key::Enter);
    let plan = hands.state().desk.plan().clone();
    let lengths: Vec<f64> = plan
        .beds
        .iter()
        .map(|bed| (bed.rows[0].length.to_feet() * 10.0).round() / 10.0)
        .collect();
    assert_eq!(lengths, [12.5, 27.5]);
}

#[test]
fn what_is_typed_is_about_the_bed_under_the_pointer_when_typing_began() {
    // Corn in the west third, beans on the rest; the corn is in hand.
    let layout = part_bed()
        .apply(&Edit::FillPlot(PLOT))
        .unwrap()
        .apply(&Edit::Bed(BED, BedChange::SetBearing(Bearing::NORTH)))
        .unwrap();
    let corn = layout.beds[0].id;
    let beans = layout.beds[1].id;
    let turned = Edit::Bed(beans, BedChange::SetBearing(Bearing::NORTH));
    let mut hands = table_with(layout.apply(&turned).unwrap());
    hands.state_mut().desk.chosen = Some(Item::Bed(corn));
    let before = rows(&hands);
    take_up(&mut hands, SplitWay::BetweenRows);
    let place = at(&hands, 40.0, 20.0);
    hands.hover_at(place);
    hands.run();
    type_in(&mut hands, "5");
    // The pointer goes on over the corn.
    let place = at(&hands, 10.0, 20.0);
    hands.hover_at(place);
    hands.run();
    key(&mut hands, Modifiers::NONE, Key::Enter);
    assert_eq!(rows(&hands), [before[0], 5, before[1] - 5]);
}

#[test]
fn escape_puts_the_tool_down() {
    let mut hands = table_with(one_plot());
    take_up(&mut hands, SplitWay::AcrossRows);
    type_in(&mut hands, "12");
    key(&mut hands, Modifiers::NONE, Key::Escape);
    assert_eq!(hands.state().canvas.tool(), Tool::Choose);
    assert_eq!(rows(&hands), [20]);
}
