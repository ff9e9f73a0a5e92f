//! What feeding a bed comes to.

use jiff::civil::Date;

use super::time::SeasonOfBed;
use crate::agronomy::{self, Nutrient};
use crate::catalog::{Analysis, Mark, SourceKey};
use crate::layout::{DressingId, When};
use crate::quantity::{Fraction, Mass, MassPerArea, RateUnit};

/// The three nutrients over ground, in the terms of a label.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct NutrientRates {
    /// Nitrogen that comes free in the season.
    pub n: MassPerArea,
    /// Phosphate (P2O5).
    pub p2o5: MassPerArea,
    /// Potash (K2O).
    pub k2o: MassPerArea,
}

impl NutrientRates {
    /// In a rate of product; of its nitrogen the part that comes free.
    pub fn in_product(product: MassPerArea, analysis: Analysis, available_n: Fraction) -> Self {
        Self {
            n: agronomy::available_nitrogen(product, analysis.n, available_n),
            p2o5: product * analysis.p2o5.get(),
            k2o: product * analysis.k2o.get(),
        }
    }

    /// The rate of one of them.
    pub const fn of(&self, nutrient: Nutrient) -> MassPerArea {
        match nutrient {
            Nutrient::Nitrogen => self.n,
            Nutrient::Phosphate => self.p2o5,
            Nutrient::Potash => self.k2o,
        }
    }

    /// Adds others.
    pub fn add(&mut self, other: Self) {
        self.n += other.n;
        self.p2o5 += other.p2o5;
        self.k2o += other.k2o;
    }
}

/// What feeding a bed comes to.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct BedFeeding {
    /// What the bed wants for the season.
    pub wants: Wants,
    /// What it has already, in the bed's order.
    pub credits: Vec<CreditPlan>,
    /// Every feeding of every dressing, in order of time; of one that cannot be worked out, only what was used.
    pub steps: Vec<FeedingStep>,
    /// Wanted against planned and done: nitrogen, phosphate, potash.
    pub accounts: [Account; 3],
    /// The day it is planted, when known.
    pub planted: Option<Date>,
    /// Days from planting to harvest, when the crop book knows them.
    pub days_to_harvest: Option<u16>,
    /// Lime, when the laboratory calls for any.
    pub lime: Option<LimePlan>,
}

impl BedFeeding {
    /// The day on which something falls, where anybody knows: a stage about, counted from the planting day.
    pub fn day_of(&self, when: &When) -> Option<Date> {
        self.season().day_of(when)
    }

    /// The day at a part of the time from planting (0) to harvest (1), where the planting day is known.
    pub fn day_at(&self, at: f64) -> Option<Date> {
        self.season().day_at(at)
    }

    const fn season(&self) -> SeasonOfBed {
        SeasonOfBed {
            planted: self.planted,
            days: self.days_to_harvest,
        }
    }

    /// The account of a nutrient.
    pub const fn account(&self, nutrient: Nutrient) -> &Account {
        let [n, p2o5, k2o] = &self.accounts;
        match nutrient {
            Nutrient::Nitrogen => n,
            Nutrient::Phosphate => p2o5,
            Nutrient::Potash => k2o,
        }
    }
}

/// What a bed wants for the season, over its ground.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Wants {
    /// Nitrogen; nobody says when left out.
    pub n: Option<Want>,
    /// Phosphate (P2O5).
    pub p2o5: Option<Want>,
    /// Potash (K2O).
    pub k2o: Option<Want>,
}

impl Wants {
    /// What it wants of a nutrient.
    pub const fn of(&self, nutrient: Nutrient) -> Option<&Want> {
        match nutrient {
            Nutrient::Nitrogen => self.n.as_ref(),
            Nutrient::Phosphate => self.p2o5.as_ref(),
            Nutrient::Potash => self.k2o.as_ref(),
        }
    }
}

/// What a bed wants of one nutrient.
#[derive(Clone, Debug, PartialEq)]
pub struct Want {
    /// What is counted on.
    pub rate: MassPerArea,
    /// The smaller end of what is published; the same where one number is given.
    pub low: MassPerArea,
    /// The larger end.
    pub high: MassPerArea,
    /// Who says so.
    pub from: WantFrom,
}

