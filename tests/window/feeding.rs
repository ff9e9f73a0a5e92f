//! What to feed: the question, the soil laboratory's paper, credits, programmes, dressings, runs through the tape, and
//! what was really used.

use std::sync::Arc;

use egui::accesskit::Role;
use egui::{Key, Modifiers};
use egui_kittest::kittest::{NodeT as _, Queryable as _};
use quillet::app::desk::Desk;
use quillet::app::step::Step;
use quillet::layout::{Bed, Credit, CreditKind, Dressing, Feeding, Placement, When, store};
use quillet::plan::BedPlan;

use super::window::{Window, sample};

pub(super) fn desk(window: &Window) -> &Desk {
    window.harness.state().desk()
}

pub(super) fn steps(window: &Window) -> usize {
    desk(window).history().labels().count()
}

/// The first bed of the sample: 3 ft rows of sweet corn on buried tape, with three dressings.
pub(super) fn bed(window: &Window) -> &Bed {
    &desk(window).layout().beds[0]
}

pub(super) fn plan(window: &Window) -> &BedPlan {
    &desk(window).plan().beds[0]
}

pub(super) fn dressing(window: &Window, place: usize) -> &Dressing {
    &bed(window).dressings[place]
}

/// The sample with its shed empty and nothing said yet of how its first bed is fed but three dressings in words, with the
/// question asked, in a window so tall that all of a card can be reached.
pub(super) fn feeding() -> Window {
    let mut layout = store::load(&sample()).unwrap();
    layout.shed.clear();
    let bed = Arc::make_mut(&mut layout.beds[0]);
    bed.feeding = Feeding::default();
    bed.planting.as_mut().unwrap().planted = None;
    for dressing in &mut bed.dressings {
        dressing.when = When::Words("when it is time".to_owned());
        dressing.used.clear();
    }
    let mut window = Window::of(&layout);
    window.harness.set_size(egui::vec2(1440.0, 4200.0));
    window.harness.run_ok();
    window.click_any("What do I feed?");
    window
}

/// The same at the card of one of the bed's dressings.
pub(super) fn at_dressing(name: &str) -> Window {
    let mut window = feeding();
    open_dressing(&mut window, name);
    window
}

fn open_dressing(window: &mut Window, name: &str) {
    let line = window.harness.query_all_by_role(Role::Button).find(|node| {
        let label = node.accesskit_node().label().unwrap_or_default();
        label.starts_with(name) && label.contains("lb")
    });
    line.unwrap().click();
    window.harness.run_ok();
}

pub(super) fn choose(window: &mut Window, from: &str, to: &str) {
    // A name typed in a field may read the same.
    let is_choice = |node: &egui_kittest::Node<'_>| node.accesskit_node().role() == Role::ComboBox;
    let line = window.harness.query_all_by_value(from).find(is_choice);
    line.unwrap().click();
    window.harness.run_ok();
    window.click(to);
}

/// Puts a text in the place of what stands in the field of that label, which a heading may have too.
pub(super) fn fill(window: &mut Window, label: &str, text: &str) {
    let field = window.harness.get_by_role_and_label(Role::TextInput, label);
    field.click();
    window.harness.run_ok();
    window.press_with(Modifiers::COMMAND, Key::A);
    if text.is_empty() {
        window.press(Key::Backspace);
    } else {
        window.type_text(text);
    }
    window.press(Key::Enter);
}

/// What stands in the field of that label.
pub(super) fn value(window: &Window, label: &str) -> String {
    let field = window.harness.get_by_role_and_label(Role::TextInput, label);
    field.value().unwrap_or_default()
}

/// What the bed wants of nitrogen, phosphate and potash, in pounds to the acre.
fn wanted(window: &Window) -> [f64; 3] {
    let accounts = plan(window).feeding.accounts;
    accounts.map(|account| account.wanted.unwrap().to_pounds_per_acre())
}

pub(super) fn near(found: f64, right: f64) -> bool {
    (found - right).abs() < right.abs().max(1.0) * 1e-3
}

#[test]
fn the_question_opens_what_a_bed_wants_and_has_and_answers_in_a_line() {
    let window = feeding();
    assert_eq!(desk(&window).step, Step::Feed);
    assert!(window.sees("Planted on"));
    // University of Wisconsin, as the catalogue has it: 130 lb/acre for soil with 2 to 10 % organic matter.
    assert!(window.sees("Nitrogen 130 lb/acre"));
    assert!(window.sees_part("published general rate: soil with 2 to 10 % organic matter"));
    assert!(window.sees_part("no rate of phosphate or potash is published here"));
    assert!(window.sees_part("over by "));
}

