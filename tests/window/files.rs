//! Opening, saving, and unsaved work that is kept.

use std::path::Path;
use std::rc::Rc;

use egui::{Key, Modifiers};
use quillet::app::files::Answer;

use super::window::Window;

#[test]
fn saved_and_opened_again_it_is_the_same_layout() {
    let mut window = Window::empty();
    let file = window.folder.path().join("back field.ron");
    window.press_with(Modifiers::COMMAND, Key::R);
    window.type_text("62");
    window.press(Key::Tab);
    window.type_text("48");
    window.press(Key::Enter);
    assert!(window.sees("not saved yet"));
    window.will_answer(Answer::Chosen(file.with_extension("")));
    window.press_with(Modifiers::COMMAND, Key::S);
    window.until("the file", |window| window.sees("saved"));
    let before = window.harness.state().desk().layout().clone();
    assert!(file.is_file());

    let again = Window::open(Some(file), Rc::new(tempfile::tempdir().unwrap()));
    assert_eq!(*again.harness.state().desk().layout(), before);
    assert!(again.sees("saved"));
}

#[test]
fn a_broken_file_says_line_and_column_and_the_layout_stays() {
    let mut window = Window::sample();
    let before = window.harness.state().desk().layout().clone();
    let broken = window.folder.path().join("broken.ron");
    std::fs::write(
        &broken,
        "(\n    version: 2,\n    name: \"Broken\"\n    season: 2027,\n)\n",
    )
    .unwrap();
    window.will_answer(Answer::Chosen(broken.clone()));
    window.press_with(Modifiers::COMMAND, Key::O);
    window.until("the message", |window| window.sees_part("broken.ron"));
    let said = window.harness.state().desk().said.clone().unwrap();
    assert!(said.wrong);
    assert!(
        said.text.contains("ine 4") && said.text.contains("olumn"),
        "{}",
        said.text
    );
    assert_eq!(*window.harness.state().desk().layout(), before);
    window.click("Seen");
    assert!(window.harness.state().desk().said.is_none());
}

#[test]
fn a_cancelled_dialog_changes_nothing() {
    let mut window = Window::sample();
    let revision = window.harness.state().desk().revision();
    window.will_answer(Answer::Cancelled);
    window.press_with(Modifiers::COMMAND, Key::O);
    window.harness.run_ok();
    assert_eq!(window.harness.state().desk().revision(), revision);
    assert!(window.harness.state().desk().said.is_none());
}

fn unsaved_in(folder: &Path) -> Vec<std::path::PathBuf> {
    let Ok(entries) = std::fs::read_dir(folder.join("home/unsaved")) else {
        return Vec::new();
    };
    let paths = entries.map(|entry| entry.unwrap().path());
    paths
        .filter(|path| path.extension().is_some_and(|ending| ending == "ron"))
        .filter(|path| !path.file_name().unwrap().to_string_lossy().starts_with('.'))
        .collect()
}

#[test]
fn unsaved_work_of_a_program_that_was_killed_is_offered_and_taken_up() {
    let mut window = Window::sample();
    window.click_any("What rows fit?");
    window.fill("Between rows", "40 in", Key::Enter);
    window.until("kept work", |window| !unsaved_in(window.folder.path()).is_empty());

    // A kill leaves the folder as it is now, with nobody holding the place.
    let after_kill = Rc::new(tempfile::tempdir().unwrap());
    let folder = after_kill.path().join("home/unsaved");
    std::fs::create_dir_all(&folder).unwrap();
    for path in unsaved_in(window.folder.path()) {
        std::fs::copy(&path, folder.join(path.file_name().unwrap())).unwrap();
    }
    let mut again = Window::open(None, after_kill);
    assert!(again.sees("Unsaved work of Alder Bend was kept"));
    again.click("Take it up");
    let desk = again.harness.state().desk();
    assert!((desk.layout().beds[0].row_spacing.to_inches() - 40.0).abs() < 1e-9);
    assert!(desk.is_unsaved());
    assert_eq!(
        desk.path.as_deref(),
        Some(window.folder.path().join("alder-bend.ron").as_path())
    );
    assert!(!again.sees("Take it up"));
}

#[test]
fn closing_with_unsaved_work_keeps_it_and_saving_it_throws_the_kept_work_away() {
    let folder = Rc::new(tempfile::tempdir().unwrap());
    let file = folder.path().join("alder-bend.ron");
    std::fs::copy(super::window::sample(), &file).unwrap();
    let mut window = Window::open(Some(file.clone()), folder.clone());
    window.click_any("What rows fit?");
    window.fill("Between rows", "40 in", Key::Enter);
    drop(window);
    assert_eq!(unsaved_in(folder.path()).len(), 1);

    let mut again = Window::open(Some(file), folder.clone());
    again.click("Take it up");
    again.press_with(Modifiers::COMMAND, Key::S);
    assert!(!again.harness.state().desk().is_unsaved());
    drop(again);
    assert!(unsaved_in(folder.path()).is_empty());
}

#[test]
fn another_layout_on_the_desk_keeps_the_unsaved_one_before_it() {
    let mut window = Window::sample();
    window.click_any("What rows fit?");
    window.fill("Between rows", "40 in", Key::Enter);
    window.press_with(Modifiers::COMMAND, Key::N);
    assert!(window.harness.state().desk().layout().plots.is_empty());
    window.click("Take it up");
    assert!((window.harness.state().desk().layout().beds[0].row_spacing.to_inches() - 40.0).abs() < 1e-9);
}

#[test]
fn the_table_is_saved_for_a_spreadsheet() {
    let mut window = Window::sample();
    let table = window.folder.path().join("table.csv");
    window.will_answer(Answer::Chosen(table.clone()));
    window.press_with(Modifiers::COMMAND, Key::E);
    window.until("the table", |_| table.is_file());
    let text = std::fs::read_to_string(&table).unwrap();
    assert!(text.lines().count() > 26, "a line for each of the 26 rows");
}
