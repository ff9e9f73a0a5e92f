//! The order as comma separated values.

use super::rows::order_table;
use crate::layout::Layout;
use crate::plan::Plan;
use crate::sheets::tables::cells::csv_of;

/// What to buy, one line for each cultivar, with units in the heads and plain numbers to four decimals.
///
/// # Errors
/// When the writer cannot write, which writing to memory does not.
pub fn order_csv(layout: &Layout, plan: &Plan) -> Result<String, csv::Error> {
    csv_of(order_table(layout, plan))
}
