//! Layout to Plan: gives every bed its rows and every row its numbers.

mod ledger;
mod types;

pub use ledger::{Column, ColumnKind, Ledger};
pub use types::{
    Analysis, BedPlan, DressingPlan, GoesBy, HeadsUp, InRowFrom, Piece, Plan, PlotPlan, Row, Stand, Totals,
};
