//! What the catalogue holds, and how it is looked up.

use std::collections::BTreeMap;

use super::crop::Crop;
use super::feeding::{Caution, CautionTopic, FeedingStage, GeneralNeed, NeedKind, Programme};
use super::ids::{CropId, MaterialId, ProgrammeId, StageId};
use super::material::Material;
use super::source::{Citation, SourceKey, Sourced};
use crate::quantity::MassPerArea;

/// Crops, materials, what is published on feeding, and the sources they name.
#[derive(Clone, Debug, Default)]
pub struct Catalog {
    pub(super) crops: Vec<Crop>,
    pub(super) materials: Vec<Material>,
    pub(super) stages: Vec<FeedingStage>,
    pub(super) programmes: Vec<Programme>,
    pub(super) cautions: Vec<Caution>,
    pub(super) needs: BTreeMap<CropId, Vec<GeneralNeed>>,
    pub(super) citations: BTreeMap<SourceKey, Citation>,
    pub(super) problems: Vec<String>,
    /// Where each crop stands among the crops.
    pub(super) crop_places: BTreeMap<CropId, usize>,
}

impl Catalog {
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

    /// Stages of growth at which crops are fed, in order of time.
    pub fn stages(&self) -> &[FeedingStage] {
        &self.stages
    }

    /// The stage of this id.
    pub fn stage(&self, id: &StageId) -> Option<&FeedingStage> {
        self.stages.iter().find(|stage| stage.id == *id)
    }

    /// The stages that a crop has, in order of time.
    pub fn stages_for<'a>(&'a self, crop: &'a CropId) -> impl Iterator<Item = &'a FeedingStage> {
        self.stages.iter().filter(move |stage| stage.is_of(crop))
    }

    /// All programmes of feeding, in the order of the file.
    pub fn programmes(&self) -> &[Programme] {
        &self.programmes
    }

    /// The programme of this id.
    pub fn programme(&self, id: &ProgrammeId) -> Option<&Programme> {
        self.programmes.iter().find(|programme| programme.id == *id)
    }

    /// The programmes for a crop, in the order of the file.
    pub fn programmes_for<'a>(&'a self, crop: &'a CropId) -> impl Iterator<Item = &'a Programme> {
        self.programmes
            .iter()
            .filter(move |programme| programme.crops.contains(crop))
    }

    /// What is published on a crop's needs for a season, in the order of the file; none for many crops.
    pub fn needs_of(&self, crop: &CropId) -> &[GeneralNeed] {
        self.needs.get(crop).map_or(&[], Vec::as_slice)
    }

    /// The general rates in force for a crop where no laboratory said anything: the first recommendation of the file.
    pub fn general_need(&self, crop: &CropId) -> Option<&GeneralNeed> {
        self.needs_of(crop)
            .iter()
            .find(|need| need.kind == NeedKind::Recommendation)
    }

    /// The most nitrogen that any text gives a crop in a season. Over it is too much.
    pub fn highest_nitrogen(&self, crop: &CropId) -> Option<&Sourced<MassPerArea>> {
        let needs = self.needs_of(crop).iter();
        needs
            .filter(|need| need.kind != NeedKind::Uptake)
            .filter_map(|need| need.n.as_ref().map(|ends| &ends.high))
            .reduce(|most, other| if other.value > most.value { other } else { most })
    }

    /// All cautions on feeding, in the order they are shown.
    pub fn cautions(&self) -> &[Caution] {
        &self.cautions
    }

    /// The caution on this topic.
    pub fn caution(&self, topic: CautionTopic) -> Option<&Caution> {
        self.cautions.iter().find(|caution| caution.topic == topic)
    }

    /// What could not be read, one sentence each; empty for the catalogue that comes with the program.
    pub fn problems(&self) -> &[String] {
        &self.problems
    }
}
