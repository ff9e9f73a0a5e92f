//! The catalogue that comes with the program.

use std::collections::BTreeMap;
use std::sync::LazyLock;

use serde::de::DeserializeOwned;

use super::crop::Crop;
use super::file::{FileCitation, FileCrop, FileMaterial};
use super::ids::{CropId, MaterialId};
use super::material::Material;
use super::reader;
use super::source::{Citation, SourceKey};

/// Crops, materials and the sources they name.
#[derive(Clone, Debug, Default)]
pub struct Catalog {
    crops: Vec<Crop>,
    materials: Vec<Material>,
    citations: BTreeMap<SourceKey, Citation>,
    problems: Vec<String>,
}

static BUILT_IN: LazyLock<Catalog> = LazyLock::new(|| {
    Catalog::read(
        include_str!("../../assets/crops.ron"),
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
        for file in entries::<FileCrop>("crops.ron", crops, &mut catalog.problems) {
            match reader::crop(file, &catalog.citations) {
                Ok(crop) if catalog.crop(&crop.id).is_some() => {
                    catalog
                        .problems
                        .push(format!("{}: stands in crops.ron twice", crop.id.0));
                }
                Ok(crop) => catalog.crops.push(crop),
                Err(problem) => catalog.problems.push(problem),
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
        self.crops.iter().find(|crop| crop.id == *id)
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

    /// Crops with all the words typed somewhere in their name or botanical name, by name; upper and lower case are
    /// the same.
    pub fn find_crops<'a>(&'a self, part: &str) -> impl Iterator<Item = &'a Crop> {
        let words = words(part);
        self.crops
            .iter()
            .filter(move |crop| has_words(&format!("{} {}", crop.name, crop.botanical), &words))
    }

    /// Materials with all the words typed somewhere in their name, by name; upper and lower case are the same.
    pub fn find_materials<'a>(&'a self, part: &str) -> impl Iterator<Item = &'a Material> {
        let words = words(part);
        self.materials
            .iter()
            .filter(move |material| has_words(&material.name, &words))
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

fn words(part: &str) -> Vec<String> {
    part.split_whitespace().map(str::to_lowercase).collect()
}

fn has_words(name: &str, words: &[String]) -> bool {
    let name = name.to_lowercase();
    words.iter().all(|word| name.contains(word))
}