#[test]
fn a_laboratorys_paper_is_typed_in_its_own_units() {
    let mut window = feeding();
    choose(&mut window, "published rates", "my soil test");
    fill(&mut window, "Nitrogen", "120 lb/acre");
    fill(&mut window, "Phosphate", "60 lb/acre");
    fill(&mut window, "Potash", "80 lb/acre");
    assert_eq!(wanted(&window).map(f64::round), [120.0, 60.0, 80.0]);
    // 43,560 sq ft to the acre; 0.45359 kg to the pound and 0.40469 ha to the acre.
    for (typed, right) in [
        ("2 lb/1000 sq ft", 87.12),
        ("0.2 lb/100 sq ft", 87.12),
        ("100 kg/ha", 89.218),
        ("10 g/m2", 89.218),
        // Rows 3 ft apart: 100 ft of row are 300 sq ft.
        ("0.6 lb/100 ft of row", 87.12),
    ] {
        fill(&mut window, "Nitrogen", typed);
        assert!(near(wanted(&window)[0], right), "{typed}: {}", wanted(&window)[0]);
    }
    // Beds 6 ft apart in the paper's acre, 3 ft here: each foot of row gets as much, so the ground gets twice as much.
    fill(&mut window, "Nitrogen", "100 lb/acre");
    fill(&mut window, "Its rows", "6 ft");
    assert!(near(wanted(&window)[0], 200.0));
    assert!(window.sees_part("rows 6 ft apart"));
    assert!(window.sees_part("comes to nitrogen 200 lb/acre"));
    fill(&mut window, "Its rows", "");
    assert!(near(wanted(&window)[0], 100.0));
}

#[test]
fn a_paper_in_phosphorus_and_potassium_is_turned_into_the_terms_of_a_label() {
    let mut window = feeding();
    choose(&mut window, "published rates", "my soil test");
    choose(&mut window, "P2O5 and K2O", "P and K");
    fill(&mut window, "Nitrogen", "100 lb/acre");
    fill(&mut window, "Phosphorus", "40 lb/acre");
    fill(&mut window, "Potassium", "40 lb/acre");
    // New Mexico State University, Guide H-120: phosphate is 2.29 times phosphorus, potash 1.2 times potassium.
    assert!((wanted(&window)[1] - 40.0 * 2.29).abs() < 0.2);
    assert!((wanted(&window)[2] - 40.0 * 1.2).abs() < 0.3);
    assert_eq!(value(&window, "Phosphorus"), "40 lb/acre");
    // Where the paper turns out to write the other thing, the figures stay and what they mean changes.
    choose(&mut window, "P and K", "P2O5 and K2O");
    assert_eq!(value(&window, "Phosphate"), "40 lb/acre");
    assert!(near(wanted(&window)[1], 40.0));
    choose(&mut window, "P2O5 and K2O", "P and K");
    assert_eq!(value(&window, "Phosphorus"), "40 lb/acre");
    assert!((wanted(&window)[1] - 40.0 * 2.29).abs() < 0.2);

    // What was typed is not lost by looking at the published rates.
    choose(&mut window, "my soil test", "published rates");
    assert!(bed(&window).feeding.laboratory.is_none());
    choose(&mut window, "published rates", "my soil test");
    assert_eq!(value(&window, "Phosphorus"), "40 lb/acre");
}

#[test]
fn lime_comes_to_what_the_label_makes_of_it() {
    let mut window = feeding();
    choose(&mut window, "published rates", "my soil test");
    fill(&mut window, "Lime", "150 lb/1000 sq ft");
    fill(&mut window, "Purity", "75");
    // Penn State, Home Garden report notes: amount × 100 ÷ 75, and two doses for 15 lb/100 sq ft. The bed has
    // 1,440 sq ft, so 1.44 × 150 × 100 ÷ 75 = 288 lb.
    assert!(window.sees("288.00 lb of that lime for the bed, in 2 doses, half a year apart"));
    let before = steps(&window);
    fill(&mut window, "Purity", "0");
    assert!(window.sees_part("a percentage over 0"));
    assert_eq!(value(&window, "Purity"), "0");
    assert_eq!(steps(&window), before);
}

