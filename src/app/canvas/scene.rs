//! The drawing as shapes, kept as long as nothing of it changes: a frame that only moves the pointer paints what is
//! there already.

use egui::{Rect, Ui};

use super::furniture;
use super::paint::{Painted, paint_ground};
use super::viewport::Viewport;
use crate::app::desk::Desk;
use crate::layout::{Item, Note};
use crate::sheets::drawing::{View, draw};
use crate::sheets::type_metrics;

/// What the shapes were made from.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Key {
    revision: u64,
    viewport: Viewport,
    dark: bool,
    pixels_per_point: f32,
    /// Letters are looked up in an image that is begun anew when it is full; it is then emptier than before.
    letters: f32,
}

/// The drawing as shapes.
#[derive(Debug, Default)]
pub(super) struct Scene {
    key: Option<Key>,
    /// The drawing.
    pub(super) painted: Painted,
    /// Title, scale bar and north arrow, over the drawing and the hand's work.
    pub(super) furniture: Painted,
    /// Where the words of notes stand.
    pub(super) notes: Vec<(Item, Rect)>,
}

impl Scene {
    /// Makes the shapes anew if anything that they were made from has changed.
    pub(super) fn refresh(&mut self, ui: &Ui, desk: &Desk, viewport: &Viewport) {
        let letters = ui.fonts(|fonts| fonts.font_atlas_fill_ratio());
        let key = Key {
            revision: desk.revision(),
            viewport: *viewport,
            dark: ui.visuals().dark_mode,
            pixels_per_point: ui.pixels_per_point(),
            letters,
        };
        let same = self.key.is_some_and(|old| {
            Key {
                letters: old.letters,
                ..key
            } == old
                && key.letters >= old.letters
        });
        if same {
            return;
        }
        let view = View::of_screen(viewport.visible(), viewport.points_per_metre());
        let marks = draw(desk.layout(), desk.plan(), &view);
        self.painted = paint_ground(ui, &marks, viewport);
        self.furniture = furniture::furniture(ui, desk, viewport);
        self.notes = desk
            .layout()
            .notes
            .iter()
            .map(|note| (Item::Note(note.id), note_box(note, viewport)))
            .collect();
        // New letters made the image fuller while they were set.
        let letters = ui.fonts(|fonts| fonts.font_atlas_fill_ratio());
        self.key = Some(Key { letters, ..key });
    }
}

/// The box that the words of a note take, and its dot.
fn note_box(note: &Note, viewport: &Viewport) -> Rect {
    /// Size and widest line of notes, as they are drawn.
    const SIZE: f32 = 10.4;
    const WIDEST: f64 = 200.0;
    let at = viewport.to_screen(note.at);
    let lines = type_metrics::break_lines(note.text.trim(), WIDEST, SIZE, false);
    let width = lines
        .iter()
        .map(|line| type_metrics::width(line, SIZE, false))
        .fold(0.0, f64::max) as f32;
    let height = lines.len().max(1) as f32 * SIZE * 1.25;
    let right = at.x + width + 8.0 <= viewport.screen().right();
    let (from, to) = if right {
        (at.x - 5.0, at.x + width + 8.0)
    } else {
        (at.x - width - 8.0, at.x + 5.0)
    };
    Rect::from_min_max(
        egui::pos2(from, at.y - SIZE * 0.75),
        egui::pos2(to, at.y - SIZE * 0.75 + height),
    )
}
