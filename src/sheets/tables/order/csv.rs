//! The order as comma separated values.

use super::rows::{Cell, order_table};
use crate::layout::Layout;
use crate::plan::Plan;

/// What to buy, one line for each cultivar, with units in the heads and plain numbers to four decimals.
///
/// # Errors
/// When the writer cannot write, which writing to memory does not.
pub fn order_csv(layout: &Layout, plan: &Plan) -> Result<String, csv::Error> {
    let table = order_table(layout, plan);
    let mut writer = csv::Writer::from_writer(Vec::new());
    writer.write_record(&table.heads)?;
    for line in table.lines {
        writer.write_record(line.into_iter().map(|cell| match cell {
            Cell::Empty => String::new(),
            Cell::Words(words) => words,
            Cell::Number(number) => plain(number),
        }))?;
    }
    let bytes = writer
        .into_inner()
        .map_err(|error| csv::Error::from(error.into_error()))?;
    Ok(String::from_utf8_lossy(&bytes).into_owned())
}

/// Four decimals at most, without zeros at the end.
fn plain(value: f64) -> String {
    let text = format!("{value:.4}");
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}
