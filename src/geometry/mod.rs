//! Plane geometry and row fitting. No crop, no screen, no file.
//!
//! Plan coordinates: x east, y north, in metres.

mod point;
mod skeleton;

pub use point::Point;
pub use skeleton::{Lines, Region, Remainder, RowFit};
