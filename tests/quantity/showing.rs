//! What is shown: wording, steps and carries.

use Units::{Customary, Metric};
use quillet::quantity::{
    Area, Bearing, Concentration, Flow, FlowPerLength, Fraction, Length, Mass, MassPerArea, MassPerLength, Span, Units,
    Volume, count,
};

#[test]
fn plot_lengths_are_in_feet_and_quarter_inches_or_centimetres() {
    for (inches, shown) in [
        (744.0, "62 ft"),
        (42.0, "3 ft 6 in"),
        (530.5, "44 ft 2 1/2 in"),
        (6.0, "6 in"),
        (0.25, "1/4 in"),
        (0.0, "0 ft"),
        (11.9, "1 ft"),
        (12_006.0, "1,000 ft 6 in"),
        (-42.0, "−3 ft 6 in"),
        (-0.1, "0 ft"),
        (-0.75, "−3/4 in"),
    ] {
        assert_eq!(Length::inches(inches).show(Customary), shown);
    }
    for (metres, shown) in [
        (18.8976, "18.90 m"),
        (0.0, "0.00 m"),
        (1234.5, "1,234.50 m"),
        (-2.0, "−2.00 m"),
        (-0.001, "0.00 m"),
    ] {
        assert_eq!(Length::metres(metres).show(Metric), shown);
    }
}

#[test]
fn spacings_are_shown_as_the_trade_says_them() {
    for (inches, shown) in [
        (6.0, "6 in"),
        (42.0, "42 in"),
        (36.0, "3 ft"),
        (30.0, "30 in"),
        (7.5, "7 1/2 in"),
        (12.0, "12 in"),
        (24.0, "2 ft"),
        (23.95, "2 ft"),
        (71.0, "71 in"),
        (72.0, "6 ft"),
        (90.0, "7 ft 6 in"),
        (0.0, "0 in"),
        (-18.0, "−18 in"),
        (-0.05, "0 in"),
        (71.95, "6 ft"),
        (0.5, "1/2 in"),
    ] {
        assert_eq!(Length::inches(inches).show_short(Customary), shown, "{inches} in");
    }
    for (metres, shown) in [
        (0.15, "15 cm"),
        (0.1524, "15.2 cm"),
        (0.9, "0.9 m"),
        (1.1, "1.1 m"),
        (0.4996, "0.5 m"),
        (0.4994, "49.9 cm"),
        (1.0, "1 m"),
        (0.0, "0 cm"),
        (-0.15, "−15 cm"),
        (1050.0, "1,050.0 m"),
    ] {
        assert_eq!(Length::metres(metres).show_short(Metric), shown, "{metres} m");
    }
}

#[test]
fn totals_and_counts_have_thousands_marks() {
    assert_eq!(Length::feet(1440.0).show_total(Customary), "1,440 ft");
    assert_eq!(Length::metres(438.912).show_total(Metric), "438.9 m");
    for (n, shown) in [
        (0, "0"),
        (999, "999"),
        (1000, "1,000"),
        (1_234_567, "1,234,567"),
        (u64::MAX, "18,446,744,073,709,551,615"),
    ] {
        assert_eq!(count(n), shown);
    }
}

#[test]
fn areas_change_unit_at_an_acre_and_a_hectare() {
    for (sq_ft, shown) in [
        (2784.0, "2,784 sq ft"),
        (12.5, "12.5 sq ft"),
        (99.97, "100 sq ft"),
        (0.0, "0 sq ft"),
        (43_559.0, "43,559 sq ft"),
    ] {
        assert_eq!(Area::square_feet(sq_ft).show(Customary), shown);
    }
    assert_eq!(Area::acres(1.2099).show(Customary), "1.21 acres");
    assert_eq!(Area::acres(1.0).show(Customary), "1 acre");
    assert_eq!(Area::square_metres(258.64).show(Metric), "258.6 m²");
    assert_eq!(Area::square_metres(1234.0).show(Metric), "1,234.0 m²");
    assert_eq!(Area::square_metres(12_000.0).show(Metric), "1.2 ha");
}

#[test]
fn seed_and_product_have_their_own_steps() {
    for (ounces, shown) in [
        (0.333, "0.33 oz"),
        (2.93, "2.9 oz"),
        (0.999, "1.0 oz"),
        (15.97, "1.00 lb"),
        (20.0, "1.25 lb"),
    ] {
        assert_eq!(Mass::ounces(ounces).show_seed(Customary), shown);
    }
    for (grams, shown) in [
        (8.25, "8.3 g"),
        (99.96, "100 g"),
        (284.4, "284 g"),
        (999.7, "1.000 kg"),
        (1234.4, "1.234 kg"),
    ] {
        assert_eq!(Mass::grams(grams).show_seed(Metric), shown);
    }
    assert_eq!(Mass::pounds(6.8871).show_product(Customary), "6.89 lb");
    assert_eq!(Mass::pounds(0.125).show_product(Customary), "0.13 lb");
    assert_eq!(Mass::kilograms(3.1239).show_product(Metric), "3.12 kg");
}

