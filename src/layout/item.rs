//! Everything in a layout that can be chosen, pointed at, or spoken of.

use super::ids::{BedId, DressingId, LotId, NoteId, ObstacleId, PlotId, ShedId};

/// One thing in a layout, by its id.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Item {
    /// The layout as a whole.
    Layout,
    /// A plot.
    Plot(PlotId),
    /// A corner of a plot's outline, counted from 0.
    Corner(PlotId, usize),
    /// The side of a plot's outline that starts at this corner.
    Side(PlotId, usize),
    /// Something in the way on a plot.
    Obstacle(PlotId, ObstacleId),
    /// A bed.
    Bed(BedId),
    /// A corner of a bed's own outline, counted from 0.
    BedCorner(BedId, usize),
    /// A row of a bed, by the number it carries on the map.
    Row(BedId, u32),
    /// A dressing of a bed.
    Dressing(BedId, DressingId),
    /// A note on the map.
    Note(NoteId),
    /// A lot on the seed shelf.
    Lot(LotId),
    /// A material in the fertilizer shed.
    Shed(ShedId),
}

impl Item {
    /// The bed this belongs to, if it belongs to one.
    pub const fn bed(self) -> Option<BedId> {
        match self {
            Self::Bed(bed) | Self::BedCorner(bed, _) | Self::Row(bed, _) | Self::Dressing(bed, _) => Some(bed),
            _ => None,
        }
    }
}
