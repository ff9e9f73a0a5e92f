//! Sheets in the making, and tables on them whose cells are words broken over lines.

use std::borrow::Cow;

use super::PageOptions;
use super::frame::{CellHead, Role};
use super::heading::heading;
use super::paper::Turned;
use super::sheet::{Sheet, frame_box, rule, words};
use crate::geometry::Point;
use crate::layout::Bed;
use crate::sheets::mark::{Anchor, Dash, Ink, Mark, Pen};
use crate::sheets::type_metrics;

const SIZE: f32 = 9.0;
const HEAD_SIZE: f32 = 8.0;
const TITLE_SIZE: f32 = 11.5;
/// From line to line within a cell.
const LINE: f64 = 11.5;
/// Kept free between a cell and the rules over and under it.
const AIR: f64 = 3.5;
/// Between two columns.
const GAP: f64 = 10.0;
/// Width of the box that is ticked.
const TICK: f64 = 10.0;

/// The columns of a table of words.
pub(super) struct Columns<'a> {
    /// Their widths as parts of what they share.
    pub(super) parts: &'a [f64],
    /// Their heads.
    pub(super) titles: &'a [&'a str],
    /// Whether lines end in a box to tick.
    pub(super) ticks: bool,
}

/// The box at the end of a line.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Tick {
    /// No box.
    None,
    /// A box to tick.
    Open,
    /// A box that is ticked already.
    Done,
}

impl Tick {
    /// The box of something to do, ticked where it is done.
    pub(super) const fn of(is_done: bool) -> Self {
        if is_done { Self::Done } else { Self::Open }
    }
}

/// Words in a cell, broken into lines when they are set.
pub(super) struct Words<'a> {
    text: Cow<'a, str>,
    bold: bool,
    ink: Ink,
}

impl<'a> Words<'a> {
    pub(super) fn plain(text: impl Into<Cow<'a, str>>) -> Self {
        Self {
            text: text.into(),
            bold: false,
            ink: Ink::Strong,
        }
    }

    pub(super) const fn bold(text: &'a str) -> Self {
        Self {
            text: Cow::Borrowed(text),
            bold: true,
            ink: Ink::Strong,
        }
    }

    pub(super) fn soft(text: impl Into<Cow<'a, str>>) -> Self {
        Self {
            text: text.into(),
            bold: false,
            ink: Ink::Soft,
        }
    }

    fn lines(&self, width: f64) -> Vec<String> {
        if self.text.is_empty() {
            return Vec::new();
        }
        type_metrics::break_lines(&self.text, width, SIZE, self.bold)
    }
}

/// The cells of a line, each of some words one below the other.
type Cells<'a> = Vec<Vec<Words<'a>>>;

/// Sheets in the making.
pub(super) struct Setting<'a> {
    options: &'a PageOptions,
    foot: f64,
    /// Finished but for their heads and feet.
    pub(super) done: Vec<Sheet>,
    /// The sheet that is being set.
    pub(super) sheet: Sheet,
    /// The bed that is being set, and what stands behind its name: said again at the head of every sheet it goes on on.
    pub(super) under: Option<(&'a Bed, String)>,
    tables: usize,
    line: usize,
}

impl<'a> Setting<'a> {
    /// An empty upright sheet, with `foot` points kept for the foot of each.
    pub(super) fn new(options: &'a PageOptions, foot: f64) -> Self {
        Self {
            options,
            foot,
            done: Vec::new(),
            sheet: Sheet::new(options.paper, Turned::Portrait, foot),
            under: None,
            tables: 0,
            line: 0,
        }
    }

    /// Goes on on a fresh sheet, under the heading of the bed that is being set.
    pub(super) fn turn_over(&mut self) {
        let fresh = Sheet::new(self.options.paper, Turned::Portrait, self.foot);
        self.done.push(std::mem::replace(&mut self.sheet, fresh));
        if let Some((bed, about)) = &self.under {
            heading(&mut self.sheet, bed, about, &[], true);
        }
    }

    /// How high something comes to be that is set in one piece, in points.
    pub(super) fn height_of(&self, set: impl FnOnce(&mut Setting<'_>)) -> f64 {
        let mut trial = Setting::new(self.options, self.foot);
        trial.sheet.bottom = f64::INFINITY;
        let top = trial.sheet.y;
        set(&mut trial);
        trial.sheet.y - top
    }

    /// Goes on on a fresh sheet unless this one has so much room left, in points, or nothing on it.
    pub(super) fn need(&mut self, room: f64) {
        if self.sheet.room() < room && self.sheet.is_begun() {
            self.turn_over();
        }
    }

    /// Room on a sheet with nothing on it.
    pub(super) fn empty_room(&self) -> f64 {
        Sheet::new(self.options.paper, Turned::Portrait, self.foot).room()
    }

    /// The number of a new table.
    pub(super) const fn next_table(&mut self) -> usize {
        self.tables += 1;
        self.tables
    }

    /// A heading over what follows.
    pub(super) fn title(&mut self, title: &str) {
        if self.sheet.is_begun() {
            self.sheet.y += 10.0;
        }
        let (left, base) = (self.sheet.left, self.sheet.y + 15.0);
        let mark = words(left, base, title, Anchor::Left, TITLE_SIZE, true, Ink::Strong);
        self.sheet.push(Role::Heading, vec![mark]);
        self.sheet.y += 22.0;
    }

    /// Sets the lines of a new table under its heads, on as many sheets as it takes.
    pub(super) fn table(&mut self, columns: &Columns<'_>, lines: &[Cells<'_>]) {
        let table = self.begin_table(columns);
        let tick = if columns.ticks { Tick::Open } else { Tick::None };
        for line in lines {
            self.line(columns, table, line, tick);
        }
    }

