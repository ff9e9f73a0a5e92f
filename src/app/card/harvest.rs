//! What a bed may give, from published yields: a range to plan by, never a promise.

use egui::{RichText, Ui};

use crate::agronomy;
use crate::app::wording::source_words;
use crate::catalog::{Crop, RowMeasure};
use crate::plan::BedPlan;
use crate::quantity::{Length, Mass, Units, count};

/// One line below the tally, where the crop's yield is published.
pub(super) fn show(ui: &mut Ui, crop: Option<&Crop>, plan: &BedPlan, units: Units) {
    let length = plan.totals.row_length;
    let Some(harvest) = crop.and_then(|crop| crop.harvest.as_ref()) else {
        return;
    };
    if length <= Length::ZERO {
        return;
    }
    let (low, high, words, source) = match &harvest.measure {
        RowMeasure::Weight(ends) => (
            ends.low.value.to_pounds_per_100_feet(),
            ends.high.value.to_pounds_per_100_feet(),
            Words::Weight,
            source_words(&ends.low.sources, ends.low.mark),
        ),
        RowMeasure::Number(ends) => (
            ends.low.value.to_per_100_feet(),
            ends.high.value.to_per_100_feet(),
            Words::Number,
            source_words(&ends.low.sources, ends.low.mark),
        ),
    };
    let Ok(range) = agronomy::harvest(length, low, high) else {
        return;
    };
    let (low, high) = (words.show(range.low, units), words.show(range.high, units));
    let what = match words {
        Words::Weight => format!("of {}", harvest.what),
        Words::Number => harvest.what.clone(),
    };
    let words = if low == high {
        format!(
            "may give about {high} {what}: an average of gardens, never a promise; a good or a bad year lies well to either side"
        )
    } else {
        format!("may give {low} to {high} {what}: what gardens have harvested, never a promise")
    };
    ui.label(RichText::new(words).small().weak()).on_hover_text(source);
}

/// What a yield counts.
#[derive(Clone, Copy)]
enum Words {
    Weight,
    Number,
}

impl Words {
    /// A yield of so many pounds, or so many things.
    fn show(self, amount: f64, units: Units) -> String {
        match self {
            Self::Number => count(two_figures(amount)),
            Self::Weight => {
                let mass = Mass::pounds(amount);
                match units {
                    Units::Customary => format!("{} lb", count(two_figures(mass.to_pounds()))),
                    Units::Metric => format!("{} kg", count(two_figures(mass.to_kilograms()))),
                }
            }
        }
    }
}

/// To two figures: more would say that the yield is known.
fn two_figures(amount: f64) -> u64 {
    let step = 10_f64.powi((amount.max(1.0).log10().floor() as i32 - 1).max(0));
    ((amount / step).round() * step) as u64
}
