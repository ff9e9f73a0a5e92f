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
