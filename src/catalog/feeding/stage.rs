//! Stages of growth at which growers feed.

use crate::catalog::ids::{CropId, StageId};
use crate::catalog::source::Sourced;
use crate::quantity::Fraction;

/// A stage of growth at which growers feed: "knee-high".
#[derive(Clone, Debug, PartialEq)]
pub struct FeedingStage {
    /// Its name in files.
    pub id: StageId,
    /// Its name for people, and who names it as a time to feed.
    pub name: Sourced<String>,
    /// The crops that have it; all of them when empty.
    pub crops: Vec<CropId>,
    /// When it comes about, as a part of the time from planting or setting out to the first harvest; 0 before planting
    /// and 1 from the first harvest on. It puts a dressing on a time axis and is no forecast: go by the look of the
    /// crop.
    pub at: Sourced<Fraction>,
}

impl FeedingStage {
    /// Whether the crop has this stage.
    pub fn is_of(&self, crop: &CropId) -> bool {
        self.crops.is_empty() || self.crops.contains(crop)
    }
}
