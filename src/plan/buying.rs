//! What a buying table would have a bed buy, set beside what its rows need. No need is ever worked out from a table.

use super::order::Quantity;
use super::things::Things;
use super::types::Plan;
use crate::catalog::{RowAmount, RowMeasure};
use crate::layout::BedId;
use crate::quantity::{Length, Mass};

/// A bed's need beside what a buying table says for as much row.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BuyingBeside {
    /// Row of the bed.
    pub row_length: Length,
    /// What the bed takes.
    pub things: Things,
    /// How much of it, with what is added on top.
    pub need: Quantity,
    /// What the table would buy.
    pub table: TableBuys,
    /// How many times the need the table would buy, at both ends of it; where the two can be compared.
    pub times: Option<(f64, f64)>,
}

/// What a table would buy, at both of its ends; they are alike where it gives one amount.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum TableBuys {
    /// By weight.
    Weight(Mass, Mass),
    /// By number.
    Number(f64, f64),
}

impl BuyingBeside {
    /// The need of a bed beside a table; `None` where the bed takes nothing.
    pub fn of(plan: &Plan, bed: BedId, table: &RowAmount) -> Option<Self> {
        let row_length = plan.bed(bed)?.totals.row_length;
        let line = plan.order.line_of(bed)?;
        let need = line.beds.iter().find(|of| of.bed == bed)?.amount;
        if need.count == 0 {
            return None;
        }
        let is_seed = line.things == Things::Seeds;
        let (table, times) = match &table.measure {
            RowMeasure::Weight(ends) => {
                let (low, high) = (ends.low.value * row_length, ends.high.value * row_length);
                let mass = need
                    .mass
                    .filter(|mass| *mass > Mass::ZERO && is_seed == table.is_seed());
                (TableBuys::Weight(low, high), mass.map(|mass| (low / mass, high / mass)))
            }
            RowMeasure::Number(ends) => {
                let (low, high) = (ends.low.value * row_length, ends.high.value * row_length);
                let count = need.count as f64;
                (
                    TableBuys::Number(low, high),
                    (!is_seed).then_some((low / count, high / count)),
                )
            }
        };
        Some(Self {
            row_length,
            things: line.things,
            need,
            table,
            times,
        })
    }
}
