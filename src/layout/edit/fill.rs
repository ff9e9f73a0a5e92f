//! A bed over all of a plot, or over what its beds leave free.

use super::{EditError, bed};
use crate::geometry::{Clearing, Region};
use crate::layout::bed::BedGround;
use crate::layout::document::Layout;
use crate::layout::ids::PlotId;
use crate::layout::item::Item;
use crate::quantity::{Area, Length};

/// Free ground smaller than this, about a square foot, is what two outlines drawn by hand leave between them.
const SLIVER: Area = Area::square_metres(0.1);

/// Lays a bed over the plot, which follows it when it changes; or, where beds lie in it already, a bed over each
/// piece of ground that they leave free.
pub(super) fn fill(layout: &mut Layout, id: PlotId) -> Result<(), EditError> {
    let plot = layout.plot(id).ok_or(EditError::Gone(Item::Plot(id)))?.clone();
    let mut taken = Vec::new();
    for bed in layout.beds_of(id) {
        match &bed.ground {
            BedGround::WholePlot => {
                return Err(EditError::PlotIsFull {
                    plot: plot.name.clone(),
                });
            }
            BedGround::Corners(corners) => taken.push(Clearing {
                ring: corners.clone(),
                clear: Length::ZERO,
            }),
        }
    }
    if taken.is_empty() {
        return bed::add(layout, id, None, &BedGround::WholePlot);
    }
    // Outlines that bound no ground never get into a layout.
    let free = Region::new(&plot.outline)
        .and_then(|ground| ground.without(&taken))
        .unwrap_or_default();
    let mut pieces = free.pieces().iter().filter(|piece| piece.area() >= SLIVER).peekable();
    if pieces.peek().is_none() {
        return Err(EditError::PlotIsFull {
            plot: plot.name.clone(),
        });
    }
    for piece in pieces {
        if !piece.holes().is_empty() {
            return Err(EditError::GoesRound {
                plot: plot.name.clone(),
            });
        }
        bed::add(layout, id, None, &BedGround::Corners(piece.outer().to_vec()))?;
    }
    Ok(())
}
