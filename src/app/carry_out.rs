//! Carrying out what panels, canvas and keys asked for, once the frame is drawn.

use std::path::{Path, PathBuf};

use egui::{Context, ViewportCommand};

use super::QuilletApp;
use super::action::Action;
use super::canvas::{Drawn, Tool};
use super::card::first_dressing;
use super::command::Command;
use super::files::{self, Ask, Purpose};
use super::finder::Finder;
use super::overlay::Overlay;
use super::print_view::PrintView;
use super::step::Step;
use super::type_plot::TypePlot;
use crate::geometry::polygon;
use crate::layout::{
    BedChange, BedGround, BedId, Edit, Item, Layout, NoteId, ObstacleId, ObstacleKind, OutlineChange, PlotChange,
    PlotId, SeedEdit, store,
};
use crate::quantity::{Bearing, Units};
use crate::sheets::tables;

/// One press of the turning keys.
const TURN_DEGREES: f64 = 5.0;
/// One press of the zooming keys.
const ZOOM: f64 = 1.25;

impl QuilletApp {
    /// Carries out one command.
    pub(super) fn carry_out(&mut self, command: Command, ctx: &Context, frame: &eframe::Frame) {
        match command {
            Command::Act(action) => self.act(action, ctx, frame),
            Command::Edit(edit) => self.edit(&edit),
            Command::Preview(edit) => self.desk.preview(&edit),
            Command::KeepPreview => self.desk.keep_preview(),
            Command::DropPreview => self.desk.drop_preview(),
            Command::Choose(item) => self.desk.chosen = item,
            Command::PointAt(item) => self.desk.pointed = item,
            Command::GoTo(item) => {
                self.desk.chosen = Some(item);
                self.canvas.bring_into_view(&self.desk, item);
                if self.desk.step == Step::Outside {
                    self.desk.step = Step::Rows;
                }
            }
            Command::Step(step) => {
                self.desk.step = step;
                if step == Step::Outside {
                    self.desk.chosen = None;
                }
            }
            Command::OpenPath(path) => self.open(&path),
            Command::SavePath(path) => self.save(path),
            Command::Ask(purpose) => self.ask(purpose, ctx, frame),
            Command::File(purpose, path) => self.with_file(purpose, path, ctx),
            Command::TakeUp(place) => self.take_up(place),
            Command::ThrowAway(place) => self.throw_away(place),
            Command::Say(text) if text.is_empty() => self.desk.said = None,
            Command::Say(text) => self.desk.say(text),
        }
    }

    /// Makes a change, and chooses what is new.
    fn edit(&mut self, edit: &Edit) {
        let next = self.desk.settled().next_id();
        if !self.desk.edit(edit) {
            return;
        }
        let new = match edit {
            Edit::AddPlot { .. } => Some(Item::Plot(PlotId(next))),
            Edit::AddPlotWithBed { .. } => {
                if self.desk.layout().plots.len() == 1 {
                    self.canvas.fit();
                }
                self.desk.step = Step::Rows;
                Some(Item::Bed(BedId(next + 1)))
            }
            Edit::AddBed { .. } => Some(Item::Bed(BedId(next))),
            Edit::AddNote { .. } => Some(Item::Note(NoteId(next))),
            Edit::Plot(plot, PlotChange::AddObstacle { .. }) => Some(Item::Obstacle(*plot, ObstacleId(next))),
            Edit::Bed(bed, BedChange::AddDressing(_)) => Some(Item::Dressing(*bed, crate::layout::DressingId(next))),
            _ => None,
        };
        if let Some(new) = new.filter(|&item| self.desk.layout().has(item)) {
            self.desk.chosen = Some(new);
        }
    }

