//! Quillet, a drawing table for growers who plant in rows.
//!
//! What a grower enters is a [`layout::Layout`]; what follows from it is a plan; the window, the printed
//! sheet, the tables and the command line are faces of the same plan.
//!
//! The house, floor by floor from the ground up; a floor imports only from itself and from floors below it.
//!
//! - [`quantity`]: lengths, areas, weights and rates with units; reading what a grower types, showing it back.
//! - [`geometry`]: plane geometry and row fitting. No crop, no screen.
//! - [`catalog`]: crops and materials, read from `assets/`; every value carries its source.
//! - [`layout`]: the document: ground, beds, plantings, dressings, notes; edits, history, the file.
//! - [`agronomy`]: pure functions of the trade: stand, seed, nutrients, measures, tape; each formula with its source.
//! - [`plan`]: layout to plan: gives every bed its rows and every row its numbers; recomputes what an edit touched.
//! - [`sheets`]: paper and files made from a plan.
//! - [`app`]: the window.
//! - [`cli`]: the command line.

pub mod agronomy;
pub mod app;
pub mod catalog;
pub mod cli;
pub mod geometry;
pub mod layout;
pub mod plan;
pub mod quantity;
pub mod sheets;
