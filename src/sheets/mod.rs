//! Paper and files made from a plan. Knows nothing of the window.
//!
//! [`draw`](drawing::draw) makes the one drawing as a list of [`Mark`]s in ground metres; [`Placing`] puts it on
//! a screen or a sheet of paper. [`map_pages`](page::map_pages) makes finished sheets of it, with the tables of
//! the rows; [`map_files`] paints those as PDF, SVG or PNG.

pub mod drawing;
pub mod dressing_words;
pub mod feeding_list;
mod file_options;
mod held;
mod map_file;
mod mark;
pub mod order_list;
pub mod page;
mod palette;
mod pdf;
mod placing;
mod png;
pub mod stand_words;
mod svg;
pub mod tables;
pub mod type_metrics;

pub use file_options::{FileError, FileOptions, USUAL_DPI};
pub use held::held_together;
pub use map_file::{MapFile, MapKind, map_files};
pub use mark::{Anchor, Dash, Face, Hatch, Ink, Mark, Pen, Words};
pub use palette::{Colour, Palette};
pub use pdf::pdf;
pub use placing::Placing;
pub use png::{MOST_DPI, png};
pub use svg::{SvgFonts, svg};
