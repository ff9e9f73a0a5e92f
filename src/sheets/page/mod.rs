//! Sheets to carry outside: the map at a true scale, the tables of the rows, the order list, and the fertilizer
//! sheet.
//!
//! [`map_pages`], [`order_pages`] and [`feeding_pages`] give finished [`Frame`]s; the writers of PDF, SVG and PNG only paint them.

mod feeding_sheet;
mod feeding_table;
mod frame;
mod heading;
mod map_key;
mod map_parts;
mod map_sheet;
mod options;
mod order_sheet;
mod pages;
mod paper;
mod scale;
mod sheet;
mod table;
mod word_table;

pub use feeding_sheet::feeding_pages;
pub use frame::{CellHead, Frame, Part, Role};
pub use options::{PageError, PageOptions, ScaleChoice};
pub use order_sheet::{SEED_CAUTION, order_pages};
pub use pages::{DRESSING_CAUTION, map_pages};
pub use paper::{POINTS_PER_MILLIMETRE, Paper, Turned};
pub use scale::{Scale, ScaleError};
