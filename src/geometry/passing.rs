//! The sides that one row line after another passes, kept in their order along it.

use super::sides::Passed;

/// The sides that the row at hand passes, in order along it but for the newest, one list for each of their numbers.
#[derive(Default)]
pub(super) struct Passing {
    t: Vec<f64>,
    u: Vec<f64>,
    slope: Vec<f64>,
    last: Vec<u32>,
    side: Vec<u32>,
    /// The first line at which one of them ends.
    next_end: u32,
    /// How many at the end of the lists have no place in the order yet.
    unplaced: usize,
}

impl Passing {
    /// Before the first line.
    pub(super) fn none() -> Self {
        Self {
            next_end: u32::MAX,
            ..Self::default()
        }
    }

    /// Which sides they are, by their place in [`super::sides::Sides`]; in no order between [`Passing::add`] and
    /// [`Passing::pass`].
    pub(super) fn sides(&self) -> &[u32] {
        &self.side
    }

    /// Leaves out the sides that do not reach a line.
    pub(super) fn drop_ended(&mut self, line: u32) {
        if self.next_end >= line {
            return;
        }
        let Some(mut kept) = self.last.iter().position(|&last| last < line) else {
            return;
        };
        for i in kept + 1..self.last.len() {
            if self.last[i] >= line {
                self.t[kept] = self.t[i];
                self.u[kept] = self.u[i];
                self.slope[kept] = self.slope[i];
                self.last[kept] = self.last[i];
                self.side[kept] = self.side[i];
                kept += 1;
            }
        }
        self.t.truncate(kept);
        self.u.truncate(kept);
        self.slope.truncate(kept);
        self.last.truncate(kept);
        self.side.truncate(kept);
        self.next_end = self.last.iter().copied().min().unwrap_or(u32::MAX);
        // Some may have come and gone between two lines that were cut the slow way.
        self.unplaced = self.unplaced.min(kept);
    }

    /// Takes in a side that begins at or before the line at hand.
    pub(super) fn add(&mut self, sides: &[Passed], place: usize) {
        let side = &sides[place];
        self.t.push(side.t);
        self.u.push(side.u);
        self.slope.push(side.slope);
        self.last.push(side.last);
        self.side.push(place as u32);
        self.next_end = self.next_end.min(side.last);
        self.unplaced += 1;
    }

    /// Works out where the line passes each side, in order along the line.
    pub(super) fn pass(&mut self, line: f64, along: &mut [f64]) {
        for (((at, t), u), slope) in along.iter_mut().zip(&self.t).zip(&self.u).zip(&self.slope) {
            *at = (line - t) * slope + u;
        }
        if self.unplaced * 8 > along.len() {
            self.place_all(along);
        } else if self.unplaced > 0 {
            self.place_newest(along);
        }
        self.unplaced = 0;
        if !in_order(along) {
            // Two sides closer than rounding can tell apart.
            self.place_all(along);
        }
    }

    fn place_all(&mut self, along: &mut [f64]) {
        let mut order: Vec<(f64, u32)> = along.iter().copied().zip(0..).collect();
        order.sort_unstable_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
        let floats = |values: &[f64]| order.iter().map(|&(_, i)| values[i as usize]).collect::<Vec<_>>();
        let whole = |values: &[u32]| order.iter().map(|&(_, i)| values[i as usize]).collect::<Vec<_>>();
        (self.t, self.u, self.slope) = (floats(&self.t), floats(&self.u), floats(&self.slope));
        (self.last, self.side) = (whole(&self.last), whole(&self.side));
        for (at, (sorted, _)) in along.iter_mut().zip(&order) {
            *at = *sorted;
        }
    }

    fn place_newest(&mut self, along: &mut [f64]) {
        for i in along.len() - self.unplaced..along.len() {
            let place = along[..i].partition_point(|at| *at <= along[i]);
            along[place..=i].rotate_right(1);
            self.t[place..=i].rotate_right(1);
            self.u[place..=i].rotate_right(1);
            self.slope[place..=i].rotate_right(1);
            self.last[place..=i].rotate_right(1);
            self.side[place..=i].rotate_right(1);
        }
    }
}

/// Whether no number is smaller than the one before it. Looks at all of them, several at a time: nearly always so.
fn in_order(values: &[f64]) -> bool {
    let after = values.get(1..).unwrap_or_default();
    values.iter().zip(after).fold(true, |so_far, (a, b)| so_far & (a <= b))
}
