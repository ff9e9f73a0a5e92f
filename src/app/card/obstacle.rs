//! The card of something in the way: what it is, how large, how far rows keep away.

use egui::{Id, Ui};

use super::{Hand, head, length_line, outline, remove};
use crate::app::command::Command;
use crate::app::form;
use crate::geometry::Point;
use crate::layout::{Edit, Item, ObstacleChange, ObstacleId, ObstacleKind, PlotChange, PlotId, Shape};
use crate::quantity::{Length, Units};

pub(super) fn show(ui: &mut Ui, hand: &mut Hand<'_>, plot_id: PlotId, id: ObstacleId) {
    let layout = hand.desk.layout();
    let units = layout.units;
    let Some(on) = layout.plot(plot_id) else { return };
    let Some(obstacle) = on.obstacle(id) else { return };
    let field = Id::unique(("card of obstacle", plot_id, id));
    head(
        ui,
        &obstacle.name,
        &format!("{} on {}", kind_words(obstacle.kind), on.name),
    );
    let mut change = |change: ObstacleChange| {
        hand.out
            .push(Command::Edit(Edit::Plot(plot_id, PlotChange::Obstacle(id, change))));
    };
    if let Some(name) = form::field(ui, field.with("name"), "Name", &obstacle.name, form::read_name) {
        change(ObstacleChange::Rename(name));
    }
    let all = ObstacleKind::ALL.map(|kind| (kind_words(kind), kind));
    if let Some(kind) = form::choices(ui, field.with("kind"), "What it is", kind_words(obstacle.kind), &all) {
        change(ObstacleChange::SetKind(kind));
    }
    if let Some(clear) = length_line::short(ui, field.with("clear"), "Keep clear", obstacle.clear, units) {
        change(ObstacleChange::SetClear(clear));
    }
    form::follows(ui, "rows keep this far away, all round");
    form::section(ui, "Size and place");
    if let Some(shape) = size(ui, field, &obstacle.shape, units) {
        change(shape);
    }
    if remove(ui, "obstacle") {
        hand.out.push(Command::Choose(Some(Item::Plot(plot_id))));
        hand.out
            .push(Command::Edit(Edit::Plot(plot_id, PlotChange::RemoveObstacle(id))));
    }
}

/// What it is, in words.
pub(super) const fn kind_words(kind: ObstacleKind) -> &'static str {
    match kind {
        ObstacleKind::Tree => "tree",
        ObstacleKind::Well => "well or standpipe",
        ObstacleKind::Building => "building",
        ObstacleKind::Other => "anything else in the way",
    }
}

/// Lines for size and place. Gives back what was typed.
fn size(ui: &mut Ui, field: Id, shape: &Shape, units: Units) -> Option<ObstacleChange> {
    match shape {
        Shape::Circle { centre, radius } => {
            let mut changed = None;
            if let Some(across) = length_line::long(ui, field.with("across"), "Across", *radius * 2.0, units) {
                changed = Some(Shape::Circle {
                    centre: *centre,
                    radius: across / 2.0,
                });
            }
            let east = Length::metres(centre.x);
            if let Some(east) = length_line::long(ui, field.with("east"), "East", east, units) {
                changed = Some(Shape::Circle {
                    centre: Point {
                        x: east.to_metres(),
                        y: centre.y,
                    },
                    radius: *radius,
                });
            }
            let north = Length::metres(centre.y);
            if let Some(north) = length_line::long(ui, field.with("north"), "North", north, units) {
                changed = Some(Shape::Circle {
                    centre: Point {
                        x: centre.x,
                        y: north.to_metres(),
                    },
                    radius: *radius,
                });
            }
            form::follows(ui, "its middle, from the sheet's zero");
            changed.map(ObstacleChange::SetShape)
        }
        Shape::Corners(corners) => outline::lines(ui, field, corners, units).map(ObstacleChange::Outline),
    }
}
