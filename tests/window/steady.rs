//! What stands below stays where it is while something above it is pointed at, chosen, typed or answered.

use std::sync::Arc;

use egui::{Key, Modifiers};
use egui_kittest::kittest::{NodeT as _, Queryable as _};
use quillet::layout::store;

use super::window::{Window, sample};

/// Where the first thing of that name stands.
fn top(window: &Window, label: &str) -> f32 {
    let all = window.harness.query_all_by_label(label);
    all.map(|node| node.rect().top()).reduce(f32::min).unwrap()
}

#[test]
fn a_long_answer_moves_no_question() {
    let short = Window::sample();
    let mut layout = store::load(&sample()).unwrap();
    let bed = layout.beds[0].clone();
    for place in 0..40 {
        let mut more = (*bed).clone();
        more.id.0 = 10_000 + place;
        more.name = format!("Bed of many {place}");
        more.dressings.clear();
        layout.beds.push(Arc::new(more));
    }
    let long = Window::of(&layout);
    for question in [
        "What rows fit?",
        "What do I sow?",
        "What do I feed?",
        "What do I carry outside?",
    ] {
        assert!(
            (top(&short, question) - top(&long, question)).abs() < 0.01,
            "{question}"
        );
    }
}

#[test]
fn choosing_a_row_moves_nothing_on_the_card_of_its_bed() {
    let mut window = Window::sample();
    window.click_any("What rows fit?");
    window.press(Key::PageDown);
    window.press(Key::PageDown);
    let before = top(&window, "Between rows");
    let row = |window: &Window| {
        let rows = window.harness.get_all_by_label_contains("Row 5, length");
        rows.map(|row| row.rect().top()).reduce(f32::min).unwrap()
    };
    let in_ledger = row(&window);
    let line = window.harness.get_all_by_label_contains("Row 5, length").next();
    line.unwrap().click();
    window.harness.run_ok();
    assert!(window.sees_part("Row 5 · "));
    assert!(
        (row(&window) - in_ledger).abs() < 0.01,
        "the row stays under the pointer"
    );
    assert!((top(&window, "Between rows") - before).abs() < 0.01);
}

#[test]
fn the_first_value_of_a_material_moves_no_field() {
    let mut layout = store::load(&sample()).unwrap();
    layout.shed.clear();
    let mut window = Window::of(&layout);
    window.harness.set_size(egui::vec2(1440.0, 2400.0));
    window.harness.run_ok();
    window.press_with(Modifiers::COMMAND, Key::M);
    window.fill("Find a material", "46-0-0", Key::Enter);
    let fields = ["A bag holds", "At hand", "A level cup weighs", "Sodium"];
    let places = |window: &Window| fields.map(|field| top(window, field));
    let before = places(&window);
    window.fill("A bag holds", "50 lb", Key::Enter);
    assert_eq!(places(&window), before, "put in the shed");
    window.fill("A level cup weighs", "6 oz", Key::Enter);
    window.fill("Analysis", "45-0-0", Key::Enter);
    assert!(window.sees("use the catalogue's"));
    assert_eq!(places(&window), before, "over what is published");
}

#[test]
fn a_want_typed_over_moves_no_other_on_the_mix_page() {
    let mut window = Window::sample();
    window.press_with(Modifiers::COMMAND, Key::K);
    window.type_text("mix fert");
    window.press(Key::Enter);
    let before = top(&window, "At least of potash");
    window.fill("At least of phosphate", "60 lb/acre", Key::Tab);
    window.fill("No more than of phosphate", "90 lb/acre", Key::Tab);
    assert!(window.sees("the account's"));
    assert!((top(&window, "At least of potash") - before).abs() < 0.01);
}

#[test]
fn rows_of_the_ledger_are_whole_at_both_ends() {
    let mut layout = store::load(&sample()).unwrap();
    let bed = Arc::make_mut(&mut layout.beds[0]);
    bed.row_spacing = bed.row_spacing * 0.25;
    let mut window = Window::of(&layout);
    let tops = |window: &Window| -> Vec<f32> {
        let rows = window.harness.get_all_by_label_contains(", length");
        let rows = rows.filter(|row| {
            let label = row.accesskit_node().label().unwrap_or_default();
            label.starts_with("Row ")
        });
        rows.map(|row| row.rect().top()).collect()
    };
    let first = tops(&window).into_iter().fold(f32::INFINITY, f32::min);
    let row = window.harness.get_all_by_label_contains("Row 2, length").next();
    row.unwrap().hover();
    window.harness.run_ok();
    window.harness.event(egui::Event::MouseWheel {
        unit: egui::MouseWheelUnit::Point,
        delta: egui::vec2(0.0, -55.0),
        phase: egui::TouchPhase::Move,
        source: egui::MouseWheelSource::Unknown,
        modifiers: Modifiers::NONE,
    });
    for _ in 0..60 {
        window.harness.step();
    }
    let scrolled = tops(&window);
    assert!(!scrolled.is_empty());
    for top in scrolled {
        let lines = (top - first) / 24.0;
        assert!((lines - lines.round()).abs() < 0.05, "{top} from {first}");
    }
}
