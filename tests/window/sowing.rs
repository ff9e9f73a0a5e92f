//! What to sow: the shelf, the crop book, ways of planting, the order list and the drill.

use egui::accesskit::Role;
use egui::{Key, Modifiers};
use egui_kittest::kittest::Queryable as _;
use quillet::app::desk::Desk;
use quillet::app::files::Answer;
use quillet::layout::{Item, SeedAmount, Sowing};
use quillet::plan::OrderLine;

use super::window::Window;

fn desk(window: &Window) -> &Desk {
    window.harness.state().desk()
}

fn steps(window: &Window) -> usize {
    desk(window).history().labels().count()
}

/// The sample in a window so tall that all of a card can be reached.
fn tall() -> Window {
    let mut window = Window::sample();
    window.harness.set_size(egui::vec2(1440.0, 3200.0));
    window.harness.run_ok();
    window
}

/// Clicks the first of several buttons of that name.
fn click_first(window: &mut Window, label: &str) {
    let button = window.harness.get_all_by_role_and_label(Role::Button, label).next();
    button.unwrap().click();
    window.harness.run_ok();
}

fn line(window: &Window, crop: &str) -> OrderLine {
    let lines = &desk(window).plan().order.lines;
    lines.iter().find(|line| line.crop.0 == crop).unwrap().as_ref().clone()
}

/// The sample, with a lot of 400 seeds of the first bed's sweet corn on the shelf.
fn with_a_lot() -> Window {
    let mut window = tall();
    window.click_any("What do I sow?");
    click_first(&mut window, "Add a lot of seed");
    window.fill("Amount left", "400 seeds", Key::Enter);
    window
}

#[test]
fn a_lot_on_the_shelf_is_drawn_from_before_any_is_bought() {
    let mut window = tall();
    let before = line(&window, "sweet_corn");
    assert_eq!(before.to_buy.count, before.need.count);
    window.click_any("What do I sow?");
    click_first(&mut window, "Add a lot of seed");
    let lot = desk(&window).layout().lots[0].clone();
    assert_eq!(desk(&window).chosen, Some(Item::Lot(lot.id)));
    window.fill("Amount left", "400 seeds", Key::Enter);
    assert_eq!(desk(&window).layout().lots[0].amount, SeedAmount::Count(400));
    let after = line(&window, "sweet_corn");
    assert_eq!(after.need, before.need);
    assert_eq!(after.drawn_count(), 400);
    assert_eq!(after.to_buy.count, before.to_buy.count - 400);

    window.click("Remove lot");
    assert_eq!(line(&window, "sweet_corn"), before);
    window.press_with(Modifiers::COMMAND, Key::Z);
    assert_eq!(line(&window, "sweet_corn"), after);
}

#[test]
fn a_test_of_ones_own_shows_its_interval_and_a_weak_lot_a_heads_up() {
    let mut window = with_a_lot();
    window.fill("Germination", "34 of 40", Key::Enter);
    // Worked out by hand from Wilson's formula with z = 1.96: 0.8193 less and more 0.1101.
    assert!(window.sees_part("between 70.9 % and 92.9 %"));
    let lot = desk(&window).layout().lots[0].id;
    let about_lot = |window: &Window| {
        let plan = desk(window).plan();
        plan.heads_up.iter().any(|heads_up| heads_up.about == Item::Lot(lot))
    };
    assert!(!about_lot(&window));
    window.fill("Germination", "10 of 40", Key::Enter);
    assert!(about_lot(&window));
    assert!(window.sees_part("10 of 40 seeds"));
}

#[test]
fn what_cannot_be_seed_is_said_at_the_field_and_nothing_is_lost() {
    let mut window = with_a_lot();
    let before = steps(&window);
    for (label, typed, sentence) in [
        ("Amount left", "-2 oz", "less than nothing"),
        ("Amount left", "400", "may be a weight or a count"),
        ("Germination", "0 %", "write a percentage over 0"),
        ("Germination", "0.85", "write 85 %, or 1 % or more"),
        ("Germination", "120 %", "up to 100"),
        ("Germination", "41 of 40", "cannot come up"),
        ("Germination", "3 of 0", "one seed at least"),
    ] {
        window.fill(label, typed, Key::Enter);
        assert!(window.sees_part(sentence), "{typed}");
        assert_eq!(window.value(label), typed, "what was typed stays");
        assert_eq!(steps(&window), before, "{typed}");
    }
    assert_eq!(desk(&window).layout().lots[0].amount, SeedAmount::Count(400));

    window.press(Key::Escape);
    window.harness.get_by_label("What goes on each row?").click();
    window.harness.run_ok();
    window.press(Key::Escape);
    let germination = desk(&window).layout().beds[0].planting.clone();
    for typed in ["0", "101"] {
        window.fill("Germination", typed, Key::Enter);
        assert!(window.sees_part("write a percentage over 0"));
    }
    assert_eq!(desk(&window).layout().beds[0].planting, germination);
    assert_eq!(steps(&window), before);
}

