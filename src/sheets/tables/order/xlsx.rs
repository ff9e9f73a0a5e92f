//! The order as a spreadsheet: real numbers in the cells, units in the heads.

use jiff::civil::Date;

use super::rows::{beds_table, order_table, packets_table, shelf_table, trays_table};
use crate::layout::Layout;
use crate::plan::Plan;
use crate::sheets::tables::cells::{SpreadsheetError, xlsx_of};

/// The order as the bytes of an `.xlsx` file: what to buy, where it goes, and, where there are any, packets with what
/// they cost, trays and the seed
/// shelf, each on a sheet of its own. The day stands in its properties, so that equal orders of a day give equal bytes.
///
/// # Errors
/// When the order is larger than a spreadsheet can be.
pub fn order_xlsx(layout: &Layout, plan: &Plan, day: Date) -> Result<Vec<u8>, SpreadsheetError> {
    let tables = [
        order_table(layout, plan),
        beds_table(layout, plan),
        packets_table(layout, plan),
        trays_table(layout, plan),
        shelf_table(layout, plan),
    ];
    xlsx_of(layout, &tables, day)
}
