//! Layout to Plan: gives every bed its rows and every row its numbers.

mod types;

pub use types::{
    Analysis, BedPlan, DressingPlan, GoesBy, HeadsUp, InRowFrom, Piece, Plan, PlotPlan, Row, Stand, Totals,
};
