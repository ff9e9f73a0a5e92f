//! The window: canvas, ledger, cards, dialogs.
//!
//! Three states are kept apart: the layout under work with its plan ([`desk`]), how it is looked at ([`canvas`] and
//! the views of the panels), and what the program remembers between starts ([`settings`]).
//!
//! A panel is a function that reads the desk, draws, and pushes [`command::Command`]s. They are carried out once the
//! frame is drawn, so nothing changes under a panel's feet.

mod account_view;
pub mod action;
mod all_beds;
pub mod canvas;
mod card;
mod carry_out;
pub mod command;
mod crop_book;
mod day_words;
pub mod desk;
mod feed_words;
mod feeding_view;
pub mod files;
mod finder;
mod form;
mod heads_up;
mod keeping;
pub mod keys;
mod ledger;
mod ledger_heading;
mod matching;
mod offer;
mod order_view;
mod origin;
mod overlay;
mod picker;
mod print_view;
mod sample;
mod seed_words;
pub mod settings;
mod shed;
mod start;
pub mod step;
mod steps;
pub mod theme;
mod top_bar;
mod type_plot;
pub mod unit_field;
mod value_lines;
mod welcome;
mod wording;

pub use start::open_window;

use std::path::PathBuf;
use std::time::Instant;

use egui::{Context, Frame, Margin, Panel, Stroke, ThemePreference, Ui};

use canvas::{Canvas, Tool};
use command::Command;
use desk::Desk;
use files::{Dialogs, Files, NativeDialogs};
use keeping::Keeping;
use ledger::LedgerView;
use overlay::Overlay;
use settings::{Home, Settings};
use theme::ThemeInForce as _;
use wording::worded;

use crate::layout::{Layout, store};
use crate::quantity::Units;

/// The program in its window.
pub struct QuilletApp {
    desk: Desk,
    canvas: Canvas,
    settings: Settings,
    home: Home,
    files: Files,
    keeping: Keeping,
    overlay: Overlay,
    /// What is asked of a mix while the shed is closed.
    mixing: shed::Mixing,
    ledger: LedgerView,
    sweeps: card::Sweeps,
    drill: card::DrillTrial,
    heads_up_open: bool,
    /// Whether unsaved work from before is offered.
    offer_open: bool,
    /// Whether a text field had the keys in the last frame.
    typing: bool,
}

/// What the program finds round it: where it may write, and how it asks for files. Tests bring their own.
pub struct Surroundings {
    /// Where settings and unsaved work are kept.
    pub home: Home,
    /// How files are asked for.
    pub dialogs: Box<dyn Dialogs>,
    /// Whether to start with the last file or a sample when no file is named.
    pub go_on: bool,
}

impl Surroundings {
    /// The grower's own.
    pub fn of_user() -> Self {
        Self {
            home: Home::of_user(),
            dialogs: Box::new(NativeDialogs),
            go_on: true,
        }
    }
}

impl QuilletApp {
    /// The program with the layout in `file`, or the last one, or a sample, or an empty sheet.
    pub fn new(ctx: &Context, file: Option<PathBuf>, surroundings: Surroundings) -> Self {
        theme::install(ctx);
        ctx.options_mut(|options| options.zoom_with_keyboard = false);
        let Surroundings { home, dialogs, go_on } = surroundings;
        let settings = Settings::load(&home);
        let keeping = Keeping::new(home.unsaved());
        let drill = card::DrillTrial::of(settings.drill);
        let mut app = Self {
            desk: Desk::new(Layout::empty(this_season(), Units::Customary), None),
            canvas: Canvas::default(),
            offer_open: !keeping.offers.is_empty(),
            settings,
            home,
            files: Files::new(dialogs),
            keeping,
            overlay: Overlay::None,
            mixing: shed::Mixing::default(),
            ledger: LedgerView::default(),
            sweeps: card::Sweeps::default(),
            drill,
            heads_up_open: false,
            typing: false,
        };
        app.dress(ctx);
        app.begin(file, go_on);
        app.canvas.fit();
        app
    }

    /// The layout under work, for tests.
    pub const fn desk(&self) -> &Desk {
        &self.desk
    }

    fn begin(&mut self, file: Option<PathBuf>, go_on: bool) {
        let last = self
            .settings
            .recent
            .first()
            .filter(|path| go_on && path.is_file())
            .cloned();
        let named = file.is_some();
        if let Some(path) = file.or(last) {
            match store::load(&path) {
                Ok(layout) => {
                    self.desk.replace(layout, Some(path.clone()));
                    self.settings.note_file(&path);
                    self.remember();
                    return;
                }
                Err(error) => self.desk.say_wrong(worded(&error)),
            }
        }
        if go_on
            && !named
            && let Some(layout) = sample::layout()
        {
            self.desk.replace(layout, None);
        }
    }

    /// Day or lamp, as the settings say; as the system does when they do not.
    fn dress(&self, ctx: &Context) {
        ctx.set_theme(match self.settings.dark {
            Some(true) => ThemePreference::Dark,
            Some(false) => ThemePreference::Light,
            None => ThemePreference::System,
        });
        ctx.options_mut(|options| options.fallback_theme = egui::Theme::Light);
    }

    fn remember(&self) {
        self.settings.store(&self.home);
    }

    /// The window's title says what is open and whether it is saved.
    fn entitle(&self, ctx: &Context) {
        let mark = if self.desk.is_unsaved() { "*" } else { "" };
        let title = format!("{}{mark} - Quillet", self.desk.layout().name);
        let known = egui::Id::unique("title of the window");
        let last: Option<String> = ctx.data(|data| data.get_temp(known));
        if last.as_ref() != Some(&title) {
            ctx.send_viewport_cmd(egui::ViewportCommand::Title(title.clone()));
            ctx.data_mut(|data| data.insert_temp(known, title));
        }
    }

