//! Words for amounts that several panels show the same way.

use crate::layout::store::StoreError;
use crate::quantity::{Length, Mass, Units};

/// Row feet, or row metres.
pub(super) fn row_length(length: Length, units: Units) -> String {
    match units {
        Units::Customary => length.show_total(units).replace(" ft", " row ft"),
        Units::Metric => length.show_total(units).replace(" m", " row m"),
    }
}

/// "nitrogen 1.98 lb, potash 0.30 lb", without what there is none of.
pub(super) fn nutrients(n: Mass, p2o5: Mass, k2o: Mass, units: Units) -> String {
    let named = [("nitrogen", n), ("phosphate", p2o5), ("potash", k2o)];
    let words: Vec<String> = named
        .into_iter()
        .filter(|(_, mass)| *mass > Mass::ZERO)
        .map(|(name, mass)| format!("{name} {}", mass.show_product(units)))
        .collect();
    words.join(", ")
}

/// Why a file could not be opened or saved, and on a line of its own what to do about it.
pub(super) fn worded(error: &StoreError) -> String {
    format!("{error}\n{}", error.hint())
}
