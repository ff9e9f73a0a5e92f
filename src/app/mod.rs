//! The window: canvas, ledger, cards, dialogs.
//!
//! Three states are kept apart: the layout under work with its plan ([`desk`]), how it is looked at ([`canvas`]),
//! and what the program remembers between starts ([`settings`]).

pub mod action;
pub mod canvas;
pub mod command;
pub mod desk;
pub mod settings;
mod start;
pub mod step;
pub mod theme;

pub use start::open_window;

use std::path::PathBuf;

/// The program in its window.
pub struct QuilletApp {
    desk: desk::Desk,
    canvas: canvas::Canvas,
    settings: settings::Settings,
}

impl QuilletApp {
    /// The program with the layout in `file`, or the last one, or a sample.
    pub fn new(cc: &eframe::CreationContext<'_>, file: Option<PathBuf>) -> Self {
        theme::install(&cc.egui_ctx);
        let _ = file;
        let layout = crate::layout::Layout::empty(2027, crate::quantity::Units::Customary);
        Self { desk: desk::Desk::new(layout, None), canvas: canvas::Canvas::default(), settings: settings::Settings::load() }
    }
}

impl eframe::App for QuilletApp {
    fn ui(&mut self, ui: &mut egui::Ui, _frame: &mut eframe::Frame) {
        let mut out = Vec::new();
        self.canvas.show(ui, &self.desk, &mut out);
        let _ = &self.settings;
    }
}
