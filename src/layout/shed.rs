//! What stands in the fertilizer shed: materials of the grower's own, and what is known of a bag.

use super::ids::ShedId;
use crate::catalog::{Analysis, MaterialId};
use crate::quantity::{Concentration, Fraction, Mass};

/// A material in the shed.
///
/// With an id that the catalogue has, it says what is known of the bag in hand of that material; with another id it is
/// a material of the grower's own, by its label. What is left out is the catalogue's, or not known.
#[derive(Clone, Debug, PartialEq)]
pub struct ShedMaterial {
    /// Unique in the layout.
    pub id: ShedId,
    /// The material that dressings name.
    pub material: MaterialId,
    /// What is known of it.
    pub label: Label,
}

/// What a label and a scale say of a material.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Label {
    /// Its name for people; empty for the catalogue's.
    pub name: String,
    /// Guaranteed analysis; a material of the grower's own has one.
    pub analysis: Option<Analysis>,
    /// The material of the catalogue that it is made of, where the label names one: what that must not share a stock with,
    /// what rules say of it and what can go wrong with it holds for this one too.
    pub made_of: Option<MaterialId>,
    /// The part of its nitrogen that comes free in the season.
    pub available_n: Option<Fraction>,
    /// Sodium, as a part of its weight.
    pub sodium: Option<Fraction>,
    /// How much of it dissolves in cold water.
    pub solubility: Option<Concentration>,
    /// What a level cup of it weighs.
    pub cup: Option<Mass>,
    /// What a bag holds.
    pub bag: Option<Mass>,
    /// What a bag costs, in the grower's own currency.
    pub price: Option<f64>,
    /// How much of it is at hand.
    pub at_hand: Option<Mass>,
    /// Whether organic rules allow it, as far as the grower knows from the certifier.
    pub organic: Option<bool>,
}
