//! What a grower types on feeding stays as it was typed: rates in their units, what was used as a rate, and manure from
//! what is published.

use quillet::layout::{CreditKind, Edit};
use quillet::quantity::{Mass, Units};

use super::feeding::{at_dressing, bed, choose, desk, dressing, feeding, fill, near, plan, steps, value};
use super::window::Window;

#[test]
fn a_rate_is_shown_in_the_unit_it_was_typed_in() {
    let mut window = feeding();
    choose(&mut window, "published rates", "my soil test");
    for (typed, shown) in [
        ("120 lb/acre", "120 lb/acre"),
        ("2 lb/1000 sq ft", "2 lb/1,000 sq ft"),
        ("0.2 lb/100 sq ft", "0.2 lb/100 sq ft"),
        ("67.3 kg/ha", "67.3 kg/ha"),
        ("10 g/m2", "10 g/m²"),
        ("0.6 lb/100 ft of row", "0.6 lb/100 ft"),
    ] {
        fill(&mut window, "Nitrogen", typed);
        assert_eq!(value(&window, "Nitrogen"), shown);
    }
    // Each nutrient in its own, and lime too; in the terms of an element as well.
    fill(&mut window, "Phosphate", "60 lb/acre");
    choose(&mut window, "P2O5 and K2O", "P and K");
    assert_eq!(value(&window, "Phosphorus"), "60 lb/acre");
    fill(&mut window, "Potassium", "1.75 oz/sq yd");
    assert_eq!(value(&window, "Potassium"), "1.75 oz/sq yd");
    fill(&mut window, "Lime", "2.5 tons/acre");
    assert_eq!(value(&window, "Lime"), "2.5 tons/acre");
    // An emptied field forgets the unit with the number.
    fill(&mut window, "Nitrogen", "");
    let paper = bed(&window).feeding.laboratory.unwrap();
    assert_eq!((paper.n, paper.typed_in.n), (None, None));
    // What was typed stays when the layout goes over to metres.
    let metric = Edit::SetUnits(Units::Metric);
    let layout = desk(&window).layout().apply(&metric).unwrap();
    let mut window = Window::of(&layout);
    window.harness.set_size(egui::vec2(1440.0, 4200.0));
    window.harness.run_ok();
    window.click_any("What do I feed?");
    assert_eq!(value(&window, "Lime"), "2.5 tons/acre");
    assert_eq!(value(&window, "Phosphorus"), "60 lb/acre");
}

#[test]
fn the_amount_of_a_dressing_stays_as_it_was_typed() {
    let mut window = at_dressing("At planting");
    for (typed, shown) in [
        ("65 lb/acre", "65 lb/acre"),
        ("5 oz/10 ft", "5 oz/10 ft"),
        ("20 g/plant", "20 g/plant"),
    ] {
        fill(&mut window, "Amount", typed);
        assert_eq!(value(&window, "Amount"), shown);
    }
    let unit = dressing(&window, 0).typed_in.unwrap();
    assert_eq!(unit.to_string(), "g/plant");
}

#[test]
fn what_was_used_is_typed_as_a_rate() {
    let mut window = at_dressing("At planting");
    let rows = plan(&window).totals.row_length;
    fill(&mut window, "Amount used", "3 lb/100 ft");
    let used = dressing(&window, 0).used[0].amount;
    assert!(near(used.to_pounds(), rows.to_feet() * 0.03), "{used:?}");
    let feet = rows.show_total(Units::Customary);
    let came_to = used.show_product(Units::Customary);
    assert!(window.sees(&format!("3 lb/100 ft over {feet} of row: {came_to}")));
    assert_eq!(value(&window, "Amount used"), came_to);
    // A weight is said as the usual rate.
    fill(&mut window, "Amount used", "10 lb");
    assert!(near(dressing(&window, 0).used[0].amount.to_pounds(), 10.0));
    assert!(window.sees_part("of row: 10.00 lb") || window.sees_part("belong to the rows: 10.00 lb"));
}

#[test]
fn a_rate_that_was_used_counts_what_the_amount_counts() {
    let mut window = at_dressing("1st side-dress");
    fill(&mut window, "Amount", "65 lb/acre");
    choose(&mut window, "product", "nitrogen");
    let planned = plan(&window).dressings[1].planned;
    assert!(window.sees_part("as a rate of nitrogen such as"));
    fill(&mut window, "Amount used", "65 lb/acre");
    let used = dressing(&window, 1).used[0].amount;
    assert!(near(used.to_pounds(), planned.to_pounds()), "{used:?} {planned:?}");
    assert!(window.sees_part("65 lb/acre of nitrogen over"));
    assert!(window.sees("As planned"));
}

