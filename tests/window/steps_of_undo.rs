//! One finished value is one step back; nothing else is.

use egui::{Key, Modifiers};
use quillet::app::desk::Desk;
use quillet::layout::Layout;

use super::window::Window;

fn steps(desk: &Desk) -> usize {
    desk.history().labels().count()
}

fn first_bed_spacing(layout: &Layout) -> f64 {
    layout.beds[0].row_spacing.to_inches()
}

/// The sample with its first bed chosen.
fn on_first_bed() -> Window {
    let mut window = Window::sample();
    window.click_any("What rows fit?");
    window
}

#[test]
fn one_value_in_a_field_is_one_step_that_undo_takes_back() {
    let mut window = on_first_bed();
    let before = first_bed_spacing(window.harness.state().desk().layout());
    window.fill("Between rows", "30 in", Key::Enter);
    assert_eq!(steps(window.harness.state().desk()), 1);
    assert!((first_bed_spacing(window.harness.state().desk().layout()) - 30.0).abs() < 1e-9);
    assert_eq!(window.value("Between rows"), "30 in");
    assert!(window.sees("Undo: space rows of Corn block"));

    window.press_with(Modifiers::COMMAND, Key::Z);
    assert!((first_bed_spacing(window.harness.state().desk().layout()) - before).abs() < 1e-12);
    assert_eq!(window.value("Between rows"), "3 ft");
    assert!(window.sees("Redo: space rows of Corn block"));
    window.press_with(Modifiers::COMMAND | Modifiers::SHIFT, Key::Z);
    assert!((first_bed_spacing(window.harness.state().desk().layout()) - 30.0).abs() < 1e-9);
}

#[test]
fn ten_idle_frames_make_no_step() {
    let mut window = on_first_bed();
    let revision = window.harness.state().desk().revision();
    for _ in 0..10 {
        window.harness.step();
    }
    assert_eq!(steps(window.harness.state().desk()), 0);
    assert_eq!(window.harness.state().desk().revision(), revision);
    assert!(!window.harness.state().desk().is_unsaved());
}

#[test]
fn undo_in_a_field_takes_back_typing_and_not_a_step() {
    let mut window = on_first_bed();
    window.fill("Between rows", "30 in", Key::Enter);
    window.click_any("Between rows");
    window.type_text("5");
    window.press_with(Modifiers::COMMAND, Key::Z);
    assert_eq!(steps(window.harness.state().desk()), 1);
}

#[test]
fn saving_while_typing_takes_the_value_over_first() {
    let mut window = on_first_bed();
    window.click_any("Between rows");
    window.press_with(Modifiers::COMMAND, Key::A);
    window.type_text("40 in");
    window.press_with(Modifiers::COMMAND, Key::S);
    assert!((first_bed_spacing(window.harness.state().desk().layout()) - 40.0).abs() < 1e-9);
    assert!(!window.harness.state().desk().is_unsaved());
    let saved = quillet::layout::store::load(&window.folder.path().join("alder-bend.ron")).unwrap();
    assert!((first_bed_spacing(&saved) - 40.0).abs() < 1e-9);
}

#[test]
fn a_crop_spacing_of_ones_own_goes_back_to_the_crops() {
    let mut window = on_first_bed();
    window.fill("In the row", "9 in", Key::Tab);
    assert_eq!(window.value("In the row"), "9 in");
    window.click("use the crop's own");
    assert_eq!(window.value("In the row"), "6 in");
    assert_eq!(steps(window.harness.state().desk()), 2);
}

#[test]
fn what_was_removed_can_be_brought_back() {
    let mut window = Window::sample();
    let beds = window.harness.state().desk().layout().beds.len();
    window.press(Key::PageDown);
    window.press(Key::PageDown);
    window.press(Key::Delete);
    assert_eq!(window.harness.state().desk().layout().beds.len(), beds - 1);
    window.press_with(Modifiers::COMMAND, Key::Z);
    assert_eq!(window.harness.state().desk().layout().beds.len(), beds);
}
