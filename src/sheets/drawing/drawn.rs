//! A bed with all that its drawing goes by.

use super::legend::CropKey;
use super::rows::Level;
use crate::geometry::Bounds;
use crate::layout::Bed;
use crate::plan::BedPlan;

/// A bed that can be drawn.
pub(super) struct Drawn<'a> {
    pub(super) bed: &'a Bed,
    pub(super) plan: &'a BedPlan,
    pub(super) key: Option<&'a CropKey>,
    pub(super) extent: Bounds,
    pub(super) level: Level,
}
