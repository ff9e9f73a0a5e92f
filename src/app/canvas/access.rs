//! The things on the sheet as a screen reader and the Tab key find them: each a box with a name.

use egui::{EventFilter, Id, Key, Rect, Role, Sense, Ui, Vec2, WidgetInfo};

use super::viewport::Viewport;
use crate::app::command::Command;
use crate::app::desk::Desk;
use crate::geometry::Bounds;
use crate::geometry::Point;
use crate::layout::{Item, Shape};
use crate::quantity::{Area, Units, count};

/// More rows in sight than this are named one by one in the ledger only.
const MOST_ROWS: usize = 200;
/// More plots, beds and obstacles in sight than this are named in the lists only.
const MOST_THINGS: usize = 400;

/// Gives every thing in sight a box with a name. A thing that the keyboard comes to is lit, Enter or Space chooses it.
pub(super) fn name_things(ui: &Ui, desk: &Desk, viewport: &Viewport, out: &mut Vec<Command>) {
    for (item, place, name) in things(desk, viewport) {
        let id = ui.scope_id().with(("thing", item));
        let response = ui.interact(place, id, Sense::focusable_noninteractive());
        response.widget_info(|| WidgetInfo::selected(Role::Button, true, desk.chosen == Some(item), name.clone()));
        if response.gained_focus() && desk.pointed != Some(item) {
            out.push(Command::PointAt(Some(item)));
        }
        let asked = ui.input(|input| input.has_accesskit_action_request(id, egui::accesskit::Action::Click))
            || (response.has_focus()
                && ui.input(|input| input.key_pressed(Key::Enter) || input.key_pressed(Key::Space)));
        if asked {
            out.push(Command::Choose(Some(item)));
        }
        if response.has_focus() {
            keep_arrows(ui, id);
            let stroke = egui::Stroke::new(1.5, ui.visuals().selection.stroke.color);
            ui.painter()
                .rect_stroke(place.expand(2.0), 3, stroke, egui::StrokeKind::Outside);
        }
    }
}

/// Arrow keys move what is chosen; they must not wander off to the next thing in that direction.
pub(super) fn keep_arrows(ui: &Ui, id: Id) {
    let filter = EventFilter {
        tab: false,
        horizontal_arrows: true,
        vertical_arrows: true,
        escape: false,
    };
    ui.memory_mut(|memory| memory.set_focus_lock_filter(id, filter));
}

fn things(desk: &Desk, viewport: &Viewport) -> Vec<(Item, Rect, String)> {
    let layout = desk.layout();
    let units = layout.units;
    let seen = viewport.visible();
    let mut things = Vec::new();
    let mut add = |item: Item, bounds: Option<Bounds>, name: String| {
        if let Some(place) = bounds
            .filter(|bounds| bounds.overlaps(seen))
            .map(|bounds| box_of(bounds, viewport))
            && things.len() < MOST_THINGS
        {
            things.push((item, place, name));
        }
    };
    for plot in &layout.plots {
        let bounds = Bounds::of(&plot.outline);
        let size = crate::geometry::polygon::signed_area(&plot.outline).abs();
        add(
            Item::Plot(plot.id),
            bounds,
            format!("Plot {}, {}", plot.name, size.show(units)),
        );
        for obstacle in &plot.obstacles {
            let bounds = match &obstacle.shape {
                Shape::Circle { centre, radius } => {
                    Some(Bounds::about(*centre, radius.to_metres(), radius.to_metres()))
                }
                Shape::Corners(ring) => Bounds::of(ring),
            };
            add(
                Item::Obstacle(plot.id, obstacle.id),
                bounds,
                format!("{} in {}", obstacle.name, plot.name),
            );
        }
    }
    for note in &layout.notes {
        let reach = viewport.metres(10.0);
        add(
            Item::Note(note.id),
            Some(Bounds::about(note.at, reach, reach)),
            format!("Note {}", note.text),
        );
    }
    for bed in &layout.beds {
        let Some(plan) = desk.plan().bed(bed.id) else { continue };
        let bounds = plan.ground.bounds();
        add(
            Item::Bed(bed.id),
            bounds,
            bed_name(&bed.name, plan.area, plan.totals.rows, units),
        );
    }
    things.extend(rows(desk, viewport));
    things
}

