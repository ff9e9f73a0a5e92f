//! Product and nutrients, by area and by row; cups.

use quillet::agronomy::{
    Nutrient, bags, banded_share, broadcast_share, density_of_pint, nutrient_in, nutrients_in, over_plan, product_for,
    volume_of,
};
use quillet::quantity::{Area, Density, Length, Mass, MassPerArea, MassPerLength};

use crate::{exact, label, near};

#[test]
fn a_pound_of_nitrogen_per_1000_square_feet_from_nine_analyses() {
    // Oklahoma State University Extension, Tulsa Master Gardeners, Fertilizer page, "Pounds of Fertilizer Needed per
    // 1000 Square Feet", one decimal; 6.25 is printed there as 6.2.
    for (n, p2o5, k2o, printed) in [
        (45.0, 0.0, 0.0, 2.2),
        (33.0, 0.0, 0.0, 3.0),
        (27.0, 7.0, 7.0, 3.7),
        (21.0, 0.0, 0.0, 4.8),
        (20.0, 20.0, 20.0, 5.0),
        (16.0, 4.0, 8.0, 6.2),
        (12.0, 4.0, 8.0, 8.3),
        (10.0, 10.0, 10.0, 10.0),
        (5.0, 10.0, 10.0, 20.0),
    ] {
        let rate = MassPerArea::pounds_per_1000_square_feet(1.0);
        let product = product_for(rate, Nutrient::Nitrogen, label(n, p2o5, k2o));
        let product = product.map_or(f64::NAN, MassPerArea::to_pounds_per_1000_square_feet);
        exact(product, 100.0 / n);
        near(product, printed, 0.05);
    }
}

#[test]
fn half_a_pound_of_nitrogen_is_not_half_a_pound_of_product() {
    // Colorado State University Extension fact sheet 7.247, Vegetable Gardening: Nitrogen Recommendations (2011):
    // 8 oz of nitrogen per 1,000 sq ft; as 21-0-0 that is 2.381 lb.
    let rate = product_for(
        Mass::ounces(8.0) / Area::square_feet(1000.0),
        Nutrient::Nitrogen,
        label(21.0, 0.0, 0.0),
    );
    let rate = rate.unwrap_or_default();
    exact(rate.to_pounds_per_1000_square_feet(), 0.5 / 0.21);
    near(rate.to_pounds_per_1000_square_feet(), 2.381, 0.0005);
    near((rate * Area::square_feet(100.0)).to_pounds(), 0.238, 0.0005);
    assert_eq!((rate * Area::square_feet(1000.0)).show_pounds_ounces(), "2 lb 6 oz");
}

#[test]
fn a_tenth_of_a_pound_of_nitrogen_per_100_square_feet() {
    // Colorado State University Extension, CMG GardenNotes 711, Table 3, read in a reprint: 0.5 lb of 21-0-0, 0.3 lb
    // of 34-0-0.
    for (n, printed) in [(21.0, 0.5), (34.0, 0.3)] {
        let product =
            product_for(Mass::pounds(0.1), Nutrient::Nitrogen, label(n, 0.0, 0.0)).map_or(f64::NAN, Mass::to_pounds);
        exact(product, 10.0 / n);
        near(product, printed, 0.05);
    }
}

#[test]
fn bags_are_bought_whole() {
    // Common practice, no source: a third of an acre, 120 lb of nitrogen and of potash an acre from 15-0-15 in 50 lb
    // bags: 266.67 lb, six bags, 33.33 lb left over.
    let nitrogen = MassPerArea::pounds_per_acre(120.0) * Area::acres(1.0 / 3.0);
    exact(nitrogen.to_pounds(), 40.0);
    let product = product_for(nitrogen, Nutrient::Nitrogen, label(15.0, 0.0, 15.0)).unwrap_or_default();
    exact(product.to_pounds(), 40.0 / 0.15);
    exact(nutrients_in(product, label(15.0, 0.0, 15.0)).k2o.to_pounds(), 40.0);
    let bag = Mass::pounds(50.0);
    assert_eq!(bags(product, bag), Ok(6));
    exact((bag * 6.0 - product).to_pounds(), 300.0 - 40.0 / 0.15);
    assert_eq!(bags(Mass::pounds(100.0), bag), Ok(2), "two full bags are two bags");
    assert_eq!(
        bags(Mass::pounds(0.1) * 1000.0, bag),
        Ok(2),
        "however the pounds were added up"
    );
    assert_eq!(bags(Mass::ZERO, bag), Ok(0));
}

