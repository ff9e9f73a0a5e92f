//! Turns a material's entry in the file into what the catalogue knows of it.

use std::collections::{BTreeMap, BTreeSet};

use serde::Deserialize;

use super::file::{FileEnds, FileValue};
use super::ids::MaterialId;
use super::material::{Analysis, Material};
use super::organic::{OrganicRule, OrganicStanding};
use super::reader::{Checked, Entry, positive};
use super::source::{Citation, SourceKey};
use super::stock::StockClass;
use crate::quantity::{Density, Fraction, Mass, Volume};

/// A material as it stands in the file.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct FileMaterial {
    id: String,
    name: String,
    /// N, P2O5 and K2O in percent by weight.
    analysis_pct: FileValue<(f64, f64, f64)>,
    #[serde(default)]
    bulk_density_lb_per_cu_ft: Option<FileValue<f64>>,
    #[serde(default)]
    liquid_lb_per_gal: Option<FileValue<f64>>,
    #[serde(default)]
    salt_index: Option<FileValue<f64>>,
    #[serde(default)]
    solubility_lb_per_gal: Option<FileValue<f64>>,
    #[serde(default)]
    sodium_pct: Option<FileValue<f64>>,
    #[serde(default)]
    available_n_pct: Option<FileEnds<f64>>,
    #[serde(default)]
    stock: Option<FileValue<Vec<StockClass>>>,
    #[serde(default)]
    not_for_injection: Option<FileValue<String>>,
    #[serde(default)]
    organic: Option<FileValue<(FileStanding, String)>>,
    #[serde(default)]
    caution: Option<FileValue<String>>,
    #[serde(default)]
    note: Option<FileValue<String>>,
}

/// The class under the organic rule.
#[derive(Deserialize)]
enum FileStanding {
    NotAllowed,
    Allowed,
    Restricted {
        #[serde(default)]
        most_of_nitrogen_pct: Option<f64>,
    },
    AskCertifier,
}

/// A material from its file entry, or a sentence that says which entry and field is wrong, and how.
pub(super) fn material(file: FileMaterial, citations: &BTreeMap<SourceKey, Citation>) -> Checked<Material> {
    let id = file.id.clone();
    let entry = Entry { id: &id, citations };
    entry.named(&file.name)?;
    let liquid = file.liquid_lb_per_gal.is_some();
    if liquid && file.bulk_density_lb_per_cu_ft.is_some() {
        return Err(entry.wrong("liquid_lb_per_gal", "stands instead of bulk_density_lb_per_cu_ft"));
    }
    let poured = entry.option("bulk_density_lb_per_cu_ft", file.bulk_density_lb_per_cu_ft, |pounds| {
        positive(pounds).map(Density::pounds_per_cubic_foot)
    })?;
    let of_liquid = entry.option("liquid_lb_per_gal", file.liquid_lb_per_gal, pounds_per_gallon)?;
    Ok(Material {
        analysis: entry.value("analysis_pct", file.analysis_pct, |(n, p2o5, k2o)| {
            Analysis::percent(n, p2o5, k2o)
        })?,
        liquid,
        bulk_density: poured.or(of_liquid),
        salt_index: entry.option("salt_index", file.salt_index, positive)?,
        solubility: entry.option("solubility_lb_per_gal", file.solubility_lb_per_gal, pounds_per_gallon)?,
        sodium_part: entry.option("sodium_pct", file.sodium_pct, over_nothing)?,
        available_n: entry.option_ends("available_n_pct", file.available_n_pct, over_nothing)?,
        stock: entry.option("stock", file.stock, classes)?,
        not_for_injection: entry.option("not_for_injection", file.not_for_injection, Some)?,
        organic: entry.option("organic", file.organic, rule)?,
        caution: entry.option("caution", file.caution, Some)?,
        note: entry.option("note", file.note, Some)?,
        id: MaterialId(file.id),
        name: file.name,
    })
}

fn pounds_per_gallon(pounds: f64) -> Option<Density> {
    positive(pounds).map(|pounds| Mass::pounds(pounds) / Volume::gallons(1.0))
}

fn over_nothing(percent: f64) -> Option<Fraction> {
    positive(percent).and_then(Fraction::percent)
}

/// Each class once, and at least one: a material without any has no such field.
fn classes(file: Vec<StockClass>) -> Option<BTreeSet<StockClass>> {
    let number = file.len();
    let classes: BTreeSet<StockClass> = file.into_iter().collect();
    (number > 0 && classes.len() == number).then_some(classes)
}

fn rule((standing, words): (FileStanding, String)) -> Option<OrganicRule> {
    let standing = match standing {
        FileStanding::NotAllowed => OrganicStanding::NotAllowed,
        FileStanding::Allowed => OrganicStanding::Allowed,
        FileStanding::Restricted { most_of_nitrogen_pct } => OrganicStanding::Restricted {
            most_of_nitrogen: most_of_nitrogen_pct
                .map(|percent| over_nothing(percent).ok_or(()))
                .transpose()
                .ok()?,
        },
        FileStanding::AskCertifier => OrganicStanding::AskCertifier,
    };
    (!words.trim().is_empty()).then_some(OrganicRule { standing, words })
}
