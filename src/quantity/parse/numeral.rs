//! One number as typed: decimal and thousands marks, fractions, mixed numbers.

use super::error::ParseProblem;
use crate::quantity::Units;

/// More digits than any measure has; longer runs are a slip of the hand.
const MOST_DIGITS: usize = 24;

/// The value of a run of digits, points and commas, by the rule for marks in the module page.
pub(super) fn decimal(run: &str, units: Units) -> Result<f64, ParseProblem> {
    if run.len() > MOST_DIGITS {
        return Err(ParseProblem::TooLarge);
    }
    let points = run.matches('.').count();
    let commas = run.matches(',').count();
    let (decimal_mark, thousands_mark) = match (points, commas) {
        (0, 0) => (None, None),
        (1, 0) => (Some('.'), None),
        (_, 0) => (None, Some('.')),
        (0, 1) if looks_like_thousands(run) => match units {
            Units::Customary => (None, Some(',')),
            Units::Metric => return Err(ParseProblem::TwoReadings),
        },
        (0, 1) => (Some(','), None),
        (0, _) => (None, Some(',')),
        _ if run.rfind('.') > run.rfind(',') => (Some('.'), Some(',')),
        _ => (Some(','), Some('.')),
    };
    let (whole, part) = match decimal_mark {
        Some(mark) => run.split_once(mark).unwrap_or((run, "")),
        None => (run, ""),
    };
    let mut digits = String::with_capacity(run.len());
    match thousands_mark {
        Some(mark) => {
            let mut groups = whole.split(mark);
            let lead = groups.next().unwrap_or("");
            if !(1..=3).contains(&lead.len()) {
                return Err(ParseProblem::NotUnderstood);
            }
            digits.push_str(lead);
            for group in groups {
                if group.len() != 3 {
                    return Err(ParseProblem::NotUnderstood);
                }
                digits.push_str(group);
            }
        }
        None => digits.push_str(whole),
    }
    digits.push('.');
    digits.push_str(part);
    // A lone mark, or a second decimal mark after the first, is no number; only digits and one point are left otherwise.
    digits.parse().map_err(|_| ParseProblem::NotUnderstood)
}

/// Whether a run with one comma has it where a thousands mark would stand.
fn looks_like_thousands(run: &str) -> bool {
    run.split_once(',')
        .is_some_and(|(lead, rest)| (1..=3).contains(&lead.len()) && !lead.starts_with('0') && rest.len() == 3)
}

/// The value of a plain fraction, `1/2`.
pub(super) fn fraction(numerator: &str, denominator: &str) -> Result<f64, ParseProblem> {
    if numerator.len() > MOST_DIGITS || denominator.len() > MOST_DIGITS {
        return Err(ParseProblem::TooLarge);
    }
    match (numerator.parse::<f64>(), denominator.parse::<f64>()) {
        (Ok(top), Ok(bottom)) if bottom > 0.0 => Ok(top / bottom),
        _ => Err(ParseProblem::NotUnderstood),
    }
}

/// The value of a fraction that is one character.
pub(super) const fn glyph(character: char) -> Option<f64> {
    Some(match character {
        '½' => 1.0 / 2.0,
        '¼' => 1.0 / 4.0,
        '¾' => 3.0 / 4.0,
        '⅓' => 1.0 / 3.0,
        '⅔' => 2.0 / 3.0,
        '⅛' => 1.0 / 8.0,
        '⅜' => 3.0 / 8.0,
        '⅝' => 5.0 / 8.0,
        '⅞' => 7.0 / 8.0,
        _ => return None,
    })
}
