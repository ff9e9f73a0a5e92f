//! Words at the pointer while something is drawn or dragged: what it comes to, and why it stands there.

use egui::{Color32, CornerRadius, FontId, Pos2, Rect, Shape, Stroke, StrokeKind, Ui, Vec2, vec2};

use crate::app::theme;

/// What is said at the pointer.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct PointerWords {
    /// What it comes to.
    pub(super) bold: String,
    /// Lines below: what follows, and why it stands there.
    pub(super) soft: Vec<String>,
    /// Whether something is wrong with it.
    pub(super) wrong: bool,
}

impl PointerWords {
    /// What it comes to, and why it stands there.
    pub(super) fn new(bold: impl Into<String>, soft: impl Into<String>) -> Self {
        let soft = soft.into();
        Self {
            bold: bold.into(),
            soft: if soft.is_empty() { Vec::new() } else { vec![soft] },
            wrong: false,
        }
    }

    /// Something wrong.
    pub(super) fn wrong(bold: impl Into<String>) -> Self {
        Self {
            bold: bold.into(),
            soft: Vec::new(),
            wrong: true,
        }
    }

    /// The same with a line more.
    pub(super) fn with(mut self, line: impl Into<String>) -> Self {
        let line = line.into();
        if !line.is_empty() {
            self.soft.push(line);
        }
        self
    }
}

/// Space between the words and the edge of their plate.
const PAD: Vec2 = vec2(10.0, 7.0);
/// From the pointer to the plate.
const AWAY: Vec2 = vec2(18.0, 16.0);
/// Plates are no wider than this; longer sentences break.
const WIDEST: f32 = 300.0;

/// Sets words beside a place, inside `room`.
pub(super) fn show_at(ui: &Ui, words: &PointerWords, place: Pos2, room: Rect) {
    let colours = theme::colours(theme_of(ui));
    let strong = if words.wrong { colours.accent } else { colours.strong };
    let mut galleys = Vec::new();
    ui.fonts_mut(|fonts| {
        let mut lay = |text: &str, font: FontId, colour: Color32| {
            galleys.push(fonts.layout(text.to_owned(), font, colour, WIDEST));
        };
        if !words.bold.is_empty() {
            lay(&words.bold, theme::bold(13.5), strong);
        }
        for line in words.soft.iter().filter(|line| !line.is_empty()) {
            lay(line, FontId::proportional(12.5), colours.soft);
        }
    });
    if galleys.is_empty() {
        return;
    }
    let width = galleys.iter().map(|galley| galley.size().x).fold(0.0, f32::max);
    let height: f32 = galleys.iter().map(|galley| galley.size().y).sum::<f32>() + 2.0 * (galleys.len() - 1) as f32;
    let size = vec2(width, height) + 2.0 * PAD;
    let mut min = place + AWAY;
    // On the other side of the pointer where there is no room.
    if min.x + size.x > room.right() - 4.0 {
        min.x = (place.x - AWAY.x - size.x).max(room.left() + 4.0);
    }
    if min.y + size.y > room.bottom() - 4.0 {
        min.y = (place.y - AWAY.y - size.y).max(room.top() + 4.0);
    }
    let plate = Rect::from_min_size(min, size);
    let painter = ui.painter();
    painter.add(shadow(plate, 5));
    painter.rect(
        plate,
        CornerRadius::same(5),
        colours.paper,
        Stroke::new(1.0, colours.accent.gamma_multiply(0.45)),
        StrokeKind::Inside,
    );
    let mut at = min + PAD;
    for galley in galleys {
        let down = galley.size().y + 2.0;
        painter.galley(at, galley, strong);
        at.y += down;
    }
}

/// The theme that the window has now.
pub(super) fn theme_of(ui: &Ui) -> egui::Theme {
    if ui.visuals().dark_mode {
        egui::Theme::Dark
    } else {
        egui::Theme::Light
    }
}

/// A faint shadow under something that lies on the sheet.
pub(super) fn shadow(rect: Rect, rounded: u8) -> Shape {
    egui::Shadow {
        offset: [0, 1],
        blur: 6,
        spread: 0,
        color: Color32::from_black_alpha(28),
    }
    .as_shape(rect, CornerRadius::same(rounded))
    .into()
}
