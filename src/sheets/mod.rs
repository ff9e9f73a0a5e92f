//! Paper and files made from a plan. Knows nothing of the window.

mod mark;

pub use mark::{Anchor, Dash, Face, Hatch, Ink, Mark, Pen};