/// Who says what a bed wants.
#[derive(Clone, Debug, PartialEq)]
pub enum WantFrom {
    /// The soil laboratory.
    Laboratory,
    /// A published general rate of the crop.
    Published {
        /// Where it holds; may be empty.
        condition: String,
        /// The keys of its sources, and how they were read.
        sources: (Vec<SourceKey>, Mark),
    },
}

/// What a credit gives.
#[derive(Clone, Debug, PartialEq)]
pub struct CreditPlan {
    /// What the grower calls it.
    pub name: String,
    /// What it gives.
    pub gives: NutrientRates,
}

/// One feeding of a dressing in the season.
#[derive(Clone, Debug, PartialEq)]
pub struct FeedingStep {
    /// The dressing.
    pub dressing: DressingId,
    /// What the grower calls it.
    pub name: String,
    /// Which of the dressing's feedings it is, from 0.
    pub feeding: usize,
    /// When it falls, or fell, as a part of the time from planting (0) to harvest (1).
    pub at: f64,
    /// When it was to fall.
    pub planned_at: f64,
    /// What it would bring as planned.
    pub planned: NutrientRates,
    /// What it brings: what was really used, or what is planned after what was used before it.
    pub brings: NutrientRates,
    /// Whether it is done.
    pub is_done: bool,
}

/// Wanted against planned and done, of one nutrient over the ground that the rows have.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Account {
    /// Wanted for the season; nobody says when left out.
    pub wanted: Option<MassPerArea>,
    /// Whether that is a guide only, so that less of it is no matter.
    pub is_guide: bool,
    /// What the bed has already.
    pub credited: MassPerArea,
    /// Wanted less credited, at nothing where the credits are more.
    pub to_give: Option<MassPerArea>,
    /// What the credits are more than what is wanted.
    pub over_credited: MassPerArea,
    /// What all dressings would bring as planned.
    pub planned: MassPerArea,
    /// What was really put down.
    pub done: MassPerArea,
    /// What the dressings still ahead bring.
    pub ahead: MassPerArea,
}

/// How an account stands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Standing {
    /// Nobody says what is wanted.
    NotKnown,
    /// About what is wanted.
    Enough,
    /// So much less.
    Under(MassPerArea),
    /// So much less than a rate that is a guide only.
    UnderGuide(MassPerArea),
    /// So much more.
    Over(MassPerArea),
}

impl Account {
    /// What was put down and what is still ahead.
    pub fn given(&self) -> MassPerArea {
        self.done + self.ahead
    }

    /// How it stands. A fifth of what is to be given more or less is about enough.
    ///
    /// # Source
    /// Measuring out by cup over many rows misses; a fifth more than planned is tolerated on a heavy feeder: common
    /// practice, no source.
    pub fn standing(&self) -> Standing {
        let Some(to_give) = self.to_give else {
            return Standing::NotKnown;
        };
        let given = self.given();
        let leeway = to_give * A_FIFTH + MassPerArea::pounds_per_acre(0.5);
        if given > to_give + leeway {
            Standing::Over(given - to_give)
        } else if given + leeway < to_give {
            let less = to_give - given;
            if self.is_guide {
                Standing::UnderGuide(less)
            } else {
                Standing::Under(less)
            }
        } else {
            Standing::Enough
        }
    }
}

/// The part of an amount that measuring by the cup may miss.
const A_FIFTH: f64 = 0.2;

/// Lime for a bed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LimePlan {
    /// What the laboratory asks for, over ground, of pure limestone.
    pub asked: MassPerArea,
    /// The unit that was typed in; the layout's usual one where left out.
    pub typed_in: Option<RateUnit>,
    /// Calcium carbonate equivalent of the lime in hand, as a part.
    pub purity: f64,
    /// Of the lime in hand, over ground.
    pub rate: MassPerArea,
    /// Of the lime in hand, for the bed's ground.
    pub total: Mass,
    /// In how many doses, half a year apart.
    pub doses: usize,
}
