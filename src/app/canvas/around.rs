//! What of a layout a place may be drawn to while something is drawn or dragged.

use super::outline::{Outline, sides};
use super::pick::REACH;
use super::snap::{Around, Side, step_of_at_least};
use super::viewport::Viewport;
use crate::geometry::Point;
use crate::geometry::polygon::side_bearing;
use crate::layout::{Item, Layout, Shape};

/// Steps of the grid are at least so many points apart: closer, the hand could not choose between them.
const CLOSEST_STEPS: f32 = 5.0;
/// More sides than this are not offered: those beyond are too many to be meant.
const MOST_SIDES: usize = 20_000;

/// Everything in a layout but one thing, with whole steps counted from `origin`.
pub(super) fn around(layout: &Layout, but: Option<Item>, origin: Point, viewport: &Viewport) -> Around {
    let mut around = Around {
        origin,
        step: step_of_at_least(viewport.metres(CLOSEST_STEPS), layout.units),
        reach: viewport.metres(REACH + 1.0),
        ..Around::default()
    };
    for plot in &layout.plots {
        if but != Some(Item::Plot(plot.id)) {
            include(Outline::Plot(plot.id), layout, &mut around);
        }
        for obstacle in &plot.obstacles {
            let item = Item::Obstacle(plot.id, obstacle.id);
            if but == Some(item) || but == Some(Item::Plot(plot.id)) {
                continue;
            }
            match &obstacle.shape {
                Shape::Corners(_) => include(Outline::Obstacle(plot.id, obstacle.id), layout, &mut around),
                Shape::Circle { centre, .. } => around.corners.push((*centre, obstacle.name.clone())),
            }
        }
    }
    for bed in &layout.beds {
        if but != Some(Item::Bed(bed.id)) && but != Some(Item::Plot(bed.plot)) {
            include(Outline::Bed(bed.id), layout, &mut around);
        }
    }
    around
}

fn include(outline: Outline, layout: &Layout, around: &mut Around) {
    let Some(ring) = outline.ring(layout) else { return };
    if around.sides.len() + ring.len() > MOST_SIDES {
        return;
    }
    let name = outline.name(layout);
    around
        .corners
        .extend(ring.iter().map(|corner| (*corner, name.to_owned())));
    around.sides.extend(sides(ring).map(|(_, from, to)| Side {
        from,
        to,
        of: name.to_owned(),
    }));
}

/// The directions of a ring's sides, each once, none of them along north or east: those are always offered.
pub(super) fn directions(ring: &[Point]) -> Vec<(f64, f64)> {
    /// A walked outline has a direction for every step: no help to anyone.
    const MOST: usize = 12;
    let mut found: Vec<(f64, f64)> = Vec::new();
    for side in 0..ring.len().min(MOST) {
        let Some(bearing) = side_bearing(ring, side) else {
            continue;
        };
        let along = bearing.unit();
        let is_new = found.iter().all(|other| sine(*other, along) > SAME);
        if is_new && along.0.abs() > SAME && along.1.abs() > SAME {
            found.push(along);
        }
    }
    found
}

/// Directions that differ by less than this sine, a twentieth of a degree, are one.
const SAME: f64 = 1e-3;

fn sine(a: (f64, f64), b: (f64, f64)) -> f64 {
    (a.0 * b.1 - a.1 * b.0).abs()
}
