//! The few numbers that the drawing words itself: figures of scales, counts with their nouns.

use crate::quantity;

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
    format!("{} {}", quantity::count(count), if count == 1 { one } else { many })
}
