//! `quillet ledger`: the numbers, row by row.

use super::words::{Ledger, TableFormat};
use super::{read, say, sound};
use crate::plan::Planner;
use crate::sheets::tables::{ledger_csv, ledger_json, ledger_text};

/// Prints the ledger of every bed; a bed that can have no rows is an error, said when the others are printed.
pub(super) fn print_ledger(words: &Ledger) -> Result<(), String> {
    let layout = read(&words.file)?;
    let plan = Planner::default().plan(&layout);
    let text = match words.format {
        TableFormat::Table => ledger_text(&layout, &plan),
        TableFormat::Csv => ledger_csv(&layout, &plan).map_err(|error| error.to_string())?,
        TableFormat::Json => ledger_json(&layout, &plan).map_err(|error| error.to_string())? + "\n",
    };
    say(&text)?;
    sound(&words.file, &layout, &plan)
}
