//! What the hand is doing on the sheet.

use crate::layout::{ObstacleKind, PlotId};

/// What the pointer does on the sheet.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Tool {
    /// Chooses things, and drags corners, sides, needles and rows of what is chosen.
    #[default]
    Choose,
    /// Drags a rectangle.
    Rectangle(Drawn),
    /// Sets corner after corner.
    Corners(Drawn),
    /// Drags a circle from its middle.
    Circle(Drawn),
    /// Sets a note.
    Note,
    /// Splits a bed in two.
    Split(SplitWay),
}

/// Which way a bed is split.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SplitWay {
    /// Between two rows.
    BetweenRows,
    /// Square across all rows.
    AcrossRows,
}

/// What comes of the drawing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Drawn {
    /// A plot, with a bed that fills it.
    Plot,
    /// A bed in that plot.
    Bed(PlotId),
    /// Something in the way on that plot.
    Obstacle(PlotId, ObstacleKind),
}
