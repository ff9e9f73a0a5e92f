//! Upright boxes of ground, and cutting lines and rings to them.

use std::borrow::Borrow;

use super::point::Point;
use super::polygon::rectangle;

/// An upright box of ground. As with [`Point`], plain numbers are metres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bounds {
    /// The south-west corner.
    pub min: Point,
    /// The north-east corner.
    pub max: Point,
}

impl Bounds {
    /// The smallest box round places; `None` without any finite one.
    pub fn of(places: impl IntoIterator<Item = impl Borrow<Point>>) -> Option<Self> {
        let places = places.into_iter().map(|place| *place.borrow());
        let boxes = places
            .filter(|place| place.is_finite())
            .map(|place| Self { min: place, max: place });
        boxes.reduce(Self::with)
    }

    /// The box with this middle and half sizes, in metres.
    pub fn about(middle: Point, half_width: f64, half_height: f64) -> Self {
        Self {
            min: Point::metres(middle.x - half_width, middle.y - half_height),
            max: Point::metres(middle.x + half_width, middle.y + half_height),
        }
    }

    /// The box with every side moved outward by so many metres.
    pub fn grown(self, by: f64) -> Self {
        Self {
            min: Point::metres(self.min.x - by, self.min.y - by),
            max: Point::metres(self.max.x + by, self.max.y + by),
        }
    }

    /// The box round both.
    pub fn with(self, other: Self) -> Self {
        Self {
            min: Point::metres(self.min.x.min(other.min.x), self.min.y.min(other.min.y)),
            max: Point::metres(self.max.x.max(other.max.x), self.max.y.max(other.max.y)),
        }
    }

    /// What both have in common, if it is more than an edge.
    pub fn common(self, other: Self) -> Option<Self> {
        self.overlaps(other).then(|| Self {
            min: Point::metres(self.min.x.max(other.min.x), self.min.y.max(other.min.y)),
            max: Point::metres(self.max.x.min(other.max.x), self.max.y.min(other.max.y)),
        })
    }

    /// Whether the two share a place, edges included.
    pub fn meets(self, other: Self) -> bool {
        self.min.x <= other.max.x && other.min.x <= self.max.x && self.min.y <= other.max.y && other.min.y <= self.max.y
    }

    /// Whether the two overlap; touching edges do not count.
    pub fn overlaps(self, other: Self) -> bool {
        self.min.x < other.max.x && other.min.x < self.max.x && self.min.y < other.max.y && other.min.y < self.max.y
    }

    /// Whether a place lies inside or on the edge.
    pub fn contains(self, place: Point) -> bool {
        (self.min.x..=self.max.x).contains(&place.x) && (self.min.y..=self.max.y).contains(&place.y)
    }

    /// From west to east, in metres.
    pub fn width(self) -> f64 {
        self.max.x - self.min.x
    }

    /// From south to north, in metres.
    pub fn height(self) -> f64 {
        self.max.y - self.min.y
    }

    /// The middle.
    pub fn middle(self) -> Point {
        self.min.towards(self.max, 0.5)
    }

    /// The four corners, counter-clockwise from the south-west.
    pub fn corners(self) -> [Point; 4] {
        rectangle(self.min, self.max)
    }

    /// Which part of the straight line from `a` to `b` lies inside, as parts of its length from 0 to 1.
    pub fn cut(self, a: Point, b: Point) -> Option<(f64, f64)> {
        let (mut from, mut to) = (0.0_f64, 1.0_f64);
        let sides = [
            (a.x - b.x, a.x - self.min.x),
            (b.x - a.x, self.max.x - a.x),
            (a.y - b.y, a.y - self.min.y),
            (b.y - a.y, self.max.y - a.y),
        ];
        for (outward, room) in sides {
            // `outward * t <= room` holds inside this side; a line along the side is in or out as a whole.
            if outward == 0.0 {
                if room < 0.0 {
                    return None;
                }
            } else if outward > 0.0 {
                to = to.min(room / outward);
            } else {
                from = from.max(room / outward);
            }
        }
        (from < to).then_some((from, to))
    }

    /// What is left of a filled ring inside; empty when nothing is, or when a corner is not a number.
    pub fn cut_ring(self, ring: &[Point]) -> Vec<Point> {
        if !ring.iter().all(|point| point.is_finite()) {
            return Vec::new();
        }
        if ring.iter().all(|&point| self.contains(point)) {
            return ring.to_vec();
        }
        // One side of the box after the other cuts off what lies past it (the method of Sutherland and Hodgman,
        // "Reentrant polygon clipping", Communications of the ACM 17(1), 1974).
        let sides: [fn(Self, Point) -> f64; 4] = [
            |bounds, point| point.x - bounds.min.x,
            |bounds, point| bounds.max.x - point.x,
            |bounds, point| point.y - bounds.min.y,
            |bounds, point| bounds.max.y - point.y,
        ];
        let mut ring = ring.to_vec();
        for side in sides {
            let mut kept = Vec::with_capacity(ring.len() + 4);
            for (&a, &b) in ring.iter().zip(ring.iter().cycle().skip(1)) {
                let (inside_a, inside_b) = (side(self, a), side(self, b));
                if inside_a >= 0.0 {
                    kept.push(a);
                }
                if (inside_a >= 0.0) != (inside_b >= 0.0) {
                    kept.push(a.towards(b, inside_a / (inside_a - inside_b)));
                }
            }
            ring = kept;
        }
        ring
    }
}
