//! The fertilizer shed: own materials by their label, bags and prices, and mixing for a bed.

use egui::accesskit::Role;
use egui::{Key, Modifiers};
use egui_kittest::kittest::{NodeT as _, Queryable as _};
use quillet::app::desk::Desk;
use quillet::catalog::MaterialId;
use quillet::layout::{Label, Layout, NutrientRate, Placement, Recommendation, store};
use quillet::plan::feeding::ShoppingLine;
use quillet::quantity::MassPerArea;

use super::window::{Window, sample};

fn desk(window: &Window) -> &Desk {
    window.harness.state().desk()
}

fn steps(window: &Window) -> usize {
    desk(window).history().labels().count()
}

/// The sample with its shed empty and open, in a window so tall that all of a page can be reached.
fn shed() -> Window {
    let mut layout = store::load(&sample()).unwrap();
    layout.shed.clear();
    let mut window = Window::of(&layout);
    window.harness.set_size(egui::vec2(1440.0, 3200.0));
    window.harness.run_ok();
    window.press_with(Modifiers::COMMAND, Key::M);
    window
}

/// Opens the first material that the words find.
fn open(window: &mut Window, words: &str) {
    window.fill("Find a material", words, Key::Enter);
}

fn label(window: &Window, material: &str) -> Label {
    let kept = desk(window).layout().shed_material(&MaterialId(material.to_owned()));
    kept.map_or_else(Label::default, |kept| kept.label.clone())
}

fn bought(window: &Window, material: &str) -> ShoppingLine {
    let lines = &desk(window).plan().shopping.lines;
    lines.iter().find(|line| line.material.0 == material).unwrap().clone()
}

/// A 15-0-0 of the grower's own, in bags of 50 lb at 6.
fn with_blue_pellets() -> Window {
    let mut window = shed();
    window.click("New material by its label…");
    window.fill("Name", "Blue pellets", Key::Tab);
    window.fill("Analysis", "15-0-0", Key::Tab);
    window.fill("A bag holds", "50 lb", Key::Tab);
    window.fill("A bag costs", "6", Key::Tab);
    window.click("Put it in the shed");
    window
}

#[test]
fn a_material_by_its_label_goes_into_the_shed_from_field_to_field() {
    let mut window = shed();
    window.click("New material by its label…");
    // The name has the keys; Tab goes through the label.
    window.type_text("Garden mix");
    for text in ["10-10-10", "50 lb bag", "$24", "2 bags"] {
        window.press(Key::Tab);
        window.type_text(text);
    }
    window.press(Key::Tab);
    window.click("Put it in the shed");
    let label = label(&window, "own_garden_mix");
    assert_eq!(label.name, "Garden mix");
    assert_eq!(label.analysis.unwrap().label(), "10-10-10");
    assert!((label.bag.unwrap().to_pounds() - 50.0).abs() < 1e-9);
    assert_eq!(label.price, Some(24.0));
    assert!((label.at_hand.unwrap().to_pounds() - 100.0).abs() < 1e-9);
    assert!(window.sees("a material of yours, by its label"));
    assert!(window.sees("0.48 a lb"), "24 over 50 lb");
    assert_eq!(steps(&window), 1);
}

#[test]
fn an_analysis_over_a_hundred_is_refused_at_the_field_and_stays() {
    let mut window = shed();
    window.click("New material by its label…");
    window.fill("Name", "Too good", Key::Tab);
    window.fill("Analysis", "60-30-20", Key::Enter);
    assert!(window.sees_part("110 %, more than the whole"));
    assert_eq!(window.value("Analysis"), "60-30-20");
    assert!(window.sees("It needs a name and an analysis first."));
    window.fill("Name", "Urea, granular", Key::Enter);
    assert!(window.sees_part("There is a material named"));
    assert_eq!(steps(&window), 0);

    open(&mut window, "46-0-0");
    for (field, typed, sentence) in [
        ("Analysis", "46-60-0", "more than the whole"),
        ("Analysis", "46", "three numbers"),
        ("A bag holds", "0 lb", "more than nothing"),
        ("A bag costs", "cheap", "write a price"),
        ("At hand", "2 bags", "not known what a bag holds"),
        ("At hand", "-2 lb", "less than nothing"),
        ("Free in the first season", "120", "from 0 to 100"),
        ("A level cup weighs", "0", "more than nothing"),
    ] {
        window.fill(field, typed, Key::Enter);
        assert!(window.sees_part(sentence), "{field}: {typed}");
        assert_eq!(window.value(field), typed, "what was typed stays");
    }
    assert_eq!(steps(&window), 0);
}

