//! A bed's ground and the rows that it holds, before any of them has a number.

use super::bed::{Bed, BedGround};
use super::ground::{Obstacle, Plot};
use crate::geometry::{Clearing, Point, Region, RegionError, RowError, RowFit, RowRule, fit_rows, ground};
use crate::quantity::{Area, Length};

/// A bed's ground and its rows.
#[derive(Clone, Debug)]
pub struct BedFit {
    /// The bed's outline within its plot, less what stands in the way.
    pub ground: Region,
    /// The part of it where rows may stand: drawn in by the clear strip and by what is kept clear of obstacles.
    pub rows_ground: Region,
    /// The rows.
    pub rows: RowFit,
}

/// Why a bed holds no rows.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum BedFitError {
    /// An outline that bounds no ground.
    #[error(transparent)]
    Ground(#[from] RegionError),
    /// A rule by which no rows can be laid.
    #[error(transparent)]
    Rows(#[from] RowError),
}

impl BedFit {
    /// Lays a bed's rows over its ground in a plot.
    ///
    /// # Errors
    /// [`BedFitError`] where an outline bounds no ground, or no rows can be laid by the bed's lengths.
    pub fn of(plot: &Plot, bed: &Bed) -> Result<Self, BedFitError> {
        let rows_ground = rows_ground(plot, bed)?;
        let rule = RowRule {
            bearing: bed.bearing,
            spacing: bed.row_spacing,
            edge_margin: bed.edge_margin_in_force(),
            remainder: bed.remainder,
            headland: bed.headland,
            shortest: bed.shortest,
        };
        Ok(Self {
            ground: bare_ground(plot, bed)?,
            rows: fit_rows(&rows_ground, &rule)?,
            rows_ground,
        })
    }
}

/// The size of a bed's ground in a plot: its outline within the plot, less what stands in the way.
///
/// # Errors
/// [`RegionError`] where an outline bounds no ground.
pub(super) fn ground_area(plot: &Plot, bed: &Bed) -> Result<Area, RegionError> {
    Ok(bare_ground(plot, bed)?.area())
}

/// The bed's outline within its plot, drawn in by the clear strip, whatever stands in the way.
///
/// # Errors
/// [`RegionError`] where an outline bounds no ground.
pub(super) fn drawn_in(plot: &Plot, bed: &Bed) -> Result<Region, RegionError> {
    ground(&plot.outline, own_outline(bed), &[], bed.clear)
}

fn bare_ground(plot: &Plot, bed: &Bed) -> Result<Region, RegionError> {
    let clearings = in_the_way(plot, |_| Length::ZERO);
    ground(&plot.outline, own_outline(bed), &clearings, Length::ZERO)
}

fn rows_ground(plot: &Plot, bed: &Bed) -> Result<Region, RegionError> {
    let clearings = in_the_way(plot, |clear| clear);
    ground(&plot.outline, own_outline(bed), &clearings, bed.clear)
}

fn own_outline(bed: &Bed) -> Option<&[Point]> {
    match &bed.ground {
        BedGround::WholePlot => None,
        BedGround::Corners(corners) => Some(corners),
    }
}

fn in_the_way(plot: &Plot, clear: fn(Length) -> Length) -> Vec<Clearing> {
    let clearing = |obstacle: &Obstacle| Clearing {
        ring: obstacle.shape.ring(),
        clear: clear(obstacle.clear),
    };
    plot.obstacles.iter().map(clearing).collect()
}
