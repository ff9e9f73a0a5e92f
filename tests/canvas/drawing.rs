//! Drawing something new.

use egui::{Key, Modifiers};
use quillet::app::canvas::{Drawn, Tool};
use quillet::layout::{BedGround, Item, NoteId, ObstacleId, ObstacleKind, Shape};

use crate::table::*;

fn take_up(hands: &mut Hands, tool: Tool) {
    hands.state_mut().canvas.take_up(tool);
    hands.run();
}

#[test]
fn a_rectangle_dragged_becomes_a_plot_with_a_bed_in_whole_feet() {
    let mut hands = table_with(empty());
    take_up(&mut hands, Tool::Rectangle(Drawn::Plot));
    drag(&mut hands, (-20.2, -14.9), (20.1, 15.3));
    let desk = &hands.state().desk;
    assert_eq!(
        corners(&hands),
        [(-20.0, -15.0), (20.0, -15.0), (20.0, 15.0), (-20.0, 15.0)]
    );
    assert_eq!(desk.layout().beds.len(), 1);
    assert_eq!(desk.layout().beds[0].ground, BedGround::WholePlot);
    assert_eq!(desk.chosen, Some(Item::Plot(PLOT)));
    assert_eq!(hands.state().canvas.tool(), Tool::Choose);
    assert_eq!(steps(&hands), 1);
}

#[test]
fn a_rectangle_may_be_set_with_two_clicks() {
    let mut hands = table_with(empty());
    take_up(&mut hands, Tool::Rectangle(Drawn::Plot));
    click(&mut hands, 0.0, 0.0);
    assert_eq!(steps(&hands), 0);
    click(&mut hands, 12.0, 9.0);
    assert_eq!(corners(&hands), [(0.0, 0.0), (12.0, 0.0), (12.0, 9.0), (0.0, 9.0)]);
}

#[test]
fn alt_draws_just_where_the_hand_is() {
    let mut hands = table_with(empty());
    take_up(&mut hands, Tool::Rectangle(Drawn::Plot));
    let (from, to) = (at(&hands, 0.37, 0.41), at(&hands, 20.63, 15.29));
    hands.event(egui::Event::ModifiersChanged(Modifiers::ALT));
    hands.hover_at(from);
    hands.step();
    hands.drag_at(from);
    hands.step();
    hands.hover_at(to);
    hands.step();
    hands.drop_at(to);
    hands.run();
    let [(x, y), _, (right, top), _] = corners(&hands)[..] else {
        panic!("four corners")
    };
    for (is, wanted) in [(x, 0.37), (y, 0.41), (right, 20.63), (top, 15.29)] {
        assert!((is - wanted).abs() < 0.02, "{is} is not {wanted}");
    }
}

#[test]
fn corners_are_clicked_and_the_first_one_closes() {
    let mut hands = table_with(empty());
    take_up(&mut hands, Tool::Corners(Drawn::Plot));
    for (x, y) in [(0.0, 0.0), (20.0, 0.0), (20.0, 10.0), (8.0, 15.0)] {
        click(&mut hands, x, y);
    }
    assert_eq!(steps(&hands), 0);
    click(&mut hands, 0.1, 0.1);
    assert_eq!(corners(&hands), [(0.0, 0.0), (20.0, 0.0), (20.0, 10.0), (8.0, 15.0)]);
    assert_eq!(hands.state().desk.chosen, Some(Item::Plot(PLOT)));
}

#[test]
fn a_number_typed_sets_the_side_in_the_direction_of_the_hand() {
    let mut hands = table_with(empty());
    take_up(&mut hands, Tool::Corners(Drawn::Plot));
    click(&mut hands, 0.0, 0.0);
    let aside = at(&hands, 9.0, 0.05);
    hands.hover_at(aside);
    hands.step();
    for text in ["1", "2", "'", "6"] {
        hands.event(egui::Event::Text(text.to_owned()));
        hands.step();
    }
    key(&mut hands, Modifiers::NONE, Key::Enter);
    click(&mut hands, 12.5, 10.0);
    click(&mut hands, 0.0, 10.0);
    key(&mut hands, Modifiers::NONE, Key::Enter);
    assert_eq!(corners(&hands), [(0.0, 0.0), (12.5, 0.0), (12.5, 10.0), (0.0, 10.0)]);
}

