//! The window, driven by what can be seen in it: labels, keys and clicks. No display is needed.
#![expect(clippy::unwrap_used, reason = "a test may stop where it fails")]

mod actions;
mod crop_book;
#[path = "../fed/garden.rs"]
mod fed_garden;
mod feeding;
mod feeding_typed;
mod feeding_views;
mod files;
mod first_map;
mod ledger;
mod own_crops;
mod picking;
mod shed;
mod sowing;
mod sowing_answers;
mod sowing_forms;
mod steady;
mod steps_of_undo;
mod unit_field;
mod window;
