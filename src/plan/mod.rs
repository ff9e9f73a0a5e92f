//! Layout to Plan: gives every bed its rows and every row its numbers, and recomputes only what an edit touched.
//!
//! [`Planner::plan`] is the way in.

mod apportion;
mod bed_rows;
mod buying;
mod counted_on;
mod crop_book;
mod dressing;
pub mod feeding;
mod heads_up;
mod ledger;
mod missing;
mod order;
mod overlaps;
mod planner;
mod row_seed;
mod split_line;
mod stand;
mod sums;
mod things;
mod types;

pub use buying::{BuyingBeside, TableBuys};
pub use counted_on::CountedOn;
pub use crop_book::CropBook;
pub use ledger::{Column, ColumnKind, Ledger};
pub use missing::no_in_row;
pub use order::{
    CellsFrom, Drawn, ForBed, LotAge, Order, OrderLine, PacketsOfSize, PacketsToBuy, Quantity, TraysToSow,
    TraysTogether, USUAL_YEARS,
};
pub use planner::Planner;
pub use split_line::{SplitLine, SplitOutcome};
pub use things::Things;
pub use types::{
    BedHarvest, BedPlan, CropSum, DressingDay, DressingPlan, GerminationFrom, GoesBy, HarvestAmount, HeadsUp,
    InRowFrom, MaterialSum, Piece, Plan, PlantedCrop, PlotPlan, Row, Stand, Totals,
};
