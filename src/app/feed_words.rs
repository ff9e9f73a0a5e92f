//! Reading what a grower types for feeding. Each reader says what would do when it cannot read.

use std::ops::{Div, Mul};

use crate::agronomy::{self, Nutrient};
use crate::catalog::Analysis;
use crate::layout::{Amount, NutrientRate};
use crate::quantity::{
    Concentration, Density, Fraction, Length, Mass, MassPerArea, MassPerLength, RateUnit, Units, Volume, number,
    read_number,
};

/// Two ends as `1.1 to 1.3 lb`, or as one where they show alike.
pub(super) fn span(low: &str, high: &str) -> String {
    if low == high {
        return low.to_owned();
    }
    match (low.split_once(' '), high.split_once(' ')) {
        (Some((number, unit)), Some((_, other))) if unit == other => format!("{number} to {high}"),
        _ => format!("{low} to {high}"),
    }
}

/// Reads a rate over ground that may be left out, with the unit it was typed in.
pub(super) fn read_rate(text: &str, units: Units) -> Result<Option<(MassPerArea, Option<RateUnit>)>, String> {
    if text.is_empty() {
        return Ok(None);
    }
    not_negative(text)?;
    let rate = MassPerArea::parse(text, units).map_err(|error| error.to_string())?;
    Ok(Some((rate, RateUnit::of_rate(text, units).ok())))
}

/// Reads a rate over ground or along the row that may be left out, with the unit it was typed in.
pub(super) fn read_nutrient_rate(text: &str, units: Units) -> Result<Option<(NutrientRate, Option<RateUnit>)>, String> {
    not_negative(text)?;
    if let Ok(along) = MassPerLength::parse(text, units) {
        let unit = RateUnit::of_rate(text, units).ok();
        return Ok(Some((NutrientRate::PerRowLength(along), unit)));
    }
    let over_ground = read_rate(text, units)?;
    Ok(over_ground.map(|(rate, unit)| (NutrientRate::PerArea(rate), unit)))
}

/// Reads an amount over ground, along the row or to the plant, with the unit it was typed in.
pub(super) fn read_amount(text: &str, units: Units) -> Result<(Amount, Option<RateUnit>), String> {
    not_negative(text)?;
    let lower = text.to_lowercase();
    for ending in ["/plant", "/ plant", "per plant", "a plant", "each"] {
        if let Some(weight) = lower.strip_suffix(ending) {
            let each = Mass::parse(weight.trim(), units).map_err(|error| error.to_string())?;
            let unit = RateUnit::of_rate(&format!("{weight}/plant"), units).ok();
            return Ok((Amount::PerPlant(each), unit));
        }
    }
    let amount = match MassPerArea::parse(text, units) {
        Ok(rate) => Amount::PerArea(rate),
        Err(error) => match MassPerLength::parse(text, units) {
            Ok(rate) => Amount::PerRowLength(rate),
            Err(_) => return Err(error.to_string()),
        },
    };
    Ok((amount, RateUnit::of_rate(text, units).ok()))
}

/// A rate as fields write it: in the unit it was typed in, or the layout's usual one.
pub(super) fn nutrient_rate(rate: NutrientRate, typed_in: Option<RateUnit>, units: Units) -> String {
    match rate {
        NutrientRate::PerArea(rate) => rate.show_field_in(typed_in, units),
        NutrientRate::PerRowLength(rate) => rate.show_along_in(typed_in, units),
    }
}

/// A rate in the terms of a label, of one that a paper gives as phosphorus or potassium.
pub(super) fn from_element(nutrient: Nutrient, rate: NutrientRate) -> NutrientRate {
    fn oxide<Q: Div<f64, Output = Q>>(nutrient: Nutrient, element: Q) -> Q {
        match nutrient {
            Nutrient::Nitrogen => element,
            Nutrient::Phosphate => agronomy::phosphate_from_phosphorus(element),
            Nutrient::Potash => agronomy::potash_from_potassium(element),
        }
    }
    match rate {
        NutrientRate::PerArea(rate) => NutrientRate::PerArea(oxide(nutrient, rate)),
        NutrientRate::PerRowLength(rate) => NutrientRate::PerRowLength(oxide(nutrient, rate)),
    }
}

