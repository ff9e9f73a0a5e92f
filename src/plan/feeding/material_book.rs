//! The materials that a layout can name: the catalogue's with what the shed knows of them, and the grower's own.

use std::collections::BTreeMap;
use std::sync::Arc;

use super::super::crop_book::same;
use crate::agronomy::{self, Nutrient};
use crate::catalog::{Analysis, Catalog, Mark, Material, MaterialId, OrganicStanding, SourceKey, Sourced};
use crate::layout::{Label, Layout, ShedId, ShedMaterial};
use crate::quantity::{Concentration, Density, Fraction, Mass};

/// A material with what the shed knows of it.
#[derive(Clone, Debug, PartialEq)]
pub struct KnownMaterial {
    /// The material, with the grower's own values in it.
    pub material: Material,
    /// The material of the catalogue that it is, or that it is made of; its own id where nobody says.
    pub kind: MaterialId,
    /// The part of its nitrogen that comes free in the season: the grower's, the middle of what is published, or all.
    pub available_n: Fraction,
    /// How much of it dissolves in cold water, when known.
    pub solubility: Option<Concentration>,
    /// Its entry in the shed, when it has one.
    pub shed: Option<ShedId>,
    /// What a bag holds.
    pub bag: Option<Mass>,
    /// What a bag costs.
    pub price: Option<f64>,
    /// How much of it is at hand.
    pub at_hand: Option<Mass>,
    /// What the grower knows from the certifier.
    pub organic: Option<bool>,
}

impl KnownMaterial {
    /// What it holds.
    pub const fn analysis(&self) -> Analysis {
        self.material.analysis.value
    }

    /// How heavy it is poured, when known.
    pub fn density(&self) -> Option<Density> {
        self.material.bulk_density.as_ref().map(|density| density.value)
    }

    /// What a kilogram costs, when the bag and its price are known.
    pub fn price_per_kilogram(&self) -> Option<f64> {
        let bag = self.bag.filter(|bag| *bag > Mass::ZERO)?;
        Some(self.price? / bag.to_kilograms())
    }

    /// Whether organic rules allow it, as far as anyone here knows: what the certifier told the grower goes first. `None`
    /// where it hangs on the certifier.
    pub fn is_organic(&self) -> Option<bool> {
        self.organic
            .or_else(|| match self.material.organic.as_ref()?.value.standing {
                OrganicStanding::NotAllowed => Some(false),
                OrganicStanding::Allowed | OrganicStanding::Restricted { .. } => Some(true),
                OrganicStanding::AskCertifier => None,
            })
    }

    /// The most of the crop's whole nitrogen that organic rules let it give, where they set a part.
    pub fn organic_part(&self) -> Option<Fraction> {
        match self.material.organic.as_ref()?.value.standing {
            OrganicStanding::Restricted { most_of_nitrogen } => most_of_nitrogen,
            _ => None,
        }
    }
}

/// All materials that a layout can name, by name. Cheap to bring up to date.
#[derive(Clone, Debug)]
pub struct MaterialBook {
    made_from: Vec<Arc<ShedMaterial>>,
    materials: Vec<KnownMaterial>,
    places: BTreeMap<MaterialId, usize>,
}

impl Default for MaterialBook {
    fn default() -> Self {
        Self::made_from(&[])
    }
}

impl MaterialBook {
    /// The materials of a layout.
    pub fn of(layout: &Layout) -> Self {
        Self::made_from(&layout.shed)
    }

    /// Brings it up to date with a layout. Whether anything was done.
    pub(in crate::plan) fn update(&mut self, layout: &Layout) -> bool {
        if same(&self.made_from, &layout.shed) {
            return false;
        }
        *self = Self::made_from(&layout.shed);
        true
    }

    fn made_from(shed: &[Arc<ShedMaterial>]) -> Self {
        let catalog = Catalog::built_in();
        let label_of = |id: &MaterialId| shed.iter().find(|kept| kept.material == *id);
        let mut materials: Vec<KnownMaterial> = catalog
            .materials()
            .iter()
            .map(|material| known(material.clone(), label_of(&material.id)))
            .collect();
        for kept in shed {
            if catalog.material(&kept.material).is_some() {
                continue;
            }
            if let Some(analysis) = kept.label.analysis {
                materials.push(known(own_material(kept, analysis), Some(kept)));
            }
        }
        materials.sort_by_key(|known| known.material.name.to_lowercase());
        let places = materials.iter().enumerate();
        Self {
            made_from: shed.to_vec(),
            places: places
                .map(|(place, known)| (known.material.id.clone(), place))
                .collect(),
            materials,
        }
    }