#[test]
fn bags_and_prices_reach_what_is_bought() {
    let mut window = shed();
    let before = bought(&window, "sodium_nitrate_15");
    assert_eq!((before.bags, before.cost), (None, None));
    open(&mut window, "sodium nitrate 15");
    window.fill("A bag holds", "5 lb", Key::Tab);
    window.fill("A bag costs", "3.50", Key::Tab);
    window.fill("At hand", "1 bag", Key::Enter);
    let after = bought(&window, "sodium_nitrate_15");
    let bags = ((before.need.to_pounds() - 5.0) / 5.0).ceil();
    assert_eq!(after.bags, Some(bags as u64));
    assert!((after.cost.unwrap() - 3.5 * bags).abs() < 1e-9);
    assert!(window.sees_part("The dressings take"));
}

#[test]
fn own_values_go_over_the_catalogues_and_are_given_back() {
    let mut window = shed();
    open(&mut window, "46-0-0");
    assert!(window.sees_part("Urea, granular"));
    window.fill("Analysis", "45-0-0", Key::Enter);
    assert_eq!(label(&window, "urea").analysis.unwrap().label(), "45-0-0");
    assert!(window.sees("in the shed, with what you know of it"));
    window.click("use the catalogue's");
    assert_eq!(label(&window, "urea"), Label::default());
    assert!(window.sees("in the shed"));
    window.click("Take it out of the shed");
    assert!(desk(&window).layout().shed.is_empty());
    window.press_with(Modifiers::COMMAND, Key::Z);
    assert_eq!(desk(&window).layout().shed.len(), 1, "undo works in the shed");
}

#[test]
fn the_finder_leads_into_the_shed() {
    for (typed, seen) in [
        ("46-0-0", "Urea, granular"),
        ("fertilizer shed", "Fertilizer shed"),
        ("mix fert", "Mix for Corn block"),
        ("bags", "Fertilizer shed"),
    ] {
        let mut window = Window::sample();
        window.press_with(Modifiers::COMMAND, Key::K);
        window.type_text(typed);
        window.press(Key::Enter);
        assert!(window.sees("Find a material"), "{typed}");
        assert!(window.sees_part(seen), "{typed}");
        window.click("Close");
        assert!(window.sees("What ground have I?"));
    }
}

#[test]
fn a_mix_of_ones_own_material_is_laid_down_and_holds_it_in_the_shed() {
    let mut window = with_blue_pellets();
    window.click("Mix with it for a bed");
    window.fill("At least of nitrogen", "40 lb/acre", Key::Enter);
    assert!(window.sees("The cheapest mix by weight"));
    let before = desk(&window).layout().beds[0].dressings.len();
    window.click("Lay it down before planting, broadcast");
    let bed = desk(&window).layout().beds[0].clone();
    assert_eq!(bed.dressings.len(), before + 1);
    assert_eq!(bed.dressings[before].material.0, "own_blue_pellets");
    assert!(!window.sees("Find a material"), "the bed is shown");
    let plan = &desk(&window).plan().beds[0];
    let brings = plan.dressings[before].rate() * 0.15;
    assert!((brings.to_pounds_per_acre() - 40.0).abs() < 1e-6);

    window.press_with(Modifiers::COMMAND, Key::M);
    assert!(window.sees_part("cannot be removed while a dressing is of it"));
    let remove = window.harness.get_by_role_and_label(Role::Button, "Remove material");
    assert!(remove.accesskit_node().is_disabled());
}

#[test]
fn a_mix_that_cannot_be_met_names_the_limit_and_shows_the_two_nearest() {
    let mut window = shed();
    open(&mut window, "mixed 10-10-10");
    window.click("Put it in the shed");
    window.click("Mix with it for a bed");
    window.fill("At least of nitrogen", "40 lb/acre", Key::Enter);
    assert!(window.sees("The lightest mix"), "no price is known");
    assert!(window.sees_part("Not the cheapest"));
    assert!(window.sees_part("phosphate: 40 lb/acre, of which none is wanted"));
    window.fill("No more than of phosphate", "10 lb/acre", Key::Enter);
    assert!(window.sees_part("No mix of these keeps to every limit"));
    assert!(window.sees_part("the most of phosphate"));
    assert!(window.sees_part("Comes nearest to what is wanted"));
    assert!(window.sees_part("Goes over nothing"));
    window.fill("No more than of phosphate", "no limit", Key::Enter);
    assert!(window.sees("The lightest mix"));

    window.fill("No more than of nitrogen", "30 lb/acre", Key::Enter);
    assert!(window.sees_part("is below the 40 lb/acre wanted"));
    window.click_any("Only what is at hand");
    assert!(window.sees_part("what is at hand of Mixed granular 10-10-10"));
    assert_eq!(steps(&window), 1, "asking is no step");
}

