//! Seed by count and by weight.

use proptest::prelude::*;
use quillet::agronomy::{plants_per_area, seed_mass, seeds_needed};
use quillet::quantity::{Area, Fraction, Length, Mass};

use crate::near;

fn part(value: f64) -> Fraction {
    Fraction::new(value).unwrap_or_default()
}

#[test]
fn seeds_are_rounded_up_once() {
    // Common practice, no source: plants × seeds for each ÷ germination × (1 + spare).
    for (plants, seeds_per_plant, germination, spare, seeds) in [
        (660, 2.0, 0.75, 0.0, 1760),
        (660, 2.0, 0.75, 0.1, 1936),
        (100, 1.0, 0.85, 0.0, 118),
        (100, 1.5, 0.9, 0.05, 175),
        (0, 2.0, 0.75, 0.1, 0),
        (1, 1.0, 1.0, 0.0, 1),
        (300, 1.0, 0.3, 0.0, 1000),
        (7, 1.0, 0.7, 0.0, 10),
        (1, 1.0, 1.0, 0.01, 2),
    ] {
        assert_eq!(
            seeds_needed(plants, seeds_per_plant, part(germination), part(spare)),
            Ok(seeds),
            "{plants} plants"
        );
    }
}

#[test]
fn potato_seed_by_the_hundredweight() {
    // Valley Potato Grower, March 2021, p. 12, Table 2, hundredweight an acre: 34×6 in with 1.5 oz pieces 28.8, 36×10
    // in with 2 oz 21.8, 36×12 in with 2.5 oz 22.7.
    for (row, in_row, ounces, hundredweight) in
        [(34.0, 6.0, 1.5, 28.8), (36.0, 10.0, 2.0, 21.8), (36.0, 12.0, 2.5, 22.7)]
    {
        let plants = plants_per_area(Area::acres(1.0), Length::inches(row), Length::inches(in_row)).unwrap_or(f64::NAN);
        let mass = seed_mass(plants.round() as u64, Mass::ounces(ounces)).unwrap_or_default();
        near(mass.to_pounds() / 100.0, hundredweight, 0.05);
    }
}

#[test]
fn seed_weight_from_seeds_to_the_ounce() {
    // Texas Agricultural Extension Service, Vegetable Grower's Handbook, Table 2: sweet corn 120 to 180 to the ounce.
    let one = Mass::ounces(1.0) / 150.0;
    near(
        seed_mass(1760, one).unwrap_or_default().to_ounces(),
        1760.0 / 150.0,
        1e-9,
    );
}

proptest! {
    #[test]
    fn enough_seeds_and_never_one_too_many(plants in 1_u64..10_000_000, percent in 1_u32..=100, tenths in 10_u32..60) {
        let (germination, per_plant) = (f64::from(percent) / 100.0, f64::from(tenths) / 10.0);
        let seeds = seeds_needed(plants, per_plant, part(germination), Fraction::ZERO);
        // In whole numbers: seeds × percent ≥ plants × tenths × 10, and one less is not enough.
        let need = plants * u64::from(tenths) * 10;
        let seeds = seeds.unwrap_or(0) * u64::from(percent);
        prop_assert!(seeds >= need && seeds - u64::from(percent) < need, "{seeds} for {need}");
    }
}