#[test]
fn the_book_finds_by_any_name_and_shows_own_values_as_own() {
    let mut window = tall();
    window.press_with(Modifiers::COMMAND, Key::B);
    assert!(window.sees("Find a crop"));
    window.type_text("daucus");
    assert!(window.sees_part("Carrot"));
    assert!(!window.sees_part("Potato"));
    window.press(Key::Enter);
    assert!(window.sees_part("Daucus carota"));
    assert!(window.sees("1 crop"));
    window.fill("Find a crop", "sweet corn", Key::Enter);

    let own = |window: &Window| desk(window).plan().beds[0].stand.unwrap().in_row.to_inches();
    let of_catalogue = own(&window);
    window.fill("In the row, well watered", "7 in", Key::Enter);
    assert!((own(&window) - 7.0).abs() < 1e-9, "the bed follows the own value");
    assert!(window.sees("with values of yours over the catalogue's"));
    window.click("use the catalogue's");
    assert!((own(&window) - of_catalogue).abs() < 1e-9);
    assert!(!window.sees("with values of yours over the catalogue's"));
    window.press_with(Modifiers::COMMAND, Key::Z);
    assert!((own(&window) - 7.0).abs() < 1e-9, "undo works in the book");

    let before = steps(&window);
    window.fill("Seeds in an ounce", "0", Key::Enter);
    assert!(window.sees_part("write a number over zero"));
    assert_eq!(steps(&window), before);
    window.click("Close");
    assert!(window.sees("What ground have I?"));
}

#[test]
fn crops_and_cultivars_of_ones_own_are_kept_and_named_once() {
    let mut window = tall();
    window.press_with(Modifiers::COMMAND, Key::B);
    window.click("A crop of my own like it");
    let own = desk(&window).layout().own_crops[0].clone();
    assert!(!own.is_over_catalogue());
    assert!(window.sees_part("a crop of yours, based on"));
    window.fill("Name", "Corn from the neighbour", Key::Enter);
    assert_eq!(desk(&window).layout().own_crops[0].name, "Corn from the neighbour");
    window.fill("New cultivar", "Early Amber", Key::Enter);
    assert_eq!(desk(&window).layout().cultivars[0].name, "Early Amber");
    window.fill("Days to harvest", "72", Key::Enter);
    assert_eq!(desk(&window).layout().cultivars[0].values.days_to_harvest, Some(72));
    assert!(window.sees("use the crop's"));

    // A second cultivar of the name is refused, and both crop and first cultivar stay.
    let before = steps(&window);
    window.fill("New cultivar", "early amber", Key::Enter);
    assert!(window.sees_part("has a cultivar named"));
    assert_eq!(window.value("New cultivar"), "early amber", "what was typed stays");
    assert_eq!(steps(&window), before);
    assert_eq!(desk(&window).layout().cultivars.len(), 1);
    assert!(!desk(&window).said.as_ref().is_some_and(|said| said.wrong));
}

#[test]
fn a_name_that_is_taken_is_said_at_its_field() {
    let mut window = tall();
    window.press_with(Modifiers::COMMAND, Key::B);
    window.fill("New cultivar", "Early Amber", Key::Enter);
    window.fill("New cultivar", "Late White", Key::Enter);
    let before = steps(&window);
    // The page of Late White is open; the other's name is refused, and the page stays.
    window.fill("Cultivar", "Early Amber", Key::Enter);
    assert!(window.sees_part("has a cultivar named"));
    assert_eq!(window.value("Cultivar"), "Early Amber");
    assert!(!desk(&window).said.as_ref().is_some_and(|said| said.wrong));
    assert_eq!(steps(&window), before);
    window.fill("Cultivar", "Later White", Key::Enter);
    assert!(!window.sees_part("has a cultivar named"));
    assert_eq!(desk(&window).layout().cultivars[1].name, "Later White");

    window.click("The crop itself");
    window.click("A crop of my own like it");
    window.fill("Name", "Carrot", Key::Enter);
    assert!(window.sees_part("There is a crop named"));
    assert_eq!(window.value("Name"), "Carrot");
    window.fill("Name", "Corn from the neighbour", Key::Enter);
    assert_eq!(desk(&window).layout().own_crops[0].name, "Corn from the neighbour");
}