#[test]
fn sixteen_ounces_carry_over() {
    // Common practice, no source: 1.9972 lb and 45.97 lb are never "1 lb 16 oz" and "45 lb 16 oz".
    assert_eq!(Mass::pounds(1.9972).show_pounds_ounces(), "2 lb");
    assert_eq!(Mass::pounds(45.97).show_pounds_ounces(), "46 lb");
    assert_eq!(Mass::pounds(2.381).show_pounds_ounces(), "2 lb 6 oz");
    assert_eq!(Mass::ounces(6.4).show_pounds_ounces(), "6 oz");
    assert_eq!(Mass::ZERO.show_pounds_ounces(), "0 oz");
}

#[test]
fn cups_and_liquids() {
    assert_eq!(Volume::cups(2.602).show_cups(), "2.6 cups");
    assert_eq!(Volume::cups(0.28).show_cups(), "0.28 cups");
    assert_eq!(Volume::cups(1.01).show_cups(), "1 cup");
    assert_eq!(Volume::gallons(5.25).show(Customary), "5.3 gal");
    assert_eq!(Volume::cups(5.0).show(Customary), "5 cups");
    assert_eq!(Volume::litres(0.25).show(Metric), "250 ml");
    assert_eq!(Volume::litres(0.9999).show(Metric), "1 l");
    assert_eq!(Volume::litres(19.68).show(Metric), "19.68 l");
}

#[test]
fn cups_become_spoons_where_they_are_small() {
    for (tablespoons, shown) in [
        (40.0, "2.5 cups"),
        (16.0, "1 cup"),
        (15.7, "15½ tbsp"),
        (6.4, "6½ tbsp"),
        (4.0, "4 tbsp"),
        (3.7, "3½ tbsp"),
        (2.5, "2½ tbsp"),
        (1.0, "1 tbsp"),
        (0.75, "1 tbsp"),
        (0.7, "2 tsp"),
        (0.25, "¾ tsp"),
        (0.01, "less than ¼ tsp"),
        (0.0, "less than ¼ tsp"),
    ] {
        assert_eq!(Volume::tablespoons(tablespoons).show_measure(), shown, "{tablespoons}");
    }
}

#[test]
fn water_and_what_is_in_it() {
    for (ppm, customary, metric) in [
        (69.3, "69 ppm", "69 ppm"),
        (2.54, "2.5 ppm", "2.5 ppm"),
        (9.96, "10 ppm", "10 ppm"),
        (999.6, "1,000 ppm", "1,000.0 ppm"),
        (1666.66, "1,667 ppm", "1,667.0 ppm"),
        (0.0, "0 ppm", "0 ppm"),
    ] {
        assert_eq!(Concentration::parts_per_million(ppm).show(Customary), customary);
        assert_eq!(Concentration::parts_per_million(ppm).show(Metric), metric);
    }
    let nitre = Concentration::grams_per_litre(133.0);
    assert_eq!(nitre.show_stock(Customary), "1.11 lb/gal");
    assert_eq!(nitre.show_stock(Metric), "133 g/l");
    assert_eq!(Concentration::grams_per_litre(1020.0).show_stock(Metric), "1,020.0 g/l");
    let flow = Flow::gallons_per_minute(1.35);
    assert_eq!(flow.show(Customary), "1.35 gpm");
    assert_eq!(flow.show(Metric), "306.6 l/h");
    let tape = FlowPerLength::gallons_per_minute_per_100_feet(0.45);
    assert_eq!(tape.show(Customary), "0.45 gpm/100 ft");
    assert_eq!(tape.show(Metric), "3.35 l/h per m");
    for (seconds, shown) in [
        (22_222.2, "6 h 10 min"),
        (7200.0, "2 h"),
        (7180.0, "2 h"),
        (3569.0, "59 min"),
        (3571.0, "1 h"),
        (2700.0, "45 min"),
        (59.6, "1 min"),
        (40.2, "40 s"),
        (0.0, "0 s"),
        (-2700.0, "−45 min"),
        (-0.2, "0 s"),
    ] {
        assert_eq!(Span::seconds(seconds).show(), shown, "{seconds} s");
    }
}

#[test]
fn rates_directions_and_parts() {
    assert_eq!(
        MassPerArea::pounds_per_1000_square_feet(10.0).show_garden(Customary),
        "10 lb/1,000 sq ft"
    );
    assert_eq!(MassPerArea::grams_per_square_metre(30.0).show_garden(Metric), "30 g/m²");
    assert_eq!(
        MassPerArea::pounds_per_acre(65.34).show_field(Customary),
        "65.3 lb/acre"
    );
    assert_eq!(
        MassPerArea::kilograms_per_hectare(1050.0).show_field(Metric),
        "1,050.0 kg/ha"
    );
    assert_eq!(MassPerLength::pounds_per_100_feet(3.0).show(Customary), "3 lb/100 ft");
    assert_eq!(MassPerLength::grams_per_metre(20.0).show(Metric), "20 g/m");
    for (degrees, shown, word) in [
        (0.0, "0°", "N"),
        (12.5, "12.5°", "NNE"),
        (359.999, "0°", "N"),
        (348.0, "348°", "NNW"),
        (349.0, "349°", "N"),
        (90.0, "90°", "E"),
        (225.0, "225°", "SW"),
    ] {
        assert_eq!(Bearing::degrees(degrees).show(), shown);
        assert_eq!(Bearing::degrees(degrees).compass_word(), word, "{degrees}°");
    }
    assert_eq!(Fraction::percent(15.5).map(Fraction::show).as_deref(), Some("15.5 %"));
    assert_eq!(Fraction::percent(85.0).map(Fraction::show).as_deref(), Some("85 %"));
}
