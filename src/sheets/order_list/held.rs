//! Words that are not parted at the end of a line.

/// A blank at which no line is broken.
pub const HELD: char = '\u{a0}';

/// The words with each number held to what it counts, and packets to what they hold: "0.56 oz" and "1 × 250 seeds" are
/// not broken.
pub fn held_together(text: &str) -> String {
    let mut held = String::with_capacity(text.len());
    let mut letters = text.chars().peekable();
    while let Some(letter) = letters.next() {
        let after_number = held.ends_with(|last: char| last.is_ascii_digit());
        let before_word = letters.peek().is_some_and(|next| next.is_alphabetic() || *next == '%');
        let in_packets = held.ends_with('×') || letters.peek() == Some(&'×');
        held.push(if letter == ' ' && (after_number && before_word || in_packets) {
            HELD
        } else {
            letter
        });
    }
    held
}
