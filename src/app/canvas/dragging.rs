//! What becomes of the layout while something on the sheet is held and moved.

use egui::Pos2;

use super::around::around;
use super::drag_words::{radius_words, sides_at, way};
use super::guides::guides_for_corner;
use super::outline::{self, Outline, ends, outward};
use super::pick::{Grip, REACH};
use super::pointer_words::PointerWords;
use super::snap::{self, snap};
use super::turning;
use super::viewport::Viewport;
use crate::app::desk::Desk;
use crate::geometry::Point;
use crate::geometry::polygon::{nearest_on, side_bearing, side_length};
use crate::layout::{BedChange, BedId, Edit, Item, Layout, ObstacleChange, OutlineChange, PlotChange, Shape};
use crate::quantity::{Bearing, Length};

/// What the hand holds.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Held {
    /// A corner, a side, the edge of a circle or a thing as a whole.
    Grip(Grip),
    /// The needle of a bed, about its middle.
    Needle(BedId, Point),
    /// A row of a bed, pulled sideways.
    Row(BedId),
}

/// Something held and moved.
#[derive(Clone, Copy, Debug)]
pub(super) struct Drag {
    /// What is held.
    pub(super) held: Held,
    /// Where on the ground it was taken hold of.
    pub(super) from: Point,
    /// Where on the screen the pointer was last, and whether it moved freely: only what changes is shown anew.
    pub(super) last: Option<(Pos2, bool)>,
    /// Whether the layout shows what the hand does.
    pub(super) shown: bool,
}

/// The edit that a movement of the hand makes, and what is said at the pointer.
#[derive(Clone, Debug)]
pub(super) struct Moved {
    /// The change to the layout as of the last step.
    pub(super) edit: Edit,
    /// What is said.
    pub(super) words: PointerWords,
}

impl Drag {
    /// What the hand makes of the layout with the pointer there; `free` switches snapping off.
    pub(super) fn moved(&self, desk: &Desk, viewport: &Viewport, pointer: Pos2, free: bool) -> Option<Moved> {
        let to = viewport.to_ground(pointer);
        let layout = desk.settled();
        match self.held {
            Held::Grip(Grip::Corner(outline, corner)) => corner_moved(layout, viewport, outline, corner, to, free),
            Held::Grip(Grip::NewCorner(outline, side)) => corner_pulled_out(layout, viewport, outline, side, to, free),
            Held::Grip(Grip::Side(outline, side)) => side_moved(layout, viewport, outline, side, self.from, to, free),
            Held::Grip(Grip::Edge(item)) => edge_moved(layout, viewport, item, to, free),
            Held::Grip(Grip::Thing(item)) => thing_moved(layout, viewport, item, self.from, to, free),
            Held::Needle(bed, middle) => needle_turned(layout, viewport, bed, middle, self.from, to, free),
            Held::Row(bed) => row_pulled(desk, bed, self.from, to, free),
        }
    }

    /// The thing whose rows follow the hand.
    pub(super) const fn item(&self) -> Item {
        match self.held {
            Held::Grip(Grip::Corner(outline, _) | Grip::Side(outline, _) | Grip::NewCorner(outline, _)) => {
                outline.item()
            }
            Held::Grip(Grip::Edge(item) | Grip::Thing(item)) => item,
            Held::Needle(bed, _) | Held::Row(bed) => Item::Bed(bed),
        }
    }

    /// What is to be chosen once the hand lets go.
    pub(super) const fn chooses(&self) -> Option<Item> {
        match self.held {
            Held::Grip(Grip::NewCorner(outline, side)) => Some(outline.corner_item(side + 1)),
            Held::Grip(Grip::Corner(outline, corner)) => Some(outline.corner_item(corner)),
            Held::Grip(Grip::Thing(item)) => Some(item),
            Held::Grip(Grip::Side(..) | Grip::Edge(_)) | Held::Needle(..) | Held::Row(..) => None,
        }
    }
}

fn snapped(
    layout: &Layout,
    viewport: &Viewport,
    but: Item,
    ring: &[Point],
    corner: usize,
    to: Point,
    free: bool,
) -> snap::Snapped {
    if free {
        return snap::Snapped {
            at: to,
            why: String::new(),
        };
    }
    let origin = ring
        .get((corner + ring.len() - 1) % ring.len().max(1))
        .copied()
        .unwrap_or(to);
    let mut around = around(layout, Some(but), origin, viewport);
    around.guides = guides_for_corner(ring, corner);
    snap(to, &around)
}

