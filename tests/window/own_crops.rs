//! A crop from nothing, made in the crop book and planted; the day of a test; packets for each form of a cultivar.

use egui::accesskit::Role;
use egui::{Key, Modifiers};
use egui_kittest::kittest::Queryable as _;
use jiff::civil::date;
use quillet::app::desk::Desk;
use quillet::catalog::{CropId, PlantingMethod};
use quillet::layout::{BedChange, Edit, Form, Layout, LotGermination, OwnStart, Sowing};
use quillet::quantity::Length;

use super::window::Window;

fn desk(window: &Window) -> &Desk {
    window.harness.state().desk()
}

fn tall(layout: &Layout) -> Window {
    let mut window = Window::of(layout);
    window.harness.set_size(egui::vec2(1440.0, 3200.0));
    window.harness.run_ok();
    window
}

fn sample() -> Layout {
    quillet::layout::store::load(&super::window::sample()).unwrap()
}

/// Picks one of a few choices that drop down.
fn choose(window: &mut Window, of: &str, choice: &str) {
    window.harness.get_by_role_and_label(Role::ComboBox, of).click();
    window.harness.run_ok();
    window.click(choice);
}

#[test]
fn a_crop_that_the_book_has_not_is_made_planted_and_asked_for_what_it_lacks() {
    let mut window = tall(&sample());
    window.click_any("What do I sow?");
    window.press_with(Modifiers::COMMAND, Key::B);
    window.type_text("Ulluco");
    assert!(window.sees("Nothing has that in its name."));
    window.click("A crop that is not here…");
    assert_eq!(window.value("Name"), "Ulluco", "what was looked for is its name");
    assert!(window.sees("say how it is put in the ground"));
    window.click("Add it");
    assert!(desk(&window).layout().own_crops.is_empty(), "its way is missing");
    choose(&mut window, "Usual way", "sown and thinned");
    window.click("Add it");
    let own = desk(&window).layout().own_crops[0].clone();
    assert!(matches!(own.start, OwnStart::Blank(_)));
    assert_eq!(own.values.method, Some(PlantingMethod::Drilled));
    assert_eq!(window.value("Between rows"), "");
    assert!(window.sees_part("not known: its need is a count without a weight"));
    window.fill("Plant family", "Basellaceae", Key::Enter);
    let own = &desk(&window).layout().own_crops[0];
    assert!(matches!(&own.start, OwnStart::Blank(kind) if kind.family == "Basellaceae"));
    let id = own.id.clone();

    window.click("Plant it in…");
    window.click("Corn block");
    assert!(window.sees_part("Nothing for Corn block is in this list. The crop book has no in-row spacing of Ulluco"));
    let bed = desk(&window).layout().beds[0].clone();
    assert_eq!(bed.planting.as_ref().unwrap().crop, id);
    window.click_any("What rows fit?");
    let listed = window.harness.get_all_by_label("Corn block").next();
    listed.unwrap().click();
    window.harness.run_ok();
    assert_eq!(window.value("In the row"), "");
    assert!(window.sees_part("so no plant can be counted"));
    window.fill("In the row", "8 in", Key::Enter);
    let stand = desk(&window).plan().beds[0].stand.unwrap();
    assert!((stand.in_row.to_inches() - 8.0).abs() < 1e-9);
    window.click_any("Setting the drill");
    assert!(window.sees_part("so give the germination first"));
    window.click_any("What do I sow?");
    assert!(window.sees("at least 660 seeds"));
    assert!(!window.sees_part("Nothing for Corn block"));
}

#[test]
fn a_name_that_is_taken_leaves_the_new_crop_as_it_was_typed() {
    let mut window = tall(&sample());
    window.press_with(Modifiers::COMMAND, Key::B);
    window.type_text("carrot");
    window.click("A crop that is not here…");
    assert_eq!(window.value("Name"), "", "carrots are there");
    window.harness.get_by_label("Name").click();
    window.harness.run_ok();
    window.type_text("carrot");
    choose(&mut window, "Usual way", "sets");
    window.click("Add it");
    assert!(window.sees_part("There is a crop named"));
    assert_eq!(window.value("Name"), "carrot");
    window.click("Leave it");
    assert!(desk(&window).layout().own_crops.is_empty());
    assert!(!window.sees("Add it"));
}

