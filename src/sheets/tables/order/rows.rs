//! The order as lines of cells, the same for all its tables. Numbers stay numbers; units stand in the heads.

use crate::layout::{Layout, LotGermination, SeedAmount, SeedLot};
use crate::plan::{CropBook, Plan};
use crate::quantity::{Mass, Units};
use crate::sheets::order_list::packets_words;
use crate::sheets::tables::cells::{Cell, Table, heads, whole, words};

fn weight(mass: Option<Mass>, units: Units) -> Cell {
    mass.map_or(Cell::Empty, |mass| {
        Cell::Number(match units {
            Units::Customary => mass.to_ounces(),
            Units::Metric => mass.to_grams(),
        })
    })
}

const fn weight_unit(units: Units) -> &'static str {
    match units {
        Units::Customary => "oz",
        Units::Metric => "g",
    }
}

/// What to buy: one line for each cultivar.
pub(super) fn order_table(layout: &Layout, plan: &Plan) -> Table {
    let units = layout.units;
    let unit = weight_unit(units);
    let need = format!("need ({unit})");
    let buy = format!("to buy ({unit})");
    let packed = format!("in packets ({unit})");
    let lines = plan.order.lines.iter().map(|line| {
        let packets = line.packets.as_ref();
        let beds: Vec<String> = line.beds.iter().map(|of| bed_name(layout, of.bed)).collect();
        vec![
            words(&line.crop_name),
            words(&line.cultivar),
            words(line.things.name()),
            whole(line.need.count),
            weight(line.need.mass, units),
            Cell::Number(line.germination.to_percent()),
            whole(line.plants_before_thinning),
            whole(line.plants),
            whole(line.drawn_count()),
            whole(line.to_buy.count),
            weight(line.to_buy.mass, units),
            words(&packets_words(line, units)),
            packets.map_or(Cell::Empty, |packets| whole(packets.amount.count)),
            packets.map_or(Cell::Empty, |packets| weight(packets.amount.mass, units)),
            packets
                .and_then(|packets| packets.cost)
                .map_or(Cell::Empty, Cell::Number),
            words(&beds.join("; ")),
        ]
    });
    Table {
        name: "order",
        lines: lines.collect(),
        heads: heads(&[
            "crop",
            "cultivar",
            "what",
            "need (count)",
            &need,
            "counted on to come up (%)",
            "plants before thinning",
            "plants",
            "from the shelf (count)",
            "to buy (count)",
            &buy,
            "packets",
            "in packets (count)",
            &packed,
            "cost",
            "goes to",
        ]),
    }
}

/// Where it goes: one line for each bed.
pub(super) fn beds_table(layout: &Layout, plan: &Plan) -> Table {
    let units = layout.units;
    let amount = format!("amount ({})", weight_unit(units));
    let lines = plan.order.lines.iter().flat_map(|line| {
        line.beds.iter().map(move |of| {
            vec![
                words(&bed_name(layout, of.bed)),
                words(&line.crop_name),
                words(&line.cultivar),
                words(line.things.name()),
                whole(of.amount.count),
                weight(of.amount.mass, units),
                whole(of.plants),
            ]
        })
    });
    Table {
        name: "where it goes",
        lines: lines.collect(),
        heads: heads(&["bed", "crop", "cultivar", "what", "amount (count)", &amount, "plants"]),
    }
}

/// Trays to sow.
pub(super) fn trays_table(layout: &Layout, plan: &Plan) -> Table {
    let lines = plan.order.lines.iter().flat_map(|line| {
        line.trays.iter().map(move |tray| {
            let day = |day: Option<jiff::civil::Date>| day.map_or(Cell::Empty, |day| Cell::Words(day.to_string()));
            vec![
                day(tray.sow_on),
                words(&line.crop_name),
                words(&line.cultivar),
                words(&bed_name(layout, tray.bed)),
                whole(tray.plants),
                whole(tray.cells),
                whole(u64::from(tray.seeds_per_cell)),
                tray.trays.map_or(Cell::Empty, whole),
                day(tray.set_out),
            ]
        })
    });
    Table {
        name: "trays",
        lines: lines.collect(),
        heads: heads(&[
            "sow on",
            "crop",
            "cultivar",
            "bed",
            "plants",
            "cells",
            "seeds in a cell",
            "trays",
            "set out on",
        ]),
    }
}

/// The seed shelf, and what the plan draws from it.
pub(super) fn shelf_table(layout: &Layout, plan: &Plan) -> Table {
    let units = layout.units;
    let unit = weight_unit(units);
    let there = format!("there ({unit})");
    let book = CropBook::of(layout);
    let lines = layout.lots.iter().map(|lot| {
        let crop = book
            .crop(&lot.crop)
            .map_or(lot.crop.0.as_str(), |crop| crop.name.as_str());
        let (count, mass) = match lot.amount {
            SeedAmount::Count(count) => (whole(count), Cell::Empty),
            SeedAmount::Weight(mass) => (Cell::Empty, weight(Some(mass), units)),
        };
        let found = lot.germination.found();
        vec![
            words(crop),
            words(&lot.cultivar),
            Cell::Number(f64::from(lot.year)),
            count,
            mass,
            found.map_or(Cell::Empty, |found| Cell::Number(found.to_percent())),
            words(germination_from(lot)),
            whole(plan.order.drawn_from(lot.id)),
        ]
    });
    Table {
        name: "seed shelf",
        lines: lines.collect(),
        heads: heads(&[
            "crop",
            "cultivar",
            "year",
            "there (count)",
            &there,
            "germination (%)",
            "known from",
            "drawn (count)",
        ]),
    }
}

const fn germination_from(lot: &SeedLot) -> &'static str {
    match lot.germination {
        LotGermination::NotKnown => "",
        LotGermination::Tag(_) => "tag",
        LotGermination::OwnTest { .. } => "own test",
    }
}

fn bed_name(layout: &Layout, bed: crate::layout::BedId) -> String {
    layout.name_of(crate::layout::Item::Bed(bed))
}
