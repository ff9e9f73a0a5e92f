//! Dragging what is there.

use egui::{Key, Modifiers, vec2};
use egui_kittest::kittest::Queryable as _;
use quillet::app::step::Step;
use quillet::layout::{BedGround, Edit, Item, NoteId, ObstacleId, Shape};
use quillet::quantity::Length;

use crate::table::*;

#[test]
fn a_corner_dragged_is_one_step_and_shows_all_the_way() {
    let mut hands = table_with(part_bed());
    choose(&mut hands, Item::Plot(PLOT));
    hold_and_move(&mut hands, (60.0, 40.0), (66.2, 43.1));
    assert!(hands.state().desk.is_previewing());
    assert_eq!(corners(&hands)[2], (66.0, 43.0));
    assert_eq!(steps(&hands), 0);
    let to = at(&hands, 66.2, 43.1);
    hands.drop_at(to);
    hands.run();
    assert_eq!(corners(&hands)[2], (66.0, 43.0));
    assert_eq!(steps(&hands), 1);
    assert_eq!(
        hands.state().desk.history().undo_label(),
        Some("move a corner of Lower plot")
    );
    hands.state_mut().desk.undo();
    assert_eq!(corners(&hands)[2], (60.0, 40.0));
}

#[test]
fn ten_idle_frames_make_no_step() {
    let mut hands = table_with(with_tree());
    choose(&mut hands, Item::Bed(BED));
    let place = at(&hands, 30.0, 20.0);
    hands.hover_at(place);
    let before = hands.state().desk.revision();
    hands.run_steps(10);
    assert_eq!(steps(&hands), 0);
    assert_eq!(hands.state().desk.revision(), before);
}

#[test]
fn escape_puts_back_what_is_held() {
    let mut hands = table_with(part_bed());
    choose(&mut hands, Item::Plot(PLOT));
    hold_and_move(&mut hands, (60.0, 40.0), (66.0, 43.0));
    key(&mut hands, Modifiers::NONE, Key::Escape);
    assert!(!hands.state().desk.is_previewing());
    assert_eq!(corners(&hands)[2], (60.0, 40.0));
    // The hand holds nothing any more, though it has not let go of the button.
    let on = at(&hands, 70.0, 50.0);
    hands.hover_at(on);
    hands.step();
    hands.drop_at(on);
    hands.run();
    assert_eq!(steps(&hands), 0);
}

#[test]
fn a_preview_that_somebody_else_takes_away_is_let_go_of() {
    let mut hands = table_with(part_bed());
    choose(&mut hands, Item::Plot(PLOT));
    hold_and_move(&mut hands, (60.0, 40.0), (66.0, 43.0));
    hands.state_mut().desk.drop_preview();
    hands.step();
    let on = at(&hands, 64.0, 44.0);
    hands.hover_at(on);
    hands.step();
    hands.drop_at(on);
    hands.run();
    assert_eq!(steps(&hands), 0);
    assert_eq!(corners(&hands)[2], (60.0, 40.0));
}

#[test]
fn a_side_dragged_keeps_the_rectangle() {
    let mut hands = table_with(part_bed());
    choose(&mut hands, Item::Plot(PLOT));
    drag(&mut hands, (60.0, 11.0), (65.1, 12.0));
    assert_eq!(corners(&hands), [(0.0, 0.0), (65.0, 0.0), (65.0, 40.0), (0.0, 40.0)]);
    assert_eq!(steps(&hands), 1);
}

#[test]
fn the_handle_in_the_middle_of_a_side_becomes_a_corner() {
    let mut hands = table_with(part_bed());
    choose(&mut hands, Item::Plot(PLOT));
    drag(&mut hands, (60.0, 20.0), (68.0, 20.1));
    assert_eq!(corners(&hands)[2], (68.0, 20.0));
    assert_eq!(corners(&hands).len(), 5);
    assert_eq!(hands.state().desk.chosen, Some(Item::Corner(PLOT, 2)));
}

#[test]
fn only_a_chosen_plot_is_moved() {
    let mut hands = table_with(part_bed());
    drag(&mut hands, (40.0, 20.0), (50.0, 20.0));
    assert_eq!(steps(&hands), 0);
    hands.state_mut().canvas.fit();
    choose(&mut hands, Item::Plot(PLOT));
    drag(&mut hands, (40.0, 20.0), (50.0, 15.0));
    assert_eq!(corners(&hands)[0], (10.0, -5.0));
    assert_eq!(steps(&hands), 1);
}

