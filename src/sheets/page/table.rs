//! The table of a bed's rows, over as many sheets as it takes.

use super::frame::{CellHead, Role};
use super::sheet::{Sheet, frame_box, rule, words};
use crate::plan::{Column, ColumnKind, Ledger};
use crate::sheets::mark::{Anchor, Ink};
use crate::sheets::type_metrics;

/// Height of one line of the table, in points: room for a pencil in the last box.
pub(super) const LINE: f64 = 15.5;
/// Lowest that a line is made to get a whole table on a sheet, in points.
pub(super) const LOWEST_LINE: f64 = 13.0;
/// From line to line in the heads of the columns.
const HEAD_LINE: f64 = 10.0;
/// Least space between two columns.
const BETWEEN: f64 = 10.0;
/// Width of the box for what was really used.
const BOX: f64 = 54.0;
const SIZE: f32 = 9.0;
const HEAD_SIZE: f32 = 8.0;
/// Widest that a column is made for its head alone.
const WIDEST_HEAD: f64 = 84.0;
/// Most lines of a head.
const MOST_HEAD_LINES: usize = 3;

/// The columns that go side by side on one sheet.
pub(super) struct Band<'a> {
    columns: Vec<&'a Column>,
    /// Right edge of each column, the row numbers' first, in points from the left margin.
    edges: Vec<f64>,
    heads: Vec<Vec<String>>,
    /// Height of one line, in points.
    pub(super) line: f64,
}

/// A cell before it is placed: how wide it must be.
fn least_width(column: &Column) -> f64 {
    // The longest worded amount is asked for, without wording a hundred thousand of them: sign and digits of
    // the largest and smallest amounts.
    let largest = column
        .steps
        .iter()
        .enumerate()
        .max_by_key(|(_, steps)| steps.unsigned_abs())
        .map(|(row, _)| row);
    let cell = largest.map_or(0.0, |row| type_metrics::width(&column.cell(row), SIZE, false));
    let total = type_metrics::width(&column.total(), SIZE, true);
    // Wide enough for the head in three lines, or for the widest head that there may be.
    let whole = type_metrics::width(&column.title, HEAD_SIZE, false);
    let fits = |width: &f64| head_lines(&column.title, *width).len() <= MOST_HEAD_LINES;
    let widths = (0..).map(|step| (whole / 3.0).min(WIDEST_HEAD) + 4.0 * f64::from(step));
    let head = widths
        .take_while(|width| *width < WIDEST_HEAD)
        .find(fits)
        .unwrap_or(WIDEST_HEAD);
    cell.max(total).max(head.min(whole)) + 1.0
}

/// A head broken into lines.
fn head_lines(title: &str, width: f64) -> Vec<String> {
    type_metrics::break_lines(title, width, HEAD_SIZE, false)
}

impl<'a> Band<'a> {
    /// Shares out the columns of a ledger over as few bands as fit across.
    pub(super) fn share_out(ledger: &'a Ledger, across: f64) -> Vec<Self> {
        let numbers = ledger
            .numbers
            .iter()
            .max()
            .map_or(0.0, |number| type_metrics::width(&number.to_string(), SIZE, true));
        let first = numbers.max(type_metrics::width("Row", HEAD_SIZE, false)) + 4.0;
        let mut groups: Vec<Vec<(&Column, f64)>> = vec![Vec::new()];
        let mut used = first + BETWEEN + BOX;
        let mut columns = ledger.columns.iter().peekable();
        while let Some(column) = columns.next() {
            let mut unit = vec![(column, least_width(column))];
            // The scoops stay beside the weight that they stand for.
            if let Some(scoops) = columns.next_if(|next| matches!(next.kind, ColumnKind::Scoops(_))) {
                unit.push((scoops, least_width(scoops)));
            }
            let width: f64 = unit.iter().map(|(_, width)| width + BETWEEN).sum();
            if used + width > across && groups.last().is_some_and(|group| !group.is_empty()) {
                groups.push(Vec::new());
                used = first + BETWEEN + BOX;
            }
            used += width;
            if let Some(group) = groups.last_mut() {
                group.append(&mut unit);
            }
        }
        groups
            .into_iter()
            .map(|group| Self::spread(&group, first, across))
            .collect()
    }

