//! What the catalogue knows of a fertilizer material.

use std::collections::BTreeSet;

use super::ids::MaterialId;
use super::organic::OrganicRule;
use super::source::{Ends, Sourced};
use super::stock::StockClass;
use crate::quantity::{Density, Fraction, number};

/// A fertilizer material by its generic name. The label of the bag in hand goes before all of this.
#[derive(Clone, Debug, PartialEq)]
pub struct Material {
    /// Its name in files.
    pub id: MaterialId,
    /// Its name for people: "Urea, granular".
    pub name: String,
    /// Nitrogen, phosphate and potash, as on a label.
    pub analysis: Sourced<Analysis>,
    /// Whether it comes as a liquid, so that it is measured out by the gallon.
    pub liquid: bool,
    /// How heavy it is poured and level, for cups; of a liquid, how heavy a gallon is. A guide only: weigh where you
    /// can.
    pub bulk_density: Option<Sourced<Density>>,
    /// How salty it is, weight for weight, with sodium nitrate at 100.
    pub salt_index: Option<Sourced<f64>>,
    /// The most of it that dissolves in cold water, weight for volume of water.
    pub solubility: Option<Sourced<Density>>,
    /// The part of its weight that is sodium.
    pub sodium_part: Option<Sourced<Fraction>>,
    /// The part of its nitrogen that comes free in the first season, where that is not all of it.
    pub available_n: Option<Ends<Fraction>>,
    /// What it must not share a stock tank over; `None` where it goes with everything.
    pub stock: Option<Sourced<BTreeSet<StockClass>>>,
    /// Why it must not go through tape, in a sentence; `None` where nothing speaks against it.
    pub not_for_injection: Option<Sourced<String>>,
    /// Whether the organic rule allows it.
    pub organic: Option<Sourced<OrganicRule>>,
    /// What can go wrong, in a sentence.
    pub caution: Option<Sourced<String>>,
    /// Anything else a grower should know.
    pub note: Option<Sourced<String>>,
}

impl Material {
    /// The first pair of things, one of each material, that fall out of one stock; `None` where the two may share it.
    pub fn stock_clash(&self, other: &Self) -> Option<(StockClass, StockClass)> {
        let own = self.stock.as_ref()?;
        let others = other.stock.as_ref()?;
        own.value.iter().find_map(|&own| {
            let clash = others.value.iter().find(|class| own.clashes_with(**class))?;
            Some((own, *clash))
        })
    }
}

/// Nutrients as parts of a product's weight, in the terms of a label.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Analysis {
    /// Nitrogen, N.
    pub n: Fraction,
    /// Phosphate, P2O5. Not phosphorus: that is 0.436 of it.
    pub p2o5: Fraction,
    /// Potash, K2O. Not potassium: that is 0.830 of it.
    pub k2o: Fraction,
}

impl Analysis {
    /// As it stands on a label: `15-0-0`, `12-1.5-0.6`.
    pub fn label(self) -> String {
        let part = |part: Fraction| number(part.to_percent(), 1);
        format!("{}-{}-{}", part(self.n), part(self.p2o5), part(self.k2o))
    }

    /// From the three percentages of a label; `None` when one is outside 0 to 100, or all together over 100.
    pub fn percent(n: f64, p2o5: f64, k2o: f64) -> Option<Self> {
        let analysis = Self {
            n: Fraction::percent(n)?,
            p2o5: Fraction::percent(p2o5)?,
            k2o: Fraction::percent(k2o)?,
        };
        (n + p2o5 + k2o <= 100.0).then_some(analysis)
    }
}
