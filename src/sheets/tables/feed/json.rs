//! The feeding as JSON, in SI units named in each key.

use serde::Serialize;

use super::json_plan::{JsonBed, JsonMaterial, JsonRun, json_bed, json_material, json_run};
use crate::layout::Layout;
use crate::plan::Plan;
use crate::sheets::feeding_list::FeedingList;

/// The feeding as JSON text. Keys and their meaning are promised in `DEVELOPERS.md`.
///
/// # Errors
/// When a number of the plan is not one that JSON can hold; the plan makes none.
pub fn feed_json(layout: &Layout, plan: &Plan) -> Result<String, serde_json::Error> {
    let cautions = FeedingList::of(layout, plan).cautions;
    let fed = plan.beds.iter().filter(|bed| !bed.dressings.is_empty());
    serde_json::to_string_pretty(&JsonFeeding {
        program: env!("CARGO_PKG_NAME"),
        version: env!("CARGO_PKG_VERSION"),
        layout: &layout.name,
        beds: fed.filter_map(|bed| json_bed(layout, bed)).collect(),
        shopping: plan.shopping.lines.iter().map(json_material).collect(),
        cost: plan.shopping.cost,
        unpriced: plan.shopping.unpriced,
        runs: plan.injections.iter().map(|run| json_run(layout, run)).collect(),
        cautions: cautions
            .into_iter()
            .map(|caution| JsonCaution {
                sentence: caution.sentence,
                source: caution.source,
            })
            .collect(),
    })
}

#[derive(Serialize)]
struct JsonFeeding<'a> {
    program: &'static str,
    version: &'static str,
    layout: &'a str,
    beds: Vec<JsonBed<'a>>,
    shopping: Vec<JsonMaterial<'a>>,
    /// Of the materials with a price, in the grower's own currency.
    cost: f64,
    unpriced: usize,
    runs: Vec<JsonRun<'a>>,
    cautions: Vec<JsonCaution>,
}

#[derive(Serialize)]
struct JsonCaution {
    sentence: &'static str,
    source: String,
}
