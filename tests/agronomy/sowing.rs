//! Thinning, hills, trays and drills, and why buying tables say so much more.

use jiff::civil::date;
use quillet::agronomy::{
    DrillRate, Raising, Unworkable, cells_needed, comes_up, harvest, pieces_needed, places_filled,
    plants_before_thinning, plants_per_area, rolled, seed_mass, seeds_in, seeds_in_each, seeds_needed, sow_on,
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
    // Clemson Cooperative Extension, Home & Garden Information Center, fact sheet on southern peas, number not
    // known (read in a reprint):
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
    // 20,000 to 23,000 to the acre (14,520 ft of row). Purdue University, variety trials (e-Pubs
    // fvtrials 5; year not noted): 30 by 8 in 26,136, 40 by 12 in 13,068.
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
/// in-row spacing in inches, and how many seeds that is for each plant left standing, worked out by hand.
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
fn buying_tables_hold_two_to_sixty_seven_seeds_for_each_plant() {
    for (crop, ounces, source, per_ounce, inches, per_plant) in TABLES {
        let (hundred, in_row) = (Length::feet(100.0), Length::inches(inches));
        let seeds = seeds_in(Mass::ounces(ounces), Mass::ounces(1.0) / per_ounce).unwrap_or(f64::NAN);
        let plants = (hundred / in_row).round();
        assert!(
            (seeds / plants - per_plant).abs() <= 0.05,
            "{crop}, {source}: {}",
            seeds / plants
        );
    }
}

#[test]
fn bulk_seed_for_a_pound_of_live_seed_as_published() {
    // Northern Prairie Wildlife Research Center, U.S. Geological Survey, "Establishment of Seeded Grasslands for Wildlife
    // Habitat in the Prairie Pothole Region", Table 4, adapted from Conservation Job Sheet ND-20, USDA Soil Conservation
    // Service, 1980: bulk seed for one pound of pure live seed, cut or rounded to twentieths. Purity and germination are
    // two parts that both have to hold, as germination and field emergence are.
    for (germination, purity, bulk) in [
        (95, 100, 1.05),
        (90, 100, 1.1),
        (80, 100, 1.25),
        (75, 100, 1.35),
        (60, 100, 1.65),
        (50, 100, 2.0),
        (95, 95, 1.1),
        (80, 95, 1.3),
        (90, 90, 1.2),
        (75, 90, 1.5),
        (50, 90, 2.2),
        (85, 80, 1.45),
        (70, 80, 1.8),
        (60, 75, 2.2),
        (55, 60, 3.05),
        (50, 50, 4.0),
    ] {
        let up = comes_up(part(f64::from(germination) / 100.0), part(f64::from(purity) / 100.0));
        let seeds = seeds_needed(10_000, 1.0, up, Fraction::ZERO).unwrap_or(0);
        near(seeds as f64 / 10_000.0, bulk, 0.05);
    }
    // Texas Department of Transportation, "Pure live seed": purity 85 %, germination 75 %, 1.56 lb of bulk seed for a
    // pound of live seed, worked out there from 0.64.
    let seeds = seeds_needed(10_000, 1.0, comes_up(part(0.75), part(0.85)), Fraction::ZERO).unwrap_or(0);
    near(seeds as f64 / 10_000.0, 1.56, 0.01);
}

#[test]
fn what_to_drop_in_each_hill() {
    // 5 good seeds at three quarters up are 6 2/3: 7 in two hills of three, 6 in the third. By scipy.stats.binom.pmf(0, n,
    // 0.75), SciPy 1.17.1: 0.25^7 = 6.1035e-5 and 0.25^6 = 2.4414e-4 stay empty.
    let each = seeds_in_each(5.0, part(0.75)).expect("hills are sown");
    assert_eq!((each.fewest, each.most), (6, 7));
    near(each.average, 20.0 / 3.0, 1e-12);
    near(
        1.0 - each.filled.get(),
        (2.0 * 6.103_515_625e-5 + 2.441_406_25e-4) / 3.0,
        1e-12,
    );
    // One good seed at a half up is 2 in each, of which a quarter stays empty.
    let each = seeds_in_each(1.0, part(0.5)).expect("places are sown");
    assert_eq!((each.fewest, each.most), (2, 2));
    near(each.filled.get(), 0.75, 1e-12);
    assert!(seeds_in_each(1.0, Fraction::ZERO).is_err());
    assert!(seeds_in_each(1e6, Fraction::ONE).is_err());
}

#[test]
fn a_harvest_goes_by_row_length() {
    // C. Marr, MF-315, Kansas State University Cooperative Extension: average crop expected for 100 ft of row; tomato
    // 100 lb, spinach 40 to 50 lb, sweet corn 10 dozen.
    let pounds = MassPerLength::pounds_per_100_feet;
    let tomato = harvest(Length::feet(250.0), pounds(100.0), pounds(100.0));
    near(tomato.low.to_pounds(), 250.0, 1e-9);
    assert!(tomato.is_average());
    let spinach = harvest(Length::feet(250.0), pounds(40.0), pounds(50.0));
    near(spinach.low.to_pounds(), 100.0, 1e-9);
    near(spinach.high.to_pounds(), 125.0, 1e-9);
    assert!(!spinach.is_average());
    let ears = CountPerLength::per_100_feet(120.0);
    let corn = harvest(Length::feet(330.0), ears, ears);
    near(corn.low, 396.0, 1e-9);
    assert!(corn.is_average());
}