#[test]
fn what_the_bed_has_already_is_counted_off() {
    let mut window = feeding();
    let add = |window: &mut Window, kind: &str| {
        window.click("Add what it has");
        window.click(kind);
    };
    add(&mut window, "Legume or soil");
    // University of Vermont: 10 lb/acre for each percent of organic matter.
    fill(&mut window, "Organic matter", "3 %");
    let nitrogen = |window: &Window| plan(window).feeding.accounts[0].to_give.unwrap().to_pounds_per_acre();
    assert!(near(nitrogen(&window), 100.0));
    assert!(window.sees_part("Organic matter, 3 %"));

    add(&mut window, "Nitrate in the water");
    choose(&mut window, "nitrogen, NO3-N", "nitrate, NO3");
    fill(&mut window, "Water holds", "44.27");
    fill(&mut window, "Put on", "12 in");
    // 44.27 ppm nitrate are 10 ppm nitrogen; 0.2266 lb/acre for each of them and inch.
    assert!(
        (nitrogen(&window) - (100.0 - 27.19)).abs() < 0.02,
        "{}",
        nitrogen(&window)
    );

    add(&mut window, "Compost");
    fill(&mut window, "How much", "10 tons/acre");
    fill(&mut window, "Holds", "2-1-1");
    fill(&mut window, "Free this year", "10 %");
    // 20,000 lb × 2 % × a tenth.
    assert!(
        (nitrogen(&window) - (72.81 - 40.0)).abs() < 0.02,
        "{}",
        nitrogen(&window)
    );
    let before = steps(&window);
    fill(&mut window, "Holds", "60-60-0");
    assert!(window.sees_part("100 % all together"));
    assert_eq!(value(&window, "Holds"), "60-60-0");
    assert_eq!(steps(&window), before);

    window.press(Key::Escape);
    window.click("Remove this credit");
    assert_eq!(bed(&window).feeding.credits.len(), 2);
    window.press_with(Modifiers::COMMAND, Key::Z);
    let Credit { what, .. } = bed(&window).feeding.credits[2].clone();
    assert!(matches!(what, CreditKind::Compost { .. }));
}

#[test]
fn a_programme_is_laid_down_in_one_step_in_place_of_what_is_not_done() {
    let mut window = feeding();
    let before = bed(&window).dressings.clone();
    window.click_any("At planting and once beside the rows");
    assert!(window.sees_part("in place of the 3 dressings not done yet"));
    window.click("Lay it down");
    assert_eq!(steps(&window), 1);
    let names: Vec<&str> = bed(&window)
        .dressings
        .iter()
        .map(|dressing| dressing.name.as_str())
        .collect();
    assert_eq!(names, ["At planting", "Side-dressing"]);
    // ATTRA, Sweet Corn: 50 lb of nitrogen at planting, and 60 to 80 beside the rows.
    let planned = plan(&window).feeding.accounts[0].planned.to_pounds_per_acre();
    assert!(near(planned, 120.0), "{planned}");
    assert!(window.sees("Nitrogen: about enough"));
    window.press_with(Modifiers::COMMAND, Key::Z);
    assert_eq!(bed(&window).dressings, before);
}

#[test]
fn what_was_really_used_shrinks_the_next_dressing() {
    let mut window = at_dressing("At planting");
    fill(&mut window, "Amount used", "8.8 lb");
    assert!(window.sees("As planned"));
    assert!(window.sees("what is still ahead stays as it is"));
    window.click("Back to Corn block");
    open_dressing(&mut window, "1st side-dress");
    // A fifth more than planned: 12 lb where 10 lb were planned.
    let planned = plan(&window).dressings[1].planned.to_pounds();
    assert!(near(planned, 13.2), "{planned}");
    fill(&mut window, "Amount used", "15.84");
    assert!(window.sees("20 % more than the 13.20 lb planned"));
    assert!(window.sees("“2nd side-dress” shrinks from 13.20 lb to 10.56 lb"));
    fill(&mut window, "Done on", "12 June");
    let on = dressing(&window, 1).used[0].on.unwrap();
    assert_eq!(on.to_string(), "2027-06-12");

    let done = steps(&window);
    for (typed, sentence) in [("-1 lb", "less than nothing"), ("a lot", "not understood")] {
        fill(&mut window, "Amount used", typed);
        assert!(window.sees_part(sentence), "{typed}");
        assert_eq!(value(&window, "Amount used"), typed);
    }
    fill(&mut window, "Done on", "31 June");
    assert!(window.sees_part("no day of the calendar"));
    assert_eq!(steps(&window), done);

    fill(&mut window, "Amount used", "");
    assert_eq!(dressing(&window, 1).used, []);
    assert!(near(plan(&window).dressings[2].total.to_pounds(), 13.2));
}

