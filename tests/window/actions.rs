//! The table of actions: names and keys that cannot be mixed up.

use std::collections::BTreeSet;

use egui::accesskit::Role;
use egui::{Key, Modifiers};
use egui_kittest::kittest::Queryable as _;
use quillet::app::action::Action;
use quillet::app::keys;
use quillet::app::settings::{Home, Settings};

use super::window::Window;

#[test]
fn every_action_has_a_name_a_sentence_and_keys_of_its_own() {
    let labels: BTreeSet<&str> = Action::ALL.into_iter().map(Action::label).collect();
    assert_eq!(labels.len(), Action::ALL.len());
    let actions: BTreeSet<String> = Action::ALL.into_iter().map(|action| format!("{action:?}")).collect();
    assert_eq!(actions.len(), Action::ALL.len());
    assert!(Action::ALL.into_iter().all(|action| !action.tooltip().is_empty()));
    let table = keys::table();
    let keys: BTreeSet<String> = table.iter().map(|(_, shortcut)| format!("{shortcut:?}")).collect();
    assert_eq!(keys.len(), table.len());
}

#[test]
fn shortcuts_with_more_modifiers_are_read_first() {
    let table = keys::table();
    let place = |action| table.iter().position(|(of, _)| *of == action).unwrap();
    assert!(place(Action::Redo) < place(Action::Undo));
    assert!(place(Action::SaveAs) < place(Action::Save));
    assert!(place(Action::CopyLedger) < place(Action::Remove));
}

#[test]
fn plain_keys_do_nothing_while_typing() {
    let mut window = Window::sample();
    window.click_any("What rows fit?");
    window.press(Key::PageDown);
    window.press(Key::PageDown);
    let beds = window.harness.state().desk().layout().beds.len();
    window.click_any("Between rows");
    window.press(Key::Delete);
    window.press(Key::OpenBracket);
    assert_eq!(window.harness.state().desk().layout().beds.len(), beds);
    assert_eq!(window.harness.state().desk().history().labels().count(), 0);
    // Escape leaves the field first, and lets go of the bed only when pressed again.
    let chosen = window.harness.state().desk().chosen;
    assert!(chosen.is_some());
    window.press(Key::Escape);
    assert_eq!(window.harness.state().desk().chosen, chosen);
    window.press(Key::Escape);
    assert_eq!(window.harness.state().desk().chosen, None);
}

#[test]
fn rows_turn_by_the_bracket_keys() {
    let mut window = Window::sample();
    window.press(Key::PageDown);
    window.press(Key::PageDown);
    window.press(Key::CloseBracket);
    let bearing = window.harness.state().desk().layout().beds[0].bearing.to_degrees();
    assert!((bearing - 5.0).abs() < 1e-9);
}

#[test]
fn light_and_dark_are_remembered() {
    let mut window = Window::empty();
    window.press_with(Modifiers::COMMAND, Key::K);
    window.type_text("light or");
    window.press(Key::Enter);
    let dark = window.harness.ctx.global_style().visuals.dark_mode;
    let settings = Settings::load(&Home::in_folder(&window.folder.path().join("home")));
    assert_eq!(settings.dark, Some(dark));
}

#[test]
fn every_card_opens_and_names_all_its_fields() {
    // The harness stops at any field or button without a name.
    let mut window = Window::sample();
    for step in ["What ground have I?", "What rows fit?", "What goes on each row?"] {
        window.click_any(step);
        for _ in 0..8 {
            window.press(Key::PageDown);
            for section in [
                "Seed",
                "Edges and ends",
                "Lines on each row",
                "Tape",
                "Ground",
                "Corners",
            ] {
                let closed = window.harness.query_all_by_role_and_label(Role::Button, section).next();
                if let Some(head) = closed {
                    head.click_accesskit();
                }
                window.harness.run_ok();
            }
        }
    }
    window.press_with(Modifiers::COMMAND, Key::K);
    window.type_text("1st side");
    window.press(Key::Enter);
    assert!(window.sees("Strip"));
    window.click_any("What do I carry outside?");
    assert!(window.sees("Place"));
}

fn by_finder(window: &mut Window, words: &str) {
    window.press_with(Modifiers::COMMAND, Key::K);
    window.type_text(words);
    window.press(Key::Enter);
}

/// How many plots there are after a drag over the open sheet.
fn plots_after_drag(window: &mut Window) -> usize {
    let at = [
        egui::pos2(420.0, 110.0),
        egui::pos2(500.0, 160.0),
        egui::pos2(560.0, 200.0),
    ];
    window.harness.hover_at(at[0]);
    window.harness.step();
    window.harness.drag_at(at[0]);
    window.harness.step();
    for place in at {
        window.harness.hover_at(place);
        window.harness.step();
    }
    window.harness.drop_at(at[2]);
    window.harness.run_ok();
    window.harness.state().desk().layout().plots.len()
}

#[test]
fn another_way_of_drawing_a_plot_puts_the_tool_away() {
    let mut window = Window::empty();
    by_finder(&mut window, "drag a plot");
    assert_eq!(plots_after_drag(&mut window), 1, "the tool draws");
    by_finder(&mut window, "drag a plot");
    window.press_with(Modifiers::COMMAND, Key::R);
    window.type_text("40 ft");
    window.press(Key::Tab);
    window.type_text("30 ft");
    window.press(Key::Enter);
    assert_eq!(plots_after_drag(&mut window), 2, "two are there, and no third is drawn");
}
