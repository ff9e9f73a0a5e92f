//! Row feet, plants and tape over ground.

use quillet::agronomy::{plants_per_area, tape_for_row};
use quillet::geometry::{Lines, PlantRule};
use quillet::quantity::{Area, Length, MassPerArea};

use crate::{exact, near};

fn row_feet_per_acre(inches: f64) -> f64 {
    (Area::acres(1.0) / Length::inches(inches)).to_feet()
}

/// Plants on a piece of row with half a space free at both ends.
fn on(length: Length, in_row: Length) -> u64 {
    let one_line = Lines {
        per_row: 1,
        apart: Length::ZERO,
        staggered: false,
    };
    PlantRule::new(in_row, in_row / 2.0, one_line).map_or(0, |rule| rule.on(length))
}

fn plants_per_acre(row: f64, in_row: f64) -> f64 {
    plants_per_area(Area::acres(1.0), Length::inches(row), Length::inches(in_row)).unwrap_or(f64::NAN)
}

#[test]
fn row_feet_per_acre_are_43_560_over_the_spacing() {
    // 7,260 at 6 ft and 6,222 at 7 ft (cut down from 6,222.86): Mid-Atlantic Commercial Vegetable Production
    // Recommendations, linear-bed-foot values, as reported in trade news of 25 April 2021. 17,424 at 30 in, and
    // all other lines: arithmetic, no source.
    for (inches, feet) in [
        (12.0, 43_560.0),
        (15.0, 34_848.0),
        (18.0, 29_040.0),
        (24.0, 21_780.0),
        (30.0, 17_424.0),
        (36.0, 14_520.0),
        (38.0, 13_756.0),
        (40.0, 13_068.0),
        (42.0, 12_446.0),
        (48.0, 10_890.0),
        (60.0, 8712.0),
        (72.0, 7260.0),
        (84.0, 6222.9),
    ] {
        exact(row_feet_per_acre(inches), 43_560.0 * 12.0 / inches);
        near(row_feet_per_acre(inches), feet, 0.5);
    }
    near(row_feet_per_acre(84.0), 6222.0, 1.0);
}

#[test]
fn a_thousandth_of_an_acre_of_row() {
    // Arithmetic, printed to hundredths; no source.
    for (inches, feet) in [
        (15.0, 34.85),
        (18.0, 29.04),
        (20.0, 26.14),
        (30.0, 17.424),
        (36.0, 14.52),
        (38.0, 13.76),
        (40.0, 13.07),
    ] {
        let length = (Area::acres(0.001) / Length::inches(inches)).to_feet();
        exact(length, 43.56 * 12.0 / inches);
        near(length, feet, 0.005);
    }
}

#[test]
fn plants_per_acre_to_the_plant() {
    // Valley Potato Grower, March 2021, p. 12, Table 1, rounded to the nearest plant; columns 6, 7, 8, 9, 10, 12 in.
    // The table has no figure for 34 in by 8 in.
    let in_row = [6.0, 7.0, 8.0, 9.0, 10.0, 12.0];
    let table = [
        (
            34.0,
            [
                Some(30_748.0),
                Some(26_356.0),
                None,
                Some(20_499.0),
                Some(18_449.0),
                Some(15_374.0),
            ],
        ),
        (
            36.0,
            [
                Some(29_040.0),
                Some(24_891.0),
                Some(21_780.0),
                Some(19_360.0),
                Some(17_424.0),
                Some(14_520.0),
            ],
        ),
        (
            38.0,
            [
                Some(27_512.0),
                Some(23_581.0),
                Some(20_634.0),
                Some(18_341.0),
                Some(16_507.0),
                Some(13_756.0),
            ],
        ),
    ];
    for (row, line) in table {
        for (in_row, published) in in_row.into_iter().zip(line) {
            exact(plants_per_acre(row, in_row), 6_272_640.0 / (row * in_row));
            if let Some(published) = published {
                exact(plants_per_acre(row, in_row).round(), published);
            }
        }
    }
}

#[test]
fn older_tables_truncate() {
    // L. H. Bailey, Farm and Garden Rule-Book, "Number of plants required to set an acre": 1×7 in, 3×7 in, 4×7 in,
    // 2×3 ft. A tolerance of one plant takes in truncation.
    for (row, in_row, published) in [
        (1.0, 7.0, 896_091.0),
        (3.0, 7.0, 298_697.0),
        (4.0, 7.0, 224_022.0),
        (24.0, 36.0, 7260.0),
    ] {
        near(plants_per_acre(row, in_row), published, 1.0);
    }
    // Commercial Gardening, vol. 3, "Laying Out Land": rows 30 in.
    for (in_row, published) in [
        (12.0, 17_424.0),
        (18.0, 11_616.0),
        (24.0, 8712.0),
        (30.0, 6969.0),
        (36.0, 5808.0),
        (42.0, 4978.0),
    ] {
        near(plants_per_acre(30.0, in_row), published, 1.0);
    }
    // M. G. Kains, Five Acres and Independence, Table 17: 20×20 ft. K. Coder, University of Georgia, Number of Trees
    // per Acre by Spacing Distance: 9×9 ft.
    near(plants_per_acre(240.0, 240.0), 108.9, 0.05);
    near(plants_per_acre(108.0, 108.0), 538.0, 1.0);
    exact(plants_per_acre(4.0, 7.0), 6_272_640.0 / 28.0);
}

