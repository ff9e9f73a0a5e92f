//! The ledger as tables for other programs: JSON, comma separated values, plain text.

mod csv;
mod json;
mod text;

pub use csv::ledger_csv;
pub use json::ledger_json;
pub use text::{bed_heading, ledger_tabs, ledger_text};
