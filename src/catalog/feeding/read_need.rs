//! Turns an entry of general rates into what the catalogue knows of it.

use serde::Deserialize;

use super::need::{GeneralNeed, NeedKind};
use crate::catalog::file::FileEnds;
use crate::catalog::ids::CropId;
use crate::catalog::reader::{Checked, Known};
use crate::quantity::MassPerArea;

/// General rates as they stand in the file, for one crop or several.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(in crate::catalog) struct FileNeed {
    crops: Vec<String>,
    kind: NeedKind,
    #[serde(default)]
    condition: String,
    #[serde(default)]
    n_lb_per_acre: Option<FileEnds<f64>>,
    #[serde(default)]
    p2o5_lb_per_acre: Option<FileEnds<f64>>,
    #[serde(default)]
    k2o_lb_per_acre: Option<FileEnds<f64>>,
}

/// The crops of an entry and their rates, or a sentence that says which entry and field is wrong, and how.
pub(in crate::catalog) fn need(file: FileNeed, known: &Known<'_>) -> Checked<(Vec<CropId>, GeneralNeed)> {
    let name = format!("needs of {}", file.crops.join(", "));
    let entry = known.entry(&name);
    let crops = known.crops(&entry, file.crops)?;
    if crops.is_empty() {
        return Err(entry.wrong("crops", "must not be empty"));
    }
    let need = GeneralNeed {
        kind: file.kind,
        condition: file.condition,
        n: entry.option_ends("n_lb_per_acre", file.n_lb_per_acre, season)?,
        p2o5: entry.option_ends("p2o5_lb_per_acre", file.p2o5_lb_per_acre, season)?,
        k2o: entry.option_ends("k2o_lb_per_acre", file.k2o_lb_per_acre, season)?,
    };
    if need.n.is_none() && need.p2o5.is_none() && need.k2o.is_none() {
        return Err(entry.wrong("n_lb_per_acre", "or another nutrient must be there"));
    }
    Ok((crops, need))
}

/// A season's rate; none of a nutrient may be what a text gives, and more than half a ton no text does.
fn season(pounds: f64) -> Option<MassPerArea> {
    (0.0..=1000.0)
        .contains(&pounds)
        .then(|| MassPerArea::pounds_per_acre(pounds))
}
