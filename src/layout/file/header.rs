//! What can be told from the text of a file before it is read as a whole.

use super::error::{FileError, TextPlace};

/// The version that the file says it is of: `(version: 2, …`, after blanks and remarks.
pub(super) fn version(text: &str) -> Result<u32, FileError> {
    if text.trim().is_empty() {
        return Err(FileError::Empty);
    }
    let mut rest = text;
    for expected in ["(", "version", ":"] {
        rest = skip_remarks(rest);
        rest = rest
            .strip_prefix(expected)
            .ok_or_else(|| not_a_layout(text, rest, "(version: 2, …"))?;
    }
    rest = skip_remarks(rest);
    let digits = rest.len() - rest.trim_start_matches(|letter: char| letter.is_ascii_digit()).len();
    rest.get(..digits)
        .and_then(|number| number.parse().ok())
        .ok_or_else(|| not_a_layout(text, rest, "2"))
}

/// Where an id stands in the text for the last time.
pub(super) fn last_id(text: &str, id: u32) -> Option<TextPlace> {
    let id = id.to_string();
    text.match_indices("id:")
        .filter(|(offset, _)| {
            let before = text.get(..*offset).and_then(|before| before.chars().next_back());
            let after = text.get(offset + "id:".len()..).unwrap_or_default().trim_start();
            let rest = after.trim_start_matches(|letter: char| letter.is_ascii_digit());
            let is_key = before.is_none_or(|letter| !letter.is_alphanumeric() && letter != '_');
            is_key && after.strip_suffix(rest) == Some(id.as_str())
        })
        .last()
        .map(|(offset, _)| TextPlace::at(text, offset))
}

fn not_a_layout(text: &str, rest: &str, expected: &'static str) -> FileError {
    FileError::NotALayout {
        place: TextPlace::at(text, text.len() - rest.len()),
        expected,
    }
}

/// The text after blanks and remarks.
fn skip_remarks(text: &str) -> &str {
    let mut rest = text.trim_start();
    loop {
        let after = if let Some(line) = rest.strip_prefix("//") {
            line.find('\n').map_or("", |end| line.get(end..).unwrap_or_default())
        } else if let Some(block) = rest.strip_prefix("/*") {
            block
                .find("*/")
                .map_or("", |end| block.get(end + "*/".len()..).unwrap_or_default())
        } else {
            return rest;
        };
        rest = after.trim_start();
    }
}
