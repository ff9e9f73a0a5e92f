//! Tables of cells, the same for comma separated values and spreadsheets. Numbers stay numbers; units stand in the heads.

use jiff::civil::Date;
use rust_xlsxwriter::{DocProperties, ExcelDateTime, Format, Workbook, Worksheet, XlsxError};
use thiserror::Error;

use super::csv::number;
use crate::layout::Layout;

/// One cell.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Cell {
    /// Nothing there.
    Empty,
    /// Words.
    Words(String),
    /// A number as it is, without rounding.
    Number(f64),
}

/// A table: its name, its heads with units, and its lines.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Table {
    pub(super) name: &'static str,
    pub(super) heads: Vec<String>,
    pub(super) lines: Vec<Vec<Cell>>,
}

/// Why a spreadsheet could not be made.
#[derive(Debug, Error)]
#[error("The spreadsheet could not be made: {0}. Take it as CSV instead")]
pub struct SpreadsheetError(#[from] XlsxError);

/// Words; an empty cell where there are none.
pub(super) fn words(text: &str) -> Cell {
    if text.is_empty() {
        Cell::Empty
    } else {
        Cell::Words(text.to_owned())
    }
}

/// A count.
pub(super) const fn whole(count: u64) -> Cell {
    Cell::Number(count as f64)
}

pub(super) fn heads(names: &[&str]) -> Vec<String> {
    names.iter().map(|&name| name.to_owned()).collect()
}

/// A table as comma separated values, plain numbers to four decimals.
pub(super) fn csv_of(table: Table) -> Result<String, csv::Error> {
    let mut writer = csv::Writer::from_writer(Vec::new());
    writer.write_record(&table.heads)?;
    for line in table.lines {
        writer.write_record(line.into_iter().map(text_of))?;
    }
    let bytes = writer
        .into_inner()
        .map_err(|error| csv::Error::from(error.into_error()))?;
    Ok(String::from_utf8_lossy(&bytes).into_owned())
}

/// A table tab separated, as spreadsheets take it from the clipboard.
pub(super) fn tabs_of(table: Table) -> String {
    let lines = table
        .lines
        .into_iter()
        .map(|line| line.into_iter().map(text_of).collect::<Vec<_>>().join("\t"));
    std::iter::once(table.heads.join("\t"))
        .chain(lines)
        .collect::<Vec<_>>()
        .join("\n")
}

fn text_of(cell: Cell) -> String {
    match cell {
        Cell::Empty => String::new(),
        Cell::Words(words) => words,
        Cell::Number(value) => number(value),
    }
}

/// Tables as the bytes of an `.xlsx` file, each on a sheet of its own; those after the first only where they have lines. The
/// day stands in its properties, so that equal tables of a day give equal bytes.
pub(super) fn xlsx_of(layout: &Layout, tables: &[Table], day: Date) -> Result<Vec<u8>, SpreadsheetError> {
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
