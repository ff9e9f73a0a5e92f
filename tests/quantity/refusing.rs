//! What cannot be understood is refused with a sentence that says which part, and what would be.

use proptest::prelude::*;
use quillet::quantity::{
    Area, Bearing, Concentration, Flow, FlowPerLength, Fraction, Length, LengthUnit, Mass, MassPerArea, MassPerLength,
    ParseError, ParseProblem, QuantityKind, Span, Units, Volume,
};

#[track_caller]
fn refused<T: std::fmt::Debug>(read: &Result<T, ParseError>, problem: ParseProblem, part: &str) {
    assert!(
        read.as_ref()
            .is_err_and(|error| error.problem() == problem && error.part() == part),
        "expected {problem:?} about {part:?}, got {read:?}"
    );
}

#[test]
fn the_part_that_is_wrong_is_quoted() {
    let length = |text| Length::parse(text, Units::Customary);
    refused(&length("3 fot"), ParseProblem::NotUnderstood, "fot");
    refused(&length("three ft"), ParseProblem::NotUnderstood, "three");
    refused(&length("3 ft 6 lb"), ParseProblem::NotUnderstood, "lb");
    refused(&length("6 in 3 ft"), ParseProblem::NotUnderstood, "ft");
    refused(&length("3 ft 3 ft"), ParseProblem::NotUnderstood, "ft");
    refused(&length("3 ft - 6 in"), ParseProblem::NotUnderstood, "-");
    refused(&length("3 6 in"), ParseProblem::NotUnderstood, "6");
    refused(&length("3 ft;"), ParseProblem::NotUnderstood, ";");
    refused(&length("3 ft/2"), ParseProblem::NotUnderstood, "/");
    refused(&length("1.2.3 ft"), ParseProblem::NotUnderstood, "1.2.3");
    refused(&length("1,05,000 ft"), ParseProblem::NotUnderstood, "1,05,000");
    refused(&length("1/0 ft"), ParseProblem::NotUnderstood, "1/0");
    refused(&length("1e3 ft"), ParseProblem::NotUnderstood, "e");
    refused(&length("inf"), ParseProblem::NotUnderstood, "inf");
    refused(&length("NaN"), ParseProblem::NotUnderstood, "NaN");
    refused(&length("258 m2"), ParseProblem::NotUnderstood, "m2");
    refused(&length("1 m 10"), ParseProblem::UnitMissing, "10");
    refused(&length("--3"), ParseProblem::NotUnderstood, "-");
    refused(&length("3 ft 6 in and"), ParseProblem::NotUnderstood, "3 ft 6 in and");
}

#[test]
fn nothing_typed_is_said_to_be_nothing() {
    for text in ["", "   ", "\u{a0}\t"] {
        refused(&Length::parse(text, Units::Metric), ParseProblem::Empty, "");
        refused(&Fraction::parse(text), ParseProblem::Empty, "");
    }
}

#[test]
fn a_comma_a_thousandfold_apart_is_refused_in_metric_units() {
    refused(
        &Length::parse("1,050", Units::Metric),
        ParseProblem::TwoReadings,
        "1,050",
    );
    refused(
        &Area::parse("12,500 m2", Units::Metric),
        ParseProblem::TwoReadings,
        "12,500",
    );
    refused(
        &Length::parse_with("1,050", LengthUnit::Centimetres),
        ParseProblem::TwoReadings,
        "1,050",
    );
}

#[test]
fn numbers_no_farm_has_are_refused() {
    refused(
        &Length::parse("1000001 m", Units::Metric),
        ParseProblem::TooLarge,
        "1000001 m",
    );
    refused(
        &Length::parse(&"9".repeat(400), Units::Metric),
        ParseProblem::TooLarge,
        &("9".repeat(40) + "..."),
    );
    refused(
        &Mass::parse("1000000 t", Units::Metric),
        ParseProblem::TooLarge,
        "1000000 t",
    );
    refused(
        &MassPerArea::parse("10 lb/0.0001 sq ft", Units::Metric),
        ParseProblem::TooLarge,
        "10 lb/0.0001 sq ft",
    );
    assert!(Length::parse("1000000 m", Units::Metric).is_ok());
}