#[test]
fn dressings_hold_to_the_plan_where_the_grower_says_so() {
    let mut window = feeding();
    window.click_any("Dressings follow what was used");
    open_dressing(&mut window, "1st side-dress");
    fill(&mut window, "Amount used", "20 lb");
    assert!(window.sees_part("what is ahead stays as planned"));
    assert!(near(plan(&window).dressings[2].total.to_pounds(), 13.2));
}

#[test]
fn a_stage_is_chosen_and_dated_from_the_planting_day() {
    let mut window = feeding();
    fill(&mut window, "Planted on", "10 May");
    let planted = bed(&window).planting.as_ref().unwrap().planted.unwrap();
    assert_eq!(planted.to_string(), "2027-05-10");
    open_dressing(&mut window, "2nd side-dress");
    choose(&mut window, "choose…", "12 to 18 in tall");
    assert!(matches!(&dressing(&window, 2).when, When::Stage(stage) if stage.0 == "corn_12_to_18_in"));
    assert!(window.sees_part("counted from the planting day"));
    // A stage by its name, a day, and the grower's own words go into the same field.
    fill(&mut window, "When", "knee-high");
    assert!(matches!(&dressing(&window, 2).when, When::Stage(stage) if stage.0 == "knee_high"));
    fill(&mut window, "When", "10 June");
    assert!(matches!(dressing(&window, 2).when, When::Day(day) if day.to_string() == "2027-06-10"));
    fill(&mut window, "When", "when the elder blooms");
    assert_eq!(
        dressing(&window, 2).when,
        When::Words("when the elder blooms".to_owned())
    );
    let before = steps(&window);
    fill(&mut window, "When", "2027-02-30");
    assert!(window.sees_part("no day of the calendar"));
    assert_eq!(value(&window, "When"), "2027-02-30");
    assert_eq!(steps(&window), before);
}

#[test]
fn a_run_through_the_tape_says_how_strong_and_how_long_it_is() {
    let mut window = at_dressing("2nd side-dress");
    choose(&mut window, "beside the plants", "through the tape");
    fill(&mut window, "When", "10 June");
    fill(&mut window, "Times", "3");
    fill(&mut window, "Days apart", "7");
    let Placement::Injected(injecting) = dressing(&window, 2).placement else {
        panic!("through the tape")
    };
    assert_eq!((injecting.times, injecting.every_days), (3, 7));
    assert!(window.sees("Each run"));
    assert!(window.sees("13.20 lb in 5 gal of water"));
    // 13.2 lb in 5 gal are 2.64 lb/gal. A hundredth of that in the feed, 15 % of it nitrogen: 119,826 ppm to the
    // pound in a gallon, so 474.5 ppm.
    assert!(window.sees("stock of 2.64 lb/gal"));
    assert!(
        window.sees("475 ppm of nitrogen at the outlets"),
        "{:?}",
        desk(&window).plan().injections
    );
    // 440 ft of tape at 0.5 gpm to 100 ft let out 2.2 gpm; 500 gal of feed take 227 min.
    assert!(window.sees("3 h 47 min to inject, at 2.2 gpm through all tapes"));
    assert!(window.sees_part("from the injector to the last outlet"));
    assert!(window.sees_part("of plain water to rinse"));
    assert!(window.sees("on 10 June, 17 June, 24 June"));
    // What is asked for changes nothing: 100 of 474.5 ppm are made by 2.78 of 13.2 lb.
    let before = steps(&window);
    fill(&mut window, "N at outlets", "100 ppm");
    assert!(window.sees("takes 2.78 lb in the tank; the amount above stays as it is"));
    assert_eq!(steps(&window), before);
    assert!(window.sees_part("dissolve"));

    let before = steps(&window);
    for (label, typed, sentence) in [
        ("Times", "0", "from 1"),
        ("Stock tank", "5", "needs a unit"),
        ("Stock tank", "0 gal", "over zero"),
        ("1 of stock", "0.5", "1 in 100"),
        ("Its width", "0 in", "over zero"),
    ] {
        fill(&mut window, label, typed);
        assert!(window.sees_part(sentence), "{label} {typed}");
        assert_eq!(value(&window, label), typed);
        assert_eq!(steps(&window), before, "{label} {typed}");
    }
    fill(&mut window, "Stock tank", "50 gal");
    assert!(window.sees("13.20 lb in 50 gal of water"));
    fill(&mut window, "1 of stock", "0.8 %");
    assert!(window.sees_part("of 125 parts that come out, one is stock"));
    fill(&mut window, "1 of stock", "1:200");
    assert!(window.sees_part("of 200 parts that come out, one is stock"));
    fill(&mut window, "1 of stock", "1 to 100");
    assert!(window.sees_part("each part of stock is added to 100 of water"));
    let Placement::Injected(injecting) = dressing(&window, 2).placement else {
        panic!("through the tape")
    };
    assert!(injecting.to_water);
}