    fn act(&mut self, action: Action, ctx: &Context, frame: &eframe::Frame) {
        match action {
            Action::New => self.new_layout(),
            Action::Open => self.ask(Purpose::Open, ctx, frame),
            Action::Sample => self.open_sample(),
            Action::Save => match self.desk.path.clone() {
                Some(path) => self.save(path),
                None => self.ask(Purpose::SaveLayout, ctx, frame),
            },
            Action::SaveAs => self.ask(Purpose::SaveLayout, ctx, frame),
            Action::Print => self.overlay = Overlay::Print(Box::new(PrintView::new(self.desk.layout()))),
            Action::SaveTable => self.ask(Purpose::SaveTable, ctx, frame),
            Action::CopyLedger => self.copy_ledger(ctx),
            Action::Undo => self.desk.undo(),
            Action::Redo => self.desk.redo(),
            Action::Find => self.overlay = Overlay::Find(Finder::default()),
            Action::TypePlot => self.overlay = Overlay::TypePlot(TypePlot::default()),
            Action::DragPlot => self.canvas.take_up(Tool::Rectangle(Drawn::Plot)),
            Action::CornerPlot => self.canvas.take_up(Tool::Corners(Drawn::Plot)),
            Action::DragBed => self.draw_on_plot(|plot| Tool::Rectangle(Drawn::Bed(plot))),
            Action::CornerBed => self.draw_on_plot(|plot| Tool::Corners(Drawn::Bed(plot))),
            Action::FillBed => self.fill_bed(),
            Action::AddTree => self.draw_on_plot(|plot| Tool::Circle(Drawn::Obstacle(plot, ObstacleKind::Tree))),
            Action::AddWell => self.draw_on_plot(|plot| Tool::Circle(Drawn::Obstacle(plot, ObstacleKind::Well))),
            Action::AddBuilding => {
                self.draw_on_plot(|plot| Tool::Rectangle(Drawn::Obstacle(plot, ObstacleKind::Building)));
            }
            Action::AddOther => self.draw_on_plot(|plot| Tool::Corners(Drawn::Obstacle(plot, ObstacleKind::Other))),
            Action::AddNote => self.canvas.take_up(Tool::Note),
            Action::AddDressing => self.add_dressing(),
            Action::Remove => self.remove(),
            Action::LetGo => self.let_go(),
            Action::TurnRight => self.turn(TURN_DEGREES),
            Action::TurnLeft => self.turn(-TURN_DEGREES),
            Action::AlongSide => self.along_side(),
            Action::Fit => self.canvas.fit(),
            Action::ZoomIn => self.canvas.zoom_by(ZOOM),
            Action::ZoomOut => self.canvas.zoom_by(1.0 / ZOOM),
            Action::Next => self.choose_next(1),
            Action::Previous => self.choose_next(-1),
            Action::HeadsUp => self.heads_up_open = !self.heads_up_open,
            Action::Theme => {
                self.settings.dark = Some(!ctx.global_style().visuals.dark_mode);
                self.dress(ctx);
                self.remember();
            }
            Action::Units => {
                let units = match self.desk.layout().units {
                    Units::Customary => Units::Metric,
                    Units::Metric => Units::Customary,
                };
                self.edit(&Edit::SetUnits(units));
            }
            Action::Quit => ctx.send_viewport_cmd(ViewportCommand::Close),
        }
    }

    /// The plot that drawing goes to: the chosen one, that of the bed in hand, or the first.
    fn plot_in_hand(&self) -> Option<PlotId> {
        let layout = self.desk.layout();
        let of_choice = match self.desk.chosen {
            Some(Item::Plot(plot) | Item::Corner(plot, _) | Item::Side(plot, _) | Item::Obstacle(plot, _)) => {
                Some(plot)
            }
            _ => self
                .desk
                .bed_in_hand()
                .and_then(|bed| layout.bed(bed))
                .map(|bed| bed.plot),
        };
        of_choice.or_else(|| layout.plots.first().map(|plot| plot.id))
    }

    fn draw_on_plot(&mut self, tool: impl FnOnce(PlotId) -> Tool) {
        match self.plot_in_hand() {
            Some(plot) => self.canvas.take_up(tool(plot)),
            None => self
                .desk
                .say_wrong("There is no plot to draw on yet. Draw a plot first."),
        }
    }

    fn fill_bed(&mut self) {
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
        self.edit(&Edit::AddBed {
            plot,
            name: None,
            ground: BedGround::WholePlot,
        });
    }

    fn add_dressing(&mut self) {
        let Some(bed) = self
            .desk
            .bed_in_hand()
            .and_then(|bed| self.desk.layout().bed(bed))
            .cloned()
        else {
            self.desk
                .say_wrong("There is no bed to put a dressing on yet. Draw a plot first.");
            return;
        };
        self.desk.step = Step::OnRows;
        let dressing = first_dressing(&bed, self.desk.layout().units);
        self.edit(&Edit::Bed(bed.id, BedChange::AddDressing(dressing)));
    }

