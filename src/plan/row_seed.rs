//! What one row takes: seed, cells, or sets and plants, by count and by weight, each way of planting by its own
//! arithmetic.

use super::types::Stand;
use crate::agronomy::{self, Raising, Unworkable};
use crate::layout::Sowing;
use crate::quantity::{Fraction, Mass};

/// What a row takes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct RowSeed {
    /// Seeds to sow.
    pub(super) seeds: u64,
    /// Their weight; `None` where that of one is not known.
    pub(super) seed_mass: Option<Mass>,
    /// Cells to sow in trays.
    pub(super) cells: u64,
    /// Sets, pieces, slips, crowns or bought plants.
    pub(super) set_out: u64,
    /// Their weight; `None` where that of one is not known.
    pub(super) set_out_mass: Option<Mass>,
}

impl Default for RowSeed {
    /// Nothing, which weighs nothing.
    fn default() -> Self {
        Self {
            seeds: 0,
            seed_mass: Some(Mass::ZERO),
            cells: 0,
            set_out: 0,
            set_out_mass: Some(Mass::ZERO),
        }
    }
}

/// What so many places take, with a spare part on top. `one` is the weight of one seed, set or piece, where known.
pub(super) fn row_seed(places: u64, stand: &Stand, spare: Fraction, one: Option<Mass>) -> Result<RowSeed, Unworkable> {
    let weigh = |count: u64| one.map(|one| agronomy::seed_mass(count, one)).transpose();
    let sown = |seeds_per_place: f64| {
        let seeds = agronomy::seeds_needed(places, seeds_per_place, stand.comes_up(), spare)?;
        Ok(RowSeed {
            seeds,
            seed_mass: weigh(seeds)?,
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
            let seeds = cells.saturating_mul(u64::from(raised.seeds_per_cell));
            Ok(RowSeed {
                seeds,
                seed_mass: weigh(seeds)?,
                cells,
                ..RowSeed::default()
            })
        }
        Sowing::Pieces { .. } | Sowing::Plants => {
            let set_out = agronomy::pieces_needed(places, spare)?;
            Ok(RowSeed {
                set_out,
                set_out_mass: weigh(set_out)?,
                ..RowSeed::default()
            })
        }
    }
}
