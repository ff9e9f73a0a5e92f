//! Rules of thumb of the trade. All of them: common practice, no source.

use quillet::agronomy::{Nutrient, nutrient_in, over_plan};
use quillet::catalog::{Catalog, Crop, CropId, Material, MaterialId};
use quillet::quantity::{Area, Length, Mass, MassPerArea, Units};

use crate::{exact, near};

fn sweet_corn() -> Option<&'static Crop> {
    Catalog::built_in().crop(&CropId("sweet_corn".to_owned()))
}

fn fifteen_percent() -> Option<&'static Material> {
    Catalog::built_in().material(&MaterialId("sodium_nitrate_15".to_owned()))
}

#[test]
fn sweet_corn_rows_stand_3_feet_apart() {
    assert!(sweet_corn().is_some_and(|corn| corn.row_spacing.as_ref().unwrap().contains(&Length::feet(3.0))));
}

#[test]
fn a_30_by_35_foot_plot_has_330_row_feet_at_3_feet() {
    // Each row owns a 3 ft strip along the 30 ft side: 11 strips fit into 35 ft, 33 of them.
    let strips = Length::feet(30.0) * Length::feet(33.0);
    exact((strips / Length::feet(3.0)).to_feet(), 330.0);
}

#[test]
fn sweet_corn_stands_closer_over_buried_tape() {
    let corn = sweet_corn().expect("the catalogue has sweet corn");
    exact(corn.in_row_watered.as_ref().unwrap().value.to_inches(), 6.0);
    assert!((8.0..=12.0).contains(&corn.in_row_dry.as_ref().unwrap().value.to_inches()));
    exact(
        (Length::feet(330.0) / corn.in_row_watered.as_ref().unwrap().value).round(),
        660.0,
    );
    exact(
        (Length::feet(330.0) / corn.in_row_dry.as_ref().unwrap().value).round(),
        396.0,
    );
}

#[test]
fn a_first_side_dressing_of_a_15_percent_material() {
    let rate = MassPerArea::pounds_per_1000_square_feet(10.0);
    exact((rate * Area::square_feet(1000.0)).to_pounds(), 10.0);
    exact((rate * Area::square_feet(500.0)).to_pounds(), 5.0);
    let for_300 = (rate * Area::square_feet(300.0)).to_pounds();
    assert!((2.5..=3.0 + 1e-9).contains(&for_300), "{for_300}");
}

#[test]
fn that_is_65_pounds_of_nitrogen_an_acre() {
    let material = fifteen_percent().expect("the catalogue has a 15 % material");
    let nitrogen = nutrient_in(
        MassPerArea::pounds_per_1000_square_feet(10.0),
        Nutrient::Nitrogen,
        material.analysis.value,
    );
    exact(nitrogen.to_pounds_per_1000_square_feet(), 1.5);
    exact(nitrogen.to_pounds_per_acre(), 65.34);
    near(nitrogen.to_pounds_per_acre(), 65.0, 0.5);
    assert_eq!(nitrogen.show_field(Units::Customary), "65.3 lb/acre");
}

#[test]
fn a_fifth_more_than_planned() {
    exact(
        over_plan(Mass::pounds(10.0), Mass::pounds(12.0)).unwrap_or(f64::NAN),
        0.2,
    );
}

#[test]
fn approximately_1000_square_feet_forgives_5_percent() {
    let rate = MassPerArea::pounds_per_1000_square_feet(10.0);
    let plot = Length::feet(30.0) * Length::feet(35.0);
    exact(plot.to_square_feet(), 1050.0);
    let over = over_plan(rate * Area::square_feet(1000.0), rate * plot);
    exact(over.unwrap_or(f64::NAN), 0.05);
}
