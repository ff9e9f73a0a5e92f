//! Carrying out what panels, canvas and keys asked for, once the frame is drawn.

mod on_files;
mod on_seed;
mod on_shed;
mod on_sheet;

use egui::{Context, ViewportCommand};

use super::QuilletApp;
use super::action::Action;
use super::canvas::{Drawn, SplitWay, Tool};
use super::command::Command;
use super::crop_book::BookView;
use super::files::{ListKind, Purpose};
use super::finder::Finder;
use super::ledger::Shown;
use super::overlay::Overlay;
use super::print_view::PrintView;
use super::shed::ShedView;
use super::step::Step;
use super::type_plot::TypePlot;
use super::unit_field;
use crate::layout::{
    BedChange, BedId, Edit, Item, LotId, NoteId, ObstacleId, ObstacleKind, PlotChange, PlotId, SeedEdit,
};
use crate::quantity::Units;
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
            Command::Edit(edit) => self.edit_from(&edit, ctx),
            Command::Preview(edit) => self.desk.preview(&edit),
            Command::KeepPreview => self.desk.keep_preview(),
            Command::DropPreview => self.desk.drop_preview(),
            Command::Choose(Some(Item::Shed(kept))) | Command::GoTo(Item::Shed(kept)) => self.open_shed_at(kept),
            Command::Choose(item) => self.desk.chosen = item,
            Command::PointAt(item) => self.desk.pointed = item,
            Command::GoTo(item) => {
                self.desk.chosen = Some(item);
                self.canvas.bring_into_view(&self.desk, item);
                if self.desk.step == Step::Outside {
                    self.desk.step = Step::Rows;
                }
            }
            Command::Step(step) => self.turn_to(step),
            Command::OpenBook(crop, cultivar) => {
                self.overlay = Overlay::Book(Box::new(BookView::at(crop, cultivar)));
            }
            Command::OpenShed(material) => {
                self.open_shed(ShedView::at(material));
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

    /// Turns to a question, with what it asks about on the card: ground or a bed.
    fn turn_to(&mut self, step: Step) {
        self.desk.step = step;
        let layout = self.desk.layout();
        self.desk.chosen = match (step, self.desk.chosen) {
            (Step::Ground, Some(Item::Lot(_))) => None,
            (Step::Ground, Some(item)) => match item.bed().and_then(|bed| layout.bed(bed)) {
                Some(bed) => Some(Item::Plot(bed.plot)),
                None => Some(item),
            },
            (Step::Rows | Step::OnRows | Step::Feed, Some(item)) if item.bed().is_none() => {
                self.desk.bed_in_hand().map(Item::Bed)
            }
            (Step::Sow | Step::Outside, _) => None,
            (_, chosen) => chosen,
        };
        // The order list, the account and the fertilizer list come and go with the question that they answer.
        match (step, self.ledger.shown) {
            (Step::Sow, _) => self.ledger.shown = Shown::Order,
            (Step::Feed, _) => self.ledger.shown = Shown::Account,
            (_, Shown::Order | Shown::Feeding | Shown::Account) => self.ledger.shown = Shown::Bed,
            _ => {}
        }
    }

    /// Makes a change. Where a field asks for it and it is refused, that is said at the field.
    fn edit_from(&mut self, edit: &Edit, ctx: &Context) {
        let field = unit_field::taken_over(ctx);
        let said = self.desk.said.clone();
        if self.edit(edit) {
            return;
        }
        if let Some(field) = field
            && let Some(refused) = std::mem::replace(&mut self.desk.said, said)
        {
            field.refuse(ctx, refused.text);
        }
    }

    /// Makes a change, and chooses what is new. Gives back whether it was made.
    fn edit(&mut self, edit: &Edit) -> bool {
        let next = self.desk.settled().next_id();
        if !self.desk.edit(edit) {
            return false;
        }
        let new = match edit {
            Edit::AddPlot { .. } => Some(Item::Plot(PlotId(next))),
            Edit::AddPlotWithBed { .. } => {
                if self.desk.layout().plots.len() == 1 {
                    self.canvas.fit();
                }
                Some(Item::Bed(BedId(next + 1)))
            }
            Edit::AddBed { .. } | Edit::FillPlot(_) | Edit::SplitBed { .. } => Some(Item::Bed(BedId(next))),
            Edit::AddNote { .. } => Some(Item::Note(NoteId(next))),
            Edit::Plot(plot, PlotChange::AddObstacle { .. }) => Some(Item::Obstacle(*plot, ObstacleId(next))),
            Edit::Bed(bed, BedChange::AddDressing(_)) => Some(Item::Dressing(*bed, crate::layout::DressingId(next))),
            Edit::Seed(SeedEdit::AddLot(_)) => Some(Item::Lot(LotId(next))),
            _ => None,
        };
        if let Some(new) = new.filter(|&item| self.desk.layout().has(item)) {
            self.desk.chosen = Some(new);
        }
        true
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
            Action::TypePlot => {
                // Another way of drawing a plot puts away the one that was taken up before.
                self.canvas.take_up(Tool::Choose);
                self.overlay = Overlay::TypePlot(TypePlot::default());
            }
            Action::DragPlot => self.canvas.take_up(Tool::Rectangle(Drawn::Plot)),
            Action::CornerPlot => self.canvas.take_up(Tool::Corners(Drawn::Plot)),
            Action::DragBed => self.draw_on_plot(|plot| Tool::Rectangle(Drawn::Bed(plot))),
            Action::CornerBed => self.draw_on_plot(|plot| Tool::Corners(Drawn::Bed(plot))),
            Action::FillBed => self.fill_bed(),
            Action::SplitBetweenRows => self.split_bed(SplitWay::BetweenRows),
            Action::SplitAcrossRows => self.split_bed(SplitWay::AcrossRows),
            Action::AddTree => self.draw_on_plot(|plot| Tool::Circle(Drawn::Obstacle(plot, ObstacleKind::Tree))),
            Action::AddWell => self.draw_on_plot(|plot| Tool::Circle(Drawn::Obstacle(plot, ObstacleKind::Well))),
            Action::AddBuilding => {
                self.draw_on_plot(|plot| Tool::Rectangle(Drawn::Obstacle(plot, ObstacleKind::Building)));
            }
            Action::AddOther => self.draw_on_plot(|plot| Tool::Corners(Drawn::Obstacle(plot, ObstacleKind::Other))),
            Action::AddNote => self.canvas.take_up(Tool::Note),
            Action::AddDressing => self.add_dressing(),
            Action::CropBook => self.overlay = Overlay::Book(Box::new(self.book_view())),
            Action::Shed => self.open_shed(self.shed_view()),
            Action::Mix => self.open_shed(ShedView::mixing()),
            Action::AddLot => self.add_lot(),
            Action::OrderList => self.ledger.shown = Shown::Order,
            Action::PrintOrder => {
                self.overlay = Overlay::Print(Box::new(PrintView::of_order(self.desk.layout())));
            }
            Action::SaveOrder => self.ask(Purpose::SaveOrder(ListKind::Csv), ctx, frame),
            Action::SaveOrderSheet => self.ask(Purpose::SaveOrder(ListKind::Spreadsheet), ctx, frame),
            Action::FertilizerList => self.ledger.shown = Shown::Feeding,
            Action::BedAccount => self.ledger.shown = Shown::Account,
            Action::PrintFeeding => {
                self.overlay = Overlay::Print(Box::new(PrintView::of_feeding(self.desk.layout())));
            }
            Action::CopyFeeding => self.copy_feeding(ctx),
            Action::SaveFeeding => self.ask(Purpose::SaveFeeding(ListKind::Csv), ctx, frame),
            Action::SaveFeedingSheet => self.ask(Purpose::SaveFeeding(ListKind::Spreadsheet), ctx, frame),
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

    fn copy_feeding(&mut self, ctx: &Context) {
        ctx.copy_text(tables::feed_tabs(self.desk.layout(), self.desk.plan()));
        self.desk.say("Copied the fertilizer list");
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
}
