//! Unit factors against published ones.
//!
//! Source of the exact factors: A. Thompson and B. N. Taylor, *Guide for the Use of the International System of Units
//! (SI)*, NIST Special Publication 811, National Institute of Standards and Technology, 2008 edition, Appendix B
//! (values from memory of that publication). The acre of NIST is the US survey one, 4,046.873 m²; the acre here is
//! 43,560 international square feet, 4,046.8564224 m².

use quillet::quantity::{
    Area, Bearing, Concentration, Density, Flow, FlowPerLength, Fraction, Length, Mass, MassPerArea, MassPerLength,
    Span, Volume,
};

use crate::close;

#[test]
fn lengths_use_the_international_foot_and_inch() {
    assert!(close(Length::feet(1.0).to_metres(), 0.3048));
    assert!(close(Length::inches(1.0).to_metres(), 0.0254));
    assert!(close(Length::metres(1.0).to_feet(), 3.280_839_895_013_123));
    assert!(close(Length::inches(42.0).to_feet(), 3.5));
}

#[test]
fn areas_use_the_acre_of_43_560_square_feet() {
    assert!(close(Area::square_feet(1.0).to_square_metres(), 0.092_903_04));
    assert!(close(Area::acres(1.0).to_square_feet(), 43_560.0));
    assert!(close(Area::acres(1.0).to_square_metres(), 4_046.856_422_4));
}

#[test]
fn weights_are_avoirdupois() {
    assert!(close(Mass::pounds(1.0).to_kilograms(), 0.453_592_37));
    // NIST SP 811, Appendix B.8: ounce (avoirdupois) 2.834 952 E-02 kg, rounded there to seven digits.
    assert!((Mass::ounces(1.0).to_kilograms() - 0.028_349_52).abs() < 5e-9);
    assert!(close(Mass::pounds(2.0).to_ounces(), 32.0));
}

#[test]
fn volumes_are_us_liquid_measure() {
    // NIST SP 811, Appendix B.8: gallon (US) 3.785 412 E-03 m³, cup (US) 2.365 882 E-04 m³, rounded to seven digits.
    assert!((Volume::gallons(1.0).to_cubic_metres() - 3.785_412e-3).abs() < 5e-10);
    assert!((Volume::cups(1.0).to_cubic_metres() - 2.365_882e-4).abs() < 5e-11);
    assert!(close(Volume::gallons(1.0).to_cups(), 16.0));
    assert!(close(Volume::litres(1.0).to_cubic_metres(), 1e-3));
}

#[test]
fn a_cubic_foot_holds_119_688_cups() {
    // 1,728 cubic inches over 14.4375 cubic inches a cup. Common practice, no source: arithmetic.
    let cubic_foot = Mass::pounds(1.0) / Density::pounds_per_cubic_foot(1.0);
    assert!(close(cubic_foot.to_cups(), 1728.0 / 14.4375));
    assert!((cubic_foot.to_cups() - 119.688).abs() < 5e-4);
}

#[test]
fn rates_convert_as_published() {
    // 1 lb/acre is 1.120851 kg/ha; International Fertilizer Industry Association conversion table prints 1.1208.
    let rate = MassPerArea::pounds_per_acre(1.0);
    assert!((rate.to_kilograms_per_hectare() - 1.120_851).abs() < 5e-7);
    assert!((rate.to_kilograms_per_hectare() - 1.1208).abs() < 1e-4);
    // lb/1,000 sq ft = lb/acre / 43.56: New Mexico State University Guide A-122, general formula.
    assert!(close(
        MassPerArea::pounds_per_acre(43.56).to_pounds_per_1000_square_feet(),
        1.0
    ));
    // 150 kg/ha is 133.83 lb/acre and comes back; a conversion page that prints 0.9822 for 0.8922 would give 147.3.
    let rate = MassPerArea::kilograms_per_hectare(150.0);
    assert!((rate.to_pounds_per_acre() - 133.83).abs() < 0.005);
    assert!(close(
        MassPerArea::pounds_per_acre(rate.to_pounds_per_acre()).to_kilograms_per_hectare(),
        150.0
    ));
    assert!(close(
        MassPerArea::grams_per_square_metre(1.0).to_kilograms_per_hectare(),
        10.0
    ));
}

