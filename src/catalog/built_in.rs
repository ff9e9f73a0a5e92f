//! The catalogue that comes with the program.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::LazyLock;

use serde::de::DeserializeOwned;

use super::crop::{Crop, Hardiness, Season};
use super::file::{FileCitation, FileCrop, FileMaterial};
use super::ids::{CropId, MaterialId};
use super::material::Material;
use super::source::{Citation, SourceKey};
use super::{read_crop, reader};

/// Crops, materials and the sources they name.
#[derive(Clone, Debug, Default)]
pub struct Catalog {
    crops: Vec<Crop>,
    materials: Vec<Material>,
    citations: BTreeMap<SourceKey, Citation>,
    problems: Vec<String>,
    /// Where each crop stands among the crops.
    crop_places: BTreeMap<CropId, usize>,
    /// The names of each crop in small letters, in the order of the crops, for finding.
    crop_names: Vec<String>,
    /// The name of each material in small letters, in the order of the materials.
    material_names: Vec<String>,
}

/// A file of crops: its name for messages, and its text.
macro_rules! crop_file {
    ($name:literal) => {
        (
            concat!("crops/", $name),
            include_str!(concat!("../../assets/crops/", $name)),
        )
    };
}

/// The files of crops, by kinship. A new crop goes into one of them.
const CROP_FILES: [(&str, &str); 12] = [
    crop_file!("beans.ron"),
    crop_file!("beets_and_spinach.ron"),
    crop_file!("cabbages.ron"),
    crop_file!("carrots_and_celery.ron"),
    crop_file!("corn_and_sorghum.ron"),
    crop_file!("lettuce_and_sunflower.ron"),
    crop_file!("onions.ron"),
    crop_file!("others.ron"),
    crop_file!("peas_and_soybeans.ron"),
    crop_file!("squash_and_melons.ron"),
    crop_file!("tomatoes_and_potatoes.ron"),
    crop_file!("turnips_and_mustards.ron"),
];

static BUILT_IN: LazyLock<Catalog> = LazyLock::new(|| {
    Catalog::read_files(
        &CROP_FILES,
        include_str!("../../assets/materials.ron"),
        include_str!("../../assets/sources.ron"),
    )
});

