//! Crops and materials, read from `assets/`. Every value carries where it comes from and how it was read there.
//!
//! The entry point is [`Catalog::built_in`]. The files in `assets/` are read once; what cannot be read is left out
//! and named in [`Catalog::problems`], so a slip in an asset never stops the program.

mod built_in;
mod crop;
mod file;
mod growth;
mod ids;
mod material;
mod read_crop;
mod reader;
mod row_amount;
mod source;

pub use built_in::Catalog;
pub use crop::{Crop, Hardiness, Hilling, NitrogenNeed, PlantingMethod, Season};
pub use growth::{Roots, SoilTemperatures, StageLengths, Stages, WaterUse};
pub use ids::{CropId, MaterialId, StageId};
pub use material::{Analysis, Material};
pub use row_amount::{RowAmount, RowMeasure};
pub use source::{Citation, Ends, Mark, SourceKey, Sourced};
