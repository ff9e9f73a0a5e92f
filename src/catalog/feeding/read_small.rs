//! Turns the entries of stages and of cautions into what the catalogue knows of them.

use serde::Deserialize;

use super::caution::{Caution, CautionTopic};
use super::stage::FeedingStage;
use crate::catalog::file::FileValue;
use crate::catalog::ids::{CropId, StageId};
use crate::catalog::reader::{Checked, Known};
use crate::quantity::Fraction;

/// A stage as it stands in the file.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(in crate::catalog) struct FileStage {
    id: String,
    name: FileValue<String>,
    #[serde(default)]
    crops: Vec<String>,
    at: FileValue<f64>,
}

/// A stage from its file entry, or a sentence that says which entry and field is wrong, and how.
pub(in crate::catalog) fn stage(file: FileStage, known: &Known<'_>) -> Checked<FeedingStage> {
    let entry = known.entry(&file.id);
    entry.named(&file.name.0)?;
    Ok(FeedingStage {
        name: entry.value("name", file.name, Some)?,
        crops: known.crops(&entry, file.crops)?,
        at: entry.value("at", file.at, Fraction::new)?,
        id: StageId(file.id.clone()),
    })
}

/// A caution as it stands in the file.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(in crate::catalog) struct FileCaution {
    topic: CautionTopic,
    sentence: FileValue<String>,
    #[serde(default)]
    metric: Option<String>,
    #[serde(default)]
    crops: Vec<String>,
}

/// A caution from its file entry, or a sentence that says which entry and field is wrong, and how.
pub(in crate::catalog) fn caution(file: FileCaution, known: &Known<'_>) -> Checked<Caution> {
    let name = format!("{:?}", file.topic);
    let entry = known.entry(&name);
    entry.named(&file.sentence.0)?;
    if let Some(metric) = &file.metric {
        entry.named(metric)?;
    }
    let crops: Vec<CropId> = known.crops(&entry, file.crops)?;
    Ok(Caution {
        topic: file.topic,
        sentence: entry.value("sentence", file.sentence, Some)?,
        metric: file.metric,
        crops,
    })
}
