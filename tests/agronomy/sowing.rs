//! Thinning, hills, trays and drills, and why buying tables say so much more.

use jiff::civil::date;
use quillet::agronomy::{
    DrillRate, Raising, Unworkable, cells_needed, circumference, comes_up, harvest, pieces_needed, places_filled,
    plants_before_thinning, plants_per_area, rolled, seed_mass, seeds_in, seeds_needed, sow_on, table_seeds_per_plant,
    trays_needed,
};
use quillet::quantity::{Area, CountPerLength, Fraction, Length, Mass, MassPerLength};

use crate::near;

fn part(value: f64) -> Fraction {
    Fraction::new(value).unwrap_or_default()
}

#[test]
fn field_emergence_takes_its_part_of_germination() {
    // Common practice, no source: 80 % in the test, three quarters of these in the field, is 60 %.
    near(comes_up(part(0.8), part(0.75)).get(), 0.6, 1e-12);
    assert_eq!(
        seeds_needed(60, 2.0, comes_up(part(0.8), part(0.75)), Fraction::ZERO),
        Ok(200)
    );
    assert_eq!(plants_before_thinning(60, 2.5), Ok(150));
    assert!(plants_before_thinning(60, 0.0).is_err());
}

#[test]
fn places_with_a_plant_are_one_less_those_where_all_seeds_fail() {
    // SciPy 1.17.1, scipy.stats.binom.sf(0, n, p): (1, 0.75) 0.75; (2, 0.75) 0.9375; (3, 0.75) 0.984375;
    // (2, 0.6) 0.84; (4, 0.5) 0.9375.
    for (seeds, up, filled) in [
        (1, 0.75, 0.75),
        (2, 0.75, 0.9375),
        (3, 0.75, 0.984_375),
        (2, 0.6, 0.84),
        (4, 0.5, 0.9375),
    ] {
        near(places_filled(seeds, part(up)).get(), filled, 1e-12);
    }
}

#[test]
fn cells_trays_and_the_day_to_sow() {
    // Common practice, no source: 60 plants, 80 % up, a tenth lost: 60 / 0.72 = 83.3, so 84 cells, two trays of 72.
    let raising = Raising {
        seeds_per_cell: 1,
        comes_up: part(0.8),
        losses: part(0.1),
        spare: Fraction::ZERO,
    };
    assert_eq!(cells_needed(60, raising), Ok(84));
    assert_eq!(trays_needed(84, 72), Ok(2));
    assert_eq!(trays_needed(72, 72), Ok(1));
    // Two seeds a cell: 1 − 0.2² = 0.96 have a plant; 60 / 0.864 = 69.4.
    assert_eq!(
        cells_needed(
            60,
            Raising {
                seeds_per_cell: 2,
                ..raising
            }
        ),
        Ok(70)
    );
    assert!(
        cells_needed(
            60,
            Raising {
                losses: Fraction::ONE,
                ..raising
            }
        )
        .is_err()
    );
    assert!(
        cells_needed(
            60,
            Raising {
                seeds_per_cell: 0,
                ..raising
            }
        )
        .is_err()
    );
    assert!(trays_needed(60, 0).is_err());
    // Python 3.11, datetime.date(2027, 5, 10) - timedelta(days=42) = 2027-03-29; across a leap day,
    // date(2028, 3, 1) - timedelta(days=42) = 2028-01-19.
    assert_eq!(sow_on(date(2027, 5, 10), 42), Some(date(2027, 3, 29)));
    assert_eq!(sow_on(date(2028, 3, 1), 42), Some(date(2028, 1, 19)));
    assert_eq!(sow_on(date(-9999, 1, 1), 1), None);
}

#[test]
fn sets_and_pieces_by_weight() {
    assert_eq!(pieces_needed(660, part(0.1)), Ok(726));
    // Valley Potato Grower, March 2021, p. 12, Table 2: 36 by 10 in, 2 oz pieces, 21.8 hundredweight an acre.
    let plants = plants_per_area(Area::acres(1.0), Length::inches(36.0), Length::inches(10.0)).unwrap_or(f64::NAN);
    let pieces = pieces_needed(plants.round() as u64, Fraction::ZERO).unwrap_or(0);
    let mass = seed_mass(pieces, Mass::ounces(2.0)).unwrap_or_default();
    near(mass.to_pounds() / 100.0, 21.8, 0.05);
    near(seeds_in(mass, Mass::ounces(2.0)).unwrap_or(f64::NAN), 17_424.0, 1e-6);
}

#[test]
fn a_drill_for_southern_peas_runs_as_published() {
    // Clemson Cooperative Extension, Home & Garden Information Center, sheet on southern peas (read in a reprint):
    // 4 to 6 seeds a foot. A plant every 3 in, one good seed each, at the legal minimum of 75 % (7 CFR 201.31).
    let rate = DrillRate::for_stand(Length::inches(3.0), 1.0, part(0.75)).expect("a rate");
    let to_the_foot = rate.seeds_on(Length::feet(1.0)).expect("a count");
    near(to_the_foot, 16.0 / 3.0, 1e-9);
    assert!((4.0..=6.0).contains(&to_the_foot));
    near(rate.between_seeds().map_or(f64::NAN, Length::to_inches), 2.25, 1e-9);
}

#[test]
fn sweet_corn_populations_from_the_drill() {
    // Utah State University, Utah Vegetable Production Guide, sweet corn: rows 36 in, 7.5 to 8.5 in between plants,
    // 20,000 to 23,000 to the acre (14,520 ft of row). Purdue trials: 30 by 8 in 26,136, 40 by 12 in 13,068.
    for (row, in_row, low, high) in [
        (36.0, 8.5, 20_000.0, 20_600.0),
        (36.0, 7.5, 23_000.0, 23_300.0),
        (30.0, 8.0, 26_136.0, 26_136.0),
        (40.0, 12.0, 13_068.0, 13_068.0),
    ] {
        let rate = DrillRate::for_stand(Length::inches(in_row), 1.0, Fraction::ONE).expect("a rate");
        let acre = Area::acres(1.0) / Length::inches(row);
        let plants = rate.seeds_on(acre).expect("a count");
        assert!((low - 0.5..=high + 0.5).contains(&plants), "{plants}");
    }
}