#[test]
fn the_day_of_a_test_is_typed_with_it_or_below_it() {
    let mut window = tall(&sample());
    window.click_any("What do I sow?");
    let add = window
        .harness
        .get_all_by_role_and_label(Role::Button, "Add a lot of seed")
        .next();
    add.unwrap().click();
    window.harness.run_ok();
    window.fill("Amount left", "1/2 oz", Key::Enter);
    window.fill("Germination", "38 of 40, 12 February", Key::Enter);
    let on = |window: &Window| match desk(window).layout().lots[0].germination {
        LotGermination::OwnTest {
            came_up: 38,
            of: 40,
            on,
        } => on,
        _ => None,
    };
    assert_eq!(on(&window), Some(date(2027, 2, 12)));
    assert_eq!(window.value("Germination"), "38 of 40");
    assert_eq!(window.value("Tested on"), "12 February 2027");
    assert!(desk(&window).plan().heads_up.is_empty());
    window.fill("Tested on", "12 February 2026", Key::Enter);
    assert_eq!(on(&window), Some(date(2026, 2, 12)));
    assert!(window.sees_part("An old test"));
    assert_eq!(desk(&window).plan().heads_up.len(), 1);
    window.fill("Tested on", "30 February", Key::Enter);
    assert!(window.sees_part("no day of the calendar"));
    assert_eq!(on(&window), Some(date(2026, 2, 12)), "what cannot be is not taken");
    window.click_any("Tested on");
    window.press_with(Modifiers::COMMAND, Key::A);
    window.press(Key::Backspace);
    window.press(Key::Enter);
    assert_eq!(on(&window), None);
    window.click("The whole shelf");
    assert!(window.sees_part("95 % up"));
}

#[test]
fn seed_keeps_as_long_as_the_grower_says() {
    let mut window = tall(&sample());
    window.press_with(Modifiers::COMMAND, Key::B);
    window.fill("Find a crop", "sweet corn", Key::Enter);
    let label = "Seed keeps, cool and dry";
    assert_eq!(window.value(label), "2 years");
    window.fill(label, "0", Key::Enter);
    assert!(window.sees_part("from 1 to 50"));
    window.fill(label, "5 years", Key::Enter);
    let own = desk(&window).layout().own_crops[0].values;
    assert_eq!(own.seed_keeps_years, Some(5));
}

#[test]
fn sets_have_packets_of_their_own_beside_those_of_seed() {
    let layout = sample();
    let beds: Vec<_> = layout.beds.iter().map(|bed| bed.id).collect();
    let onion = || BedChange::SetCrop(CropId("onion_seed".to_owned()));
    let changes = [
        (beds[1], onion()),
        (beds[2], onion()),
        (beds[2], BedChange::SetInRow(Some(Length::inches(4.0)))),
        (beds[2], BedChange::SetSowing(Some(Sowing::Pieces { each: None }))),
    ];
    let layout = changes.into_iter().fold(layout, |layout, (bed, change)| {
        layout.apply(&Edit::Bed(bed, change)).unwrap()
    });
    let mut window = tall(&layout);
    window.click_any("What do I sow?");
    for (name, typed) in [("seeds", "250 seeds"), ("pieces", "100 sets")] {
        let title = format!("Onion, bulb, from seed, as {name}");
        let fold = |window: &mut Window| {
            let folded = window.harness.get_by_role_and_label(Role::DisclosureTriangle, &title);
            folded.click();
            window.harness.run_ok();
        };
        fold(&mut window);
        window.fill("Sold by the", typed, Key::Enter);
        fold(&mut window);
    }
    let lists = &desk(&window).layout().packets;
    let forms: Vec<Option<Form>> = lists.iter().map(|list| list.form).collect();
    assert_eq!(forms, [None, Some(Form::Pieces)]);
    let lines = &desk(&window).plan().order.lines;
    assert!(
        lines
            .iter()
            .filter(|line| line.crop.0 == "onion_seed")
            .all(|line| line.packets.is_some())
    );
}
