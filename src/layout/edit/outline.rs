//! What an outline becomes when one of its corners or sides is moved. Plain corners in, plain corners out.

use super::EditError;
use crate::geometry::Point;
use crate::geometry::polygon::signed_area;
use crate::layout::check::Problem;
use crate::layout::item::Item;
use crate::layout::limits;
use crate::quantity::{Area, Length};

/// One change to the outline of a plot, of a bed with corners of its own, or of something in the way.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum OutlineChange {
    /// A corner moved to another place.
    MoveCorner {
        /// The corner, counted from 0.
        corner: usize,
        /// Where it goes.
        to: Point,
    },
    /// A new corner on a side.
    InsertCorner {
        /// The side, by the corner at its start.
        side: usize,
        /// Where the new corner lies.
        at: Point,
    },
    /// A corner taken away; three stay at least.
    RemoveCorner {
        /// The corner, counted from 0.
        corner: usize,
    },
    /// A side moved parallel to itself. The neighbouring sides give way along their own direction, so that angles
    /// stay; where a neighbour runs straight on, a step is put in, and the corners after it count on.
    MoveSide {
        /// The side, by the corner at its start.
        side: usize,
        /// How far; positive is outward.
        outward: Length,
    },
    /// A side made so long. Its end corner moves along it; a next side that stands square on both sides moves as a
    /// whole, so that a rectangle stays a rectangle.
    SetSideLength {
        /// The side, by the corner at its start.
        side: usize,
        /// How long it is to be.
        length: Length,
    },
}

/// The outline of the thing of that name, changed.
pub(super) fn change(
    outline: &[Point],
    change: OutlineChange,
    about: Item,
    name: &str,
) -> Result<Vec<Point>, EditError> {
    let refused = |error| EditError::Refused(Problem::of_value(about, name, &error));
    match change {
        OutlineChange::MoveCorner { corner, to } => move_corner(outline, corner, to),
        OutlineChange::InsertCorner { side, at } => insert_corner(outline, side, at),
        OutlineChange::RemoveCorner { corner } => remove_corner(outline, corner),
        OutlineChange::MoveSide { side, outward } => {
            limits::distance("the way a side moves", outward).map_err(refused)?;
            move_side(outline, side, outward)
        }
        OutlineChange::SetSideLength { side, length } => {
            limits::spacing("the length of a side", length).map_err(refused)?;
            set_side_length(outline, side, length)
        }
    }
}

/// A corner moved to another place.
fn move_corner(outline: &[Point], corner: usize, to: Point) -> Result<Vec<Point>, EditError> {
    let mut moved = outline.to_vec();
    *moved.get_mut(corner).ok_or(EditError::NoSuchCorner)? = to;
    Ok(moved)
}

/// A new corner on a side, between its two ends.
fn insert_corner(outline: &[Point], side: usize, at: Point) -> Result<Vec<Point>, EditError> {
    if side >= outline.len() {
        return Err(EditError::NoSuchCorner);
    }
    let mut inserted = outline.to_vec();
    inserted.insert(side + 1, at);
    Ok(inserted)
}

/// A corner taken away; three stay at least.
fn remove_corner(outline: &[Point], corner: usize) -> Result<Vec<Point>, EditError> {
    if corner >= outline.len() {
        return Err(EditError::NoSuchCorner);
    }
    if outline.len() <= 3 {
        return Err(EditError::LastThreeCorners);
    }
    let mut removed = outline.to_vec();
    removed.remove(corner);
    Ok(removed)
}

/// Every corner shifted by the same way.
pub(super) fn shift(outline: &[Point], east: Length, north: Length) -> Vec<Point> {
    outline.iter().map(|corner| corner.offset(east, north)).collect()
}

/// A side moved parallel to itself; positive is outward. Both neighbours give way along their own direction, so
/// that every angle stays. Where a neighbour runs straight on there is no such way: the side is then set off by
/// a step of its own, square to it.
fn move_side(outline: &[Point], side: usize, outward: Length) -> Result<Vec<Point>, EditError> {
    let ends = Ends::of(outline, side)?;
    // Seen along a side of a ring that runs clockwise, outward is on the left.
    let left = if signed_area(outline) < Area::ZERO { 1.0 } else { -1.0 };
    let by = outward.to_metres() * left;
    let normal = ends.left_normal()?;
    let start = give_way(ends.start, ends.before, normal, by);
    let end = give_way(ends.end, ends.after, normal, by);

    let folded = (by != 0.0)
        && (turned_round(ends.start, ends.end, start.place(), end.place())
            || start.is_past(ends.before, ends.start)
            || end.is_past(ends.after, ends.end));
    if folded {
        return Err(EditError::FoldsOver);
    }
    let mut moved = Vec::with_capacity(outline.len() + 2);
    for (index, corner) in outline.iter().enumerate() {
        if index == side {
            start.push_start(*corner, &mut moved);
        } else if index == ends.end_index {
            end.push_end(*corner, &mut moved);
        } else {
            moved.push(*corner);
        }
    }
    Ok(moved)
}

