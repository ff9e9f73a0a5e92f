//! The feeding as tables: text for a terminal, comma separated values, JSON, and a spreadsheet.

mod json;
mod json_plan;
mod rows;
mod sums;
mod text;

use jiff::civil::Date;

use super::cells::{SpreadsheetError, csv_of, tabs_of, xlsx_of};
use crate::layout::Layout;
use crate::plan::Plan;

pub use json::feed_json;
pub use text::feed_text;

/// What every row gets, one line a row and dressing, with units in the heads and plain numbers to four decimals.
///
/// # Errors
/// When the writer cannot write, which writing to memory does not.
pub fn feed_csv(layout: &Layout, plan: &Plan) -> Result<String, csv::Error> {
    csv_of(rows::rows_table(layout, plan))
}

/// What every row gets, tab separated, for the clipboard.
pub fn feed_tabs(layout: &Layout, plan: &Plan) -> String {
    tabs_of(rows::rows_table(layout, plan))
}

/// The feeding as the bytes of an `.xlsx` file: every row, and, where there are any, dressings, accounts, what to buy and
/// runs through the tape, each on a sheet of its own. The day stands in its properties, so that equal plans of a day give
/// equal bytes.
///
/// # Errors
/// When the plan is larger than a spreadsheet can be.
pub fn feed_xlsx(layout: &Layout, plan: &Plan, day: Date) -> Result<Vec<u8>, SpreadsheetError> {
    let tables = [
        rows::rows_table(layout, plan),
        sums::dressings_table(layout, plan),
        sums::accounts_table(layout, plan),
        sums::shopping_table(layout, plan),
        sums::runs_table(layout, plan),
    ];
    xlsx_of(layout, &tables, day)
}
