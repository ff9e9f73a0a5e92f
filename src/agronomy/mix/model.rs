//! What a mix is asked to do, and what comes of it.

use super::super::nutrient::{Nutrient, Nutrients};
use crate::catalog::Analysis;
use crate::quantity::{Fraction, Mass};

/// A label shows no less of a nutrient, and a solver cannot tell it from nothing.
const LEAST_PART: f64 = 1e-5;

/// A material to mix from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MixMaterial {
    /// Nitrogen, phosphate and potash, as on its label.
    pub analysis: Analysis,
    /// The share of its nitrogen that the crop gets this season.
    pub available: Fraction,
    /// What a kilogram costs, in any currency; `None` when not known.
    pub price_per_kilogram: Option<f64>,
    /// What is at hand, where no more can be had.
    pub at_hand: Option<Mass>,
    /// Whether rules hold its nitrogen, together with that of others, to a part.
    pub is_restricted: bool,
}

impl MixMaterial {
    /// The part of its weight that counts as this nutrient; nitrogen with its availability.
    pub(super) fn part(&self, nutrient: Nutrient) -> f64 {
        let part = nutrient.part_of(self.analysis);
        let counted = match nutrient {
            Nutrient::Nitrogen => part * self.available.get(),
            Nutrient::Phosphate | Nutrient::Potash => part,
        };
        if counted >= LEAST_PART { counted } else { 0.0 }
    }
}

/// The most of each nutrient, where there is one.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct MostNutrients {
    /// Nitrogen, N.
    pub n: Option<Mass>,
    /// Phosphate, P2O5.
    pub p2o5: Option<Mass>,
    /// Potash, K2O.
    pub k2o: Option<Mass>,
}

impl MostNutrients {
    /// The most of one of them.
    pub const fn of(&self, nutrient: Nutrient) -> Option<Mass> {
        match nutrient {
            Nutrient::Nitrogen => self.n,
            Nutrient::Phosphate => self.p2o5,
            Nutrient::Potash => self.k2o,
        }
    }
}

/// What a mix has to bring.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct MixTarget {
    /// At least so much of each.
    pub least: Nutrients,
    /// And not more than so much.
    pub most: MostNutrients,
    /// The most nitrogen from all restricted materials together, where rules set one; counted with its availability.
    pub restricted_n: Option<Mass>,
}

impl MixTarget {
    /// Exactly these amounts.
    pub const fn exactly(nutrients: Nutrients) -> Self {
        Self {
            least: nutrients,
            most: MostNutrients {
                n: Some(nutrients.n),
                p2o5: Some(nutrients.p2o5),
                k2o: Some(nutrients.k2o),
            },
            restricted_n: None,
        }
    }
}

/// What comes of mixing.
#[derive(Clone, Debug, PartialEq)]
pub enum Mix {
    /// A mix keeps to every limit; this is the cheapest.
    Met(Blend),
    /// No mix does.
    Unmet(Unmet),
}

/// Amounts of the materials and what they come to.
#[derive(Clone, Debug, PartialEq)]
pub struct Blend {
    /// The weight of each material, in the order they were given.
    pub amounts: Vec<Mass>,
    /// The nutrients in them; nitrogen as far as it is available.
    pub supplied: Nutrients,
    /// What they cost together, where every material has a price.
    pub cost: Option<f64>,
    /// Which materials have no price. Where there are any, the mix is the lightest one and not the cheapest.
    pub unpriced: Vec<usize>,
    /// Every nutrient that is short or over, in the order of a label.
    pub misses: Vec<NutrientMiss>,
}

impl Blend {
    pub(super) fn new(amounts: Vec<Mass>, materials: &[MixMaterial], target: &MixTarget) -> Self {
        let supplied_of = |nutrient| -> Mass {
            let parts = materials.iter().zip(&amounts);
            parts.map(|(material, &amount)| amount * material.part(nutrient)).sum()
        };
        let supplied = Nutrients {
            n: supplied_of(Nutrient::Nitrogen),
            p2o5: supplied_of(Nutrient::Phosphate),
            k2o: supplied_of(Nutrient::Potash),
        };
        let costs = materials.iter().zip(&amounts);
        Self {
            cost: costs
                .map(|(material, amount)| Some(material.price_per_kilogram? * amount.to_kilograms()))
                .sum(),
            unpriced: (materials.iter().enumerate())
                .filter_map(|(place, material)| material.price_per_kilogram.is_none().then_some(place))
                .collect(),
            misses: Nutrient::ALL
                .into_iter()
                .filter_map(|nutrient| NutrientMiss::of(nutrient, supplied.of(nutrient), target))
                .collect(),
            supplied,
            amounts,
        }
    }
}

/// A nutrient that a mix misses.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum NutrientMiss {
    /// So much less than wanted.
    Short(Nutrient, Mass),
    /// So much more than the most.
    Over(Nutrient, Mass),
}

/// A part in a million of what was asked for is no miss: far below any scale, far above what solving loses.
const NO_MISS: f64 = 1e-6;

impl NutrientMiss {
    fn of(nutrient: Nutrient, supplied: Mass, target: &MixTarget) -> Option<Self> {
        let scale = target.scale() * NO_MISS;
        let short = target.least.of(nutrient) - supplied;
        if short > scale {
            return Some(Self::Short(nutrient, short));
        }
        let over = supplied - target.most.of(nutrient)?;
        (over > scale).then_some(Self::Over(nutrient, over))
    }
}

impl MixTarget {
    /// The largest amount wanted.
    pub(super) fn scale(&self) -> Mass {
        let wanted = Nutrient::ALL.into_iter().map(|nutrient| self.least.of(nutrient));
        wanted.fold(Mass::ZERO, Mass::max)
    }
}

/// What no mix can do.
#[derive(Clone, Debug, PartialEq)]
pub struct Unmet {
    /// Short by the least, and then over by the least.
    pub least_short: Blend,
    /// Over nothing, and then short by the least.
    pub never_over: Blend,
    /// Each limit without which all others could be kept. Empty when more than one is in the way.
    pub in_the_way: Vec<Limit>,
}

/// A limit that a mix has to keep to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Limit {
    /// The least of a nutrient.
    Least(Nutrient),
    /// The most of a nutrient.
    Most(Nutrient),
    /// What is at hand of a material, by its place.
    AtHand(usize),
    /// What is allowed of all restricted materials together.
    Restricted,
}
