//! Reading what a grower types for seed: amounts, germination, prices, days. Each says what would do when it cannot be
//! read, so that the field can say it.

use super::day_words::read_day;
use crate::catalog::CropId;
use crate::layout::{Bed, LotGermination, OwnHarvest, SeedAmount};
use crate::plan::Things;
use crate::quantity::{
    CountPerLength, Fraction, Mass, MassPerArea, MassPerLength, MassUnit, Units, count, read_number,
};
use crate::sheets::order_list::day_words;

/// Reads an amount by weight or by count: `1/2 oz`, `2 lb`, `340 seeds`. `what` holds it: "a lot".
pub(super) fn read_amount(text: &str, what: &str, units: Units) -> Result<SeedAmount, String> {
    let split = text.find(|letter: char| letter.is_alphabetic()).unwrap_or(text.len());
    let (number, word) = text.split_at(split);
    let word = word.split_whitespace().collect::<Vec<_>>().join(" ").to_lowercase();
    let negative = number.trim_start().starts_with(['-', '−']);
    if negative {
        return Err(format!("“{text}” is less than nothing; {what} holds nothing or more"));
    }
    if word.is_empty() {
        if read_count(number.trim()) == Some(0) {
            return Ok(SeedAmount::Count(0));
        }
        let example = match units {
            Units::Customary => "1/2 oz",
            Units::Metric => "15 g",
        };
        return Err(format!(
            "“{text}” may be a weight or a count; write a weight as {example}, or a count as 340 seeds"
        ));
    }
    let is_counted = |things: &Things| word == things.name() || word == things.one();
    if Things::ALL.iter().any(is_counted) || ["tuber", "tubers"].contains(&word.as_str()) {
        return read_count(number.trim())
            .map(SeedAmount::Count)
            .ok_or_else(|| format!("“{text}” is not understood; write a whole number, such as 340 seeds"));
    }
    Mass::parse(text, units)
        .map(SeedAmount::Weight)
        .map_err(|error| error.to_string())
}

/// A whole number, with or without commas or blanks between its thousands: "1,5" is none.
fn read_count(text: &str) -> Option<u64> {
    without_commas(&text.replace(' ', ","))?.parse().ok()
}

/// A number without the commas between its thousands; `None` where a comma stands anywhere else: "3,50" may be three and
/// a half.
fn without_commas(text: &str) -> Option<String> {
    let (whole, rest) = text.split_at(text.find('.').unwrap_or(text.len()));
    let mut groups = whole.split(',');
    let first = groups.next()?;
    let are_thousands = groups.clone().next().is_none() || (1..=3).contains(&first.len());
    (are_thousands && groups.all(|group| group.len() == 3)).then(|| whole.replace(',', "") + rest)
}

/// Reads what one set, clove or piece weighs: more than nothing.
pub(super) fn read_weight_of_one(text: &str, units: Units) -> Result<Mass, String> {
    let unit = match units {
        Units::Customary => MassUnit::Ounces,
        Units::Metric => MassUnit::Grams,
    };
    match Mass::parse_with(text, unit) {
        Ok(mass) if mass > Mass::ZERO => Ok(mass),
        Ok(_) => Err("One weighs more than nothing; write 2 oz, or 50 g".to_owned()),
        Err(error) => Err(error.to_string()),
    }
}

/// Reads how much of a lot comes up: `85 %` from the tag, `34 of 40` from one's own test, or `34 of 40, 12 February` with
/// the day of it; nothing where not known.
pub(super) fn read_germination(text: &str, season: i16) -> Result<LotGermination, String> {
    if text.is_empty() {
        return Ok(LotGermination::NotKnown);
    }
    let lower = text.to_lowercase();
    if let Some((up, of)) = lower.split_once("of") {
        let wrong = || format!("“{text}” is not understood; write whole numbers, such as 34 of 40");
        let up: u32 = up.trim().parse().map_err(|_| wrong())?;
        let of = of.trim_start();
        let (of, rest) = of.split_at(of.find(|letter: char| !letter.is_ascii_digit()).unwrap_or(of.len()));
        let of: u32 = of.parse().map_err(|_| wrong())?;
        let rest = rest.trim_start().trim_start_matches("seeds");
        let day = rest
            .trim_start_matches([',', ';', ' '])
            .trim_start_matches("on ")
            .trim();
        let on = read_day(day, season)?;
        if of == 0 {
            return Err("A test needs one seed at least; write 34 of 40".to_owned());
        }
        if up > of {
            return Err(format!("{up} cannot come up of {of}; are the two numbers exchanged?"));
        }
        return Ok(LotGermination::OwnTest { came_up: up, of, on });
    }
    read_part(text).map(LotGermination::Tag)
}

/// How much of a lot comes up, as it is typed. The day of a test has a field of its own.
pub(super) fn germination(germination: LotGermination) -> String {
    match germination {
        LotGermination::NotKnown => String::new(),
        LotGermination::Tag(part) => part.show(),
        LotGermination::OwnTest { came_up, of, .. } => format!("{came_up} of {of}"),
    }
}

