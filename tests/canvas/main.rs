//! The sheet under the hand: every test drives the canvas as a person would and reads the layout, not the pixels.

mod choosing;
mod dragging;
mod drawing;
mod keyboard;
mod looking;
mod measures;
mod table;