#[test]
fn a_bed_without_tape_is_told_so_at_the_field() {
    let mut window = at_dressing("2nd side-dress");
    choose(&mut window, "beside the plants", "through the tape");
    window.click("Back to Corn block");
    choose(&mut window, "buried drip", "overhead");
    open_dressing(&mut window, "2nd side-dress");
    assert!(window.sees_part("Corn block has no tape: its water is overhead"));
}

#[test]
fn a_dressing_says_what_each_row_and_each_stretch_takes() {
    let mut window = at_dressing("1st side-dress");
    // Ten rows of 44 ft on 3 ft: 10 lb/1,000 sq ft are 1.32 lb to a row and 0.3 lb, 4.8 oz, to 10 ft.
    assert!(window.sees_part("A row: 1.32\u{a0}lb"));
    assert!(window.sees_part("Pace: 4.8 oz per 10 ft"));
    assert!(window.sees_part("by row feet: 440 ft × 3 ft = 1,320 sq ft"));
    assert!(window.sees("3 lb/100 ft along the row"));
    // A quarter of a 15 % grade is sodium (common practice, no source): of 13.2 lb that is 3.3 lb.
    assert!(window.sees_part("It brings 3.30 lb of sodium to the bed."));
    // The caution on gloves is said where the material's own says nothing of breathing it.
    assert!(window.sees("Wear gloves, and do not breathe the dust."));
    // 15 % of 435.6 lb/acre.
    assert!(window.sees("brings nitrogen 65 lb/acre"));
    choose(&mut window, "beside the plants", "broadcast over the bed");
    assert!(window.sees_part("by the bed's ground"));

    let before = steps(&window);
    for typed in ["a lot", "-3 lb/100 ft", "12"] {
        fill(&mut window, "Amount", typed);
        assert_eq!(value(&window, "Amount"), typed, "what was typed stays");
        assert_eq!(steps(&window), before, "{typed}");
    }
}

/// The limits are those of the Tri-State Fertilizer Recommendations, Bulletin E-2567 / AY-9-32 (1995), placement section
/// (from memory): 100 and 70 lb/acre of nitrogen and potash at 30 in; and of Kansas State University Agronomy eUpdate,
/// starter fertilizer articles: 8 lb/acre. For a 15 % material that is 3.83, 2.68 and 0.31 lb/100 ft.
#[test]
fn a_band_says_how_much_of_it_seed_bears() {
    let mut window = at_dressing("1st side-dress");
    let words =
        "Corn seed bears 3.83 lb/100 ft of it 2 in beside and below, 2.68 lb/100 ft on sand, and 0.31 lb/100 ft where";
    assert!(!window.sees_part(words));
    choose(&mut window, "beside the plants", "in a band at the row");
    assert!(window.sees_part(words));
}

/// Blood meal's own caution is not to breathe its dust: that is not said a second time.
#[test]
fn a_caution_is_not_said_twice_on_a_card() {
    let mut layout = store::load(&sample()).unwrap();
    let bed = Arc::make_mut(&mut layout.beds[0]);
    bed.dressings[0].material = quillet::catalog::MaterialId("blood_meal".to_owned());
    bed.dressings[0].used.clear();
    let name = bed.dressings[0].name.clone();
    let mut window = Window::of(&layout);
    window.harness.set_size(egui::vec2(1440.0, 4200.0));
    window.harness.run_ok();
    window.click_any("What do I feed?");
    open_dressing(&mut window, &name);
    assert!(window.sees_part("dressing of"));
    let of_dust = window.harness.query_all_by_label_contains("breathe").count();
    assert_eq!(of_dust, 1);
}

