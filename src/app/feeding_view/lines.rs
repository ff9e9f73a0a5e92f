//! Lines of which only those that are seen are drawn.

use std::collections::BTreeMap;

use egui::{Rect, Ui};

/// Drawn above and below what is seen, so that the keys find the next lines.
const BEYOND: f32 = 300.0;

/// The part of the list that is seen, and where the list begins.
#[derive(Clone, Copy)]
pub(super) struct Seen {
    rect: Rect,
    origin: f32,
}

impl Seen {
    /// What is seen of a list that begins here.
    pub(super) fn from_here(ui: &Ui, rect: Rect) -> Self {
        Self {
            rect,
            origin: ui.min_rect().top(),
        }
    }

    fn has(self, top: f32, height: f32) -> bool {
        let top = top - self.origin;
        top + height >= self.rect.top() - BEYOND && top <= self.rect.bottom() + BEYOND
    }
}

/// Lines with how high each was when it was last drawn, and the width they had.
pub(super) struct Lines<K> {
    /// How high a line is taken to be until it was drawn once.
    usual_height: f32,
    heights: BTreeMap<K, f32>,
    width: f32,
}

impl<K: Ord> Lines<K> {
    pub(super) const fn new(usual_height: f32) -> Self {
        Self {
            usual_height,
            heights: BTreeMap::new(),
            width: 0.0,
        }
    }

    /// Draws the lines that are seen, so wide, and leaves room for the others.
    pub(super) fn show<T>(
        &mut self,
        ui: &mut Ui,
        seen: Seen,
        width: f32,
        lines: impl Iterator<Item = (K, T)>,
        mut draw: impl FnMut(&mut Ui, T),
    ) {
        if (self.width - width).abs() > 0.5 {
            self.width = width;
            self.heights.clear();
        }
        let mut skipped = 0.0;
        for (key, line) in lines {
            let height = self.heights.get(&key).copied().unwrap_or(self.usual_height);
            if !seen.has(ui.cursor().top() + skipped, height) {
                skipped += height;
                continue;
            }
            leave_out(ui, &mut skipped);
            let before = ui.cursor().top();
            draw(ui, line);
            self.heights.insert(key, ui.cursor().top() - before);
        }
        leave_out(ui, &mut skipped);
    }
}

/// Leaves the room of lines that are not drawn.
fn leave_out(ui: &mut Ui, height: &mut f32) {
    if *height > 0.0 {
        // The gap behind this room is a part of it.
        ui.add_space((*height - ui.spacing().item_spacing.y).max(0.0));
        *height = 0.0;
    }
}