#[test]
fn turns_of_the_wheel_and_the_correction() {
    // Common practice, no source: 24 seeds aimed at over ten turns of a 3 ft wheel, 30 counted: set to four fifths.
    let way = rolled(Length::feet(3.0), 10.0).expect("a way");
    near(way.to_feet(), 30.0, 1e-9);
    let aim = DrillRate::counted(24.0, way).expect("a rate");
    let trial = DrillRate::counted(30.0, way).expect("a rate");
    near(aim.correction(trial).unwrap_or(f64::NAN), 0.8, 1e-12);
    let nothing = DrillRate::counted(0.0, way).expect("a rate");
    assert_eq!(
        aim.correction(nothing),
        Err(Unworkable::NotPositive("the count of seeds"))
    );
    assert_eq!(nothing.between_seeds(), None);
    near(
        circumference(Length::inches(12.0)).map_or(f64::NAN, Length::to_inches),
        37.699_111_843,
        1e-8,
    );
    assert!(DrillRate::for_stand(Length::ZERO, 1.0, Fraction::ONE).is_err());
    assert!(DrillRate::for_stand(Length::feet(1.0), 1.0, Fraction::ZERO).is_err());
    assert!(rolled(Length::ZERO, 3.0).is_err());
}

/// University of Missouri Extension, "Vegetable Planting Calendar", Guide G6201, table of planting guides; read in
/// part.
const MISSOURI: &str = "University of Missouri Extension G6201";
/// U.S. Department of Agriculture, Home and Garden Bulletin 202, "Growing Vegetables in the Home Garden", table of seed
/// for 100 feet of row; from memory, not read again.
const BULLETIN: &str = "USDA Home and Garden Bulletin 202, from memory";
/// No source.
const PRACTICE: &str = "common practice, no source";

/// What tables say to buy for 100 ft of row: crop, ounces and their source, seeds to the ounce, the closest published
/// in-row spacing in inches, and how many seeds that is for each plant left standing, worked out here.
///
/// Seeds to the ounce: Texas Agricultural Extension Service, Vegetable Grower's Handbook, Table 2, the middle of a
/// range; turnip from memory of it, not read again.
const TABLES: [(&str, f64, &str, f64, f64, f64); 14] = [
    ("carrot", 0.25, MISSOURI, 23_000.0, 1.0, 4.8),
    ("sweet corn", 2.0, BULLETIN, 150.0, 8.0, 2.0),
    ("radish", 1.0, BULLETIN, 2500.0, 1.0, 2.1),
    ("lettuce, leaf", 0.25, MISSOURI, 25_000.0, 2.0, 10.4),
    ("kohlrabi", 0.25, MISSOURI, 9000.0, 4.0, 7.5),
    ("mustard", 0.5, MISSOURI, 15_000.0, 2.0, 12.5),
    ("turnip", 0.5, BULLETIN, 15_000.0, 2.0, 12.5),
    ("spinach", 1.0, MISSOURI, 2800.0, 1.0, 2.3),
    ("cabbage, Chinese", 0.5, MISSOURI, 9000.0, 6.0, 22.5),
    ("collard", 0.5, MISSOURI, 9000.0, 8.0, 30.0),
    ("rutabaga", 0.5, PRACTICE, 12_000.0, 4.0, 20.0),
    ("okra", 2.0, BULLETIN, 500.0, 12.0, 10.0),
    ("kale", 0.5, MISSOURI, 9000.0, 6.0, 22.5),
    ("endive", 0.5, MISSOURI, 27_000.0, 6.0, 67.5),
];

#[test]
fn buying_tables_are_for_thick_sowing_so_ours_is_less() {
    for (crop, ounces, source, per_ounce, inches, per_plant) in TABLES {
        let (hundred, in_row) = (Length::feet(100.0), Length::inches(inches));
        let one = Mass::ounces(1.0) / per_ounce;
        let found = table_seeds_per_plant(Mass::ounces(ounces), hundred, one, in_row).unwrap_or(f64::NAN);
        near(found, per_plant, 0.05);
        // One good seed for each plant, seven in ten up: a need, where the table has room for sowing thickly by hand,
        // thinning hard, and a second sowing.
        let plants = (hundred / in_row + 1e-6).floor() as u64;
        let ours = seeds_needed(plants, 1.0, part(0.7), Fraction::ZERO).unwrap_or(u64::MAX);
        assert!((ours as f64) < ounces * per_ounce, "{crop}, {source}: {ours}");
    }
}

#[test]
fn a_harvest_goes_by_row_length() {
    // C. Marr, MF-315, Kansas State University Cooperative Extension: average crop expected for 100 ft of row; tomato
    // 50 to 100 lb (from memory, not read again), sweet corn 10 dozen.
    let pounds = MassPerLength::pounds_per_100_feet;
    let tomato = harvest(Length::feet(250.0), pounds(50.0), pounds(100.0));
    near(tomato.low.to_pounds(), 125.0, 1e-9);
    near(tomato.high.to_pounds(), 250.0, 1e-9);
    assert!(!tomato.is_average());
    let ears = CountPerLength::per_100_feet(120.0);
    let corn = harvest(Length::feet(330.0), ears, ears);
    near(corn.low, 396.0, 1e-9);
    assert!(corn.is_average());
}