#[test]
fn small_area_table_of_new_mexico_state_university() {
    // New Mexico State University Guide A-122, "Determining Amounts of Fertilizer for Small Areas", Table 1:
    // lb of material per acre; ounces per 100 sq ft; pounds and ounces per 1,000 sq ft, to the nearest ounce.
    let table = [
        (100.0, 4.0, "2 lb 5 oz"),
        (400.0, 15.0, "9 lb 3 oz"),
        (500.0, 18.0, "11 lb 8 oz"),
        (700.0, 26.0, "16 lb 1 oz"),
        (1000.0, 37.0, "22 lb 15 oz"),
        (2000.0, 73.0, "45 lb 15 oz"),
    ];
    for (per_acre, ounces_per_100, per_1000) in table {
        let rate = MassPerArea::pounds_per_acre(per_acre);
        assert!(
            close((rate * Area::square_feet(100.0)).to_ounces().round(), ounces_per_100),
            "{per_acre}"
        );
        assert_eq!((rate * Area::square_feet(1000.0)).show_pounds_ounces(), per_1000);
    }
}

#[test]
fn rates_along_rows_convert() {
    let rate = MassPerLength::pounds_per_100_feet(1.0);
    assert!(close((rate * Length::feet(100.0)).to_pounds(), 1.0));
    assert!(close(rate.to_grams_per_metre(), 453.592_37 / 30.48));
    assert!(close(
        MassPerLength::grams_per_metre(20.0).to_pounds_per_100_feet(),
        20.0 / (453.592_37 / 30.48)
    ));
}

#[test]
fn spoons_and_pints_are_parts_of_a_gallon() {
    assert!(close(Volume::pints(8.0).to_gallons(), 1.0));
    assert!(close(Volume::tablespoons(256.0).to_gallons(), 1.0));
    assert!(close(Volume::teaspoons(768.0).to_gallons(), 1.0));
    assert!(close(Volume::cups(1.0).to_tablespoons(), 16.0));
    assert!(close(Volume::tablespoons(1.0).to_teaspoons(), 3.0));
}

#[test]
fn strengths_convert_as_published() {
    // An ounce of a pure nutrient in 100 gallons is 74.892 ppm; Texas A&M greenhouse nutrition page,
    // hortipm.tamu.edu/ipmguide/nutrient/calcs.html, prints 75.
    let ounce = Concentration::ounces_per_100_gallons(1.0);
    assert!((ounce.to_parts_per_million() - 74.892).abs() < 5e-4);
    assert!(close(
        Concentration::pounds_per_100_gallons(1.0).to_ounces_per_100_gallons(),
        16.0
    ));
    assert!(close(
        Concentration::pounds_per_gallon(1.0).to_pounds_per_100_gallons(),
        100.0
    ));
    assert!(close(
        Concentration::grams_per_litre(133.0).to_pounds_per_gallon(),
        133.0 * 3.785_411_784 / 453.592_37
    ));
    assert!(close(
        Concentration::grams_per_litre(1.0).to_parts_per_million(),
        1000.0
    ));
}

#[test]
fn water_runs_and_adds_up() {
    let tape = FlowPerLength::gallons_per_minute_per_100_feet(0.45);
    let flow = tape * Length::feet(300.0);
    assert!(close(flow.to_gallons_per_minute(), 1.35));
    assert!(close((flow * Span::hours(1.0)).to_gallons(), 81.0));
    assert!(close((Volume::gallons(81.0) / flow).to_minutes(), 60.0));
    assert!(close(flow.to_litres_per_hour(), 81.0 * 3.785_411_784));
    assert!(close(
        Flow::litres_per_hour(60.0).to_cubic_metres_per_second(),
        1e-3 / 60.0
    ));
    assert!(close(
        FlowPerLength::litres_per_hour_per_metre(1.0).to_litres_per_hour_per_metre(),
        1.0
    ));
    // 3.785411784 l × 60 on 30.48 m.
    assert!(close(
        tape.to_litres_per_hour_per_metre(),
        0.45 * 3.785_411_784 * 60.0 / 30.48
    ));
    let feed = Concentration::of(Mass::kilograms(2.0), Volume::litres(100.0));
    assert!(close(feed.to_grams_per_litre(), 20.0));
    assert!(close((feed * Volume::litres(10.0)).to_grams(), 200.0));
    assert!(close((Mass::kilograms(1.0) / feed).to_litres(), 50.0));
    // An inch of water on a square foot: 144 of 231 cubic inches.
    assert!(close(
        (Area::square_feet(1.0) * Length::inches(1.0)).to_gallons(),
        144.0 / 231.0
    ));
}

#[test]
fn fractions_and_bearings_keep_their_range() {
    assert_eq!(Fraction::percent(85.0), Fraction::new(0.85));
    assert_eq!(Fraction::new(f64::NAN), None);
    assert_eq!(Fraction::new(1.01), None);
    assert!(close(Bearing::degrees(-10.0).to_degrees(), 350.0));
    assert!(Bearing::degrees(-1e-18).to_degrees() < 360.0);
}
