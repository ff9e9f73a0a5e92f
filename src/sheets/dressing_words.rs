//! A dressing in words: how much of what, where it goes, and what its amount is shared out by.

use crate::layout::{Amount, Basis, Bed, Dressing, Placement};
use crate::plan::{BedPlan, DressingPlan, GoesBy};
use crate::quantity::{Length, Units, count};

/// The material with its analysis, which is said once where the name has it: "Urea (46-0-0)".
pub fn material(of_plan: &DressingPlan) -> String {
    let label = of_plan.analysis.label();
    if of_plan.material_name.contains(&label) {
        of_plan.material_name.clone()
    } else {
        format!("{} ({label})", of_plan.material_name)
    }
}

/// How much, and of what: "1.5 lb/1,000 sq ft of nitrogen".
pub fn amount(dressing: &Dressing, units: Units) -> String {
    let amount = match dressing.amount {
        Amount::PerArea(rate) => rate.show_garden(units),
        Amount::PerRowLength(rate) => rate.show(units),
        Amount::PerPlant(each) => format!("{} a plant", each.show_seed(units)),
    };
    match counted(dressing.basis) {
        "" => amount,
        counted => format!("{amount} of {counted}"),
    }
}

/// What an amount counts; nothing where it is the product itself.
pub const fn counted(basis: Basis) -> &'static str {
    match basis {
        Basis::Product => "",
        Basis::Nitrogen => "nitrogen",
        Basis::Phosphate => "phosphate",
        Basis::Potash => "potash",
    }
}

/// Where it goes: "beside the plants, on a strip 1 ft wide".
pub fn place(placement: Placement, units: Units) -> String {
    let wide = |strip: Length| format!("{} wide", strip.show_short(units));
    match placement {
        Placement::Broadcast => "broadcast".to_owned(),
        Placement::Band { strip: None } => "in a band".to_owned(),
        Placement::Band { strip: Some(strip) } => format!("in a band {}", wide(strip)),
        Placement::SideDress { strip: None } => "beside the plants".to_owned(),
        Placement::SideDress { strip: Some(strip) } => format!("beside the plants, on a strip {}", wide(strip)),
        Placement::Injected(injecting) => match injecting.times {
            1 => "through the tape".to_owned(),
            times => format!("through the tape, {times} times"),
        },
    }
}

/// What it is shared out by, with the numbers: "by row feet: 330 ft × 3 ft = 990 sq ft". Where the strip is not the row
/// spacing, the ground that the account counts is another, and is said apart.
pub fn goes_by(bed: &Bed, plan: &BedPlan, dressing: &Dressing, of_plan: &DressingPlan, units: Units) -> String {
    let rows = plan.totals.row_length.show_total(units);
    let row_feet = match units {
        Units::Customary => "row feet",
        Units::Metric => "row metres",
    };
    match (of_plan.goes_by, dressing.amount) {
        (GoesBy::Ground, _) => format!("by the bed's ground: {}", of_plan.counted.show(units)),
        (GoesBy::RowFeet, Amount::PerArea(_)) => {
            let strip = dressing.placement.strip().unwrap_or(bed.row_spacing);
            let strips = (plan.totals.row_length * strip).show(units);
            let counted = of_plan.counted.show(units);
            let apart = if strips == counted {
                String::new()
            } else {
                format!("; the account counts the rows' whole ground, {counted}")
            };
            format!("by {row_feet}: {rows} × {} = {strips}{apart}", strip.show_short(units))
        }
        (GoesBy::RowFeet, _) => format!("by {row_feet}: {rows}"),
        (GoesBy::Plants, _) => format!("by plants: {}", count(plan.totals.plants)),
    }
}
