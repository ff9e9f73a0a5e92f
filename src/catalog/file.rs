//! The shape of the files in `assets/`. Units are in the keys; values become quantities in `reader`.

use serde::Deserialize;

use super::crop::{Hardiness, Hilling, PlantingMethod};
use super::source::Mark;

/// A value, the keys of its sources joined by `" + "`, and how it was found there.
#[derive(Deserialize)]
pub(super) struct FileValue<T>(pub(super) T, pub(super) String, pub(super) Mark);

/// The two ends of a range.
#[derive(Deserialize)]
pub(super) struct FileEnds<T>(pub(super) FileValue<T>, pub(super) FileValue<T>);

/// A crop.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct FileCrop {
    pub(super) id: String,
    pub(super) name: String,
    pub(super) botanical: String,
    pub(super) family: String,
    pub(super) row_spacing_in: FileEnds<f64>,
    pub(super) in_row_in: FileEnds<f64>,
    pub(super) in_row_watered_in: FileValue<f64>,
    pub(super) in_row_dry_in: FileValue<f64>,
    pub(super) depth_in: FileEnds<f64>,
    pub(super) method: FileValue<PlantingMethod>,
    #[serde(default)]
    pub(super) seeds_per_plant: Option<FileValue<f64>>,
    #[serde(default)]
    pub(super) seeds_per_oz: Option<FileValue<f64>>,
    #[serde(default)]
    pub(super) least_germination_pct: Option<FileValue<f64>>,
    #[serde(default)]
    pub(super) height_ft: Option<FileValue<f64>>,
    #[serde(default)]
    pub(super) days_to_harvest: Option<FileEnds<u16>>,
    #[serde(default)]
    pub(super) hilled: Option<FileValue<Hilling>>,
    #[serde(default)]
    pub(super) hardiness: Option<FileValue<Hardiness>>,
    #[serde(default)]
    pub(super) weeks_from_last_frost: Option<FileEnds<i8>>,
    #[serde(default)]
    pub(super) least_rows: Option<FileValue<u64>>,
    #[serde(default)]
    pub(super) season_nitrogen_lb_per_acre: Option<FileValue<f64>>,
    #[serde(default)]
    pub(super) note: Option<FileValue<String>>,
}

/// A material.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct FileMaterial {
    pub(super) id: String,
    pub(super) name: String,
    /// N, P2O5 and K2O in percent by weight.
    pub(super) analysis_pct: FileValue<(f64, f64, f64)>,
    #[serde(default)]
    pub(super) bulk_density_lb_per_cu_ft: Option<FileValue<f64>>,
    #[serde(default)]
    pub(super) salt_index: Option<FileValue<f64>>,
    #[serde(default)]
    pub(super) organic: Option<FileValue<String>>,
    #[serde(default)]
    pub(super) caution: Option<FileValue<String>>,
    #[serde(default)]
    pub(super) note: Option<FileValue<String>>,
}

/// A source.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct FileCitation {
    pub(super) key: String,
    pub(super) text: String,
    #[serde(default)]
    pub(super) extent: String,
}
