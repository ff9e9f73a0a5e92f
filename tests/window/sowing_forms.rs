//! Sets, hills, trays and the drill on the card of a bed, and the words that amounts and prices are typed in.

use std::rc::Rc;

use egui::accesskit::Role;
use egui::{Key, Modifiers};
use egui_kittest::kittest::Queryable as _;
use quillet::app::desk::Desk;
use quillet::catalog::{Catalog, CropId};
use quillet::layout::{
    BedChange, Edit, Layout, LotContents, LotGermination, Packet, Raised, SeedAmount, SeedEdit, Sowing,
};
use quillet::plan::Things;
use quillet::quantity::{Fraction, Length, Mass};

use super::window::Window;

fn desk(window: &Window) -> &Desk {
    window.harness.state().desk()
}

fn part(value: f64) -> Fraction {
    Fraction::new(value).unwrap()
}

fn sample() -> Layout {
    quillet::layout::store::load(&super::window::sample()).unwrap()
}

/// The sample with changes to its first bed, in a window so tall that all of a card can be reached.
fn changed(changes: impl IntoIterator<Item = BedChange>) -> Window {
    let layout = sample();
    let bed = layout.beds[0].id;
    let change = |layout: Layout, change| layout.apply(&Edit::Bed(bed, change)).unwrap();
    open(&changes.into_iter().fold(layout, change))
}

fn open(layout: &Layout) -> Window {
    let folder = Rc::new(tempfile::tempdir().unwrap());
    let path = folder.path().join("layout.ron");
    std::fs::write(&path, quillet::layout::file::write(layout)).unwrap();
    let mut window = Window::open(Some(path), folder);
    window.harness.set_size(egui::vec2(1440.0, 3200.0));
    window.harness.run_ok();
    window
}

fn of(crop: &str) -> BedChange {
    BedChange::SetCrop(CropId(crop.to_owned()))
}

fn with_lot(layout: &Layout, crop: &str, year: i16, amount: u64, tag: f64) -> Layout {
    let contents = LotContents {
        crop: CropId(crop.to_owned()),
        cultivar: String::new(),
        form: None,
        year,
        amount: SeedAmount::Count(amount),
        germination: LotGermination::Tag(part(tag)),
    };
    layout.apply(&Edit::Seed(SeedEdit::AddLot(contents))).unwrap()
}

#[test]
fn potatoes_weigh_what_their_pieces_weigh() {
    let each = Some(Mass::ounces(2.0));
    let mut window = changed([of("potato"), BedChange::SetSowing(Some(Sowing::Pieces { each }))]);
    window.click_any("What goes on each row?");
    let pieces = desk(&window).plan().beds[0].totals.set_out;
    let pounds = pieces as f64 * 2.0 / 16.0;
    assert!(
        window.sees_part(&format!("{pieces} seed pieces, ")),
        "counted and weighed"
    );
    let weight = Mass::pounds(pounds).show_seed(quillet::quantity::Units::Customary);
    assert!(window.sees_part(&format!("seed pieces, {weight}")));
    assert!(!window.sees_part("0.00 oz"));
    let mut plants = changed([of("tomato"), BedChange::SetSowing(Some(Sowing::Plants))]);
    plants.click_any("What goes on each row?");
    let set_out = desk(&plants).plan().beds[0].totals.set_out;
    assert!(plants.sees(&format!("{set_out} plants")), "plants are not weighed");
}

#[test]
fn trays_go_by_the_lot_that_is_sown() {
    let raised = Raised {
        seeds_per_cell: 2,
        ..Raised::PLAIN
    };
    let layout = sample();
    let bed = layout.beds[0].id;
    let layout = [
        of("tomato"),
        BedChange::SetSowing(Some(Sowing::Raised(raised))),
        BedChange::SetGermination(Some(part(0.8))),
    ]
    .into_iter()
    .fold(layout, |layout, change| layout.apply(&Edit::Bed(bed, change)).unwrap());
    let cells = |window: &Window| {
        let line = desk(window).plan().order.line_of(bed).unwrap().clone();
        line.trays[0].cells
    };
    let bought = open(&layout);
    let mut window = open(&with_lot(&layout, "tomato", 2022, 100_000, 0.5));
    window.click_any("What goes on each row?");
    assert!(cells(&window) > cells(&bought));
    assert!(window.sees_part(&format!("{} cells, {} seeds", cells(&window), 2 * cells(&window))));
    assert!(window.sees("seed of 2022"));
    // One day, in one field: what is typed there is the day the bed is planted.
    window.fill("In the tray", "6 weeks", Key::Enter);
    window.fill("Set out on", "2027-05-10", Key::Enter);
    let planting = desk(&window).layout().bed(bed).unwrap().planting.clone().unwrap();
    assert_eq!(planting.planted, Some(jiff::civil::date(2027, 5, 10)));
    assert!(window.sees_part("sow on 29 March 2027"));
    window.harness.get_by_label("Set out on").click();
    window.harness.run_ok();
    window.press_with(Modifiers::COMMAND, Key::A);
    window.press(Key::Delete);
    window.press(Key::Enter);
    let planting = desk(&window).layout().bed(bed).unwrap().planting.clone().unwrap();
    assert_eq!(planting.planted, None);
    assert!(!window.sees_part("29 March 2027"));
}

