//! Soluble fertilizer through the tape.

use proptest::prelude::*;
use quillet::agronomy::{
    Dissolves, Dissolving, InjectorRatio, Nutrient, banded_share, nutrient_in, nutrients_in, pipe_volume, product_for,
    rinse_time, run_time, time_to_last_emitter, water_depth,
};
use quillet::quantity::{Area, Concentration, Flow, FlowPerLength, Fraction, Length, Mass, MassPerArea, Span, Volume};

use crate::{exact, label, near};

fn of_nitrogen(ppm: f64, n: f64) -> Concentration {
    product_for(
        Concentration::parts_per_million(ppm),
        Nutrient::Nitrogen,
        label(n, 0.0, 0.0),
    )
    .unwrap_or_default()
}

/// Parts per million of an ounce in 100 gallons; published as 75.
fn ppm_of_an_ounce() -> f64 {
    0.453_592_37 / 16.0 * 1e6 / 378.541_178_4
}

#[test]
fn ounces_in_100_gallons() {
    // Texas A&M greenhouse nutrition page, hortipm.tamu.edu/ipmguide/nutrient/calcs.html: 250 ppm N from calcium nitrate of
    // 15 % is 22 oz per 100 gal, with 75 ppm to the ounce; it is 74.892.
    near(ppm_of_an_ounce(), 74.892, 5e-4);
    exact(
        Concentration::ounces_per_100_gallons(1.0).to_parts_per_million(),
        ppm_of_an_ounce(),
    );
    let ounces = of_nitrogen(250.0, 15.0).to_ounces_per_100_gallons();
    exact(ounces, 250.0 / 0.15 / ppm_of_an_ounce());
    near(ounces, 22.25, 0.005);
    near(ounces, 250.0 / (75.0 * 0.15), 0.005 * ounces);
}

#[test]
fn half_from_each_and_a_published_slip() {
    // Same page, practical example I: 300 ppm, half from 33 % and half from 15 %. It prints 0.33 × 75 = 29.75, which is
    // 24.75, and so 5 oz where 6.06 are right; its mix comes to 270 ppm.
    let of_33 = of_nitrogen(150.0, 33.0);
    let of_15 = of_nitrogen(150.0, 15.0);
    near(of_33.to_ounces_per_100_gallons(), 6.06, 0.005 * 6.06);
    near(of_15.to_ounces_per_100_gallons(), 13.33, 0.005 * 13.33);
    let nitrogen = |strength: Concentration, n| {
        nutrient_in(strength, Nutrient::Nitrogen, label(n, 0.0, 0.0)).to_parts_per_million()
    };
    exact(nitrogen(of_33, 33.0) + nitrogen(of_15, 15.0), 300.0);
    let printed = nitrogen(Concentration::ounces_per_100_gallons(5.0), 33.0)
        + nitrogen(Concentration::ounces_per_100_gallons(13.0), 15.0);
    near(printed, 270.0, 0.5);
}

#[test]
fn a_proportioner_of_1_to_100() {
    // Same page, practical example II: 200 ppm from 33 %. It carries the slip on; 8.08 oz per gallon of stock are right.
    let feed = of_nitrogen(200.0, 33.0);
    near(feed.to_ounces_per_100_gallons(), 8.08, 0.005 * 8.08);
    let stock = InjectorRatio::OneIn(100.0).stock_for(feed).unwrap_or_default();
    exact(
        stock.to_ounces_per_100_gallons() / 100.0,
        200.0 / 0.33 / ppm_of_an_ounce(),
    );
    near(stock.to_pounds_per_100_gallons(), 50.51, 0.005 * 50.51);
}

#[test]
fn a_feed_chart_at_1_to_100() {
    // Water-soluble fertilizer feed chart in a grower newsletter: 15 % N at 1:100, 18 oz per gallon of stock for 200 ppm and
    // 20.25 for 225; 90 oz for 5 gal.
    for (ppm, ounces) in [(200.0, 18.0), (225.0, 20.25)] {
        let stock = InjectorRatio::OneIn(100.0)
            .stock_for(of_nitrogen(ppm, 15.0))
            .unwrap_or_default();
        let each = (stock * Volume::gallons(1.0)).to_ounces();
        exact(each, ppm / 0.15 / ppm_of_an_ounce());
        near(each, ounces, 0.02 * ounces);
    }
    let stock = InjectorRatio::OneIn(100.0)
        .stock_for(of_nitrogen(200.0, 15.0))
        .unwrap_or_default();
    let five = stock * Volume::gallons(5.0);
    near(five.to_ounces(), 88.9, 0.005 * 88.9);
    assert_eq!(five.show_pounds_ounces(), "5 lb 9 oz");
}