#[test]
fn rates_and_volumes_ask_for_their_units() {
    refused(
        &MassPerArea::parse("10", Units::Customary),
        ParseProblem::UnitMissing,
        "10",
    );
    refused(
        &MassPerArea::parse("10 lb", Units::Customary),
        ParseProblem::UnitMissing,
        "10 lb",
    );
    refused(
        &MassPerArea::parse("10 lb/100 ft", Units::Customary),
        ParseProblem::NotUnderstood,
        "ft",
    );
    refused(
        &MassPerArea::parse("10 lb/0 sq ft", Units::Customary),
        ParseProblem::OutOfRange,
        "10 lb/0 sq ft",
    );
    refused(
        &MassPerLength::parse("10 lb/acre", Units::Customary),
        ParseProblem::NotUnderstood,
        "acre",
    );
    refused(
        &MassPerLength::parse("3 lb/100 ft of", Units::Customary),
        ParseProblem::NotUnderstood,
        "3 lb/100 ft of",
    );
    refused(&Volume::parse("3", Units::Customary), ParseProblem::UnitMissing, "3");
}

#[test]
fn water_and_what_is_in_it_ask_for_their_units() {
    let strength = |text| Concentration::parse(text, Units::Customary);
    refused(&strength("150"), ParseProblem::UnitMissing, "150");
    refused(&strength("150 lb"), ParseProblem::UnitMissing, "150 lb");
    refused(&strength("22 fl oz/100 gal"), ParseProblem::NotUnderstood, "fl");
    refused(&strength("22 oz/acre"), ParseProblem::NotUnderstood, "acre");
    refused(&strength("150 ppm N"), ParseProblem::NotUnderstood, "ppm");
    refused(&strength("99999999999 ppm"), ParseProblem::TooLarge, "99999999999 ppm");
    let flow = |text| Flow::parse(text, Units::Customary);
    refused(&flow("5"), ParseProblem::UnitMissing, "5");
    refused(&flow("5 gal"), ParseProblem::UnitMissing, "5 gal");
    refused(&flow("5 gal/ft"), ParseProblem::NotUnderstood, "ft");
    refused(&flow("5 gpm/100 ft"), ParseProblem::NotUnderstood, "/");
    let tape = |text| FlowPerLength::parse(text, Units::Customary);
    refused(&tape("0.45 gpm"), ParseProblem::UnitMissing, "0.45 gpm");
    refused(&tape("0.45 gpm/0 ft"), ParseProblem::OutOfRange, "0.45 gpm/0 ft");
    refused(&tape("0.45 gpm/100 acres"), ParseProblem::NotUnderstood, "acres");
    let span = |text| Span::parse(text, Units::Customary);
    refused(&span("45"), ParseProblem::UnitMissing, "45");
    refused(&span("10 min 6 h"), ParseProblem::NotUnderstood, "h");
}

#[test]
fn directions_and_parts_outside_their_range_are_refused() {
    refused(&Bearing::parse("400"), ParseProblem::OutOfRange, "400");
    refused(&Bearing::parse("N 120 E"), ParseProblem::OutOfRange, "N 120 E");
    refused(&Bearing::parse("N 30° 75' E"), ParseProblem::OutOfRange, "N 30° 75' E");
    refused(&Bearing::parse("N 30"), ParseProblem::NotUnderstood, "N 30");
    refused(&Bearing::parse("N 30 N"), ParseProblem::NotUnderstood, "N");
    refused(&Bearing::parse("E 30 N"), ParseProblem::NotUnderstood, "30");
    refused(&Bearing::parse("up"), ParseProblem::NotUnderstood, "up");
    refused(&Bearing::parse("nn"), ParseProblem::NotUnderstood, "nn");
    refused(&Fraction::parse("85"), ParseProblem::OutOfRange, "85");
    refused(&Fraction::parse("150 %"), ParseProblem::OutOfRange, "150 %");
    refused(&Fraction::parse("85 % of it"), ParseProblem::NotUnderstood, "of");
    refused(&Fraction::parse("-5 %"), ParseProblem::NotUnderstood, "-");
}