#[test]
fn hills_say_what_to_drop_and_how_many_stay_empty() {
    let hills = Sowing::Hills {
        seeds_per_hill: 2,
        plants_per_hill: 2,
    };
    let mut window = changed([
        of("squash_winter"),
        BedChange::SetSowing(Some(hills)),
        BedChange::SetGermination(Some(part(0.5))),
    ]);
    window.click_any("What goes on each row?");
    assert!(window.sees_part("times the 2 plants of a hill"));
    // Two good seeds at a half up are 4 in each hill; 0.5 to the fourth is a sixteenth.
    let plants = desk(&window).plan().beds[0].totals.plants;
    let empty = (plants as f64 / 2.0 / 16.0).round();
    assert!(window.sees_part("drop 4 seeds in each hill"));
    assert!(window.sees_part(&format!("about {empty} hill")));
    window.fill("Good seeds", "3", Key::Enter);
    assert!(window.sees_part("drop 6 seeds in each hill"));
}

#[test]
fn the_drill_is_set_for_the_seed_in_its_hopper() {
    let layout = sample();
    let bed = layout.beds[0].id;
    let layout = [
        BedChange::SetInRow(Some(Length::inches(6.0))),
        BedChange::SetSowing(Some(Sowing::Seed { seeds_per_plant: 2.0 })),
        BedChange::SetGermination(Some(part(0.8))),
    ]
    .into_iter()
    .fold(layout, |layout, change| layout.apply(&Edit::Bed(bed, change)).unwrap());
    let weak = with_lot(&layout, "sweet_corn", 2022, 100, 0.5);
    let mut window = open(&with_lot(&weak, "sweet_corn", 2024, 100, 0.9));
    window.click_any("What goes on each row?");
    window.click_any("Setting the drill");
    // The lot that is used up first: 2 ÷ 0.9 ÷ 0.5 ft is 4.4 a foot, the weak one 8, seed to buy 5.
    assert!(window.sees("Aim for 4.4 seeds a foot"));
    let choose = |window: &mut Window, from: &str, to: &str| {
        window.harness.get_by_value(from).click();
        window.harness.run_ok();
        window.click(to);
    };
    let (first, second) = ("2024 · 100 seeds · 90 % up", "2022 · 100 seeds · 50 % up");
    choose(&mut window, first, second);
    assert!(window.sees("Aim for 8 seeds a foot"));
    choose(&mut window, second, "seed to buy");
    assert!(window.sees("Aim for 5 seeds a foot"));
}

/// Every word that the program uses for what is counted, of one and of many, and both ways.
#[test]
fn amounts_are_read_in_every_word_that_is_offered() {
    let mut window = open(&with_lot(&sample(), "sweet_corn", 2024, 100, 0.9));
    let lot = desk(&window).layout().lots[0].id;
    window.click_any("What do I sow?");
    window.click("Sweet corn2024 · 100 seeds · 90 % up");
    let amount = |window: &Window| desk(window).layout().lot(lot).unwrap().amount;
    for (number, things) in (2_u64..).zip(Things::ALL) {
        window.fill("Amount left", &format!("{number} {}", things.name()), Key::Enter);
        assert_eq!(amount(&window), SeedAmount::Count(number), "{things:?}");
        window.fill("Amount left", &format!("1 {}", things.one()), Key::Enter);
        assert_eq!(amount(&window), SeedAmount::Count(1), "{things:?}");
        assert_eq!(things.counted(1), format!("1 {}", things.one()));
        assert_eq!(things.counted(2000), format!("2,000 {}", things.name()));
    }
    window.fill("Amount left", "7 wagons", Key::Enter);
    assert_eq!(amount(&window), SeedAmount::Count(1));
}

#[test]
fn prices_are_read_with_their_commas_and_never_below_nothing() {
    let set = SeedEdit::SetPackets {
        crop: CropId("sweet_corn".to_owned()),
        cultivar: String::new(),
        form: None,
        sizes: vec![Packet {
            amount: SeedAmount::Count(100),
            price: None,
        }],
    };
    let mut window = open(&sample().apply(&Edit::Seed(set)).unwrap());
    window.click_any("What do I sow?");
    let folded = window
        .harness
        .get_by_role_and_label(Role::DisclosureTriangle, "Sweet corn");
    folded.click();
    window.harness.run_ok();
    let price = |window: &Window| desk(window).layout().packets[0].sizes[0].price;
    for (typed, read) in [
        ("$1,234.50", 1234.5),
        ("4.20 EUR", 4.2),
        ("CHF 7", 7.0),
        ("3.50 $", 3.5),
        ("€ 12", 12.0),
        ("0.75", 0.75),
    ] {
        window.fill("Packet 1 costs", typed, Key::Enter);
        assert_eq!(price(&window), Some(read), "{typed}");
    }
    for typed in [
        "\u{2212}5",
        "-5",
        "$-5",
        "3,50",
        "1,23,456",
        "five",
        "100 sets",
        "5 oz",
        "50 lb",
    ] {
        window.fill("Packet 1 costs", typed, Key::Enter);
        assert_eq!(price(&window), Some(0.75), "{typed}");
        assert_eq!(window.value("Packet 1 costs"), typed, "what was typed stays");
    }
}

#[test]
fn good_seeds_a_plant_can_be_given_where_the_catalogue_has_none() {
    let tomato = Catalog::built_in().crop(&CropId("tomato".to_owned())).unwrap();
    assert!(tomato.seeds_per_plant.is_none());
    let mut window = changed([of("tomato")]);
    window.press_with(Modifiers::COMMAND, Key::B);
    window.fill("Find a crop", "tomato", Key::Enter);
    window.fill("Good seeds a plant", "3", Key::Enter);
    assert_eq!(desk(&window).layout().own_crops[0].values.seeds_per_plant, Some(3.0));
}
