//! What cannot be worked out is refused in words.

use quillet::agronomy::{
    BedRule, Nutrient, SoilLevel, Unworkable, after_credits, along_bed, along_row, bags, banded_share, broadcast_share,
    density_of_cup, density_of_pint, lime_for, over_ground, over_plan, per_stretch, plants_per_area, product_for,
    salt_index_of_blend, salt_per_unit, seed_mass, seeds_needed, sodium_nitrate_share, split, standing_of,
    tape_for_row, volume_of, water_credit,
};
use quillet::quantity::{Area, Concentration, Density, Fraction, Length, Mass, MassPerArea, MassPerLength};

use crate::label;

const FOOT: Length = Length::feet(1.0);

#[test]
fn nothing_negative_and_no_number_are_refused_everywhere() {
    for bad in [0.0, -1.0, f64::NAN, f64::INFINITY] {
        let length = Length::metres(bad);
        assert!(plants_per_area(Area::acres(1.0), FOOT, length).is_err());
        assert!(plants_per_area(Area::acres(1.0), length, FOOT).is_err());
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

#[test]
fn a_need_and_its_credits_are_numbers() {
    let foot = Length::feet(1.0);
    for bad in [0.0, -1.0, f64::NAN, f64::INFINITY] {
        let (length, rate) = (Length::metres(bad), MassPerArea::pounds_per_acre(1.0));
        assert!(along_row(rate, length, 1).is_err());
        assert!(over_ground(MassPerLength::ZERO, length, 1).is_err());
        assert!(along_bed(rate, length, BedRule::Ground).is_err());
        assert!(along_bed(rate, foot, BedRule::BedFoot { usual: length }).is_err());
        assert!(sodium_nitrate_share(Mass::ZERO, Mass::kilograms(bad)).is_err());
        assert!(lime_for(rate, bad).is_err());
        assert!(density_of_cup(Mass::kilograms(bad)).is_err());
        assert!(split(Mass::pounds(1.0), &[bad]).is_err());
    }
    for bad in [-1.0, f64::NAN, f64::INFINITY] {
        let (mass, rate) = (Mass::kilograms(bad), MassPerArea::kilograms_per_square_metre(bad));
        assert!(after_credits(mass, &[]).is_err());
        assert!(after_credits(Mass::ZERO, &[mass]).is_err());
        assert!(sodium_nitrate_share(mass, Mass::kilograms(1.0)).is_err());
        assert!(standing_of(rate, MassPerArea::ZERO).is_err());
        assert!(standing_of(MassPerArea::ZERO, rate).is_err());
        assert!(SoilLevel::parts_per_million(bad).is_err());
        assert!(water_credit(Concentration::grams_per_litre(bad), foot).is_err());
        assert!(water_credit(Concentration::ZERO, Length::metres(bad)).is_err());
        assert!(per_stretch(MassPerLength::kilograms_per_metre(bad), foot).is_err());
        assert!(per_stretch(MassPerLength::ZERO, Length::metres(bad)).is_err());
        assert!(salt_index_of_blend(&[(mass, 1.0)]).is_err());
        assert!(salt_index_of_blend(&[(Mass::kilograms(1.0), bad)]).is_err());
        assert!(salt_per_unit(bad, label(10.0, 0.0, 0.0)).is_err());
        assert!(split(mass, &[1.0]).is_err());
        assert!(split(Mass::ZERO, &[1.0, bad]).is_err());
    }
    assert!(salt_per_unit(1.0, label(0.0, 0.0, 0.0)).is_err());
    assert!(split(Mass::ZERO, &[]).is_err());
    assert_eq!(
        along_row(MassPerArea::ZERO, foot, 0),
        Err(Unworkable::NotPositive("the number of rows on a bed"))
    );
}
