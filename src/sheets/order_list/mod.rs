//! The order list in words: what to buy, what it is for and what comes off the shelf. Window, paper and tables all
//! show these words and figures.

mod harvest;
mod not_counted;
mod packets;

use std::sync::Arc;

use jiff::civil::Date;

use crate::layout::{Item, Layout, SeedAmount};
use crate::plan::{OrderLine, Plan, Quantity, Things, TraysToSow, TraysTogether};
use crate::quantity::{Fraction, Units, count, counted};

pub use harvest::{HARVEST_BASIS, harvest_words};
use packets::{chosen_as, left_over_words};
pub use packets::{cost_of, packets_words, price_words};

/// The order list of a plan.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct OrderList {
    /// One line for each cultivar and kind of thing, in the order's own order.
    pub lines: Vec<OrderWords>,
    /// What all packets with prices cost together; empty when none has a price.
    pub cost: String,
    /// What the cost leaves out, in a sentence; empty when nothing.
    pub cost_note: String,
    /// Planted beds of which nothing can be counted, each in a sentence with what is missing.
    pub not_counted: Vec<String>,
    /// One line for each bed whose plants are raised in trays, and one for beds of a line that are sown together.
    pub trays: Vec<TrayWords>,
}

/// One line of the order list.
#[derive(Clone, Debug, PartialEq)]
pub struct OrderWords {
    /// The crop with its cultivar, and what is counted where it is ordered in several forms.
    pub name: String,
    /// All that the beds take: "1,936 seeds, 1.2 oz".
    pub need: String,
    /// What is counted on to come up; empty where it is not seed.
    pub comes_up: String,
    /// Plants that are to stand, and before thinning where any is done.
    pub plants: String,
    /// What it is for: the beds it goes to, each with its amount where there are several.
    pub goes_to: Vec<String>,
    /// What comes off the shelf, lot by lot; empty when nothing does.
    pub from_shelf: Vec<String>,
    /// What is left to buy; "nothing" when the shelf has it all.
    pub to_buy: String,
    /// The packets that cover it, or why there are none; empty when the grower has not said which sizes are sold.
    pub packets: String,
    /// Why these packets: "cheapest", or "fewest left over" where no price is known; empty without packets.
    pub chosen_as: &'static str,
    /// What they hold over and above what is to buy; empty where they hold no more.
    pub left_over: String,
    /// What they cost; empty where not known.
    pub cost: String,
    /// What all its beds may give, by published yields; empty where none is published.
    pub harvest: String,
}

/// Trays to sow for one bed.
#[derive(Clone, Debug, PartialEq)]
pub struct TrayWords {
    /// The bed.
    pub bed: String,
    /// The crop with its cultivar.
    pub name: String,
    /// Cells, seeds in each and trays.
    pub sow: String,
    /// Which lots the seed is of; empty where all of it is bought.
    pub seed: String,
    /// When to sow and when to set out; empty when not known.
    pub when: String,
}

impl TrayWords {
    /// The trays of a bed in words.
    pub fn of(layout: &Layout, line: &OrderLine, trays: &TraysToSow) -> Self {
        Self {
            bed: layout.name_of(Item::Bed(trays.bed)),
            name: line.name(),
            sow: sow_words(trays.cells, trays.seeds_per_cell, trays.trays),
            seed: seed_words(layout, trays),
            when: when_words(trays.sow_on, trays.set_out),
        }
    }

    /// The trays of several beds of a line in words.
    fn together(line: &OrderLine, together: &TraysTogether) -> Self {
        Self {
            bed: format!("all {} beds together", together.beds),
            name: line.name(),
            sow: sow_words(together.cells, together.seeds_per_cell, together.trays()),
            seed: String::new(),
            when: when_words(together.sow_on, together.set_out),
        }
    }

    /// All of it in a sentence.
    pub fn sentence(&self) -> String {
        let when = match self.when.as_str() {
            "" => String::new(),
            when => format!("; {when}"),
        };
        let seed = match self.seed.as_str() {
            "" => String::new(),
            seed => format!(", {seed}"),
        };
        format!(
            "Raise {} for {} in trays: {}{seed}{when}.",
            self.name, self.bed, self.sow
        )
    }
}

