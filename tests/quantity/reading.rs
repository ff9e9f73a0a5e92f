//! What growers type is read as they mean it.

use Units::{Customary, Metric};
use quillet::quantity::{
    Area, Bearing, Concentration, Flow, FlowPerLength, Fraction, Length, LengthUnit, Mass, MassPerArea, MassPerLength,
    MassUnit, Span, Units, Volume,
};

use crate::close;

#[track_caller]
fn feet(text: &str, expected: f64) {
    for units in [Customary, Metric] {
        let read = Length::parse(text, units).map(Length::to_feet);
        assert!(
            read.as_ref().is_ok_and(|&feet| close(feet, expected)),
            "{text:?} in {units:?}: {read:?}"
        );
    }
}

#[track_caller]
fn metres(text: &str, expected: f64) {
    for units in [Customary, Metric] {
        let read = Length::parse(text, units).map(Length::to_metres);
        assert!(
            read.as_ref().is_ok_and(|&metres| close(metres, expected)),
            "{text:?} in {units:?}: {read:?}"
        );
    }
}

#[test]
fn feet_and_inches_in_every_spelling() {
    for text in [
        "3'6\"",
        "3' 6\"",
        "3′6″",
        "3′ 6″",
        "3’6”",
        "3‘ 6“",
        "3'6''",
        "3' 6",
        "3'-6\"",
        "3 ft 6 in",
        "3ft6in",
        "3 ft. 6 in.",
        "3 ft 6",
        "3 ft, 6 in",
        "3 feet 6 inches",
        "3 foot 6 inch",
        "3 feet and 6 inches",
        "42\"",
        "42 in",
        "42in",
        "42 ″",
        "42 inches",
        "3 1/2 ft",
        "3-1/2 ft",
        "3½ ft",
        "3 ½ ft",
        "3½'",
        "3.5 ft",
        "3,5 ft",
        "3.5'",
        "7/2 ft",
        "1 yd 6 in",
        " 3 FT 6 IN ",
        "3\u{a0}ft\u{a0}6\u{a0}in",
    ] {
        feet(text, 3.5);
    }
    feet("3' 6 1/2\"", 3.0 + 6.5 / 12.0);
    feet("3 ft 6½ in", 3.0 + 6.5 / 12.0);
    feet("3'6-1/2\"", 3.0 + 6.5 / 12.0);
    feet("⅝ in", 0.625 / 12.0);
    feet("1/2\"", 0.5 / 12.0);
    feet("2 yards", 6.0);
    feet("3. ft", 3.0);
    feet(".5 ft", 0.5);
}

#[test]
fn metric_lengths_in_every_spelling() {
    for text in [
        "1.1m",
        "1.1 m",
        "1,1 m",
        "110 cm",
        "110cm",
        "1 m 10 cm",
        "1100 mm",
        "1.1 metres",
        "1.1 meter",
        "1,10 M",
    ] {
        metres(text, 1.1);
    }
    metres("½ m", 0.5);
}

#[test]
fn a_length_without_a_unit_takes_the_fields_own() {
    let read = |text, units| Length::parse(text, units).map(Length::to_metres);
    assert_eq!(read("0.9", Metric), Ok(0.9));
    assert_eq!(read("0,9", Metric), Ok(0.9));
    assert!(read("3 1/2", Customary).is_ok_and(|m| close(m, 1.0668)));
    let with = |text, bare| Length::parse_with(text, bare).map(Length::to_metres);
    assert!(with("6", LengthUnit::Inches).is_ok_and(|m| close(m, 0.1524)));
    assert!(with("15", LengthUnit::Centimetres).is_ok_and(|m| close(m, 0.15)));
    assert!(with("7 1/2", LengthUnit::Inches).is_ok_and(|m| close(m, 0.1905)));
    assert!(with("1 ft", LengthUnit::Inches).is_ok_and(|m| close(m, 0.3048)));
}

#[test]
fn a_minus_sign_counts_for_the_whole_length() {
    feet("-2 ft", -2.0);
    feet("−3'6\"", -3.5);
    feet("- 3 ft 6 in", -3.5);
    assert_eq!(
        Length::parse("-0", Customary).map(|l| l.to_metres().is_sign_negative()),
        Ok(false)
    );
}

