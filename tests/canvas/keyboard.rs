//! What the keyboard does on the sheet.

use egui::{Key, Modifiers};
use quillet::geometry::Point;
use quillet::layout::{Edit, Item, NoteId, ObstacleId, Shape};

use crate::table::*;

#[test]
fn arrows_move_a_chosen_corner_by_a_foot_and_with_shift_by_an_inch() {
    let mut hands = table_with(part_bed());
    choose(&mut hands, Item::Corner(PLOT, 2));
    key(&mut hands, Modifiers::NONE, Key::ArrowRight);
    assert_eq!(corners(&hands)[2], (61.0, 40.0));
    key(&mut hands, Modifiers::SHIFT, Key::ArrowUp);
    assert_eq!(corners(&hands)[2], (61.0, 40.083));
    assert_eq!(steps(&hands), 2);
    assert_eq!(hands.state().desk.chosen, Some(Item::Corner(PLOT, 2)));
}

#[test]
fn arrows_move_a_tree_and_a_note() {
    let note = Edit::AddNote {
        at: Point::feet(40.0, 30.0),
        text: "Gate".to_owned(),
    };
    let mut hands = table_with(with_tree().apply(&note).unwrap());
    choose(&mut hands, Item::Obstacle(PLOT, ObstacleId(3)));
    key(&mut hands, Modifiers::NONE, Key::ArrowLeft);
    let Shape::Circle { centre, .. } = hands.state().desk.layout().plot(PLOT).unwrap().obstacles[0].shape else {
        panic!("a circle")
    };
    assert_eq!(ring(&[centre]), [(29.0, 20.0)]);
    choose(&mut hands, Item::Note(NoteId(4)));
    key(&mut hands, Modifiers::NONE, Key::ArrowDown);
    assert_eq!(ring(&[hands.state().desk.layout().notes[0].at]), [(40.0, 29.0)]);
}

#[test]
fn arrows_look_around_when_there_is_nothing_to_move() {
    let mut hands = table_with(part_bed());
    let before = hands.state().canvas.to_ground(middle());
    key(&mut hands, Modifiers::NONE, Key::ArrowRight);
    let after = hands.state().canvas.to_ground(middle());
    assert!(after.x > before.x);
    assert_eq!(steps(&hands), 0);
}

#[test]
fn tab_comes_to_the_things_on_the_sheet_and_enter_chooses() {
    let mut hands = table_with(with_tree());
    let mut chosen = None;
    for _ in 0..12 {
        key(&mut hands, Modifiers::NONE, Key::Tab);
        key(&mut hands, Modifiers::NONE, Key::Enter);
        if let Some(item @ Item::Plot(_)) = hands.state().desk.chosen {
            chosen = Some(item);
            break;
        }
    }
    assert_eq!(chosen, Some(Item::Plot(PLOT)));
}
