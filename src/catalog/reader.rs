//! Reads values of the files with their sources, and says what is wrong with those that cannot stand.

use std::collections::BTreeMap;

use super::file::{FileEnds, FileMaterial, FileValue};
use super::ids::MaterialId;
use super::material::{Analysis, Material};
use super::source::{Citation, Ends, Mark, SourceKey, Sourced};
use crate::quantity::Density;

/// What is wrong with a value, in the words that follow the entry's and the field's names.
pub(super) type Checked<T> = Result<T, String>;

/// Reads one entry: its name for messages, and the sources it may name.
pub(super) struct Entry<'a> {
    /// The entry's name.
    pub(super) id: &'a str,
    /// What it may name.
    pub(super) citations: &'a BTreeMap<SourceKey, Citation>,
}

/// A material from its file entry, or a sentence that says which entry and field is wrong, and how.
pub(super) fn material(file: FileMaterial, citations: &BTreeMap<SourceKey, Citation>) -> Checked<Material> {
    let id = file.id.clone();
    let entry = Entry { id: &id, citations };
    entry.named(&file.name)?;
    Ok(Material {
        analysis: entry.value("analysis_pct", file.analysis_pct, |(n, p2o5, k2o)| {
            Analysis::percent(n, p2o5, k2o)
        })?,
        bulk_density: entry.option("bulk_density_lb_per_cu_ft", file.bulk_density_lb_per_cu_ft, |pounds| {
            positive(pounds).map(Density::pounds_per_cubic_foot)
        })?,
        salt_index: entry.option("salt_index", file.salt_index, positive)?,
        organic: entry.option("organic", file.organic, Some)?,
        caution: entry.option("caution", file.caution, Some)?,
        note: entry.option("note", file.note, Some)?,
        id: MaterialId(file.id),
        name: file.name,
    })
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
