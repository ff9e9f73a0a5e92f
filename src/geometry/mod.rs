//! Plane geometry and row fitting. No crop, no screen, no file.
//!
//! Plan coordinates: x east, y north, in metres.

mod point;

pub use point::Point;
