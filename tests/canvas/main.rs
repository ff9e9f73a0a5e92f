//! The sheet under the hand: every test drives the canvas as a person would and reads the layout, not the pixels.

#![expect(clippy::unwrap_used, reason = "a test that cannot go on says so by stopping")]

mod choosing;
mod dragging;
mod drawing;
mod keyboard;
mod looking;
mod measures;
mod splitting;
mod table;
