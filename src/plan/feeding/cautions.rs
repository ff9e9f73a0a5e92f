//! Which cautions belong to what is planned, one plain sentence each.

use std::collections::BTreeSet;
use std::sync::Arc;

use super::super::types::BedPlan;
use super::material_book::MaterialBook;
use crate::catalog::{Catalog, Caution, CautionTopic, CropId};
use crate::layout::{Bed, Layout, Placement};

/// The cautions for all dressings of a layout, in the order in which they are shown; none where nothing is put down. A
/// caution that is for some crops stands only where one of their own beds calls for it.
pub fn cautions_of(layout: &Layout, beds: &[Arc<BedPlan>], book: &MaterialBook) -> Vec<&'static Caution> {
    let mut topics = BTreeSet::new();
    for bed in &layout.beds {
        let plan = beds.iter().find(|plan| plan.bed == bed.id);
        let crop = plan.and_then(|plan| plan.crop.as_ref()).map(|crop| &crop.kin);
        let is_sown = plan.is_some_and(|plan| plan.is_sown_in_place());
        topics.extend(topics_of(bed, crop, is_sown, layout.organic, book));
    }
    in_order(&topics)
}

/// The cautions for the dressings of one bed.
pub fn cautions_for_bed(bed: &Bed, plan: &BedPlan, organic: bool, book: &MaterialBook) -> Vec<&'static Caution> {
    let crop = plan.crop.as_ref().map(|crop| &crop.kin);
    in_order(&topics_of(bed, crop, plan.is_sown_in_place(), organic, book))
}

fn in_order(topics: &BTreeSet<CautionTopic>) -> Vec<&'static Caution> {
    let all = CautionTopic::ALL.into_iter().filter(|topic| topics.contains(topic));
    all.filter_map(|topic| Catalog::built_in().caution(topic)).collect()
}

/// The topics of one bed, without those whose caution is for other crops.
fn topics_of(
    bed: &Bed,
    crop: Option<&CropId>,
    is_sown: bool,
    organic: bool,
    book: &MaterialBook,
) -> BTreeSet<CautionTopic> {
    let mut topics = BTreeSet::new();
    collect(bed, crop, book, &mut topics);
    if !is_sown {
        // No seed lies there to be burnt.
        for topic in [
            CautionTopic::SeedBand,
            CautionTopic::SeedContact,
            CautionTopic::AmmoniaAtSeed,
        ] {
            topics.remove(&topic);
        }
    }
    if organic && !topics.is_empty() {
        topics.insert(CautionTopic::Organic);
    }
    topics.retain(|topic| {
        let caution = Catalog::built_in().caution(*topic);
        caution.is_some_and(|caution| caution.crops.is_empty() || crop.is_some_and(|crop| caution.crops.contains(crop)))
    });
    topics
}

/// What the dressings of a bed call for.
fn collect(bed: &Bed, crop: Option<&CropId>, book: &MaterialBook, topics: &mut BTreeSet<CautionTopic>) {
    if bed.dressings.is_empty() {
        return;
    }
    topics.extend([CautionTopic::LabelFirst, CautionTopic::GlovesAndDust]);
    let mut brings_nitrogen = false;
    for dressing in &bed.dressings {
        let known = book.get(&dressing.material);
        let id = known.map_or(dressing.material.0.as_str(), |known| known.kind.0.as_str());
        let nitrogen = known.is_some_and(|known| known.analysis().n.get() > 0.0);
        brings_nitrogen |= nitrogen;
        match dressing.placement {
            Placement::SideDress { .. } => {
                topics.insert(CautionTopic::SaltsBurn);
                if nitrogen && crop.is_some() {
                    topics.insert(CautionTopic::TooMuchNitrogen);
                }
            }
            Placement::Band { .. } => {
                topics.extend([CautionTopic::SeedBand, CautionTopic::SeedContact]);
                if id.starts_with("urea") || id.starts_with("diammonium") {
                    topics.insert(CautionTopic::AmmoniaAtSeed);
                }
            }
            Placement::Injected(_) => {
                topics.extend([CautionTopic::Backflow, CautionTopic::Rinsing, CautionTopic::StockTank]);
            }
            Placement::Broadcast => {}
        }
        if known.is_some_and(|known| known.material.sodium_part.is_some()) {
            topics.insert(CautionTopic::Sodium);
        }
        if ["sodium_nitrate", "potassium_nitrate", "ammonium_nitrate"]
            .iter()
            .any(|salt| id.starts_with(salt))
        {
            topics.insert(CautionTopic::Oxidizers);
        }
        if is_manure(id) {
            topics.insert(CautionTopic::RawManure);
        }
        if known.is_some_and(|known| known.analysis().p2o5.get() > 0.0) && bed.feeding.laboratory.is_none() {
            topics.insert(CautionTopic::Phosphate);
        }
        if known.is_some_and(|known| known.density().is_some()) {
            topics.insert(CautionTopic::Cups);
        }
    }
    if brings_nitrogen {
        topics.extend([CautionTopic::NitrateAndWells, CautionTopic::LightSand]);
        if crop.is_some() {
            topics.insert(CautionTopic::Legumes);
        }
    }
}

/// Whether a material of this id is raw manure, which may carry what makes people ill.
pub(super) fn is_manure(id: &str) -> bool {
    id.contains("manure")
}
