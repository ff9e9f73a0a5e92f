//! Words that are not parted at the end of a line: the one place that says which.

/// A blank at which no line is broken.
pub(super) const HELD: char = '\u{a0}';

/// The words with each number held to what it counts: "10 lb/1,000 sq ft", "2 1/2 in", "3 ft 6 in" and "1 × 250 seeds" are
/// not broken.
pub fn held_together(text: &str) -> String {
    let words: Vec<&str> = text.split(' ').collect();
    let mut held = String::with_capacity(text.len());
    for (place, word) in words.iter().enumerate() {
        if place > 0 {
            let before = |back: usize| place.checked_sub(back).and_then(|place| words.get(place)).copied();
            let is_held = belong(
                before(2),
                before(1).unwrap_or_default(),
                word,
                words.get(place + 1).copied(),
            );
            held.push(if is_held { HELD } else { ' ' });
        }
        held.push_str(word);
    }
    held
}

/// Whether two words belong together, by what stands before and behind them.
fn belong(before: Option<&str>, word: &str, next: &str, behind: Option<&str>) -> bool {
    let counts = |word: &str| word.ends_with(|last: char| last.is_ascii_digit() || "½¼¾".contains(last));
    let begins_as_unit = |word: &str| word.starts_with(|first: char| first.is_alphabetic() || "%°".contains(first));
    let begins_as_number = |word: &str| word.starts_with(|first: char| first.is_ascii_digit());
    if word.ends_with('×') || next.starts_with('×') || (word == "sq" && next.starts_with("ft")) {
        return true;
    }
    // "3 ft 6 in", "2 lb 6 oz", "6 h 10 min".
    let is_larger = matches!(word, "ft" | "lb" | "h") && before.is_some_and(counts);
    let is_smaller = |unit: &str| ["in", "oz", "min"].iter().any(|smaller| unit.starts_with(smaller));
    if is_larger && begins_as_number(next) {
        return next.contains('/') || behind.is_some_and(|behind| is_smaller(behind) || behind.contains('/'));
    }
    counts(word) && (begins_as_unit(next) || (begins_as_number(next) && next.contains('/')))
}