impl OrderWords {
    /// Whether anything is left to buy.
    pub fn is_to_buy(&self) -> bool {
        self.to_buy != NOTHING
    }
}

/// What stands where nothing is left to buy.
const NOTHING: &str = "nothing";

impl OrderList {
    /// What all packets cost, and what that leaves out; `None` when no packet has a price.
    pub fn cost_sentence(&self) -> Option<String> {
        match (self.cost.as_str(), self.cost_note.as_str()) {
            ("", _) => None,
            (cost, "") => Some(format!("All packets cost {cost}.")),
            (cost, note) => Some(format!("All packets cost {cost}, {note}.")),
        }
    }

    /// The order list of a plan, in the layout's units.
    pub fn of(layout: &Layout, plan: &Plan) -> Self {
        let units = layout.units;
        let lines = &plan.order.lines;
        let any_price = lines.iter().any(|line| cost_of(line).is_some());
        let unpriced = plan.order.unpriced;
        let cost_note = match unpriced {
            _ if !any_price => String::new(),
            0 => String::new(),
            1 => "without 1 line that has no price".to_owned(),
            more => format!("without {more} lines that have no price"),
        };
        Self {
            lines: lines
                .iter()
                .map(|line| OrderWords {
                    name: told_apart(line, lines),
                    ..words_of(layout, line, units)
                })
                .collect(),
            cost: if any_price {
                price_words(plan.order.cost)
            } else {
                String::new()
            },
            cost_note,
            not_counted: not_counted::not_counted(layout, plan),
            trays: lines
                .iter()
                .flat_map(|line| {
                    let beds = line.trays.iter().map(|trays| TrayWords::of(layout, line, trays));
                    let together = line.trays_together();
                    beds.chain(
                        together
                            .into_iter()
                            .map(|together| TrayWords::together(line, &together)),
                    )
                })
                .collect(),
        }
    }
}

/// The name of a line, with what is counted where another line has the same name: "Onion, as sets".
fn told_apart(line: &OrderLine, lines: &[Arc<OrderLine>]) -> String {
    let name = line.name();
    let alike = lines.iter().filter(|other| other.name() == name).count();
    if alike > 1 {
        format!("{name}, as {}", line.things.name())
    } else {
        name
    }
}

fn words_of(layout: &Layout, line: &OrderLine, units: Units) -> OrderWords {
    let bed_name = |bed| layout.bed(bed).map_or("a bed", |bed| bed.name.as_str());
    let goes_to: Vec<String> = match line.beds.as_slice() {
        [one] => vec![bed_name(one.bed).to_owned()],
        beds => beds
            .iter()
            .map(|of| {
                format!(
                    "{}: {}",
                    bed_name(of.bed),
                    quantity_words(of.amount, line.things, units)
                )
            })
            .collect(),
    };
    let from_shelf: Vec<String> = line
        .drawn
        .iter()
        .map(|drawn| {
            let year = layout
                .lot(drawn.lot)
                .map_or_else(String::new, |lot| format!(" of {}", lot.year));
            let known = if line.things != Things::Seeds {
                String::new()
            } else if drawn.germination_known {
                format!(", {} up", drawn.germination.show())
            } else {
                ", not tested".to_owned()
            };
            let worth = if drawn.worth == drawn.amount.count {
                String::new()
            } else {
                match line.germination {
                    Some(part) => format!(", worth {} at {}", count(drawn.worth), part.show()),
                    None => format!(", worth {} good ones", count(drawn.worth)),
                }
            };
            format!(
                "{}{year}{known}{worth}",
                quantity_words(drawn.amount, line.things, units)
            )
        })
        .collect();
    let to_buy = if line.to_buy.count == 0 {
        NOTHING.to_owned()
    } else {
        at_least(line, quantity_words(line.to_buy, line.things, units))
    };
    OrderWords {
        name: line.name(),
        need: at_least(line, quantity_words(line.need, line.things, units)),
        comes_up: comes_up_words(line),
        plants: plants_words(line),
        goes_to,
        from_shelf,
        to_buy,
        packets: packets_words(line, units),
        chosen_as: chosen_as(line),
        left_over: left_over_words(line),
        cost: cost_of(line).map_or_else(String::new, price_words),
        harvest: line
            .harvest
            .as_ref()
            .map_or_else(String::new, |harvest| harvest_words(harvest, units)),
    }
}

