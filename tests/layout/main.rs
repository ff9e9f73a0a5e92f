//! The layout document: edits, history, checks, the file, and where it is kept.

#![expect(
    clippy::expect_used,
    clippy::panic,
    reason = "what tests share may stop a test, as a test itself may"
)]

mod any_layout;
mod autosave;
mod broken_files;
mod checks;
mod defaults;
mod edits;
mod feeding_file;
mod file_text;
mod garden;
mod history;
mod own_crops_file;
mod properties;
mod seed_file;
mod sides;
mod store;
mod typed_units;
