//! What of the ground is seen.

use egui::{Vec2, pos2};
use quillet::geometry::Point;
use quillet::layout::Item;
use quillet::quantity::Length;

use crate::table::*;

fn assert_near(a: Point, b: Point) {
    assert!(a.distance(b) < Length::metres(0.01), "{a:?} is not {b:?}");
}

#[test]
fn the_wheel_looks_nearer_and_keeps_the_ground_under_the_pointer() {
    let mut hands = table_with(part_bed());
    let place = pos2(300.0, 240.0);
    let (before, scale) = (
        hands.state().canvas.to_ground(place),
        hands.state().canvas.points_per_metre(),
    );
    wheel(&mut hands, place, 3.0);
    assert!(hands.state().canvas.points_per_metre() > scale * 1.2);
    assert_near(hands.state().canvas.to_ground(place), before);
}

#[test]
fn everything_is_in_view_at_first_and_when_asked() {
    let mut hands = table_with(part_bed());
    let in_view = |hands: &Hands| {
        [(0.0, 0.0), (60.0, 40.0)].into_iter().all(|(x, y)| {
            let place = at(hands, x, y);
            (60.0..840.0).contains(&place.x) && (60.0..640.0).contains(&place.y)
        })
    };
    assert!(in_view(&hands));
    hands.state_mut().canvas.zoom_by(30.0);
    assert!(!in_view(&hands));
    hands.state_mut().canvas.fit();
    hands.run();
    assert!(in_view(&hands));
}

#[test]
fn dragging_bare_paper_moves_the_sheet() {
    let mut hands = table_with(part_bed());
    let before = hands.state().canvas.to_ground(middle());
    drag(&mut hands, (50.0, -7.0), (60.0, -7.0));
    let after = hands.state().canvas.to_ground(middle());
    assert!(
        (before.x - after.x - Length::feet(10.0).to_metres()).abs() < 0.05,
        "{before:?} {after:?}"
    );
    assert_eq!(steps(&hands), 0);
}

#[test]
fn two_fingers_move_the_sheet() {
    let mut hands = table_with(part_bed());
    let (before, scale) = (
        hands.state().canvas.to_ground(middle()),
        hands.state().canvas.points_per_metre(),
    );
    hands.hover_at(middle());
    hands.step();
    hands.event(egui::Event::MouseWheel {
        unit: egui::MouseWheelUnit::Point,
        delta: Vec2::new(30.0, 0.0),
        phase: egui::TouchPhase::Move,
        source: egui::MouseWheelSource::Trackpad,
        modifiers: egui::Modifiers::NONE,
    });
    hands.run_steps(12);
    assert_eq!(hands.state().canvas.points_per_metre(), scale);
    assert!(hands.state().canvas.to_ground(middle()).x < before.x);
}

#[test]
fn a_thing_out_of_sight_is_brought_into_view() {
    let mut hands = table_with(with_tree());
    hands.state_mut().canvas.zoom_by(60.0);
    hands.run();
    let table = hands.state_mut();
    table.canvas.bring_into_view(&table.desk, Item::Bed(BED));
    hands.run();
    let (low, high) = (at(&hands, 0.0, 0.0), at(&hands, 20.0, 40.0));
    assert!(
        low.x > 20.0 && low.y < 680.0 && high.x < 880.0 && high.y > 20.0,
        "{low} {high}"
    );
}
