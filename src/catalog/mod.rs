//! Crops and materials, read from `assets/`. Every value carries where it comes from and how it was read there.
//!
//! The entry point is [`Catalog::built_in`]. The files in `assets/` are read once; what cannot be read is left out
//! and named in [`Catalog::problems`], so a slip in an asset never stops the program.

mod built_in;
mod crop;
mod file;
mod ids;
mod material;
mod reader;
mod source;

pub use built_in::Catalog;
pub use crop::{Crop, Hardiness, Hilling, PlantingMethod};
pub use ids::{CropId, MaterialId};
pub use material::{Analysis, Material};
pub use source::{Citation, Ends, Mark, SourceKey, Sourced};
