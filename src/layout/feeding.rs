//! What a bed wants in nutrients, and what it has already before anything is put down.

use crate::catalog::Analysis;
use crate::quantity::{Concentration, Fraction, Length, MassPerArea, MassPerLength, RateUnit};

/// What a bed wants, and what it has already.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Feeding {
    /// What the soil laboratory recommends; the published general rates of the crop when there is no such paper.
    pub laboratory: Option<Recommendation>,
    /// Where the published rate holds that the grower chose among those of the crop, in the catalogue's words; the
    /// first one counts when left out.
    pub published: Option<String>,
    /// What the bed has already.
    pub credits: Vec<Credit>,
    /// Whether dressings stay as they were planned, whatever was really used of those before.
    pub holds_to_plan: bool,
}

/// What a soil laboratory recommends for a bed. Phosphate and potash are in the terms of a label, P2O5 and K2O,
/// however the laboratory writes them.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Recommendation {
    /// Nitrogen; not said when left out.
    pub n: Option<NutrientRate>,
    /// Phosphate (P2O5).
    pub p2o5: Option<NutrientRate>,
    /// Potash (K2O).
    pub k2o: Option<NutrientRate>,
    /// Whether the paper writes phosphorus and potassium (P and K) instead, so that they are typed and shown so.
    pub elemental: bool,
    /// How far apart rows stand in the laboratory's acre, where its amounts belong to the foot of row whatever
    /// the rows' distance; its amounts count the ground itself when left out.
    pub rows_apart: Option<Length>,
    /// Ground limestone, when any is called for.
    pub lime: Option<Lime>,
    /// The units the paper's nutrients were typed in.
    pub typed_in: NutrientUnits,
}

/// The units in which rates of nutrients were typed, so that they are shown as they stand on the grower's paper; the
/// layout's usual unit where left out.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct NutrientUnits {
    /// Of nitrogen.
    pub n: Option<RateUnit>,
    /// Of phosphate, or phosphorus.
    pub p2o5: Option<RateUnit>,
    /// Of potash, or potassium.
    pub k2o: Option<RateUnit>,
}

/// A rate of a nutrient.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum NutrientRate {
    /// So much over ground.
    PerArea(MassPerArea),
    /// So much along each row.
    PerRowLength(MassPerLength),
}

/// Lime that a laboratory calls for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lime {
    /// Over ground, of pure limestone: calcium carbonate equivalent 100 %.
    pub rate: MassPerArea,
    /// The unit it was typed in; the layout's usual one where left out.
    pub typed_in: Option<RateUnit>,
    /// Calcium carbonate equivalent of the lime in hand, by its label; may be more than 1.
    pub purity: f64,
}

/// Something that the bed has already.
#[derive(Clone, Debug, PartialEq)]
pub struct Credit {
    /// What the grower calls it: "compost in fall", "clover sod".
    pub name: String,
    /// What it is.
    pub what: CreditKind,
}

/// What a heap is of that is spread.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Heap {
    /// Compost.
    Compost,
    /// Manure of dairy cows.
    DairyManure,
    /// Manure of beef cattle.
    BeefManure,
    /// Manure of hogs.
    HogManure,
    /// Manure of poultry.
    PoultryManure,
}

/// What a credit is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum CreditKind {
    /// Compost or manure.
    Compost {
        /// Which of them, where it is said.
        of: Option<Heap>,
        /// How much of it, over ground.
        rate: MassPerArea,
        /// The unit that was typed in; the layout's usual one where left out.
        typed_in: Option<RateUnit>,
        /// What it holds.
        analysis: Analysis,
        /// The part of its nitrogen that comes free this season.
        available_n: Fraction,
    },
    /// Nitrogen that the soil gives: last year's legume, a sod turned in, organic matter.
    Nitrogen {
        /// How much, over ground.
        rate: MassPerArea,
        /// The unit that was typed in; the layout's usual one where left out.
        typed_in: Option<RateUnit>,
    },
    /// Nitrate in the water.
    Water {
        /// Nitrogen in the water, as nitrate-nitrogen.
        nitrate_n: Concentration,
        /// Whether the paper gives it as nitrate (NO3) instead, so that it is typed and shown so.
        as_nitrate: bool,
        /// Water put on over the season.
        depth: Length,
    },
    /// What was put down before this plan began.
    Down {
        /// Nitrogen.
        n: MassPerArea,
        /// Phosphate (P2O5).
        p2o5: MassPerArea,
        /// Potash (K2O).
        k2o: MassPerArea,
        /// The units they were typed in.
        typed_in: NutrientUnits,
    },
}
