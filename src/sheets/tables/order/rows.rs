//! The order as lines of cells, the same for all its tables. Numbers stay numbers; units stand in the heads.

use jiff::civil::Date;

use crate::layout::{Layout, LotGermination, SeedAmount, SeedLot};
use crate::plan::{BedHarvest, CropBook, HarvestAmount, OrderLine, Plan, Things};
use crate::quantity::{Mass, Units};
use crate::sheets::order_list::{OrderList, TrayWords, cost_of, packets_words, seed_words};
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
    let lines = plan.order.lines.iter().map(|line| {
        let packets = line.packets.as_ref().filter(|packets| !packets.sizes.is_empty());
        let number = packets.map(|packets| packets.sizes.iter().fold(0_u64, |sum, of| sum.saturating_add(of.count)));
        let mut cells = vec![
            words(&line.crop_name),
            words(&line.cultivar),
            words(line.things.name()),
            whole(line.need.count),
            weight(line.need.mass, units),
            line.germination
                .map_or(Cell::Empty, |part| Cell::Number(part.to_percent())),
            Cell::Number(line.field_emergence.to_percent()),
            whole(line.plants_before_thinning),
            whole(line.plants),
            whole(line.drawn_count()),
            whole(line.drawn_worth()),
            whole(line.to_buy.count),
            weight(line.to_buy.mass, units),
            words(&packets_words(line, units)),
            number.map_or(Cell::Empty, whole),
            packets.map_or(Cell::Empty, |packets| whole(packets.amount.count)),
            packets.map_or(Cell::Empty, |packets| weight(packets.amount.mass, units)),
            cost_of(line).map_or(Cell::Empty, Cell::Number),
            words(&goes_to(layout, line)),
            words(&trays_of(layout, line)),
        ];
        cells.extend(harvest_cells(line.harvest.as_ref(), units));
        cells
    });
    let of_harvest = match units {
        Units::Customary => "lb",
        Units::Metric => "kg",
    };
    let heads = heads(&[
        "crop",
        "cultivar",
        "what",
        "need (count)",
        &format!("need ({unit})"),
        "counted on to come up in a test (%)",
        "of that in the field (%)",
        "plants before thinning",
        "plants",
        "from the shelf (count)",
        "worth in seed to buy (count)",
        "to buy (count)",
        &format!("to buy ({unit})"),
        "packets",
        "packets (count)",
        "in packets (count)",
        &format!("in packets ({unit})"),
        COST,
        "goes to",
        "raise in trays",
        "may give by length of row, no promise",
        &format!("from ({of_harvest})"),
        &format!("to ({of_harvest})"),
        "from (count)",
        "to (count)",
    ]);
    Table {
        name: "order",
        lines: lines.chain(total_cost(layout, plan, &heads)).collect(),
        heads,
    }
}

/// The line that sums the cost of all packets, below a table of these heads: marked as the total, with what has no price and
/// is left out. None where no packet has a price.
fn total_cost(layout: &Layout, plan: &Plan, heads: &[String]) -> Option<Vec<Cell>> {
    let list = OrderList::of(layout, plan);
    if list.cost.is_empty() {
        return None;
    }
    let cells = heads
        .iter()
        .enumerate()
        .map(|(place, head)| match (place, head.as_str()) {
            (0, _) => words("total cost"),
            (1, _) => words(&list.cost_note),
            (_, COST) => Cell::Number(plan.order.cost),
            _ => Cell::Empty,
        });
    Some(cells.collect())
}

/// The head of what things cost.
const COST: &str = "cost";

/// The beds of a line by name. A cell of a spreadsheet holds 32,767 letters, and nobody reads as many: what is left out
/// stands on the sheet of the beds.
fn goes_to(layout: &Layout, line: &OrderLine) -> String {
    joined(line.beds.iter().map(|of| bed_name(layout, of.bed)), BEDS)
}

/// Words of all beds in one cell, as many as there is room for; the rest stands on the sheet that is named.
fn joined(all: impl ExactSizeIterator<Item = String>, sheet: &str) -> String {
    let count = all.len();
    let mut text = String::new();
    for (index, one) in all.enumerate() {
        if index > 0 && text.len() + one.len() > MOST_LETTERS {
            text.push_str(&format!("; and {} more, see {sheet}", count - index));
            break;
        }
        if index > 0 {
            text.push_str("; ");
        }
        text.push_str(&one);
    }
    text
}

/// The trays of a line, each bed's with its days; none where nothing is raised in trays.
fn trays_of(layout: &Layout, line: &OrderLine) -> String {
    let each = line.trays.iter().map(|trays| {
        let words = TrayWords::of(layout, line, trays);
        let day = |what: &str, day: Option<Date>| day.map_or_else(String::new, |day| format!(", {what} {day}"));
        format!(
            "{}: {}{}{}",
            words.bed,
            words.sow,
            day("sow on", trays.sow_on),
            day("set out on", trays.set_out)
        )
    });
    joined(each, TRAYS)
}

