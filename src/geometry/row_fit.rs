//! Rows laid over some ground.

use std::ops::Range;

use super::bounds::Bounds;
use super::point::Point;
use super::region::Region;
use super::row_rule::{RowError, RowRule};
use super::scan::{self, CutRows, RowSpan, Trim};
use crate::quantity::{Bearing, Length};

/// No more threads than this cut the rows of one region: beyond, memory is what they wait for.
const MOST_THREADS: usize = 4;

/// Lays rows over some ground by a rule.
///
/// Lines are laid across the whole reach of the ground, square to the bearing, and each is cut by the ground; edges
/// are ground. Then every piece loses the headland at both ends, and pieces without length or shorter than the
/// shortest are dropped. The same ground and rule give the same rows to the last bit, on any number of threads.
///
/// # Errors
/// [`RowError`] when a length of the rule is none, or when it asks for more lines or pieces than there may be.
pub fn fit_rows(region: &Region, rule: &RowRule) -> Result<RowFit, RowError> {
    // Asking how many there are takes longer than laying the rows of a common bed.
    RowFit::lay(region, rule, || {
        std::thread::available_parallelism().map_or(1, |n| n.get().min(MOST_THREADS))
    })
}

/// The rows of one region, stored flat: a piece takes 16 bytes and a row 12.
#[derive(Clone, Debug)]
pub struct RowFit {
    /// The reach of the ground across the rows.
    pub across: Length,
    /// The width left over beyond both edge margins and whole spacings.
    pub remainder: Length,
    /// How many lines were laid, those that kept no piece included.
    pub row_lines: usize,
    bearing: Bearing,
    unit: (f64, f64),
    first: f64,
    spacing: f64,
    cut: CutRows,
}

impl RowFit {
    /// As [`fit_rows`], on at most `threads` threads, for work that already runs beside others.
    ///
    /// # Errors
    /// As [`fit_rows`].
    pub fn on_threads(region: &Region, rule: &RowRule, threads: usize) -> Result<Self, RowError> {
        Self::lay(region, rule, || threads)
    }

    fn lay(region: &Region, rule: &RowRule, threads: impl FnOnce() -> usize) -> Result<Self, RowError> {
        let Some((left, right)) = region.extent_across(rule.bearing) else {
            rule.checked()?;
            return Ok(Self::empty(rule.bearing));
        };
        let lines = rule.lines(left.to_metres(), right.to_metres())?;
        let trim = Trim {
            headland: rule.headland.to_metres(),
            shortest: rule.shortest.to_metres(),
        };
        let unit = rule.bearing.unit();
        Ok(Self {
            across: right - left,
            remainder: Length::metres(lines.remainder),
            row_lines: lines.count,
            bearing: rule.bearing,
            unit,
            first: lines.first,
            spacing: lines.spacing,
            cut: scan::cut(region, unit, lines, trim, threads)?,
        })
    }

    /// No rows at all, for ground that is none.
    pub fn empty(bearing: Bearing) -> Self {
        Self {
            across: Length::ZERO,
            remainder: Length::ZERO,
            row_lines: 0,
            bearing,
            unit: bearing.unit(),
            first: 0.0,
            spacing: 1.0,
            cut: CutRows::default(),
        }
    }

    /// The direction rows run in.
    pub const fn bearing(&self) -> Bearing {
        self.bearing
    }

    /// How many rows there are: lines that kept at least one piece.
    pub fn row_count(&self) -> usize {
        self.cut.rows.len()
    }

    /// How many pieces all rows have together.
    pub fn piece_count(&self) -> usize {
        self.cut.rows.iter().map(|row| row.pieces as usize).sum()
    }

    /// The length of all pieces of all rows.
    pub fn total_length(&self) -> Length {
        self.rows().map(|row| row.length()).sum()
    }

