//! Which crop Enter takes, and what becomes of a cultivar where another crop takes its place.

use std::sync::Arc;

use egui::Key;
use egui_kittest::kittest::Queryable as _;
use quillet::catalog::CropId;
use quillet::layout::{Layout, LotContents, LotGermination, SeedAmount, Sowing, store};

use super::window::{Window, sample};

fn tall(layout: &Layout) -> Window {
    let mut window = Window::of(layout);
    window.harness.set_size(egui::vec2(1440.0, 3200.0));
    window.harness.run_ok();
    window
}

/// The crop that Enter takes for the first bed of the sample, after these words.
fn taken(words: &str) -> String {
    let mut window = tall(&store::load(&sample()).unwrap());
    window.click_any("What rows fit?");
    window.harness.get_by_label("Crop Sweet corn").click();
    window.harness.run_ok();
    window.type_text(words);
    window.press(Key::Enter);
    let desk = window.harness.state().desk();
    desk.layout().beds[0].planting.as_ref().unwrap().crop.0.clone()
}

#[test]
fn the_shorter_of_two_names_that_begin_alike_is_taken() {
    assert_eq!(taken("tom"), "tomato");
}

#[test]
fn crops_of_the_layout_are_taken_before_others() {
    // By name alone field corn and dry beans would come first; sweet corn and bush snap beans grow on the sample.
    assert_eq!(taken("corn"), "sweet_corn");
    assert_eq!(taken("bean"), "bean_snap_bush");
    assert_eq!(taken("bean, dry"), "bean_dry", "a whole name is meant");
}

/// A sample with a lot of that crop on its shelf.
fn with_lot(layout: &Layout, crop: &str, cultivar: &str) -> Layout {
    use quillet::layout::{Edit, SeedEdit};
    let lot = LotContents {
        crop: CropId(crop.to_owned()),
        cultivar: cultivar.to_owned(),
        form: None,
        year: layout.season,
        amount: SeedAmount::Count(300),
        germination: LotGermination::NotKnown,
    };
    layout.apply(&Edit::Seed(SeedEdit::AddLot(lot))).unwrap()
}

fn open_lot(window: &mut Window, name: &str) {
    window.click_any("What do I sow?");
    let line = window.harness.get_all_by_label_contains(name).next();
    line.unwrap().click();
    window.harness.run_ok();
}

#[test]
fn a_lot_of_another_crop_drops_a_cultivar_that_crop_has_not() {
    let layout = with_lot(&store::load(&sample()).unwrap(), "okra", "Tall Annie");
    let mut window = tall(&layout);
    open_lot(&mut window, "Tall Annie");
    window.harness.get_by_label("Crop Okra").click();
    window.harness.run_ok();
    window.type_text("tomato");
    window.press(Key::Enter);
    let lot = &window.harness.state().desk().layout().lots[0];
    assert_eq!((lot.crop.0.as_str(), lot.cultivar.as_str()), ("tomato", ""));
    assert!(window.sees_part("“Tall Annie” is a cultivar of Okra"));
}

#[test]
fn a_lot_of_seed_says_what_to_do_where_its_bed_counts_bought_plants() {
    let mut layout = store::load(&sample()).unwrap();
    let planting = Arc::make_mut(&mut layout.beds[0]).planting.as_mut();
    let planting = planting.unwrap();
    planting.crop = CropId("tomato".to_owned());
    planting.cultivar = String::new();
    planting.sowing = Some(Sowing::Plants);
    let mut window = tall(&with_lot(&layout, "tomato", ""));
    open_lot(&mut window, "300 seeds");
    assert!(window.sees_part("Tomato is put in as bought plants"));
    assert!(window.sees_part("choose “raised in trays” to sow this lot"));
    assert!(!window.sees_part("no bed of this crop and cultivar"));
}
