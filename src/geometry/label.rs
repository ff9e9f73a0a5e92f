//! A place well inside some ground.

use std::cmp::Ordering;
use std::collections::BinaryHeap;

use super::bounds::Bounds;
use super::contact::{nearest_on_side, sides_of};
use super::piece::Ground;
use super::point::Point;
use super::polygon::is_under;

/// The search stops when no place can be farther from the edges by more than this part of the ground's shorter
/// reach. A name on the sheet does not gain from a finer one.
const GOOD_ENOUGH: f64 = 0.01;
/// … and after so many squares in any case. A plain field takes some tens, a comb of teeth some hundreds.
const MOST_SQUARES: usize = 4_000;

struct Square {
    centre: Point,
    half: f64,
    /// How far the centre is inside the ground; negative outside.
    depth: f64,
    /// How far inside any place in the square could be.
    promise: f64,
}

impl Square {
    fn new(ground: &[Ground], centre: Point, half: f64) -> Self {
        let depth = depth(ground, centre);
        let promise = depth + half * std::f64::consts::SQRT_2;
        Self {
            centre,
            half,
            depth,
            promise,
        }
    }
}

impl PartialEq for Square {
    fn eq(&self, other: &Self) -> bool {
        self.cmp(other) == Ordering::Equal
    }
}
impl Eq for Square {}
impl PartialOrd for Square {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}
impl Ord for Square {
    fn cmp(&self, other: &Self) -> Ordering {
        // Equal promises are taken from the south-west, so that the answer does not hang on the heap.
        let place = |s: &Self| (s.centre.y, s.centre.x);
        let (a, b) = (place(self), place(other));
        self.promise
            .total_cmp(&other.promise)
            .then_with(|| b.0.total_cmp(&a.0))
            .then_with(|| b.1.total_cmp(&a.1))
    }
}

/// Splits the square that may hold the deepest place until none can beat the best one found by much. `balance` is the
/// place that the ground would balance on, often a good one.
pub(super) fn well_inside(ground: &[Ground], balance: Option<Point>) -> Option<Point> {
    let bounds = Bounds::of(ground.iter().flat_map(Ground::outer))?;
    let (width, height) = (bounds.width(), bounds.height());
    let shorter = width.min(height);
    let first_on_edge = *ground.first()?.outer().first()?;
    // Squares as wide as the ground's shorter reach, but no more than a hundred or so along a sliver.
    let size = shorter.max(width.max(height) / 100.0);
    let mut best = (first_on_edge, 0.0);
    let mut squares = BinaryHeap::new();
    let (columns, lines) = (
        (width / size).ceil().max(1.0) as usize,
        (height / size).ceil().max(1.0) as usize,
    );
    for column in 0..columns {
        for line in 0..lines {
            let centre = Point::metres(
                bounds.min.x + (column as f64 + 0.5) * size,
                bounds.min.y + (line as f64 + 0.5) * size,
            );
            squares.push(Square::new(ground, centre, size / 2.0));
        }
    }
    if let Some(balance) = balance {
        squares.push(Square::new(ground, balance, 0.0));
    }
    let mut split = 0;
    while let Some(square) = squares.pop() {
        if square.depth > best.1 {
            best = (square.centre, square.depth);
        }
        if square.promise - best.1 <= GOOD_ENOUGH * shorter || split >= MOST_SQUARES {
            break;
        }
        split += 1;
        let half = square.half / 2.0;
        for (east, north) in [(-half, -half), (half, -half), (-half, half), (half, half)] {
            let centre = Point::metres(square.centre.x + east, square.centre.y + north);
            squares.push(Square::new(ground, centre, half));
        }
    }
    Some(best.0)
}

fn depth(ground: &[Ground], place: Point) -> f64 {
    let mut inside = false;
    let mut nearest = f64::INFINITY;
    for side in ground.iter().flat_map(Ground::rings).flat_map(|ring| sides_of(ring, 0)) {
        inside ^= is_under(side.from, side.to, place);
        nearest = nearest.min(nearest_on_side(side.from, side.to, place).distance(place).to_metres());
    }
    if inside { nearest } else { -nearest }
}
