//! What rows may give, in words: a range to plan by, never a promise.

use crate::plan::{BedHarvest, HarvestAmount};
use crate::quantity::{Mass, Units, count};

/// What published yields go by, and what they leave out.
pub const HARVEST_BASIS: &str = "counted by length of row, as for one line of plants at the usual spacing: more lines or another spacing do not change it";

/// "90 to 120 lb of tomatoes", "about 530 ears"; the amount alone.
pub fn harvest_words(harvest: &BedHarvest, units: Units) -> String {
    let what = &harvest.what;
    let (low, high, is_average) = match harvest.amount {
        HarvestAmount::Weight(range) => (
            pounds_or_kilograms(range.low, units),
            format!("{} of {what}", weight(range.high, units)),
            range.is_average(),
        ),
        HarvestAmount::Number(range) => (
            two_figures(range.low),
            format!("{} {what}", two_figures(range.high)),
            range.is_average(),
        ),
    };
    if is_average {
        format!("about {high}")
    } else {
        format!("{low} to {high}")
    }
}

fn weight(mass: Mass, units: Units) -> String {
    let unit = match units {
        Units::Customary => "lb",
        Units::Metric => "kg",
    };
    format!("{} {unit}", pounds_or_kilograms(mass, units))
}

fn pounds_or_kilograms(mass: Mass, units: Units) -> String {
    two_figures(match units {
        Units::Customary => mass.to_pounds(),
        Units::Metric => mass.to_kilograms(),
    })
}

/// To two figures, from ten up whole: more would say that the yield is known.
fn two_figures(amount: f64) -> String {
    if amount <= 0.0 || !amount.is_finite() {
        return "0".to_owned();
    }
    let step = 10_f64.powf(amount.log10().floor() - 1.0);
    let rounded = (amount / step).round() * step;
    if rounded >= 10.0 {
        return count(rounded.round() as u64);
    }
    let decimals = (1.0 - rounded.log10().floor()).clamp(0.0, 6.0) as usize;
    let text = format!("{rounded:.decimals$}");
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}