#[test]
fn three_rows_of_100_feet_at_36_inches_are_900_square_feet() {
    // University of Tennessee Extension home-garden text, read in a reprint: the geometry. At 1 lb per 1,000 sq ft a
    // row takes 0.300 lb.
    let rate = MassPerArea::pounds_per_1000_square_feet(1.0);
    let row = banded_share(Length::feet(100.0), Length::inches(36.0), rate).unwrap_or_default();
    exact(row.to_pounds(), 0.3);
    exact((row * 3.0 / rate).to_square_feet(), 900.0);
}

#[test]
fn a_hundred_pounds_of_nitrogen_an_acre_on_36_inch_rows() {
    // Common practice, no source: lb per 100 ft = lb/acre × spacing in × 100 / (12 × 43,560); 0.6887 lb of nitrogen,
    // 6.887 lb of 10-10-10.
    let nitrogen = MassPerArea::pounds_per_acre(100.0) * Length::inches(36.0);
    exact(
        nitrogen.to_pounds_per_100_feet(),
        100.0 * 36.0 * 100.0 / (12.0 * 43_560.0),
    );
    near(nitrogen.to_pounds_per_100_feet(), 0.6887, 5e-5);
    let product = product_for(nitrogen, Nutrient::Nitrogen, label(10.0, 10.0, 10.0)).unwrap_or_default();
    near(product.to_pounds_per_100_feet(), 6.887, 5e-4);
}

#[test]
fn rows_of_unequal_length_add_up_before_rounding() {
    // Common practice, no source: 1.5 lb per 100 ft on rows of a wedge. Whole ounces a row make 37, the exact sum is
    // 37.2.
    let rate = MassPerLength::pounds_per_100_feet(1.5);
    let rows = [(40.0, 0.6), (35.5, 0.5325), (31.0, 0.465), (26.5, 0.3975), (22.0, 0.33)];
    for (feet, pounds) in rows {
        exact((rate * Length::feet(feet)).to_pounds(), pounds);
    }
    let total: Mass = rows.iter().map(|&(feet, _)| rate * Length::feet(feet)).sum();
    exact(total.to_pounds(), 2.325);
    exact(total.to_ounces(), 37.2);
    let ounces: f64 = rows
        .iter()
        .map(|&(feet, _)| (rate * Length::feet(feet)).to_ounces().round())
        .sum();
    exact(ounces, 37.0);
}

#[test]
fn a_standard_row_dose_as_nitrogen_an_acre() {
    // Doses: Kansas State University Research and Extension, "Sidedressing Garden Vegetables", 5 June 2023, and
    // county columns: per 100 ft 2 lb of 16-0-0, or 1 lb of the others. Nitrogen an acre at 30 and 36 in is derived.
    for (pounds, n, p2o5, k2o, nitrogen, at_30, at_36) in [
        (2.0, 16.0, 0.0, 0.0, 0.32, 55.8, 46.5),
        (1.0, 27.0, 3.0, 3.0, 0.27, 47.0, 39.2),
        (1.0, 29.0, 5.0, 4.0, 0.29, 50.5, 42.1),
        (1.0, 30.0, 3.0, 4.0, 0.30, 52.3, 43.6),
    ] {
        let dose = nutrient_in(
            MassPerLength::pounds_per_100_feet(pounds),
            Nutrient::Nitrogen,
            label(n, p2o5, k2o),
        );
        exact(dose.to_pounds_per_100_feet(), nitrogen);
        near((dose / Length::inches(30.0)).to_pounds_per_acre(), at_30, 0.05);
        near((dose / Length::inches(36.0)).to_pounds_per_acre(), at_36, 0.05);
        exact((dose / Length::inches(36.0)).to_pounds_per_acre(), nitrogen * 145.2);
    }
}