/// A rate as phosphorus or potassium, of one in the terms of a label.
pub(super) fn to_element(nutrient: Nutrient, rate: NutrientRate) -> NutrientRate {
    fn element<Q: Mul<f64, Output = Q>>(nutrient: Nutrient, oxide: Q) -> Q {
        match nutrient {
            Nutrient::Nitrogen => oxide,
            Nutrient::Phosphate => agronomy::phosphorus_from_phosphate(oxide),
            Nutrient::Potash => agronomy::potassium_from_potash(oxide),
        }
    }
    match rate {
        NutrientRate::PerArea(rate) => NutrientRate::PerArea(element(nutrient, rate)),
        NutrientRate::PerRowLength(rate) => NutrientRate::PerRowLength(element(nutrient, rate)),
    }
}

/// Reads the three numbers of a label or of a compost test: `15-0-0`, `1.5 - 1 - 1`, `1,5-1-1`, `15 0 0`.
pub(super) fn read_analysis(text: &str) -> Result<Analysis, String> {
    not_negative(text)?;
    let not_three = || {
        format!(
            "“{text}” is not understood; write the three numbers of the label, nitrogen, phosphate and potash in percent, \
            such as 15-0-0"
        )
    };
    let parts: Vec<&str> = text
        .split(['-', '–', '/', ' '])
        .map(|part| part.trim_end_matches('%'))
        .filter(|part| !part.is_empty())
        .collect();
    let [n, p2o5, k2o] = parts.as_slice() else {
        return Err(not_three());
    };
    // No part goes into thousands, so a comma is never a thousands mark, whatever the units.
    let read = |part: &str| read_number(part, Units::Metric).filter(|number| *number >= 0.0);
    let (Some(n), Some(p2o5), Some(k2o)) = (read(n), read(p2o5), read(k2o)) else {
        return Err(not_three());
    };
    Analysis::percent(n, p2o5, k2o).ok_or_else(|| {
        format!(
            "“{text}” comes to {} %, more than the whole; the three numbers are 100 % all together at most",
            number(n + p2o5 + k2o, 1)
        )
    })
}

/// Reads a strength in water; a number alone is in parts per million.
pub(super) fn read_ppm(text: &str, units: Units) -> Result<Concentration, String> {
    let strength = text.parse::<f64>().map_or_else(
        |_| Concentration::parse(text, units).map_err(|error| error.to_string()),
        |ppm| Ok(Concentration::parts_per_million(ppm)),
    )?;
    if !(Concentration::ZERO..=Concentration::parts_per_million(MOST_PPM)).contains(&strength) {
        return Err(format!("“{text}” does not do; write 0 to 1,000 ppm, such as 5 ppm"));
    }
    Ok(strength)
}

/// No water that crops are given holds more nitrate; a larger number is a slip of the hand.
const MOST_PPM: f64 = 1000.0;

/// Reads a percentage that may be over a hundred, as that of burnt lime: a part of one.
pub(super) fn read_purity(text: &str) -> Result<f64, String> {
    text.trim_end_matches('%')
        .trim()
        .parse::<f64>()
        .ok()
        .filter(|percent| *percent > 0.0 && *percent <= 200.0)
        .map(|percent| percent / 100.0)
        .ok_or_else(|| format!("“{text}” does not do; write a percentage over 0 and up to 200, such as 90 %"))
}

/// What was used, as it was typed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct UsedTyped {
    /// On the whole bed.
    pub(super) weight: Mass,
    /// The unit of the rate that it was worked out from; none of a weight or a measure.
    pub(super) unit: Option<RateUnit>,
}

/// What an amount that was used may be typed by.
#[derive(Clone, Copy)]
pub(super) struct UsedOf {
    /// What was planned, of which a part may be typed.
    pub(super) planned: Option<Mass>,
    /// How heavy the material is poured, when known.
    pub(super) density: Option<Density>,
}