/// How much of a lot comes up, in a list: "95 % up", "38 of 40, 12 February 2027"; nothing where not known.
pub(super) fn germination_note(germination: LotGermination) -> Option<String> {
    match germination {
        LotGermination::OwnTest {
            came_up,
            of,
            on: Some(on),
        } => Some(format!("{came_up} of {of}, {}", day_words(on))),
        other => other.found().map(|found| format!("{} up", found.show())),
    }
}

/// Reads a part that comes up: more than nothing, and not more than all of it.
pub(super) fn read_part(text: &str) -> Result<Fraction, String> {
    let part = Fraction::parse_percent(text)
        .map_err(|_| format!("“{text}” does not do; write a percentage over 0 and up to 100, such as 85 %"))?;
    if part > Fraction::ZERO && part.to_percent() < 1.0 {
        let hundredfold = plain(part.to_percent() * 100.0);
        return Err(format!(
            "“{text}” may be {hundredfold} % or less than one in a hundred; write {hundredfold} %, or 1 % or more"
        ));
    }
    if part <= Fraction::ZERO {
        return Err("Of seed that does not come up no amount is enough; write a percentage over 0".to_owned());
    }
    Ok(part)
}

/// Reads a spare part on top of what is needed: nothing or more, up to as much again.
pub(super) fn read_spare(text: &str) -> Result<Fraction, String> {
    if text.starts_with(['-', '−']) {
        return Err(format!(
            "“{text}” is less than nothing; a spare goes on top of what is needed, so write 0 % or more, such as 10 %"
        ));
    }
    Fraction::parse_percent(text)
        .map_err(|_| format!("“{text}” does not do; write a percentage from 0 to 100, such as 10 %"))
}

/// Reads a price in the grower's own currency; nothing where not known.
pub(super) fn read_price(text: &str) -> Result<Option<f64>, String> {
    if text.is_empty() {
        return Ok(None);
    }
    // A sign of currency or its three capitals on either side, and commas between thousands.
    let number = without_currency(text);
    if number.chars().any(char::is_alphabetic) && number.contains(|sign: char| sign.is_ascii_digit()) {
        return Err(format!(
            "“{text}” has words with it; write what one costs, such as 3.50, in your own currency"
        ));
    }
    if number.starts_with(['-', '−']) {
        return Err(format!(
            "“{text}” is less than nothing; write a price such as 3.50, or nothing"
        ));
    }
    without_commas(number)
        .unwrap_or_default()
        .parse::<f64>()
        .ok()
        .filter(|price| price.is_finite() && *price >= 0.0)
        .map(Some)
        .ok_or_else(|| format!("“{text}” is not understood; write a price such as 3.50, or nothing"))
}

/// A price without the currency before or behind it: a sign, or three capitals as in "EUR".
fn without_currency(text: &str) -> &str {
    let is_sign = |sign: char| "$€£¥₹₺₩₽".contains(sign);
    let bare = text.trim().trim_matches(is_sign).trim();
    let capitals = |word: &str| word.len() == 3 && word.chars().all(|letter| letter.is_ascii_uppercase());
    let from = bare.find(|letter: char| !letter.is_alphabetic()).unwrap_or(0);
    let bare = bare
        .split_at_checked(from)
        .filter(|(word, _)| capitals(word))
        .map_or(bare, |(_, number)| number.trim());
    let to = bare.trim_end_matches(char::is_alphabetic).len();
    bare.split_at_checked(to)
        .filter(|(_, word)| capitals(word))
        .map_or(bare, |(number, _)| number.trim())
}

/// What is to be said where another crop takes a cultivar's place: a cultivar belongs to its crop.
pub(super) fn cultivar_dropped(bed: &Bed, crop_name: &str, new: &CropId) -> Option<String> {
    let planting = bed.planting.as_ref().filter(|planting| planting.crop != *new)?;
    let cultivar = planting.cultivar.trim();
    (!cultivar.is_empty()).then(|| {
        format!(
            "“{cultivar}” is a cultivar of {crop_name}, so {} has none now",
            bed.name
        )
    })
}

/// Reads a number over nothing, such as seeds in an ounce; its marks are read as in every other field.
pub(super) fn read_positive(text: &str, example: &str, units: Units) -> Result<f64, String> {
    read_number(text, units)
        .filter(|number| number.is_finite() && *number > 0.0)
        .ok_or_else(|| format!("“{text}” does not do; write a number over zero, such as {example}"))
}

/// A whole number as [`read_positive`] takes it back: in metric units without the comma between thousands, which could be
/// read two ways there.
pub(super) fn whole(number: u64, units: Units) -> String {
    match units {
        Units::Customary => count(number),
        Units::Metric => number.to_string(),
    }
}

