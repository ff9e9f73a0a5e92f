//! Raising plants in trays: cells, seed, trays, and the day to sow.

use jiff::ToSpan as _;
use jiff::civil::Date;

use super::seed::places_filled;
use super::unworkable::{Unworkable, positive, round_up};
use crate::quantity::Fraction;

/// How plants are raised in cells.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Raising {
    /// Seeds sown in each cell; thinned to one plant.
    pub seeds_per_cell: u16,
    /// The part of the seeds that comes up.
    pub comes_up: Fraction,
    /// The part of the young plants that is lost between coming up and setting out.
    pub losses: Fraction,
    /// Cells on top, as a part of the need.
    pub spare: Fraction,
}

/// Cells to sow so that so many plants can be set out: plants ÷ (cells with a plant × plants that are kept), a spare
/// part on top, rounded up.
///
/// # Errors
/// When no cell gives a plant (no seed in a cell, nothing comes up, all are lost), or the cells come to more than any
/// farm has.
///
/// # Source
/// Common practice, no source: of cells with n seeds, 1 − (1 − p)ⁿ have a plant; of these, 1 − losses are set out.
pub fn cells_needed(plants: u64, raising: Raising) -> Result<u64, Unworkable> {
    positive(f64::from(raising.seeds_per_cell), "the number of seeds in a cell")?;
    positive(raising.comes_up.get(), "germination")?;
    let kept = positive(1.0 - raising.losses.get(), "the part of young plants that is kept")?;
    let with_a_plant = places_filled(raising.seeds_per_cell, raising.comes_up).get();
    round_up(
        plants as f64 / (with_a_plant * kept) * (1.0 + raising.spare.get()),
        "the cells",
    )
}

/// Whole trays for so many cells.
///
/// # Errors
/// When a tray has no cell.
///
/// # Source
/// Common practice, no source: arithmetic, rounded up.
pub fn trays_needed(cells: u64, cells_per_tray: u16) -> Result<u64, Unworkable> {
    let per_tray = positive(f64::from(cells_per_tray), "the number of cells in a tray")?;
    round_up(cells as f64 / per_tray, "the trays")
}

/// The day to sow for plants that are to be set out on a day, so many days old. `None` before the first year of the
/// calendar.
///
/// # Source
/// Common practice, no source: the day of setting out less the days in the tray.
pub fn sow_on(set_out: Date, days_in_tray: u16) -> Option<Date> {
    set_out.checked_sub(i64::from(days_in_tray).days()).ok()
}