fn corner_moved(
    layout: &Layout,
    viewport: &Viewport,
    outline: Outline,
    corner: usize,
    to: Point,
    free: bool,
) -> Option<Moved> {
    let ring = outline.ring(layout)?;
    let snapped = snapped(layout, viewport, outline.item(), ring, corner, to, free);
    let mut changed = ring.to_vec();
    *changed.get_mut(corner)? = snapped.at;
    let words = PointerWords::new(sides_at(&changed, corner, layout.units), snapped.why);
    Some(Moved {
        edit: outline.changed(OutlineChange::MoveCorner { corner, to: snapped.at }),
        words,
    })
}

fn corner_pulled_out(
    layout: &Layout,
    viewport: &Viewport,
    outline: Outline,
    side: usize,
    to: Point,
    free: bool,
) -> Option<Moved> {
    let mut ring = outline.ring(layout)?.to_vec();
    let (from, end) = ends(&ring, side)?;
    ring.insert(side + 1, nearest_on(from, end, to));
    let snapped = snapped(layout, viewport, outline.item(), &ring, side + 1, to, free);
    *ring.get_mut(side + 1)? = snapped.at;
    let words = PointerWords::new(sides_at(&ring, side + 1, layout.units), snapped.why);
    Some(Moved {
        edit: outline.changed(OutlineChange::InsertCorner { side, at: snapped.at }),
        words,
    })
}

fn side_moved(
    layout: &Layout,
    viewport: &Viewport,
    outline: Outline,
    side: usize,
    from: Point,
    to: Point,
    free: bool,
) -> Option<Moved> {
    let ring = outline.ring(layout)?;
    let (x, y) = outward(ring, side)?;
    let start = *ring.get(side)?;
    let off = |place: Point| (place.x - start.x) * x + (place.y - start.y) * y;
    let pulled = (to.x - from.x) * x + (to.y - from.y) * y;
    let (mut by, mut why) = (pulled, String::new());
    if !free {
        let around = around(layout, Some(outline.item()), start, viewport);
        let in_line = around
            .corners
            .iter()
            .map(|(corner, of)| (off(*corner), of))
            .filter(|(at, _)| (at - pulled).abs() <= around.reach)
            .min_by(|a, b| (a.0 - pulled).abs().total_cmp(&(b.0 - pulled).abs()));
        if let Some((at, of)) = in_line {
            by = at;
            why = format!("in line with a corner of {of}");
        } else if let Some(step) = around.step {
            // Whole steps of the side that gives way, so that typed and dragged sides agree.
            let before = (side + ring.len() - 1) % ring.len();
            let length = side_length(ring, before)?.to_metres();
            by = ((length + pulled) / step.metres).round() * step.metres - length;
            why = step.words.to_owned();
        }
    }
    let by = Length::metres(by);
    let said = if by.to_metres() < 0.0 { "in" } else { "out" };
    let mut bold = format!("{} {said}", by.abs().show(layout.units));
    let edit = outline.changed(OutlineChange::MoveSide { side, outward: by });
    if let Ok(changed) = layout.apply(&edit)
        && let Some(ring) = outline.ring(&changed)
        && let Some(length) = side_length(ring, (side + ring.len() - 1) % ring.len())
    {
        bold = format!("{} · {bold}", length.show(layout.units));
    }
    Some(Moved {
        edit,
        words: PointerWords::new(bold, why),
    })
}

fn edge_moved(layout: &Layout, viewport: &Viewport, item: Item, to: Point, free: bool) -> Option<Moved> {
    let Item::Obstacle(plot, obstacle) = item else {
        return None;
    };
    let Shape::Circle { centre, .. } = &layout.plot(plot)?.obstacle(obstacle)?.shape else {
        return None;
    };
    let (radius, why) = radius(*centre, to, layout, viewport, free);
    let shape = Shape::Circle {
        centre: *centre,
        radius,
    };
    let edit = Edit::Plot(plot, PlotChange::Obstacle(obstacle, ObstacleChange::SetShape(shape)));
    Some(Moved {
        edit,
        words: PointerWords::new(radius_words(radius, layout.units), why),
    })
}

/// The radius of a circle pulled out to a place, in whole steps unless `free`, and why.
pub(super) fn radius(centre: Point, to: Point, layout: &Layout, viewport: &Viewport, free: bool) -> (Length, String) {
    let metres = centre.distance(to).to_metres();
    match around(layout, None, centre, viewport).step.filter(|_| !free) {
        Some(step) => {
            let steps = (metres / step.metres).round().max(1.0);
            (Length::metres(steps * step.metres), step.words.to_owned())
        }
        None => (Length::metres(metres.max(Length::TOLERANCE.to_metres())), String::new()),
    }
}

