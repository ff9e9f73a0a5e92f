//! The shape of the files in `assets/`. Units are in the keys; values become quantities in `reader`.

use serde::Deserialize;

use super::crop::{Hardiness, Hilling, NitrogenNeed, PlantingMethod};
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
    #[serde(default)]
    pub(super) also_called: Vec<String>,
    pub(super) botanical: String,
    pub(super) family: String,
    pub(super) row_spacing_in: FileEnds<f64>,
    pub(super) in_row_in: FileEnds<f64>,
    pub(super) in_row_watered_in: FileValue<f64>,
    pub(super) in_row_dry_in: FileValue<f64>,
    pub(super) depth_in: FileEnds<f64>,
    pub(super) method: FileValue<PlantingMethod>,
    #[serde(default)]
    pub(super) also_method: Option<FileValue<PlantingMethod>>,
    #[serde(default)]
    pub(super) seeds_per_plant: Option<FileValue<f64>>,
    #[serde(default)]
    pub(super) seeds_per_oz: Option<FileValue<f64>>,
    #[serde(default)]
    pub(super) seeds_per_oz_range: Option<FileEnds<f64>>,
    #[serde(default)]
    pub(super) buying_per_100_ft: Option<FileRowAmount>,
    #[serde(default)]
    pub(super) field_seed_lb_per_acre: Option<FileEnds<f64>>,
    #[serde(default)]
    pub(super) least_germination_pct: Option<FileValue<f64>>,
    #[serde(default)]
    pub(super) seed_keeps_years: Option<FileValue<u16>>,
    #[serde(default)]
    pub(super) soil_f: Option<FileSoil>,
    #[serde(default)]
    pub(super) days_to_harvest: Option<FileEnds<u16>>,
    #[serde(default)]
    pub(super) hardiness: Option<FileValue<Hardiness>>,
    #[serde(default)]
    pub(super) weeks_from_last_frost: Option<FileEnds<i8>>,
    #[serde(default)]
    pub(super) height_ft: Option<FileValue<f64>>,
    #[serde(default)]
    pub(super) height_range_ft: Option<FileEnds<f64>>,
    #[serde(default)]
    pub(super) hilled: Option<FileValue<Hilling>>,
    #[serde(default)]
    pub(super) least_rows: Option<FileValue<u64>>,
    #[serde(default)]
    pub(super) nitrogen_need: Option<FileValue<NitrogenNeed>>,
    #[serde(default)]
    pub(super) season_nitrogen_lb_per_acre: Option<FileValue<f64>>,
    #[serde(default)]
    pub(super) harvest_per_100_ft: Option<FileRowAmount>,
    #[serde(default)]
    pub(super) water_use: Option<FileWaterUse>,
    #[serde(default)]
    pub(super) roots: Option<FileRoots>,
    #[serde(default)]
    pub(super) stages: Option<FileStages>,
    #[serde(default)]
    pub(super) notes: Vec<FileValue<String>>,
}

/// An amount for 100 feet of row: what of, and the two ends of the range.
#[derive(Deserialize)]
pub(super) enum FileRowAmount {
    Ounces(String, FileValue<f64>, FileValue<f64>),
    Pounds(String, FileValue<f64>, FileValue<f64>),
    Number(String, FileValue<f64>, FileValue<f64>),
}

/// Temperatures of the soil, in degrees Fahrenheit.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct FileSoil {
    #[serde(default)]
    pub(super) row: Option<String>,
    #[serde(default)]
    pub(super) least: Option<FileValue<f64>>,
    #[serde(default)]
    pub(super) good: Option<FileEnds<f64>>,
    #[serde(default)]
    pub(super) best: Option<FileValue<f64>>,
    #[serde(default)]
    pub(super) most: Option<FileValue<f64>>,
}

/// Crop coefficients.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct FileWaterUse {
    pub(super) row: String,
    pub(super) initial: FileValue<f64>,
    pub(super) middle: FileValue<f64>,
    pub(super) end: FileValue<f64>,
    #[serde(default)]
    pub(super) height_m: Option<FileValue<f64>>,
}

/// Depth of the roots.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct FileRoots {
    pub(super) row: String,
    pub(super) effective_m: FileValue<f64>,
    pub(super) deepest_m: FileValue<f64>,
    pub(super) depletion: FileValue<f64>,
}

/// Stages of growth.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct FileStages {
    pub(super) row: String,
    pub(super) lengths: FileValue<Vec<FileStageLengths>>,
}

/// Days of the four stages, in order, at a place.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct FileStageLengths {
    pub(super) days: (u16, u16, u16, u16),
    #[serde(default)]
    pub(super) printed_total: Option<u16>,
    pub(super) planted: String,
    pub(super) region: String,
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
