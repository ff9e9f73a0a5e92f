//! Salt, organic sources, credits, lime, soil tests.

use quillet::agronomy::{
    Animal, Manure, Nutrient, SeedPlacement, SoilLevel, Supply, TestedFor, WorkedIn, after_credits, along_row,
    available_nitrogen, legume_sod_credit, lime_doses, lime_for, manure_nitrogen_available, manure_release,
    most_near_seed, nitrogen_and_potash, nutrient_in, organic_matter_credit, over_ground, product_for,
    product_for_available, salt_index_of_blend, salt_per_unit, seed_limit, sodium_in, sodium_nitrate_share, split,
    supply_by_mehlich_3, water_credit, worked_in_manure_credit,
};
use quillet::quantity::{Area, Concentration, Fraction, Length, Mass, MassPerArea, MassPerLength};

use crate::{exact, label, near};

fn percent(value: f64) -> Fraction {
    Fraction::percent(value).unwrap_or_default()
}

#[test]
fn sodium_comes_with_the_nitrogen() {
    // International Plant Nutrition Institute, Nutrient Source Specifics No. 24, Sodium Nitrate: 16 % N, 26 % Na. The pure
    // salt has 16.48 and 27.05 % (common practice, no source: stoichiometry).
    for (n, na, product, sodium) in [(16.0, 26.0, 6.25, 1.625), (16.48, 27.05, 6.068, 1.6413)] {
        let carrier = product_for(Mass::pounds(1.0), Nutrient::Nitrogen, label(n, 0.0, 0.0)).unwrap_or_default();
        exact(carrier.to_pounds(), 100.0 / n);
        near(carrier.to_pounds(), product, 5e-4);
        exact(sodium_in(carrier, percent(na)).to_pounds(), na / n);
        near(sodium_in(carrier, percent(na)).to_pounds(), sodium, 1e-4);
    }
}

#[test]
fn a_fifth_of_a_150_pound_crop() {
    // 7 CFR 205.602(h): no more than 20 % of the crop's total nitrogen requirement (eCFR copy current to 24 March 2026).
    // Product, row amounts and sodium are derived.
    let requirement = MassPerArea::pounds_per_acre(150.0);
    let rule = sodium_nitrate_share(MassPerArea::pounds_per_acre(30.0), requirement).unwrap();
    exact(rule.most.to_pounds_per_acre(), 30.0);
    exact(rule.share, 0.2);
    assert!(!rule.is_over());
    for (n, product, along) in [(16.0, 187.5, 1.076), (15.0, 200.0, 1.148)] {
        let most = product_for(rule.most, Nutrient::Nitrogen, label(n, 0.0, 0.0)).unwrap_or_default();
        exact(most.to_pounds_per_acre(), product);
        let row = along_row(most, Length::inches(30.0), 1).unwrap_or_default();
        exact(row.to_pounds_per_100_feet(), product / 174.24);
        near(row.to_pounds_per_100_feet(), along, 5e-4);
    }
    let most = product_for(rule.most, Nutrient::Nitrogen, label(16.0, 0.0, 0.0)).unwrap_or_default();
    exact(sodium_in(most, percent(26.0)).to_pounds_per_acre(), 48.75);
}

#[test]
fn a_usual_dose_breaks_the_rule() {
    // Dose, twice 2 lb of 16-0-0 per 100 ft: Kansas State University columns. Need, 130 lb/acre: University of
    // Wisconsin–Madison. Rule: 7 CFR 205.602(h).
    let need = along_row(MassPerArea::pounds_per_acre(130.0), Length::inches(36.0), 1).unwrap_or_default();
    near(need.to_pounds_per_100_feet(), 0.8953, 5e-5);
    let given = nutrient_in(
        MassPerLength::pounds_per_100_feet(4.0),
        Nutrient::Nitrogen,
        label(16.0, 0.0, 0.0),
    );
    exact(given.to_pounds_per_100_feet(), 0.64);
    let rule = sodium_nitrate_share(given, need).unwrap();
    assert!(rule.is_over());
    exact(rule.share, 0.64 * 145.2 / 130.0);
    near(rule.share, 0.715, 5e-4);
    let most = product_for(rule.most, Nutrient::Nitrogen, label(16.0, 0.0, 0.0)).unwrap_or_default();
    near(most.to_pounds_per_100_feet(), 1.119, 5e-4);
}

