//! The order as a spreadsheet: real numbers in the cells, units in the heads.

use jiff::civil::Date;
use rust_xlsxwriter::{DocProperties, ExcelDateTime, Format, Workbook, Worksheet, XlsxError};
use thiserror::Error;

use super::rows::{Cell, Table, beds_table, order_table, shelf_table, trays_table};
use crate::layout::Layout;
use crate::plan::Plan;

/// Why a spreadsheet could not be made.
#[derive(Debug, Error)]
#[error("The spreadsheet could not be made: {0}. Take the order as CSV instead")]
pub struct SpreadsheetError(#[from] XlsxError);

/// The order as the bytes of an `.xlsx` file: what to buy, where it goes, and, where there are any, trays and the seed
/// shelf, each on a sheet of its own. The day stands in its properties, so that equal orders of a day give equal bytes.
///
/// # Errors
/// When the order is larger than a spreadsheet can be.
pub fn order_xlsx(layout: &Layout, plan: &Plan, day: Date) -> Result<Vec<u8>, SpreadsheetError> {
    let mut book = Workbook::new();
    let made = ExcelDateTime::from_ymd(
        u16::try_from(day.year()).unwrap_or(1900),
        u8::try_from(day.month()).unwrap_or(1),
        u8::try_from(day.day()).unwrap_or(1),
    )?;
    let properties = DocProperties::new()
        .set_title(format!("{}, season {}", layout.name, layout.season))
        .set_creation_datetime(&made);
    book.set_properties(&properties);
    let tables = [
        order_table(layout, plan),
        beds_table(layout, plan),
        trays_table(layout, plan),
        shelf_table(layout, plan),
    ];
    for (index, table) in tables.iter().enumerate() {
        // The first is always there, so that the file has a sheet.
        if index == 0 || !table.lines.is_empty() {
            set_table(book.add_worksheet(), table)?;
        }
    }
    Ok(book.save_to_buffer()?)
}

fn set_table(sheet: &mut Worksheet, table: &Table) -> Result<(), XlsxError> {
    let bold = Format::new().set_bold().set_text_wrap();
    sheet.set_name(table.name)?;
    sheet.set_freeze_panes(1, 0)?;
    for (column, head) in (0u16..).zip(&table.heads) {
        sheet.write_string_with_format(0, column, head, &bold)?;
        sheet.set_column_width(column, width(table, usize::from(column)))?;
    }
    for (row, line) in (1u32..).zip(&table.lines) {
        for (column, cell) in (0u16..).zip(line) {
            match cell {
                Cell::Empty => {}
                Cell::Words(words) => {
                    sheet.write_string(row, column, words)?;
                }
                Cell::Number(number) => {
                    sheet.write_number(row, column, *number)?;
                }
            }
        }
    }
    Ok(())
}

/// Letters across: as many as the longest words take, within reason.
fn width(table: &Table, column: usize) -> f64 {
    let longest = table.lines.iter().filter_map(|line| match line.get(column) {
        Some(Cell::Words(words)) => Some(words.chars().count()),
        _ => None,
    });
    (longest.max().unwrap_or(0) as f64 + 2.0).clamp(11.0, 40.0)
}
