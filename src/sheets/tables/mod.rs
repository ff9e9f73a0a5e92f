//! The ledger and the order as tables for other programs: JSON, comma separated values, plain text.

mod csv;
mod json;
mod order;
mod text;

pub use csv::ledger_csv;
pub use json::ledger_json;
pub use order::{SpreadsheetError, order_csv, order_json, order_text, order_xlsx};
pub use text::{bed_heading, ledger_tabs, ledger_text};