#[test]
fn organic_rules_leave_out_what_they_do_not_allow() {
    let mut window = with_blue_pellets();
    open(&mut window, "46-0-0");
    window.click("Put it in the shed");
    window.click_any("Keep within organic rules; the certifier decides");
    assert!(desk(&window).layout().organic);
    window.click("Mix for a bed");
    let urea = window.harness.get_by_label_contains("Urea, granular ·");
    assert!(urea.accesskit_node().is_disabled());
    assert!(window.sees_part("205.602(h)"));
    assert_eq!(steps(&window), 3);
}

#[test]
fn what_was_asked_of_a_mix_is_there_again_when_the_shed_is() {
    let mut window = with_blue_pellets();
    window.click("Mix with it for a bed");
    window.fill("At least of nitrogen", "40 lb/acre", Key::Enter);
    for leaves_by_key in [false, true] {
        if leaves_by_key {
            // The first leaves the field that has the keys.
            window.press(Key::Escape);
            window.press(Key::Escape);
        } else {
            window.click("Close");
        }
        assert!(!window.sees("Find a material"));
        window.press_with(Modifiers::COMMAND, Key::K);
        window.type_text("mix fert");
        window.press(Key::Enter);
        assert_eq!(window.value("At least of nitrogen"), "40 lb/acre");
    }
    assert!(window.sees("The cheapest mix by weight"));
}

/// A window with a mix for its first bed asked for.
fn mixing(layout: &Layout) -> Window {
    let mut window = Window::of(layout);
    window.harness.set_size(egui::vec2(1440.0, 3200.0));
    window.harness.run_ok();
    window.press_with(Modifiers::COMMAND, Key::K);
    window.type_text("mix fert");
    window.press(Key::Enter);
    window
}

#[test]
fn a_laboratorys_nothing_is_a_limit_and_a_published_rate_a_guide() {
    let mut layout = store::load(&sample()).unwrap();
    layout.shed.clear();
    let bed = std::sync::Arc::make_mut(&mut layout.beds[0]);
    bed.feeding.laboratory = Some(Recommendation {
        n: Some(NutrientRate::PerArea(MassPerArea::pounds_per_acre(80.0))),
        p2o5: Some(NutrientRate::PerArea(MassPerArea::ZERO)),
        ..Recommendation::default()
    });
    let window = mixing(&layout);
    assert_eq!(window.value("No more than of phosphate"), "0 lb/acre");
    assert_eq!(window.value("No more than of potash"), "no limit", "nobody says");
    assert!(!window.sees_part("a guide only"));

    let bed = std::sync::Arc::make_mut(&mut layout.beds[0]);
    bed.feeding.laboratory = None;
    bed.planting.as_mut().unwrap().crop = quillet::catalog::CropId("tomato".to_owned());
    let window = mixing(&layout);
    assert!(window.sees_part("a guide only"));
}

#[test]
fn a_liquid_is_weighed_by_the_gallon() {
    let mut window = shed();
    open(&mut window, "polyphosphate 10-34-0");
    window.fill("A gallon weighs", "9.6", Key::Enter);
    let liquids = desk(&window).layout().shed.clone();
    // Sixteen cups to the gallon.
    let cup = liquids[0].label.cup.unwrap();
    assert!((cup.to_pounds() - 0.6).abs() < 1e-9);
    assert!(!window.sees("A level cup weighs"));
}

#[test]
fn through_the_tape_goes_only_what_dissolves() {
    let mut window = with_blue_pellets();
    open(&mut window, "46-0-0");
    window.click("Put it in the shed");
    window.click("Mix for a bed");
    window.fill("At least of nitrogen", "40 lb/acre", Key::Enter);
    window.harness.get_by_value("before planting, broadcast").click();
    window.harness.run_ok();
    window.click("through the tape");
    assert!(window.sees_part("Left out, as it is not known to dissolve or would clog the tape: Blue pellets"));
    window.click("Lay it down through the tape");
    let dressing = desk(&window).layout().beds[0].dressings.last().unwrap().clone();
    assert_eq!(dressing.material.0, "urea");
    assert!(matches!(dressing.placement, Placement::Injected(injecting) if injecting.times == 1));
    let plan = &desk(&window).plan().beds[0];
    let brings = plan.dressings.last().unwrap().rate() * 0.46;
    assert!((brings.to_pounds_per_acre() - 40.0).abs() < 1e-6);
}

#[test]
fn what_was_looked_for_among_the_materials_hides_nothing_that_is_ticked_for_a_mix() {
    let mut window = with_blue_pellets();
    open(&mut window, "46-0-0");
    window.click("Mix for a bed");
    assert!(window.sees("Blue pellets · 15-0-0"));
    assert_eq!(window.value("Find a material"), "");
    window.fill("Find a material", "urea", Key::Enter);
    assert!(!window.sees("Blue pellets · 15-0-0"));
    window.click("Materials");
    assert_eq!(window.value("Find a material"), "46-0-0");
}