/// A side made so long: its end corner moves along the side. Where the next side stands square between this side
/// and the one after, it moves as a whole and stays square, so that a rectangle stays a rectangle; elsewhere the
/// end corner moves alone.
fn set_side_length(outline: &[Point], side: usize, length: Length) -> Result<Vec<Point>, EditError> {
    let ends = Ends::of(outline, side)?;
    let (east, north) = ends.direction()?;
    let metres = length.to_metres();
    let end = Point::metres(ends.start.x + east * metres, ends.start.y + north * metres);
    let (by_east, by_north) = (end.x - ends.end.x, end.y - ends.end.y);

    let mut changed = outline.to_vec();
    if let Some(corner) = changed.get_mut(ends.end_index) {
        *corner = end;
    }
    let square_here = is_square(ends.start, ends.end, ends.after);
    let square_there = is_square(ends.end, ends.after, ends.after_next);
    // In a triangle the corner after the next side is where this side starts: it cannot move along.
    if square_here && square_there && outline.len() > 3 {
        let after = Point::metres(ends.after.x + by_east, ends.after.y + by_north);
        if turned_round(ends.after, ends.after_next, after, ends.after_next) {
            return Err(EditError::FoldsOver);
        }
        if let Some(corner) = changed.get_mut((ends.end_index + 1) % outline.len()) {
            *corner = after;
        }
    }
    Ok(changed)
}

/// A side with the corners round it.
struct Ends {
    before: Point,
    start: Point,
    end: Point,
    end_index: usize,
    after: Point,
    after_next: Point,
}

impl Ends {
    fn of(outline: &[Point], side: usize) -> Result<Self, EditError> {
        let n = outline.len();
        if side >= n || n < 3 {
            return Err(EditError::NoSuchCorner);
        }
        let corner = |index: usize| outline.get(index % n).copied().ok_or(EditError::NoSuchCorner);
        Ok(Self {
            before: corner(side + n - 1)?,
            start: corner(side)?,
            end: corner(side + 1)?,
            end_index: (side + 1) % n,
            after: corner(side + 2)?,
            after_next: corner(side + 3)?,
        })
    }

    /// The unit step from start to end.
    fn direction(&self) -> Result<(f64, f64), EditError> {
        let length = self.start.distance(self.end);
        if length <= Length::TOLERANCE {
            return Err(EditError::NoLength);
        }
        let metres = length.to_metres();
        Ok((
            (self.end.x - self.start.x) / metres,
            (self.end.y - self.start.y) / metres,
        ))
    }

    /// The unit step square to the side, to the left seen from start to end.
    fn left_normal(&self) -> Result<(f64, f64), EditError> {
        let (east, north) = self.direction()?;
        Ok((-north, east))
    }
}

/// Where an end of a moved side comes to lie.
enum NewEnd {
    /// On the line of the neighbouring side.
    OnNeighbour(Point),
    /// At the end of a new step, square to the side.
    Step(Point),
}

impl NewEnd {
    const fn place(&self) -> Point {
        match self {
            Self::OnNeighbour(place) | Self::Step(place) => *place,
        }
    }

    /// Whether the neighbour, which ran from `far` to `near`, would have turned round.
    fn is_past(&self, far: Point, near: Point) -> bool {
        match self {
            Self::OnNeighbour(place) => turned_round(far, near, far, *place),
            Self::Step(_) => false,
        }
    }

    fn push_start(&self, old: Point, corners: &mut Vec<Point>) {
        if matches!(self, Self::Step(_)) {
            corners.push(old);
        }
        corners.push(self.place());
    }

    fn push_end(&self, old: Point, corners: &mut Vec<Point>) {
        corners.push(self.place());
        if matches!(self, Self::Step(_)) {
            corners.push(old);
        }
    }
}

/// Moves an end of a side off by `by` along `normal`, on the line from it to the neighbouring corner.
fn give_way(corner: Point, neighbour: Point, normal: (f64, f64), by: f64) -> NewEnd {
    let way = (neighbour.x - corner.x, neighbour.y - corner.y);
    let off_side = way.0 * normal.0 + way.1 * normal.1;
    if by == 0.0 {
        return NewEnd::OnNeighbour(corner);
    }
    // A neighbour whose far end lies on the line of the side itself runs straight on.
    if off_side.abs() <= Length::TOLERANCE.to_metres() {
        return NewEnd::Step(Point::metres(corner.x + normal.0 * by, corner.y + normal.1 * by));
    }
    let part = by / off_side;
    NewEnd::OnNeighbour(Point::metres(corner.x + way.0 * part, corner.y + way.1 * part))
}

/// Whether what ran from `start` to `end` now runs the other way, or not at all.
fn turned_round(start: Point, end: Point, new_start: Point, new_end: Point) -> bool {
    (end.x - start.x) * (new_end.x - new_start.x) + (end.y - start.y) * (new_end.y - new_start.y) <= 0.0
}

/// Whether the corner in the middle is a right angle: the far end of the second side lies square over the corner,
/// to the tolerance of a length.
fn is_square(start: Point, corner: Point, end: Point) -> bool {
    let length = start.distance(corner).to_metres();
    let along = (corner.x - start.x) * (end.x - corner.x) + (corner.y - start.y) * (end.y - corner.y);
    length > 0.0 && (along / length).abs() <= Length::TOLERANCE.to_metres()
}
