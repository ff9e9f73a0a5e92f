//! What is wrong with the text of a layout file.

use std::fmt;

use thiserror::Error;

use super::VERSION;

/// A place in a text, both counted from 1; the column counts letters.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct TextPlace {
    /// The line.
    pub line: usize,
    /// The letter in the line.
    pub column: usize,
}

impl TextPlace {
    /// The place so many bytes into a text.
    pub(super) fn at(text: &str, offset: usize) -> Self {
        let before = text.get(..offset).unwrap_or(text);
        let line_start = before.rfind('\n').map_or(0, |end| end + 1);
        Self {
            line: before.matches('\n').count() + 1,
            column: before.get(line_start..).unwrap_or_default().chars().count() + 1,
        }
    }
}

impl fmt::Display for TextPlace {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "line {}, column {}", self.line, self.column)
    }
}

/// Why a text is not a layout that can be opened.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum FileError {
    /// Nothing in it.
    #[error("The file is empty.")]
    Empty,
    /// It does not start as a layout does.
    #[error("This is not a layout: at {place} `{expected}` was expected.")]
    NotALayout {
        /// Where it stops looking like one.
        place: TextPlace,
        /// What a layout has there.
        expected: &'static str,
    },
    /// Written by a later version of the program.
    #[error("This layout is of version {found}; this program reads versions up to {VERSION}.")]
    Newer {
        /// The version in the file.
        found: u32,
    },
    /// A version that never was.
    #[error("This layout says that it is of version {found}; versions start at 1.")]
    NoSuchVersion {
        /// The version in the file.
        found: u32,
    },
    /// Something in it cannot be read.
    #[error("At {place}: {what}")]
    Broken {
        /// Where.
        place: TextPlace,
        /// What was expected there, as a sentence.
        what: String,
        /// What to do, as a sentence.
        hint: String,
    },
    /// It can be read, but its parts do not fit together.
    #[error("{}{what}", .place.map(|place| format!("At {place}: ")).unwrap_or_default())]
    Misfit {
        /// Where, if it can be told.
        place: Option<TextPlace>,
        /// What does not fit, as a sentence.
        what: String,
        /// What to do, as a sentence.
        hint: String,
    },
}

impl FileError {
    /// The line and column, where there is one.
    pub const fn place(&self) -> Option<TextPlace> {
        match self {
            Self::NotALayout { place, .. } | Self::Broken { place, .. } => Some(*place),
            Self::Misfit { place, .. } => *place,
            Self::Empty | Self::Newer { .. } | Self::NoSuchVersion { .. } => None,
        }
    }

    /// What to do about it, as a sentence.
    pub fn hint(&self) -> &str {
        match self {
            Self::Empty => "Choose another file; the version before it may stand next to it, ending in .previous.ron.",
            Self::NotALayout { .. } => "Choose a layout that this program wrote.",
            Self::Newer { .. } => "Open it with the program that wrote it, or get a newer version of this one.",
            Self::NoSuchVersion { .. } => "Correct the number in the file.",
            Self::Broken { hint, .. } | Self::Misfit { hint, .. } => hint,
        }
    }
}

/// Parts of a file that do not fit together.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub(super) enum Misfit {
    /// `bed_order` does not name every bed once.
    #[error("`bed_order` does not name every bed of the file once.")]
    BedOrder,
    /// A bed of a plot that is not in the file.
    #[error("{bed} lies in a plot named \"{plot}\", and the file has none of that name.")]
    NoSuchPlot {
        /// The bed.
        bed: String,
        /// The plot's name.
        plot: String,
    },
    /// Two plots of one name, where beds name their plot.
    #[error("Two plots are named \"{plot}\", so it cannot be told which one a bed lies in.")]
    TwoPlots {
        /// Their name.
        plot: String,
    },
    /// Something in the way with two shapes, or with none.
    #[error("{obstacle} needs either `corners_ft`, or `centre_ft` and `radius_ft`.")]
    Shape {
        /// What stands in the way.
        obstacle: String,
    },
}

impl Misfit {
    /// What to do about it, as a sentence.
    pub(super) const fn hint(&self) -> &'static str {
        match self {
            Self::BedOrder => "Take the key `bed_order` out: beds are then listed plot after plot.",
            Self::NoSuchPlot { .. } => "Correct the name of the plot there.",
            Self::TwoPlots { .. } => "Give one of them another name.",
            Self::Shape { .. } => "Give the one or the other.",
        }
    }

    /// Words in the file that stand where it is wrong.
    pub(super) fn words(&self) -> String {
        match self {
            Self::BedOrder => "bed_order".to_owned(),
            Self::NoSuchPlot { plot, .. } => format!("plot: {plot:?}"),
            Self::TwoPlots { plot } => format!("name: {plot:?}"),
            Self::Shape { obstacle } => format!("name: {obstacle:?}"),
        }
    }
}
