//! The card of a plot: its sides and corners, each with a measure that can be typed, and what stands on it.

use egui::{Id, Ui};

use super::{Hand, head, obstacle, outline, remove};
use crate::app::command::Command;
use crate::app::form;
use crate::layout::{Edit, Item, PlotChange, PlotId};

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
    if let Some(outline) = outline::lines(ui, field, &plot.outline, units) {
        change(hand, PlotChange::Outline(outline));
    }
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