/// Letters of names of beds in one cell.
const MOST_LETTERS: usize = 1000;
/// The sheet that says where everything goes.
const BEDS: &str = "where it goes";
/// The sheet of what is raised in trays.
const TRAYS: &str = "trays";

/// What is weighed or counted, and both ends by weight or by number.
fn harvest_cells(harvest: Option<&BedHarvest>, units: Units) -> [Cell; 5] {
    let Some(harvest) = harvest else {
        return [Cell::Empty, Cell::Empty, Cell::Empty, Cell::Empty, Cell::Empty];
    };
    let what = words(&harvest.what);
    let pounds = |mass: Mass| {
        Cell::Number(match units {
            Units::Customary => mass.to_pounds(),
            Units::Metric => mass.to_kilograms(),
        })
    };
    match harvest.amount {
        HarvestAmount::Weight(range) => [what, pounds(range.low), pounds(range.high), Cell::Empty, Cell::Empty],
        HarvestAmount::Number(range) => [
            what,
            Cell::Empty,
            Cell::Empty,
            Cell::Number(range.low),
            Cell::Number(range.high),
        ],
    }
}

/// Packets to take: one line for each size of a cultivar, and at the end what all of them cost.
pub(super) fn packets_table(layout: &Layout, plan: &Plan) -> Table {
    let units = layout.units;
    let holds = format!("holds ({})", weight_unit(units));
    let sizes = plan.order.lines.iter().flat_map(|line| {
        let sizes = line.packets.iter().flat_map(|packets| &packets.sizes);
        sizes.map(move |of| {
            let (count, mass) = match of.packet.amount {
                SeedAmount::Count(count) => (whole(count), Cell::Empty),
                SeedAmount::Weight(mass) => (Cell::Empty, weight(Some(mass), units)),
            };
            let cost = of.packet.price.map(|price| price * of.count as f64);
            vec![
                words(&line.crop_name),
                words(&line.cultivar),
                words(line.things.name()),
                whole(of.count),
                count,
                mass,
                of.packet.price.map_or(Cell::Empty, Cell::Number),
                cost.map_or(Cell::Empty, Cell::Number),
            ]
        })
    });
    let heads = heads(&[
        "crop",
        "cultivar",
        "what",
        "packets (count)",
        "holds (count)",
        &holds,
        "price of one",
        COST,
    ]);
    Table {
        name: "packets",
        lines: sizes.chain(total_cost(layout, plan, &heads)).collect(),
        heads,
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
        name: BEDS,
        lines: lines.collect(),
        heads: heads(&["bed", "crop", "cultivar", "what", "amount (count)", &amount, "plants"]),
    }
}

/// Trays to sow.
pub(super) fn trays_table(layout: &Layout, plan: &Plan) -> Table {
    let lines = plan.order.lines.iter().flat_map(|line| {
        line.trays.iter().map(move |tray| {
            let day = |day: Option<Date>| day.map_or(Cell::Empty, |day| Cell::Words(day.to_string()));
            vec![
                day(tray.sow_on),
                words(&line.crop_name),
                words(&line.cultivar),
                words(&bed_name(layout, tray.bed)),
                whole(tray.plants),
                whole(tray.cells),
                whole(u64::from(tray.seeds_per_cell)),
                words(&seed_words(layout, tray)),
                tray.trays.map_or(Cell::Empty, whole),
                day(tray.set_out),
            ]
        })
    });
    Table {
        name: TRAYS,
        lines: lines.collect(),
        heads: heads(&[
            "sow on",
            "crop",
            "cultivar",
            "bed",
            "plants",
            "cells",
            "seeds in a cell",
            "seed",
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
        let crop = book.cultivar(&lot.crop, &lot.cultivar);
        let usual = crop.map_or(Things::Seeds, |crop| Things::on_shelf(crop.method.value));
        let crop = crop.map_or(lot.crop.0.as_str(), |crop| crop.name.as_str());
        let (count, mass) = match lot.amount {
            SeedAmount::Count(count) => (whole(count), Cell::Empty),
            SeedAmount::Weight(mass) => (Cell::Empty, weight(Some(mass), units)),
        };
        let found = lot.germination.found();
        vec![
            words(crop),
            words(&lot.cultivar),
            words(Things::in_form(lot.form, usual).name()),
            Cell::Number(f64::from(lot.year)),
            count,
            mass,
            found.map_or(Cell::Empty, |found| Cell::Number(found.to_percent())),
            words(germination_from(lot)),
            words(&tested_on(lot)),
            whole(plan.order.drawn_from(lot.id)),
        ]
    });
    Table {
        name: "seed shelf",
        lines: lines.collect(),
        heads: heads(&[
            "crop",
            "cultivar",
            "what",
            "year",
            "there (count)",
            &there,
            "germination (%)",
            "known from",
            "tested on",
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

/// The day of a test of one's own, where it was noted.
fn tested_on(lot: &SeedLot) -> String {
    match lot.germination {
        LotGermination::OwnTest { on: Some(on), .. } => on.to_string(),
        _ => String::new(),
    }
}

fn bed_name(layout: &Layout, bed: crate::layout::BedId) -> String {
    layout.name_of(crate::layout::Item::Bed(bed))
}