#[test]
fn backspace_takes_back_a_corner_and_escape_stops() {
    let mut hands = table_with(empty());
    take_up(&mut hands, Tool::Corners(Drawn::Plot));
    for (x, y) in [(0.0, 0.0), (20.0, 0.0), (20.0, 10.0), (-12.0, 12.0)] {
        click(&mut hands, x, y);
    }
    key(&mut hands, Modifiers::NONE, Key::Backspace);
    key(&mut hands, Modifiers::NONE, Key::Enter);
    assert_eq!(corners(&hands), [(0.0, 0.0), (20.0, 0.0), (20.0, 10.0)]);
    take_up(&mut hands, Tool::Corners(Drawn::Plot));
    click(&mut hands, -10.0, -10.0);
    key(&mut hands, Modifiers::NONE, Key::Escape);
    assert_eq!(hands.state().canvas.tool(), Tool::Choose);
    assert_eq!(steps(&hands), 1);
}

#[test]
fn an_outline_that_crosses_itself_is_refused_and_drawing_goes_on() {
    let mut hands = table_with(empty());
    take_up(&mut hands, Tool::Corners(Drawn::Plot));
    for (x, y) in [(0.0, 0.0), (20.0, 10.0), (20.0, 0.0), (0.0, 10.0)] {
        click(&mut hands, x, y);
    }
    key(&mut hands, Modifiers::NONE, Key::Enter);
    assert_eq!(steps(&hands), 0);
    assert_eq!(hands.state().canvas.tool(), Tool::Corners(Drawn::Plot));
    key(&mut hands, Modifiers::NONE, Key::Backspace);
    key(&mut hands, Modifiers::NONE, Key::Enter);
    assert_eq!(steps(&hands), 1);
}

#[test]
fn a_bed_is_drawn_in_its_plot_and_goes_to_its_corners() {
    let mut hands = table_with(part_bed());
    take_up(&mut hands, Tool::Rectangle(Drawn::Bed(PLOT)));
    drag(&mut hands, (20.15, 0.2), (59.8, 39.9));
    let layout = hands.state().desk.layout();
    let BedGround::Corners(ground) = &layout.beds[1].ground else {
        panic!("an outline of its own")
    };
    assert_eq!(ring(ground), [(20.0, 0.0), (60.0, 0.0), (60.0, 40.0), (20.0, 40.0)]);
    assert_eq!(hands.state().desk.chosen, Some(Item::Bed(layout.beds[1].id)));
}

#[test]
fn a_tree_is_dragged_from_its_middle() {
    let mut hands = table_with(part_bed());
    take_up(&mut hands, Tool::Circle(Drawn::Obstacle(PLOT, ObstacleKind::Tree)));
    drag(&mut hands, (40.0, 20.0), (46.1, 20.0));
    let plot = hands.state().desk.layout().plot(PLOT).unwrap();
    let Shape::Circle { centre, radius } = plot.obstacles[0].shape else {
        panic!("a circle")
    };
    assert_eq!(ring(&[centre]), [(40.0, 20.0)]);
    assert!((radius.to_feet() - 6.0).abs() < 1e-9);
    assert_eq!(hands.state().desk.chosen, Some(Item::Obstacle(PLOT, ObstacleId(3))));
}

#[test]
fn a_note_is_set_with_one_click_and_chosen() {
    let mut hands = table_with(part_bed());
    take_up(&mut hands, Tool::Note);
    click(&mut hands, 50.0, 30.0);
    assert_eq!(hands.state().desk.layout().notes.len(), 1);
    assert_eq!(hands.state().desk.chosen, Some(Item::Note(NoteId(3))));
}
