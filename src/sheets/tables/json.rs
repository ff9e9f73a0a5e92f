//! The plan as JSON, in SI units named in each key, for scripts and other machines.

use serde::Serialize;

use crate::layout::{BedGround, Layout};
use crate::plan::{BedPlan, DressingPlan, Plan, Row, Things};
use crate::quantity::Mass;

/// The plan as JSON text, one value a line. Keys and their meaning are promised in `DEVELOPERS.md`.
///
/// # Errors
/// When a number of the plan is not one that JSON can hold; the plan makes none.
pub fn ledger_json(layout: &Layout, plan: &Plan) -> Result<String, serde_json::Error> {
    let beds = plan.beds.iter().filter_map(|bed| json_bed(layout, bed)).collect();
    let heads_up = plan
        .heads_up
        .iter()
        .map(|heads_up| JsonHeadsUp {
            about: layout.name_of(heads_up.about),
            what: &heads_up.what,
            why: &heads_up.why,
            source: &heads_up.source,
        })
        .collect();
    serde_json::to_string_pretty(&JsonLedger {
        program: env!("CARGO_PKG_NAME"),
        version: env!("CARGO_PKG_VERSION"),
        layout: &layout.name,
        beds,
        heads_up,
    })
}

#[derive(Serialize)]
struct JsonLedger<'a> {
    program: &'static str,
    version: &'static str,
    layout: &'a str,
    beds: Vec<JsonBed<'a>>,
    heads_up: Vec<JsonHeadsUp<'a>>,
}

#[derive(Serialize)]
struct JsonHeadsUp<'a> {
    about: String,
    what: &'a str,
    why: &'a str,
    source: &'a str,
}

#[derive(Serialize)]
struct JsonBed<'a> {
    name: &'a str,
    plot: &'a str,
    /// The crop's id; null where nothing is planted.
    crop: Option<&'a str>,
    water: &'static str,
    whole_plot: bool,
    area_m2: f64,
    row_bearing_deg: f64,
    row_spacing_m: f64,
    /// From plant to plant; null where nothing is planted.
    in_row_spacing_m: Option<f64>,
    /// What is put in its places: "seeds", "sets"; null where nothing is planted.
    things: Option<&'static str>,
    across_m: f64,
    remainder_m: f64,
    row_lines: usize,
    /// Why the bed has no rows; null where it has.
    problem: Option<&'a str>,
    rows: Vec<JsonRow<'a>>,
    totals: JsonTotals,
}

#[derive(Serialize)]
struct JsonRow<'a> {
    number: u32,
    length_m: f64,
    plants: u64,
    seeds: u64,
    /// Null where the weight of a seed is not known.
    seed_g: Option<f64>,
    /// Cells to sow in trays.
    cells: u64,
    /// Sets, pieces, slips, crowns or bought plants.
    set_out: u64,
    /// Null where the weight of one is not known.
    set_out_g: Option<f64>,
    tape_m: f64,
    pieces: Vec<JsonPiece>,
    dressings: Vec<JsonDressing<'a>>,
}

#[derive(Serialize)]
struct JsonPiece {
    start_m: [f64; 2],
    end_m: [f64; 2],
    length_m: f64,
    plants: u64,
}

#[derive(Serialize)]
struct JsonDressing<'a> {
    name: &'a str,
    material: &'a str,
    product_kg: f64,
    n_kg: f64,
    p2o5_kg: f64,
    k2o_kg: f64,
    /// The row's share as it was planned.
    planned_kg: f64,
    /// Whether it was put down already: then `product_kg` is what was really used.
    done: bool,
    /// Poured volume; null where the material's density is not known.
    volume_l: Option<f64>,
}

#[derive(Serialize)]
struct JsonTotals {
    rows: u64,
    row_length_m: f64,
    plants: u64,
    seeds: u64,
    seed_g: Option<f64>,
    cells: u64,
    set_out: u64,
    set_out_g: Option<f64>,
    tape_m: f64,
}

fn json_bed<'a>(layout: &'a Layout, plan: &'a BedPlan) -> Option<JsonBed<'a>> {
    let bed = layout.bed(plan.bed)?;
    let planted = bed.planting.as_ref().filter(|planting| !planting.crop.is_not_chosen());
    Some(JsonBed {
        name: &bed.name,
        plot: layout.plot(bed.plot).map_or("", |plot| &plot.name),
        crop: planted.map(|planting| planting.crop.0.as_str()),
        water: bed.water.id(),
        whole_plot: bed.ground == BedGround::WholePlot,
        area_m2: plan.area.to_square_metres(),
        row_bearing_deg: bed.bearing.to_degrees(),
        row_spacing_m: bed.row_spacing.to_metres(),
        in_row_spacing_m: plan.stand.map(|stand| stand.in_row.to_metres()),
        things: plan.things().map(Things::name),
        across_m: plan.fit.across.to_metres(),
        remainder_m: plan.fit.remainder.to_metres(),
        row_lines: plan.fit.row_lines,
        problem: plan.problem.as_deref(),
        rows: plan
            .rows
            .iter()
            .enumerate()
            .map(|(index, row)| json_row(plan, index, row))
            .collect(),
        totals: JsonTotals {
            rows: plan.totals.rows,
            row_length_m: plan.totals.row_length.to_metres(),
            plants: plan.totals.plants,
            seeds: plan.totals.seeds,
            seed_g: plan.totals.seed_mass.map(Mass::to_grams),
            cells: plan.totals.cells,
            set_out: plan.totals.set_out,
            set_out_g: plan.totals.set_out_mass.map(Mass::to_grams),
            tape_m: plan.totals.tape.to_metres(),
        },
    })
}

fn json_row<'a>(plan: &'a BedPlan, index: usize, row: &Row) -> JsonRow<'a> {
    let pieces = plan.pieces_of(row).iter().map(|piece| JsonPiece {
        start_m: [piece.start.x, piece.start.y],
        end_m: [piece.end.x, piece.end.y],
        length_m: piece.length.to_metres(),
        plants: piece.plants,
    });
    JsonRow {
        number: row.number,
        length_m: row.length.to_metres(),
        plants: row.plants,
        seeds: row.seeds,
        seed_g: row.seed_mass.map(Mass::to_grams),
        cells: row.cells,
        set_out: row.set_out,
        set_out_g: row.set_out_mass.map(Mass::to_grams),
        tape_m: row.tape.to_metres(),
        pieces: pieces.collect(),
        dressings: plan
            .dressings
            .iter()
            .filter_map(|dressing| json_dressing(dressing, index))
            .collect(),
    }
}

fn json_dressing(dressing: &DressingPlan, row: usize) -> Option<JsonDressing<'_>> {
    let product = *dressing.rows.get(row)?;
    let part = |part: crate::quantity::Fraction| product.to_kilograms() * part.get();
    Some(JsonDressing {
        name: &dressing.name,
        material: &dressing.material.0,
        product_kg: product.to_kilograms(),
        n_kg: part(dressing.analysis.n),
        p2o5_kg: part(dressing.analysis.p2o5),
        k2o_kg: part(dressing.analysis.k2o),
        planned_kg: planned_share(dressing, product).to_kilograms(),
        done: dressing.is_done(),
        volume_l: dressing.volume(product).map(|volume| volume.to_litres()),
    })
}

/// What was planned for a row that now gets so much: rows share by length or by plants, so that the parts stay.
fn planned_share(dressing: &DressingPlan, product: Mass) -> Mass {
    if dressing.total > Mass::ZERO {
        dressing.planned * (product / dressing.total)
    } else {
        dressing.planned / dressing.rows.len().max(1) as f64
    }
}