/// Reads a number of days, typed in weeks or days: `6 weeks`, `42 days`, `6`. Nothing where not known.
pub(super) fn read_weeks(text: &str) -> Result<Option<u16>, String> {
    if text.is_empty() {
        return Ok(None);
    }
    let split = text.find(|letter: char| letter.is_alphabetic()).unwrap_or(text.len());
    let (number, word) = text.split_at(split);
    let days_each = match word.trim() {
        "" | "w" | "wk" | "wks" | "week" | "weeks" => 7.0,
        "d" | "day" | "days" => 1.0,
        _ => 0.0,
    };
    let days = number
        .trim()
        .parse::<f64>()
        .ok()
        .map(|number| (number * days_each).round());
    match days {
        // At most as many as there are in two years; the limit itself is kept where the change is made.
        Some(days) if (1.0..=9999.0).contains(&days) => Ok(Some(days as u16)),
        _ => Err(format!("“{text}” is not understood; write 6 weeks, or 42 days")),
    }
}

/// Days in weeks where they are whole weeks.
pub(super) fn weeks(days: Option<u16>) -> String {
    match days {
        None => String::new(),
        Some(7) => "1 week".to_owned(),
        Some(days) if days.is_multiple_of(7) => format!("{} weeks", days / 7),
        Some(1) => "1 day".to_owned(),
        Some(days) => format!("{days} days"),
    }
}

/// Reads what a length of row gives: a weight for a length, or a number for 100 feet or a metre. A number alone is one
/// only of a crop whose harvest is counted.
pub(super) fn read_harvest(text: &str, counted: bool, units: Units) -> Result<OwnHarvest, String> {
    let (ending, example) = match units {
        Units::Customary => ("in 100 ft", "120 in 100 ft"),
        Units::Metric => ("in a metre", "4 in a metre"),
    };
    let number = text.strip_suffix(ending);
    if number.is_none() {
        match MassPerLength::parse(text, units) {
            Ok(weight) => return Ok(OwnHarvest::Weight(weight)),
            Err(error) if !counted => return Err(format!("{error}; a number is written as {example}")),
            Err(_) => {}
        }
    }
    let number = read_positive(number.unwrap_or(text).trim(), example, units)?;
    Ok(OwnHarvest::Number(match units {
        Units::Customary => CountPerLength::per_100_feet(number),
        Units::Metric => CountPerLength::per_metre(number),
    }))
}

/// Reads nitrogen over ground, some of it.
pub(super) fn read_nitrogen(text: &str, units: Units) -> Result<MassPerArea, String> {
    let rate = MassPerArea::parse(text, units).map_err(|error| error.to_string())?;
    if rate.to_kilograms_per_square_metre() <= 0.0 {
        return Err(format!(
            "“{text}” is none; use the crop's own, or write some, such as 65 lb/acre"
        ));
    }
    Ok(rate)
}

/// A number without zeros at its end.
pub(super) fn plain(number: f64) -> String {
    let text = format!("{number:.2}");
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_decimal_comma_is_one_and_a_thousands_comma_is_another() {
        use Units::{Customary, Metric};
        for (typed, units, read) in [
            ("1,5", Customary, Some(1.5)),
            ("1,5", Metric, Some(1.5)),
            ("1,500", Customary, Some(1500.0)),
            // It may be one and a half.
            ("1,500", Metric, None),
            ("1500", Metric, Some(1500.0)),
            ("0", Customary, None),
            ("-2", Customary, None),
            ("inf", Customary, None),
        ] {
            assert_eq!(read_positive(typed, "1.5", units).ok(), read, "{typed}");
        }
    }

    #[test]
    fn a_whole_number_that_is_shown_is_read_back() {
        for units in [Units::Customary, Units::Metric] {
            for number in [7, 340, 1700, 36_000, 1_234_567] {
                let shown = whole(number, units);
                assert_eq!(read_positive(&shown, "96", units), Ok(number as f64), "{shown}");
            }
        }
        assert_eq!(whole(8500, Units::Customary), "8,500");
    }

    #[test]
    fn a_count_is_whole() {
        for (typed, read) in [
            ("1,500 seeds", Some(1500)),
            ("1 500 seeds", Some(1500)),
            ("340 seeds", Some(340)),
            ("1,5 seeds", None),
            ("15,00 seeds", None),
        ] {
            let amount = read_amount(typed, "a lot", Units::Customary);
            assert_eq!(amount.ok(), read.map(SeedAmount::Count), "{typed}");
        }
    }

    #[test]
    fn a_harvest_is_a_weight_or_a_number_whatever_the_crop_had() {
        let weight = OwnHarvest::Weight(MassPerLength::pounds_per_100_feet(80.0));
        let number = OwnHarvest::Number(CountPerLength::per_100_feet(120.0));
        let read = |text, counted| read_harvest(text, counted, Units::Customary);
        for counted in [false, true] {
            assert_eq!(read("80 lb/100 ft", counted), Ok(weight));
            assert_eq!(read("120 in 100 ft", counted), Ok(number));
        }
        assert_eq!(read("120", true), Ok(number));
        let refused = read("120", false);
        assert!(refused.is_err_and(|sentence| sentence.contains("120 in 100 ft")));
        let half = read_harvest("4,5 in a metre", false, Units::Metric);
        assert_eq!(half, Ok(OwnHarvest::Number(CountPerLength::per_metre(4.5))));
    }
}
