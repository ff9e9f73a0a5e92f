//! Keeps words from lying over each other: every word asks for room before it is set.

use super::view::View;
use crate::geometry::{Bounds, Point};
use crate::sheets::type_metrics;

/// The ground under what has been set so far.
#[derive(Default)]
pub(super) struct Room {
    taken: Vec<Bounds>,
    avoided: Vec<Bounds>,
}

impl Room {
    /// Past so many pieces of taken ground the sheet is full, and no further words ask.
    const MOST: usize = 4000;

    /// Whether a box is free of everything that was set.
    pub(super) fn is_free(&self, wanted: Bounds) -> bool {
        self.taken.len() < Self::MOST && !self.taken.iter().any(|taken| taken.overlaps(wanted))
    }

    /// Takes a box, free or not.
    pub(super) fn take(&mut self, taken: Bounds) {
        if self.taken.len() < Self::MOST {
            self.taken.push(taken);
        }
    }

    /// Marks a box as ground that labels had better leave alone.
    pub(super) fn avoid(&mut self, avoided: Bounds) {
        if self.avoided.len() < Self::MOST {
            self.avoided.push(avoided);
        }
    }

    /// Whether a box lies on ground that had better be left alone.
    pub(super) fn is_avoided(&self, wanted: Bounds) -> bool {
        self.avoided.iter().any(|avoided| avoided.overlaps(wanted))
    }

    /// Takes a box if it is free, and says whether it was.
    pub(super) fn claim(&mut self, wanted: Bounds) -> bool {
        let free = self.is_free(wanted);
        if free {
            self.take(wanted);
        }
        free
    }
}

/// The ground under words whose middle stands at a place, turned by so many degrees, with `pad` points round
/// them.
pub(super) fn words_box(view: &View, middle: Point, text: &str, size: f32, bold: bool, turn: f64, pad: f64) -> Bounds {
    let half_width = type_metrics::width(text, size, bold) / 2.0 + pad;
    // Descenders hang below the base line and ascenders rise over the capitals by about a sixth of the size.
    let half_height = type_metrics::capital_height(size) / 2.0 + f64::from(size) / 6.0 + pad;
    let (sin, cos) = turn.to_radians().sin_cos();
    let (sin, cos) = (sin.abs(), cos.abs());
    Bounds::about(
        middle,
        view.metres(half_width * cos + half_height * sin),
        view.metres(half_width * sin + half_height * cos),
    )
}
