//! Edits of what stands in the way.

use super::outline::OutlineChange;
use super::{EditError, fresh_id, outline, tidy};
use crate::layout::document::Layout;
use crate::layout::ground::{Obstacle, ObstacleKind, Plot, Shape};
use crate::layout::ids::ObstacleId;
use crate::layout::item::Item;
use crate::quantity::Length;

/// One change to something in the way.
#[derive(Clone, Debug, PartialEq)]
pub enum ObstacleChange {
    /// Another name.
    Rename(String),
    /// It is something else.
    SetKind(ObstacleKind),
    /// Another shape or place.
    SetShape(Shape),
    /// A corner or a side of its outline changed; only where it has corners.
    Outline(OutlineChange),
    /// Rows keep farther away, or less far.
    SetClear(Length),
    /// Shifted as a whole.
    Shift {
        /// How far east.
        east: Length,
        /// How far north.
        north: Length,
    },
}

/// Adds something in the way to a plot of the layout.
pub(super) fn add(
    layout: &Layout,
    plot: &mut Plot,
    name: Option<&str>,
    kind: ObstacleKind,
    shape: &Shape,
    clear: Length,
) -> Result<(), EditError> {
    plot.obstacles.push(Obstacle {
        id: ObstacleId(fresh_id(layout)?),
        name: name.map_or_else(|| layout.next_obstacle_name(kind), tidy),
        kind,
        shape: shape.clone(),
        clear,
    });
    Ok(())
}

/// Takes something in the way off a plot.
pub(super) fn remove(plot: &mut Plot, id: ObstacleId) -> Result<(), EditError> {
    let before = plot.obstacles.len();
    plot.obstacles.retain(|obstacle| obstacle.id != id);
    if plot.obstacles.len() == before {
        return Err(EditError::Gone(Item::Obstacle(plot.id, id)));
    }
    Ok(())
}

/// Changes something in the way.
pub(super) fn change(plot: &mut Plot, id: ObstacleId, change: &ObstacleChange) -> Result<(), EditError> {
    let gone = EditError::Gone(Item::Obstacle(plot.id, id));
    let obstacle = plot
        .obstacles
        .iter_mut()
        .find(|obstacle| obstacle.id == id)
        .ok_or(gone)?;
    match change {
        ObstacleChange::Rename(name) => obstacle.name = tidy(name),
        ObstacleChange::SetKind(kind) => obstacle.kind = *kind,
        ObstacleChange::SetShape(shape) => obstacle.shape = shape.clone(),
        ObstacleChange::Outline(change) => {
            let Shape::Corners(corners) = &obstacle.shape else {
                return Err(EditError::NoSuchCorner);
            };
            let about = Item::Obstacle(plot.id, id);
            obstacle.shape = Shape::Corners(outline::change(corners, *change, about, &obstacle.name)?);
        }
        ObstacleChange::SetClear(clear) => obstacle.clear = *clear,
        ObstacleChange::Shift { east, north } => obstacle.shape = shifted(&obstacle.shape, *east, *north),
    }
    Ok(())
}

/// A shape at another place.
pub(super) fn shifted(shape: &Shape, east: Length, north: Length) -> Shape {
    match shape {
        Shape::Corners(corners) => Shape::Corners(outline::shift(corners, east, north)),
        Shape::Circle { centre, radius } => Shape::Circle {
            centre: centre.offset(east, north),
            radius: *radius,
        },
    }
}
