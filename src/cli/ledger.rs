//! `quillet ledger`: the numbers, row by row.

use super::format::form_of;
use super::words::{Ledger, TableFormat};
use super::{read, say, sound};
use crate::layout::store::write_whole;
use crate::plan::Planner;
use crate::sheets::tables::{ledger_csv, ledger_json, ledger_text};

/// Prints the ledger of every bed, or writes it to a file; a bed that can have no rows is an error, said when the others are printed.
pub(super) fn print_ledger(words: &Ledger) -> Result<(), String> {
    let form = form_of(words.format, words.output.as_deref(), TableFormat::Table)?;
    let layout = read(&words.file)?;
    let plan = Planner::default().plan(&layout);
    let text = match form {
        TableFormat::Table => ledger_text(&layout, &plan),
        TableFormat::Csv => ledger_csv(&layout, &plan).map_err(|error| error.to_string())?,
        TableFormat::Json => ledger_json(&layout, &plan).map_err(|error| error.to_string())? + "\n",
    };
    match &words.output {
        None => say(&text)?,
        Some(output) => write_whole(output, |out| out.write_all(text.as_bytes())).map_err(|error| error.to_string())?,
    }
    sound(&words.file, &layout, &plan)
}
