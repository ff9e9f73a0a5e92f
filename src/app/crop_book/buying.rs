//! What buying tables say for a length of row, why that is not the need, and the need of a bed beside it.

use egui::Ui;

use super::LINES;
use super::words::{ends, row_amount, row_source};
use crate::app::seed_words::plain;
use crate::app::wording::row_length;
use crate::catalog::{RowAmount, RowMeasure};
use crate::plan::{BuyingBeside, TableBuys};
use crate::quantity::{Length, MassPerLength, Units, count};
use crate::sheets::order_list::quantity_words;

/// What a table of seed is, where it cannot be compared with a bed, or says about what the bed needs.
const OF_SEED: &str = "An amount to buy, at the spacing and the germination that whoever wrote the table counted on. \
    What your rows need is counted from the places in them, and never from such a table.";
/// Why a table of seed says more than rows need.
const MORE_SEED: &str = "An amount to buy, for sowing thickly by hand and thinning out most of it, or for a bed of \
    young plants. What your rows need is counted from the places in them, and never from such a table.";
/// Why a table of seed says less than rows need.
const LESS_SEED: &str = "An amount to buy at a wider spacing, or for seed that comes up better than yours is counted \
    on. What your rows need is counted from the places in them, and never from such a table.";
/// Why a table of plants, sets or slips is not what rows need.
const OF_PLANTS: &str = "An amount to buy at the spacing of whoever wrote the table, with some over. What your rows \
    need is counted from the places in them, and never from such a table.";

/// Draws what tables say, why, and with a bed of the crop what they would have it buy. `beside` names the bed.
pub(super) fn show(ui: &mut Ui, table: &RowAmount, beside: Option<(&str, BuyingBeside)>, units: Units) {
    LINES.read_only(ui, "Buying tables say", &table_words(table, units), &row_source(table));
    let times = beside.as_ref().and_then(|(_, beside)| beside.times);
    let why = if table.is_seed() { why_of_seed(times) } else { OF_PLANTS };
    let mut words = vec![why.to_owned()];
    words.extend(beside.map(|(bed, beside)| beside_words(bed, &beside, &table.what, units)));
    LINES.beneath(ui, &words.join("\n"));
}

/// Why a table of seed and the need of rows differ, by how many times the need it says.
const fn why_of_seed(times: Option<(f64, f64)>) -> &'static str {
    match times {
        Some((low, _)) if low > 1.05 => MORE_SEED,
        Some((_, high)) if high < 0.95 => LESS_SEED,
        _ => OF_SEED,
    }
}

/// "0.50 oz of seed in 100 ft": seed is weighed as seed is everywhere.
fn table_words(table: &RowAmount, units: Units) -> String {
    match (&table.measure, units) {
        (RowMeasure::Weight(weights), Units::Customary) => {
            let hundred = |rate: &MassPerLength| (*rate * Length::feet(100.0)).show_seed(units);
            format!("{} of {} in 100 ft", ends(weights, hundred), table.what)
        }
        _ => row_amount(table, units),
    }
}

fn beside_words(bed: &str, beside: &BuyingBeside, what: &str, units: Units) -> String {
    let (low, high) = match beside.table {
        TableBuys::Weight(low, high) => (low.show_seed(units), high.show_seed(units)),
        TableBuys::Number(low, high) => (count(low.round() as u64), count(high.round() as u64)),
    };
    let times = match beside.times {
        None => String::new(),
        Some((_, high)) if high < 0.95 => ": less than they need, so whoever goes by it runs short".to_owned(),
        Some((low, high)) => format!(": {} times as much", range(&tenths(low), &tenths(high))),
    };
    format!(
        "The rows of {bed}, {}, need {}; by the table you would buy {} of {what}{times}.",
        row_length(beside.row_length, units),
        quantity_words(beside.need, beside.things, units),
        range(&low, &high),
    )
}

fn range(low: &str, high: &str) -> String {
    if low == high {
        low.to_owned()
    } else {
        format!("{low} to {high}")
    }
}

fn tenths(times: f64) -> String {
    plain((times * 10.0).round() / 10.0)
}
