//! Reading days as growers write them, and showing them back: `10 June`, `2027-06-10`, and a stage of growth where a
//! dressing goes down at one.

use jiff::civil::Date;

use crate::catalog::FeedingStage;
use crate::layout::When;

const MONTHS: [&str; 12] = [
    "january",
    "february",
    "march",
    "april",
    "may",
    "june",
    "july",
    "august",
    "september",
    "october",
    "november",
    "december",
];

/// Reads a day: `10 June`, `June 10`, `10 June 2027`, `2027-06-10`. The season's year where none is written; nothing where
/// nothing is.
pub(super) fn read_day(text: &str, season: i16) -> Result<Option<Date>, String> {
    if text.is_empty() {
        return Ok(None);
    }
    match day_in(text, season) {
        Some(day) => day.map(Some),
        None => Err(format!(
            "“{text}” is not understood as a day; write it like 10 June, or {season}-06-10"
        )),
    }
}

/// A day as it is typed: without its year where that is the season's.
pub(super) fn day(day: Date, season: i16) -> String {
    if day.year() == season {
        day.strftime("%-d %B").to_string()
    } else {
        day.strftime("%-d %B %Y").to_string()
    }
}

/// Reads when a dressing goes down: one of the crop's stages by its name, a day, or else the grower's own words.
pub(super) fn read_when(text: &str, season: i16, stages: &[&FeedingStage]) -> Result<When, String> {
    let text = text.trim();
    if text.is_empty() {
        return Ok(When::Unsaid);
    }
    let same = |stage: &&&FeedingStage| stage.name.value.to_lowercase() == text.to_lowercase();
    if let Some(stage) = stages.iter().find(same) {
        return Ok(When::Stage(stage.id.clone()));
    }
    match day_in(text, season) {
        Some(day) => day.map(When::Day),
        None => Ok(When::Words(text.to_owned())),
    }
}

/// When a dressing goes down, as it is typed.
pub(super) fn when(when: &When, season: i16) -> String {
    match when {
        When::Day(on) => day(*on, season),
        other => other.words(),
    }
}

/// The day in a text; `None` where it does not look like one, and why not where it does but the calendar has none.
fn day_in(text: &str, season: i16) -> Option<Result<Date, String>> {
    let none = || format!("“{text}” is no day of the calendar; look at day and month");
    let numbers: Vec<&str> = text.split('-').collect();
    if let [year, month, day] = numbers.as_slice()
        && [year, month, day].iter().all(|part| part.trim().parse::<i32>().is_ok())
    {
        let date = year
            .trim()
            .parse()
            .ok()
            .zip(month.trim().parse().ok())
            .zip(day.trim().parse().ok())
            .and_then(|((year, month), day)| Date::new(year, month, day).ok());
        return Some(date.ok_or_else(none));
    }
    let words: Vec<&str> = text
        .split([' ', ',', '.'])
        .map(str::trim)
        .filter(|word| !word.is_empty())
        .collect();
    let (day, month, year) = match words.as_slice() {
        [one, other] => {
            let (day, month) = day_and_month(one, other)?;
            (day, month, season)
        }
        [one, other, year] => {
            let (day, month) = day_and_month(one, other)?;
            (day, month, year.parse::<i16>().ok().filter(|year| *year >= 1000)?)
        }
        _ => return None,
    };
    let date = i8::try_from(day).ok().and_then(|day| Date::new(year, month, day).ok());
    Some(date.ok_or_else(none))
}

/// A number and the name of a month, in either order.
fn day_and_month(one: &str, other: &str) -> Option<(u32, i8)> {
    let number = |word: &str| {
        let digits = word.trim_end_matches(|letter: char| letter.is_ascii_alphabetic());
        let ending = word.get(digits.len()..).unwrap_or_default().to_lowercase();
        matches!(ending.as_str(), "" | "st" | "nd" | "rd" | "th")
            .then(|| digits.parse::<u32>().ok())
            .flatten()
    };
    number(one).zip(month(other)).or_else(|| number(other).zip(month(one)))
}

fn month(word: &str) -> Option<i8> {
    let word = word.to_lowercase();
    let place = MONTHS
        .iter()
        .position(|month| word.len() >= 3 && month.starts_with(&word))?;
    i8::try_from(place + 1).ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn on(text: &str) -> Option<String> {
        read_day(text, 2027).ok().flatten().map(|day| day.to_string())
    }

    #[test]
    fn a_day_is_read_in_every_common_way() {
        for text in [
            "10 June",
            "June 10",
            "10 jun",
            "June 10th, 2027",
            "2027-06-10",
            "10. June",
        ] {
            assert_eq!(on(text).as_deref(), Some("2027-06-10"), "{text}");
        }
        assert_eq!(on("10 June 2026").as_deref(), Some("2026-06-10"));
        assert_eq!(read_day("", 2027), Ok(None));
    }

    #[test]
    fn a_day_that_no_calendar_has_is_refused() {
        for text in ["31 June", "2027-13-01", "300 May"] {
            assert!(
                read_day(text, 2027).is_err_and(|error| error.contains("calendar")),
                "{text}"
            );
        }
        assert!(read_day("soon", 2027).is_err_and(|error| error.contains("10 June")));
    }

    #[test]
    fn what_is_no_day_stays_in_the_growers_words() {
        for text in ["when the elder blooms", "mid June", "10 leaves", "may be never"] {
            assert_eq!(read_when(text, 2027, &[]), Ok(When::Words(text.to_owned())), "{text}");
        }
        assert!(matches!(read_when("10 June", 2027, &[]), Ok(When::Day(_))));
        assert_eq!(read_when("", 2027, &[]), Ok(When::Unsaid));
    }

    #[test]
    fn a_day_reads_back_as_it_is_shown() {
        for text in ["10 June", "1 May 2026"] {
            let Ok(Some(read)) = read_day(text, 2027) else {
                panic!("{text}")
            };
            assert_eq!(day(read, 2027), text);
        }
    }
}
