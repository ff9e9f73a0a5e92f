//! What a bed may give, from published yields: a range to plan by, never a promise.

use egui::{RichText, Ui};

use crate::app::wording::source_words;
use crate::catalog::Mark;
use crate::plan::{BedPlan, HarvestAmount};
use crate::quantity::{Mass, Units, count};

/// One line below the tally, where the crop's yield is published.
pub(super) fn show(ui: &mut Ui, plan: &BedPlan, units: Units) {
    let Some(harvest) = &plan.harvest else { return };
    let what = &harvest.what;
    let (low, high, is_average) = match harvest.amount {
        HarvestAmount::Weight(range) => (
            weight(range.low, units),
            format!("{} of {what}", weight(range.high, units)),
            range.is_average(),
        ),
        HarvestAmount::Number(range) => (
            count(two_figures(range.low)),
            format!("{} {what}", count(two_figures(range.high))),
            range.is_average(),
        ),
    };
    let (keys, mark) = &harvest.sources;
    let words = if *mark == Mark::Grower {
        format!("may give about {high} by your own figure, never a promise")
    } else if is_average {
        format!(
            "may give about {high}: an average of gardens, never a promise; a good or a bad year lies well to either side"
        )
    } else {
        format!("may give {low} to {high}: what gardens have harvested, never a promise")
    };
    ui.label(RichText::new(words).small().weak())
        .on_hover_text(source_words(keys, *mark));
}

fn weight(mass: Mass, units: Units) -> String {
    match units {
        Units::Customary => format!("{} lb", count(two_figures(mass.to_pounds()))),
        Units::Metric => format!("{} kg", count(two_figures(mass.to_kilograms()))),
    }
}

/// To two figures: more would say that the yield is known.
fn two_figures(amount: f64) -> u64 {
    let step = 10_f64.powi((amount.max(1.0).log10().floor() as i32 - 1).max(0));
    ((amount / step).round() * step) as u64
}
