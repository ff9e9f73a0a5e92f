//! The fertilizer list and the account of a bed in the ledger's place.

use std::rc::Rc;

use egui::{Key, Modifiers};
use egui_kittest::kittest::Queryable as _;
use quillet::app::files::Answer;
use quillet::quantity::Units;

use super::window::Window;
use crate::fed_garden::fed;

/// The fed garden in a window so tall that all of a list can be reached.
fn window(units: Units) -> Window {
    let folder = Rc::new(tempfile::tempdir().unwrap());
    let file = folder.path().join("fed.ron");
    std::fs::write(&file, quillet::layout::file::write(&fed(units))).unwrap();
    Window::open(Some(file), folder)
}

fn list(units: Units) -> Window {
    let mut window = window(units);
    window.press_with(Modifiers::COMMAND | Modifiers::SHIFT, Key::L);
    window
}

/// Rolls the list down by so many points, with the pointer over these words.
fn roll(window: &mut Window, over: &str, points: f32) {
    let on_list = window.harness.get_by_label(over).rect().center();
    window.harness.event(egui::Event::PointerMoved(on_list));
    window.harness.event(egui::Event::MouseWheel {
        unit: egui::MouseWheelUnit::Point,
        delta: egui::vec2(0.0, -points),
        phase: egui::TouchPhase::Move,
        modifiers: Modifiers::NONE,
        source: egui::MouseWheelSource::Trackpad,
    });
    window.harness.run_steps(60);
}

#[test]
fn the_list_says_what_each_row_gets_and_what_was_used() {
    let window = list(Units::Customary);
    assert!(window.sees("Fertilizer list"));
    assert!(window.sees("2 of 5 dressings done"));
    assert!(window.sees_part("by row feet: 330 ft × 3 ft = 990 sq ft"));
    assert!(window.sees_part("used 12.00 lb on 9 June, 21 % more than the 9.90 lb planned"));
    assert!(window.sees_part("no cup weight: weigh a level cup"));
    assert!(window.sees_part("per 10 ft"));
}

#[test]
fn metric_paces_go_by_three_metres() {
    let window = list(Units::Metric);
    assert!(window.sees_part("per 3 m"));
    assert!(!window.sees_part("per 10 ft"));
}

#[test]
fn shopping_runs_and_cautions_stand_below() {
    let mut window = list(Units::Customary);
    assert!(window.sees_part("All bags 31.50, without 3 materials that have no price"));
    roll(&mut window, "At planting", 400.0);
    assert!(window.sees_part("1 bag of 50 lb"));
    assert!(window.sees("no price") && !window.sees("0.00"));
    assert!(window.sees_part("5 gal tank, 1 in 100"));
    roll(&mut window, "Material", 100_000.0);
    assert!(window.sees_part("Never inject into a line"));
}

#[test]
fn rows_open_and_go_away_again() {
    let mut window = list(Units::Customary);
    assert!(!window.sees("row 11"));
    let button = window.harness.get_all_by_label("Row by row").next();
    button.unwrap().click();
    window.harness.run_ok();
    assert!(window.sees("row 11"));
    window.click_any("Put rows away");
    assert!(!window.sees("row 11"));
}

#[test]
fn the_account_of_the_bed_says_how_each_nutrient_stands() {
    let mut window = list(Units::Customary);
    window.click("Account");
    assert!(window.sees("Account of Bed 1"));
    // 130 lb/acre are wanted, 30 of them are in the clover.
    assert!(window.sees_part("Account of nitrogen: 100 lb/acre still wanted"));
    assert!(window.sees_part("Nitrogen: over by"));
    // Who says so is for the hand that hovers, so that the table stands whole in the panel.
    assert!(!window.sees_part("published."));
    window.harness.get_by_label_contains("Nitrogen: over by").hover();
    window.harness.run_steps(60);
    assert!(window.sees_part("University of Wisconsin"));
    // The choice over the plot comes first, then the name in the table.
    let choice = window.harness.get_all_by_label("Potash").next();
    choice.unwrap().click();
    window.harness.run_ok();
    assert!(window.sees_part("Account of potash: nobody says what is wanted"));
}

#[test]
fn the_list_is_saved_and_copied() {
    let mut window = list(Units::Customary);
    let target = window.folder.path().join("feed.csv");
    window.will_answer(Answer::Chosen(target.clone()));
    window.click("As CSV…");
    window.until("the file", |_| target.exists());
    let text = std::fs::read_to_string(&target).unwrap();
    assert!(text.starts_with("bed,plot,crop,dressing"), "{text}");
    window.click("Copy");
    assert!(window.sees_part("Copied the fertilizer list"));
}

#[test]
fn the_sheet_opens_for_print() {
    let mut window = list(Units::Customary);
    window.click("On paper…");
    window.until("the sheets", |window| window.sees_part("Sheet 1 of"));
    assert!(window.sees("To feed by"));
}

#[test]
fn only_the_lines_that_are_seen_are_drawn() {
    let mut layout = fed(Units::Customary);
    let bed = std::sync::Arc::make_mut(&mut layout.beds[0]);
    let first = bed.dressings[0].clone();
    bed.dressings = (0..60)
        .map(|place| quillet::layout::Dressing {
            id: quillet::layout::DressingId(place + 1000),
            name: format!("Dressing {place}"),
            ..first.clone()
        })
        .collect();
    let mut window = Window::of(&layout);
    window.press_with(Modifiers::COMMAND | Modifiers::SHIFT, Key::L);
    assert!(window.sees("Dressing 0"));
    assert!(!window.sees("Dressing 59"));
    // Nor is what stands below them, until it comes in sight.
    let below = ["1 bag of 50 lb", "5 gal tank, 1 in 100", "Wear gloves"];
    assert!(below.iter().all(|words| !window.sees_part(words)));
    roll(&mut window, "Dressing 0", 100_000.0);
    assert!(!window.sees("Dressing 0"));
    assert!(window.sees_part("Wear gloves"));
}