#[test]
fn salt_for_each_unit_of_nutrient() {
    // Index values as listed on a page crediting Mortvedt (2001), Calculating Salt Index; definition: Rader, White and
    // Whittaker (1943), Soil Science 55(3):201–218. Per unit: derived.
    for (index, n, p2o5, k2o, per_unit) in [
        (100.0, 16.0, 0.0, 0.0, 6.250),
        (104.0, 34.0, 0.0, 0.0, 3.059),
        (88.3, 21.0, 0.0, 0.0, 4.205),
        (74.4, 46.0, 0.0, 0.0, 1.617),
        (65.0, 15.5, 0.0, 0.0, 4.194),
        (116.2, 0.0, 0.0, 60.0, 1.937),
        (42.6, 0.0, 0.0, 50.0, 0.852),
        (69.5, 13.0, 0.0, 46.0, 1.178),
        (29.2, 18.0, 46.0, 0.0, 0.456),
        (26.7, 11.0, 52.0, 0.0, 0.424),
        (10.1, 0.0, 46.0, 0.0, 0.220),
    ] {
        let salt = salt_per_unit(index, label(n, p2o5, k2o)).unwrap_or(f64::NAN);
        exact(salt, index / (n + p2o5 + k2o));
        near(salt, per_unit, 5e-4);
    }
}

#[test]
fn salt_of_a_blend() {
    // Mortvedt (2001), Calculating Salt Index (method from memory): 60 lb of 21-0-0 at 88.3 and 40 lb of 0-0-50 at 42.6 have
    // 70.02 and are 12.6-0-20.
    let parts = [(Mass::pounds(60.0), 88.3), (Mass::pounds(40.0), 42.6)];
    exact(salt_index_of_blend(&parts).unwrap_or(f64::NAN), 70.02);
    let nitrogen = nutrient_in(parts[0].0, Nutrient::Nitrogen, label(21.0, 0.0, 0.0));
    let potash = nutrient_in(parts[1].0, Nutrient::Potash, label(0.0, 0.0, 50.0));
    exact(nitrogen.to_pounds(), 12.6);
    exact(potash.to_pounds(), 20.0);
    assert!(salt_index_of_blend(&[]).is_err());
}

#[test]
fn manure_of_three_years() {
    // Cornell University, CSS 412, module 2, release of organic nitrogen in manure: 10 ton/acre a year of wet cow manure
    // with 5 lb of organic nitrogen to the ton: 17.5 + 6.0 + 2.5 = 26.0 lb.
    let years = [MassPerArea::pounds_per_acre(50.0); 4];
    let released = manure_release(Manure::WetCow, &years);
    for (released, pounds) in released.iter().zip([17.5, 6.0, 2.5, 0.0]) {
        exact(released.to_pounds_per_acre(), pounds);
    }
    exact(released.into_iter().sum::<MassPerArea>().to_pounds_per_acre(), 26.0);
    exact(manure_release(Manure::SolidCow, &[100.0])[0], 25.0);
    exact(manure_release(Manure::Poultry, &[100.0])[0], 55.0);
}

#[test]
fn nitrogen_in_compost_and_what_becomes_of_it() {
    // Ohio State University Extension ANR-34 (2016), Table 1: poultry compost of 2.01 % N, 40.2 lb to the ton, 80.4 at 2
    // ton/acre. University of Georgia, SARE LS16-269, final report: composts release 1–4 %.
    let compost = MassPerArea::tons_per_acre(2.0);
    exact(
        available_nitrogen(compost, percent(2.01), Fraction::ONE).to_pounds_per_acre(),
        80.4,
    );
    for (share, available) in [(1.0, 0.80), (4.0, 3.22)] {
        let nitrogen = available_nitrogen(compost, percent(2.01), percent(share)).to_pounds_per_acre();
        exact(nitrogen, 80.4 * share / 100.0);
        near(nitrogen, available, 0.005);
    }
}

#[test]
fn nitrogen_on_a_label_is_not_all_available() {
    // Pacific Northwest Extension PNW 646 and PNW 533, and Gale et al. (2006), Journal of Environmental Quality
    // 35:2321–2332 (availabilities from memory): meals of 12 % at 75 %, compost of 1.5 % at 10 %, for 100 lb/acre at 36 in.
    let need = along_row(MassPerArea::pounds_per_acre(100.0), Length::inches(36.0), 1).unwrap_or_default();
    for (n, available, product, tolerance) in [(12.0, 75.0, 7.652, 5e-4), (1.5, 10.0, 459.1, 0.05)] {
        let pounds = product_for_available(need, label(n, 0.0, 0.0), percent(available))
            .map_or(f64::NAN, MassPerLength::to_pounds_per_100_feet);
        exact(pounds, 100.0 / 145.2 / (n / 100.0 * available / 100.0));
        near(pounds, product, tolerance);
    }
    assert!(product_for_available(need, label(12.0, 0.0, 0.0), Fraction::ZERO).is_err());
    assert!(product_for_available(need, label(0.0, 3.0, 0.0), Fraction::ONE).is_err());
}

