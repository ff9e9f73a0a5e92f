//! The one drawing: a plain list of marks that the window, the PDF and the SVG each only paint.
//!
//! Places are in ground metres (x east, y north) until [`Mark::placed`] puts them on paper or screen; widths of
//! pens and sizes of letters are always in points of the paper or screen, whatever the scale.

use crate::geometry::Point;

/// One mark of the drawing. Later marks lie over earlier ones.
#[derive(Clone, Debug, PartialEq)]
pub enum Mark {
    /// A line through points, closed or not.
    Line {
        /// Where it runs.
        points: Vec<Point>,
        /// Back to the first point.
        closed: bool,
        /// What it is drawn with.
        pen: Pen,
    },
    /// Many separate straight strokes with one pen: rows, ticks, plants.
    Strokes {
        /// Where each starts and ends.
        strokes: Vec<[Point; 2]>,
        /// What they are drawn with.
        pen: Pen,
    },
    /// Many equal dots: plants when near.
    Dots {
        /// Their middles.
        at: Vec<Point>,
        /// Their radius in points.
        radius: f32,
        /// Their ink.
        ink: Ink,
    },
    /// A filled shape: rings filled even-odd, the first the outline, the others holes.
    Fill {
        /// The rings.
        rings: Vec<Vec<Point>>,
        /// The ink.
        ink: Ink,
    },
    /// A hatched shape: rings as in [`Mark::Fill`].
    Hatch {
        /// The rings.
        rings: Vec<Vec<Point>>,
        /// The pattern.
        hatch: Hatch,
        /// What its strokes are drawn with.
        pen: Pen,
    },
    /// Words.
    Words(Words),
}

/// Words at a place.
#[derive(Clone, Debug, PartialEq)]
pub struct Words {
    /// The place that `anchor` is about.
    pub at: Point,
    /// The words, one line.
    pub text: String,
    /// Which part of the words stands at the place.
    pub anchor: Anchor,
    /// How they are set.
    pub face: Face,
    /// Turned by so many degrees, anticlockwise as read.
    pub turn: f32,
    /// Laid on a plate of this ink first, so that lines behind do not run through.
    pub plate: Option<Ink>,
}

/// What a line is drawn with.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pen {
    /// Width in points.
    pub width: f32,
    /// Its ink.
    pub ink: Ink,
    /// Its dashes.
    pub dash: Dash,
}

/// Dashes of a line, in points. Crops are told apart by these as well as by colour.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Dash {
    /// No gaps.
    #[default]
    Solid,
    /// Long dashes.
    Long,
    /// Short dashes.
    Short,
    /// Dots.
    Dotted,
    /// A long dash and a dot.
    LongDot,
}

/// Inks by what they are for; each face of the drawing has its own table of colours for them.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Ink {
    /// The paper itself.
    Paper,
    /// Lines and words of the first rank.
    Strong,
    /// Words and measures of the second rank.
    Soft,
    /// Hairlines.
    Faint,
    /// What is chosen or needs a look.
    Accent,
    /// What is chosen, as a tint to lay under it.
    AccentTint,
    /// Ground outside of every bed.
    Ground,
    /// Something in the way.
    Obstacle,
    /// The line of a crop: one of [`Ink::CROPS`] colours.
    Crop(u8),
    /// The ground of a crop, the same colour at low strength.
    CropTint(u8),
}

impl Ink {
    /// How many crop colours there are before they come round again.
    pub const CROPS: u8 = 7;
}

/// A hatch pattern.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hatch {
    /// Direction of the strokes, in degrees clockwise from north.
    pub bearing: f64,
    /// From stroke to stroke, in points.
    pub gap: f32,
    /// A second set of strokes square to the first.
    pub crossed: bool,
}

/// Which part of the words stands at their place.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Anchor {
    /// The middle of the words, both ways.
    #[default]
    Middle,
    /// The left end of the base line.
    Left,
    /// The middle of the base line.
    Centre,
    /// The right end of the base line.
    Right,
}

/// How words are set.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Face {
    /// Size in points.
    pub size: f32,
    /// Bold.
    pub bold: bool,
    /// Their ink.
    pub ink: Ink,
}

impl Dash {
    /// Lengths of strokes and gaps in turn, in points; empty for a line without gaps.
    pub const fn pattern(self) -> &'static [f32] {
        match self {
            Self::Solid => &[],
            Self::Long => &[9.0, 3.0],
            Self::Short => &[4.0, 2.5],
            Self::Dotted => &[1.2, 2.4],
            Self::LongDot => &[8.0, 2.4, 1.2, 2.4],
        }
    }

    /// Length after which the dashes come round again, in points; 0 for a line without gaps.
    pub fn period(self) -> f32 {
        self.pattern().iter().sum()
    }
}
