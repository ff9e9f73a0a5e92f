//! Cutting row lines by the rings of a region: the part that has to be fast.
//!
//! Rows are taken from the left hand to the right. The sides that a row passes are kept in order along it; sides do
//! not cross one another, so the order only changes where a side begins or ends, and each row costs no more than
//! working out where it passes each of those sides. Between n corners and k pieces: O(n log n + k), plus O(k) more
//! for every corner.
//!
//! Edges belong to the ground. A line that runs exactly through corners or along sides is therefore cut as seen from
//! its left and as seen from its right, and keeps what either sees. This also makes the answer the same for ground
//! and its mirror image.

use super::SAME_PLACE;
use super::passing::Passing;
use super::region::Region;
use super::row_rule::{LENGTH_FORGIVES, MAX_PIECES, RowError, RowLines};
use super::sides::{Load, Passed, Sides};

/// A row line that kept at least one piece.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct RowSpan {
    /// Which of all lines, from the left hand.
    pub(super) line: u32,
    /// Its first piece.
    pub(super) first: u32,
    /// How many pieces it kept.
    pub(super) pieces: u32,
}

/// Row lines cut by a region.
#[derive(Clone, Debug, Default)]
pub(super) struct CutRows {
    /// From left to right.
    pub(super) rows: Vec<RowSpan>,
    /// From where to where each piece reaches along the bearing, in metres. Between the pieces of two rows there may
    /// be unused places.
    pub(super) spans: Vec<[f64; 2]>,
}

/// What is taken off a piece, in metres.
#[derive(Clone, Copy, Debug)]
pub(super) struct Trim {
    pub(super) headland: f64,
    pub(super) shortest: f64,
}

/// Fewer pieces than this are not worth a second thread: one takes a millisecond for them, and a busy machine may
/// keep a new one waiting longer.
const WORTH_A_THREAD: usize = 150_000;

/// Cuts the lines, on at most `threads` threads, asked for only when more than one is worth it. The pieces do not depend on how many.
pub(super) fn cut(
    region: &Region,
    (ux, uy): (f64, f64),
    lines: RowLines,
    trim: Trim,
    threads: impl FnOnce() -> usize,
) -> Result<CutRows, RowError> {
    let sides = Sides::new(region, (ux, uy), lines);
    let load = Load::new(&sides);
    let room = load.before(lines.count);
    if room > MAX_PIECES {
        return Err(RowError::TooManyPieces {
            count: room as u64,
            limit: MAX_PIECES,
        });
    }
    let mut spans = vec![[0.0; 2]; room];
    let worth = room / WORTH_A_THREAD;
    let threads = if worth > 1 { threads().clamp(1, worth) } else { 1 };
    if threads == 1 {
        let rows = sweep(&sides, 0..lines.count, trim, &mut spans, 0);
        return Ok(CutRows { rows, spans });
    }
    // Each thread fills a stretch of its own with about as many pieces as the next one.
    let mut starts: Vec<usize> = (0..threads)
        .map(|i| load.row_at(room / threads * i, lines.count))
        .collect();
    starts.push(lines.count);
    let mut parts = Vec::with_capacity(threads);
    let mut rest = spans.as_mut_slice();
    for ends in starts.windows(2) {
        let base = load.before(ends[0]);
        let (own, others) = rest.split_at_mut(load.before(ends[1]) - base);
        rest = others;
        parts.push((ends[0]..ends[1], base, own));
    }
    let sides = &sides;
    let found: Vec<Vec<RowSpan>> = std::thread::scope(|scope| {
        let running: Vec<_> = parts
            .into_iter()
            .map(|(rows, base, own)| scope.spawn(move || sweep(sides, rows, trim, own, base)))
            .collect();
        running
            .into_iter()
            .map(|thread| thread.join().unwrap_or_else(|fault| std::panic::resume_unwind(fault)))
            .collect()
    });
    Ok(CutRows {
        rows: found.concat(),
        spans,
    })
}

/// Cuts some of the lines into `out`, whose first place is place `base` among all pieces.
fn sweep(sides: &Sides, lines: std::ops::Range<usize>, trim: Trim, out: &mut [[f64; 2]], base: usize) -> Vec<RowSpan> {
    let mut rows = Vec::with_capacity(lines.len());
    let mut passing = Passing::none();
    let (mut next_side, mut used) = (0, 0);
    let mut touched = sides
        .touched
        .iter()
        .copied()
        .skip_while(|&line| (line as usize) < lines.start)
        .peekable();
    for line in lines.start as u32..lines.end as u32 {
        passing.drop_ended(line);
        while let Some(side) = sides.passed.get(next_side).filter(|side| side.first <= line) {
            if side.last >= line {
                passing.add(&sides.passed, next_side);
            }
            next_side += 1;
        }
        let free = &mut out[used..];
        let kept = if touched.next_if_eq(&line).is_some() {
            let found = from_both_hands(&sides.passed, passing.sides(), f64::from(line));
            free[..found.len()].copy_from_slice(&found);
            trimmed(&mut free[..found.len()], trim)
        } else {
            let pieces = &mut free[..passing.sides().len() / 2];
            passing.pass(f64::from(line), pieces.as_flattened_mut());
            trimmed(pieces, trim)
        };
        if kept > 0 {
            rows.push(RowSpan {
                line,
                first: (base + used) as u32,
                pieces: kept as u32,
            });
            used += kept;
        }
    }
    rows
}

/// Takes the headlands off and drops what is too short; the pieces kept come first. Says how many.
fn trimmed(pieces: &mut [[f64; 2]], trim: Trim) -> usize {
    let shortest = (trim.shortest - LENGTH_FORGIVES).max(LENGTH_FORGIVES);
    for [from, to] in pieces.iter_mut() {
        *from += trim.headland;
        *to -= trim.headland;
    }
    // Nearly always all are kept: looked at several at a time before moving any.
    if pieces
        .iter()
        .fold(true, |so_far, [from, to]| so_far & (to - from > shortest))
    {
        return pieces.len();
    }
    let mut kept = 0;
    for i in 0..pieces.len() {
        let [from, to] = pieces[i];
        if to - from > shortest {
            pieces[kept] = [from, to];
            kept += 1;
        }
    }
    kept
}

/// The pieces of a line through corners: what is ground just to the left of it or just to the right.
fn from_both_hands(sides: &[Passed], passing: &[u32], line: f64) -> Vec<[f64; 2]> {
    let seen = |by: &dyn Fn(&Passed) -> bool| {
        let mut along: Vec<f64> = passing
            .iter()
            .map(|&i| &sides[i as usize])
            .filter(|side| by(side))
            .map(|side| side.along(line))
            .collect();
        along.sort_unstable_by(f64::total_cmp);
        along.as_chunks::<2>().0.to_vec()
    };
    let mut pieces = seen(&|side| line > side.left);
    pieces.extend(seen(&|side| line < side.right));
    pieces.sort_by(|a, b| a[0].total_cmp(&b[0]).then(a[1].total_cmp(&b[1])));
    let mut joined: Vec<[f64; 2]> = Vec::with_capacity(pieces.len());
    for [from, to] in pieces {
        match joined.last_mut() {
            Some(last) if from <= last[1] + SAME_PLACE => last[1] = last[1].max(to),
            _ => joined.push([from, to]),
        }
    }
    joined
}
