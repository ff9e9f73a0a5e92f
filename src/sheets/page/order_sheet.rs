//! The order list on paper: what to buy, what it is for, what comes off the shelf, and trays to sow.

use super::frame::{CellHead, Frame, Role};
use super::paper::Turned;
use super::sheet::{Sheet, frame_box, rule, words};
use super::{PageError, PageOptions};
use crate::layout::Layout;
use crate::plan::Plan;
use crate::sheets::mark::{Anchor, Ink};
use crate::sheets::order_list::{HELD, OrderList, held_together};
use crate::sheets::type_metrics;

/// The caution at the foot of every order list.
///
/// # Source
/// Common practice, no source.
pub const SEED_CAUTION: &str = "Treated seed is poison: keep it in its own bag, away from children, stock and birds, wear gloves, and follow its label.";

/// How the amounts are come by.
const HOW: &str = "Worked out from the rows as drawn: plants that are to stand × good seeds for each ÷ the part that comes up, and the spare given. What is on the shelf is used first. No amount is taken from a table of seed for so long a row. What a crop may give is what gardens have harvested from so long a row of one line at the usual spacing, never a promise.";

const SIZE: f32 = 9.0;
const SMALL: f32 = 8.0;
/// From line to line within a cell.
const LINE: f64 = 11.5;
/// Kept free between a cell and the rules over and under it.
const AIR: f64 = 4.0;
/// Between two columns.
const GAP: f64 = 10.0;
/// Width of the box that is ticked when it is ordered.
const TICK: f64 = 10.0;
/// Widths of the columns as parts of what they share.
const PARTS: [f64; 5] = [0.22, 0.21, 0.18, 0.19, 0.20];
const TITLES: [&str; 5] = ["what", "goes to", "needed", "from the shelf", "to buy"];
const TRAY_PARTS: [f64; 4] = [0.30, 0.22, 0.24, 0.24];
const TRAY_TITLES: [&str; 4] = ["raise in trays", "goes to", "sow", "when"];

/// Makes the sheets of the order list. The same input gives the same sheets.
///
/// # Errors
/// [`PageError::NothingToOrder`] when no bed has a crop that takes anything.
pub fn order_pages(layout: &Layout, plan: &Plan, options: &PageOptions) -> Result<Vec<Frame>, PageError> {
    let list = OrderList::of(layout, plan);
    if list.lines.is_empty() {
        return Err(PageError::NothingToOrder);
    }
    let foot = {
        let sheet = Sheet::new(options.paper, Turned::Portrait, 0.0);
        let lines = [HOW, SEED_CAUTION]
            .map(|text| type_metrics::break_lines(text, sheet.across(), SMALL, false).len())
            .iter()
            .sum::<usize>();
        lines as f64 * f64::from(SMALL) * 1.3 + 5.0
    };
    let mut pages = Pages {
        options,
        foot,
        done: Vec::new(),
        sheet: Sheet::new(options.paper, Turned::Portrait, foot),
        table: 0,
        line: 0,
    };
    pages.heads(&PARTS, &TITLES, true);
    for words in &list.lines {
        let cost = format!("costs {}", words.cost);
        let mut to_buy = vec![Cell::bold(&words.to_buy)];
        if !words.packets.is_empty() {
            to_buy.push(Cell::soft(&words.packets));
        }
        if !words.left_over.is_empty() {
            to_buy.push(Cell::soft(&words.left_over));
        }
        if !words.cost.is_empty() {
            to_buy.push(Cell::soft(&cost));
        }
        let harvest = format!("may give {}", words.harvest);
        let mut what = vec![Cell::bold(&words.name)];
        if !words.harvest.is_empty() {
            what.push(Cell::soft(&harvest));
        }
        let cells = [
            what,
            words.goes_to.iter().map(|bed| Cell::plain(bed)).collect(),
            vec![Cell::plain(&words.need)],
            words.from_shelf.iter().map(|lot| Cell::plain(lot)).collect(),
            to_buy,
        ];
        pages.row(&PARTS, &TITLES, &cells, words.is_to_buy());
    }
    if let Some(cost) = list.cost_sentence() {
        pages.sheet.y += 6.0;
        pages.sheet.sentence(Role::Sentence, &cost, SIZE, Ink::Strong);
    }
    if !list.trays.is_empty() {
        pages.table += 1;
        pages.line = 0;
        pages.sheet.y += 16.0;
        if pages.sheet.room() < 60.0 {
            pages.turn_over();
        }
        pages.heads(&TRAY_PARTS, &TRAY_TITLES, true);
        for words in &list.trays {
            let cells = [
                vec![Cell::bold(&words.name)],
                vec![Cell::plain(&words.bed)],
                vec![Cell::plain(&words.sow), Cell::soft(&words.seed)],
                vec![Cell::plain(&words.when)],
            ];
            pages.row(&TRAY_PARTS, &TRAY_TITLES, &cells, true);
        }
    }
    pages.done.push(pages.sheet);
    let count = pages.done.len();
    let place = format!("{}, season {}", layout.name, layout.season);
    let frames = pages.done.into_iter().enumerate().map(|(k, mut sheet)| {
        sheet.notes(110.0);
        sheet.y = sheet.bottom + 5.0;
        let role = || if k == 0 { Role::Sentence } else { Role::Ornament };
        sheet.sentence(role(), HOW, SMALL, Ink::Soft);
        sheet.sentence(role(), SEED_CAUTION, SMALL, Ink::Strong);
        let mut number = format!("sheet {} of {count}", k + 1);
        if !options.date.trim().is_empty() {
            number.push_str(&format!(" · plan of {}", options.date.trim()));
        }
        sheet.head("Order list", &place, &number, k == 0);
        sheet.finish(&format!("Order list, {place}"))
    });
    Ok(frames.collect())
}

