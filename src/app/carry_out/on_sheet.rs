//! What is done on the sheet: drawing, laying beds, turning rows, removing, choosing.

use std::sync::Arc;

use super::super::QuilletApp;
use super::super::canvas::{SplitWay, Tool};
use super::super::card::first_dressing;
use super::super::step::Step;
use crate::geometry::polygon;
use crate::layout::{Bed, BedChange, BedGround, Edit, Item, OutlineChange, PlotChange, PlotId, SeedEdit, ShedEdit};
use crate::quantity::Bearing;

impl QuilletApp {
    /// The plot that drawing goes to: the chosen one, that of the bed in hand, or the first.
    pub(super) fn plot_in_hand(&self) -> Option<PlotId> {
        let layout = self.desk.layout();
        let of_choice = match self.desk.chosen {
            Some(Item::Plot(plot) | Item::Corner(plot, _) | Item::Side(plot, _) | Item::Obstacle(plot, _)) => {
                Some(plot)
            }
            _ => self.bed_in_hand().map(|bed| bed.plot),
        };
        of_choice.or_else(|| layout.plots.first().map(|plot| plot.id))
    }

    /// The bed that is worked on, as it is now.
    fn bed_in_hand(&self) -> Option<Arc<Bed>> {
        let bed = self.desk.bed_in_hand()?;
        self.desk.layout().bed(bed).cloned()
    }

    pub(super) fn draw_on_plot(&mut self, tool: impl FnOnce(PlotId) -> Tool) {
        match self.plot_in_hand() {
            Some(plot) => self.canvas.take_up(tool(plot)),
            None => self
                .desk
                .say_wrong("There is no plot to draw on yet. Draw a plot first."),
        }
    }

    pub(super) fn fill_bed(&mut self) {
        self.canvas.take_up(Tool::Choose);
        let Some(plot) = self.plot_in_hand() else {
            self.desk
                .say_wrong("There is no plot yet for a bed to fill. Draw a plot first.");
            return;
        };
        let filled = self
            .desk
            .layout()
            .beds_of(plot)
            .find(|bed| bed.ground == BedGround::WholePlot);
        if let Some(bed) = filled {
            let (id, name) = (bed.id, bed.name.clone());
            self.desk.chosen = Some(Item::Bed(id));
            self.desk.say(format!("{name} fills the plot already"));
            return;
        }
        self.edit(&Edit::FillPlot(plot));
    }

    pub(super) fn split_bed(&mut self, way: SplitWay) {
        if self.desk.bed_in_hand().is_some() {
            self.canvas.take_up(Tool::Split(way));
        } else {
            self.desk.say_wrong("There is no bed to split yet. Draw a plot first.");
        }
    }

    pub(super) fn add_dressing(&mut self) {
        let Some(bed) = self.bed_in_hand() else {
            self.desk
                .say_wrong("There is no bed to put a dressing on yet. Draw a plot first.");
            return;
        };
        self.desk.step = Step::Feed;
        let dressing = first_dressing(&bed, self.desk.layout());
        self.edit(&Edit::Bed(bed.id, BedChange::AddDressing(dressing)));
    }

    pub(super) fn remove(&mut self) {
        let edit = match self.desk.chosen {
            Some(Item::Plot(plot)) => Edit::RemovePlot(plot),
            Some(Item::Corner(plot, corner)) => {
                Edit::Plot(plot, PlotChange::Outline(OutlineChange::RemoveCorner { corner }))
            }
            Some(Item::Obstacle(plot, obstacle)) => Edit::Plot(plot, PlotChange::RemoveObstacle(obstacle)),
            Some(Item::Bed(bed)) => Edit::RemoveBed(bed),
            Some(Item::BedCorner(bed, corner)) => {
                Edit::Bed(bed, BedChange::Outline(OutlineChange::RemoveCorner { corner }))
            }
            Some(Item::Dressing(bed, dressing)) => Edit::Bed(bed, BedChange::RemoveDressing(dressing)),
            Some(Item::Note(note)) => Edit::RemoveNote(note),
            Some(Item::Lot(lot)) => Edit::Seed(SeedEdit::RemoveLot(lot)),
            Some(Item::Shed(kept)) => Edit::Shed(ShedEdit::Remove(kept)),
            Some(Item::Row(..)) => {
                self.desk
                    .say("Rows follow from the bed. Change its spacing, direction or ground to change them");
                return;
            }
            Some(Item::Side(..)) => {
                self.desk.say("A side goes when one of its corners is removed");
                return;
            }
            Some(Item::Layout) | None => {
                self.desk.say("Choose what to remove first");
                return;
            }
        };
        let label = edit.label(self.desk.settled());
        if self.desk.edit(&edit) {
            self.desk.say(format!("Done: {label}. Undo brings it back"));
        }
    }

    pub(super) fn let_go(&mut self) {
        if self.canvas.tool() != Tool::Choose {
            self.desk.drop_preview();
            self.canvas.take_up(Tool::Choose);
        } else if self.desk.is_previewing() {
            self.desk.drop_preview();
        } else if self.heads_up_open {
            self.heads_up_open = false;
        } else {
            self.desk.chosen = None;
        }
    }

    pub(super) fn turn(&mut self, by: f64) {
        let Some(bed) = self.bed_in_hand() else {
            return;
        };
        let bearing = Bearing::degrees(bed.bearing.to_degrees() + by);
        self.edit(&Edit::Bed(bed.id, BedChange::SetBearing(bearing)));
    }

    pub(super) fn along_side(&mut self) {
        let layout = self.desk.layout();
        let Some(bed) = self.desk.bed_in_hand().and_then(|bed| layout.bed(bed)).cloned() else {
            return;
        };
        let Some(plot) = layout.plot(bed.plot).cloned() else {
            return;
        };
        let of_side = match self.desk.chosen {
            Some(Item::Side(of, side)) if of == plot.id => polygon::side_bearing(&plot.outline, side),
            _ => None,
        };
        // A new bed lies along the longest side, so its direction is the one asked for.
        let bearing = of_side.unwrap_or_else(|| {
            layout
                .new_bed(&plot, bed.ground.clone(), Some(String::new()), bed.id)
                .bearing
        });
        self.edit(&Edit::Bed(bed.id, BedChange::SetBearing(bearing)));
    }

    /// Goes through plots, beds and what stands in the way, in the order they are listed.
    pub(super) fn choose_next(&mut self, by: isize) {
        let layout = self.desk.layout();
        let mut items = Vec::new();
        for plot in &layout.plots {
            items.push(Item::Plot(plot.id));
            items.extend(layout.beds_of(plot.id).map(|bed| Item::Bed(bed.id)));
            items.extend(
                plot.obstacles
                    .iter()
                    .map(|obstacle| Item::Obstacle(plot.id, obstacle.id)),
            );
        }
        items.extend(layout.notes.iter().map(|note| Item::Note(note.id)));
        let count = isize::try_from(items.len()).unwrap_or(0);
        if count == 0 {
            return;
        }
        let at = self
            .desk
            .chosen
            .and_then(|chosen| items.iter().position(|&item| item == chosen));
        let next = match at.and_then(|at| isize::try_from(at).ok()) {
            Some(at) => (at + by).rem_euclid(count),
            None if by > 0 => 0,
            None => count - 1,
        };
        if let Some(&item) = usize::try_from(next).ok().and_then(|next| items.get(next)) {
            self.desk.chosen = Some(item);
            self.canvas.bring_into_view(&self.desk, item);
        }
    }
}
