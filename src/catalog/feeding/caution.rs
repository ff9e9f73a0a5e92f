//! What to watch out for when feeding.

use serde::Deserialize;

use crate::catalog::ids::CropId;
use crate::catalog::source::Sourced;
use crate::quantity::Units;

/// One plain sentence of caution.
#[derive(Clone, Debug, PartialEq)]
pub struct Caution {
    /// What it is about.
    pub topic: CautionTopic,
    /// The sentence, in the units of its source.
    pub sentence: Sourced<String>,
    /// The same in metric units, its numbers rounded alike; none where there is nothing to turn.
    pub metric: Option<String>,
    /// The crops it is for; all of them when empty.
    pub crops: Vec<CropId>,
}

impl Caution {
    /// The sentence in those units.
    pub fn words(&self, units: Units) -> &str {
        match (units, &self.metric) {
            (Units::Metric, Some(metric)) => metric,
            _ => &self.sentence.value,
        }
    }
}

/// What a caution is about. Each topic has one sentence.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Deserialize)]
pub enum CautionTopic {
    /// Label, laboratory and local codes go before all of this.
    LabelFirst,
    /// Salts burn: distance from stems, off leaves.
    SaltsBurn,
    /// Salts in the band at the seed.
    SeedBand,
    /// Salts that touch the seed.
    SeedContact,
    /// Urea and diammonium phosphate near seed.
    AmmoniaAtSeed,
    /// What sodium does to soil.
    Sodium,
    /// Nitrate that washes down, and wells.
    NitrateAndWells,
    /// A side-dressing on light sand.
    LightSand,
    /// Phosphate on soil that has plenty.
    Phosphate,
    /// Crops that too much nitrogen harms.
    TooMuchNitrogen,
    /// Beans and peas.
    Legumes,
    /// Backflow into the water that people drink.
    Backflow,
    /// When to inject, and rinsing the tape.
    Rinsing,
    /// What must not share a stock tank.
    StockTank,
    /// Gloves and dust.
    GlovesAndDust,
    /// Materials that feed fire.
    Oxidizers,
    /// The organic rule.
    Organic,
    /// Raw manure.
    RawManure,
    /// Measuring by cups.
    Cups,
}

impl CautionTopic {
    /// All topics, in the order they are shown.
    pub const ALL: [Self; 19] = [
        Self::LabelFirst,
        Self::SaltsBurn,
        Self::SeedBand,
        Self::SeedContact,
        Self::AmmoniaAtSeed,
        Self::Sodium,
        Self::NitrateAndWells,
        Self::LightSand,
        Self::Phosphate,
        Self::TooMuchNitrogen,
        Self::Legumes,
        Self::Backflow,
        Self::Rinsing,
        Self::StockTank,
        Self::GlovesAndDust,
        Self::Oxidizers,
        Self::Organic,
        Self::RawManure,
        Self::Cups,
    ];
}