#[test]
fn broadcast_shares_add_up_to_the_bed() {
    // Common practice, no source: rows share the whole bed's ground by length.
    let (ground, rate) = (
        Area::square_feet(1050.0),
        MassPerArea::pounds_per_1000_square_feet(10.0),
    );
    let lengths = [30.0, 30.0, 22.5, 7.5].map(Length::feet);
    let all: Length = lengths.into_iter().sum();
    let shares = lengths.map(|length| broadcast_share(length, all, ground, rate).unwrap_or_default());
    exact(shares.into_iter().sum::<Mass>().to_pounds(), 10.5);
    exact(shares[2].to_pounds(), 10.5 * 0.25);
    assert_eq!(
        broadcast_share(Length::ZERO, Length::ZERO, ground, rate),
        Ok(Mass::ZERO)
    );
}

#[test]
fn cups_per_pound_from_bulk_density() {
    // "Estimated Physical Characteristics of Fertilizer Material" (author not shown in the copy read), middle of each
    // range in lb per cubic foot; cups per pound are 119.688 over it.
    for (density, cups) in [
        (46.0, 2.602),
        (57.5, 2.082),
        (62.5, 1.915),
        (70.0, 1.710),
        (61.5, 1.946),
        (64.5, 1.856),
        (94.0, 1.273),
    ] {
        let volume = volume_of(Mass::pounds(1.0), Density::pounds_per_cubic_foot(density)).unwrap_or_default();
        exact(volume.to_cups(), 1728.0 / 14.4375 / density);
        near(volume.to_cups(), cups, 0.0005);
    }
}

#[test]
fn ounces_to_the_pint_as_cups_per_pound() {
    // Louisiana State University AgCenter, Fertilizer Conversion Table for Small Area: granular sodium nitrate 23 oz to
    // the pint, granular ammonium nitrate 13.
    for (ounces, pounds_per_pint, cups, density) in [(23.0, 1.4375, 1.391, 86.0), (13.0, 0.8125, 2.462, 48.6)] {
        let pint = density_of_pint(Mass::ounces(ounces)).unwrap_or_default();
        near(pint.to_pounds_per_cubic_foot(), density, 0.05);
        let volume = volume_of(Mass::pounds(1.0), pint).unwrap_or_default();
        exact(volume.to_cups(), 32.0 / ounces);
        near(volume.to_cups(), cups, 0.0005);
        let two_pints_taken_for_two_pounds = over_plan(Mass::pounds(2.0), Mass::pounds(2.0 * pounds_per_pint));
        exact(two_pints_taken_for_two_pounds.unwrap_or(f64::NAN), ounces / 16.0 - 1.0);
    }
}

#[test]
fn a_garden_strip_by_the_cup() {
    // Oklahoma State University Extension, Tulsa Master Gardeners: two cups of mixed goods to the pound. The strip of
    // 10 by 2 ft at 0.7 lb per 100 sq ft is from a gardening page that says 3/10 cup.
    let half_pound_to_the_cup = density_of_pint(Mass::pounds(1.0)).unwrap_or_default();
    let rate = Mass::pounds(0.7) / Area::square_feet(100.0);
    let cups = |mass| volume_of(mass, half_pound_to_the_cup).map_or(f64::NAN, |volume| volume.to_cups());
    exact(cups(rate * Area::square_feet(100.0)), 1.4);
    let strip = banded_share(Length::feet(10.0), Length::feet(2.0), rate).unwrap_or_default();
    exact(strip.to_pounds(), 0.14);
    exact(cups(strip), 0.28);
    near(cups(strip), 0.3, 0.05);
}
