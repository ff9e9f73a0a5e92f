//! The fertilizer shed as it stands in the file.

use std::sync::Arc;

use serde::{Deserialize, Serialize};

use super::feeding::LabelAnalysis;
use super::to_layout::Ids;
use crate::catalog::MaterialId;
use crate::layout::file::value::{Dissolved, Name, Part, Price, SomeWeight, Weight, Words};
use crate::layout::{self, ShedId};
use crate::quantity::{Concentration, Mass};

#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(in crate::layout::file) struct ShedMaterial {
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub(super) id: Option<u32>,
    material: Name,
    #[serde(default, skip_serializing_if = "Words::is_empty")]
    name: Words,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    analysis_pct: Option<LabelAnalysis>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    made_of: Option<Name>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    available_n_part: Option<Part>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    sodium_part: Option<Part>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    dissolves_kg_per_m3: Option<Dissolved>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    cup_kg: Option<SomeWeight>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    bag_kg: Option<SomeWeight>,
    /// Of a bag, in the grower's own currency.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    price: Option<Price>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    at_hand_kg: Option<Weight>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    organic: Option<bool>,
}

impl ShedMaterial {
    pub(super) fn read(self, ids: &mut Ids) -> Arc<layout::ShedMaterial> {
        Arc::new(layout::ShedMaterial {
            id: ShedId(ids.or_new(self.id)),
            material: MaterialId(self.material.into()),
            label: layout::Label {
                name: self.name.into(),
                analysis: self.analysis_pct.map(|analysis| analysis.0),
                made_of: self.made_of.map(|id| MaterialId(id.into())),
                available_n: self.available_n_part.map(Part::fraction),
                sodium: self.sodium_part.map(Part::fraction),
                solubility: self
                    .dissolves_kg_per_m3
                    .map(|strength| Concentration::kilograms_per_cubic_metre(strength.into())),
                cup: self.cup_kg.map(|cup| Mass::kilograms(cup.into())),
                bag: self.bag_kg.map(|bag| Mass::kilograms(bag.into())),
                price: self.price.map(f64::from),
                at_hand: self.at_hand_kg.map(|mass| Mass::kilograms(mass.into())),
                organic: self.organic,
            },
        })
    }
}

impl From<&layout::ShedMaterial> for ShedMaterial {
    fn from(kept: &layout::ShedMaterial) -> Self {
        let label = &kept.label;
        Self {
            id: Some(kept.id.0),
            material: Name::from(&kept.material.0),
            name: Words::from(&label.name),
            analysis_pct: label.analysis.map(LabelAnalysis),
            made_of: label.made_of.as_ref().map(|id| Name::from(&id.0)),
            available_n_part: label.available_n.map(|part| Part::of(part.get())),
            sodium_part: label.sodium.map(|part| Part::of(part.get())),
            dissolves_kg_per_m3: label
                .solubility
                .map(|strength| Dissolved::of(strength.to_kilograms_per_cubic_metre())),
            cup_kg: label.cup.map(|mass| SomeWeight::of(mass.to_kilograms())),
            bag_kg: label.bag.map(|mass| SomeWeight::of(mass.to_kilograms())),
            price: label.price.map(Price::of),
            at_hand_kg: label.at_hand.map(|mass| Weight::of(mass.to_kilograms())),
            organic: label.organic,
        }
    }
}
