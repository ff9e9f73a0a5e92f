//! The order as tables: text for a terminal, comma separated values, JSON, and a spreadsheet.

mod csv;
mod json;
mod rows;
mod text;
mod xlsx;

pub use csv::order_csv;
pub use json::order_json;
pub use text::order_text;
pub use xlsx::order_xlsx;
