//! Temperatures, and things counted along a row.

use quillet::quantity::{CountPerLength, Length, Temperature, Units};

#[test]
fn fahrenheit_and_celsius_agree_at_fixed_points() {
    // Water freezes at 32 °F and 0 °C and boils at 212 °F and 100 °C; both scales meet at 40 below.
    for (fahrenheit, celsius) in [(32.0, 0.0), (212.0, 100.0), (-40.0, -40.0)] {
        let from = Temperature::fahrenheit(fahrenheit);
        assert!((from.to_celsius() - celsius).abs() < 1e-12);
        assert!((Temperature::celsius(celsius).to_fahrenheit() - fahrenheit).abs() < 1e-12);
    }
    assert!(Temperature::fahrenheit(50.0) < Temperature::celsius(11.0));
    assert!(!Temperature::celsius(f64::NAN).is_finite());
}

#[test]
fn temperatures_show_to_a_degree() {
    assert_eq!(Temperature::fahrenheit(60.0).show(Units::Customary), "60 °F");
    assert_eq!(Temperature::fahrenheit(60.0).show(Units::Metric), "16 °C");
    assert_eq!(Temperature::fahrenheit(0.0).show(Units::Metric), "−18 °C");
}

#[test]
fn things_along_a_row_are_counted_by_its_length() {
    let plants = CountPerLength::per_100_feet(50.0);
    assert!((plants * Length::feet(330.0) - 165.0).abs() < 1e-9);
    assert!((plants.to_per_100_feet() - 50.0).abs() < 1e-12);
}
