//! Edits of the ground.

use std::sync::Arc;

use super::obstacle::{self, ObstacleChange};
use super::outline::OutlineChange;
use super::{EditError, fresh_id, outline, replace, sound, tidy};
use crate::geometry::Point;
use crate::geometry::polygon::{is_inside, nearest_on};
use crate::layout::bed::{Bed, BedGround};
use crate::layout::check::{check_bed, check_note, check_plot};
use crate::layout::document::{Layout, Note};
use crate::layout::ground::{ObstacleKind, Plot, Shape};
use crate::layout::ids::{ObstacleId, PlotId};
use crate::layout::item::Item;
use crate::quantity::Length;

/// One change to a plot.
#[derive(Clone, Debug, PartialEq)]
pub enum PlotChange {
    /// Another name.
    Rename(String),
    /// Another outline altogether.
    SetOutline(Vec<Point>),
    /// A corner or a side of the outline changed.
    Outline(OutlineChange),
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
        PlotChange::Outline(change) => {
            if let OutlineChange::MoveSide { side, outward } = *change {
                take_beds_along(layout, &plot, side, outward);
            }
            plot.outline = outline::change(&plot.outline, *change, Item::Plot(id), &plot.name)?;
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

/// Sides of beds that lie on a side of their plot go along when it moves, so that rows grow with the ground. A bed
/// that could not follow stays as it is.
fn take_beds_along(layout: &mut Layout, plot: &Plot, side: usize, outward: Length) {
    let n = plot.outline.len();
    let (Some(&from), Some(&to)) = (plot.outline.get(side), plot.outline.get((side + 1) % n.max(1))) else {
        return;
    };
    let lies_on = |corner: Point| nearest_on(from, to, corner).distance(corner) <= Length::TOLERANCE;
    for bed in layout.beds.iter_mut().filter(|bed| bed.plot == plot.id) {
        let BedGround::Corners(corners) = &bed.ground else {
            continue;
        };
        let sides = corners.iter().zip(corners.iter().cycle().skip(1));
        let touching = sides.map(|(&start, &end)| lies_on(start) && lies_on(end));
        let Some(on_it) = touching
            .enumerate()
            .find_map(|(index, touches)| touches.then_some(index))
        else {
            continue;
        };
        let moved = OutlineChange::MoveSide { side: on_it, outward };
        if let Ok(corners) = outline::change(corners, moved, Item::Bed(bed.id), &bed.name) {
            let ground = BedGround::Corners(corners);
            replace(
                bed,
                Bed {
                    ground,
                    ..bed.as_ref().clone()
                },
            );
        }
    }
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
        if is_inside([&plot.outline], slot.at) {
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
