//! The document: ground, beds, plantings, dressings, shelf, shed and notes; edits and their history; checks on input;
//! the file and its migrations.

mod bed;
mod bed_fit;
mod document;
mod dressing;
mod feeding;
mod ground;
mod ids;
mod item;
mod naming;
mod own;
mod own_limits;
mod shed;
mod shelf;

mod check;
mod check_feeding;
mod check_seed;
mod defaults;
mod edit;
pub mod file;
mod history;
pub mod limits;
pub mod store;

pub use bed::{Bed, BedGround, Planting, Raised, Sowing, Tape, Water};
pub use bed_fit::{BedFit, BedFitError};
pub use check::{Problem, check};
pub use defaults::season_planned_on;
pub use document::{Layout, Note, Place};
pub use dressing::{Amount, Basis, Dressing, Injecting, Placement, Used, When};
pub use edit::{
    BedChange, Edit, EditError, LotContents, ObstacleChange, OutlineChange, PlotChange, SeedEdit, ShedEdit,
};
pub use feeding::{Credit, CreditKind, Feeding, Heap, Lime, NutrientRate, NutrientUnits, Recommendation};
pub use ground::{Obstacle, ObstacleKind, Plot, Shape};
pub use history::History;
pub use ids::{BedId, DressingId, LotId, NoteId, ObstacleId, PlotId, ShedId};
pub use item::Item;
pub use naming::with_cultivar;
pub use own::{Kind, OwnCrop, OwnCultivar, OwnHarvest, OwnStart, OwnValues};
pub use own_limits::MOST_YEARS_KEPT;
pub use shed::{Label, ShedMaterial};
pub use shelf::{Form, LotGermination, Packet, PacketList, SeedAmount, SeedLot, cultivar_key, same_cultivar};
