//! The crop book: another usual way, a crop of one's own like one with own values, a cultivar planted, and numbers as they
//! are typed.

use egui::accesskit::Role;
use egui::{Key, Modifiers};
use egui_kittest::kittest::Queryable as _;
use quillet::app::desk::Desk;
use quillet::catalog::PlantingMethod;
use quillet::layout::{Edit, Layout, OwnHarvest, OwnStart, OwnValues};
use quillet::quantity::Units;

use super::window::Window;

fn desk(window: &Window) -> &Desk {
    window.harness.state().desk()
}

fn sample() -> Layout {
    quillet::layout::store::load(&super::window::sample()).unwrap()
}

/// The crop book, open at the crop found by these words.
fn open_at(layout: &Layout, words: &str) -> Window {
    let mut window = Window::of(layout);
    window.harness.set_size(egui::vec2(1440.0, 3200.0));
    window.harness.run_ok();
    window.press_with(Modifiers::COMMAND, Key::B);
    window.fill("Find a crop", words, Key::Enter);
    window
}

fn choose(window: &mut Window, of: &str, choice: &str) {
    window.harness.get_by_role_and_label(Role::ComboBox, of).click();
    window.harness.run_ok();
    window.click(choice);
}

fn own_values(window: &Window) -> OwnValues {
    desk(window).layout().own_crops[0].values
}

#[test]
fn onions_from_sets_have_neither_the_weight_nor_the_buying_table_of_seed() {
    let mut window = open_at(&sample(), "onion, bulb, from seed");
    assert_eq!(window.value("Seeds in an ounce"), "8,500");
    assert!(window.sees("Buying tables say"));
    choose(&mut window, "Usual way", "sets");
    assert_eq!(own_values(&window).method, Some(PlantingMethod::Set));
    assert_eq!(window.value("One weighs"), "");
    assert!(window.sees_part("not known: its need is a count without a weight"));
    assert!(!window.sees("Buying tables say"));
    assert_eq!(window.value("Depth"), "");
    assert!(!window.sees("Federal standard of germination"));
    window.fill("One weighs", "0.2 oz", Key::Enter);
    assert!(
        window.sees_part("the catalogue's: none"),
        "a seed's weight is under none"
    );
    choose(&mut window, "Usual way", "sown and thinned");
    assert_eq!(
        window.value("Seeds in an ounce"),
        "8,500",
        "what a set weighed went with the sets"
    );
}

#[test]
fn a_crop_of_ones_own_like_it_starts_with_the_growers_values() {
    let mut window = open_at(&sample(), "onion, bulb, from seed");
    window.fill("Days to harvest", "95", Key::Enter);
    window.click("A crop of my own like it");
    let crops = &desk(&window).layout().own_crops;
    assert_eq!(crops.len(), 2);
    assert!(!crops[1].is_over_catalogue());
    assert!(matches!(&crops[1].start, OwnStart::Crop(base) if base.0 == "onion_seed"));
    assert_eq!(crops[1].values, crops[0].values);
    assert_eq!(window.value("Days to harvest"), "95 days");
}

#[test]
fn planting_a_cultivar_is_one_step() {
    let mut window = open_at(&sample(), "onion, bulb, from seed");
    window.fill("New cultivar", "Red Keeper", Key::Enter);
    let steps = |window: &Window| desk(window).history().labels().count();
    let before = (steps(&window), desk(&window).layout().beds[0].planting.clone());
    window.click("Plant it in…");
    window.click("Corn block");
    let planting = desk(&window).layout().beds[0].planting.clone().unwrap();
    assert_eq!(
        (planting.crop.0.as_str(), planting.cultivar.as_str()),
        ("onion_seed", "Red Keeper")
    );
    assert_eq!(steps(&window), before.0 + 1);
    window.press_with(Modifiers::COMMAND, Key::Z);
    assert_eq!(desk(&window).layout().beds[0].planting, before.1, "one step back");
}

#[test]
fn a_decimal_comma_is_no_thousands_comma() {
    let mut window = open_at(&sample(), "onion, bulb, from seed");
    window.fill("Good seeds a plant", "1,5", Key::Enter);
    assert_eq!(own_values(&window).seeds_per_plant, Some(1.5));

    let metric = sample().apply(&Edit::SetUnits(Units::Metric)).unwrap();
    let mut window = open_at(&metric, "basil");
    let shown = window.value("Seeds in a gram");
    assert!(!shown.contains(','), "{shown} could be read two ways");
    window.fill("Seeds in a gram", "1,250", Key::Enter);
    assert!(window.sees_part("write a number over zero"));
    assert!(desk(&window).layout().own_crops.is_empty());
    window.fill("Seeds in a gram", "1250", Key::Enter);
    assert_eq!(window.value("Seeds in a gram"), "1250");
    let one = own_values(&window).seed_weight.unwrap();
    assert!((one.to_grams() * 1250.0 - 1.0).abs() < 1e-9);
}

#[test]
fn a_crop_from_nothing_may_be_harvested_by_number() {
    let mut window = open_at(&sample(), "Ulluco");
    window.click("A crop that is not here…");
    choose(&mut window, "Usual way", "sown and thinned");
    window.click("Add it");
    window.fill("Harvest, no promise", "120 in 100 ft", Key::Enter);
    let Some(OwnHarvest::Number(number)) = own_values(&window).harvest else {
        panic!("it is counted");
    };
    assert!((number.to_per_100_feet() - 120.0).abs() < 1e-9);
    window.fill("Pieces harvested, no promise", "90 lb/100 ft", Key::Enter);
    assert!(matches!(own_values(&window).harvest, Some(OwnHarvest::Weight(_))));
}

#[test]
fn a_range_typed_for_a_spacing_of_ones_own_is_asked_for_as_one_length() {
    let mut window = Window::sample();
    window.harness.set_size(egui::vec2(1440.0, 2400.0));
    window.press_with(Modifiers::COMMAND, Key::B);
    window.fill("Between rows", "18 in to 3 ft", Key::Enter);
    assert!(window.sees_part("write 18 in or what lies between"));
    assert_eq!(window.value("Between rows"), "18 in to 3 ft", "what was typed stays");
    window.fill("Between rows", "3 ft", Key::Enter);
    assert!(!window.sees_part("is a range"));
}