    /// Draws panels and sheet.
    fn panels(&mut self, ui: &mut Ui, out: &mut Vec<Command>) {
        let colours = theme::colours(ui.theme_in_force());
        let panel = |left: i8, top: i8| {
            Frame::new()
                .fill(colours.panel)
                .inner_margin(Margin::symmetric(left, top))
        };
        let hairline = Stroke::new(1.0, colours.line);
        ui.visuals_mut().widgets.noninteractive.bg_stroke = hairline;
        Panel::top("bar").exact_size(44.0).frame(panel(12, 0)).show(ui, |ui| {
            top_bar::show(ui, &self.desk, &self.settings, out);
        });
        top_bar::wrong_strip(ui, &self.desk, out);
        Panel::left("steps")
            .default_size(216.0)
            .size_range(190.0..=320.0)
            .frame(panel(10, 12))
            .show(ui, |ui| {
                steps::show(ui, &self.desk, self.canvas.tool(), out);
            });
        let most = ui.available_height() - 160.0;
        Panel::bottom("ledger")
            .resizable(true)
            .default_size(236.0)
            .size_range(96.0..=most.max(120.0))
            .frame(panel(16, 8))
            .show(ui, |ui| {
                ledger::show(ui, &mut self.desk, &mut self.ledger, out);
                ui.take_available_space();
            });
        Panel::right("card")
            .default_size(320.0)
            .size_range(280.0..=460.0)
            .frame(panel(18, 14))
            .show(ui, |ui| {
                card::show(ui, &self.desk, &mut self.sweeps, &mut self.drill, out);
            });
        let table = Frame::new().fill(colours.table);
        let sheet = egui::CentralPanel::default().frame(table).show(ui, |ui| {
            let rect = ui.max_rect();
            self.canvas.show(ui, &self.desk, out);
            rect
        });
        let is_empty = self.desk.layout().plots.is_empty() && self.desk.layout().notes.is_empty();
        if is_empty && self.canvas.tool() == Tool::Choose && matches!(self.overlay, Overlay::None) {
            welcome::show(ui, sheet.inner, out);
        }
    }

    /// Draws what lies over the window.
    fn overlays(&mut self, ui: &mut Ui, out: &mut Vec<Command>) {
        let stays = match &mut self.overlay {
            Overlay::None => true,
            Overlay::Find(finder) => finder::show(ui, &self.desk, finder, out),
            Overlay::TypePlot(typed) => type_plot::show(ui, self.desk.layout(), typed, out),
            Overlay::Book(book) => book.show(ui, &self.desk, out),
            Overlay::Shed(shed) => shed.show(ui, &self.desk, out),
            Overlay::Print(print) => print.show(ui, &self.desk, out),
        };
        if !stays {
            self.close_overlay();
        }
        if self.heads_up_open && matches!(self.overlay, Overlay::None) {
            heads_up::list(ui, &self.desk, out);
        }
        if self.offer_open && matches!(self.overlay, Overlay::None) {
            self.offer_open = offer::show(ui, &self.keeping, out);
        }
        if let Some((purpose, path)) = self.files.show(ui) {
            out.push(Command::File(purpose, path));
        }
    }
}

impl eframe::App for QuilletApp {
    fn logic(&mut self, ctx: &Context, _frame: &mut eframe::Frame) {
        if let Some(wait) = self.keeping.tend(&self.desk, Instant::now()) {
            ctx.request_repaint_after(wait);
        }
        if let Some(trouble) = self.keeping.trouble() {
            self.desk.say_wrong(trouble);
        }
        self.entitle(ctx);
    }

    fn ui(&mut self, ui: &mut Ui, frame: &mut eframe::Frame) {
        let ctx = ui.ctx().clone();
        let mut out = Vec::new();
        let covered = matches!(self.overlay, Overlay::Print(_) | Overlay::Book(_) | Overlay::Shed(_));
        let taken = keys::Taken {
            typing: self.typing || ctx.text_edit_focused(),
            dialog: self.files.is_typing() || !matches!(self.overlay, Overlay::None),
        };
        let acts = keys::pressed(&ctx, taken);
        if let Some((purpose, path)) = self.files.poll() {
            out.push(Command::File(purpose, path));
        }
        if !covered {
            self.panels(ui, &mut out);
        }
        self.overlays(ui, &mut out);
        if self.drill.drill != self.settings.drill {
            self.settings.drill = self.drill.drill;
            self.remember();
        }
        let leaves = covered && !self.files.is_typing() && !taken.typing && !egui::Popup::is_any_open(&ctx);
        if leaves && ctx.input(|input| input.key_pressed(egui::Key::Escape)) {
            self.close_overlay();
        }
        self.typing = ctx.text_edit_focused();
        let any = !out.is_empty() || !acts.is_empty();
        for command in out.into_iter().chain(acts.into_iter().map(Command::Act)) {
            self.carry_out(command, &ctx, frame);
        }
        if any {
            // What was carried out shows at once.
            ctx.request_repaint();
        }
    }
}

impl Drop for QuilletApp {
    /// Closing loses nothing: what is not saved is kept, and offered at the next start.
    fn drop(&mut self) {
        self.keeping.keep_now(&self.desk);
    }
}

/// The season a new layout is for: this year's until autumn, when the next one is planned.
///
/// # Source
/// From September on: a choice of our own.
pub(super) fn this_season() -> i16 {
    let today = jiff::ZonedDateTime::now().date();
    crate::layout::season_planned_on(today.year(), today.month())
}
