//! What the sowing card says to slips and to what is not known, and what the crop book plants where.

use egui::Key;
use egui::accesskit::Role;
use egui_kittest::kittest::Queryable as _;
use quillet::layout::{BedChange, Edit, Item, Sowing};

use super::window::Window;

fn tall() -> Window {
    let mut window = Window::sample();
    window.harness.set_size(egui::vec2(1440.0, 3200.0));
    window.harness.run_ok();
    window
}

/// The sample with a change to its first bed, in a window so tall that all of a card can be reached.
fn with(change: BedChange) -> Window {
    let layout = quillet::layout::store::load(&super::window::sample()).unwrap();
    let bed = layout.beds[0].id;
    let mut window = Window::of(&layout.apply(&Edit::Bed(bed, change)).unwrap());
    window.harness.set_size(egui::vec2(1440.0, 3200.0));
    window.harness.run_ok();
    window.click_any("What goes on each row?");
    window
}

#[test]
fn a_spare_below_nothing_is_refused_in_plain_words() {
    let mut window = tall();
    window.click_any("What goes on each row?");
    window.fill("Spare seed", "-10", Key::Enter);
    assert!(window.sees_part("“-10” is less than nothing"));
}

#[test]
fn dropped_seed_says_what_to_drop_and_where() {
    let mut window = with(BedChange::SetSowing(Some(Sowing::Dropped { seeds_per_place: 2 })));
    // 2 ÷ 0.75, the federal standard: 2.67 on average.
    assert!(window.sees_part("drop 2 or 3 seeds (2.67 on average) in each place"));
    window.click_any("Setting the drill");
    assert!(window.sees_part("in one place, a place every"));
    assert!(!window.sees_part("one every"));
}

#[test]
fn a_day_to_set_out_is_typed_as_growers_write_it() {
    let mut window = with(BedChange::SetSowing(Some(Sowing::Raised(
        quillet::layout::Raised::PLAIN,
    ))));
    assert!(window.sees_part("4 to 8 weeks as a rule"));
    window.fill("Set out on", "May 20", Key::Enter);
    assert_eq!(window.value("Set out on"), "20 May");
    window.fill("In the tray", "3 weeks", Key::Enter);
    assert!(window.sees_part("sow on 29 April 2027"));
}

#[test]
fn of_seed_of_which_nothing_is_known_only_good_ones_are_counted() {
    let window = with(BedChange::SetCrop(quillet::catalog::CropId("popcorn".to_owned())));
    assert!(window.sees_part("only good seeds are counted, so it takes more"));
    assert!(window.sees_part("(common practice, no source); cold, crust"));
}

#[test]
fn the_book_asks_in_which_bed_when_none_is_chosen() {
    let mut window = tall();
    let crop = |window: &Window| {
        let planting = window.harness.state().desk().layout().beds[0].planting.clone();
        planting.unwrap().crop.0
    };
    assert!(window.harness.state().desk().chosen.is_none());
    let before = crop(&window);
    window.press_with(egui::Modifiers::COMMAND, Key::B);
    window.fill("Find a crop", "carrot", Key::Enter);
    assert!(!window.sees("Plant it in Corn block"));
    window.click("Plant it in…");
    assert_eq!(crop(&window), before, "opening the list plants nothing");
    let beds = window.harness.get_all_by_role_and_label(Role::Button, "Corn block");
    beds.last().unwrap().click();
    window.harness.run_ok();
    assert_eq!(crop(&window), "carrot");
    let bed = window.harness.state().desk().layout().beds[0].id;
    assert_ne!(window.harness.state().desk().chosen, Some(Item::Bed(bed)));
}

#[test]
fn a_lot_that_is_dead_or_too_old_says_why_it_is_not_taken() {
    let mut window = tall();
    window.click_any("What do I sow?");
    let add = window
        .harness
        .get_all_by_role_and_label(Role::Button, "Add a lot of seed")
        .next();
    add.unwrap().click();
    window.harness.run_ok();
    window.fill("Amount left", "400 seeds", Key::Enter);
    window.fill("Year", "2012", Key::Enter);
    assert!(window.sees_part("it is older than its kind keeps"));
    window.fill("Germination", "0 of 40", Key::Enter);
    assert!(window.sees_part("nothing of it came up in the test"));
    window.fill("Year", "2031", Key::Enter);
    assert!(window.sees_part("its year lies after the season"));
}

#[test]
fn a_value_of_ones_own_stands_beside_the_one_under_it() {
    let mut window = tall();
    window.press_with(egui::Modifiers::COMMAND, Key::B);
    window.fill("Find a crop", "bean, snap, bush", Key::Enter);
    window.fill("Seeds in an ounce", "150", Key::Enter);
    // Texas Agricultural Extension Service, Vegetable Grower's Handbook, Table 2.
    assert!(window.sees_part("the catalogue's: 112\nTexas"));
    window.fill("New cultivar", "Early Amber", Key::Enter);
    window.fill("Seeds in an ounce", "140", Key::Enter);
    assert!(window.sees_part("the crop's: 150"));
    window.fill("Germination", "92", Key::Enter);
    assert!(window.sees_part("the crop's: none"));
}

#[test]
fn a_cultivar_that_only_a_bed_names_is_found_and_not_dropped_without_a_word() {
    let mut window = with(BedChange::SetCultivar("Early Amber".to_owned()));
    window.press_with(egui::Modifiers::COMMAND, Key::B);
    window.fill("Find a crop", "amber", Key::Enter);
    assert!(window.sees("1 crop"));
    window.click("Early Amber");
    let own = window.harness.state().desk().layout().cultivars.clone();
    assert_eq!(own[0].name, "Early Amber", "it may have values of its own");
    window.click("Close");
    window.click_any("What rows fit?");
    window.click("Crop Sweet corn");
    window.type_text("carrot");
    window.press(Key::Enter);
    assert!(window.sees_part("“Early Amber” is a cultivar of Sweet corn"));
}

#[test]
fn packets_say_why_they_were_chosen_and_what_is_left_over() {
    let mut window = tall();
    window.click_any("What do I sow?");
    let folded = window
        .harness
        .get_by_role_and_label(Role::DisclosureTriangle, "Sweet corn");
    folded.click();
    window.harness.run_ok();
    window.fill("Sold by the", "1000 seeds", Key::Enter);
    assert!(window.sees("one costs"));
    assert!(window.sees_part("Fewest left over: "));
    window.fill("Packet 1 costs", "3.50", Key::Enter);
    assert!(window.sees_part("Cheapest: "));
    let mut lines = window.harness.state().desk().plan().order.lines.iter();
    let line = lines.find(|line| line.crop.0 == "sweet_corn").unwrap();
    let over = line.packets.as_ref().unwrap().amount.count - line.to_buy.count;
    let over = quillet::quantity::count(over);
    assert!(window.sees_part(&format!("{over} seeds left over")), "{over}");
}

#[test]
fn other_names_of_the_kitchen_find_their_crops() {
    for (typed, found) in [
        ("haricot vert", "Bean, snap, bush"),
        ("spud", "Potato"),
        ("mangold", "Swiss chard"),
    ] {
        let book = quillet::plan::CropBook::default();
        let names: Vec<_> = book.find(typed).iter().map(|crop| crop.name.clone()).collect();
        assert!(names.iter().any(|name| name == found), "{typed}: {names:?}");
    }
}
