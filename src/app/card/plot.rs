//! The card of a plot: its sides and corners, each with a measure that can be typed, and what stands on it.

use egui::{Id, RichText, Ui};

use super::{Hand, head, length_line, obstacle, remove};
use crate::app::command::Command;
use crate::app::form;
use crate::app::unit_field::unit_field;
use crate::geometry::{Point, polygon};
use crate::layout::{Edit, Item, Plot, PlotChange, PlotId};
use crate::quantity::{Length, Units};

/// Beyond this many corners the lists are cut, so that a walked boundary does not fill the card.
const MOST_LINES: usize = 40;

pub(super) fn show(ui: &mut Ui, hand: &mut Hand<'_>, id: PlotId) {
    let layout = hand.desk.layout();
    let units = layout.units;
    let Some(plot) = layout.plot(id) else { return };
    let field = Id::unique(("card of plot", id));
    let of_plan = hand
        .desk
        .plan()
        .plots
        .iter()
        .find(|of_plan| of_plan.plot == id)
        .cloned();
    let ground = of_plan.as_ref().map(|of_plan| of_plan.ground.as_ref());
    let what = match ground {
        Some(Ok(ground)) => format!("plot · {}", ground.area().show(units)),
        _ => "plot".to_owned(),
    };
    head(ui, &plot.name, &what);
    if let Some(Err(problem)) = ground {
        form::wrong(ui, problem);
    }
    let change = |hand: &mut Hand<'_>, change| hand.out.push(Command::Edit(Edit::Plot(id, change)));
    if let Some(name) = form::field(ui, field.with("name"), "Name", &plot.name, form::read_name) {
        change(hand, PlotChange::Rename(name));
    }
    form::section(ui, "Sides");
    form::follows(ui, "Type a length, and the neighbouring side gives way.");
    for side in 0..plot.outline.len().min(MOST_LINES) {
        let Some(length) = polygon::side_length(&plot.outline, side) else {
            continue;
        };
        let label = side_words(plot, side);
        if let Some(length) = length_line::long(ui, field.with(("side", side)), &label, length, units) {
            change(hand, PlotChange::SetSideLength { side, length });
        }
    }
    cut(ui, plot.outline.len());
    egui::CollapsingHeader::new(RichText::new("Corners").size(13.0)).show_unindented(ui, |ui| {
        if let Some((corner, to)) = corner_lines(ui, field, &plot.outline, units) {
            change(hand, PlotChange::MoveCorner { corner, to });
        }
    });
    form::section(ui, "Beds");
    for bed in layout.beds_of(id) {
        if form::list_line(ui, false, &bed.name, "").clicked() {
            hand.out.push(Command::Choose(Some(Item::Bed(bed.id))));
        }
    }
    if layout.beds_of(id).next().is_none() {
        form::follows(ui, "none yet");
    }
    form::section(ui, "In the way");
    for standing in &plot.obstacles {
        let note = obstacle::kind_words(standing.kind);
        if form::list_line(ui, false, &standing.name, note).clicked() {
            hand.out.push(Command::Choose(Some(Item::Obstacle(id, standing.id))));
        }
    }
    if plot.obstacles.is_empty() {
        form::follows(ui, "nothing");
    }
    if remove(ui, "plot") {
        hand.out.push(Command::Edit(Edit::RemovePlot(id)));
    }
}

fn cut(ui: &mut Ui, corners: usize) {
    if corners > MOST_LINES {
        form::follows(
            ui,
            format!("and {} more; choose them on the sheet", corners - MOST_LINES),
        );
    }
}

/// "Side 1, north".
fn side_words(plot: &Plot, side: usize) -> String {
    let bearing = polygon::side_bearing(&plot.outline, side);
    let way = bearing.map_or_else(String::new, |bearing| format!(", {}", bearing.compass_word()));
    format!("Side {}{way}", side + 1)
}

/// Two fields a corner: how far east and how far north. Gives back the corner that was typed and where it goes.
pub(super) fn corner_lines(ui: &mut Ui, field: Id, corners: &[Point], units: Units) -> Option<(usize, Point)> {
    form::follows(ui, "how far east and how far north of the sheet's zero");
    let mut moved = None;
    let mut wrong = None;
    for (index, corner) in corners.iter().enumerate().take(MOST_LINES) {
        let label = format!("Corner {}", index + 1);
        form::line(ui, &label, |ui| {
            let width = (ui.available_width() - ui.spacing().item_spacing.x) / 2.0 - 8.0;
            for (axis, value) in [("east", corner.x), ("north", corner.y)] {
                let shown = Length::metres(value).show(units);
                let read = |text: &str| Length::parse(text, units).map_err(|error| error.to_string());
                let reply = unit_field(ui, field.with(("corner", index, axis)), &shown, width, read);
                reply.response.accessible_name(format!("{label}, {axis}"));
                if let Some(length) = reply.accepted {
                    let to = match axis {
                        "east" => Point {
                            x: length.to_metres(),
                            y: corner.y,
                        },
                        _ => Point {
                            x: corner.x,
                            y: length.to_metres(),
                        },
                    };
                    moved = Some((index, to));
                }
                wrong = wrong.take().or(reply.wrong);
            }
        });
        if let Some(sentence) = wrong.take() {
            form::wrong(ui, &sentence);
        }
    }
    cut(ui, corners.len());
    moved
}
