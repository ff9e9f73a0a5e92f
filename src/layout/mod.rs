//! The document: ground, beds, plantings, dressings and notes; edits and their history; checks on input;
//! the file and its migrations.

mod bed;
mod document;
mod ground;
mod ids;
mod item;
mod naming;

pub use bed::{Amount, Basis, Bed, BedGround, Dressing, Placement, Planting, Sowing, Tape, Water};
pub use document::{Layout, Note, Place};
pub use ground::{Obstacle, ObstacleKind, Plot, Shape};
pub use ids::{BedId, DressingId, NoteId, ObstacleId, PlotId};
pub use item::Item;