#[test]
fn a_feed_in_several_times_is_noted_time_by_time() {
    let mut window = at_dressing("At planting");
    choose(&mut window, "in a band at the row", "through the tape");
    fill(&mut window, "Times", "3");
    fill(&mut window, "When", "1 June");
    let each = plan(&window).dressings[0].each_planned();
    let words = each.show_product(Units::Customary);
    assert!(window.sees(&format!("As planned about 1 June: {words}")));
    window.click(&format!("As planned about 1 June: {words}"));
    assert!(near(dressing(&window, 0).used[0].amount.to_pounds(), each.to_pounds()));
    assert!(window.sees(&format!("in 3 runs: 1 done with {words}, {words} each of those ahead")));
    fill(&mut window, "Done on", "3 June");
    // The next is a week after that.
    assert!(window.sees(&format!("As planned about 10 June: {words}")));
    fill(&mut window, "2nd feeding", "120 %");
    let second = dressing(&window, 0).used[1].amount;
    assert!(near(second.to_pounds(), each.to_pounds() * 1.2), "{second:?}");
    fill(&mut window, "2nd feeding", "0");
    assert_eq!(dressing(&window, 0).used.len(), 2);
    assert_eq!(plan(&window).dressings[0].times_done, 2);
    fill(&mut window, "1st feeding", "");
    let used = &dressing(&window, 0).used;
    assert_eq!((used.len(), used[0].amount), (1, Mass::ZERO));
    let done = steps(&window);
    fill(&mut window, "2nd feeding", "plenty");
    assert!(window.sees_part("not understood"));
    assert_eq!(steps(&window), done);
}

#[test]
fn manure_begins_at_what_is_published_for_the_animal_and_the_working_in() {
    let mut window = feeding();
    window.click("Add what it has");
    window.click("Manure");
    let free = |window: &Window| match bed(window).feeding.credits[0].what {
        CreditKind::Compost { available_n, .. } => available_n.to_percent(),
        _ => f64::NAN,
    };
    assert!(
        free(&window).abs() < 1e-9,
        "nothing counts before it is said whose it is"
    );
    choose(&mut window, "choose…", "Dairy manure");
    // University of Minnesota Extension, Minnesota Crop News, October 2021: dairy 55, 40 and 20 % of all nitrogen.
    assert!((free(&window) - 55.0).abs() < 1e-9);
    assert!(window.sees_part("University of Minnesota Extension"));
    assert_eq!(value(&window, "Holds"), "0.5-0.2-0.5");
    choose(&mut window, "within half a day", "later, or left on top");
    assert!((free(&window) - 20.0).abs() < 1e-9);
    fill(&mut window, "How much", "10 tons/acre");
    assert_eq!(value(&window, "How much"), "10 tons/acre");
    // 20,000 lb × 0.5 % × 20 %.
    assert!(near(
        plan(&window).feeding.credits[0].gives.n.to_pounds_per_acre(),
        20.0
    ));
    assert!(!window.sees_part("short rule"));
    choose(&mut window, "later, or left on top", "within four days");
    // V. Grubinger, University of Vermont Extension: 5 lb to the ton of manure worked in.
    assert!(window.sees_part("short rule for manure worked in, would be 50 lb/acre"));
    // A test of the grower's own goes before what is published, whatever is chosen then.
    fill(&mut window, "Holds", "0.7-0.3-0.6");
    choose(&mut window, "Dairy manure", "Poultry manure");
    assert!((free(&window) - 70.0).abs() < 1e-9);
    assert_eq!(value(&window, "Holds"), "0.7-0.3-0.6");
    // So does a name of their own, and what it is stays with it.
    assert_eq!(bed(&window).feeding.credits[0].name, "Poultry manure");
    fill(&mut window, "Called", "From the neighbour");
    choose(&mut window, "Poultry manure", "Hog manure");
    assert_eq!(bed(&window).feeding.credits[0].name, "From the neighbour");
    assert!((free(&window) - 75.0).abs() < 1e-9);
    assert!(window.sees("Worked in"));
    fill(&mut window, "Free this year", "33 %");
    assert!(!window.sees_part("University of Minnesota Extension"));
}

#[test]
fn credits_over_what_is_wanted_are_said_on_the_card() {
    let mut window = feeding();
    choose(&mut window, "published rates", "my soil test");
    fill(&mut window, "Nitrogen", "130 lb/acre");
    window.click("Add what it has");
    window.click("Legume or soil");
    fill(&mut window, "Brings N", "150 lb/acre");
    assert!(window.sees_part("Nitrogen: credits are 20 lb/acre more than it wants, so there is nothing to give"));
    fill(&mut window, "Brings N", "130 lb/acre");
    assert!(!window.sees_part("credits are"));
}

#[test]
fn a_blank_paper_says_which_rate_counts_for_what_it_leaves_out() {
    let mut window = feeding();
    let general = plan(&window).feeding.wants.clone();
    choose(&mut window, "published rates", "my soil test");
    let nitrogen = general.n.unwrap().rate.show_field(Units::Customary);
    assert!(window.sees_part(&format!(
        "where it is left blank, the general rate counts: nitrogen {nitrogen}"
    )));
    fill(&mut window, "Nitrogen", "100 lb/acre");
    assert!(!window.sees_part("the general rate counts: nitrogen"));
}