    fn remove(&mut self) {
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

    fn let_go(&mut self) {
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

    fn turn(&mut self, by: f64) {
        let Some(bed) = self
            .desk
            .bed_in_hand()
            .and_then(|bed| self.desk.layout().bed(bed))
            .cloned()
        else {
            return;
        };
        let bearing = Bearing::degrees(bed.bearing.to_degrees() + by);
        self.edit(&Edit::Bed(bed.id, BedChange::SetBearing(bearing)));
    }

    fn along_side(&mut self) {
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
    fn choose_next(&mut self, by: isize) {
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

    fn copy_ledger(&mut self, ctx: &Context) {
        let Some(bed) = self.desk.bed_in_hand() else { return };
        let Some(ledger) = self.desk.ledger(bed) else { return };
        ctx.copy_text(tables::ledger_tabs(&ledger));
        let name = self
            .desk
            .layout()
            .bed(bed)
            .map_or_else(String::new, |bed| bed.name.clone());
        self.desk.say(format!("Copied the ledger of {name}"));
    }

    fn ask(&mut self, purpose: Purpose, ctx: &Context, frame: &eframe::Frame) {
        let name = self.desk.layout().name.clone();
        let file_name = match (&self.desk.path, purpose) {
            (_, Purpose::Open) => String::new(),
            (Some(path), Purpose::SaveLayout) => path
                .file_name()
                .map_or_else(String::new, |name| name.to_string_lossy().into_owned()),
            _ => files::file_name(&name, purpose.ending()),
        };
        let folder = self
            .desk
            .path
            .as_deref()
            .or_else(|| self.settings.recent.first().map(PathBuf::as_path));
        let folder = folder
            .and_then(Path::parent)
            .filter(|folder| folder.is_dir())
            .map(Path::to_path_buf);
        if !self.files.ask(
            Ask {
                purpose,
                folder,
                file_name,
            },
            frame,
            ctx,
        ) {
            self.desk.say("A file is being chosen already");
        }
    }

    fn with_file(&mut self, purpose: Purpose, path: PathBuf, ctx: &Context) {
        match purpose {
            Purpose::Open => self.open(&path),
            Purpose::SaveLayout => self.save(path),
            Purpose::SaveMap(kind) => {
                if let Overlay::Print(print) = &mut self.overlay {
                    print.save(kind, path, ctx);
                }
            }
            Purpose::SaveTable => self.save_table(&path),
        }
    }

    fn save_table(&mut self, path: &Path) {
        let text = tables::ledger_csv(self.desk.layout(), self.desk.plan()).map_err(|error| error.to_string());
        match text.and_then(|text| files::write_whole(path, text.as_bytes())) {
            Ok(()) => self.desk.say(format!("Saved the table as {}", path.display())),
            Err(sentence) => self.desk.say_wrong(sentence),
        }
    }

    /// Saves the layout; what could not be saved stays unsaved and is said.
    fn save(&mut self, path: PathBuf) {
        match store::save(&path, self.desk.settled()) {
            Ok(()) => {
                self.desk.say(format!("Saved as {}", path.display()));
                self.settings.note_file(&path);
                self.desk.mark_saved(path);
                self.remember();
            }
            Err(error) => self.desk.say_wrong(format!("{error} {}", error.hint())),
        }
    }

    /// Opens a layout; when it cannot be opened, the one on the desk stays.
    fn open(&mut self, path: &Path) {
        match store::load(path) {
            Ok(layout) => {
                let kept = self.leave_desk();
                self.desk.replace(layout, Some(path.to_path_buf()));
                self.settings.note_file(path);
                self.remember();
                self.canvas.fit();
                self.desk.say(format!("Opened {}{kept}", path.display()));
            }
            Err(error) => self.desk.say_wrong(format!("{error} {}", error.hint())),
        }
    }

    fn new_layout(&mut self) {
        let kept = self.leave_desk();
        let units = self.desk.layout().units;
        self.desk.replace(Layout::empty(super::this_season(), units), None);
        self.desk.step = Step::Ground;
        self.canvas.fit();
        self.desk.say(format!("An empty sheet{kept}"));
    }

    fn open_sample(&mut self) {
        match super::sample::layout() {
            Some(layout) => {
                let kept = self.leave_desk();
                self.desk.replace(layout, None);
                self.canvas.fit();
                self.desk.say(format!("A sample to try things on{kept}"));
            }
            None => self
                .desk
                .say_wrong("The sample is not there: sample-layouts/alder-bend.ron"),
        }
    }

    /// Keeps unsaved work before another layout comes on the desk. Gives back what there is to say about it.
    fn leave_desk(&mut self) -> &'static str {
        self.offer_open = true;
        if self.keeping.leave(&self.desk) {
            "; the unsaved work before it was kept"
        } else {
            ""
        }
    }

    fn take_up(&mut self, place: usize) {
        if place >= self.keeping.offers.len() {
            return;
        }
        let rescued = self.keeping.offers.remove(place);
        let others = std::mem::take(&mut self.keeping.offers);
        match &rescued.layout {
            Ok(layout) => {
                let layout = layout.clone();
                let kept = self.leave_desk();
                self.desk.replace_unsaved(layout, rescued.original.clone());
                self.canvas.fit();
                let name = self.desk.layout().name.clone();
                self.desk.say(format!("Took up the unsaved work of {name}{kept}"));
                self.keeping.taken_up(&self.desk, rescued);
            }
            Err(error) => self.desk.say_wrong(format!("{error} {}", error.hint())),
        }
        self.keeping.offers.extend(others);
    }

    fn throw_away(&mut self, place: usize) {
        if place < self.keeping.offers.len() {
            let rescued = self.keeping.offers.remove(place);
            if let Err(error) = rescued.discard() {
                self.desk.say_wrong(format!("{error} {}", error.hint()));
            }
        }
    }
}