#[test]
fn values_that_cannot_be_are_said_beside_them_in_the_book() {
    let mut window = tall();
    window.press_with(Modifiers::COMMAND, Key::B);
    let before = steps(&window);
    for (label, typed, sentence) in [
        ("Germination", "0", "write a percentage over 0"),
        ("Germination", "101 %", "up to 100"),
        ("Seeds in an ounce", "0", "write a number over zero"),
        ("Good seeds a plant", "0.5", "one seed at least"),
        ("Ears harvested, no promise", "none", "write a number over zero"),
        ("Nitrogen for the season", "0 lb/acre", "is none"),
    ] {
        window.fill(label, typed, Key::Enter);
        assert!(window.sees_part(sentence), "{typed}");
        assert_eq!(window.value(label), typed, "what was typed stays");
        assert_eq!(steps(&window), before);
    }
    window.fill("Germination", "92", Key::Enter);
    let own = desk(&window).layout().own_crops[0].values;
    assert!((own.germination.unwrap().to_percent() - 92.0).abs() < 1e-9);
    window.fill("Ears harvested, no promise", "140 in 100 ft", Key::Enter);
    assert!(desk(&window).layout().own_crops[0].values.harvest.is_some());
    // What the table would buy stands beside what the bed needs.
    assert!(window.sees_part("never from such a table"));
    assert!(window.sees_part("The rows of Corn block, 440 row ft, need"));
    // A table that says more than the rows need is for sowing thickly, one that says less is not.
    window.fill("Good seeds a plant", "1", Key::Enter);
    assert!(window.sees_part("sowing thickly by hand"));
    window.fill("Good seeds a plant", "8", Key::Enter);
    assert!(!window.sees_part("sowing thickly by hand"));
    assert!(window.sees_part("at a wider spacing, or for seed that comes up better"));
}

#[test]
fn spare_seed_is_never_less_than_nothing() {
    let mut window = tall();
    window.click_any("What goes on each row?");
    let before = steps(&window);
    window.fill("Spare seed", "-5 %", Key::Enter);
    assert_eq!(window.value("Spare seed"), "-5 %");
    assert!(window.sees_part("“-5 %” is less than nothing"));
    assert_eq!(steps(&window), before);
    window.fill("Spare seed", "5 %", Key::Enter);
    assert_eq!(steps(&window), before + 1);
}

#[test]
fn known_cultivars_are_offered_and_free_words_stay() {
    let mut window = with_a_lot();
    window.fill("Cultivar", "Early Amber", Key::Enter);
    window.click_any("What rows fit?");
    assert_eq!(desk(&window).layout().beds[0].planting.as_ref().unwrap().cultivar, "");
    window.click("Known cultivars");
    window.type_text("amber");
    window.press(Key::Enter);
    let cultivar = |window: &Window| {
        desk(window).layout().beds[0]
            .planting
            .as_ref()
            .unwrap()
            .cultivar
            .clone()
    };
    assert_eq!(cultivar(&window), "Early Amber");
    assert_eq!(line(&window, "sweet_corn").drawn_count(), 400);
    window.fill("Cultivar", "From the neighbour", Key::Enter);
    assert_eq!(cultivar(&window), "From the neighbour");
}

#[test]
fn crops_are_found_by_what_else_they_are_called() {
    let mut window = tall();
    window.click_any("What rows fit?");
    let crop = |window: &Window| desk(window).layout().beds[0].planting.as_ref().unwrap().crop.0.clone();
    window.click("Crop Sweet corn");
    window.type_text("zucch");
    window.press(Key::Enter);
    assert_eq!(crop(&window), "squash_summer");
    window.click("Crop Squash, summer");
    window.type_text("daucus");
    window.press(Key::Enter);
    assert_eq!(crop(&window), "carrot");
    window.press_with(Modifiers::COMMAND, Key::K);
    window.type_text("courgette");
    window.press(Key::Enter);
    assert_eq!(crop(&window), "squash_summer");
}

#[test]
fn the_drill_is_the_same_at_the_next_start() {
    let mut window = tall();
    window.click_any("What goes on each row?");
    window.click_any("Setting the drill");
    window.harness.get_by_value("over a distance").click();
    window.harness.run_ok();
    window.click("by wheel turns");
    window.fill("Wheel round", "4 ft", Key::Enter);
    window.fill("Turns", "8", Key::Enter);
    let folder = window.folder.clone();
    drop(window);
    let mut window = Window::open(Some(super::window::sample()), folder);
    window.harness.set_size(egui::vec2(1440.0, 3200.0));
    window.harness.run_ok();
    window.click_any("What goes on each row?");
    window.click_any("Setting the drill");
    assert_eq!(window.value("Wheel round"), "4 ft");
    assert_eq!(window.value("Turns"), "8");
}

