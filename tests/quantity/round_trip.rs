//! What is shown is read back as the same, to the step that is shown, in both units; and the fonts can print it.

use Units::{Customary, Metric};
use proptest::prelude::*;
use quillet::quantity::{
    Area, Bearing, Concentration, Flow, FlowPerLength, Fraction, Length, Mass, MassPerArea, MassPerLength, Span, Units,
    Volume,
};

/// Half the step that is shown, with room for what binary fractions lose.
fn within_half(value: f64, shown: f64, step: f64) -> bool {
    (value - shown).abs() <= step * 0.5 + value.abs() * 1e-9
}

/// Reads back what was shown and compares in the unit of the step.
macro_rules! same {
    ($shown:expr, $read:expr, $value:expr, $step:expr) => {{
        let shown: String = $shown;
        let printable = |c: char| c.is_ascii_graphic() || " ½¼¾°×–—·²−’“”\u{a0}".contains(c);
        prop_assert!(
            shown.chars().all(printable),
            "{shown} has a character the printing fonts lack"
        );
        let read = $read(&shown);
        prop_assert!(read.is_ok(), "{shown}: {read:?}");
        if let Ok(read) = read {
            prop_assert!(
                within_half($value, read, $step),
                "{} was shown as {shown} and read as {read}",
                $value
            );
        }
    }};
}

