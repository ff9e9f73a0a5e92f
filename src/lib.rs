//! Quillet, a drawing table for growers who plant in rows.
//!
//! The house, floor by floor; a floor imports only from itself and from floors below it.
//!
//! - [`quantity`]: lengths, areas, weights and rates with units; reading what a grower types, showing it back.
//! - [`geometry`]: plane geometry and row fitting.

pub mod geometry;
pub mod quantity;
