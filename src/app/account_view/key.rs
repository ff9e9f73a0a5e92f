//! What the lines of the plot mean. Told by their strokes as well as by colour, so that it holds without any.

use egui::{Color32, RichText, Sense, Shape, Stroke, Ui, vec2};
use egui_plot::LineStyle;

use crate::app::theme::{self, Colours, ThemeInForce as _};

/// One kind of line.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Kind {
    /// What is still wanted after credits.
    Wanted,
    /// As it was planned.
    Planned,
    /// What was really put down.
    Done,
    /// What is still ahead now.
    Ahead,
}

impl Kind {
    const ALL: [Self; 4] = [Self::Wanted, Self::Planned, Self::Done, Self::Ahead];

    pub(super) const fn name(self) -> &'static str {
        match self {
            Self::Wanted => "still wanted after credits",
            Self::Planned => "as planned",
            Self::Done => "done",
            Self::Ahead => "ahead",
        }
    }

    pub(super) const fn width(self) -> f32 {
        match self {
            Self::Wanted => 1.2,
            Self::Planned => 1.5,
            Self::Done => 2.5,
            Self::Ahead => 2.0,
        }
    }

    pub(super) const fn style(self) -> LineStyle {
        match self {
            Self::Wanted | Self::Done => LineStyle::Solid,
            Self::Planned => LineStyle::Dashed { length: 8.0 },
            Self::Ahead => LineStyle::Dotted { spacing: 6.0 },
        }
    }

    pub(super) const fn colour(self, colours: &Colours) -> Color32 {
        match self {
            Self::Wanted => colours.strong,
            Self::Planned => colours.soft,
            Self::Done | Self::Ahead => colours.accent,
        }
    }
}

/// Draws the key in one line.
pub(super) fn show(ui: &mut Ui) {
    let colours = theme::colours(ui.theme_in_force());
    for kind in Kind::ALL {
        let (rect, _) = ui.allocate_exact_size(vec2(28.0, 14.0), Sense::hover());
        let ends = [rect.left_center(), rect.right_center()];
        let stroke = Stroke::new(kind.width(), kind.colour(&colours));
        if kind == Kind::Wanted {
            ui.painter().rect_filled(rect, 0.0, band(&colours));
        }
        match kind.style() {
            LineStyle::Solid => {
                ui.painter().line_segment(ends, stroke);
            }
            LineStyle::Dashed { length } => {
                ui.painter()
                    .extend(Shape::dashed_line(&ends, stroke, length, length * 0.6));
            }
            LineStyle::Dotted { spacing } => {
                let dots = Shape::dotted_line(&ends, stroke.color, spacing, stroke.width * 0.6);
                ui.painter().extend(dots);
            }
        }
        ui.label(RichText::new(kind.name()).size(12.0).color(colours.soft));
        ui.add_space(8.0);
    }
}

/// The tint of the published range.
pub(super) fn band(colours: &Colours) -> Color32 {
    colours.strong.gamma_multiply(0.10)
}
