//! Where sides of rings cross or touch.

use super::SAME_PLACE;
use super::point::Point;
use crate::quantity::Length;

/// A straight side from one corner to the next.
#[derive(Clone, Copy, Debug)]
pub(super) struct Side {
    pub(super) from: Point,
    pub(super) to: Point,
    /// Which ring it belongs to.
    pub(super) ring: usize,
    /// Its place in that ring.
    pub(super) index: usize,
    /// How many sides that ring has.
    pub(super) of: usize,
}

/// How two sides meet.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Contact {
    /// Each passes from one side of the other to the other side by more than [`Length::TOLERANCE`].
    Cross(Point),
    /// They share a place without passing through one another, or by less than can be measured.
    Touch(Point),
}

/// The sides of a ring.
pub(super) fn sides_of(points: &[Point], ring: usize) -> impl Iterator<Item = Side> + '_ {
    let next = points.iter().cycle().skip(1);
    points
        .iter()
        .zip(next)
        .enumerate()
        .map(move |(index, (&from, &to))| Side {
            from,
            to,
            ring,
            index,
            of: points.len(),
        })
}

/// Calls `found` for every pair of sides that meet, of those that `wanted` asks for, until it says to stop.
///
/// Sides are taken from west to east, each against those whose reach overlaps its own. The order is fixed.
pub(super) fn contacts(
    sides: &[Side],
    wanted: impl Fn(&Side, &Side) -> bool,
    mut found: impl FnMut(&Side, &Side, Contact) -> std::ops::ControlFlow<()>,
) {
    let mut order: Vec<(f64, usize)> = sides
        .iter()
        .enumerate()
        .map(|(i, s)| (s.from.x.min(s.to.x), i))
        .collect();
    order.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
    for (place, &(_, i)) in order.iter().enumerate() {
        let one = &sides[i];
        let east = one.from.x.max(one.to.x) + SAME_PLACE;
        let (south, north) = (
            one.from.y.min(one.to.y) - SAME_PLACE,
            one.from.y.max(one.to.y) + SAME_PLACE,
        );
        for &(west, j) in &order[place + 1..] {
            if west > east {
                break;
            }
            let two = &sides[j];
            if two.from.y.max(two.to.y) < south || two.from.y.min(two.to.y) > north || !wanted(one, two) {
                continue;
            }
            let Some(contact) = meet(one, two) else { continue };
            // Lower side first, so that a sentence names them in the order they were typed.
            let (low, high) = if (one.ring, one.index) < (two.ring, two.index) {
                (one, two)
            } else {
                (two, one)
            };
            if found(low, high, contact).is_break() {
                return;
            }
        }
    }
}

fn meet(one: &Side, two: &Side) -> Option<Contact> {
    if one.ring == two.ring {
        // Neighbours share a corner; they touch beyond it only when the second runs back over the first.
        if (one.index + 1) % one.of == two.index {
            return runs_back(one, two).then_some(Contact::Touch(one.to));
        }
        if (two.index + 1) % one.of == one.index {
            return runs_back(two, one).then_some(Contact::Touch(two.to));
        }
    }
    let passes = |p: f64, q: f64| {
        let far = Length::TOLERANCE.to_metres();
        (p > far && q < -far) || (p < -far && q > far)
    };
    let (c, d) = (beside(one, two.from), beside(one, two.to));
    let (a, b) = (beside(two, one.from), beside(two, one.to));
    if passes(c, d) && passes(a, b) {
        return Some(Contact::Cross(two.from.towards(two.to, c / (c - d))));
    }
    if (c > 0.0) != (d > 0.0) && (a > 0.0) != (b > 0.0) && c != d {
        return Some(Contact::Touch(two.from.towards(two.to, c / (c - d))));
    }
    // Sides that do not pass through one another are nearest at one of the four ends.
    [
        (two.from, nearest_on_side(one.from, one.to, two.from)),
        (two.to, nearest_on_side(one.from, one.to, two.to)),
        (one.from, nearest_on_side(two.from, two.to, one.from)),
        (one.to, nearest_on_side(two.from, two.to, one.to)),
    ]
    .into_iter()
    .find(|(end, near)| end.distance(*near).to_metres() <= SAME_PLACE)
    .map(|(end, _)| Contact::Touch(end))
}

/// How far a point lies to the left of a side's line, in metres.
fn beside(side: &Side, point: Point) -> f64 {
    let (dx, dy) = (side.to.x - side.from.x, side.to.y - side.from.y);
    let length = dx.hypot(dy);
    if length == 0.0 {
        return 0.0;
    }
    (dx * (point.y - side.from.y) - dy * (point.x - side.from.x)) / length
}

fn runs_back(first: &Side, second: &Side) -> bool {
    let back = (first.to.x - first.from.x) * (second.to.x - second.from.x)
        + (first.to.y - first.from.y) * (second.to.y - second.from.y);
    back < 0.0 && (beside(first, second.to).abs() <= SAME_PLACE || beside(second, first.from).abs() <= SAME_PLACE)
}

/// The place on the side from `from` to `to` that is nearest to `point`.
pub(super) fn nearest_on_side(from: Point, to: Point, point: Point) -> Point {
    let (dx, dy) = (to.x - from.x, to.y - from.y);
    let squared = dx * dx + dy * dy;
    if squared == 0.0 {
        return from;
    }
    let t = ((point.x - from.x) * dx + (point.y - from.y) * dy) / squared;
    if t <= 0.0 {
        from
    } else if t >= 1.0 {
        to
    } else {
        from.towards(to, t)
    }
}