#[test]
fn one_in_a_hundred_and_one_to_a_hundred() {
    // University of Massachusetts fact sheet, Ratios and Concentrations: a gallon makes 100 gallons; another page adds a gallon
    // to 100 gallons. 20 lb N in 100 gal of stock: 239.7 or 237.3 ppm.
    let stock = Concentration::pounds_per_100_gallons(20.0);
    let ppm = |ratio: InjectorRatio| {
        ratio
            .at_emitters(stock)
            .map_or(f64::NAN, Concentration::to_parts_per_million)
    };
    exact(ppm(InjectorRatio::OneIn(100.0)), 320.0 * ppm_of_an_ounce() / 100.0);
    near(ppm(InjectorRatio::OneIn(100.0)), 239.7, 0.05);
    near(ppm(InjectorRatio::OneTo(100.0)), 237.3, 0.05);
    exact(
        ppm(InjectorRatio::OneIn(100.0)) / ppm(InjectorRatio::OneTo(100.0)),
        1.01,
    );
    let gap = ppm(InjectorRatio::OneIn(16.0)) / ppm(InjectorRatio::OneTo(16.0)) - 1.0;
    exact(gap, 1.0 / 16.0);
    near(gap, 0.062, 6e-4);
    let one_percent = InjectorRatio::of_feed(Fraction::percent(1.0).unwrap_or_default()).unwrap();
    exact(ppm(one_percent), ppm(InjectorRatio::OneIn(100.0)));
}

#[test]
fn a_weekly_feed_of_tomatoes() {
    // Mississippi State University Extension P2037, Fertigation: The Basics of Injecting Fertilizer for Field-Grown Tomatoes: 7
    // lb N an acre a week is 1 lb a day. Three beds of 100 ft, 6 ft apart: derived.
    let rate = MassPerArea::pounds_per_acre(7.0);
    let nitrogen = banded_share(Length::feet(300.0), Length::feet(6.0), rate).unwrap_or_default();
    exact(nitrogen.to_pounds(), 7.0 * 300.0 / 7260.0);
    near(nitrogen.to_pounds(), 0.2893, 5e-5);
    let complete = product_for(nitrogen, Nutrient::Nitrogen, label(20.0, 20.0, 20.0)).unwrap_or_default();
    near(complete.to_pounds(), 1.446, 5e-4);
    let held = nutrients_in(complete, label(20.0, 20.0, 20.0));
    exact(held.p2o5.to_pounds(), held.n.to_pounds());
    exact(held.k2o.to_pounds(), held.n.to_pounds());
    let nitrate = product_for(nitrogen, Nutrient::Nitrogen, label(15.5, 0.0, 0.0)).unwrap_or_default();
    near(nitrate.to_pounds(), 1.866, 5e-4);
    near(complete.to_pounds() / 3.0, 0.4821, 5e-5);
}

#[test]
fn that_feed_through_the_tape() {
    // Tape of 0.45 gpm per 100 ft: Penn State Extension, Determining How Long to Run Drip Irrigation Systems for Vegetables,
    // 26 June 2013. The rest is arithmetic: 1.446 lb in 5 gal, one in 100, on 300 ft.
    let flow = FlowPerLength::gallons_per_minute_per_100_feet(0.45) * Length::feet(300.0);
    exact(flow.to_gallons_per_minute(), 1.35);
    let ratio = InjectorRatio::OneIn(100.0);
    let stock = Volume::gallons(5.0);
    let time = ratio.time_for(stock, flow).unwrap_or_default();
    exact(time.to_minutes(), 500.0 / 1.35);
    near(time.to_hours(), 6.17, 0.005);
    assert_eq!(time.show(), "6 h 10 min");
    let nitrogen = Mass::pounds(7.0 * 300.0 / 7260.0);
    let feed = ratio
        .at_emitters(Concentration::of(nitrogen, stock))
        .unwrap_or_default();
    exact(
        feed.to_parts_per_million(),
        7.0 * 300.0 / 7260.0 * 453_592.37 / (500.0 * 3.785_411_784),
    );
    near(feed.to_parts_per_million(), 69.3, 0.05);
    let wetted = Length::feet(300.0) * Length::inches(30.0);
    let water = ratio.feed_from(stock).unwrap_or_default();
    let depth = water_depth(water, wetted).map_or(f64::NAN, Length::to_inches);
    exact(depth, 500.0 * 231.0 / 144.0 / 750.0);
    near(depth, 1.07, 0.005);
}