proptest! {
    #[test]
    fn lengths(feet in -200_000.0..200_000.0_f64) {
        let length = Length::feet(feet);
        let inches = |text: &str| Length::parse(text, Customary).map(Length::to_inches);
        let metres = |text: &str| Length::parse(text, Metric).map(Length::to_metres);
        same!(length.show(Customary), inches, length.to_inches(), 0.25);
        same!(length.show_short(Customary), inches, length.to_inches(), 0.25);
        same!(length.show_total(Customary), inches, length.to_inches(), 12.0);
        same!(length.show(Metric), metres, length.to_metres(), 0.01);
        same!(length.show_short(Metric), metres, length.to_metres(), 0.01);
        same!(length.show_total(Metric), metres, length.to_metres(), 0.1);
    }

    #[test]
    fn spacings(inches in -80.0..80.0_f64) {
        let length = Length::inches(inches);
        let read = |text: &str| Length::parse(text, Customary).map(Length::to_inches);
        same!(length.show_short(Customary), read, inches, 0.25);
        let read = |text: &str| Length::parse(text, Metric).map(Length::to_metres);
        let step = if length.abs() < Length::metres(0.4995) { 0.001 } else { 0.01 };
        same!(length.show_short(Metric), read, length.to_metres(), step);
    }

    #[test]
    fn areas(acres in 0.0..50.0_f64, sq_ft in 0.0..50_000.0_f64) {
        for area in [Area::acres(acres), Area::square_feet(sq_ft)] {
            let read = |text: &str| Area::parse(text, Customary).map(Area::to_square_feet);
            let step = if area.to_acres() >= 1.0 { 435.6 } else if area.to_square_feet() < 99.9 { 0.1 } else { 1.0 };
            same!(area.show(Customary), read, area.to_square_feet(), step);
            let read = |text: &str| Area::parse(text, Metric).map(Area::to_square_metres);
            let step = if area.to_square_metres() >= 10_000.0 { 100.0 } else { 0.1 };
            same!(area.show(Metric), read, area.to_square_metres(), step);
        }
    }

    #[test]
    fn weights(pounds in 0.0..3000.0_f64, ounces in 0.0..20.0_f64) {
        for mass in [Mass::pounds(pounds), Mass::ounces(ounces)] {
            let read = |text: &str| Mass::parse(text, Customary).map(Mass::to_pounds);
            same!(mass.show_product(Customary), read, mass.to_pounds(), 0.01);
            same!(mass.show_seed(Customary), read, mass.to_pounds(), 0.01);
            same!(mass.show_pounds_ounces(), read, mass.to_pounds(), 1.0 / 16.0);
            let read = |text: &str| Mass::parse(text, Metric).map(Mass::to_kilograms);
            same!(mass.show_product(Metric), read, mass.to_kilograms(), 0.01);
            same!(mass.show_seed(Metric), read, mass.to_kilograms(), 0.001);
        }
    }

    #[test]
    fn volumes(cups in 0.0..40.0_f64) {
        let volume = Volume::cups(cups);
        let read = |text: &str| Volume::parse(text, Customary).map(Volume::to_cups);
        same!(volume.show_cups(), read, cups, if cups < 0.99 { 0.01 } else { 0.1 });
        same!(volume.show(Customary), read, cups, if cups < 16.0 { 0.1 } else { 1.6 });
        let read = |text: &str| Volume::parse(text, Metric).map(Volume::to_litres);
        same!(volume.show(Metric), read, volume.to_litres(), if volume.to_litres() < 0.9995 { 0.001 } else { 0.01 });
    }

    #[test]
    fn spoons(tablespoons in 0.1..20.0_f64) {
        let volume = Volume::tablespoons(tablespoons);
        let read = |text: &str| Volume::parse(text, Customary).map(Volume::to_tablespoons);
        let step = if tablespoons < 0.75 { 0.25 / 3.0 } else if tablespoons < 15.75 { 0.5 } else { 1.6 };
        same!(volume.show_measure(), read, tablespoons, step);
    }

    #[test]
    fn strengths(ppm in 0.0..20_000.0_f64, grams in 0.0..2000.0_f64) {
        let feed = Concentration::parts_per_million(ppm);
        for units in [Customary, Metric] {
            let read = |text: &str| Concentration::parse(text, units).map(Concentration::to_parts_per_million);
            same!(feed.show(units), read, ppm, if ppm < 9.9 { 0.1 } else { 1.0 });
        }
        let stock = Concentration::grams_per_litre(grams);
        let read = |text: &str| Concentration::parse(text, Customary).map(Concentration::to_pounds_per_gallon);
        same!(stock.show_stock(Customary), read, stock.to_pounds_per_gallon(), 0.01);
        let read = |text: &str| Concentration::parse(text, Metric).map(Concentration::to_grams_per_litre);
        same!(stock.show_stock(Metric), read, grams, 0.1);
    }

    #[test]
    fn flows_and_times(gpm in 0.0..50.0_f64, seconds in -100_000.0..400_000.0_f64) {
        let flow = Flow::gallons_per_minute(gpm);
        let read = |text: &str| Flow::parse(text, Customary).map(Flow::to_gallons_per_minute);
        same!(flow.show(Customary), read, gpm, 0.01);
        let read = |text: &str| Flow::parse(text, Metric).map(Flow::to_litres_per_hour);
        same!(flow.show(Metric), read, flow.to_litres_per_hour(), 0.1);
        let tape = FlowPerLength::gallons_per_minute_per_100_feet(gpm);
        let read = |text: &str| {
            FlowPerLength::parse(text, Customary).map(FlowPerLength::to_gallons_per_minute_per_100_feet)
        };
        same!(tape.show(Customary), read, gpm, 0.01);
        let read = |text: &str| FlowPerLength::parse(text, Metric).map(FlowPerLength::to_litres_per_hour_per_metre);
        same!(tape.show(Metric), read, tape.to_litres_per_hour_per_metre(), 0.01);
        let read = |text: &str| Span::parse(text, Customary).map(Span::to_seconds);
        same!(Span::seconds(seconds).show(), read, seconds, if seconds.abs() < 59.5 { 1.0 } else { 60.0 });
    }

    #[test]
    fn rates_over_ground(pounds_per_acre in 0.0..20_000.0_f64) {
        let rate = MassPerArea::pounds_per_acre(pounds_per_acre);
        let read = |text: &str| MassPerArea::parse(text, Customary).map(MassPerArea::to_pounds_per_acre);
        same!(rate.show_field(Customary), read, pounds_per_acre, 0.1);
        same!(rate.show_garden(Customary), read, pounds_per_acre, 0.4356);
        let read = |text: &str| MassPerArea::parse(text, Metric).map(MassPerArea::to_kilograms_per_hectare);
        same!(rate.show_field(Metric), read, rate.to_kilograms_per_hectare(), 0.1);
        same!(rate.show_garden(Metric), read, rate.to_kilograms_per_hectare(), 0.1);
    }

    #[test]
    fn rates_along_rows(pounds in 0.0..200.0_f64) {
        let rate = MassPerLength::pounds_per_100_feet(pounds);
        let read = |text: &str| MassPerLength::parse(text, Customary).map(MassPerLength::to_pounds_per_100_feet);
        same!(rate.show(Customary), read, pounds, 0.01);
        let read = |text: &str| MassPerLength::parse(text, Metric).map(MassPerLength::to_grams_per_metre);
        same!(rate.show(Metric), read, rate.to_grams_per_metre(), 0.01);
    }

    #[test]
    fn directions_and_parts(degrees in 0.0..359.99_f64, percent in 0.0..100.0_f64) {
        let read = |text: &str| Bearing::parse(text).map(Bearing::to_degrees);
        same!(Bearing::degrees(degrees).show(), read, degrees, 0.01);
        let word = Bearing::parse(Bearing::degrees(degrees).compass_word()).map(Bearing::to_degrees);
        prop_assert!(word.is_ok_and(|word| ((word - degrees + 180.0).rem_euclid(360.0) - 180.0).abs() <= 11.25 + 1e-9));
        let read = |text: &str| Fraction::parse(text).map(Fraction::to_percent);
        let fraction = Fraction::percent(percent).unwrap_or_default();
        same!(fraction.show(), read, percent, 0.1);
    }

    /// Lengths that fall on a shown step come back as themselves.
    #[test]
    fn quarter_inches_come_back_exactly(quarters in 0_u32..100_000) {
        let length = Length::inches(f64::from(quarters) / 4.0);
        let read = Length::parse(&length.show(Customary), Customary);
        prop_assert!(read.as_ref().is_ok_and(|&read| read.approx_eq(length)), "{read:?}");
    }
}
