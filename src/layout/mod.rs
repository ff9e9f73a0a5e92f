//! The document: ground, beds, plantings, dressings and notes; edits and their history; checks on input;
//! the file and its migrations.

mod bed;
mod document;
mod ground;
mod ids;
mod item;
mod naming;
mod own;
mod own_limits;
mod shelf;

mod check;
mod check_seed;
mod defaults;
mod edit;
pub mod file;
mod history;
pub mod limits;
pub mod store;

pub use bed::{Amount, Basis, Bed, BedGround, Dressing, Placement, Planting, Raised, Sowing, Tape, Water};
pub use check::{Problem, check};
pub use defaults::season_planned_on;
pub use document::{Layout, Note, Place};
pub use edit::{BedChange, Edit, EditError, LotContents, ObstacleChange, OutlineChange, PlotChange, SeedEdit};
pub use ground::{Obstacle, ObstacleKind, Plot, Shape};
pub use history::History;
pub use ids::{BedId, DressingId, LotId, NoteId, ObstacleId, PlotId};
pub use item::Item;
pub use own::{OwnCrop, OwnCultivar, OwnHarvest, OwnValues};
pub use shelf::{LotGermination, Packet, PacketList, SeedAmount, SeedLot, cultivar_key, same_cultivar};
