//! How a bed is planted, in a few words for labels, heads and tables.

use crate::layout::{Bed, Sowing};
use crate::plan::{BedPlan, GerminationFrom};
use crate::quantity::Units;

/// From row to row, and how many lines stand on each: "3 ft rows", "4 ft rows of 3 lines, 8 in apart".
pub fn rows(bed: &Bed, units: Units) -> String {
    let rows = format!("{} rows", bed.row_spacing.show_short(units));
    let lines = bed.lines;
    if lines.per_row < 2 {
        return rows;
    }
    let staggered = if lines.staggered { ", staggered" } else { "" };
    format!(
        "{rows} of {} lines, {} apart{staggered}",
        lines.per_row,
        lines.apart.show_short(units)
    )
}

/// From plant to plant in a line: "6 in apart", "hills of 2, 24 in apart"; empty where nothing is planted.
pub fn in_row(plan: &BedPlan, units: Units) -> String {
    plan.stand.map_or_else(String::new, |stand| {
        let apart = format!("{} apart", stand.in_row.show_short(units));
        match stand.sowing {
            Sowing::Hills { plants_per_hill, .. } => format!("hills of {plants_per_hill}, {apart}"),
            _ => apart,
        }
    })
}

/// The part of the seeds that is counted on to come up, of which rows take so many: "seed at 75 %". Lots on the shelf are drawn by
/// their own, as the order says. Empty where no seed is sown, or nobody says how much comes up.
pub fn seed_at(plan: &BedPlan) -> String {
    let stand = plan
        .stand
        .filter(|stand| plan.totals.seeds > 0 && stand.germination_from != GerminationFrom::NotKnown);
    stand.map_or_else(String::new, |stand| format!("seed at {}", stand.comes_up().show()))
}