#[test]
fn wrong_rates_are_said_at_their_fields_and_stay() {
    let mut window = feeding();
    choose(&mut window, "published rates", "my soil test");
    let before = steps(&window);
    for (label, typed, sentence) in [
        ("Nitrogen", "120", "needs a unit"),
        ("Nitrogen", "-5 lb/acre", "less than nothing"),
        ("Potash", "much", "not understood"),
        ("Its rows", "0 ft", "over zero"),
        ("Planted on", "31 June", "no day of the calendar"),
        ("Planted on", "soon", "write it like 10 June"),
    ] {
        fill(&mut window, label, typed);
        assert!(window.sees_part(sentence), "{label} {typed}");
        assert_eq!(value(&window, label), typed);
        assert_eq!(steps(&window), before, "{label} {typed}");
    }
}

#[test]
fn tape_and_zone_are_the_beds() {
    let mut window = feeding();
    fill(&mut window, "Water zone", "North");
    assert_eq!(bed(&window).zone, "North");
    assert!(window.sees("no other bed is of this zone yet"));
    let tape = window.harness.get_by_role_and_label(Role::DisclosureTriangle, "Tape");
    tape.click();
    window.harness.run_ok();
    fill(&mut window, "Lets out", "0.25 gpm/100 ft");
    fill(&mut window, "Outlets every", "8 in");
    fill(&mut window, "Width inside", "7/8 in");
    let tape = bed(&window).tape;
    assert!(near(tape.flow.to_gallons_per_minute_per_100_feet(), 0.25));
    assert!(near(tape.outlets.to_inches(), 8.0));
    assert!(near(tape.bore.to_inches(), 0.875));
    // Penn State Extension, Determining How Long to Run Drip Irrigation Systems for Vegetables, 26 June 2013: ground × depth
    // ÷ flow. An inch on 440 × 3 ft is 822.9 gal, and 1.1 gpm take 748 min for it.
    assert!(window.sees_part("1 in of water on the ground of the rows takes 12 h 28 min"));
    let before = steps(&window);
    fill(&mut window, "Lets out", "0 gpm/100 ft");
    assert!(window.sees_part("tape lets out"));
    assert_eq!(steps(&window), before);
}

#[test]
fn which_published_rate_holds_is_chosen_by_the_ground() {
    let mut window = feeding();
    // University of Wisconsin: 130 lb/acre on soil with 2 to 10 % organic matter, 150 with less than 2 %.
    choose(
        &mut window,
        "soil with 2 to 10 % organic matter",
        "soil with less than 2 % organic matter",
    );
    assert!(window.sees("Nitrogen 150 lb/acre"));
    let wanted = plan(&window).feeding.accounts[0].wanted.unwrap();
    assert!(near(wanted.to_pounds_per_acre(), 150.0));
}

#[test]
fn a_nitrate_test_and_manure_are_reckoned_and_taken_over() {
    let mut window = feeding();
    window.click_any("Reckon from a soil test or manure");
    // Rutgers table as printed in University of Delaware Weekly Crop Update, PSNT for Sweet Corn: 18 ppm, not manured,
    // 120 lb/acre, in two halves on light sand.
    window.fill("Nitrate-N", "18", Key::Enter);
    assert!(window.sees_part("Side-dress 120 lb/acre of nitrogen in one side-dressing"));
    window.click_any("light sand");
    assert!(window.sees_part("in two halves"));
    window.click("Go by this test");
    let paper = bed(&window).feeding.laboratory.unwrap();
    assert!(
        matches!(paper.n, Some(quillet::layout::NutrientRate::PerArea(rate)) if (rate.to_pounds_per_acre() - 120.0).abs() < 1e-9)
    );
    // Rutgers NJAES: 30 ppm P is 60 lb/acre, medium; 75 ppm K is 150, high.
    window.fill("P found", "30", Key::Enter);
    assert!(window.sees_part("medium by Mehlich-3"));
    window.fill("K found", "75", Key::Enter);
    assert!(window.sees_part("high by Mehlich-3"));
    window.fill("K found", "much", Key::Enter);
    assert!(window.sees_part("write a plain number"));
}
