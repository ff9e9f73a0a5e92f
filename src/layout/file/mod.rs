//! The layout file: text that people and version control can read.
//!
//! It is written in Rusty Object Notation. Lengths are in metres and keys name the unit; each corner stands on a
//! line of its own, so that a difference between two versions shows what changed. Equal layouts give equal bytes.
//! Every version from the first on is read: each is turned into the next, and the last into the layout.

mod error;
mod header;
mod v1;
mod v2;
mod value;
mod wording;

pub use error::{FileError, TextPlace};

use ron::extensions::Extensions;
use ron::ser::PrettyConfig;

use super::check::{Problem, check};
use super::check_seed::check_twice;
use super::document::Layout;
use super::item::Item;
use error::Misfit;

/// The version of the file that is written.
pub const VERSION: u32 = v2::VERSION;

/// Stands at the head of every file.
const HEAD: &str = "\
// A Quillet layout.
// Keys that end in _m are in metres and in _deg in degrees; amounts are in kilograms.
// Places are (east, north) of the sheet's own origin; bearings run clockwise from north.
";

/// Reads a layout from the text of a file, of any version from the first on.
///
/// # Errors
/// [`FileError`] says what is wrong, with line and column where there is a place for it. A layout that is given
/// back has no [`check`] problem.
pub fn read(text: &str) -> Result<Layout, FileError> {
    // Some editors put a mark of the encoding in front; it is no part of the text.
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let misfit = |misfit: Misfit| FileError::Misfit {
        place: text.find(&misfit.words()).map(|offset| TextPlace::at(text, offset)),
        what: misfit.to_string(),
        hint: misfit.hint().to_owned(),
    };
    let latest = match header::version(text)? {
        1 => parse::<v1::Layout>(text)?.into_v2().map_err(misfit)?,
        VERSION => parse::<v2::Layout>(text)?,
        0 => return Err(FileError::NoSuchVersion { found: 0 }),
        found => return Err(FileError::Newer { found }),
    };
    let layout = latest.into_layout().map_err(misfit)?;
    if let Some((problem, words)) = check_twice(&layout).into_iter().next() {
        return Err(FileError::Misfit {
            // The last of them is the one too many.
            place: text.rfind(&words).map(|offset| TextPlace::at(text, offset)),
            what: problem.what,
            hint: problem.hint,
        });
    }
    match check(&layout).into_iter().next() {
        Some(problem) => Err(unsound(text, problem)),
        None => Ok(layout),
    }
}

/// The text of a layout's file.
///
/// Only a layout without a [`check`] problem can be read back; whoever stores it sees to that, as
/// [`store::save`](super::store::save) does.
pub fn write(layout: &Layout) -> String {
    let body = notation().to_string_pretty(&v2::Layout::from(layout), PrettyConfig::new().new_line("\n"));
    debug_assert!(body.is_ok(), "writing plain values into memory cannot fail");
    format!("{HEAD}{}\n", body.unwrap_or_default())
}

/// How the notation is read and written: what may be left out stands plainly where it is given.
fn notation() -> ron::Options {
    ron::Options::default().with_default_extension(Extensions::IMPLICIT_SOME)
}

fn parse<T: serde::de::DeserializeOwned>(text: &str) -> Result<T, FileError> {
    notation().from_str(text).map_err(|error| wording::worded(text, &error))
}

/// A problem that shows only when the whole is seen. Most of these are ids; their place is looked up.
fn unsound(text: &str, problem: Problem) -> FileError {
    let id = match problem.about {
        Item::Plot(id) => Some(id.0),
        Item::Obstacle(_, id) => Some(id.0),
        Item::Bed(id) => Some(id.0),
        Item::Dressing(_, id) => Some(id.0),
        Item::Note(id) => Some(id.0),
        Item::Lot(id) => Some(id.0),
        Item::Shed(id) => Some(id.0),
        Item::Layout | Item::Corner(..) | Item::Side(..) | Item::BedCorner(..) | Item::Row(..) => None,
    };
    let place = match id {
        Some(id) => header::last_id(text, id),
        // Of the head of the layout, only the season is not checked while it is read.
        None => ["season:", "year:"]
            .into_iter()
            .find_map(|key| text.find(key))
            .map(|offset| TextPlace::at(text, offset)),
    };
    FileError::Misfit {
        place,
        what: problem.what,
        hint: problem.hint,
    }
}