#[test]
fn credits_never_make_a_need_negative() {
    // V. Grubinger, University of Vermont Extension, Nitrogen Management for Annual Vegetable Crops: 10 lb for each percent of
    // organic matter, 5 for each ton of manure worked in, 100 for a vigorous legume sod. Need 130 lb/acre.
    let need = MassPerArea::pounds_per_acre(130.0);
    let mut credits = vec![
        organic_matter_credit(percent(2.0)),
        worked_in_manure_credit(MassPerArea::tons_per_acre(6.0)),
    ];
    let after = after_credits(need, &credits).unwrap();
    exact(after.still.to_pounds_per_acre(), 80.0);
    exact(after.over.to_pounds_per_acre(), 0.0);
    credits.push(legume_sod_credit());
    let after = after_credits(need, &credits).unwrap();
    assert_eq!(after.still, MassPerArea::ZERO);
    exact(after.over.to_pounds_per_acre(), 20.0);
}

#[test]
fn nitrogen_comes_with_the_water() {
    // Common practice, no source: 0.2266 lb/acre for each ppm and inch; 8 ppm in 12 in are 21.75 lb.
    let credit = |ppm, inches| {
        water_credit(Concentration::parts_per_million(ppm), Length::inches(inches))
            .map_or(f64::NAN, MassPerArea::to_pounds_per_acre)
    };
    // An inch on an acre is 43,560 / 12 cubic feet of 28.316846592 l.
    exact(credit(1.0, 1.0), 43_560.0 / 12.0 * 28.316_846_592 * 1e-6 / 0.453_592_37);
    near(credit(1.0, 1.0), 0.2266, 5e-5);
    near(credit(8.0, 12.0), 21.75, 0.005);
}

#[test]
fn lime_by_its_strength() {
    // Penn State Agricultural Analytical Services Laboratory, Home Garden report notes: 5 lb per 100 sq ft of a limestone of
    // 70 % calcium carbonate equivalent are 7.14 (printed 7).
    let rate = MassPerArea::pounds_per_100_square_feet(5.0);
    let lime = lime_for(rate, 70.0).map_or(f64::NAN, MassPerArea::to_pounds_per_100_square_feet);
    exact(lime, 500.0 / 70.0);
    near(lime, 7.0, 0.5);
}

#[test]
fn lime_in_doses() {
    // Same notes: one dose up to 10 lb per 100 sq ft, two from 11 to 20, three from 21; six months apart.
    for (pounds, doses, each) in [(10.0, 1, 10.0), (11.0, 2, 5.5), (20.0, 2, 10.0), (21.0, 3, 7.0)] {
        let rate = MassPerArea::pounds_per_100_square_feet(pounds);
        assert_eq!(lime_doses(rate), doses, "{pounds} lb");
        let shares = split(rate, &vec![1.0; doses]).unwrap_or_default();
        for share in shares {
            exact(share.to_pounds_per_100_square_feet(), each);
        }
    }
}

#[test]
fn tons_of_lime_on_a_garden() {
    // Common practice, no source: 2,000 lb to the ton; 2 ton/acre are 91.83 lb per 1,000 sq ft, 27.548 lb per 100 ft of 36 in
    // row.
    let rate = MassPerArea::tons_per_acre(2.0);
    exact((rate * Area::square_feet(1000.0)).to_pounds(), 4000.0 / 43.56);
    near((rate * Area::square_feet(1000.0)).to_pounds(), 91.83, 0.005);
    near((rate * Length::inches(36.0)).to_pounds_per_100_feet(), 27.548, 5e-4);
}

