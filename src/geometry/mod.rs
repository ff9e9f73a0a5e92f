//! Plane geometry and row fitting. No crop, no screen, no file.
//!
//! Plan coordinates: x east, y north, in metres.
//!
//! - [`ground`] answers where rows may stand: a [`Region`] of pieces with holes.
//! - [`fit_rows`] lays row lines over a region and cuts them by it: a [`RowFit`].
//! - [`part`] parts an outline along a line.
//! - [`PlantRule`] counts and places plants on a piece of row.
//! - [`polygon`] changes and measures rings of corners for the drawing tools; [`triangles`] fills a region.

mod boolean;
mod bounds;
mod contact;
mod ground;
mod label;
mod offset;
mod parting;
mod passing;
mod piece;
mod plants;
mod point;
pub mod polygon;
mod region;
mod region_error;
mod ring;
mod row_fit;
mod row_rule;
mod scan;
mod sides;
mod triangles;
mod wording;

pub use bounds::Bounds;
pub use ground::{Clearing, ground};
pub use parting::{Parted, part};
pub use piece::Ground;
pub use plants::{Lines, PlantError, PlantRule, plants_on};
pub use point::Point;
pub use region::Region;
pub use region_error::{RegionError, RingName};
pub use ring::{FARTHEST, MAX_CORNERS};
pub use row_fit::{Piece, Row, RowFit, fit_rows};
pub use row_rule::{MAX_PIECES, MAX_ROW_LINES, Remainder, RowError, RowRule};
pub use triangles::{Triangles, triangles};

/// Two places closer than this are one place to the arithmetic: a nanometre, well above what binary fractions
/// lose on coordinates of a thousand kilometres' reach, and far below anything a person can type or measure.
const SAME_PLACE: f64 = 1e-9;

/// Ground smaller than this is nothing: a square millimetre. Smaller, and rounding left between two sides that
/// were meant to be one would show up as pieces of ground; larger, and a hand-typed stake could vanish.
const NO_AREA: f64 = 1e-6;