#[test]
fn an_inch_on_a_30_inch_bed() {
    // Penn State Extension, same page: 11.8, 7.6, 5.8 and 1.9 h.
    let bed = Length::feet(100.0) * Length::inches(30.0);
    for (gpm, hours) in [(0.22, 11.8), (0.34, 7.6), (0.45, 5.8), (1.34, 1.9)] {
        let flow = FlowPerLength::gallons_per_minute_per_100_feet(gpm) * Length::feet(100.0);
        let time = run_time(bed, Length::inches(1.0), flow).map_or(f64::NAN, Span::to_hours);
        exact(time, 250.0 * 144.0 / 231.0 / gpm / 60.0);
        near(time, hours, 0.05);
    }
}

#[test]
fn the_least_water_for_10_pounds() {
    // Lorenz and Maynard (1980), Knott's Handbook for Vegetable Growers, 2nd ed., solubility table in a reprint, lb in 100 gal
    // of cold water. At most 80 % of it: common practice, no source.
    for (solubility, gallons) in [
        (984.0, 1.02),
        (851.0, 1.18),
        (651.0, 1.54),
        (608.0, 1.64),
        (592.0, 1.69),
        (358.0, 2.79),
        (192.0, 5.21),
        (108.0, 9.26),
    ] {
        let water = Dissolving::of(Mass::pounds(10.0), Concentration::pounds_per_100_gallons(solubility)).unwrap();
        exact(water.least.to_gallons(), 1000.0 / solubility);
        near(water.least.to_gallons(), gallons, 0.005);
        exact(water.advised.to_gallons(), 1250.0 / solubility);
    }
}

#[test]
fn solubility_in_two_units() {
    // A stored table of solubility by temperature: potassium nitrate 133 g/L and urea 780 g/L at 5 °C. International Plant
    // Nutrition Institute, Nutrient Source Specifics No. 24: sodium nitrate 880 g/L at 20 °C.
    for (grams, pounds, cold) in [
        (133.0, 1.110, Some(1.08)),
        (780.0, 6.509, Some(6.51)),
        (880.0, 7.344, None),
    ] {
        let strength = Concentration::grams_per_litre(grams);
        exact(strength.to_pounds_per_gallon(), grams * 3.785_411_784 / 453.592_37);
        near(strength.to_pounds_per_gallon(), pounds, 5e-4);
        if let Some(cold) = cold {
            near(strength.to_pounds_per_gallon(), cold, 0.03 * cold);
        }
    }
}

#[test]
fn too_much_for_the_tank() {
    // Lorenz and Maynard (1980), as above: potassium nitrate, 1.08 lb/gal. 1 lb of potash in 1.5 gal: derived.
    let nitrate = label(13.0, 0.0, 46.0);
    let product = product_for(Mass::pounds(1.0), Nutrient::Potash, nitrate).unwrap_or_default();
    exact(product.to_pounds(), 1.0 / 0.46);
    let solubility = Concentration::pounds_per_gallon(1.08);
    let tank = Volume::gallons(1.5);
    exact((solubility * tank).to_pounds(), 1.62);
    let water = Dissolving::of(product, solubility).unwrap();
    assert_eq!(water.within(tank), Dissolves::Not);
    near(water.least.to_gallons(), 2.01, 0.005);
    assert_eq!(water.within(water.least), Dissolves::Barely);
    assert_eq!(water.within(Volume::gallons(2.5)), Dissolves::Barely);
    assert_eq!(water.within(water.advised), Dissolves::Well);
    near(
        nutrient_in(product, Nutrient::Nitrogen, nitrate).to_pounds(),
        0.283,
        5e-4,
    );
}

