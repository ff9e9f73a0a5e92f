//! The ledger, the order and the feeding as tables for other programs: JSON, comma separated values, plain text.

mod cells;
mod csv;
mod feed;
mod json;
mod order;
mod text;

pub use cells::SpreadsheetError;
pub use csv::ledger_csv;
pub use feed::{feed_csv, feed_json, feed_tabs, feed_text, feed_xlsx};
pub use json::ledger_json;
pub use order::{order_csv, order_json, order_text, order_xlsx};
pub use text::{bed_heading, ledger_tabs, ledger_text};
