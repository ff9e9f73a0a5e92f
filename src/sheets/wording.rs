//! The few lengths and counts that the drawing itself words.

use crate::quantity::{Length, Units};

/// A length as written beside a side or in a legend: whole inches below three feet, else feet to a tenth;
/// whole centimetres below two metres, else metres to two decimals; zeros at the end left out.
pub(crate) fn length(length: Length, units: Units) -> String {
    match units {
        Units::Customary if length.to_inches().abs() < 35.95 => format!("{} in", trimmed(length.to_inches(), 1)),
        Units::Customary => format!("{} ft", trimmed(length.to_feet(), 1)),
        Units::Metric if length.to_metres().abs() < 1.995 => format!("{} cm", trimmed(length.to_metres() * 100.0, 0)),
        Units::Metric => format!("{} m", trimmed(length.to_metres(), 2)),
    }
}

/// A number to so many decimals, with thousands marks, zeros at the end left out.
pub(crate) fn trimmed(value: f64, decimals: usize) -> String {
    let text = format!("{value:.decimals$}");
    let (whole, part) = text.split_once('.').unwrap_or((&text, ""));
    let (sign, digits) = whole.strip_prefix('-').map_or(("", whole), |digits| ("−", digits));
    let mut grouped = String::new();
    for (place, digit) in digits.chars().enumerate() {
        if place > 0 && (digits.len() - place) % 3 == 0 {
            grouped.push(',');
        }
        grouped.push(digit);
    }
    let part = part.trim_end_matches('0');
    let sign = if grouped == "0" && part.is_empty() { "" } else { sign };
    if part.is_empty() {
        format!("{sign}{grouped}")
    } else {
        format!("{sign}{grouped}.{part}")
    }
}

/// A count with its noun: "1 row", "10 rows".
pub(crate) fn count(count: u64, one: &str, many: &str) -> String {
    format!("{} {}", trimmed(count as f64, 0), if count == 1 { one } else { many })
}
