//! Reads values of the files with their sources, and says what is wrong with those that cannot stand.

use std::collections::BTreeMap;

use super::feeding::FeedingStage;
use super::file::{FileEnds, FileValue};
use super::ids::{CropId, MaterialId, StageId};
use super::material::Material;
use super::source::{Citation, Ends, Mark, SourceKey, Sourced};

/// What is wrong with a value, in the words that follow the entry's and the field's names.
pub(super) type Checked<T> = Result<T, String>;

/// Reads one entry: its name for messages, and the sources it may name.
pub(super) struct Entry<'a> {
    /// The entry's name.
    pub(super) id: &'a str,
    /// What it may name.
    pub(super) citations: &'a BTreeMap<SourceKey, Citation>,
}

/// What entries on feeding may name.
pub(super) struct Known<'a> {
    /// Sources.
    pub(super) citations: &'a BTreeMap<SourceKey, Citation>,
    /// Crops and their places.
    pub(super) crops: &'a BTreeMap<CropId, usize>,
    /// Materials.
    pub(super) materials: &'a [Material],
    /// Stages of growth that are read already.
    pub(super) stages: &'a [FeedingStage],
}

impl Known<'_> {
    /// The reader of an entry of this name.
    pub(super) const fn entry<'b>(&'b self, id: &'b str) -> Entry<'b> {
        Entry {
            id,
            citations: self.citations,
        }
    }

    /// The crops an entry names, each once and each in the catalogue.
    pub(super) fn crops(&self, entry: &Entry<'_>, names: Vec<String>) -> Checked<Vec<CropId>> {
        let mut crops: Vec<CropId> = Vec::with_capacity(names.len());
        for name in names {
            let crop = CropId(name);
            if !self.crops.contains_key(&crop) {
                return Err(entry.wrong(
                    "crops",
                    &format!("names “{}”, which is no crop of the catalogue", crop.0),
                ));
            }
            if crops.contains(&crop) {
                return Err(entry.wrong("crops", &format!("names “{}” twice", crop.0)));
            }
            crops.push(crop);
        }
        Ok(crops)
    }

    /// The material of this id.
    pub(super) fn material(&self, id: &MaterialId) -> Option<&Material> {
        self.materials.iter().find(|material| material.id == *id)
    }

    /// The stage of this id.
    pub(super) fn stage(&self, id: &StageId) -> Option<&FeedingStage> {
        self.stages.iter().find(|stage| stage.id == *id)
    }
}

/// The value, if it is a number over nothing.
pub(super) fn positive(value: f64) -> Option<f64> {
    (value.is_finite() && value > 0.0).then_some(value)
}

impl Entry<'_> {
    /// A sentence that names entry, field and what is wrong.
    pub(super) fn wrong(&self, field: &str, what: &str) -> String {
        format!("{}: {field} {what}", self.id)
    }

    /// Checks that it has an id and a name.
    pub(super) fn named(&self, name: &str) -> Checked<()> {
        if self.id.is_empty() || name.trim().is_empty() {
            return Err(self.wrong("id and name", "must not be empty"));
        }
        Ok(())
    }

    /// One value with its sources.
    pub(super) fn value<T, U>(
        &self,
        field: &str,
        file: FileValue<T>,
        convert: impl Fn(T) -> Option<U>,
    ) -> Checked<Sourced<U>> {
        let FileValue(value, keys, mark) = file;
        let sources: Vec<SourceKey> = keys.split(" + ").map(|key| SourceKey(key.trim().to_owned())).collect();
        if let Some(missing) = sources.iter().find(|key| !self.citations.contains_key(*key)) {
            return Err(self.wrong(
                field,
                &format!("names the source “{}”, which is not in sources.ron", missing.0),
            ));
        }
        let practice = sources.iter().any(|key| key.0 == PRACTICE);
        if practice != (mark == Mark::CommonPractice) {
            return Err(self.wrong(
                field,
                "must be marked CommonPractice exactly when its source is PRACTICE",
            ));
        }
        let value = convert(value).ok_or_else(|| self.wrong(field, "is outside of what it can be"))?;
        Ok(Sourced { value, sources, mark })
    }

    /// The two ends of a range, each with its sources.
    pub(super) fn ends<T, U: PartialOrd>(
        &self,
        field: &str,
        file: FileEnds<T>,
        convert: impl Fn(T) -> Option<U>,
    ) -> Checked<Ends<U>> {
        let FileEnds(low, high) = file;
        let ends = Ends {
            low: self.value(field, low, &convert)?,
            high: self.value(field, high, &convert)?,
        };
        if ends.low.value <= ends.high.value {
            Ok(ends)
        } else {
            Err(self.wrong(field, "has its ends the wrong way round"))
        }
    }

    /// One value, where there is one.
    pub(super) fn option<T, U>(
        &self,
        field: &str,
        file: Option<FileValue<T>>,
        convert: impl Fn(T) -> Option<U>,
    ) -> Checked<Option<Sourced<U>>> {
        file.map(|file| self.value(field, file, convert)).transpose()
    }

    /// A range, where there is one.
    pub(super) fn option_ends<T, U: PartialOrd>(
        &self,
        field: &str,
        file: Option<FileEnds<T>>,
        convert: impl Fn(T) -> Option<U>,
    ) -> Checked<Option<Ends<U>>> {
        file.map(|file| self.ends(field, file, convert)).transpose()
    }
}

/// The key that stands for no published source.
const PRACTICE: &str = "PRACTICE";