impl Catalog {
    /// The one that comes with the program, read on first use.
    pub fn built_in() -> &'static Self {
        &BUILT_IN
    }

    /// Reads a catalogue from the texts of its three files. What cannot be read, and every entry with a value that is
    /// out of range or names no source, is left out and named in [`Catalog::problems`].
    pub fn read(crops: &str, materials: &str, sources: &str) -> Self {
        Self::read_files(&[("crops.ron", crops)], materials, sources)
    }

    /// As [`Catalog::read`], with crops from several files, each with its name for messages.
    pub fn read_files(crops: &[(&str, &str)], materials: &str, sources: &str) -> Self {
        let mut catalog = Self::default();
        for file in entries::<FileCitation>("sources.ron", sources, &mut catalog.problems) {
            let key = SourceKey(file.key);
            let citation = Citation {
                key: key.clone(),
                text: file.text,
                extent: file.extent,
            };
            if catalog.citations.insert(key, citation).is_some() {
                catalog
                    .problems
                    .push("sources.ron: a key stands there twice".to_owned());
            }
        }
        let mut seen = BTreeSet::new();
        for (name, text) in crops {
            for file in entries::<FileCrop>(name, text, &mut catalog.problems) {
                match read_crop::crop(file, &catalog.citations) {
                    Ok(crop) if !seen.insert(crop.id.clone()) => {
                        let problem = format!("{}: stands there twice, the second time in {name}", crop.id.0);
                        catalog.problems.push(problem);
                    }
                    Ok(crop) => catalog.crops.push(crop),
                    Err(problem) => catalog.problems.push(problem),
                }
            }
        }
        for file in entries::<FileMaterial>("materials.ron", materials, &mut catalog.problems) {
            match reader::material(file, &catalog.citations) {
                Ok(material) if catalog.material(&material.id).is_some() => {
                    catalog
                        .problems
                        .push(format!("{}: stands in materials.ron twice", material.id.0));
                }
                Ok(material) => catalog.materials.push(material),
                Err(problem) => catalog.problems.push(problem),
            }
        }
        catalog.crops.sort_by(|a, b| a.name.cmp(&b.name));
        catalog.materials.sort_by(|a, b| a.name.cmp(&b.name));
        let places = catalog.crops.iter().enumerate();
        catalog.crop_places = places.map(|(place, crop)| (crop.id.clone(), place)).collect();
        catalog.crop_names = catalog.crops.iter().map(names).collect();
        catalog.material_names = catalog
            .materials
            .iter()
            .map(|material| format!("{} {}", material.name, material.analysis.value.label()).to_lowercase())
            .collect();
        catalog
    }

    /// All crops, by name.
    pub fn crops(&self) -> &[Crop] {
        &self.crops
    }

    /// All materials, by name.
    pub fn materials(&self) -> &[Material] {
        &self.materials
    }

    /// The crop of this id.
    pub fn crop(&self, id: &CropId) -> Option<&Crop> {
        self.crops.get(*self.crop_places.get(id)?)
    }

    /// The material of this id.
    pub fn material(&self, id: &MaterialId) -> Option<&Material> {
        self.materials.iter().find(|material| material.id == *id)
    }

    /// The text behind a source key.
    pub fn citation(&self, key: &SourceKey) -> Option<&Citation> {
        self.citations.get(key)
    }

    /// All sources, by key.
    pub fn citations(&self) -> impl Iterator<Item = &Citation> {
        self.citations.values()
    }

    /// Crops with all the words typed somewhere in one of their names or the botanical one, by name; upper and lower
    /// case are the same.
    pub fn find_crops<'a>(&'a self, part: &str) -> impl Iterator<Item = &'a Crop> + use<'a> {
        finding(&self.crops, &self.crop_names, part)
    }

    /// Materials with all the words typed somewhere in their name or analysis ("15-0-0"), by name; upper and lower case are the same.
    pub fn find_materials<'a>(&'a self, part: &str) -> impl Iterator<Item = &'a Material> + use<'a> {
        finding(&self.materials, &self.material_names, part)
    }

    /// The plant families of the crops, each once, in order of the alphabet.
    pub fn families(&self) -> Vec<&str> {
        let families: BTreeSet<&str> = self.crops.iter().map(|crop| crop.family.as_str()).collect();
        families.into_iter().collect()
    }

    /// The crops of a family, by name; upper and lower case are the same.
    pub fn crops_of_family<'a>(&'a self, family: &str) -> impl Iterator<Item = &'a Crop> {
        self.crops
            .iter()
            .filter(move |crop| crop.family.eq_ignore_ascii_case(family))
    }

    /// The crops of a season, by name.
    pub fn crops_of_season(&self, season: Season) -> impl Iterator<Item = &Crop> {
        self.crops.iter().filter(move |crop| crop.season() == Some(season))
    }

    /// The crops of a class of hardiness, by name.
    pub fn crops_of_hardiness(&self, hardiness: Hardiness) -> impl Iterator<Item = &Crop> {
        let class = move |crop: &&Crop| crop.hardiness.as_ref().is_some_and(|class| class.value == hardiness);
        self.crops.iter().filter(class)
    }

    /// What could not be read, one sentence each; empty for the catalogue that comes with the program.
    pub fn problems(&self) -> &[String] {
        &self.problems
    }
}

/// The entries of a file; none, and a problem with the place, when it is not a list of them.
fn entries<T: DeserializeOwned>(name: &str, text: &str, problems: &mut Vec<String>) -> Vec<T> {
    ron::from_str(text).unwrap_or_else(|error| {
        problems.push(format!("{name}: {error}"));
        Vec::new()
    })
}

/// All the names of a crop in small letters.
fn names(crop: &Crop) -> String {
    let mut names = format!("{}\n{}", crop.name, crop.botanical);
    for other in &crop.also_called {
        names.push('\n');
        names.push_str(other);
    }
    names.to_lowercase()
}

/// The entries whose names, in small letters and in the same order, hold all the words typed.
fn finding<'a, T>(entries: &'a [T], names: &'a [String], part: &str) -> impl Iterator<Item = &'a T> + use<'a, T> {
    let words: Vec<String> = part.split_whitespace().map(str::to_lowercase).collect();
    entries
        .iter()
        .zip(names)
        .filter(move |(_, names)| words.iter().all(|word| names.contains(word)))
        .map(|(entry, _)| entry)
}
