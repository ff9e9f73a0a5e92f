//! Edits of the ground.

use std::sync::Arc;

use super::obstacle::{self, ObstacleChange};
use super::{EditError, fresh_id, outline, replace, sound, tidy};
use crate::geometry::Point;
use crate::layout::Problem;
use crate::layout::bed::{Bed, BedGround};
use crate::layout::check::{check_bed, check_note, check_plot};
use crate::layout::document::{Layout, Note};
use crate::layout::ground::{ObstacleKind, Plot, Shape};
use crate::layout::ids::{ObstacleId, PlotId};
use crate::layout::item::Item;
use crate::layout::limits;
use crate::quantity::Length;

/// One change to a plot.
#[derive(Clone, Debug, PartialEq)]
pub enum PlotChange {
    /// Another name.
    Rename(String),
    /// Another outline altogether.
    SetOutline(Vec<Point>),
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
    /// The whole plot shifted, with what stands on it, its beds and the notes inside it.
    Shift {
        /// How far east.
        east: Length,
        /// How far north.
        north: Length,
    },
    /// Something new in the way.
    AddObstacle {
        /// What the grower calls it.
        name: Option<String>,
        /// What it is.
        kind: ObstacleKind,
        /// Where it stands.
        shape: Shape,
        /// How far rows keep away from it.
        clear: Length,
    },
    /// Something in the way taken away.
    RemoveObstacle(ObstacleId),
    /// Something in the way changed.
    Obstacle(ObstacleId, ObstacleChange),
}

/// Adds a plot and gives its id.
pub(super) fn add(layout: &mut Layout, name: Option<&str>, outline: &[Point]) -> Result<PlotId, EditError> {
    let id = PlotId(fresh_id(layout)?);
    let plot = Plot {
        id,
        name: name.map_or_else(|| layout.next_plot_name(), tidy),
        outline: outline.to_vec(),
        obstacles: Vec::new(),
    };
    sound(check_plot(&plot))?;
    layout.plots.push(Arc::new(plot));
    Ok(id)
}

/// Takes a plot away with its beds.
pub(super) fn remove(layout: &mut Layout, id: PlotId) -> Result<(), EditError> {
    if layout.plot(id).is_none() {
        return Err(EditError::Gone(Item::Plot(id)));
    }
    layout.plots.retain(|plot| plot.id != id);
    layout.beds.retain(|bed| bed.plot != id);
    Ok(())
}

/// Changes a plot.
pub(super) fn change(layout: &mut Layout, id: PlotId, change: &PlotChange) -> Result<(), EditError> {
    let mut plot = layout.plot(id).ok_or(EditError::Gone(Item::Plot(id)))?.as_ref().clone();
    match change {
        PlotChange::Rename(name) => plot.name = tidy(name),
        PlotChange::SetOutline(corners) => plot.outline.clone_from(corners),
        PlotChange::MoveCorner { corner, to } => {
            plot.outline = outline::move_corner(&plot.outline, *corner, *to)?;
        }
        PlotChange::InsertCorner { side, at } => {
            plot.outline = outline::insert_corner(&plot.outline, *side, *at)?;
        }
        PlotChange::RemoveCorner { corner } => {
            plot.outline = outline::remove_corner(&plot.outline, *corner)?;
        }
        PlotChange::MoveSide { side, outward } => {
            accept(&plot, limits::distance("the way a side moves", *outward))?;
            plot.outline = outline::move_side(&plot.outline, *side, *outward)?;
        }
        PlotChange::SetSideLength { side, length } => {
            accept(&plot, limits::spacing("the length of a side", *length))?;
            plot.outline = outline::set_side_length(&plot.outline, *side, *length)?;
        }
        PlotChange::Shift { east, north } => return shift(layout, &plot, *east, *north),
        PlotChange::AddObstacle {
            name,
            kind,
            shape,
            clear,
        } => obstacle::add(layout, &mut plot, name.as_deref(), *kind, shape, *clear)?,
        PlotChange::RemoveObstacle(obstacle) => obstacle::remove(&mut plot, *obstacle)?,
        PlotChange::Obstacle(obstacle, change) => obstacle::change(&mut plot, *obstacle, change)?,
    }
    put(layout, plot)
}

/// Shifts a plot with all that lies on it.
fn shift(layout: &mut Layout, plot: &Plot, east: Length, north: Length) -> Result<(), EditError> {
    let mut moved = plot.clone();
    moved.outline = outline::shift(&plot.outline, east, north);
    for obstacle in &mut moved.obstacles {
        obstacle.shape = obstacle::shifted(&obstacle.shape, east, north);
    }
    for slot in layout.beds.iter_mut().filter(|bed| bed.plot == plot.id) {
        if let BedGround::Corners(corners) = &slot.ground {
            let bed = Bed {
                ground: BedGround::Corners(outline::shift(corners, east, north)),
                ..slot.as_ref().clone()
            };
            sound(check_bed(&bed))?;
            replace(slot, bed);
        }
    }
    for slot in &mut layout.notes {
        if outline::covers(&plot.outline, slot.at) {
            let note = Note {
                at: slot.at.offset(east, north),
                ..slot.as_ref().clone()
            };
            sound(check_note(&note))?;
            replace(slot, note);
        }
    }
    put(layout, moved)
}

/// Puts a changed plot in its place, if it can stand.
fn put(layout: &mut Layout, plot: Plot) -> Result<(), EditError> {
    sound(check_plot(&plot))?;
    if let Some(slot) = layout.plots.iter_mut().find(|slot| slot.id == plot.id) {
        replace(slot, plot);
    }
    Ok(())
}

/// Refuses a value that is not kept in the plot itself.
fn accept(plot: &Plot, value: Result<(), limits::ValueError>) -> Result<(), EditError> {
    value.map_err(|error| EditError::Refused(Problem::of_value(Item::Plot(plot.id), &plot.name, &error)))
}