/// Reads what was used: a weight of a material, a measure of it where it is known what a cup weighs, a part of what was
/// planned, or a rate, of which `on_bed` knows what it comes to; nothing where left out.
pub(super) fn read_used(
    text: &str,
    UsedOf { planned, density }: UsedOf,
    on_bed: impl FnOnce(Amount) -> Option<Mass>,
    units: Units,
) -> Result<Option<UsedTyped>, String> {
    if text.is_empty() {
        return Ok(None);
    }
    not_negative(text)?;
    if let Ok((rate, unit)) = read_amount(text, units) {
        let weight = on_bed(rate).ok_or_else(|| {
            format!("“{text}” comes to nothing here: the bed has nothing that it counts; write a weight")
        })?;
        return Ok(Some(UsedTyped { weight, unit }));
    }
    if let Some(percent) = text.trim_end().strip_suffix('%') {
        let part = read_number(percent, units).map(|percent| percent / 100.0);
        let weight = part.zip(planned.filter(|planned| *planned > Mass::ZERO));
        let weight = weight
            .map(|(part, planned)| planned * part)
            .filter(|weight| weight.is_finite());
        let weight = weight.ok_or_else(|| {
            format!("“{text}” does not do; write a part of what is planned, such as 120 %, or a weight")
        })?;
        return Ok(Some(UsedTyped { weight, unit: None }));
    }
    let weight = Mass::parse(text, units).or_else(|error| match (Volume::parse(text, units), density) {
        (Ok(volume), Some(density)) => Ok(volume * density),
        (Ok(_), None) => Err(format!(
            "“{text}” is a measure, and what a cup of it weighs is not known; write a weight or a rate"
        )),
        (Err(_), _) => Err(error.to_string()),
    })?;
    Ok(Some(UsedTyped { weight, unit: None }))
}

/// Reads a length of more than nothing; nothing where left out.
pub(super) fn some_length(length: Length, text: &str) -> Result<Length, String> {
    if length > Length::ZERO {
        Ok(length)
    } else {
        Err(format!("“{text}” does not do; write a length over zero"))
    }
}

/// A percentage from a part of one, without zeros at the end.
pub(super) fn percent(part: f64) -> String {
    format!("{} %", number(part * 100.0, 1))
}

/// A part as a field shows it that is empty for none.
pub(super) fn part_or_empty(part: Fraction) -> String {
    if part == Fraction::ZERO {
        String::new()
    } else {
        part.show()
    }
}

