//! From the corners a person typed to a ring that bounds ground, or a sentence saying why it does not.

use std::ops::ControlFlow;

use super::boolean;
use super::contact::{Contact, contacts, sides_of};
use super::piece::Ground;
use super::point::Point;
use super::polygon::{perimeter, signed_area};
use super::region_error::{RegionError, RingName};
use super::{NO_AREA, SAME_PLACE};
use crate::quantity::Length;

/// How far from the layout's origin a corner may lie, east or north: 1,000 km. Farther out, a metre's fractions
/// would no longer be kept to the micrometre, and nobody draws one layout that large.
pub const FARTHEST: Length = Length::metres(1e6);

/// The most corners a ring may have. A walked outline has hundreds; at this many a check of every side against
/// every other still takes about a second at the very worst.
pub const MAX_CORNERS: usize = 20_000;

/// A ring without repeated corners. Remembers where each corner stood in what was typed.
pub(super) struct TypedRing {
    name: RingName,
    points: Vec<Point>,
    typed: Vec<usize>,
}

/// Whether a ring can be used as it was typed.
enum Making {
    /// No side meets another but its neighbours, at their corners.
    Simple,
    /// Sides touch, first here.
    Touching(Point, (usize, usize)),
}

impl TypedRing {
    /// Takes the corners as typed: any direction, repeated corners, closed or not.
    pub(super) fn read(corners: &[Point], name: RingName) -> Result<Self, RegionError> {
        if corners.len() > MAX_CORNERS {
            return Err(RegionError::TooManyCorners {
                ring: name,
                corners: corners.len(),
                limit: MAX_CORNERS,
            });
        }
        let mut points: Vec<Point> = Vec::with_capacity(corners.len());
        let mut typed = Vec::with_capacity(corners.len());
        for (corner, &point) in corners.iter().enumerate() {
            if !point.is_finite() {
                return Err(RegionError::NotFinite { ring: name, corner });
            }
            if point.x.abs().max(point.y.abs()) > FARTHEST.to_metres() {
                return Err(RegionError::TooFar { ring: name, corner });
            }
            if points.last().is_none_or(|last| apart(*last, point)) {
                points.push(point);
                typed.push(corner);
            }
        }
        while points.len() > 1 && !apart(points[0], points[points.len() - 1]) {
            points.pop();
            typed.pop();
        }
        // Three different corners, wherever in the ring they stand: back and forth between two is no ring.
        let second = points.iter().find(|p| apart(**p, points[0]));
        let third = second.and_then(|s| points.iter().find(|p| apart(**p, points[0]) && apart(**p, *s)));
        if third.is_none() {
            let distinct = usize::from(!points.is_empty()) + usize::from(second.is_some());
            return Err(RegionError::TooFewCorners { ring: name, distinct });
        }
        Ok(Self { name, points, typed })
    }

    /// The ground inside an outline. The typed corners are kept to the last bit unless sides touch one another.
    pub(super) fn enclosed(self) -> Result<Vec<Ground>, RegionError> {
        let making = self.making()?;
        let signed = signed_area(&self.points).to_square_metres();
        let (at, sides) = match making {
            Making::Simple => {
                if signed.abs() < NO_AREA {
                    return Err(self.no_area());
                }
                return Ok(vec![Ground::from_outer(self.points)]);
            }
            Making::Touching(at, sides) => (at, sides),
        };
        let pieces = boolean::tidy_even_odd(&self.points);
        let area: f64 = pieces.iter().map(|piece| piece.area().to_square_metres()).sum();
        // A ring that only touches itself encloses what its corners sum to. One that runs over itself does not.
        let slack = perimeter(&self.points).to_metres() * Length::TOLERANCE.to_metres() + NO_AREA;
        if (area - signed.abs()).abs() > slack {
            let ring = self.name;
            return Err(RegionError::SelfCrossing { ring, at, sides });
        }
        if area < NO_AREA {
            return Err(self.no_area());
        }
        Ok(pieces)
    }

    /// The ground an obstacle covers. One that crosses itself covers everything its sides go round.
    pub(super) fn covered(self) -> Result<Vec<Ground>, RegionError> {
        let signed = signed_area(&self.points).to_square_metres();
        if let Ok(Making::Simple) = self.making()
            && signed.abs() >= NO_AREA
        {
            return Ok(vec![Ground::from_outer(self.points)]);
        }
        let pieces = boolean::union_of_rings(&[&self.points]);
        if pieces.is_empty() {
            return Err(self.no_area());
        }
        Ok(pieces)
    }

    fn no_area(&self) -> RegionError {
        RegionError::NoArea {
            ring: self.name,
            at: self.points[0],
        }
    }

    fn making(&self) -> Result<Making, RegionError> {
        let sides: Vec<_> = sides_of(&self.points, 0).collect();
        let mut first_touch = None;
        let mut crossing = None;
        contacts(
            &sides,
            |_, _| true,
            |one, two, contact| {
                let names = (self.typed[one.index], self.typed[two.index]);
                match contact {
                    Contact::Cross(at) => {
                        crossing = Some((at, names));
                        return ControlFlow::Break(());
                    }
                    Contact::Touch(at) if first_touch.is_none() => first_touch = Some((at, names)),
                    Contact::Touch(_) => {}
                }
                ControlFlow::Continue(())
            },
        );
        match (crossing, first_touch) {
            (Some((at, sides)), _) => Err(RegionError::SelfCrossing {
                ring: self.name,
                at,
                sides,
            }),
            (None, Some((at, sides))) => Ok(Making::Touching(at, sides)),
            (None, None) => Ok(Making::Simple),
        }
    }
}

fn apart(a: Point, b: Point) -> bool {
    a.distance(b).to_metres() > SAME_PLACE
}