#[test]
fn the_sentence_quotes_the_part_and_names_examples_that_are_read() {
    let error = Length::parse("3 fot", Units::Customary).expect_err("fot is no unit");
    assert_eq!(
        error.to_string(),
        "“fot” was not understood as a length; write it like 3'6\", 42 in, 3 1/2 ft or 1.1 m"
    );
    for (kind, reads) in [
        (
            QuantityKind::Length,
            (|text| Length::parse(text, Units::Customary).is_ok()) as fn(&str) -> bool,
        ),
        (QuantityKind::Area, |text| Area::parse(text, Units::Customary).is_ok()),
        (QuantityKind::Mass, |text| Mass::parse(text, Units::Customary).is_ok()),
        (QuantityKind::Volume, |text| {
            Volume::parse(text, Units::Customary).is_ok()
        }),
        (QuantityKind::MassPerArea, |text| {
            MassPerArea::parse(text, Units::Customary).is_ok()
        }),
        (QuantityKind::MassPerLength, |text| {
            MassPerLength::parse(text, Units::Customary).is_ok()
        }),
        (QuantityKind::Concentration, |text| {
            Concentration::parse(text, Units::Customary).is_ok()
        }),
        (QuantityKind::Flow, |text| Flow::parse(text, Units::Customary).is_ok()),
        (QuantityKind::FlowPerLength, |text| {
            FlowPerLength::parse(text, Units::Customary).is_ok()
        }),
        (QuantityKind::Span, |text| Span::parse(text, Units::Customary).is_ok()),
        (QuantityKind::Bearing, |text| Bearing::parse(text).is_ok()),
        (QuantityKind::Fraction, |text| Fraction::parse(text).is_ok()),
    ] {
        for example in kind.examples().split(", ").flat_map(|part| part.split(" or ")) {
            assert!(reads(example), "{example:?} is named as an example of {}", kind.name());
        }
    }
}

proptest! {
    #[test]
    fn nothing_that_can_be_typed_breaks_a_reader(text in any::<String>()) {
        read_all(&text);
    }

    #[test]
    fn nothing_that_looks_like_a_measure_breaks_a_reader(
        text in "[-−0-9.,/⁄ ½¼′″'\"°%]{0,8}(ft|in|m2|²|sq|lb|gal|gpm|h|per|of|N|n|e| |x2|º|é){0,2}[0-9.,/½ '\"-]{0,6}(ft|in|e|acre|gal| |²){0,2}"
    ) {
        read_all(&text);
    }
}

/// Reads a text in every way; a result must be finite, an error must have words.
fn read_all(text: &str) {
    for units in [Units::Customary, Units::Metric] {
        sound(Length::parse(text, units).map(Length::to_metres));
        sound(Area::parse(text, units).map(Area::to_square_metres));
        sound(Mass::parse(text, units).map(Mass::to_kilograms));
        sound(Volume::parse(text, units).map(Volume::to_cubic_metres));
        sound(MassPerArea::parse(text, units).map(MassPerArea::to_kilograms_per_square_metre));
        sound(MassPerLength::parse(text, units).map(MassPerLength::to_kilograms_per_metre));
        sound(Concentration::parse(text, units).map(Concentration::to_kilograms_per_cubic_metre));
        sound(Flow::parse(text, units).map(Flow::to_cubic_metres_per_second));
        sound(FlowPerLength::parse(text, units).map(FlowPerLength::to_square_metres_per_second));
        sound(Span::parse(text, units).map(Span::to_seconds));
    }
    sound(Bearing::parse(text).map(Bearing::to_degrees));
    sound(Fraction::parse(text).map(Fraction::get));
}

fn sound(read: Result<f64, ParseError>) {
    match read {
        Ok(value) => assert!(value.is_finite()),
        Err(error) => assert!(error.to_string().len() > 20 && error.part().chars().count() <= 43),
    }
}
