//! Names of catalogue entries in files and in the program.

/// Names a crop in the catalogue or among the grower's own.
#[derive(Clone, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct CropId(pub String);

/// Names a material in the catalogue or among the grower's own.
#[derive(Clone, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct MaterialId(pub String);
