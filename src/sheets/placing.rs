//! From ground to paper or screen: where a ground place lands, at an exact scale.

use super::mark::{Hatch, Mark, Words};
use crate::geometry::Point;

/// Puts ground places (metres, y north) on a sheet (points of 1/72 in, y down from the top left).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Placing {
    /// Points on the sheet for each metre of ground.
    pub points_per_metre: f64,
    /// A ground place, in metres.
    pub ground: Point,
    /// Where on the sheet that place lands, in points.
    pub sheet: Point,
}

impl Placing {
    /// Where a ground place lands on the sheet, in points.
    pub fn to_sheet(&self, at: Point) -> Point {
        Point::metres(
            self.sheet.x + (at.x - self.ground.x) * self.points_per_metre,
            self.sheet.y - (at.y - self.ground.y) * self.points_per_metre,
        )
    }

    /// Which ground place lands there on the sheet.
    pub fn to_ground(&self, at: Point) -> Point {
        Point::metres(
            self.ground.x + (at.x - self.sheet.x) / self.points_per_metre,
            self.ground.y - (at.y - self.sheet.y) / self.points_per_metre,
        )
    }

    fn all(&self, points: &[Point]) -> Vec<Point> {
        points.iter().map(|&point| self.to_sheet(point)).collect()
    }

    fn rings(&self, rings: &[Vec<Point>]) -> Vec<Vec<Point>> {
        rings.iter().map(|ring| self.all(ring)).collect()
    }
}

impl Mark {
    /// The mark with every ground place put on the sheet. Pens, letters, hatches and turns stay as they are:
    /// they are measured on the sheet already.
    pub fn placed(&self, placing: &Placing) -> Self {
        match self {
            Self::Line { points, closed, pen } => Self::Line {
                points: placing.all(points),
                closed: *closed,
                pen: *pen,
            },
            Self::Strokes { strokes, pen } => Self::Strokes {
                strokes: strokes
                    .iter()
                    .map(|ends| ends.map(|end| placing.to_sheet(end)))
                    .collect(),
                pen: *pen,
            },
            Self::Dots { at, radius, ink } => Self::Dots {
                at: placing.all(at),
                radius: *radius,
                ink: *ink,
            },
            Self::Fill { rings, ink } => Self::Fill {
                rings: placing.rings(rings),
                ink: *ink,
            },
            Self::Hatch { rings, hatch, pen } => Self::Hatch {
                rings: placing.rings(rings),
                hatch: *hatch,
                pen: *pen,
            },
            Self::Words(words) => Self::Words(Words {
                at: placing.to_sheet(words.at),
                ..words.clone()
            }),
        }
    }
}

impl Hatch {
    /// Most strokes that one hatch is made of; a closer hatch over more ground is opened up to stay below it.
    const MOST_STROKES: f64 = 4000.0;

    /// The strokes of this hatch inside rings on the sheet (points, y down), filled even-odd.
    ///
    /// The strokes stand on a grid fixed to the sheet's own origin, so that two shapes side by side carry on
    /// each other's strokes.
    pub fn strokes(&self, rings: &[Vec<Point>]) -> Vec<[Point; 2]> {
        let mut strokes = Vec::new();
        self.one_way(rings, self.bearing, &mut strokes);
        if self.crossed {
            self.one_way(rings, self.bearing + 90.0, &mut strokes);
        }
        strokes
    }

    fn one_way(&self, rings: &[Vec<Point>], bearing: f64, strokes: &mut Vec<[Point; 2]>) {
        // North is up and y runs down, so a step along the bearing is (sin, -cos).
        let (sin, cos) = bearing.to_radians().sin_cos();
        let along = |p: &Point| p.x * sin - p.y * cos;
        let across = |p: &Point| p.x * cos + p.y * sin;
        let corners = || rings.iter().flatten();
        let low = corners().map(across).fold(f64::INFINITY, f64::min);
        let high = corners().map(across).fold(f64::NEG_INFINITY, f64::max);
        if !(low.is_finite() && high.is_finite()) {
            return;
        }
        let gap = f64::from(self.gap).max((high - low) / Self::MOST_STROKES).max(0.1);
        let first = (low / gap).ceil() as i64;
        let last = (high / gap).floor() as i64;
        if last < first {
            return;
        }
        let mut crossings: Vec<Vec<f64>> = vec![Vec::new(); (last - first + 1) as usize];
        for ring in rings {
            for (a, b) in ring.iter().zip(ring.iter().cycle().skip(1)) {
                let ((low, low_at), (high, high_at)) = if across(a) < across(b) {
                    ((across(a), along(a)), (across(b), along(b)))
                } else {
                    ((across(b), along(b)), (across(a), along(a)))
                };
                let mut line = (low / gap).ceil() as i64;
                // A side owns the strokes from its low end up to but not including its high end, so that a
                // stroke through a corner is counted once.
                while (line as f64) * gap < high && line <= last {
                    if let Some(cuts) = crossings.get_mut((line - first).max(0) as usize) {
                        cuts.push(low_at + (line as f64 * gap - low) / (high - low) * (high_at - low_at));
                    }
                    line += 1;
                }
            }
        }
        for (cuts, line) in crossings.iter_mut().zip(first..) {
            cuts.sort_unstable_by(f64::total_cmp);
            let offset = line as f64 * gap;
            let place = |at: f64| Point::metres(at * sin + offset * cos, offset * sin - at * cos);
            for pair in cuts.chunks_exact(2) {
                if let &[from, to] = pair {
                    strokes.push([place(from), place(to)]);
                }
            }
        }
    }
}
