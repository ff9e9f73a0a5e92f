//! What cannot be worked out is refused in words.

use quillet::agronomy::{
    Nutrient, Unworkable, bags, banded_share, broadcast_share, density_of_pint, over_plan, plants_per_area,
    product_for, row_length_per_area, seed_mass, seeds_needed, spaces_in, stand_sample_length, tape_for_row, volume_of,
};
use quillet::quantity::{Area, Density, Fraction, Length, Mass, MassPerArea};

use crate::label;

const FOOT: Length = Length::feet(1.0);

#[test]
fn nothing_negative_and_no_number_are_refused_everywhere() {
    for bad in [0.0, -1.0, f64::NAN, f64::INFINITY] {
        let length = Length::metres(bad);
        assert!(row_length_per_area(Area::acres(1.0), length).is_err());
        assert!(stand_sample_length(length).is_err());
        assert!(plants_per_area(Area::acres(1.0), FOOT, length).is_err());
        assert!(plants_per_area(Area::acres(1.0), length, FOOT).is_err());
        assert!(spaces_in(FOOT, length).is_err());
        assert!(banded_share(FOOT, length, MassPerArea::ZERO).is_err());
        assert!(seeds_needed(1, bad, Fraction::ONE, Fraction::ZERO).is_err());
        assert!(seed_mass(1, Mass::kilograms(bad)).is_err());
        assert!(bags(Mass::ZERO, Mass::kilograms(bad)).is_err());
        assert!(over_plan(Mass::kilograms(bad), Mass::ZERO).is_err());
        assert!(volume_of(Mass::ZERO, Density::kilograms_per_cubic_metre(bad)).is_err());
        assert!(density_of_pint(Mass::kilograms(bad)).is_err());
    }
    for bad in [-1.0, f64::NAN, f64::INFINITY] {
        let length = Length::metres(bad);
        assert!(banded_share(length, FOOT, MassPerArea::ZERO).is_err());
        assert!(broadcast_share(length, FOOT, Area::ZERO, MassPerArea::ZERO).is_err());
        assert!(broadcast_share(FOOT, length, Area::ZERO, MassPerArea::ZERO).is_err());
        assert!(broadcast_share(FOOT, FOOT, Area::square_metres(bad), MassPerArea::ZERO).is_err());
        assert!(tape_for_row(length, 1, 1, FOOT).is_err());
        assert!(tape_for_row(FOOT, 1, 1, length).is_err());
    }
    assert!(spaces_in(Length::metres(f64::NAN), FOOT).is_err());
    assert!(bags(Mass::kilograms(f64::NAN), Mass::kilograms(1.0)).is_err());
}

#[test]
fn a_material_without_the_nutrient_says_so() {
    let refused = product_for(Mass::pounds(1.0), Nutrient::Nitrogen, label(0.0, 0.0, 50.0));
    assert_eq!(refused, Err(Unworkable::NoNutrient(Nutrient::Nitrogen)));
    let words = refused.map_or_else(|error| error.to_string(), |_| String::new());
    assert_eq!(words, "the material holds no nitrogen; choose one that does");
}

#[test]
fn seed_that_never_comes_up_is_refused() {
    let refused = seeds_needed(10, 1.0, Fraction::ZERO, Fraction::ZERO);
    assert_eq!(refused, Err(Unworkable::NotPositive("germination")));
    let words = refused.map_or_else(|error| error.to_string(), |_| String::new());
    assert_eq!(words, "germination must be larger than nothing; type a number above 0");
}

#[test]
fn more_seeds_than_any_farm_has_are_refused() {
    let refused = seeds_needed(u64::MAX, 1.0, Fraction::ONE, Fraction::ZERO);
    assert_eq!(refused, Err(Unworkable::TooMany("the seeds")));
}