/// What is counted on to come up of seed to buy: "80 % counted on to come up in a test, 85 % of that in the field"; empty
/// where it is not seed.
fn comes_up_words(line: &OrderLine) -> String {
    if line.things != Things::Seeds {
        return String::new();
    }
    let Some(germination) = line.germination else {
        return "how much comes up in a test is not known, so only good seeds are counted".to_owned();
    };
    let in_test = format!("{} counted on to come up in a test", germination.show());
    if line.field_emergence == Fraction::ONE {
        in_test
    } else {
        format!("{in_test}, {} of that in the field", line.field_emergence.show())
    }
}

/// Says of an amount that it takes more, where nobody knows how much of it comes up.
fn at_least(line: &OrderLine, amount: String) -> String {
    match line.germination {
        Some(_) => amount,
        None => format!("at least {amount}"),
    }
}

/// "1,760 plants, thinned from 2,640".
fn plants_words(line: &OrderLine) -> String {
    let plants = counted(line.plants, "plant", "plants");
    if line.plants_before_thinning > line.plants {
        format!("{plants}, thinned from {}", count(line.plants_before_thinning))
    } else {
        plants
    }
}

/// "63 cells of 2 seeds, 1 tray".
fn sow_words(cells: u64, seeds_per_cell: u16, trays: Option<u64>) -> String {
    let mut sow = counted(cells, "cell", "cells");
    if seeds_per_cell > 1 {
        sow.push_str(&format!(" of {seeds_per_cell} seeds"));
    }
    if let Some(number) = trays {
        sow.push_str(&format!(", {}", counted(number, "tray", "trays")));
    }
    sow
}

fn when_words(sow_on: Option<Date>, set_out: Option<Date>) -> String {
    match (sow_on, set_out) {
        (Some(sow), Some(out)) => format!("sow on {}, set out on {}", day_words(sow), day_words(out)),
        (None, Some(out)) => format!("set out on {}", day_words(out)),
        _ => String::new(),
    }
}

/// A day: "10 May 2027".
pub fn day_words(day: Date) -> String {
    day.strftime("%-d %B %Y").to_string()
}

/// Which lots the seed of trays is of: "seed of 2024", "seed of 2024 in 20 cells, bought in 43".
pub fn seed_words(layout: &Layout, trays: &TraysToSow) -> String {
    let lot_year = |lot| {
        layout
            .lot(lot)
            .map_or_else(|| "the shelf".to_owned(), |lot| lot.year.to_string())
    };
    let is_one = trays.from.len() == 1;
    let each = trays.from.iter().map(|of| match of.lot {
        Some(lot) if is_one => format!("seed of {}", lot_year(lot)),
        Some(lot) => format!("seed of {} in {}", lot_year(lot), counted(of.cells, "cell", "cells")),
        None => format!("bought in {}", counted(of.cells, "cell", "cells")),
    });
    if trays.from.iter().all(|of| of.lot.is_none()) {
        String::new()
    } else {
        each.collect::<Vec<_>>().join(", ")
    }
}

/// A count with its weight where that is known: "1,936 seeds, 1.2 oz".
pub fn quantity_words(quantity: Quantity, things: Things, units: Units) -> String {
    let counted = things.counted(quantity.count);
    match quantity.mass.filter(|_| quantity.count > 0) {
        Some(mass) => format!("{counted}, {}", mass.show_seed(units)),
        None => counted,
    }
}

/// What a lot or a packet holds, as it was given: "0.50 oz" or "340 seeds".
pub fn amount_words(amount: SeedAmount, things: Things, units: Units) -> String {
    match amount {
        SeedAmount::Weight(mass) => mass.show_seed(units),
        SeedAmount::Count(number) => things.counted(number),
    }
}
