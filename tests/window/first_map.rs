//! From an empty sheet to a map to carry outside.

use egui::{Key, Modifiers};
use quillet::app::files::Answer;

use super::window::Window;

#[test]
fn from_an_empty_sheet_to_a_saved_map_takes_at_most_twelve_actions() {
    let mut window = Window::empty();
    assert!(window.sees("Start with your ground"));
    let map = window.folder.path().join("map.pdf");

    window.press_with(Modifiers::COMMAND, Key::R);
    window.type_text("62");
    window.press(Key::Tab);
    window.type_text("48");
    window.press(Key::Enter);
    window.click("Crop");
    window.type_text("sweet c");
    window.press(Key::Enter);
    window.press_with(Modifiers::COMMAND, Key::P);
    window.until("the sheets", |window| window.sees("1 of 2"));
    window.will_answer(Answer::Chosen(map.clone()));
    window.click("Save as PDF…");
    window.until("the file", |window| window.sees("Saved"));

    assert!(window.actions <= 12, "{} actions", window.actions);
    let bytes = std::fs::read(map).unwrap();
    assert!(bytes.starts_with(b"%PDF"));
    let layout = window.harness.state().desk().layout();
    assert_eq!((layout.plots.len(), layout.beds.len()), (1, 1));
    let plan = window.harness.state().desk().plan();
    // 48 ft deep and 62 ft long: rows along the longer side, every 3 ft, from half a spacing in.
    assert_eq!(plan.totals.rows, 16);
    assert!(plan.totals.plants > 0);
}

#[test]
fn a_side_that_cannot_be_read_keeps_the_dialog_and_says_why() {
    let mut window = Window::empty();
    window.press_with(Modifiers::COMMAND, Key::R);
    window.type_text("wide");
    window.press(Key::Enter);
    assert!(window.sees_part("was not understood as a length"));
    assert!(window.harness.state().desk().layout().plots.is_empty());
}

#[test]
fn a_second_plot_lies_beside_the_first() {
    let mut window = Window::empty();
    for _ in 0..2 {
        window.press_with(Modifiers::COMMAND, Key::R);
        window.type_text("30");
        window.press(Key::Tab);
        window.type_text("20");
        window.press(Key::Enter);
    }
    let layout = window.harness.state().desk().layout();
    assert_eq!(layout.plots.len(), 2);
    let most_east = |plot: usize| {
        layout.plots[plot]
            .outline
            .iter()
            .map(|corner| corner.x)
            .fold(f64::MIN, f64::max)
    };
    let least_east = |plot: usize| {
        layout.plots[plot]
            .outline
            .iter()
            .map(|corner| corner.x)
            .fold(f64::MAX, f64::min)
    };
    assert!(least_east(1) > most_east(0));
}

#[test]
fn where_no_dialog_can_be_shown_a_path_can_be_typed() {
    let mut window = Window::sample();
    let map = window.folder.path().join("typed map");
    window.press_with(Modifiers::COMMAND, Key::P);
    window.until("the sheets", |window| window.sees_part("1 of "));
    window.will_answer(Answer::CannotShow);
    window.click("Save as PDF…");
    window.press_with(Modifiers::COMMAND, Key::A);
    window.type_text(map.to_str().unwrap());
    window.press(Key::Enter);
    window.until("the file", |window| window.sees("Saved"));
    assert!(map.with_extension("pdf").is_file());
}