#[test]
fn a_bed_with_its_own_outline_is_moved_in_its_plot() {
    let mut hands = table_with(part_bed());
    choose(&mut hands, Item::Bed(BED));
    drag(&mut hands, (4.6, 4.0), (9.6, 4.0));
    let BedGround::Corners(ground) = &hands.state().desk.layout().beds[0].ground else {
        panic!("an outline of its own")
    };
    assert_eq!(ring(ground)[0], (5.0, 0.0));
}

#[test]
fn a_tree_is_moved_by_its_body_and_widened_by_its_edge() {
    let mut hands = table_with(with_tree());
    drag(&mut hands, (31.0, 20.0), (41.0, 22.0));
    let item = Item::Obstacle(PLOT, ObstacleId(3));
    assert_eq!(hands.state().desk.chosen, Some(item));
    drag(&mut hands, (44.0, 22.0), (46.0, 22.0));
    let plot = hands.state().desk.layout().plot(PLOT).unwrap();
    let Shape::Circle { centre, radius } = plot.obstacles[0].shape else {
        panic!("a circle")
    };
    assert_eq!(ring(&[centre]), [(40.0, 22.0)]);
    assert!((radius.to_feet() - 6.0).abs() < 1e-9);
    assert_eq!(steps(&hands), 2);
}

#[test]
fn a_note_is_moved() {
    let note = Edit::AddNote {
        at: quillet::geometry::Point::feet(40.0, 30.0),
        text: "Gate".to_owned(),
    };
    let mut hands = table_with(part_bed().apply(&note).unwrap());
    drag(&mut hands, (40.0, 30.0), (45.0, 20.0));
    let moved = hands.state().desk.layout().note(NoteId(3)).unwrap().at;
    assert_eq!(ring(&[moved]), [(45.0, 20.0)]);
}

#[test]
fn the_needle_turns_the_rows_in_steps_and_the_count_follows() {
    let mut hands = table_with(part_bed());
    hands.state_mut().desk.step = Step::Rows;
    choose(&mut hands, Item::Bed(BED));
    let before = hands.state().desk.plan().totals.clone();
    let needle = hands
        .get_by_label("Needle of Corn block, rows run N – S, 0°")
        .rect()
        .center();
    // It points north: its tip is taken and turned to the east.
    hands.hover_at(needle + vec2(0.0, -20.0));
    hands.step();
    hands.drag_at(needle + vec2(0.0, -20.0));
    hands.step();
    for to in [vec2(12.0, -16.0), vec2(30.0, 1.0)] {
        hands.hover_at(needle + to);
        hands.step();
    }
    hands.step();
    assert!(hands.state().desk.is_previewing());
    assert_ne!(hands.state().desk.plan().totals, before);
    hands.drop_at(needle + vec2(30.0, 1.0));
    hands.run();
    let bearing = hands.state().desk.layout().beds[0].bearing.to_degrees();
    assert!((bearing - 90.0).abs() < 1e-9, "{bearing}");
    assert_eq!(steps(&hands), 1);
}

#[test]
fn a_row_pulled_sideways_sets_the_spacing_in_whole_inches() {
    let mut hands = table_with(one_plot());
    hands.state_mut().desk.step = Step::Rows;
    choose(&mut hands, Item::Bed(BED));
    // Right of the middle, pulled to the right: farther apart.
    drag(&mut hands, (49.5, 6.0), (50.27, 6.0));
    let spacing = hands.state().desk.layout().beds[0].row_spacing;
    assert!(spacing.approx_eq(Length::inches(45.0)), "{}", spacing.to_inches());
    assert_eq!(steps(&hands), 1);
}

#[test]
fn a_side_pulled_through_the_opposite_one_is_not_shown() {
    let mut hands = table_with(part_bed());
    choose(&mut hands, Item::Plot(PLOT));
    drag(&mut hands, (60.0, 11.0), (-6.0, 11.0));
    let xs: Vec<f64> = corners(&hands).iter().map(|corner| corner.0).collect();
    assert!(xs.iter().all(|x| *x >= 0.0), "{xs:?}");
    assert!(steps(&hands) <= 1);
}
