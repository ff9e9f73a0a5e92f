//! The marks of a drawing in the making, layer by layer.

use super::room::Room;
use crate::geometry::Bounds;
use crate::sheets::mark::Mark;

/// The marks of a drawing in the making, in the order in which they lie over each other.
#[derive(Default)]
pub(super) struct Layers {
    pub(super) ground: Vec<Mark>,
    pub(super) rows: Vec<Mark>,
    pub(super) obstacles: Vec<Mark>,
    pub(super) bed_outlines: Vec<Mark>,
    pub(super) outlines: Vec<Mark>,
    pub(super) lit: Vec<Mark>,
    pub(super) measures: Vec<Mark>,
    pub(super) words: Vec<Mark>,
    pub(super) labels: Vec<Mark>,
    pub(super) room: Room,
    /// The boxes round all beds, for labels that stand outside of theirs.
    pub(super) beds: Vec<Bounds>,
}

impl Layers {
    /// All marks, from the lowest to the uppermost.
    pub(super) fn marks(self) -> Vec<Mark> {
        let Self {
            ground,
            rows,
            obstacles,
            bed_outlines,
            outlines,
            lit,
            measures,
            words,
            labels,
            ..
        } = self;
        [
            ground,
            rows,
            bed_outlines,
            obstacles,
            outlines,
            lit,
            measures,
            words,
            labels,
        ]
        .concat()
    }
}