#[test]
fn sweet_corn_populations() {
    // Purdue University, Midwest vegetable variety trials, fresh-market sweet corn (e-Pubs fvtrials 5; year not noted): 13,068 to 26,136 plants an acre, rows 30 to 40 in,
    // 8 to 12 in in the row.
    exact(plants_per_acre(40.0, 12.0), 13_068.0);
    exact(plants_per_acre(30.0, 8.0), 26_136.0);
    // Its stand of 20,328 an acre is 8.57 in at 36 in rows and 10.29 in at 30 in rows.
    near(plants_per_acre(36.0, 8.57), 20_328.0, 15.0);
    near(plants_per_acre(30.0, 10.29), 20_328.0, 15.0);
    // Utah State University, Utah Vegetable Production Guide, Sweet corn: 36 in by 7.5 to 8.5 in is 20,000 to 23,000,
    // printed to the thousand.
    near(plants_per_acre(36.0, 8.5), 20_000.0, 500.0);
    near(plants_per_acre(36.0, 7.5), 23_000.0, 500.0);
}

#[test]
fn plants_on_100_feet_by_both_conventions() {
    // University of Maine Cooperative Extension, Planting Chart for the Home Vegetable Garden: 6 to 7 plants on 10 ft
    // at 18 in: spaces, and with both ends set. Whole spaces
    // on 100 ft are arithmetic, no source.
    for (inches, spaces) in [
        (3.0, 400),
        (4.0, 300),
        (6.0, 200),
        (8.0, 150),
        (9.0, 133),
        (10.0, 120),
        (12.0, 100),
        (15.0, 80),
        (18.0, 66),
        (24.0, 50),
        (30.0, 40),
        (36.0, 33),
    ] {
        assert_eq!(on(Length::feet(100.0), Length::inches(inches)), spaces, "{inches} in");
    }
    assert_eq!(on(Length::feet(10.0), Length::inches(18.0)), 6);
}

#[test]
fn decimal_feet_never_cost_a_plant() {
    assert_eq!(on(Length::feet(30.0), Length::inches(6.0)), 60);
    for feet in 1..2000_u32 {
        let tenths = f64::from(feet) / 10.0;
        assert_eq!(
            on(Length::feet(tenths), Length::feet(0.1)),
            u64::from(feet),
            "{tenths} ft"
        );
    }
    assert_eq!(on(Length::feet(0.4), Length::feet(1.0)), 0);
}

#[test]
fn drip_tape_per_acre() {
    // 6 ft and 7 ft: Mid-Atlantic Commercial Vegetable Production Recommendations, linear-bed-foot values; the others
    // are arithmetic.
    for (acres, bed_feet, lines, feet) in [
        (1.0, 5.0, 1, 8712.0),
        (1.0, 5.0, 2, 17_424.0),
        (1.0, 6.0, 1, 7260.0),
        (1.0, 7.0, 1, 6223.0),
        (0.4, 5.0, 1, 3485.0),
    ] {
        let bed = Area::acres(acres) / Length::feet(bed_feet);
        let tape = tape_for_row(bed, 1, lines, Length::ZERO).map_or(f64::NAN, Length::to_feet);
        exact(tape, 43_560.0 * acres / bed_feet * f64::from(lines));
        near(tape, feet, 0.5);
    }
    // Twin rows at 12 in on beds 5 ft apart: 17,424 plants an acre.
    exact(2.0 * plants_per_acre(60.0, 12.0), 17_424.0);
}

#[test]
fn tape_for_a_row_runs_along_every_piece_and_line() {
    // Common practice, no source: 100 ft in two pieces, two lines, 1 ft spare a piece: 2 × (100 + 2).
    let tape = tape_for_row(Length::feet(100.0), 2, 2, Length::feet(1.0)).map_or(f64::NAN, Length::to_feet);
    exact(tape, 204.0);
    assert_eq!(
        tape_for_row(Length::feet(100.0), 2, 0, Length::feet(1.0)),
        Ok(Length::ZERO)
    );
}

#[test]
fn a_rate_per_100_feet_of_bed() {
    // Method as for linear bed feet: 100 lb/acre on beds 6 ft apart is 1.377 lb to 100 ft, 5 ft apart 1.148 lb.
    for (bed_feet, pounds) in [(6.0, 1.377), (5.0, 1.148)] {
        let along = MassPerArea::pounds_per_acre(100.0) * Length::feet(bed_feet);
        exact(along.to_pounds_per_100_feet(), 100.0 * 100.0 * bed_feet / 43_560.0);
        near(along.to_pounds_per_100_feet(), pounds, 0.0005);
    }
}
