//! The sides of a region as row lines meet them, and how many pieces they can cut lines into.

use super::point::Point;
use super::region::{ON_EDGE, Region};
use super::row_rule::RowLines;

/// A side as rows pass it. `t` counts row lines: line 0 lies at 0, line 1 at 1.
#[derive(Clone, Copy, Debug)]
pub(super) struct Passed {
    /// The end on the left hand: across and along.
    pub(super) t: f64,
    pub(super) u: f64,
    /// How far along it moves from line to line.
    pub(super) slope: f64,
    /// Its ends across, laid onto a line when they are on it.
    pub(super) left: f64,
    pub(super) right: f64,
    /// Where it ends, along.
    pub(super) end: f64,
    /// The first and the last line that pass or touch it.
    pub(super) first: u32,
    pub(super) last: u32,
}

impl Passed {
    /// Where a line that touches or passes the side does so.
    pub(super) fn along(&self, line: f64) -> f64 {
        if line <= self.left {
            self.u
        } else if line >= self.right {
            self.end
        } else {
            ((line - self.t) * self.slope + self.u).clamp(self.u.min(self.end), self.u.max(self.end))
        }
    }
}

/// The sides that lines pass, by their first line, and the lines that go through a corner.
pub(super) struct Sides {
    pub(super) passed: Vec<Passed>,
    /// Without repeats, from left to right.
    pub(super) touched: Vec<u32>,
}

impl Sides {
    pub(super) fn new(region: &Region, (ux, uy): (f64, f64), lines: RowLines) -> Self {
        let last_line = lines.count as f64 - 1.0;
        let mut passed = Vec::new();
        let mut touched = Vec::new();
        let corner = |p: Point| {
            let t = ((p.x * uy - p.y * ux) - lines.first) / lines.spacing;
            let line = t.round();
            let laid = if (t - line).abs() * lines.spacing <= ON_EDGE {
                line
            } else {
                t
            };
            (t, p.x * ux + p.y * uy, laid)
        };
        for ring in region.rings() {
            let Some(&last) = ring.last() else { continue };
            let mut before = corner(last);
            for &point in ring {
                let here = corner(point);
                if here.2 == here.2.round() && here.2 >= 0.0 && here.2 <= last_line {
                    touched.push(here.2 as u32);
                }
                let (from, to) = if before.2 < here.2 {
                    (before, here)
                } else {
                    (here, before)
                };
                before = here;
                let (first, last) = (from.2.ceil().max(0.0), to.2.floor().min(last_line));
                // A side along the rows is passed by none: its neighbours say where the ground begins and ends.
                if from.2 < to.2 && first <= last {
                    passed.push(Passed {
                        t: from.0,
                        u: from.1,
                        slope: (to.1 - from.1) / (to.0 - from.0),
                        left: from.2,
                        right: to.2,
                        end: to.1,
                        first: first as u32,
                        last: last as u32,
                    });
                }
            }
        }
        passed.sort_by_key(|side| side.first);
        touched.sort_unstable();
        touched.dedup();
        Self { passed, touched }
    }
}

/// How many pieces there can be to the left of a line.
pub(super) struct Load {
    /// From which line on, how many sides are passed, and how many pieces there can be before.
    steps: Vec<(usize, usize, usize)>,
    /// Lines through a corner, and how many more pieces there can be up to and on each than the steps say.
    touched: Vec<(usize, usize)>,
}

impl Load {
    pub(super) fn new(sides: &Sides) -> Self {
        let mut changes: Vec<(usize, isize)> = Vec::with_capacity(2 * sides.passed.len());
        for side in &sides.passed {
            changes.push((side.first as usize, 1));
            changes.push((side.last as usize + 1, -1));
        }
        changes.sort_unstable();
        let mut load = Self {
            steps: vec![(0, 0, 0)],
            touched: Vec::new(),
        };
        for (line, change) in changes {
            let (from, passed, before) = load.steps[load.steps.len() - 1];
            let now = passed.saturating_add_signed(change);
            let before = before + (line - from) * passed.div_ceil(2);
            if line == from {
                let place = load.steps.len() - 1;
                load.steps[place].1 = now;
            } else {
                load.steps.push((line, now, before));
            }
        }
        let mut more = 0;
        for &line in &sides.touched {
            // Seen from both hands there are up to as many pieces as sides.
            let passed = load.step(line as usize).1;
            more += passed / 2;
            load.touched.push((line as usize, more));
        }
        load
    }

    fn step(&self, line: usize) -> (usize, usize, usize) {
        let after = self.steps.partition_point(|step| step.0 <= line);
        self.steps[after.saturating_sub(1)]
    }

    /// Room for all pieces of the lines before `line`.
    pub(super) fn before(&self, line: usize) -> usize {
        let (from, passed, before) = self.step(line);
        let touched = self.touched.partition_point(|touched| touched.0 < line);
        let more = touched.checked_sub(1).map_or(0, |last| self.touched[last].1);
        before + (line - from) * passed.div_ceil(2) + more
    }

    /// The first line with at least so many pieces before it.
    pub(super) fn row_at(&self, pieces: usize, lines: usize) -> usize {
        let (mut low, mut high) = (0, lines);
        while low < high {
            let middle = low.midpoint(high);
            if self.before(middle) < pieces {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        low
    }
}