#[test]
fn each_way_of_planting_says_what_follows() {
    let mut window = tall();
    window.click_any("What goes on each row?");
    assert!(window.sees_part("plants before thinning"));
    let choose = |window: &mut Window, from: &str, to: &str| {
        window.harness.get_by_value(from).click();
        window.harness.run_ok();
        window.click(to);
    };
    choose(&mut window, "drilled and thinned", "raised in trays");
    assert!(matches!(
        desk(&window).layout().beds[0].planting.as_ref().unwrap().sowing,
        Some(Sowing::Raised(_))
    ));
    window.fill("Cells a tray", "128", Key::Enter);
    window.fill("In the tray", "3 weeks", Key::Enter);
    window.fill("Set out on", "2027-05-10", Key::Enter);
    // Three weeks before the tenth of May.
    assert!(window.sees_part("sow on 19 April 2027"));
    assert!(window.sees_part("trays"));
    window.fill("Losses", "100 %", Key::Enter);
    assert!(window.sees_part("from 0 to 99"));
    choose(&mut window, "raised in trays", "sown in hills");
    assert!(window.sees_part("hills"));
    let before = steps(&window);
    window.fill("Plants a hill", "9", Key::Enter);
    assert_eq!(steps(&window), before, "more plants than seeds in a hill");
    assert!(window.sees_part("more than the number of seeds"));
    click_first(&mut window, "use the crop's usual way");
    assert_eq!(desk(&window).layout().beds[0].planting.as_ref().unwrap().sowing, None);
}

#[test]
fn packets_cover_what_is_left_to_buy() {
    let mut window = tall();
    window.click_any("What do I sow?");
    let folded = window
        .harness
        .get_by_role_and_label(Role::DisclosureTriangle, "Sweet corn");
    folded.click();
    window.harness.run_ok();
    window.fill("Sold by the", "0 oz", Key::Enter);
    assert!(window.sees_part("more than nothing"));
    assert_eq!(steps(&window), 0);
    window.fill("Sold by the", "1 oz", Key::Enter);
    window.fill("Packet 1 costs", "3.50", Key::Enter);
    let order = line(&window, "sweet_corn");
    let packets = order.packets.unwrap();
    assert!(packets.amount.count >= order.to_buy.count);
    let number = packets.sizes[0].count as f64;
    assert!((packets.cost.unwrap() - 3.5 * number).abs() < 1e-9);
    window.click("Remove packet 1");
    assert!(desk(&window).layout().packets.is_empty());
}

#[test]
fn the_order_list_stands_in_the_ledgers_place_and_prints() {
    let mut window = with_a_lot();
    assert!(window.sees("Off the shelf"));
    assert!(window.sees_part("400 seeds"));
    window.click("One bed");
    assert!(!window.sees("Off the shelf"));
    window.press_with(Modifiers::COMMAND, Key::L);
    assert!(window.sees("Off the shelf"));
    click_first(&mut window, "Order list on paper…");
    window.until("the order's sheet", |window| window.sees("Sheet 1 of 1"));
    window.click("Close");
}

#[test]
fn the_order_list_is_saved_as_a_table() {
    let mut window = with_a_lot();
    let path = window.folder.path().join("order.csv");
    window.will_answer(Answer::Chosen(path.clone()));
    click_first(&mut window, "Order list as CSV…");
    window.harness.run_ok();
    let text = std::fs::read_to_string(&path).unwrap();
    let need = line(&window, "sweet_corn").need.count.to_string();
    assert!(
        text.lines()
            .any(|line| line.contains("Sweet corn") && line.contains(&need)),
        "{text}"
    );

    let path = window.folder.path().join("order.xlsx");
    window.will_answer(Answer::Chosen(path.clone()));
    click_first(&mut window, "Order list as spreadsheet…");
    window.harness.run_ok();
    assert!(!std::fs::read(&path).unwrap().is_empty());
}

#[test]
fn the_drill_is_tried_and_set_right() {
    let mut window = tall();
    window.click_any("What goes on each row?");
    window.click_any("Setting the drill");
    assert!(window.sees_part("Aim for"));
    // Corn every 6 in, two good seeds a plant, 75 % up: 2 ÷ 0.75 ÷ 0.5 ft is 5 1/3 a foot, 53 over ten feet.
    assert!(window.sees("Count 53 seeds from one spout"));
    window.fill("Counted", "26.6667", Key::Enter);
    assert!(window.sees_part("too thin: 2 times as much"));
    window.fill("Counted", "54", Key::Enter);
    assert!(window.sees_part("as near as a drill gets"));
    window.harness.get_by_value("over a distance").click();
    window.harness.run_ok();
    window.click("by wheel turns");
    // Ten turns of a wheel of 3 ft round are 30 ft, 160 seeds.
    assert!(window.sees("Count 160 seeds from one spout"));
    window.fill("Wheel round", "0", Key::Enter);
    assert!(window.sees_part("longer than nothing"));
    assert_eq!(steps(&window), 0, "a trial is no step");
    window.fill("Counted", "0", Key::Enter);
    assert!(window.sees_part("write a number over zero"));
}
