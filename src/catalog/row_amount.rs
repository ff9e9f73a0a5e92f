//! What goes into a length of row, and what comes off it.

use super::source::Ends;
use crate::quantity::{CountPerLength, MassPerLength};

/// An amount for a length of row, by weight or by number.
#[derive(Clone, Debug, PartialEq)]
pub struct RowAmount {
    /// What is weighed or counted: "seed", "slips", "shelled beans", "ears".
    pub what: String,
    /// How much of it.
    pub measure: RowMeasure,
}

/// How much for a length of row.
#[derive(Clone, Debug, PartialEq)]
pub enum RowMeasure {
    /// By weight.
    Weight(Ends<MassPerLength>),
    /// By number.
    Number(Ends<CountPerLength>),
}

impl RowAmount {
    /// Whether it is an amount of seed.
    pub fn is_seed(&self) -> bool {
        self.what == SEED
    }
}

/// The catalogue's word for what is sown.
const SEED: &str = "seed";
