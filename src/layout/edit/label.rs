//! The name of a step, as undo shows it: "turn rows of Corn block".

use std::sync::Arc;

use super::{BedChange, Edit, ObstacleChange, OutlineChange, PlotChange};
use crate::layout::bed::Bed;
use crate::layout::document::Layout;
use crate::layout::ground::Plot;
use crate::layout::ids::{BedId, DressingId, ObstacleId, PlotId};

impl Edit {
    /// The name of the step, in a few words that start with what was done. `layout` is the one that the edit is
    /// applied to: things are called by the names they have there.
    pub fn label(&self, layout: &Layout) -> String {
        match self {
            Self::SetName(_) => "rename the layout".to_owned(),
            Self::SetSeason(_) => "set the season".to_owned(),
            Self::SetUnits(_) => "change units".to_owned(),
            Self::SetPlace(Some(_)) => "set the place".to_owned(),
            Self::SetPlace(None) => "clear the place".to_owned(),
            Self::AddPlot { name, .. } | Self::AddPlotWithBed { name, .. } => {
                let name = name.clone().unwrap_or_else(|| layout.next_plot_name());
                format!("add {}", name.trim())
            }
            Self::RemovePlot(id) => format!("remove {}", plot_name(layout.plot(*id))),
            Self::Plot(id, change) => plot_label(layout, *id, change),
            Self::AddBed { name, .. } => {
                let name = name.clone().unwrap_or_else(|| layout.next_bed_name());
                format!("add {}", name.trim())
            }
            Self::FillPlot(id) => format!("fill {}", plot_name(layout.plot(*id))),
            Self::RemoveBed(id) => format!("remove {}", bed_name(layout.bed(*id))),
            Self::SplitBed { bed, .. } => format!("split {}", bed_name(layout.bed(*bed))),
            Self::Bed(id, change) => bed_label(layout, *id, change),
            Self::AddNote { .. } => "add a note".to_owned(),
            Self::MoveNote { .. } => "move a note".to_owned(),
            Self::SetNoteText { .. } => "reword a note".to_owned(),
            Self::RemoveNote(_) => "remove a note".to_owned(),
            Self::Seed(edit) => edit.label(layout),
            Self::Shed(edit) => edit.label(layout),
            Self::SetOrganic(true) => "keep within organic rules".to_owned(),
            Self::SetOrganic(false) => "leave organic rules".to_owned(),
        }
    }
}

fn plot_label(layout: &Layout, id: PlotId, change: &PlotChange) -> String {
    let plot = layout.plot(id);
    let name = plot_name(plot);
    match change {
        PlotChange::Rename(_) => format!("rename {name}"),
        PlotChange::SetOutline(_) => format!("redraw {name}"),
        PlotChange::Outline(change) => format!("{} {name}", outline_words(*change)),
        PlotChange::Shift { .. } => format!("move {name}"),
        PlotChange::AddObstacle { name: own, kind, .. } => {
            let own = own.clone().unwrap_or_else(|| layout.next_obstacle_name(*kind));
            format!("add {} to {name}", own.trim())
        }
        PlotChange::RemoveObstacle(obstacle) => format!("remove {}", obstacle_name(plot, *obstacle)),
        PlotChange::Obstacle(obstacle, change) => {
            let name = obstacle_name(plot, *obstacle);
            match change {
                ObstacleChange::Rename(_) => format!("rename {name}"),
                ObstacleChange::SetKind(_) => format!("change what {name} is"),
                ObstacleChange::SetShape(_) => format!("reshape {name}"),
                ObstacleChange::Outline(change) => format!("{} {name}", outline_words(*change)),
                ObstacleChange::SetClear(_) => format!("set the distance kept from {name}"),
                ObstacleChange::Shift { .. } => format!("move {name}"),
            }
        }
    }
}

