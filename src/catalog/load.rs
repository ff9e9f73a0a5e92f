//! Reads a catalogue from its texts. A slip leaves out the entry it is in, and is named.

use std::collections::{BTreeMap, BTreeSet};

use super::entries::entries;
use super::feeding::{self, FileCaution, FileNeed, FileProgramme, FileStage};
use super::file::{FileCitation, FileCrop};
use super::lookup::Catalog;
use super::material::Material;
use super::read_material::FileMaterial;
use super::reader::{Checked, Known};
use super::source::{Citation, SourceKey};
use super::texts::CatalogTexts;
use super::{read_crop, read_material};

impl Catalog {
    /// Reads a catalogue from the texts of its first three files, without anything on feeding. What cannot be read, and
    /// every entry with a value that is out of range or names no source, is left out and named in
    /// [`Catalog::problems`].
    pub fn read(crops: &str, materials: &str, sources: &str) -> Self {
        Self::read_texts(&CatalogTexts {
            crops: &[("crops.ron", crops)],
            materials,
            sources,
            ..CatalogTexts::default()
        })
    }

    /// As [`Catalog::read`], from the texts of all files.
    pub fn read_texts(texts: &CatalogTexts<'_>) -> Self {
        let mut catalog = Self::default();
        catalog.read_sources(texts.sources);
        catalog.read_crops(texts.crops);
        catalog.read_materials(texts.materials);
        catalog.read_feeding(texts);
        catalog
    }

    fn read_sources(&mut self, text: &str) {
        for file in entries::<FileCitation>("sources.ron", text, &mut self.problems) {
            let key = SourceKey(file.key);
            let citation = Citation {
                key: key.clone(),
                text: file.text,
                extent: file.extent,
            };
            if self.citations.insert(key, citation).is_some() {
                self.problems.push("sources.ron: a key stands there twice".to_owned());
            }
        }
    }

    fn read_crops(&mut self, files: &[(&str, &str)]) {
        let mut seen = BTreeSet::new();
        for (name, text) in files {
            for file in entries::<FileCrop>(name, text, &mut self.problems) {
                match read_crop::crop(file, &self.citations) {
                    Ok(crop) if !seen.insert(crop.id.clone()) => {
                        let problem = format!("{}: stands there twice, the second time in {name}", crop.id.0);
                        self.problems.push(problem);
                    }
                    Ok(crop) => self.crops.push(crop),
                    Err(problem) => self.problems.push(problem),
                }
            }
        }
        self.crops.sort_by(|a, b| a.name.cmp(&b.name));
        let places = self.crops.iter().enumerate();
        self.crop_places = places.map(|(place, crop)| (crop.id.clone(), place)).collect();
    }

    fn read_materials(&mut self, text: &str) {
        let read = entries::<FileMaterial>("materials.ron", text, &mut self.problems)
            .into_iter()
            .map(|file| read_material::material(file, &self.citations))
            .collect();
        let same = |material: &Material| (material.id.0.clone(), material.id.clone());
        self.materials = once_each(read, "materials.ron", same, &mut self.problems);
        self.materials.sort_by(|a, b| a.name.cmp(&b.name));
    }

    fn read_feeding(&mut self, texts: &CatalogTexts<'_>) {
        let Self {
            crop_places,
            citations,
            materials,
            problems,
            ..
        } = self;
        let mut known = Known {
            citations,
            crops: crop_places,
            materials,
            stages: &[],
        };
        let read = entries::<FileStage>("feeding/stages.ron", texts.stages, problems)
            .into_iter()
            .map(|file| feeding::stage(file, &known))
            .collect();
        let same = |stage: &feeding::FeedingStage| (stage.id.0.clone(), stage.id.clone());
        let mut stages = once_each(read, "feeding/stages.ron", same, problems);
        stages.sort_by(|a, b| a.at.value.get().total_cmp(&b.at.value.get()));
        known.stages = &stages;
        let read = entries::<FileProgramme>("feeding/programmes.ron", texts.programmes, problems)
            .into_iter()
            .map(|file| feeding::programme(file, &known))
            .collect();
        let same = |programme: &feeding::Programme| (programme.id.0.clone(), programme.id.clone());
        let programmes = once_each(read, "feeding/programmes.ron", same, problems);
        let read = entries::<FileCaution>("feeding/cautions.ron", texts.cautions, problems)
            .into_iter()
            .map(|file| feeding::caution(file, &known))
            .collect();
        let same = |caution: &feeding::Caution| (format!("{:?}", caution.topic), caution.topic);
        let mut cautions = once_each(read, "feeding/cautions.ron", same, problems);
        cautions.sort_by_key(|caution| caution.topic);
        let mut needs: BTreeMap<_, Vec<_>> = BTreeMap::new();
        for file in entries::<FileNeed>("feeding/needs.ron", texts.needs, problems) {
            match feeding::need(file, &known) {
                Ok((crops, need)) => {
                    for crop in crops {
                        needs.entry(crop).or_default().push(need.clone());
                    }
                }
                Err(problem) => problems.push(problem),
            }
        }
        (self.stages, self.programmes, self.cautions, self.needs) = (stages, programmes, cautions, needs);
    }
}

/// The entries that could be read, the first of those with the same key; what is wrong with the others is a problem.
/// `key` gives an entry's name for messages and what makes it the same as another.
fn once_each<T, K: Ord>(
    read: Vec<Checked<T>>,
    file: &str,
    key: impl Fn(&T) -> (String, K),
    problems: &mut Vec<String>,
) -> Vec<T> {
    let mut seen = BTreeSet::new();
    let mut kept = Vec::with_capacity(read.len());
    for entry in read {
        match entry {
            Ok(entry) => {
                let (name, key) = key(&entry);
                if seen.insert(key) {
                    kept.push(entry);
                } else {
                    problems.push(format!("{name}: stands in {file} twice"));
                }
            }
            Err(problem) => problems.push(problem),
        }
    }
    kept
}
