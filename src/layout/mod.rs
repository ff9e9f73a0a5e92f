//! The document: ground, beds, plantings, dressings and notes; edits and their history; checks on input;
//! the file and its migrations.

mod bed;
mod document;
mod ground;
mod ids;
mod item;
mod naming;

mod check;
mod defaults;
mod edit;
pub mod file;
mod history;
pub mod limits;
pub mod store;

pub use bed::{Amount, Basis, Bed, BedGround, Dressing, Placement, Planting, Sowing, Tape, Water};
pub use check::{Problem, check};
pub use document::{Layout, Note, Place};
pub use edit::{BedChange, Edit, EditError, ObstacleChange, OutlineChange, PlotChange};
pub use ground::{Obstacle, ObstacleKind, Plot, Shape};
pub use history::History;
pub use ids::{BedId, DressingId, NoteId, ObstacleId, PlotId};
pub use item::Item;