/// Refuses an amount that is typed with a minus before it.
pub(super) fn not_negative(text: &str) -> Result<(), String> {
    if text.trim_start().starts_with(['-', '−', '–']) {
        return Err(format!("“{text}” is less than nothing; write zero or more"));
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Area;

    #[test]
    fn a_laboratorys_rate_is_read_in_every_unit_that_papers_have() {
        // 43.56 lb/acre are 1 lb/1,000 sq ft: 43,560 sq ft to the acre.
        for text in ["43.56 lb/acre", "1 lb/1000 sq ft", "0.1 lb/100 sq ft"] {
            let Ok(Some((NutrientRate::PerArea(rate), _))) = read_nutrient_rate(text, Units::Customary) else {
                panic!("{text}")
            };
            assert!((rate.to_pounds_per_acre() - 43.56).abs() < 1e-9, "{text}");
        }
        for text in ["100 kg/ha", "10 g/m2"] {
            let Ok(Some((NutrientRate::PerArea(rate), _))) = read_nutrient_rate(text, Units::Metric) else {
                panic!("{text}")
            };
            assert!((rate.to_kilograms_per_hectare() - 100.0).abs() < 1e-9, "{text}");
        }
        assert!(matches!(
            read_nutrient_rate("2 lb/100 ft of row", Units::Customary),
            Ok(Some((NutrientRate::PerRowLength(_), _)))
        ));
        assert_eq!(read_nutrient_rate("", Units::Customary), Ok(None));
        for text in ["120", "-5 lb/acre", "-1 lb/100 ft", "a lot"] {
            assert!(read_nutrient_rate(text, Units::Customary).is_err(), "{text}");
        }
    }

    #[test]
    fn elements_and_oxides_go_there_and_back() {
        for nutrient in Nutrient::ALL {
            let rate = NutrientRate::PerArea(MassPerArea::pounds_per_acre(60.0));
            let NutrientRate::PerArea(again) = from_element(nutrient, to_element(nutrient, rate)) else {
                panic!("over ground")
            };
            assert!((again.to_pounds_per_acre() - 60.0).abs() < 1e-9);
        }
    }

    #[test]
    fn an_analysis_is_three_numbers_and_no_more_than_the_whole() {
        let read = |text| read_analysis(text).map(Analysis::label);
        for (typed, shown) in [
            ("15-0-0", "15-0-0"),
            ("12-1.5-0.6", "12-1.5-0.6"),
            ("1,5-1-1", "1.5-1-1"),
            ("1.5 - 1 - 1", "1.5-1-1"),
            ("10 20 10", "10-20-10"),
            ("10 – 10 – 10", "10-10-10"),
            ("46%-0-0", "46-0-0"),
            ("46 % - 0 - 0", "46-0-0"),
        ] {
            assert_eq!(read(typed).as_deref(), Ok(shown));
        }
        for (typed, why) in [
            ("15-0", "three numbers"),
            ("15-0-0-4", "three numbers"),
            ("urea", "three numbers"),
            ("1,500-0-0", "three numbers"),
            ("60-30-20", "110 %"),
            ("-1-1-1", "less than nothing"),
            ("", "three numbers"),
        ] {
            assert!(read(typed).is_err_and(|sentence| sentence.contains(why)), "{typed}");
        }
    }

    #[test]
    fn what_was_used_is_read_by_weight_or_by_a_known_cup() {
        let density = agronomy::density_of_cup(Mass::ounces(8.0)).ok();
        let used = |text, density| {
            let planned = Some(Mass::pounds(10.0));
            let read = read_used(text, UsedOf { planned, density }, |_| None, Units::Customary);
            read.map(|typed| typed.map(|typed| typed.weight))
        };
        assert_eq!(used("", density), Ok(None));
        assert!(matches!(used("12", None), Ok(Some(mass)) if (mass.to_pounds() - 12.0).abs() < 1e-9));
        assert!(matches!(used("3 cups", density), Ok(Some(mass)) if (mass.to_ounces() - 24.0).abs() < 1e-9));
        assert!(used("3 cups", None).is_err_and(|error| error.contains("cup")));
        assert!(used("-1 lb", None).is_err());
        // A fifth more than the 10 lb planned.
        assert!(matches!(used("120 %", None), Ok(Some(mass)) if (mass.to_pounds() - 12.0).abs() < 1e-9));
        assert!(matches!(used("0%", None), Ok(Some(mass)) if mass == Mass::ZERO));
        for text in ["-20 %", "many %", "%"] {
            assert!(used(text, None).is_err(), "{text}");
        }
        let nothing = UsedOf {
            planned: None,
            density: None,
        };
        assert!(read_used("120 %", nothing, |_| None, Units::Customary).is_err());
    }

    #[test]
    fn what_was_used_is_read_as_a_rate() {
        let of = UsedOf {
            planned: None,
            density: None,
        };
        // 330 ft of row, 3 ft apart.
        let on_bed = |rate| match rate {
            Amount::PerArea(rate) => Some(rate * Area::square_feet(990.0)),
            Amount::PerRowLength(rate) => Some(rate * Length::feet(330.0)),
            Amount::PerPlant(_) => None,
        };
        for (text, pounds, unit) in [
            ("3 lb/100 ft", 9.9, "lb/100 ft"),
            ("10 lb/1000 sq ft", 9.9, "lb/1000 sq ft"),
            ("435.6 lb/acre", 9.9, "lb/acre"),
            ("44.645 g/m of row", 9.9, "g/m"),
        ] {
            let Ok(Some(used)) = read_used(text, of, on_bed, Units::Customary) else {
                panic!("{text}")
            };
            assert!((used.weight.to_pounds() - pounds).abs() < 1e-3, "{text}: {used:?}");
            assert_eq!(used.unit.map(|unit| unit.to_string()).as_deref(), Some(unit));
        }
        let nothing = read_used("1 oz/plant", of, on_bed, Units::Customary);
        assert!(nothing.is_err_and(|error| error.contains("write a weight")));
        assert!(read_used("-3 lb/100 ft", of, on_bed, Units::Customary).is_err());
    }
}