#[test]
fn feed_reaches_the_last_emitter() {
    // Arithmetic, as the function derives it. One emitter at the end takes the time of filling; with four it is 25/12 of it.
    let (tape, flow) = (Volume::gallons(2.0), Flow::gallons_per_minute(0.5));
    let minutes = |supply: f64, emitters| {
        time_to_last_emitter(Volume::gallons(supply), tape, flow, emitters).map_or(f64::NAN, Span::to_minutes)
    };
    exact(minutes(0.0, 1), 4.0);
    exact(minutes(0.0, 4), 4.0 * 25.0 / 12.0);
    exact(minutes(1.0, 4), 2.0 + 4.0 * 25.0 / 12.0);
    // The sum of the first million terms of the harmonic series, from memory: 14.392726722865.
    near(minutes(0.0, 1_000_000) / 4.0, 14.392_726_722_865, 1e-9);
    // Where the sum goes over into its expansion, the next term is one more thousand-and-first.
    near((minutes(0.0, 1001) - minutes(0.0, 1000)) / 4.0, 1.0 / 1001.0, 1e-12);
    // A tape of 5/8 in inside holds 1.59 gal on 100 ft: π/4 × 0.625² × 1,200 ÷ 231.
    let held = pipe_volume(Length::inches(0.625), Length::feet(100.0)).map_or(f64::NAN, Volume::to_gallons);
    exact(held, std::f64::consts::PI / 4.0 * 0.625 * 0.625 * 1200.0 / 231.0);
}

#[test]
fn rinsing_takes_a_quarter_of_an_hour_at_least() {
    // University of Minnesota figure of 10–15 min, read as quoted in a secondary article.
    assert_eq!(rinse_time(Span::minutes(8.0)), Span::minutes(15.0));
    assert_eq!(rinse_time(Span::minutes(22.0)), Span::minutes(22.0));
}

#[test]
fn what_cannot_be_injected_is_refused() {
    let (stock, flow) = (Concentration::grams_per_litre(10.0), Flow::gallons_per_minute(1.0));
    for bad in [0.0, 0.5, -1.0, f64::NAN, f64::INFINITY] {
        assert!(InjectorRatio::OneIn(bad).stock_for(stock).is_err(), "{bad}");
        assert!(InjectorRatio::OneIn(bad).at_emitters(stock).is_err(), "{bad}");
    }
    for bad in [-1.0, f64::NAN, f64::INFINITY] {
        assert!(InjectorRatio::OneTo(bad).feed_from(Volume::ZERO).is_err(), "{bad}");
        assert!(Dissolving::of(Mass::kilograms(bad), stock).is_err());
        assert!(run_time(Area::square_metres(bad), Length::metres(0.1), flow).is_err());
        assert!(run_time(Area::acres(1.0), Length::metres(bad), flow).is_err());
        assert!(time_to_last_emitter(Volume::cubic_metres(bad), Volume::ZERO, flow, 1).is_err());
        assert!(time_to_last_emitter(Volume::ZERO, Volume::cubic_metres(bad), flow, 1).is_err());
    }
    for bad in [0.0, -1.0, f64::NAN, f64::INFINITY] {
        let stopped = Flow::gallons_per_minute(bad);
        assert!(InjectorRatio::OneIn(100.0).time_for(Volume::ZERO, stopped).is_err());
        assert!(time_to_last_emitter(Volume::ZERO, Volume::ZERO, stopped, 1).is_err());
        assert!(Dissolving::of(Mass::ZERO, Concentration::grams_per_litre(bad)).is_err());
        assert!(water_depth(Volume::ZERO, Area::square_metres(bad)).is_err());
        assert!(pipe_volume(Length::metres(bad), Length::metres(1.0)).is_err());
    }
    assert!(InjectorRatio::of_feed(Fraction::ZERO).is_err());
    assert!(time_to_last_emitter(Volume::ZERO, Volume::ZERO, flow, 0).is_err());
}

proptest! {
    /// What goes into the tank comes out of the emitters, by either meaning of the ratio.
    #[test]
    fn nothing_is_lost_between_tank_and_row(
        kilograms in 0.001..50.0_f64,
        litres in 1.0..500.0_f64,
        parts in 1.0..500.0_f64,
        to in any::<bool>(),
    ) {
        let ratio = if to { InjectorRatio::OneTo(parts) } else { InjectorRatio::OneIn(parts) };
        let (salt, tank) = (Mass::kilograms(kilograms), Volume::litres(litres));
        let stock = Concentration::of(salt, tank);
        let feed = ratio.at_emitters(stock).unwrap_or_default();
        let out = feed * ratio.feed_from(tank).unwrap_or_default();
        prop_assert!((out - salt).abs() <= salt * 1e-12);
        let back = ratio.stock_for(feed).unwrap_or_default();
        prop_assert!((back - stock).abs() <= stock * 1e-12);
    }
}
