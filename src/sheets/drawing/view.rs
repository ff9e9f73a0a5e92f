//! What of the ground is looked at, how large, and on what.

use crate::geometry::Bounds;
use crate::layout::Item;

/// What of the ground is looked at, how large, and on what.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct View<'a> {
    /// The ground that is looked at. What lies wholly outside is not drawn.
    pub visible: Bounds,
    /// Points of paper or screen for each metre of ground.
    pub points_per_metre: f64,
    /// What it is drawn on.
    pub surface: Surface,
    /// What is chosen, drawn in the accent ink.
    pub chosen: &'a [Item],
    /// What is pointed at, drawn in the accent ink too.
    pub pointed: Option<Item>,
}

/// What the drawing is looked at on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Surface {
    /// A screen, read from an arm's length: letters are larger.
    Screen,
    /// Paper, read in the hand.
    Paper,
}

impl View<'_> {
    /// A view of paper, with nothing chosen.
    pub fn of_paper(visible: Bounds, points_per_metre: f64) -> View<'static> {
        View {
            visible,
            points_per_metre,
            surface: Surface::Paper,
            chosen: &[],
            pointed: None,
        }
    }

    /// A view of a screen, with nothing chosen.
    pub fn of_screen(visible: Bounds, points_per_metre: f64) -> View<'static> {
        View {
            surface: Surface::Screen,
            ..Self::of_paper(visible, points_per_metre)
        }
    }

    /// So many points of paper or screen as metres of ground.
    pub fn metres(&self, points: f64) -> f64 {
        points / self.points_per_metre
    }

    /// A letter size that is so many points on paper: larger on a screen.
    pub(super) fn letters(&self, points: f32) -> f32 {
        match self.surface {
            Surface::Paper => points,
            Surface::Screen => points * 1.3,
        }
    }

    /// The ground that marks are cut to: what is looked at and a little more, so that nothing ends in sight.
    pub(super) fn cutting(&self) -> Bounds {
        self.visible.grown(self.metres(CUT))
    }

    /// Whether this is chosen or pointed at.
    pub(super) fn is_lit(&self, item: Item) -> bool {
        self.pointed == Some(item) || self.chosen.contains(&item)
    }

    /// Whether a drawing can be made of it at all.
    pub(super) fn is_sound(&self) -> bool {
        let Bounds { min, max } = self.visible;
        min.is_finite()
            && max.is_finite()
            && min.x < max.x
            && min.y < max.y
            && self.points_per_metre.is_finite()
            && self.points_per_metre > 0.0
    }
}

/// How far past the visible ground marks may reach, in points.
pub const MARGIN: f64 = 24.0;
/// How far past the visible ground lines are cut, in points: half as far, so that what stands beside a line, such
/// as ticks and tape, stays within the margin too.
const CUT: f64 = MARGIN / 2.0;
