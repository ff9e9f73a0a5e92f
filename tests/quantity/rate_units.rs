//! Units that rates were typed in: read off the text, kept under a name, and shown with the number that was typed.

use proptest::prelude::*;
use quillet::quantity::{Mass, MassPerArea, MassPerLength, RateUnit, Units};

use Units::{Customary, Metric};

/// A rate as it is shown in the unit it was typed in.
fn back(text: &str, units: Units) -> Option<String> {
    let unit = RateUnit::of_rate(text, units).ok()?;
    if let Ok(rate) = MassPerArea::parse(text, units) {
        return rate.show_in(unit, units);
    }
    if let Ok(rate) = MassPerLength::parse(text, units) {
        return rate.show_in(unit, units);
    }
    let (weight, _) = text.split_once('/')?;
    Mass::parse(weight, units).ok()?.show_to_plant_in(unit, units)
}

#[test]
fn a_typed_rate_is_shown_with_the_number_that_was_typed() {
    for text in [
        "120 lb/acre",
        "43.56 lb/acre",
        "0.333 lb/acre",
        "2.5 lb/1,000 sq ft",
        "0.2 lb/100 sq ft",
        "17 oz/sq yd",
        "1 ton/acre",
        "2.5 tons/acre",
        "5,445 lb/acre",
        "67.3 kg/ha",
        "10 g/m²",
        "4 t/ha",
        "3 lb/100 ft",
        "5 oz/10 ft",
        "12.5 g/m",
        "0.125 lb/50 yd",
        "2 oz/plant",
        "7 g/plant",
        "0 lb/acre",
    ] {
        assert_eq!(back(text, Customary).as_deref(), Some(text));
    }
    // Where a lone comma could be read two ways, none is shown.
    for (text, right) in [
        ("2.5 lb/1000 sq ft", "2.5 lb/1000 sq ft"),
        ("120 lb/acre", "120 lb/acre"),
        ("1050 kg/ha", "1,050.0 kg/ha"),
        ("0,5 g/m2", "0.5 g/m²"),
    ] {
        let shown = back(text, Metric);
        assert_eq!(shown.as_deref(), Some(right));
        assert_eq!(back(right, Metric), shown, "{right} reads back");
    }
}

#[test]
fn a_rate_in_other_words_is_shown_in_the_units_own() {
    for (text, right) in [
        ("120 pounds per acre", "120 lb/acre"),
        ("3 lbs per 100 ft of row", "3 lb/100 ft"),
        ("3 lb/100 row ft", "3 lb/100 ft"),
        ("1/2 lb per 1000 square feet", "0.5 lb/1,000 sq ft"),
        // Of two units the smaller: nothing is rounded away.
        ("2 lb 3 oz/100 ft", "35 oz/100 ft"),
    ] {
        assert_eq!(back(text, Customary).as_deref(), Some(right));
    }
}

#[test]
fn a_unit_is_kept_under_its_name() {
    for name in [
        "lb/acre",
        "lb/1000 sq ft",
        "ton/acre",
        "g/m²",
        "oz/10 ft",
        "kg/2.5 m",
        "oz/plant",
    ] {
        let unit = RateUnit::named(name).unwrap();
        assert_eq!(unit.to_string(), name);
    }
    for wrong in [
        "",
        "lb",
        "acre",
        "lb/acre/ft",
        "lb/0 ft",
        "lb/-3 ft",
        "3 lb/acre",
        "furlong/acre",
        "lb/furlong",
    ] {
        assert!(RateUnit::named(wrong).is_err(), "{wrong}");
    }
}

#[test]
fn a_unit_shows_only_what_is_spread_the_same_way() {
    let unit = |name| RateUnit::named(name).unwrap();
    let over_ground = MassPerArea::pounds_per_acre(120.0);
    let along_row = MassPerLength::pounds_per_100_feet(3.0);
    assert_eq!(over_ground.show_in(unit("lb/100 ft"), Customary), None);
    assert_eq!(along_row.show_in(unit("lb/acre"), Customary), None);
    assert_eq!(Mass::ounces(2.0).show_to_plant_in(unit("lb/acre"), Customary), None);
    // 43,560 sq ft to the acre.
    let shown = over_ground.show_in(unit("lb/43560 sq ft"), Customary);
    assert_eq!(shown.as_deref(), Some("120 lb/43,560 sq ft"));
}

proptest! {
    /// Whatever is typed with as many as seven figures, in whatever unit, stays the same number.
    #[test]
    fn no_figure_is_lost_or_made(whole in 0_u32..4000, thousandths in 0_u32..1000, unit in 0_usize..12) {
        let unit = [
            "lb/acre", "lb/1000 sq ft", "lb/100 sq ft", "oz/sq yd", "ton/acre", "kg/ha", "t/ha", "g/m²",
            "lb/100 ft", "oz/10 ft", "g/m", "lb/2.5 yd",
        ][unit];
        let typed = f64::from(whole * 1000 + thousandths) / 1000.0;
        for units in [Customary, Metric] {
            let shown = back(&format!("{typed} {unit}"), units).unwrap();
            let (number, _) = shown.split_once(' ').unwrap();
            prop_assert_eq!(number.replace(',', "").parse::<f64>().unwrap(), typed);
            prop_assert_eq!(back(&shown, units), Some(shown));
        }
    }
}
