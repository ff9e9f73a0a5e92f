//! Layout to Plan: gives every bed its rows and every row its numbers.

mod apportion;
mod ledger;
mod types;

pub use ledger::{Column, ColumnKind, Ledger};
pub use types::{
    Analysis, BedPlan, CropSum, DressingPlan, GoesBy, HeadsUp, InRowFrom, MaterialSum, Piece, Plan, PlantedCrop,
    PlotPlan, Row, Stand, Totals,
};