    /// The rows from the left hand.
    pub fn rows(&self) -> impl ExactSizeIterator<Item = Row<'_>> + DoubleEndedIterator + Clone {
        self.cut
            .rows
            .iter()
            .enumerate()
            .map(|(index, &span)| self.at(index, span))
    }

    /// A row by its place from the left hand; `None` beyond the last.
    pub fn row(&self, index: usize) -> Option<Row<'_>> {
        self.cut.rows.get(index).map(|&span| self.at(index, span))
    }

    /// Which rows lie between two places across, both included, measured to the right of the bearing from the
    /// layout's origin. Found by two searches, however many rows there are.
    pub fn rows_between(&self, low: Length, high: Length) -> Range<usize> {
        let rows = &self.cut.rows;
        let start = rows.partition_point(|row| self.across_of(row.line) < low.to_metres());
        let end = rows.partition_point(|row| self.across_of(row.line) <= high.to_metres());
        start..end.max(start)
    }

    /// Whether every piece of other rows along the same bearing stands here too, both ends no farther away than
    /// `within`.
    pub fn has_all_of(&self, others: &Self, within: Length) -> bool {
        others.rows().all(|other| {
            let here = self.rows_between(other.across - within, other.across + within);
            other.pieces().all(|piece| {
                let same =
                    |own: Piece| (own.from() - piece.from()).abs() <= within && (own.to() - piece.to()).abs() <= within;
                here.clone()
                    .filter_map(|index| self.row(index))
                    .flat_map(Row::pieces)
                    .any(same)
            })
        })
    }

    /// Which rows may be seen in an upright rectangle.
    pub fn rows_in(&self, bounds: Bounds) -> Range<usize> {
        let (ux, uy) = self.unit;
        let (low, high) = reach(bounds, (uy, -ux));
        self.rows_between(low, high)
    }

    /// From where to where an upright rectangle reaches along the rows, for [`Row::pieces_between`].
    pub fn along_of(&self, bounds: Bounds) -> (Length, Length) {
        reach(bounds, self.unit)
    }

    fn across_of(&self, line: u32) -> f64 {
        self.first + f64::from(line) * self.spacing
    }

    fn at(&self, index: usize, span: RowSpan) -> Row<'_> {
        let first = span.first as usize;
        Row {
            index,
            line: span.line as usize,
            across: Length::metres(self.across_of(span.line)),
            unit: self.unit,
            spans: &self.cut.spans[first..first + span.pieces as usize],
        }
    }
}

impl PartialEq for RowFit {
    /// The same lines and the same pieces, to the last bit.
    fn eq(&self, other: &Self) -> bool {
        self.across == other.across
            && self.remainder == other.remainder
            && self.row_lines == other.row_lines
            && self.bearing == other.bearing
            && self.rows().eq(other.rows())
    }
}

fn reach(bounds: Bounds, (x, y): (f64, f64)) -> (Length, Length) {
    let Bounds { min, max } = bounds;
    let east = (min.x * x).min(max.x * x)..(min.x * x).max(max.x * x);
    let north = (min.y * y).min(max.y * y)..(min.y * y).max(max.y * y);
    (
        Length::metres(east.start + north.start),
        Length::metres(east.end + north.end),
    )
}

/// One row: a line and the pieces of it that stand on the ground.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Row<'a> {
    /// Its place among the rows, from 0 on the left hand.
    pub index: usize,
    /// Its place among all lines laid, from 0 on the left hand.
    pub line: usize,
    /// Where it lies, measured to the right of the bearing from the layout's origin.
    pub across: Length,
    unit: (f64, f64),
    spans: &'a [[f64; 2]],
}

impl<'a> Row<'a> {
    /// Its pieces, in order along the bearing; at least one.
    pub fn pieces(self) -> impl ExactSizeIterator<Item = Piece> + DoubleEndedIterator + Clone + 'a {
        self.spans.iter().map(move |&span| self.at(span))
    }

    /// How many pieces it has.
    pub const fn piece_count(self) -> usize {
        self.spans.len()
    }

    /// The pieces that reach into a stretch along the bearing, measured from the layout's origin; see
    /// [`RowFit::along_of`].
    pub fn pieces_between(self, low: Length, high: Length) -> impl ExactSizeIterator<Item = Piece> + Clone + 'a {
        let start = self.spans.partition_point(|span| span[1] < low.to_metres());
        let end = self
            .spans
            .partition_point(|span| span[0] <= high.to_metres())
            .max(start);
        self.spans[start..end].iter().map(move |&span| self.at(span))
    }

    /// The length of its pieces together.
    pub fn length(self) -> Length {
        self.pieces().map(Piece::length).sum()
    }

    fn at(self, [from, to]: [f64; 2]) -> Piece {
        Piece {
            from,
            to,
            across: self.across.to_metres(),
            unit: self.unit,
        }
    }
}

/// One unbroken piece of a row, headlands taken off.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Piece {
    from: f64,
    to: f64,
    across: f64,
    unit: (f64, f64),
}

impl Piece {
    /// Its end towards where the bearing comes from.
    pub fn start(self) -> Point {
        self.place(self.from, 0.0)
    }

    /// Its end towards where the bearing points.
    pub fn end(self) -> Point {
        self.place(self.to, 0.0)
    }

    /// How long it is.
    pub const fn length(self) -> Length {
        Length::metres(self.to - self.from)
    }

    /// Where it starts, measured along the bearing from the layout's origin.
    pub const fn from(self) -> Length {
        Length::metres(self.from)
    }

    /// Where it ends, measured along the bearing from the layout's origin.
    pub const fn to(self) -> Length {
        Length::metres(self.to)
    }

    /// The place so far along from the start, and so far to the right of the row.
    pub fn place_at(self, from_start: Length, right: Length) -> Point {
        self.place(self.from + from_start.to_metres(), right.to_metres())
    }

    fn place(self, along: f64, right: f64) -> Point {
        let (ux, uy) = self.unit;
        let across = self.across + right;
        Point::metres(along * ux + across * uy, along * uy - across * ux)
    }
}
