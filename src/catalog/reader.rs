//! Turns what stands in the files into entries, and says what is wrong with those that it leaves out.

use std::collections::BTreeMap;

use super::crop::Crop;
use super::file::{FileCrop, FileEnds, FileMaterial, FileValue};
use super::ids::{CropId, MaterialId};
use super::material::{Analysis, Material};
use super::source::{Citation, Ends, Mark, SourceKey, Sourced};
use crate::quantity::{Density, Fraction, Length, Mass, MassPerArea};

/// What is wrong with a value, in the words that follow the entry's and the field's names.
type Checked<T> = Result<T, String>;

/// Reads one entry: its name for messages, and the sources it may name.
struct Entry<'a> {
    id: &'a str,
    citations: &'a BTreeMap<SourceKey, Citation>,
}

/// A crop from its file entry, or a sentence that says which entry and field is wrong, and how.
pub(super) fn crop(file: FileCrop, citations: &BTreeMap<SourceKey, Citation>) -> Checked<Crop> {
    let id = file.id.clone();
    let entry = Entry { id: &id, citations };
    entry.named(&file.name)?;
    let in_row = entry.ends("in_row_in", file.in_row_in, inches)?;
    let in_row_watered = entry.value("in_row_watered_in", file.in_row_watered_in, inches)?;
    let in_row_dry = entry.value("in_row_dry_in", file.in_row_dry_in, inches)?;
    if !in_row.contains(&in_row_watered.value)
        || !in_row.contains(&in_row_dry.value)
        || in_row_watered.value > in_row_dry.value
    {
        return Err(entry.wrong(
            "in_row_watered_in",
            "must not be over in_row_dry_in, both within in_row_in",
        ));
    }
    let method = entry.value("method", file.method, Some)?;
    if method.value.is_sown() != file.seeds_per_plant.is_some() {
        return Err(entry.wrong("seeds_per_plant", "belongs to crops that are sown, and to each of them"));
    }
    Ok(Crop {
        row_spacing: entry.ends("row_spacing_in", file.row_spacing_in, inches)?,
        in_row,
        in_row_watered,
        in_row_dry,
        depth: entry.ends("depth_in", file.depth_in, inches)?,
        seed_weight: entry.option("seeds_per_oz", file.seeds_per_oz, |per_ounce| {
            positive(per_ounce).map(|per_ounce| Mass::ounces(1.0) / per_ounce)
        })?,
        least_germination: entry.option("least_germination_pct", file.least_germination_pct, |percent| {
            positive(percent).and_then(Fraction::percent)
        })?,
        method,
        seeds_per_plant: entry.option("seeds_per_plant", file.seeds_per_plant, |seeds| {
            positive(seeds).filter(|&seeds| seeds >= 1.0)
        })?,
        height: entry.option("height_ft", file.height_ft, |feet| positive(feet).map(Length::feet))?,
        days_to_harvest: entry.option_ends("days_to_harvest", file.days_to_harvest, |days| {
            (days > 0).then_some(days)
        })?,
        hilled: entry.option("hilled", file.hilled, Some)?,
        hardiness: entry.option("hardiness", file.hardiness, Some)?,
        weeks_from_last_frost: entry.option_ends("weeks_from_last_frost", file.weeks_from_last_frost, Some)?,
        least_rows: entry.option("least_rows", file.least_rows, |rows| (rows > 0).then_some(rows))?,
        season_nitrogen: entry.option(
            "season_nitrogen_lb_per_acre",
            file.season_nitrogen_lb_per_acre,
            |pounds| positive(pounds).map(MassPerArea::pounds_per_acre),
        )?,
        note: entry.option("note", file.note, Some)?,
        id: CropId(file.id),
        name: file.name,
        botanical: file.botanical,
        family: file.family,
    })
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

fn positive(value: f64) -> Option<f64> {
    (value.is_finite() && value > 0.0).then_some(value)
}

fn inches(value: f64) -> Option<Length> {
    positive(value).map(Length::inches)
}

impl Entry<'_> {
    fn wrong(&self, field: &str, what: &str) -> String {
        format!("{}: {field} {what}", self.id)
    }

    fn named(&self, name: &str) -> Checked<()> {
        if self.id.is_empty() || name.trim().is_empty() {
            return Err(self.wrong("id and name", "must not be empty"));
        }
        Ok(())
    }

    fn value<T, U>(&self, field: &str, file: FileValue<T>, convert: impl Fn(T) -> Option<U>) -> Checked<Sourced<U>> {
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

    fn ends<T, U: PartialOrd>(
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

    fn option<T, U>(
        &self,
        field: &str,
        file: Option<FileValue<T>>,
        convert: impl Fn(T) -> Option<U>,
    ) -> Checked<Option<Sourced<U>>> {
        file.map(|file| self.value(field, file, convert)).transpose()
    }

    fn option_ends<T, U: PartialOrd>(
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
