//! Values of the crop book in words: ways of planting, ranges, amounts in a row, and sources.

use crate::app::seed_words::plain;
use crate::catalog::{Catalog, Ends, Hardiness, PlantingMethod, RowAmount, RowMeasure, Sourced};
use crate::quantity::{CountPerLength, Units};

/// Every way of planting, in the order they are offered.
pub(super) const METHODS: [PlantingMethod; 10] = [
    PlantingMethod::Drilled,
    PlantingMethod::Transplant,
    PlantingMethod::SeedPiece,
    PlantingMethod::Set,
    PlantingMethod::Clove,
    PlantingMethod::Bulb,
    PlantingMethod::Slip,
    PlantingMethod::Crown,
    PlantingMethod::Division,
    PlantingMethod::BareRoot,
];

pub(super) const fn method_words(method: PlantingMethod) -> &'static str {
    match method {
        PlantingMethod::Drilled => "sown and thinned",
        PlantingMethod::Transplant => "young plants set out",
        PlantingMethod::SeedPiece => "cut pieces of tuber",
        PlantingMethod::Set => "sets",
        PlantingMethod::Slip => "slips",
        PlantingMethod::Clove => "cloves",
        PlantingMethod::Bulb => "bulbs",
        PlantingMethod::Crown => "crowns",
        PlantingMethod::Division => "divisions",
        PlantingMethod::BareRoot => "bare-root plants",
    }
}

pub(super) const fn hardiness_words(hardiness: Hardiness) -> &'static str {
    match hardiness {
        Hardiness::VeryHardy => "stands hard frost",
        Hardiness::Hardy => "stands frost",
        Hardiness::HalfHardy => "stands light frost",
        Hardiness::Tender => "is hurt by frost",
        Hardiness::VeryTender => "is hurt by cold above freezing",
    }
}

/// What stands beside a value that the catalogue lacks.
pub(super) const NO_SOURCE: &str = "the catalogue has none; give your own";

pub(super) fn source_or_none<T>(value: Option<&Sourced<T>>) -> String {
    value.map_or_else(|| NO_SOURCE.to_owned(), source)
}

pub(super) fn source<T>(value: &Sourced<T>) -> String {
    Catalog::built_in().cite_value(value)
}

/// Both ends of a range, or the one value where they are alike.
pub(super) fn ends<T: PartialEq>(ends: &Ends<T>, show: impl Fn(&T) -> String) -> String {
    let (low, high) = (show(&ends.low.value), show(&ends.high.value));
    if low == high { low } else { format!("{low} to {high}") }
}

/// The sources of both ends, each told once.
pub(super) fn ends_source<T>(ends: &Ends<T>) -> String {
    let (low, high) = (source(&ends.low), source(&ends.high));
    if low == high { low } else { format!("{low}\n{high}") }
}

/// "1 to 2 lb/100 ft of seed", "100 slips in 100 ft".
pub(super) fn row_amount(amount: &RowAmount, units: Units) -> String {
    let what = &amount.what;
    match &amount.measure {
        RowMeasure::Weight(_) => format!("{} of {what}", row_measure(&amount.measure, units)),
        RowMeasure::Number(numbers) => format!("{} {what} {}", numbers_words(numbers, units), in_length(units)),
    }
}

/// The same without what is weighed or counted: "100 to 120 in 100 ft".
pub(super) fn row_measure(measure: &RowMeasure, units: Units) -> String {
    match measure {
        RowMeasure::Weight(weights) => ends(weights, |weight| weight.show(units)),
        RowMeasure::Number(numbers) => format!("{} {}", numbers_words(numbers, units), in_length(units)),
    }
}

fn numbers_words(numbers: &Ends<CountPerLength>, units: Units) -> String {
    ends(numbers, |number| {
        plain(match units {
            Units::Customary => number.to_per_100_feet(),
            Units::Metric => number.to_per_metre(),
        })
    })
}

const fn in_length(units: Units) -> &'static str {
    match units {
        Units::Customary => "in 100 ft",
        Units::Metric => "in a metre",
    }
}

pub(super) fn row_source(amount: &RowAmount) -> String {
    match &amount.measure {
        RowMeasure::Weight(weights) => ends_source(weights),
        RowMeasure::Number(numbers) => ends_source(numbers),
    }
}