    /// Spreads columns over the width, each with the same share of what is left over.
    fn spread(group: &[(&'a Column, f64)], first: f64, across: f64) -> Self {
        let asked: f64 = group.iter().map(|(_, width)| width + BETWEEN).sum();
        // No more than a hand's width between columns: the eye has to follow a line across.
        let spare = (across - first - asked - BETWEEN - BOX).max(0.0);
        let share = (spare / (group.len() + 1) as f64).min(60.0);
        let mut edge = first;
        let mut edges = vec![first];
        let mut heads = Vec::new();
        for (column, width) in group {
            edge += BETWEEN + share + width;
            edges.push(edge);
            let mut lines = head_lines(&column.title, width + share);
            if lines.len() > MOST_HEAD_LINES {
                // Cut at last, with an ellipsis to say so.
                let rest = lines.split_off(MOST_HEAD_LINES - 1).join(" ");
                lines.push(type_metrics::shortened(&rest, width + share, HEAD_SIZE, false));
            }
            heads.push(lines);
        }
        Self {
            columns: group.iter().map(|(column, _)| *column).collect(),
            edges,
            heads,
            line: LINE,
        }
    }

    /// Height of the heads with their rules.
    pub(super) fn head_height(&self) -> f64 {
        self.heads.iter().map(Vec::len).max().unwrap_or(1).max(1) as f64 * HEAD_LINE + 9.0
    }

    /// Sets the heads of the columns. On a later sheet they only repeat, and are left out of the reading order.
    pub(super) fn set_heads(&self, sheet: &mut Sheet, table: usize, again: bool) {
        let role = || Role::column_head(table, again);
        let height = self.head_height();
        let top = sheet.y;
        sheet.push(
            Role::Ornament,
            vec![rule(sheet.left, sheet.right, top, 1.2, Ink::Strong)],
        );
        let base = top + height - 5.5;
        let (left, right) = (sheet.left, sheet.right);
        let edge = |k: usize| left + self.edges.get(k).copied().unwrap_or_default();
        sheet.push(
            role(),
            vec![words(edge(0), base, "Row", Anchor::Right, HEAD_SIZE, false, Ink::Soft)],
        );
        for (k, head) in self.heads.iter().enumerate() {
            let lines = head.len();
            let marks = head.iter().enumerate().map(|(line, text)| {
                let y = base - (lines - 1 - line) as f64 * HEAD_LINE;
                words(edge(k + 1), y, text, Anchor::Right, HEAD_SIZE, false, Ink::Soft)
            });
            sheet.push(role(), marks.collect());
        }
        sheet.push(
            role(),
            vec![words(
                right,
                base,
                "really used",
                Anchor::Right,
                HEAD_SIZE,
                false,
                Ink::Soft,
            )],
        );
        sheet.y = top + height;
        sheet.push(
            Role::Ornament,
            vec![rule(sheet.left, sheet.right, sheet.y, 0.7, Ink::Strong)],
        );
    }

    /// Sets the line of one row.
    pub(super) fn set_row(&self, sheet: &mut Sheet, table: usize, row: usize, number: u32) {
        let cells = self.columns.iter().map(|column| column.cell(row));
        self.set_line(sheet, table, row + 1, &number.to_string(), cells, false);
        let (left, right, y) = (sheet.left, sheet.right, sheet.y);
        sheet.push(
            Role::Cell {
                table,
                line: row + 1,
                head: CellHead::None,
            },
            vec![frame_box(
                right - BOX,
                y - self.line + 1.5,
                BOX,
                self.line - 3.0,
                0.5,
                Ink::Soft,
            )],
        );
        sheet.push(Role::Ornament, vec![rule(left, right - BOX - 4.0, y, 0.3, Ink::Faint)]);
    }

    /// Sets the line of the bed's sums.
    pub(super) fn set_totals(&self, sheet: &mut Sheet, table: usize, rows: usize) {
        let cells = self.columns.iter().map(|column| column.total());
        sheet.push(
            Role::Ornament,
            vec![rule(sheet.left, sheet.right, sheet.y, 0.7, Ink::Strong)],
        );
        self.set_line(sheet, table, rows + 1, "All", cells, true);
    }

    fn set_line(
        &self,
        sheet: &mut Sheet,
        table: usize,
        line: usize,
        number: &str,
        cells: impl Iterator<Item = String>,
        bold: bool,
    ) {
        let base = sheet.y + self.line * 0.5 + 3.2;
        let left = sheet.left;
        let edge = |k: usize| left + self.edges.get(k).copied().unwrap_or_default();
        sheet.push(
            Role::Cell {
                table,
                line,
                head: CellHead::Line,
            },
            vec![words(edge(0), base, number, Anchor::Right, SIZE, true, Ink::Strong)],
        );
        for (k, cell) in cells.enumerate() {
            sheet.push(
                Role::Cell {
                    table,
                    line,
                    head: CellHead::None,
                },
                vec![words(edge(k + 1), base, &cell, Anchor::Right, SIZE, bold, Ink::Strong)],
            );
        }
        sheet.y += self.line;
    }
}
