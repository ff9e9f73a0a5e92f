//! The sheets floor: the drawing as data, pages, and the files painted from them.

#![expect(clippy::unwrap_used, clippy::panic, reason = "a test that cannot go on fails there")]

mod crop_keys;
mod drawing;
#[path = "../fed/garden.rs"]
mod fed_garden;
mod feeding;
mod feeding_pages;
mod feedings;
mod files;
mod map_parts;
mod order;
mod pages;
mod pdf;
mod sample;
mod scales;
mod spreadsheet;
mod words;
