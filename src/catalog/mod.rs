//! Crops, materials and what is published on feeding, read from `assets/`. Every value carries where it comes from and
//! how it was read there.
//!
//! The entry point is [`Catalog::built_in`]. The files in `assets/` are read once; what cannot be read is left out
//! and named in [`Catalog::problems`], so a slip in an asset never stops the program.

mod built_in;
mod cite;
mod crop;
mod entries;
mod feeding;
mod file;
mod growth;
mod ids;
mod load;
mod lookup;
mod material;
mod organic;
mod read_crop;
mod read_material;
mod reader;
mod row_amount;
mod source;
mod stock;
mod texts;

pub use crop::{Crop, Hardiness, Hilling, NitrogenNeed, PlantingMethod, Season};
pub use feeding::{
    Caution, CautionTopic, FeedingStage, GeneralNeed, NeedKind, Programme, ProgrammeStep, RateOf, Repeat, StepAmount,
    StepPlacement, StepRate,
};
pub use growth::{Roots, SoilTemperatures, StageLengths, Stages, WaterUse};
pub use ids::{CropId, MaterialId, ProgrammeId, StageId};
pub use lookup::Catalog;
pub use material::{Analysis, Material};
pub use organic::{OrganicRule, OrganicStanding};
pub use row_amount::{RowAmount, RowMeasure};
pub use source::{Citation, Ends, Mark, SourceKey, Sourced};
pub use stock::StockClass;
pub use texts::CatalogTexts;
