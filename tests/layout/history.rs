//! Going back and forth through named steps.

use std::sync::Arc;

use quillet::layout::{BedChange, Edit, History, Layout, Water};
use quillet::quantity::{Bearing, Length};

use crate::garden::{CORN, applied, garden};

fn steps() -> [Edit; 3] {
    [
        Edit::Bed(CORN, BedChange::SetBearing(Bearing::degrees(10.0))),
        Edit::Bed(CORN, BedChange::SetRowSpacing(Length::inches(30.0))),
        Edit::Bed(CORN, BedChange::SetWater(Water::Rain)),
    ]
}

fn commit(history: &mut History, edit: &Edit) {
    let label = edit.label(history.current());
    let next = applied(history.current(), std::slice::from_ref(edit));
    history.commit(next, label);
}

fn walked() -> History {
    let mut history = History::new(garden());
    for edit in steps() {
        commit(&mut history, &edit);
    }
    history
}

#[test]
fn undo_to_the_start_and_redo_to_the_end() {
    let mut history = walked();
    let end = history.current().clone();
    assert_eq!(history.undo(), Some("change the water of Corn block"));
    assert_eq!(history.undo(), Some("space rows of Corn block"));
    assert_eq!(history.undo_label(), Some("turn rows of Corn block"));
    assert_eq!(history.redo_label(), Some("space rows of Corn block"));
    assert_eq!(history.undo(), Some("turn rows of Corn block"));
    assert_eq!(history.undo(), None);
    assert_eq!(history.current(), &garden());

    assert_eq!(history.redo(), Some("turn rows of Corn block"));
    assert_eq!(history.redo(), Some("space rows of Corn block"));
    assert_eq!(history.redo(), Some("change the water of Corn block"));
    assert_eq!(history.redo(), None);
    assert_eq!(history.current(), &end);
    let labels: Vec<_> = history.labels().collect();
    assert_eq!(
        labels,
        [
            "turn rows of Corn block",
            "space rows of Corn block",
            "change the water of Corn block"
        ]
    );
}

#[test]
fn ten_thousand_steps_can_be_undone() {
    let mut history = History::new(garden());
    for step in 0..10_000_i32 {
        let bearing = Bearing::degrees(f64::from(step + 1) / 100.0);
        commit(&mut history, &Edit::Bed(CORN, BedChange::SetBearing(bearing)));
    }
    let mut undone = 0;
    while history.undo().is_some() {
        undone += 1;
    }
    assert_eq!(undone, 10_000);
    assert_eq!(history.current(), &garden());
}

#[test]
fn steps_share_what_they_do_not_touch() {
    let mut history = walked();
    let end = history.current().clone();
    while history.undo().is_some() {}
    let start: &Layout = history.current();
    assert!(Arc::ptr_eq(&start.plots[0], &end.plots[0]));
    assert!(Arc::ptr_eq(&start.beds[1], &end.beds[1]));
    assert!(!Arc::ptr_eq(&start.beds[0], &end.beds[0]));
}

#[test]
fn a_new_step_empties_what_could_be_done_again() {
    let mut history = walked();
    history.undo();
    commit(&mut history, &steps()[0]);
    // Turning to where the rows run already is no step.
    assert_eq!(history.redo_label(), Some("change the water of Corn block"));
    commit(&mut history, &Edit::SetSeason(2030));
    assert_eq!(history.redo_label(), None);
    assert_eq!(history.redo(), None);
    assert_eq!(history.current().season, 2030);
}

#[test]
fn an_equal_layout_makes_no_step() {
    let mut history = History::new(garden());
    history.commit(garden(), "nothing");
    assert_eq!(history.undo_label(), None);
}

#[test]
fn the_saved_place_is_found_again_by_undo_and_redo() {
    let mut history = walked();
    assert!(!history.is_saved());
    history.mark_saved();
    assert!(history.is_saved());
    history.undo();
    assert!(!history.is_saved());
    history.redo();
    assert!(history.is_saved());
}

#[test]
fn the_saved_place_is_lost_when_another_way_is_taken() {
    let mut history = walked();
    history.mark_saved();
    history.undo();
    commit(&mut history, &Edit::SetSeason(2030));
    // As many steps as when it was saved, but not the same ones.
    assert!(!history.is_saved());
    while history.undo().is_some() {}
    assert!(!history.is_saved());
    history.mark_saved();
    commit(&mut history, &Edit::SetSeason(2031));
    assert!(!history.is_saved());
    history.undo();
    assert!(history.is_saved());
}

#[test]
fn a_fresh_layout_is_saved_and_a_rescued_one_is_not() {
    assert!(History::new(garden()).is_saved());
    let mut rescued = History::new_unsaved(garden());
    assert!(!rescued.is_saved());
    rescued.mark_saved();
    assert!(rescued.is_saved());
}
