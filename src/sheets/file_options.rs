//! How map files are written, and why one could not be.

use jiff::civil::Date;
use thiserror::Error;

use super::palette::Palette;

/// Dots per inch of pictures when nothing else is asked for.
pub const USUAL_DPI: f64 = 150.0;

/// How map files are written.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FileOptions {
    /// Black and greys only.
    pub black_and_white: bool,
    /// Dots per inch of a picture, 10 to 600.
    pub dpi: f64,
    /// The day noted in a PDF as the day it was made.
    pub date: Date,
}

impl FileOptions {
    /// Colour, at the usual dots per inch, made on a day.
    pub const fn on(date: Date) -> Self {
        Self {
            black_and_white: false,
            dpi: USUAL_DPI,
            date,
        }
    }

    /// The colours of the inks.
    pub const fn palette(&self) -> Palette {
        if self.black_and_white {
            Palette::BlackAndWhite
        } else {
            Palette::Paper
        }
    }
}

/// Why a map file could not be made.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum FileError {
    /// There is no sheet to write.
    #[error("There is no sheet to write")]
    NoSheet,
    /// A sheet without a size.
    #[error("A sheet has no size")]
    NoSize,
    /// An embedded font does not read.
    #[error("A font that comes with the program does not read")]
    Font,
    /// The PDF breaks a rule of accessible or archival files.
    #[error("The PDF could not be made. {0}")]
    Pdf(String),
    /// The picture could not be made.
    #[error("The picture could not be made. {0}")]
    Picture(String),
}
