//! The entries of a catalogue's file. An entry that cannot be read is left out and named with its place; the others stay.

use ron::Options;
use ron::extensions::Extensions;
use ron::value::RawValue;
use serde::de::DeserializeOwned;

/// The entries of a file. Those that cannot be read are left out, each with a problem that names its place; all of them
/// where the file is no list at all.
pub(super) fn entries<T: DeserializeOwned>(name: &str, text: &str, problems: &mut Vec<String>) -> Vec<T> {
    let error = match ron::from_str(text) {
        Ok(entries) => return entries,
        Err(error) => error,
    };
    let Ok(raw) = ron::from_str::<Vec<&RawValue>>(text) else {
        problems.push(format!("{name}: {error}"));
        return Vec::new();
    };
    let options = Options::default().with_default_extension(Extensions::IMPLICIT_SOME);
    let mut read = Vec::with_capacity(raw.len());
    for entry in raw {
        match options.from_str(entry.get_ron()) {
            Ok(entry) => read.push(entry),
            Err(error) => {
                let (line, column) = place(text, entry.get_ron(), error.span.start.line, error.span.start.col);
                problems.push(format!("{name}: {line}:{column}: {}", error.code));
            }
        }
    }
    read
}

/// Where a place within an entry lies in its file. Lines and columns count from 1.
fn place(text: &str, entry: &str, line: usize, column: usize) -> (usize, usize) {
    // The entry is a part of the text, so where it begins says how much lies before it.
    let begins = (entry.as_ptr() as usize).saturating_sub(text.as_ptr() as usize);
    let before = text.get(..begins).unwrap_or_default();
    let lines = before.matches('\n').count();
    let last = before.rsplit('\n').next().unwrap_or_default().chars().count();
    let column = if line == 1 { column + last } else { column };
    (lines + line, column)
}
