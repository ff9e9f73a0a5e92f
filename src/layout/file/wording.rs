//! What the reader of the notation says is wrong, in plain words.

use ron::error::{Error, SpannedError};

use super::error::{FileError, TextPlace};

/// The error of the notation's reader, in plain words, at its place.
pub(super) fn worded(text: &str, error: &SpannedError) -> FileError {
    let (what, hint) = words(&error.code);
    FileError::Broken {
        place: place(text, error),
        what,
        hint,
    }
}

/// Where to look. The reader names the start and the end of what it was reading when it gave up. Where it skipped
/// blanks and line ends first, what is wrong stands after them.
fn place(text: &str, error: &SpannedError) -> TextPlace {
    let start = error.span.start;
    let offset = offset_of(text, start.line, start.col);
    let rest = text.get(offset..).unwrap_or_default();
    let blanks = rest.len() - rest.trim_start().len();
    TextPlace::at(text, offset + blanks)
}

/// Bytes before a line and column that are counted from 1, the column in letters.
fn offset_of(text: &str, line: usize, column: usize) -> usize {
    let line_start = text
        .split_inclusive('\n')
        .take(line.saturating_sub(1))
        .map(str::len)
        .sum::<usize>();
    let rest = text.get(line_start..).unwrap_or_default();
    let in_line = rest
        .char_indices()
        .nth(column.saturating_sub(1))
        .map_or(rest.len(), |(offset, _)| offset);
    line_start + in_line
}

/// What was expected, and what to do.
fn words(code: &Error) -> (String, String) {
    let correct = "Correct it there and open the file again.".to_owned();
    let expected = |what: &str| (format!("{what} was expected here."), correct.clone());
    match code {
        Error::Eof => (
            "the file ends too early.".to_owned(),
            "Part of it is lost; the version before it may stand next to it, ending in .previous.ron.".to_owned(),
        ),
        Error::ExpectedArray => expected("a list in square brackets"),
        Error::ExpectedArrayEnd => expected("the end of a list, `]`,"),
        Error::ExpectedBoolean => expected("`true` or `false`"),
        Error::ExpectedComma => expected("a comma"),
        Error::ExpectedFloat => expected("a number"),
        Error::ExpectedInteger => expected("a whole number"),
        Error::ExpectedMapColon => expected("a colon"),
        Error::ExpectedString | Error::ExpectedStringEnd => expected("a text in double quotes"),
        Error::ExpectedIdentifier | Error::SuggestRawIdentifier(_) | Error::InvalidIdentifier(_) => {
            expected("a key or a word")
        }
        Error::ExpectedDifferentStructName { found, .. } => (format!("`(` was expected here, not `{found}`."), correct),
        // Places are the only values that are made of several without keys.
        Error::ExpectedDifferentLength { found, .. } => (
            format!("two numbers, `(east, north)`, were expected here, not {found}."),
            correct,
        ),
        Error::InvalidEscape(_) => (
            "this sign cannot stand behind a `\\` in a text.".to_owned(),
            "Write a `\\` itself as `\\\\`.".to_owned(),
        ),
        Error::ExpectedStructLike | Error::ExpectedNamedStructLike(_) => expected("`(`"),
        Error::ExpectedStructLikeEnd | Error::ExpectedOptionEnd => expected("`)`"),
        Error::IntegerOutOfBounds => expected("a smaller whole number"),
        Error::InvalidIntegerDigit { .. } | Error::UnderscoreAtBeginning | Error::FloatUnderscore => {
            expected("a plain number")
        }
        Error::TrailingCharacters => expected("the end of the file"),
        Error::UnexpectedChar(letter) => (format!("`{letter}` cannot stand here."), correct),
        Error::UnclosedBlockComment => (
            "a remark that starts with `/*` has no end.".to_owned(),
            "Close it with `*/`.".to_owned(),
        ),
        Error::NoSuchStructField { expected, found, .. } => (
            format!("there is no key `{found}` here."),
            format!("The keys here are {}.", listed(expected)),
        ),
        Error::NoSuchEnumVariant { expected, found, .. } => (
            format!("`{found}` is not one of the words that can stand here."),
            format!("The words here are {}.", listed(expected)),
        ),
        Error::MissingStructField { field, .. } => (
            format!("the key `{field}` is missing in the part that ends here."),
            format!("Add `{field}: …` to it."),
        ),
        Error::DuplicateStructField { field, .. } => (
            format!("the key `{field}` stands here for the second time."),
            "Take one of the two out.".to_owned(),
        ),
        Error::ExceededRecursionLimit => ("brackets are nested far deeper than in any layout.".to_owned(), correct),
        Error::InvalidValueForType { expected, found } => {
            (format!("{expected} was expected here, not {found}."), correct)
        }
        // What our own values say about themselves.
        Error::Message(message) => (format!("{message}."), correct),
        other => (format!("{other}."), correct),
    }
}

/// Words one after the other, each in its own marks.
fn listed(words: &[&str]) -> String {
    words
        .iter()
        .map(|word| format!("`{word}`"))
        .collect::<Vec<_>>()
        .join(", ")
}