fn thing_moved(layout: &Layout, viewport: &Viewport, item: Item, from: Point, to: Point, free: bool) -> Option<Moved> {
    let reference = reference(layout, item, from)?;
    let wanted = Point::metres(reference.x + to.x - from.x, reference.y + to.y - from.y);
    let (at, why) = if free {
        (wanted, String::new())
    } else {
        let snapped = snap(wanted, &around(layout, Some(item), reference, viewport));
        (snapped.at, snapped.why)
    };
    let (east, north) = (Length::metres(at.x - reference.x), Length::metres(at.y - reference.y));
    let edit = outline::shift(item, layout, east, north)?;
    Some(Moved {
        edit,
        words: PointerWords::new(way(east, north, layout.units), why),
    })
}

/// The place of a thing that is drawn to others: the corner nearest to the hand, or its middle.
fn reference(layout: &Layout, item: Item, hand: Point) -> Option<Point> {
    if let Some(ring) = Outline::of(item, layout).and_then(|outline| outline.ring(layout)) {
        return ring
            .iter()
            .copied()
            .min_by(|a, b| a.distance(hand).to_metres().total_cmp(&b.distance(hand).to_metres()));
    }
    match item {
        Item::Obstacle(plot, obstacle) => match &layout.plot(plot)?.obstacle(obstacle)?.shape {
            Shape::Circle { centre, .. } => Some(*centre),
            Shape::Corners(_) => None,
        },
        Item::Note(note) => Some(layout.note(note)?.at),
        _ => None,
    }
}

fn needle_turned(
    layout: &Layout,
    viewport: &Viewport,
    id: BedId,
    middle: Point,
    from: Point,
    to: Point,
    free: bool,
) -> Option<Moved> {
    let bed = layout.bed(id)?;
    let (east, north) = snap::unit(middle, to)?;
    let towards = east.atan2(north).to_degrees();
    // Taken by its tip, its tail or anywhere between, the needle turns with the hand; taken by its middle it points
    // to the hand.
    let taken_at = snap::unit(middle, from).filter(|_| middle.distance(from).to_metres() > viewport.metres(REACH));
    let degrees = match taken_at {
        Some((east, north)) => bed.bearing.to_degrees() + towards - east.atan2(north).to_degrees(),
        None => towards,
    };
    let turned = if free {
        turning::Turned {
            bearing: Bearing::degrees((degrees * 10.0).round() / 10.0),
            why: "",
        }
    } else {
        turning::turn(degrees, &side_bearings(layout, id))
    };
    let words = PointerWords::new(turning::words(turned.bearing), turned.why);
    Some(Moved {
        edit: Edit::Bed(id, BedChange::SetBearing(turned.bearing)),
        words,
    })
}

/// The directions of the sides that the rows of a bed may keep to: its own and its plot's.
fn side_bearings(layout: &Layout, id: BedId) -> Vec<Bearing> {
    /// A walked outline has a direction for every step: no help to anyone.
    const MOST: usize = 24;
    let Some(bed) = layout.bed(id) else { return Vec::new() };
    [Outline::Bed(id), Outline::Plot(bed.plot)]
        .into_iter()
        .filter_map(|outline| outline.ring(layout))
        .filter(|ring| ring.len() <= MOST)
        .flat_map(|ring| (0..ring.len()).filter_map(|side| side_bearing(ring, side)))
        .collect()
}

fn row_pulled(desk: &Desk, id: BedId, from: Point, to: Point, free: bool) -> Option<Moved> {
    let layout = desk.settled();
    let bed = layout.bed(id)?;
    let (east, north) = bed.bearing.right().unit();
    let pulled = Length::metres((to.x - from.x) * east + (to.y - from.y) * north);
    let across = from.x * east + from.y * north;
    // Where the row stood when it was taken hold of: the ground does not change while rows are pulled.
    let (left, right) = desk.plan().bed(id)?.rows_ground.extent_across(bed.bearing)?;
    let left_of_middle = across < (left + right).to_metres() / 2.0;
    let spacing = turning::pull(
        bed.row_spacing,
        pulled,
        bed.remainder,
        left_of_middle,
        layout.units,
        free,
    );
    let edit = Edit::Bed(id, BedChange::SetRowSpacing(spacing));
    Some(Moved {
        edit,
        words: PointerWords::new(
            format!("{} between rows", spacing.show_short(layout.units)),
            String::new(),
        ),
    })
}

/// Whether the hand has moved far enough from where it pressed to mean a drag.
pub(super) fn is_drag(origin: Pos2, now: Pos2) -> bool {
    origin.distance(now) > REACH - 2.0
}
