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
pub use dressing::{DressingWords, FedRow, dressing_words};
pub use measure::{bag_words, pace_stretch, scoop, stretch_words};
pub use run::{DIFFERS, RunWords, depth_words, dissolving_words};
pub use shopping::ShoppingWords;

use crate::layout::{BedId, Layout};
use crate::plan::feeding::MaterialBook;
use crate::plan::{Ledger, Plan};

/// The feeding of a plan.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct FeedingList {
    /// Every bed that is fed, in the layout's order.
    pub beds: Vec<FedBed>,
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
    /// Its dressings, in the bed's order.
    pub dressings: Vec<DressingWords>,
    /// Its accounts of nitrogen, phosphate and potash.
    pub accounts: Vec<AccountWords>,
    /// What it has already, a credit each: "clover sod: nitrogen 40 lb/acre".
    pub credits: Vec<String>,
    /// Lime that the laboratory calls for; empty when none.
    pub lime: String,
}

impl FeedingList {
    /// The feeding of a plan, in the layout's units.
    pub fn of(layout: &Layout, plan: &Plan) -> Self {
        let book = MaterialBook::of(layout);
        let units = layout.units;
        let beds = layout.beds.iter().filter(|bed| !bed.dressings.is_empty());
        let beds = beds.filter_map(|bed| {
            let of_plan = plan.bed(bed.id)?;
            let ledger = Ledger::of(of_plan, units);
            Some(FedBed {
                bed: bed.id,
                name: bed.name.clone(),
                dressings: dressing::dressings(bed, of_plan, &ledger, units),
                accounts: account_words(&of_plan.feeding, units),
                credits: credit_words(&of_plan.feeding, units),
                lime: lime_words(&of_plan.feeding, units),
            })
        });
        let cost = shopping::cost(&plan.shopping);
        Self {
            beds: beds.collect(),
            shopping: shopping::lines(&plan.shopping, units),
            cost: cost.0,
            cost_note: cost.1,
            runs: run::runs(layout, plan, units),
            cautions: caution::cautions(layout, plan, &book),
        }
    }

    /// Whether nothing is put down anywhere.
    pub const fn is_empty(&self) -> bool {
        self.beds.is_empty()
    }
}
