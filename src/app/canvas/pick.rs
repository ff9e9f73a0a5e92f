//! What is under the pointer.

use egui::{Pos2, Rect};

use super::outline::{Outline, sides};
use super::viewport::Viewport;
use crate::app::desk::Desk;
use crate::app::step::Step;
use crate::geometry::Point;
use crate::geometry::polygon::{self, nearest_on};
use crate::layout::{Bed, BedGround, Item, Layout, Obstacle, Plot, Shape};
use crate::plan::BedPlan;
use crate::quantity::Length;

/// How near the pointer must come to a thing, in points.
pub(super) const REACH: f32 = 6.0;
/// A corner or a side of what is chosen has handles while it is at least so long, in points.
const LONG_ENOUGH: f32 = 16.0;
/// Sides this short have no handle in their middle: it would lie on the corners.
const LONG_ENOUGH_FOR_NEW: f32 = 44.0;
/// Rows that lie closer than this are not told apart by the hand, in points.
const ROWS_APART: f64 = 5.0;
/// Outlines of more corners than this have handles only where the pointer is: see [`Grip`].
pub(super) const MOST_HANDLES: usize = 400;

/// What the hand would take hold of.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Grip {
    /// A corner of what is chosen.
    Corner(Outline, usize),
    /// A side of what is chosen.
    Side(Outline, usize),
    /// The middle of a side of what is chosen: pulled out, it becomes a corner.
    NewCorner(Outline, usize),
    /// The edge of a chosen circle.
    Edge(Item),
    /// A thing as a whole.
    Thing(Item),
}

impl Grip {
    /// What a click there chooses.
    pub(super) const fn item(self) -> Item {
        match self {
            Self::Corner(outline, corner) => outline.corner_item(corner),
            Self::Side(outline, side) | Self::NewCorner(outline, side) => outline.side_item(side),
            Self::Edge(item) | Self::Thing(item) => item,
        }
    }
}

/// What is under a place of the screen. `notes` are the boxes of the words of notes.
pub(super) fn pick(desk: &Desk, viewport: &Viewport, at: Pos2, notes: &[(Item, Rect)]) -> Option<Grip> {
    let layout = desk.layout();
    if let Some(grip) = desk.chosen.and_then(|chosen| handle(chosen, layout, viewport, at)) {
        return Some(grip);
    }
    let note = notes.iter().rev().find(|(_, rect)| rect.expand(2.0).contains(at));
    if let Some((note, _)) = note {
        return Some(Grip::Thing(*note));
    }
    let place = viewport.to_ground(at);
    let reach = viewport.metres(REACH);
    if let Some(item) = obstacle_at(layout, place, reach) {
        return Some(Grip::Thing(item));
    }
    if desk.step != Step::Ground
        && let Some(row) = row_at(desk, viewport, place)
    {
        return Some(Grip::Thing(row));
    }
    let bed = bed_at(desk, place);
    let plot = plot_at(layout, place, reach);
    let item = match (bed, plot) {
        (Some(bed), Some(plot)) => Some(bed_or_plot(desk, bed, plot, place, reach)),
        (Some(bed), None) => Some(Item::Bed(bed.id)),
        (None, Some(plot)) => Some(Item::Plot(plot.id)),
        (None, None) => None,
    };
    item.map(Grip::Thing)
}

/// On the ground, a bed that fills its plot lies under it: the first click is for the plot, the next for the bed.
/// In the steps that are about rows it is the other way round, but for the outline, which is the plot's.
fn bed_or_plot(desk: &Desk, bed: &Bed, plot: &Plot, place: Point, reach: f64) -> Item {
    let own_outline = bed.ground != BedGround::WholePlot;
    if own_outline {
        return Item::Bed(bed.id);
    }
    let on_edge =
        polygon::nearest_place(&plot.outline, place).is_some_and(|(_, edge)| edge.distance(place).to_metres() <= reach);
    let plot_is_chosen =
        matches!(desk.chosen, Some(Item::Plot(id) | Item::Corner(id, _) | Item::Side(id, _)) if id == plot.id);
    let plot_first = if desk.step == Step::Ground {
        !plot_is_chosen
    } else {
        false
    };
    if on_edge || plot_first {
        Item::Plot(plot.id)
    } else {
        Item::Bed(bed.id)
    }
}