/// Words in a cell, broken into lines when they are set.
struct Cell<'a> {
    text: &'a str,
    bold: bool,
    ink: Ink,
}

impl<'a> Cell<'a> {
    const fn plain(text: &'a str) -> Self {
        Self {
            text,
            bold: false,
            ink: Ink::Strong,
        }
    }

    const fn bold(text: &'a str) -> Self {
        Self {
            text,
            bold: true,
            ink: Ink::Strong,
        }
    }

    const fn soft(text: &'a str) -> Self {
        Self {
            text,
            bold: false,
            ink: Ink::Soft,
        }
    }

    fn lines(&self, width: f64) -> Vec<String> {
        if self.text.is_empty() {
            return Vec::new();
        }
        let lines = type_metrics::break_lines(&held_together(self.text), width, SIZE, self.bold);
        lines.iter().map(|line| line.replace(HELD, " ")).collect()
    }
}

/// The sheets in the making.
struct Pages<'a> {
    options: &'a PageOptions,
    foot: f64,
    done: Vec<Sheet>,
    sheet: Sheet,
    /// Which table is being set, and which line of it.
    table: usize,
    line: usize,
}

impl Pages<'_> {
    fn turn_over(&mut self) {
        let fresh = Sheet::new(self.options.paper, Turned::Portrait, self.foot);
        self.done.push(std::mem::replace(&mut self.sheet, fresh));
    }

    /// Left edge and width of each column.
    fn columns(&self, parts: &[f64]) -> Vec<(f64, f64)> {
        let share = self.sheet.across() - TICK - GAP * parts.len() as f64;
        let mut x = self.sheet.left;
        parts
            .iter()
            .map(|part| {
                let column = (x, share * part);
                x += share * part + GAP;
                column
            })
            .collect()
    }

    /// Sets the heads of the columns. On a later sheet they only repeat, and are left out of the reading order.
    fn heads(&mut self, parts: &[f64], titles: &[&str], first: bool) {
        let columns = self.columns(parts);
        let (left, right) = (self.sheet.left, self.sheet.right);
        if self.sheet.is_begun() {
            let over = rule(left, right, self.sheet.y, 1.2, Ink::Strong);
            self.sheet.push(Role::Ornament, vec![over]);
        }
        let base = self.sheet.y + 11.5;
        for ((x, _), title) in columns.iter().zip(titles) {
            let role = if first {
                self.cell(CellHead::Column)
            } else {
                Role::Ornament
            };
            self.sheet.push(
                role,
                vec![words(*x, base, title, Anchor::Left, SMALL, false, Ink::Soft)],
            );
        }
        self.sheet.y += 16.0;
        self.sheet
            .push(Role::Ornament, vec![rule(left, right, self.sheet.y, 0.7, Ink::Strong)]);
        if first {
            self.line += 1;
        }
    }

    const fn cell(&self, head: CellHead) -> Role {
        Role::Cell {
            table: self.table,
            line: self.line,
            head,
        }
    }

    /// Sets one line of the table, as high as its highest cell, on the next sheet when it does not fit this one.
    fn row(&mut self, parts: &[f64], titles: &[&str], cells: &[Vec<Cell<'_>>], tick: bool) {
        let columns = self.columns(parts);
        let broken: Vec<Vec<(String, bool, Ink)>> = cells
            .iter()
            .zip(&columns)
            .map(|(cell, (_, width))| {
                cell.iter()
                    .flat_map(|part| part.lines(*width).into_iter().map(|line| (line, part.bold, part.ink)))
                    .collect()
            })
            .collect();
        let deepest = broken.iter().map(Vec::len).max().unwrap_or(1).max(1);
        let height = deepest as f64 * LINE + 2.0 * AIR;
        if self.sheet.room() < height && self.sheet.is_begun() {
            self.turn_over();
            self.heads(parts, titles, false);
        }
        let top = self.sheet.y + AIR;
        for (k, (lines, (x, _))) in broken.iter().zip(&columns).enumerate() {
            let marks = lines.iter().enumerate().map(|(row, (text, bold, ink))| {
                let base = top + (row as f64 + 1.0) * LINE - 2.5;
                words(*x, base, text, Anchor::Left, SIZE, *bold, *ink)
            });
            let head = if k == 0 { CellHead::Line } else { CellHead::None };
            let role = self.cell(head);
            self.sheet.push(role, marks.collect());
        }
        let (left, right) = (self.sheet.left, self.sheet.right);
        if tick {
            let square = frame_box(right - TICK, top + 1.0, TICK, TICK, 0.7, Ink::Soft);
            self.sheet.push(Role::Ornament, vec![square]);
        }
        self.sheet.y += height;
        self.sheet
            .push(Role::Ornament, vec![rule(left, right, self.sheet.y, 0.3, Ink::Faint)]);
        self.line += 1;
    }
}
