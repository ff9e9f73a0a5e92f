//! What a bed may give, from published yields: a range to plan by, never a promise.

use egui::{RichText, Ui};

use crate::catalog::{Catalog, Mark};
use crate::plan::BedPlan;
use crate::quantity::Units;
use crate::sheets::order_list::{HARVEST_BASIS, harvest_words};

/// One line below the tally, where the crop's yield is published.
pub(super) fn show(ui: &mut Ui, plan: &BedPlan, units: Units) {
    let Some(harvest) = &plan.harvest else { return };
    let amount = harvest_words(harvest, units);
    let (keys, mark) = &harvest.sources;
    let words = if *mark == Mark::Grower {
        format!("may give {amount} by your own figure, never a promise")
    } else if harvest.is_average() {
        format!(
            "may give {amount}: an average of gardens, never a promise; a good or a bad year lies well to either side"
        )
    } else {
        format!("may give {amount}: what gardens have harvested, never a promise")
    };
    let words = format!("{words}; {HARVEST_BASIS}");
    ui.label(RichText::new(words).small().weak())
        .on_hover_text(Catalog::built_in().cite(keys, *mark));
}
