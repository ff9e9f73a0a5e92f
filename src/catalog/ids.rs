//! Names of catalogue entries in files and in the program.

/// Names a crop in the catalogue or among the grower's own.
#[derive(Clone, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct CropId(pub String);

impl CropId {
    /// A crop that is not chosen yet, for rows whose in-row spacing is known all the same.
    pub fn not_chosen() -> Self {
        Self(NOT_CHOSEN.to_owned())
    }

    /// Whether it stands for a crop that is not chosen yet.
    pub fn is_not_chosen(&self) -> bool {
        self.0 == NOT_CHOSEN
    }
}

/// No entry of the catalogue has this id.
const NOT_CHOSEN: &str = "not_chosen";

/// Names a material in the catalogue or among the grower's own.
#[derive(Clone, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct MaterialId(pub String);

/// Names a stage of growth at which a crop is fed.
#[derive(Clone, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct StageId(pub String);

/// Names a published programme of feeding.
#[derive(Clone, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct ProgrammeId(pub String);
