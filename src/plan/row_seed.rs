//! What one row takes: seed, cells, or sets and plants, each way of planting by its own arithmetic.

use super::types::Stand;
use crate::agronomy::{self, Raising, Unworkable};
use crate::layout::Sowing;
use crate::quantity::Fraction;

/// What a row takes.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct RowSeed {
    /// Seeds to sow.
    pub(super) seeds: u64,
    /// Cells to sow in trays.
    pub(super) cells: u64,
    /// Sets, pieces, slips, crowns or bought plants.
    pub(super) set_out: u64,
}

/// What so many places take, with a spare part on top.
pub(super) fn row_seed(places: u64, stand: &Stand, spare: Fraction) -> Result<RowSeed, Unworkable> {
    let sown = |seeds_per_place: f64| {
        let seeds = agronomy::seeds_needed(places, seeds_per_place, stand.comes_up(), spare)?;
        Ok(RowSeed {
            seeds,
            ..RowSeed::default()
        })
    };
    match stand.sowing {
        Sowing::Seed { seeds_per_plant } => sown(seeds_per_plant),
        Sowing::Dropped { seeds_per_place } => sown(f64::from(seeds_per_place)),
        Sowing::Hills { seeds_per_hill, .. } => sown(f64::from(seeds_per_hill)),
        Sowing::Raised(raised) => {
            let raising = Raising {
                seeds_per_cell: raised.seeds_per_cell,
                comes_up: stand.comes_up(),
                losses: raised.losses,
                spare,
            };
            let cells = agronomy::cells_needed(places, raising)?;
            Ok(RowSeed {
                seeds: cells.saturating_mul(u64::from(raised.seeds_per_cell)),
                cells,
                set_out: 0,
            })
        }
        Sowing::Pieces { .. } | Sowing::Plants => Ok(RowSeed {
            set_out: agronomy::pieces_needed(places, spare)?,
            ..RowSeed::default()
        }),
    }
}
