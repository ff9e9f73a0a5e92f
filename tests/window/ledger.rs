//! Ledger, finder, heads-up and lists: what is clicked is chosen.

use std::rc::Rc;

use egui::{Key, Modifiers};
use egui_kittest::kittest::{NodeT as _, Queryable as _};
use quillet::geometry::Point;
use quillet::layout::{BedChange, Edit, Item, Layout, store};
use quillet::quantity::{Bearing, Length, Units};

use super::window::Window;

#[test]
fn a_click_on_a_row_of_the_ledger_chooses_the_row() {
    let mut window = Window::sample();
    let bed = window.harness.state().desk().layout().beds[0].id;
    window
        .harness
        .get_all_by_label_contains("Row 2, length")
        .next()
        .unwrap()
        .click();
    window.harness.run_ok();
    assert_eq!(window.harness.state().desk().chosen, Some(Item::Row(bed, 2)));
}

#[test]
fn the_pointer_over_a_row_lights_it_and_leaves_it_again() {
    let mut window = Window::sample();
    let bed = window.harness.state().desk().layout().beds[0].id;
    window
        .harness
        .get_all_by_label_contains("Row 3, length")
        .next()
        .unwrap()
        .hover();
    window.harness.run_ok();
    assert_eq!(window.harness.state().desk().pointed, Some(Item::Row(bed, 3)));
    window.harness.hover_at(egui::pos2(700.0, 20.0));
    window.harness.run_ok();
    assert_eq!(window.harness.state().desk().pointed, None);
}

#[test]
fn sorting_turns_the_order_of_rows_and_back() {
    let mut window = Window::sample();
    let first = |window: &Window| {
        let rows = window.harness.get_all_by_label_contains(", length");
        rows.filter(|row| {
            row.accesskit_node()
                .label()
                .is_some_and(|label| label.starts_with("Row "))
        })
        .map(|row| {
            (
                row.rect().top() as i32,
                row.accesskit_node().label().unwrap_or_default(),
            )
        })
        .min()
        .unwrap()
        .1
    };
    assert!(first(&window).starts_with("Row 1,"));
    window.click("Sort by row");
    assert!(first(&window).starts_with("Row 10,"));
    window.click("Sort by row");
    assert!(first(&window).starts_with("Row 1,"));
}

#[test]
fn the_finder_finds_beds_actions_and_crops_by_part_of_their_name() {
    let mut window = Window::sample();
    window.press_with(Modifiers::COMMAND, Key::K);
    window.type_text("bean");
    window.press(Key::Enter);
    let layout = window.harness.state().desk().layout();
    let beans = layout.beds.iter().find(|bed| bed.name == "Beans").unwrap().id;
    assert_eq!(window.harness.state().desk().chosen, Some(Item::Bed(beans)));

    window.press_with(Modifiers::COMMAND, Key::K);
    window.type_text("carrot");
    window.press(Key::Enter);
    let planting = window
        .harness
        .state()
        .desk()
        .layout()
        .bed(beans)
        .unwrap()
        .planting
        .clone()
        .unwrap();
    assert_eq!(planting.crop.0, "carrot");

    window.press_with(Modifiers::COMMAND, Key::K);
    window.type_text("heads");
    window.press(Key::Enter);
    assert!(window.sees("Close"));
}

#[test]
fn heads_up_open_to_a_list_and_a_click_goes_to_the_place() {
    let mut window = Window::sample();
    // A bed whose row spacing no crop of the sample stands.
    window.click_any("What rows fit?");
    window.fill("Between rows", "6 in", Key::Enter);
    let heads_up = window.harness.state().desk().plan().heads_up.clone();
    assert!(!heads_up.is_empty());
    window.click(&format!("{} heads-up", heads_up.len()));
    window
        .harness
        .get_all_by_label(&heads_up[0].what)
        .last()
        .unwrap()
        .click();
    window.harness.run_ok();
    assert_eq!(window.harness.state().desk().chosen, Some(heads_up[0].about));
    window.press(Key::Escape);
    window.press(Key::Escape);
    assert_eq!(window.harness.state().desk().chosen, None);
}

#[test]
fn everything_on_the_sheet_stands_in_the_list() {
    let window = Window::sample();
    for name in ["Lower plot", "Corn block", "Beans", "Shed", "Old pear"] {
        assert!(window.sees_part(name), "{name}");
    }
}

#[test]
fn all_beds_can_be_seen_with_their_sums() {
    let mut window = Window::sample();
    window.click("All beds");
    assert!(window.sees("Fertilizer"));
    assert!(window.sees("Nitrogen"));
    window.click("One bed");
    assert!(!window.sees("Nitrogen"));
}

/// A bed with a row every 20 cm over twenty kilometres: 100,000 rows.
fn large() -> Layout {
    let corners = [(0.0, 0.0), (20_000.0, 0.0), (20_000.0, 50.0), (0.0, 50.0)];
    let outline = corners.map(|(east, north)| Point::metres(east, north)).to_vec();
    let layout = Layout::empty(2027, Units::Metric);
    let layout = layout.apply(&Edit::AddPlotWithBed { name: None, outline }).unwrap();
    let bed = layout.beds[0].id;
    let changes = [
        BedChange::SetBearing(Bearing::NORTH),
        BedChange::SetRowSpacing(Length::metres(0.2)),
    ];
    changes
        .into_iter()
        .fold(layout, |layout, change| layout.apply(&Edit::Bed(bed, change)).unwrap())
}

#[test]
fn of_a_hundred_thousand_rows_only_those_in_view_are_drawn() {
    let folder = Rc::new(tempfile::tempdir().unwrap());
    let file = folder.path().join("large.ron");
    store::save(&file, &large()).unwrap();
    let mut window = Window::open(Some(file), folder);
    assert_eq!(window.harness.state().desk().plan().totals.rows, 100_000);
    assert!(window.sees_part("All 100,000 rows"));
    let in_view = |window: &Window| window.harness.query_all_by_label_contains(", length").count();
    assert!(in_view(&window) < 40, "{}", in_view(&window));
    window.click("Sort by row");
    assert!(window.sees_part("Row 100000, length"));
    assert!(in_view(&window) < 40);
}

#[test]
fn a_question_puts_what_it_asks_about_on_the_card() {
    let mut window = Window::sample();
    let (plot, bed) = {
        let layout = window.harness.state().desk().layout();
        (layout.plots[0].id, layout.beds[0].id)
    };
    window.press(Key::PageDown);
    assert_eq!(window.harness.state().desk().chosen, Some(Item::Plot(plot)));
    window.click_any("What goes on each row?");
    assert_eq!(window.harness.state().desk().chosen, Some(Item::Bed(bed)));
    window.click_any("What ground have I?");
    assert_eq!(window.harness.state().desk().chosen, Some(Item::Plot(plot)));
}
