//! The order as JSON, in SI units named in each key.

use serde::Serialize;

use crate::layout::{Item, Layout, SeedAmount};
use crate::plan::{BedHarvest, HarvestAmount, OrderLine, PacketsToBuy, Plan};
use crate::quantity::{Fraction, Mass};
use crate::sheets::order_list::{OrderList, cost_of};

/// The order as JSON text. Keys and their meaning are promised in `DEVELOPERS.md`.
///
/// # Errors
/// When a number of the plan is not one that JSON can hold; the plan makes none.
pub fn order_json(layout: &Layout, plan: &Plan) -> Result<String, serde_json::Error> {
    serde_json::to_string_pretty(&JsonOrder {
        program: env!("CARGO_PKG_NAME"),
        version: env!("CARGO_PKG_VERSION"),
        layout: &layout.name,
        lines: plan.order.lines.iter().map(|line| json_line(layout, line)).collect(),
        not_counted: OrderList::of(layout, plan).not_counted,
        cost: plan.order.cost,
        unpriced: plan.order.unpriced,
    })
}

#[derive(Serialize)]
struct JsonOrder<'a> {
    program: &'static str,
    version: &'static str,
    layout: &'a str,
    lines: Vec<JsonLine<'a>>,
    /// Planted beds of which nothing can be counted, each in a sentence.
    not_counted: Vec<String>,
    /// Of the lines with prices, in the grower's own currency.
    cost: f64,
    unpriced: usize,
}

#[derive(Serialize)]
struct JsonLine<'a> {
    crop: &'a str,
    name: &'a str,
    cultivar: &'a str,
    things: &'static str,
    need: u64,
    /// Null where the weight of one is not known.
    need_g: Option<f64>,
    /// Null where nobody knows how much comes up; then only good seeds are counted.
    germination: Option<f64>,
    field_emergence: f64,
    plants_before_thinning: u64,
    plants: u64,
    drawn: Vec<JsonDrawn>,
    to_buy: u64,
    to_buy_g: Option<f64>,
    /// Null where no sizes are given.
    packets: Option<JsonPackets>,
    /// Why there are none although sizes are given; null otherwise.
    packets_problem: Option<&'a str>,
    /// What all its beds may give, by published yields; null where none is published.
    harvest: Option<JsonHarvest<'a>>,
    beds: Vec<JsonBed>,
    trays: Vec<JsonTrays>,
}

/// By weight or by number; the other two are null.
#[derive(Serialize)]
struct JsonHarvest<'a> {
    what: &'a str,
    low_kg: Option<f64>,
    high_kg: Option<f64>,
    low: Option<f64>,
    high: Option<f64>,
}

#[derive(Serialize)]
struct JsonCells {
    /// Null for seed to buy.
    lot: Option<String>,
    cells: u64,
}

#[derive(Serialize)]
struct JsonDrawn {
    lot: String,
    count: u64,
    worth: u64,
    germination: f64,
}

#[derive(Serialize)]
struct JsonPackets {
    sizes: Vec<JsonSize>,
    count: u64,
    cost: Option<f64>,
    /// Sizes that were left out because only others have a price.
    unpriced_sizes: usize,
    proven: bool,
}

#[derive(Serialize)]
struct JsonSize {
    packets: u64,
    holds: Option<u64>,
    holds_g: Option<f64>,
    price: Option<f64>,
}

#[derive(Serialize)]
struct JsonBed {
    name: String,
    count: u64,
    plants: u64,
}

#[derive(Serialize)]
struct JsonTrays {
    bed: String,
    plants: u64,
    cells: u64,
    /// Which seed goes into how many of them.
    from: Vec<JsonCells>,
    trays: Option<u64>,
    sow_on: Option<String>,
    set_out: Option<String>,
}

fn json_line<'a>(layout: &Layout, line: &'a OrderLine) -> JsonLine<'a> {
    let bed = |bed| layout.name_of(Item::Bed(bed));
    let drawn = line.drawn.iter().map(|drawn| JsonDrawn {
        lot: layout.name_of(Item::Lot(drawn.lot)),
        count: drawn.amount.count,
        worth: drawn.worth,
        germination: drawn.germination.get(),
    });
    let beds = line.beds.iter().map(|of| JsonBed {
        name: bed(of.bed),
        count: of.amount.count,
        plants: of.plants,
    });
    let trays = line.trays.iter().map(|trays| JsonTrays {
        bed: bed(trays.bed),
        plants: trays.plants,
        cells: trays.cells,
        from: trays
            .from
            .iter()
            .map(|of| JsonCells {
                lot: of.lot.map(|lot| layout.name_of(Item::Lot(lot))),
                cells: of.cells,
            })
            .collect(),
        trays: trays.trays,
        sow_on: trays.sow_on.map(|day| day.to_string()),
        set_out: trays.set_out.map(|day| day.to_string()),
    });
    JsonLine {
        crop: &line.crop.0,
        name: &line.crop_name,
        cultivar: &line.cultivar,
        things: line.things.name(),
        need: line.need.count,
        need_g: line.need.mass.map(Mass::to_grams),
        germination: line.germination.map(Fraction::get),
        field_emergence: line.field_emergence.get(),
        plants_before_thinning: line.plants_before_thinning,
        plants: line.plants,
        drawn: drawn.collect(),
        to_buy: line.to_buy.count,
        to_buy_g: line.to_buy.mass.map(Mass::to_grams),
        packets: line.packets.as_ref().map(|packets| json_packets(line, packets)),
        packets_problem: line.packets_problem.as_deref(),
        harvest: line.harvest.as_ref().map(json_harvest),
        beds: beds.collect(),
        trays: trays.collect(),
    }
}

fn json_harvest(harvest: &BedHarvest) -> JsonHarvest<'_> {
    let empty = JsonHarvest {
        what: &harvest.what,
        low_kg: None,
        high_kg: None,
        low: None,
        high: None,
    };
    match harvest.amount {
        HarvestAmount::Weight(range) => JsonHarvest {
            low_kg: Some(range.low.to_kilograms()),
            high_kg: Some(range.high.to_kilograms()),
            ..empty
        },
        HarvestAmount::Number(range) => JsonHarvest {
            low: Some(range.low),
            high: Some(range.high),
            ..empty
        },
    }
}

fn json_packets(line: &OrderLine, packets: &PacketsToBuy) -> JsonPackets {
    let sizes = packets.sizes.iter().map(|size| {
        let (holds, holds_g) = match size.packet.amount {
            SeedAmount::Count(count) => (Some(count), None),
            SeedAmount::Weight(mass) => (None, Some(mass.to_grams())),
        };
        JsonSize {
            packets: size.count,
            holds,
            holds_g,
            price: size.packet.price,
        }
    });
    JsonPackets {
        sizes: sizes.collect(),
        count: packets.amount.count,
        cost: cost_of(line),
        unpriced_sizes: packets.unpriced_sizes,
        proven: packets.proven,
    }
}