#[test]
fn decimal_and_thousands_marks() {
    let customary = |text| Length::parse(text, Customary).map(Length::to_feet);
    let metric = |text| Length::parse(text, Metric).map(Length::to_metres);
    for (text, expected) in [
        ("1,050", 1050.0),
        ("12,050", 12_050.0),
        ("1,050.5", 1050.5),
        ("1.050,5", 1050.5),
        ("1,234,567", 1_234_567.0),
        ("1.050", 1.05),
        ("0,125", 0.125),
        ("12,5", 12.5),
        ("1,05", 1.05),
        ("1,0500", 1.05),
        ("1234,567", 1234.567),
    ] {
        let read = customary(text);
        assert!(
            read.as_ref().is_ok_and(|&feet| close(feet, expected)),
            "{text}: {read:?}"
        );
    }
    for (text, expected) in [
        ("1,050.5", 1050.5),
        ("1.050,50", 1050.5),
        ("0,125", 0.125),
        ("1.050", 1.05),
        ("12,5", 12.5),
    ] {
        let read = metric(text);
        assert!(
            read.as_ref().is_ok_and(|&metres| close(metres, expected)),
            "{text}: {read:?}"
        );
    }
}

#[test]
fn areas() {
    let read = |text, units| Area::parse(text, units).map(Area::to_square_feet);
    for text in [
        "1,050 sq ft",
        "1050 sq. ft.",
        "1050 square feet",
        "1050 ft2",
        "1050 ft²",
        "1,050",
        "1050 sf",
    ] {
        assert!(read(text, Customary).is_ok_and(|sq_ft| close(sq_ft, 1050.0)), "{text}");
    }
    assert!(read("1/2 acre", Metric).is_ok_and(|sq_ft| close(sq_ft, 21_780.0)));
    assert!(read("0.4 ac", Customary).is_ok_and(|sq_ft| close(sq_ft, 17_424.0)));
    assert!(read("10 sq yd", Customary).is_ok_and(|sq_ft| close(sq_ft, 90.0)));
    let read = |text, units| Area::parse(text, units).map(Area::to_square_metres);
    for text in ["258,6", "258.6 m2", "258.6 m²", "258.6 sq m", "258.6 square metres"] {
        assert!(read(text, Metric).is_ok_and(|m2| close(m2, 258.6)), "{text}");
    }
    assert!(read("1.2 ha", Customary).is_ok_and(|m2| close(m2, 12_000.0)));
}

#[test]
fn weights() {
    let read = |text, units| Mass::parse(text, units).map(Mass::to_kilograms);
    let pound = 0.453_592_37;
    assert!(read("2 lb 3 oz", Metric).is_ok_and(|kg| close(kg, pound * (2.0 + 3.0 / 16.0))));
    assert!(read("2lbs, 3 ounces", Metric).is_ok_and(|kg| close(kg, pound * (2.0 + 3.0 / 16.0))));
    assert!(read("4 oz", Metric).is_ok_and(|kg| close(kg, pound / 4.0)));
    assert!(read("2½ pounds", Customary).is_ok_and(|kg| close(kg, pound * 2.5)));
    assert!(read("2.5", Customary).is_ok_and(|kg| close(kg, pound * 2.5)));
    assert!(read("2 tons", Customary).is_ok_and(|kg| close(kg, pound * 4000.0)));
    assert!(read("300 g", Customary).is_ok_and(|kg| close(kg, 0.3)));
    assert!(read("1.2 kg", Customary).is_ok_and(|kg| close(kg, 1.2)));
    assert!(read("1,2", Metric).is_ok_and(|kg| close(kg, 1.2)));
    assert!(Mass::parse_with("3", MassUnit::Ounces).is_ok_and(|mass| close(mass.to_ounces(), 3.0)));
    assert!(Mass::parse_with("3", MassUnit::Grams).is_ok_and(|mass| close(mass.to_grams(), 3.0)));
}

#[test]
fn volumes() {
    let read = |text| Volume::parse(text, Customary).map(Volume::to_cups);
    for (text, cups) in [
        ("2 1/2 cups", 2.5),
        ("1 cup", 1.0),
        ("¾ c", 0.75),
        ("2 gal", 32.0),
        ("1 qt", 4.0),
        ("3 pints", 6.0),
        ("8 fl oz", 1.0),
        ("16 tbsp", 1.0),
        ("48 teaspoons", 1.0),
        ("1 gal 2 cups", 18.0),
    ] {
        assert!(
            read(text).is_ok_and(|read| close(read, cups)),
            "{text}: {:?}",
            read(text)
        );
    }
    assert!(Volume::parse("250 ml", Metric).is_ok_and(|volume| close(volume.to_litres(), 0.25)));
    assert!(Volume::parse("20 L", Metric).is_ok_and(|volume| close(volume.to_litres(), 20.0)));
}

