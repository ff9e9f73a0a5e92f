//! Layout to Plan: gives every bed its rows and every row its numbers, and recomputes only what an edit touched.
//!
//! [`Planner::plan`] is the way in.

mod apportion;
mod bed_rows;
mod dressing;
mod heads_up;
mod ledger;
mod overlaps;
mod planner;
mod stand;
mod sums;
mod types;

pub use ledger::{Column, ColumnKind, Ledger};
pub use planner::Planner;
pub use types::{
    BedPlan, CropSum, DressingPlan, GoesBy, HeadsUp, InRowFrom, MaterialSum, Piece, Plan, PlantedCrop, PlotPlan, Row,
    Stand, Totals,
};
