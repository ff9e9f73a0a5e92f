//! A dressing in words: how much of what, where it goes, and what its amount is shared out by.

use crate::agronomy;
use crate::layout::{Amount, Basis, Bed, Dressing, Placement, When};
use crate::plan::{BedPlan, DressingPlan, GoesBy};
use crate::quantity::{Mass, RateUnit, Units, count, number};

/// The material with its analysis, which is said once where the name has it: "Urea (46-0-0)".
pub fn material(of_plan: &DressingPlan) -> String {
    let label = of_plan.analysis.label();
    if of_plan.material_name.contains(&label) {
        of_plan.material_name.clone()
    } else {
        format!("{} ({label})", of_plan.material_name)
    }
}

/// How much, and of what, as planned, in the unit the grower gave it in: "65 lb/acre of nitrogen".
pub fn amount(dressing: &Dressing, units: Units) -> String {
    of_what(
        rate(dressing.amount, dressing.typed_in, dressing.basis, units),
        dressing.basis,
    )
}

/// The same as it is in force, each time: as what is still ahead follows what was used, or, where all is done, as it was used.
/// Nothing where that is as planned.
pub fn amount_in_force(dressing: &Dressing, of_plan: &DressingPlan, units: Units) -> Option<String> {
    let planned = of_plan.each_planned();
    let now = if of_plan.is_done() {
        of_plan.done / f64::from(of_plan.times_done.max(1))
    } else {
        of_plan.each_ahead()
    };
    if of_plan.problem.is_some() || planned <= Mass::ZERO || now.show_product(units) == planned.show_product(units) {
        return None;
    }
    let amount = dressing.amount.times(now / planned);
    let typed = dressing.typed_in.and_then(|unit| match amount {
        Amount::PerArea(rate) => rate.show_about_in(unit, units),
        Amount::PerRowLength(rate) => rate.show_about_in(unit, units),
        Amount::PerPlant(each) => each.show_to_plant_about_in(unit, units),
    });
    let shown = typed.unwrap_or_else(|| rate(amount, None, dressing.basis, units));
    Some(of_what(shown, dressing.basis)).filter(|words| *words != self::amount(dressing, units))
}

/// An amount with what it counts behind it, where that is not the product.
pub fn of_what(amount: String, basis: Basis) -> String {
    match basis {
        Basis::Product => amount,
        basis => format!("{amount} of {}", counted(basis)),
    }
}

/// When a dressing is given: a stage with about the day, where the planting day is known.
pub fn when(dressing: &Dressing, of_plan: &DressingPlan) -> String {
    let words = dressing.when.words();
    match (&dressing.when, of_plan.from.day) {
        (When::Stage(_), Some(day)) => format!("{words}, about {}", day.strftime("%-d %B")),
        _ => words,
    }
}

/// The name of one of several feedings, the first of them at 0: "1st feeding".
pub fn nth_feeding(place: usize) -> String {
    let number = place + 1;
    let ending = match (number % 10, number % 100) {
        (1, hundred) if hundred != 11 => "st",
        (2, hundred) if hundred != 12 => "nd",
        (3, hundred) if hundred != 13 => "rd",
        _ => "th",
    };
    format!("{number}{ending} feeding")
}

/// An amount in the unit it was typed in, or as growers write it: a nutrient goes by the acre, as it is recommended, a
/// product by 1,000 sq ft.
pub fn rate(amount: Amount, typed_in: Option<RateUnit>, basis: Basis, units: Units) -> String {
    let typed = typed_in.and_then(|unit| rate_in(amount, unit, units));
    typed.unwrap_or_else(|| match amount {
        Amount::PerArea(rate) if basis == Basis::Product => rate.show_garden(units),
        Amount::PerArea(rate) => rate.show_field(units),
        Amount::PerRowLength(rate) => rate.show(units),
        Amount::PerPlant(each) => match units {
            Units::Customary => format!("{} oz/plant", number(each.to_ounces(), 3)),
            Units::Metric => format!("{} g/plant", number(each.to_grams(), 3)),
        },
    })
}

/// An amount in a unit with all its figures; `None` where the unit is of another kind.
pub fn rate_in(amount: Amount, unit: RateUnit, units: Units) -> Option<String> {
    match amount {
        Amount::PerArea(rate) => rate.show_in(unit, units),
        Amount::PerRowLength(rate) => rate.show_in(unit, units),
        Amount::PerPlant(each) => each.show_to_plant_in(unit, units),
    }
}

/// What an amount counts.
pub const fn counted(basis: Basis) -> &'static str {
    match basis {
        Basis::Product => "product",
        Basis::Nitrogen => "nitrogen",
        Basis::Phosphate => "phosphate, P2O5",
        Basis::Potash => "potash, K2O",
    }
}

/// Which way it goes down.
pub const fn way(placement: Placement) -> &'static str {
    match placement {
        Placement::Broadcast => "broadcast over the bed",
        Placement::Band { .. } => "in a band at the row",
        Placement::SideDress { .. } => "beside the plants",
        Placement::Injected(_) => "through the tape",
    }
}

/// Where it goes, with its strip or how often: "beside the plants, on a strip 1 ft wide".
pub fn place(placement: Placement, units: Units) -> String {
    let way = way(placement);
    match placement {
        Placement::Injected(injecting) if injecting.times > 1 => format!("{way}, {} times", injecting.times),
        Placement::Band { strip: Some(strip) } | Placement::SideDress { strip: Some(strip) } => {
            format!("{way}, on a strip {} wide", strip.show_short(units))
        }
        _ => way.to_owned(),
    }
}

/// What was put down, or is to be, against the plan: "20 % more than the 13.20 lb planned", "about 10 times the 13.20 lb
/// planned", "as planned".
pub fn against_plan(planned: Mass, given: Mass, units: Units) -> String {
    let Ok(over) = agronomy::over_plan(planned, given) else {
        return "nothing was planned".to_owned();
    };
    let plan = planned.show_product(units);
    match number((over * 100.0).abs(), 0).as_str() {
        "0" => "as planned".to_owned(),
        _ if over > MOST_IN_PERCENT => format!("about {} times the {plan} planned", number(over + 1.0, 0)),
        percent if over < 0.0 => format!("{percent} % less than the {plan} planned"),
        percent => format!("{percent} % more than the {plan} planned"),
    }
}

/// Over this part more, percent say less than how many times it is.
const MOST_IN_PERCENT: f64 = 2.0;

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