#[test]
fn rates_over_ground() {
    let read = |text| MassPerArea::parse(text, Customary).map(MassPerArea::to_pounds_per_acre);
    for text in [
        "10 lb/1000 sq ft",
        "10 lb / 1,000 sq ft",
        "10 lb per 1000 square feet",
        "1 lb/100 sq ft",
        "160 oz/1000 ft2",
    ] {
        assert!(
            read(text).is_ok_and(|rate| close(rate, 435.6)),
            "{text}: {:?}",
            read(text)
        );
    }
    assert!(read("65 lb/acre").is_ok_and(|rate| close(rate, 65.0)));
    assert!(read("60 lb/ac").is_ok_and(|rate| close(rate, 60.0)));
    assert!(read("2 tons/acre").is_ok_and(|rate| close(rate, 4000.0)));
    assert!(read("1 lb 8 oz per acre").is_ok_and(|rate| close(rate, 1.5)));
    let read = |text| MassPerArea::parse(text, Metric).map(MassPerArea::to_kilograms_per_hectare);
    for text in ["30 g/m2", "30 g/m²", "30 g per sq m", "300 kg/ha", "0,3 t/ha"] {
        assert!(
            read(text).is_ok_and(|rate| close(rate, 300.0)),
            "{text}: {:?}",
            read(text)
        );
    }
    assert!(read("70 kg/ha").is_ok_and(|rate| close(rate, 70.0)));
}

#[test]
fn every_way_a_laboratory_writes_a_rate() {
    let acre = |text| MassPerArea::parse(text, Customary).map(MassPerArea::to_pounds_per_acre);
    for (text, pounds) in [
        ("100 lb/acre", 100.0),
        ("100 lbs per acre", 100.0),
        ("2 lb/1,000 sq ft", 87.12),
        ("0.5 lb/100 sq ft", 217.8),
        ("2 ton/acre", 4000.0),
        ("2 tons per acre", 4000.0),
    ] {
        assert!(
            acre(text).is_ok_and(|rate| close(rate, pounds)),
            "{text}: {:?}",
            acre(text)
        );
    }
    let along = |text| MassPerLength::parse(text, Metric).map(MassPerLength::to_grams_per_metre);
    for (text, grams) in [("2 kg/100 m", 20.0), ("2 kg per 100 m of row", 20.0), ("20 g/m", 20.0)] {
        assert!(
            along(text).is_ok_and(|rate| close(rate, grams)),
            "{text}: {:?}",
            along(text)
        );
    }
}

#[test]
fn strengths_of_feed_and_stock() {
    let ppm = |text| Concentration::parse(text, Customary).map(Concentration::to_parts_per_million);
    for text in [
        "150 ppm",
        "150ppm",
        "150 parts per million",
        "150 mg/L",
        "150 mg per litre",
        "0.15 g/l",
    ] {
        assert!(
            ppm(text).is_ok_and(|read| close(read, 150.0)),
            "{text}: {:?}",
            ppm(text)
        );
    }
    let pounds = |text| Concentration::parse(text, Metric).map(Concentration::to_pounds_per_gallon);
    for text in [
        "1.08 lb/gal",
        "108 lb/100 gal",
        "108 lb per 100 gallons",
        "1728 oz/100 gal",
        "1 lb 1.28 oz/gal",
    ] {
        assert!(
            pounds(text).is_ok_and(|read| close(read, 1.08)),
            "{text}: {:?}",
            pounds(text)
        );
    }
}

