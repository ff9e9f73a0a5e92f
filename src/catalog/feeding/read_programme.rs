//! Turns a programme's entry in the file into what the catalogue knows of it.

use serde::Deserialize;

use super::programme::{Programme, ProgrammeStep, RateOf, Repeat, StepAmount, StepPlacement, StepRate};
use crate::catalog::file::{FileEnds, FileValue};
use crate::catalog::ids::{CropId, MaterialId, ProgrammeId, StageId};
use crate::catalog::reader::{Checked, Entry, Known, positive};
use crate::quantity::{MassPerArea, MassPerLength};

/// A programme as it stands in the file.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(in crate::catalog) struct FileProgramme {
    id: String,
    name: String,
    crops: Vec<String>,
    #[serde(default)]
    condition: String,
    note: FileValue<String>,
    steps: Vec<FileStep>,
}

/// A step.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct FileStep {
    name: String,
    stage: FileValue<String>,
    rate: FileRate,
    material: String,
    placement: StepPlacement,
    #[serde(default)]
    times: Option<FileValue<u16>>,
    #[serde(default)]
    every_days: Option<FileValue<u16>>,
}

/// What is weighed, and the two ends of how much.
#[derive(Deserialize)]
enum FileRate {
    LbPerAcre(RateOf, FileValue<f64>, FileValue<f64>),
    LbPer1000SqFt(RateOf, FileValue<f64>, FileValue<f64>),
    LbPer100Ft(RateOf, FileValue<f64>, FileValue<f64>),
}

/// A programme from its file entry, or a sentence that says which entry and field is wrong, and how.
pub(in crate::catalog) fn programme(file: FileProgramme, known: &Known<'_>) -> Checked<Programme> {
    let entry = known.entry(&file.id);
    entry.named(&file.name)?;
    let crops = known.crops(&entry, file.crops)?;
    if crops.is_empty() {
        return Err(entry.wrong("crops", "must not be empty"));
    }
    let steps: Checked<Vec<ProgrammeStep>> = file
        .steps
        .into_iter()
        .map(|one| step(&entry, known, &crops, one))
        .collect();
    let steps = steps?;
    if steps.is_empty() {
        return Err(entry.wrong("steps", "must not be empty"));
    }
    let times = |step: &ProgrammeStep| known.stage(&step.stage.value).map(|stage| stage.at.value);
    if !steps.iter().map(times).is_sorted() {
        return Err(entry.wrong("steps", "must stand in order of time"));
    }
    Ok(Programme {
        note: entry.value("note", file.note, Some)?,
        id: ProgrammeId(file.id.clone()),
        name: file.name,
        crops,
        condition: file.condition,
        steps,
    })
}

fn step(entry: &Entry<'_>, known: &Known<'_>, crops: &[CropId], file: FileStep) -> Checked<ProgrammeStep> {
    if file.name.trim().is_empty() {
        return Err(entry.wrong("steps", "must have a name each"));
    }
    let stage = entry.value("stage", file.stage, |id| Some(StageId(id)))?;
    let Some(found) = known.stage(&stage.value) else {
        return Err(entry.wrong(
            "stage",
            &format!("names “{}”, which is not in stages.ron", stage.value.0),
        ));
    };
    if let Some(crop) = crops.iter().find(|crop| !found.is_of(crop)) {
        return Err(entry.wrong("stage", &format!("“{}” is none of {}", stage.value.0, crop.0)));
    }
    let material = MaterialId(file.material);
    let Some(found) = known.material(&material) else {
        return Err(entry.wrong(
            "material",
            &format!("names “{}”, which is not in materials.ron", material.0),
        ));
    };
    if file.placement == StepPlacement::Injected && found.not_for_injection.is_some() {
        return Err(entry.wrong("material", &format!("“{}” must not go through tape", material.0)));
    }
    let rate = rate(entry, file.rate)?;
    let analysis = found.analysis.value;
    let part = match rate.of {
        RateOf::Product => 1.0,
        RateOf::Nitrogen => analysis.n.get(),
        RateOf::Phosphate => analysis.p2o5.get(),
        RateOf::Potash => analysis.k2o.get(),
    };
    if part <= 0.0 {
        return Err(entry.wrong("material", &format!("“{}” has none of what is weighed", material.0)));
    }
    let repeat = match (file.times, file.every_days) {
        (None, None) => None,
        (Some(times), Some(days)) => Some(Repeat {
            times: entry.value("times", times, |times| (2..=100).contains(&times).then_some(times))?,
            every_days: entry.value("every_days", days, |days| (1..=100).contains(&days).then_some(days))?,
        }),
        _ => return Err(entry.wrong("times", "and every_days belong together")),
    };
    Ok(ProgrammeStep {
        name: file.name,
        stage,
        rate,
        material,
        placement: file.placement,
        repeat,
    })
}

fn rate(entry: &Entry<'_>, file: FileRate) -> Checked<StepRate> {
    let over_ground = |low, high, convert: fn(f64) -> MassPerArea| {
        entry
            .ends("rate", FileEnds(low, high), |rate| positive(rate).map(convert))
            .map(StepAmount::OverGround)
    };
    let (of, amount) = match file {
        FileRate::LbPerAcre(of, low, high) => (of, over_ground(low, high, MassPerArea::pounds_per_acre)?),
        FileRate::LbPer1000SqFt(of, low, high) => {
            (of, over_ground(low, high, MassPerArea::pounds_per_1000_square_feet)?)
        }
        FileRate::LbPer100Ft(of, low, high) => {
            let ends = entry.ends("rate", FileEnds(low, high), |rate| {
                positive(rate).map(MassPerLength::pounds_per_100_feet)
            })?;
            (of, StepAmount::AlongRow(ends))
        }
    };
    Ok(StepRate { of, amount })
}
