//! The feeding of a plan in words: what every row gets, what to buy, what runs through the tape, and what to watch out
//! for. Window, paper and tables all show these words and figures.

mod account;
mod caution;
mod dressing;
mod measure;
mod run;
mod shopping;

pub use account::{
    AccountWords, account_words, credit_words, lime_words, rate_number, rate_unit, rate_words, standing_words,
    want_words,
};
pub use caution::CautionWords;
pub use dressing::{DressingWords, FedRow, FeedingWords, dressing_words, fed_rows};
pub use measure::{bag_words, pace_stretch, scoop, stretch_words};
pub use run::{DIFFERS, RunWords, UNEVEN, depth_words, dissolving_words};
pub use shopping::ShoppingWords;

use std::collections::BTreeMap;
use std::sync::Arc;

use crate::layout::{Bed, BedId, Layout};
use crate::plan::feeding::MaterialBook;
use crate::plan::{BedPlan, Plan};
use crate::quantity::Units;

/// The feeding of a plan.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct FeedingList {
    /// Every bed that is fed, in the layout's order.
    pub beds: Vec<Arc<FedBed>>,
    /// What to buy, a line a material.
    pub shopping: Vec<ShoppingWords>,
    /// What all lines with a price cost together; empty when nothing to buy has one.
    pub cost: String,
    /// What the cost leaves out, in a few words; empty when nothing.
    pub cost_note: String,
    /// Runs of feeding through the tape.
    pub runs: Vec<RunWords>,
    /// What to watch out for.
    pub cautions: Vec<CautionWords>,
}

/// One bed that is fed.
#[derive(Clone, Debug, PartialEq)]
pub struct FedBed {
    /// The bed.
    pub bed: BedId,
    /// What the grower calls it.
    pub name: String,
    /// Its dressings, in order of time.
    pub dressings: Vec<DressingWords>,
    /// Its accounts of nitrogen, phosphate and potash.
    pub accounts: Vec<AccountWords>,
    /// What it has already, a credit each: "clover sod: nitrogen 40 lb/acre".
    pub credits: Vec<String>,
    /// Lime that the laboratory calls for; empty when none.
    pub lime: String,
}

/// The beds of a list that is made without their rows, kept from one edit to the next.
#[derive(Debug, Default)]
pub struct KeptBeds {
    units: Option<Units>,
    beds: BTreeMap<BedId, (Arc<BedPlan>, Arc<FedBed>)>,
}

impl FeedingList {
    /// The feeding of a plan with every row of it, in the layout's units.
    pub fn of(layout: &Layout, plan: &Plan) -> Self {
        let book = MaterialBook::of(layout);
        let fed = |bed: &Bed, of_plan: &Arc<BedPlan>| Arc::new(fed_bed(bed, of_plan, layout.units, true));
        Self::with_beds(layout, plan, &book, fed)
    }

    /// The same without its rows: [`fed_rows`] words those that are asked for. A bed's words are kept as long as its plan
    /// is.
    pub fn keeping(kept: &mut KeptBeds, layout: &Layout, plan: &Plan, book: &MaterialBook) -> Self {
        let units = layout.units;
        let before = std::mem::take(&mut kept.beds);
        let same_units = kept.units.replace(units) == Some(units);
        Self::with_beds(layout, plan, book, |bed, of_plan| {
            let same = before
                .get(&bed.id)
                .filter(|(plan, _)| same_units && Arc::ptr_eq(plan, of_plan));
            let fed = same.map_or_else(|| Arc::new(fed_bed(bed, of_plan, units, false)), |(_, fed)| fed.clone());
            kept.beds.insert(bed.id, (of_plan.clone(), fed.clone()));
            fed
        })
    }

    fn with_beds(
        layout: &Layout,
        plan: &Plan,
        book: &MaterialBook,
        mut fed: impl FnMut(&Bed, &Arc<BedPlan>) -> Arc<FedBed>,
    ) -> Self {
        let units = layout.units;
        let plans: BTreeMap<BedId, &Arc<BedPlan>> = plan.beds.iter().map(|plan| (plan.bed, plan)).collect();
        let beds = layout.beds.iter().filter(|bed| !bed.dressings.is_empty());
        let beds = beds.filter_map(|bed| Some(fed(bed, plans.get(&bed.id)?))).collect();
        let cost = shopping::cost(&plan.shopping);
        Self {
            beds,
            shopping: shopping::lines(&plan.shopping, units),
            cost: cost.0,
            cost_note: cost.1,
            runs: run::runs(layout, plan, units),
            cautions: caution::cautions(layout, plan, book),
        }
    }

    /// Whether nothing is put down anywhere.
    pub const fn is_empty(&self) -> bool {
        self.beds.is_empty()
    }
}

fn fed_bed(bed: &Bed, plan: &BedPlan, units: Units, with_rows: bool) -> FedBed {
    FedBed {
        bed: bed.id,
        name: bed.name.clone(),
        dressings: dressing::dressings(bed, plan, units, with_rows),
        accounts: account_words(&plan.feeding, units),
        credits: credit_words(&plan.feeding, units),
        lime: lime_words(&plan.feeding, units),
    }
}
