//! The sheet in the window: looking, choosing, drawing.

mod tool;

pub use tool::{Drawn, Tool};

use super::command::Command;
use super::desk::Desk;
use crate::layout::Item;

/// The sheet in the window: what part of it is seen, and what the hand is doing.
#[derive(Debug, Default)]
pub struct Canvas {
    tool: Tool,
}

impl Canvas {
    /// Draws the sheet into all the room there is, and reads the hand.
    pub fn show(&mut self, ui: &mut egui::Ui, desk: &Desk, out: &mut Vec<Command>) {
        let _ = (ui, desk, out);
    }

    /// What the hand is doing.
    pub fn tool(&self) -> Tool {
        self.tool
    }

    /// Takes up a tool.
    pub fn take_up(&mut self, tool: Tool) {
        self.tool = tool;
    }

    /// Shows everything that is drawn.
    pub fn fit(&mut self) {}

    /// Looks from nearer (above 1) or farther (below 1), about the middle.
    pub fn zoom_by(&mut self, factor: f64) {
        let _ = factor;
    }

    /// Moves the view so that the thing can be seen.
    pub fn bring_into_view(&mut self, desk: &Desk, item: Item) {
        let _ = (desk, item);
    }
}
