//! `quillet order`: what to buy, what for, and where it goes.

use super::format::form_of;
use super::words::{Order, OrderFormat};
use super::{read, say};
use crate::layout::store::write_whole;
use crate::plan::Planner;
use crate::sheets::tables::{order_csv, order_json, order_text, order_xlsx};

/// Prints the order, or writes it to a file.
pub(super) fn write_order(words: &Order) -> Result<(), String> {
    let form = form_of(words.format, words.output.as_deref(), OrderFormat::Table)?;
    let layout = read(&words.file)?;
    let plan = Planner::default().plan(&layout);
    let text = match form {
        OrderFormat::Table => order_text(&layout, &plan),
        OrderFormat::Csv => order_csv(&layout, &plan).map_err(|error| error.to_string())?,
        OrderFormat::Json => order_json(&layout, &plan).map_err(|error| error.to_string())? + "\n",
        OrderFormat::Xlsx => {
            let output = words
                .output
                .as_deref()
                .ok_or("A spreadsheet is not for a terminal. Name the file to write: --output order.xlsx")?;
            let day = words.on.day();
            let bytes = order_xlsx(&layout, &plan, day).map_err(|error| format!("{error}."))?;
            return write_whole(output, |out| out.write_all(&bytes)).map_err(|error| error.to_string());
        }
    };
    match &words.output {
        None => say(&text),
        Some(output) => write_whole(output, |out| out.write_all(text.as_bytes())).map_err(|error| error.to_string()),
    }
}