fn bed_name(name: &str, area: Area, rows: u64, units: Units) -> String {
    let rows = if rows == 1 {
        "1 row".to_owned()
    } else {
        format!("{} rows", count(rows))
    };
    format!("Bed {name}, {}, {rows}", area.show(units))
}

/// The rows in sight, if they are few enough to be listened to.
fn rows(desk: &Desk, viewport: &Viewport) -> Vec<(Item, Rect, String)> {
    let layout = desk.layout();
    let in_sight = viewport.visible();
    let mut found = Vec::new();
    let mut named = 0;
    for bed in &layout.beds {
        let Some(plan) = desk.plan().bed(bed.id) else { continue };
        if !plan.ground.bounds().is_some_and(|bounds| bounds.meets(in_sight)) {
            continue;
        }
        let range = plan.fit.rows_in(in_sight);
        named += range.len();
        if named > MOST_ROWS {
            return Vec::new();
        }
        for row in plan.rows.get(range).unwrap_or_default() {
            let pieces = plan.pieces_of(row);
            let (Some(first), Some(last)) = (pieces.first(), pieces.last()) else {
                continue;
            };
            let Some(bounds) = Bounds::of([first.start, last.end]) else {
                continue;
            };
            let (length, plants) = (row.length.show(layout.units), count(row.plants));
            let plants = match row.plants {
                0 => String::new(),
                1 => ", 1 plant".to_owned(),
                _ => format!(", {plants} plants"),
            };
            let name = format!("Row {} of {}, {length}{plants}", row.number, bed.name);
            found.push((Item::Row(bed.id, row.number), box_of(bounds, viewport), name));
        }
    }
    found
}

/// The box of a thing on the screen, at least a few points wide and no larger than the sheet.
fn box_of(bounds: Bounds, viewport: &Viewport) -> Rect {
    let place = Rect::from_two_pos(viewport.to_screen(bounds.min), viewport.to_screen(bounds.max));
    let grown = Rect::from_center_size(place.center(), place.size().max(Vec2::splat(6.0)));
    let seen = grown.intersect(viewport.screen());
    if seen.is_positive() {
        seen
    } else {
        Rect::from_center_size(place.center(), Vec2::splat(1.0))
    }
}

/// The box of ground that a thing takes, to bring it into view.
pub(super) fn bounds_of(desk: &Desk, item: Item) -> Option<Bounds> {
    let layout = desk.layout();
    let around = |at: Point| Some(Bounds::about(at, 3.0, 3.0));
    match item {
        Item::Layout => crate::sheets::drawing::extent(layout),
        Item::Plot(plot) | Item::Side(plot, _) => Bounds::of(&layout.plot(plot)?.outline),
        Item::Corner(plot, corner) => around(*layout.plot(plot)?.outline.get(corner)?),
        Item::Obstacle(plot, obstacle) => match &layout.plot(plot)?.obstacle(obstacle)?.shape {
            Shape::Circle { centre, radius } => Some(Bounds::about(*centre, radius.to_metres(), radius.to_metres())),
            Shape::Corners(ring) => Bounds::of(ring),
        },
        Item::Bed(bed) | Item::BedCorner(bed, _) | Item::Dressing(bed, _) => desk.plan().bed(bed)?.ground.bounds(),
        Item::Row(bed, number) => {
            let plan = desk.plan().bed(bed)?;
            let pieces = plan.pieces_of(plan.row(number)?);
            Bounds::of(pieces.iter().flat_map(|piece| [piece.start, piece.end]))
        }
        Item::Note(note) => around(layout.note(note)?.at),
        Item::Lot(_) | Item::Shed(_) => None,
    }
}