    /// The material of this id.
    pub fn get(&self, id: &MaterialId) -> Option<&KnownMaterial> {
        self.materials.get(*self.places.get(id)?)
    }

    /// All of them, by name.
    pub fn all(&self) -> &[KnownMaterial] {
        &self.materials
    }

    /// Those with all the words typed somewhere in their name, their analysis or the nutrients they bring, by name; upper and lower case are the same.
    pub fn find(&self, part: &str) -> Vec<&KnownMaterial> {
        let words: Vec<String> = part.split_whitespace().map(str::to_lowercase).collect();
        let mut found: Vec<&KnownMaterial> = self.materials.iter().collect();
        found.retain(|known| {
            let mut text = format!("{} {}", known.material.name, known.analysis().label()).to_lowercase();
            // "Potash" finds what brings it, whatever the salt is called.
            for nutrient in Nutrient::ALL
                .into_iter()
                .filter(|nutrient| nutrient.part_of(known.analysis()) > 0.0)
            {
                text.push(' ');
                text.push_str(nutrient.name());
            }
            words.iter().all(|word| text.contains(word))
        });
        found
    }

    /// Those that stand in the shed, by name.
    pub fn in_shed(&self) -> impl Iterator<Item = &KnownMaterial> {
        self.materials.iter().filter(|known| known.shed.is_some())
    }
}

/// A material of the grower's own, before its label is put over it: what can go wrong with what it is made of can go
/// wrong with it.
fn own_material(kept: &ShedMaterial, analysis: Analysis) -> Material {
    let made_of = kept
        .label
        .made_of
        .as_ref()
        .and_then(|id| Catalog::built_in().material(id));
    if let Some(made_of) = made_of {
        return Material {
            id: kept.material.clone(),
            name: kept.label.name.clone(),
            analysis: own(analysis),
            ..made_of.clone()
        };
    }
    Material {
        id: kept.material.clone(),
        name: kept.label.name.clone(),
        analysis: own(analysis),
        liquid: false,
        bulk_density: None,
        salt_index: None,
        solubility: None,
        sodium_part: None,
        available_n: None,
        stock: None,
        not_for_injection: None,
        organic: None,
        caution: None,
        note: None,
    }
}

/// A material with what the shed knows put over it.
fn known(mut material: Material, kept: Option<&Arc<ShedMaterial>>) -> KnownMaterial {
    let nothing = Label::default();
    let label = kept.map_or(&nothing, |kept| &kept.label);
    if !label.name.is_empty() {
        material.name.clone_from(&label.name);
    }
    if let Some(analysis) = label.analysis {
        material.analysis = own(analysis);
    }
    if let Some(density) = label.cup.and_then(|cup| agronomy::density_of_cup(cup).ok()) {
        material.bulk_density = Some(own(density));
    }
    if let Some(sodium) = label.sodium {
        material.sodium_part = Some(own(sodium));
    }
    let published = material.available_n.as_ref().map(|ends| {
        let middle = (ends.low.value.get() + ends.high.value.get()) / 2.0;
        Fraction::new(middle).unwrap_or(Fraction::ONE)
    });
    let of_catalogue = material
        .solubility
        .as_ref()
        .map(|solubility| Concentration::kilograms_per_cubic_metre(solubility.value.to_kilograms_per_cubic_metre()));
    KnownMaterial {
        available_n: label.available_n.or(published).unwrap_or(Fraction::ONE),
        solubility: label.solubility.or(of_catalogue),
        kind: label.made_of.clone().unwrap_or_else(|| material.id.clone()),
        shed: kept.map(|kept| kept.id),
        bag: label.bag,
        price: label.price,
        at_hand: label.at_hand,
        organic: label.organic,
        material,
    }
}

fn own<T>(value: T) -> Sourced<T> {
    Sourced {
        value,
        sources: vec![SourceKey("GROWER".to_owned())],
        mark: Mark::Grower,
    }
}