/// The handle of a chosen thing that is under the pointer: corners before new corners before sides.
fn handle(chosen: Item, layout: &Layout, viewport: &Viewport, at: Pos2) -> Option<Grip> {
    if let Item::Obstacle(plot, obstacle) = chosen
        && let Shape::Circle { centre, radius } = &layout.plot(plot)?.obstacle(obstacle)?.shape
    {
        let points = (radius.to_metres() * viewport.points_per_metre()) as f32;
        let off = viewport.to_screen(*centre).distance(at);
        let near = (off - points).abs() <= REACH && points > LONG_ENOUGH / 2.0;
        return near.then_some(Grip::Edge(chosen));
    }
    let outline = Outline::of(chosen, layout)?;
    let ring = outline.ring(layout)?;
    let nearest_corner = ring
        .iter()
        .enumerate()
        .map(|(corner, place)| (viewport.to_screen(*place).distance(at), corner))
        .min_by(|a, b| a.0.total_cmp(&b.0))?;
    if nearest_corner.0 <= REACH + 2.0 {
        return Some(Grip::Corner(outline, nearest_corner.1));
    }
    let place = viewport.to_ground(at);
    let (off, side, from, to) = sides(ring)
        .map(|(side, from, to)| (nearest_on(from, to, place).distance(place), side, from, to))
        .min_by(|a, b| a.0.to_metres().total_cmp(&b.0.to_metres()))?;
    if off.to_metres() > viewport.metres(REACH) {
        return None;
    }
    let (from, to) = (viewport.to_screen(from), viewport.to_screen(to));
    if has_new_corner(from, to) && (from + (to - from) / 2.0).distance(at) <= REACH + 1.0 {
        return Some(Grip::NewCorner(outline, side));
    }
    (from.distance(to) > LONG_ENOUGH).then_some(Grip::Side(outline, side))
}

/// Whether a side is long enough on the screen for a handle in its middle.
pub(super) fn has_new_corner(from: Pos2, to: Pos2) -> bool {
    from.distance(to) > LONG_ENOUGH_FOR_NEW
}

fn obstacle_at(layout: &Layout, place: Point, reach: f64) -> Option<Item> {
    layout.plots.iter().rev().find_map(|plot| {
        let obstacle = plot
            .obstacles
            .iter()
            .rev()
            .find(|obstacle| covers(obstacle, place, reach))?;
        Some(Item::Obstacle(plot.id, obstacle.id))
    })
}

fn covers(obstacle: &Obstacle, place: Point, reach: f64) -> bool {
    match &obstacle.shape {
        Shape::Circle { centre, radius } => centre.distance(place).to_metres() <= radius.to_metres().max(reach),
        Shape::Corners(ring) => {
            polygon::is_inside([ring], place)
                || polygon::nearest_place(ring, place)
                    .is_some_and(|(_, edge)| edge.distance(place).to_metres() <= reach / 2.0)
        }
    }
}

fn plot_at(layout: &Layout, place: Point, reach: f64) -> Option<&Plot> {
    layout
        .plots
        .iter()
        .rev()
        .find(|plot| {
            polygon::is_inside([&plot.outline], place)
                || polygon::nearest_place(&plot.outline, place)
                    .is_some_and(|(_, edge)| edge.distance(place).to_metres() <= reach)
        })
        .map(AsRef::as_ref)
}

/// The bed whose ground is at a place; of beds that overlap, the one listed last, as it is drawn on top.
fn bed_at(desk: &Desk, place: Point) -> Option<&Bed> {
    let plan = desk.plan();
    desk.layout()
        .beds
        .iter()
        .rev()
        .find(|bed| plan.bed(bed.id).is_some_and(|plan| is_ground(plan, place)))
        .map(AsRef::as_ref)
}

fn is_ground(plan: &BedPlan, place: Point) -> bool {
    plan.ground.bounds().is_some_and(|bounds| {
        (bounds.min.x..=bounds.max.x).contains(&place.x) && (bounds.min.y..=bounds.max.y).contains(&place.y)
    }) && plan.ground.contains(place)
}

/// The row at a place, found by two searches however many rows there are.
pub(super) fn row_at(desk: &Desk, viewport: &Viewport, place: Point) -> Option<Item> {
    let reach = viewport.metres(REACH);
    desk.layout().beds.iter().rev().find_map(|bed| {
        if bed.row_spacing.to_metres() * viewport.points_per_metre() < ROWS_APART {
            return None;
        }
        let plan = desk.plan().bed(bed.id)?;
        let number = nearest_row(plan, bed, place, reach)?;
        Some(Item::Row(bed.id, number))
    })
}

fn nearest_row(plan: &BedPlan, bed: &Bed, place: Point, reach: f64) -> Option<u32> {
    let (east, north) = bed.bearing.unit();
    let along = place.x * east + place.y * north;
    let across = place.x * north - place.y * east;
    let (low, high) = (Length::metres(across - reach), Length::metres(across + reach));
    let index = plan
        .fit
        .rows_between(low, high)
        .filter_map(|index| plan.fit.row(index).map(|row| (index, row)))
        .filter(|(_, row)| {
            row.pieces_between(Length::metres(along - reach), Length::metres(along + reach))
                .next()
                .is_some()
        })
        .min_by(|(_, a), (_, b)| {
            let off = |row: &crate::geometry::Row| (row.across.to_metres() - across).abs();
            off(a).total_cmp(&off(b))
        })
        .map(|(index, _)| index)?;
    plan.rows.get(index).map(|row| row.number)
}
