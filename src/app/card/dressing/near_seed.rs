//! How much of a material seed bears near it.

use egui::{RichText, Ui};

use crate::agronomy::{self, SeedPlacement};
use crate::catalog::{Analysis, Catalog, Mark};
use crate::plan::feeding::near_seed;
use crate::quantity::Units;

/// The most of it beside and below the seed, on sand, and touching it; nothing where it holds no salt that is counted.
pub(super) fn show(ui: &mut Ui, analysis: Analysis, units: Units) {
    let most = |placement| {
        let limit = agronomy::seed_limit(placement);
        agronomy::most_near_seed(limit.most, analysis).map(|most| most.show(units))
    };
    let beside = |low_exchange| most(SeedPlacement::Band { low_exchange });
    let (Some(usual), Some(sand), Some(touching)) = (beside(false), beside(true), most(SeedPlacement::InContact))
    else {
        return;
    };
    let catalog = Catalog::built_in();
    let sources = [
        catalog.cite_key("TRI-STATE-95", Mark::FromMemory),
        catalog.cite_key("KSU-STARTER", Mark::Read),
    ];
    let words = format!(
        "Corn seed bears {usual} of it {near} beside and below, {sand} on sand, and {touching} where it touches.",
        near = near_seed(units)
    );
    ui.label(RichText::new(words).small()).on_hover_text(sources.join("\n"));
}