    /// The same with a box for each line.
    pub(super) fn table_with(&mut self, columns: &Columns<'_>, lines: &[(Cells<'_>, Tick)]) {
        let table = self.begin_table(columns);
        for (line, tick) in lines {
            self.line(columns, table, line, *tick);
        }
    }

    fn begin_table(&mut self, columns: &Columns<'_>) -> usize {
        let table = self.next_table();
        self.line = 0;
        self.heads(columns, table, true);
        table
    }

    /// Left edge and width of each column.
    fn places(&self, columns: &Columns<'_>) -> Vec<(f64, f64)> {
        let tick = if columns.ticks { TICK + GAP } else { 0.0 };
        let all: f64 = columns.parts.iter().sum();
        let between = GAP * columns.parts.len().saturating_sub(1) as f64;
        let share = (self.sheet.across() - tick - between) / all;
        let mut x = self.sheet.left;
        let place = |part: &f64| {
            let column = (x, share * part);
            x += share * part + GAP;
            column
        };
        columns.parts.iter().map(place).collect()
    }

    /// Sets the heads. On a later sheet they only repeat, and are left out of the reading order.
    fn heads(&mut self, columns: &Columns<'_>, table: usize, first: bool) {
        let places = self.places(columns);
        let (left, right) = (self.sheet.left, self.sheet.right);
        let over = rule(left, right, self.sheet.y, 1.2, Ink::Strong);
        self.sheet.push(Role::Ornament, vec![over]);
        let broken: Vec<Vec<String>> = columns
            .titles
            .iter()
            .zip(&places)
            .map(|(title, (_, width))| type_metrics::break_lines(title, *width, HEAD_SIZE, false))
            .collect();
        let deepest = broken.iter().map(Vec::len).max().unwrap_or(1).max(1);
        let height = 6.0 + deepest as f64 * 10.0;
        for (lines, (x, _)) in broken.iter().zip(&places) {
            let marks = lines.iter().enumerate().map(|(row, text)| {
                let base = self.sheet.y + height - 4.5 - (lines.len() - 1 - row) as f64 * 10.0;
                words(*x, base, text, Anchor::Left, HEAD_SIZE, false, Ink::Soft)
            });
            let role = Role::column_head(table, !first);
            let marks = marks.collect();
            self.sheet.push(role, marks);
        }
        self.sheet.y += height;
        let under = rule(left, right, self.sheet.y, 0.7, Ink::Strong);
        self.sheet.push(Role::Ornament, vec![under]);
        if first {
            self.line += 1;
        }
    }

    const fn cell(&self, table: usize, head: CellHead) -> Role {
        Role::Cell {
            table,
            line: self.line,
            head,
        }
    }

    /// Sets one line, as high as its highest cell, on the next sheet when it does not fit this one.
    fn line(&mut self, columns: &Columns<'_>, table: usize, cells: &[Vec<Words<'_>>], tick: Tick) {
        let places = self.places(columns);
        let broken: Vec<Vec<(String, bool, Ink)>> = cells
            .iter()
            .zip(&places)
            .map(|(cell, (_, width))| {
                let lines = |part: &Words<'_>| {
                    let (bold, ink) = (part.bold, part.ink);
                    part.lines(*width).into_iter().map(move |line| (line, bold, ink))
                };
                cell.iter().flat_map(lines).collect()
            })
            .collect();
        let deepest = broken.iter().map(Vec::len).max().unwrap_or(1).max(1);
        let height = deepest as f64 * LINE + 2.0 * AIR;
        if self.sheet.room() < height && self.sheet.is_begun() {
            self.turn_over();
            self.heads(columns, table, false);
        }
        let top = self.sheet.y + AIR;
        for (k, (lines, (x, _))) in broken.iter().zip(&places).enumerate() {
            let marks = lines.iter().enumerate().map(|(row, (text, bold, ink))| {
                let base = top + (row as f64 + 1.0) * LINE - 2.5;
                words(*x, base, text, Anchor::Left, SIZE, *bold, *ink)
            });
            let mut marks: Vec<_> = marks.collect();
            if marks.is_empty() {
                // An empty cell is told too, so that those after it keep their columns.
                marks.push(words(*x, top, "", Anchor::Left, SIZE, false, Ink::Strong));
            }
            let head = if k == 0 { CellHead::Line } else { CellHead::None };
            let role = self.cell(table, head);
            self.sheet.push(role, marks);
        }
        let (left, right) = (self.sheet.left, self.sheet.right);
        if tick != Tick::None {
            self.sheet
                .push(Role::Ornament, tick_box(right - TICK, top + 1.0, tick == Tick::Done));
        }
        self.sheet.y += height;
        let under = rule(left, right, self.sheet.y, 0.3, Ink::Faint);
        self.sheet.push(Role::Ornament, vec![under]);
        self.line += 1;
    }
}

/// A box to tick, or one that is ticked, told by strokes as well as by ink.
fn tick_box(x: f64, y: f64, is_done: bool) -> Vec<Mark> {
    let mut marks = vec![frame_box(x, y, TICK, TICK, 0.7, Ink::Soft)];
    if is_done {
        let stroke = [(0.2, 0.5), (0.42, 0.75), (0.82, 0.22)];
        marks.push(Mark::Line {
            points: stroke
                .map(|(right, down)| Point::metres(x + right * TICK, y + down * TICK))
                .into(),
            closed: false,
            pen: Pen {
                width: 1.4,
                ink: Ink::Strong,
                dash: Dash::Solid,
            },
        });
    }
    marks
}