#[test]
fn flows_of_pipes_and_tape() {
    let gpm = |text| Flow::parse(text, Customary).map(Flow::to_gallons_per_minute);
    for text in [
        "1.5 gpm",
        "1.5 gal/min",
        "1.5 gallons per minute",
        "90 gph",
        "90 gal/h",
        "1½ gpm",
    ] {
        assert!(gpm(text).is_ok_and(|read| close(read, 1.5)), "{text}: {:?}", gpm(text));
    }
    let litres = |text| Flow::parse(text, Metric).map(Flow::to_litres_per_hour);
    for text in ["300 l/h", "300 L/h", "300 lph", "5 l/min", "5 lpm"] {
        assert!(
            litres(text).is_ok_and(|read| close(read, 300.0)),
            "{text}: {:?}",
            litres(text)
        );
    }
    let tape = |text| FlowPerLength::parse(text, Customary).map(FlowPerLength::to_gallons_per_minute_per_100_feet);
    for text in [
        "0.45 gpm/100 ft",
        "0.45 gpm per 100 ft",
        "0.45 gal/min/100'",
        "27 gph/100 ft",
    ] {
        assert!(
            tape(text).is_ok_and(|read| close(read, 0.45)),
            "{text}: {:?}",
            tape(text)
        );
    }
    let metre = |text| FlowPerLength::parse(text, Metric).map(FlowPerLength::to_litres_per_hour_per_metre);
    for text in ["3,3 l/h per m", "3.3 l/h/m", "330 l/h per 100 m"] {
        assert!(
            metre(text).is_ok_and(|read| close(read, 3.3)),
            "{text}: {:?}",
            metre(text)
        );
    }
}

#[test]
fn times() {
    let minutes = |text| Span::parse(text, Customary).map(Span::to_minutes);
    for (text, expected) in [
        ("6 h 10 min", 370.0),
        ("6 hours 10", 370.0),
        ("6h10min", 370.0),
        ("45 min", 45.0),
        ("1.5 h", 90.0),
        ("1 1/2 hours", 90.0),
        ("90 s", 1.5),
    ] {
        assert!(
            minutes(text).is_ok_and(|read| close(read, expected)),
            "{text}: {:?}",
            minutes(text)
        );
    }
}

#[test]
fn rates_along_rows() {
    let read = |text| MassPerLength::parse(text, Customary).map(MassPerLength::to_pounds_per_100_feet);
    for text in [
        "3 lb/100 ft",
        "3 lb per 100 ft of row",
        "3 lb/100 row ft",
        "3 lb/100'",
        "4.8 oz/10 ft",
        "48 oz/100 feet",
    ] {
        assert!(
            read(text).is_ok_and(|rate| close(rate, 3.0)),
            "{text}: {:?}",
            read(text)
        );
    }
    assert!(read("5 oz/10 ft").is_ok_and(|rate| close(rate, 3.125)));
    assert!(MassPerLength::parse("20 g/m", Metric).is_ok_and(|rate| close(rate.to_grams_per_metre(), 20.0)));
}

#[test]
fn directions() {
    for (text, degrees) in [
        ("0", 0.0),
        ("45", 45.0),
        ("45°", 45.0),
        ("45 °", 45.0),
        ("45 deg", 45.0),
        ("12,5", 12.5),
        ("-10°", 350.0),
        ("360", 0.0),
        ("N", 0.0),
        ("ne", 45.0),
        ("NNE", 22.5),
        ("north", 0.0),
        ("North-East", 45.0),
        ("north east", 45.0),
        ("southwest", 225.0),
        ("WNW", 292.5),
        ("n-ne", 22.5),
        ("N 30 E", 30.0),
        ("N30E", 30.0),
        ("N 30° W", 330.0),
        ("S 30 E", 150.0),
        ("S 30 W", 210.0),
        ("south 12° 30' west", 192.5),
        ("N 30°15'36\" E", 30.26),
        ("N 0 E", 0.0),
        ("N 90 W", 270.0),
    ] {
        let read = Bearing::parse(text).map(Bearing::to_degrees);
        assert!(
            read.as_ref().is_ok_and(|&read| close(read, degrees)),
            "{text}: {read:?}"
        );
    }
}

#[test]
fn parts_of_a_whole() {
    for (text, value) in [
        ("85 %", 0.85),
        ("85%", 0.85),
        ("85 percent", 0.85),
        ("0.85", 0.85),
        ("0,85", 0.85),
        ("1", 1.0),
        ("3/4", 0.75),
    ] {
        let read = Fraction::parse(text).map(Fraction::get);
        assert!(read.as_ref().is_ok_and(|&read| close(read, value)), "{text}: {read:?}");
    }
    for (text, value) in [("85", 0.85), ("85 %", 0.85), ("1", 0.01), ("15.5", 0.155)] {
        let read = Fraction::parse_percent(text).map(Fraction::get);
        assert!(read.as_ref().is_ok_and(|&read| close(read, value)), "{text}: {read:?}");
    }
}