fn bed_label(layout: &Layout, id: BedId, change: &BedChange) -> String {
    let bed = layout.bed(id);
    let name = bed_name(bed);
    match change {
        BedChange::Rename(_) => format!("rename {name}"),
        BedChange::SetGround(_) => format!("redraw {name}"),
        BedChange::Outline(change) => format!("{} {name}", outline_words(*change)),
        BedChange::Shift { .. } => format!("move {name}"),
        BedChange::SetBearing(_) => format!("turn rows of {name}"),
        BedChange::SetRowSpacing(_) => format!("space rows of {name}"),
        BedChange::SetEdgeMargin(_) => format!("set the edge margin of {name}"),
        BedChange::SetRemainder(_) => format!("shift rows of {name}"),
        BedChange::SetHeadland(_) => format!("set the headland of {name}"),
        BedChange::SetClear(_) => format!("set the clear strip round {name}"),
        BedChange::SetShortest(_) => format!("set the shortest row of {name}"),
        BedChange::SetLines(_) => format!("set the lines on each row of {name}"),
        BedChange::SetWater(_) => format!("change the water of {name}"),
        BedChange::SetTape(_) => format!("change the tape of {name}"),
        BedChange::SetPlanting(Some(_)) => format!("plant {name}"),
        BedChange::SetPlanting(None) => format!("clear the planting of {name}"),
        BedChange::SetCrop(_) => format!("choose the crop of {name}"),
        BedChange::SetCultivar(_) => format!("name the cultivar of {name}"),
        BedChange::SetCropAndCultivar(_, cultivar) => format!("plant {} in {name}", cultivar.trim()),
        BedChange::SetInRow(_) => format!("set the in-row spacing of {name}"),
        BedChange::SetEndGap(_) => format!("set the end gap of {name}"),
        BedChange::SetSowing(_) => format!("change the sowing of {name}"),
        BedChange::SetGermination(_) => format!("set the germination of {name}"),
        BedChange::SetFieldEmergence(_) => format!("set the field emergence of {name}"),
        BedChange::SetSpare(_) => format!("set the spare seed of {name}"),
        BedChange::SetPlanted(_) => format!("set the planting day of {name}"),
        BedChange::SetZone(_) => format!("set the water zone of {name}"),
        BedChange::SetRecommendation(_) => format!("set what {name} wants"),
        BedChange::SetPublished(_) => format!("choose the published rate of {name}"),
        BedChange::AddCredit(credit) => format!("credit {} to {name}", credit.name.trim()),
        BedChange::SetCredit(..) => format!("change a credit of {name}"),
        BedChange::RemoveCredit(_) => format!("remove a credit of {name}"),
        BedChange::SetHoldsToPlan(true) => format!("hold the dressings of {name} to the plan"),
        BedChange::SetHoldsToPlan(false) => format!("let the dressings of {name} follow what was used"),
        BedChange::LayDown { name: what, .. } => format!("lay down {} for {name}", what.trim()),
        BedChange::AddDressing(dressing) => format!("add {} to {name}", dressing.name.trim()),
        BedChange::SetDressing(dressing) => {
            format!("change {} of {name}", dressing_name(bed, dressing.id))
        }
        BedChange::RemoveDressing(dressing) => {
            format!("remove {} from {name}", dressing_name(bed, *dressing))
        }
        BedChange::MoveDressing { dressing, .. } => {
            format!("reorder {} of {name}", dressing_name(bed, *dressing))
        }
    }
}

/// What was done to an outline; its name follows.
const fn outline_words(change: OutlineChange) -> &'static str {
    match change {
        OutlineChange::MoveCorner { .. } => "move a corner of",
        OutlineChange::InsertCorner { .. } => "add a corner to",
        OutlineChange::RemoveCorner { .. } => "remove a corner of",
        OutlineChange::MoveSide { .. } => "move a side of",
        OutlineChange::SetSideLength { .. } => "set a side of",
    }
}

fn plot_name(plot: Option<&Arc<Plot>>) -> &str {
    plot.map_or("a plot", |plot| plot.name.as_str())
}

fn bed_name(bed: Option<&Arc<Bed>>) -> &str {
    bed.map_or("a bed", |bed| bed.name.as_str())
}

fn obstacle_name(plot: Option<&Arc<Plot>>, id: ObstacleId) -> &str {
    plot.and_then(|plot| plot.obstacle(id))
        .map_or("an obstacle", |obstacle| obstacle.name.as_str())
}

fn dressing_name(bed: Option<&Arc<Bed>>, id: DressingId) -> &str {
    bed.and_then(|bed| bed.dressing(id))
        .map_or("a dressing", |dressing| dressing.name.as_str())
}
