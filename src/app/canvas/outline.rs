//! The outlines that the hand can change, and the edits that change them.

use crate::geometry::{Point, polygon};
use crate::layout::{
    BedChange, BedGround, BedId, Edit, Item, Layout, ObstacleChange, ObstacleId, OutlineChange, PlotChange, PlotId,
    Shape,
};
use crate::quantity::Length;

/// An outline with corners of its own.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub(super) enum Outline {
    /// A plot's.
    Plot(PlotId),
    /// That of a bed that does not fill its plot.
    Bed(BedId),
    /// That of something in the way.
    Obstacle(PlotId, ObstacleId),
}

impl Outline {
    /// The outline that a chosen thing can be reshaped by, if it has one.
    pub(super) fn of(item: Item, layout: &Layout) -> Option<Self> {
        let outline = match item {
            Item::Plot(plot) | Item::Corner(plot, _) | Item::Side(plot, _) => Self::Plot(plot),
            Item::Bed(bed) | Item::BedCorner(bed, _) => Self::Bed(bed),
            Item::Obstacle(plot, obstacle) => Self::Obstacle(plot, obstacle),
            Item::Layout | Item::Row(..) | Item::Dressing(..) | Item::Note(_) | Item::Lot(_) | Item::Shed(_) => {
                return None;
            }
        };
        outline.ring(layout).map(|_| outline)
    }

    /// Its corners; `None` when it has none of its own.
    pub(super) fn ring(self, layout: &Layout) -> Option<&[Point]> {
        match self {
            Self::Plot(plot) => Some(&layout.plot(plot)?.outline),
            Self::Bed(bed) => match &layout.bed(bed)?.ground {
                BedGround::WholePlot => None,
                BedGround::Corners(corners) => Some(corners),
            },
            Self::Obstacle(plot, obstacle) => match &layout.plot(plot)?.obstacle(obstacle)?.shape {
                Shape::Corners(corners) => Some(corners),
                Shape::Circle { .. } => None,
            },
        }
    }

    /// Whose outline it is, by name.
    pub(super) fn name(self, layout: &Layout) -> &str {
        match self {
            Self::Plot(plot) => layout.plot(plot).map_or("", |plot| &plot.name),
            Self::Bed(bed) => layout.bed(bed).map_or("", |bed| &bed.name),
            Self::Obstacle(plot, obstacle) => layout
                .plot(plot)
                .and_then(|plot| plot.obstacle(obstacle))
                .map_or("", |obstacle| &obstacle.name),
        }
    }

    /// The thing as a whole.
    pub(super) const fn item(self) -> Item {
        match self {
            Self::Plot(plot) => Item::Plot(plot),
            Self::Bed(bed) => Item::Bed(bed),
            Self::Obstacle(plot, obstacle) => Item::Obstacle(plot, obstacle),
        }
    }

    /// What is chosen when a corner of it is.
    pub(super) const fn corner_item(self, corner: usize) -> Item {
        match self {
            Self::Plot(plot) => Item::Corner(plot, corner),
            Self::Bed(bed) => Item::BedCorner(bed, corner),
            Self::Obstacle(plot, obstacle) => Item::Obstacle(plot, obstacle),
        }
    }

    /// What is chosen when a side of it is.
    pub(super) const fn side_item(self, side: usize) -> Item {
        match self {
            Self::Plot(plot) => Item::Side(plot, side),
            Self::Bed(_) | Self::Obstacle(..) => self.item(),
        }
    }

    /// The edit that changes it.
    pub(super) const fn changed(self, change: OutlineChange) -> Edit {
        match self {
            Self::Plot(plot) => Edit::Plot(plot, PlotChange::Outline(change)),
            Self::Bed(bed) => Edit::Bed(bed, BedChange::Outline(change)),
            Self::Obstacle(plot, obstacle) => {
                Edit::Plot(plot, PlotChange::Obstacle(obstacle, ObstacleChange::Outline(change)))
            }
        }
    }
}

/// A thing shifted as a whole; `None` for what cannot be shifted by itself.
pub(super) fn shift(item: Item, layout: &Layout, east: Length, north: Length) -> Option<Edit> {
    match item {
        Item::Plot(plot) => Some(Edit::Plot(plot, PlotChange::Shift { east, north })),
        Item::Obstacle(plot, obstacle) => Some(Edit::Plot(
            plot,
            PlotChange::Obstacle(obstacle, ObstacleChange::Shift { east, north }),
        )),
        Item::Bed(bed) => {
            Outline::Bed(bed).ring(layout)?;
            Some(Edit::Bed(bed, BedChange::Shift { east, north }))
        }
        Item::Note(note) => Some(Edit::MoveNote {
            note,
            to: layout.note(note)?.at.offset(east, north),
        }),
        Item::Corner(plot, corner) => {
            let outline = Outline::Plot(plot);
            let at = *outline.ring(layout)?.get(corner)?;
            Some(outline.changed(OutlineChange::MoveCorner {
                corner,
                to: at.offset(east, north),
            }))
        }
        Item::BedCorner(bed, corner) => {
            let outline = Outline::Bed(bed);
            let at = *outline.ring(layout)?.get(corner)?;
            Some(outline.changed(OutlineChange::MoveCorner {
                corner,
                to: at.offset(east, north),
            }))
        }
        Item::Side(plot, side) => {
            let outline = Outline::Plot(plot);
            let ring = outline.ring(layout)?;
            let (x, y) = outward(ring, side)?;
            let outward = Length::metres(east.to_metres() * x + north.to_metres() * y);
            Some(outline.changed(OutlineChange::MoveSide { side, outward }))
        }
        Item::Layout | Item::Row(..) | Item::Dressing(..) | Item::Lot(_) | Item::Shed(_) => None,
    }
}

/// The unit step that leads out of a ring across one of its sides.
pub(super) fn outward(ring: &[Point], side: usize) -> Option<(f64, f64)> {
    let (east, north) = polygon::side_bearing(ring, side)?.unit();
    // Outward is to the right of a side of a ring that runs counter-clockwise.
    let turn = if polygon::signed_area(ring).to_square_metres() < 0.0 {
        -1.0
    } else {
        1.0
    };
    Some((north * turn, -east * turn))
}

/// The two ends of a side.
pub(super) fn ends(ring: &[Point], side: usize) -> Option<(Point, Point)> {
    let from = *ring.get(side)?;
    let to = *ring.get((side + 1) % ring.len())?;
    Some((from, to))
}

/// Every side of a ring.
pub(super) fn sides(ring: &[Point]) -> impl Iterator<Item = (usize, Point, Point)> + '_ {
    (0..ring.len()).filter_map(move |side| ends(ring, side).map(|(from, to)| (side, from, to)))
}