#[test]
fn a_soil_test_hangs_on_its_unit() {
    // Rutgers New Jersey Agricultural Experiment Station, Soil Testing Laboratory, Relative Levels of Nutrients. The factor
    // of 2 from ppm: US soil test handbooks, from memory.
    let ppm = |value| SoilLevel::parts_per_million(value).unwrap();
    let pounds = |value| SoilLevel::pounds_per_acre(value).unwrap();
    exact(ppm(30.0).to_pounds_per_acre(), 60.0);
    exact(pounds(60.0).to_parts_per_million(), 30.0);
    assert_eq!(supply_by_mehlich_3(TestedFor::Phosphorus, ppm(30.0)), Supply::Medium);
    assert_eq!(supply_by_mehlich_3(TestedFor::Potassium, ppm(75.0)), Supply::High);
    assert_eq!(supply_by_mehlich_3(TestedFor::Phosphorus, pounds(30.0)), Supply::Low);
    assert_eq!(supply_by_mehlich_3(TestedFor::Potassium, pounds(75.0)), Supply::Low);
    for (nutrient, tops) in [
        (TestedFor::Phosphorus, [24.0, 45.0, 71.0, 137.0]),
        (TestedFor::Potassium, [40.0, 81.0, 145.0, 277.0]),
    ] {
        let classes = [
            Supply::VeryLow,
            Supply::Low,
            Supply::Medium,
            Supply::High,
            Supply::VeryHigh,
        ];
        for (top, pair) in tops.into_iter().zip(classes.windows(2)) {
            assert_eq!(supply_by_mehlich_3(nutrient, pounds(top)), pair[0], "{top}");
            assert_eq!(supply_by_mehlich_3(nutrient, pounds(top + 1.0)), pair[1], "{top}");
        }
    }
}

#[test]
fn what_touches_the_seed() {
    // Kansas State University Agronomy eUpdate, starter fertilizer articles: 6 to 8 lb of N + K2O an acre in contact with
    // corn seed at 30 in. Per 100 ft and as 10-10-10: derived.
    let limit = seed_limit(SeedPlacement::InContact);
    exact(limit.careful.to_pounds_per_100_feet(), 6.0 / 174.24);
    exact(limit.most.to_pounds_per_100_feet(), 8.0 / 174.24);
    near(limit.careful.to_pounds_per_100_feet(), 0.03444, 5e-6);
    near(limit.most.to_pounds_per_100_feet(), 0.04591, 5e-6);
    for (limit, ounces) in [(limit.careful, 2.75), (limit.most, 3.67)] {
        let product = most_near_seed(limit, label(10.0, 10.0, 10.0)).unwrap_or_default();
        exact(
            nitrogen_and_potash(product, label(10.0, 10.0, 10.0)).to_pounds_per_100_feet(),
            limit.to_pounds_per_100_feet(),
        );
        near(product.to_pounds_per_100_feet() * 16.0, ounces, 0.006);
    }
    // The limit belongs to the foot of row: at 36 in it is 6.67 lb/acre.
    let wider = over_ground(limit.most, Length::inches(36.0), 1).unwrap_or_default();
    exact(wider.to_pounds_per_acre(), 8.0 * 30.0 / 36.0);
    assert_eq!(most_near_seed(limit.most, label(0.0, 46.0, 0.0)), None);
}

#[test]
fn a_band_beside_and_below() {
    // Tri-State Fertilizer Recommendations, Bulletin E-2567 / AY-9-32 (1995), placement section (from memory): 100 lb of
    // N + K2O an acre at 30 in, 70 on soil of low exchange capacity. As 5-10-10: derived.
    for (low_exchange, acre, along, product) in [(false, 100.0, 0.5739, 3.83), (true, 70.0, 0.4017, 2.68)] {
        let limit = seed_limit(SeedPlacement::Band { low_exchange }).most;
        exact(limit.to_pounds_per_100_feet(), acre / 174.24);
        near(limit.to_pounds_per_100_feet(), along, 5e-5);
        let most = most_near_seed(limit, label(5.0, 10.0, 10.0)).unwrap_or_default();
        near(most.to_pounds_per_100_feet(), product, 0.005);
    }
}

#[test]
fn manure_that_is_worked_in_gives_more_than_manure_left_on_top() {
    // University of Minnesota Extension, M. Wilson and C. Modderman, Minnesota Crop News, October 2021, table of nitrogen
    // availability, first year (read on a page that reproduces it): incorporated after 0 to 12 hours, 12 to 96, and more.
    for (animal, parts) in [
        (Animal::Beef, [60.0, 45.0, 25.0]),
        (Animal::Dairy, [55.0, 40.0, 20.0]),
        (Animal::Swine, [75.0, 55.0, 35.0]),
        (Animal::Poultry, [70.0, 55.0, 45.0]),
    ] {
        for (worked_in, part) in WorkedIn::ALL.into_iter().zip(parts) {
            let found = manure_nitrogen_available(animal, worked_in).to_percent();
            exact(found, part);
        }
    }
}
