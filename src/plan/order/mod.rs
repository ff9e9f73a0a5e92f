//! The order: what all beds take, what lies on the shelf already, what is left to buy, and where it goes.

mod age;
mod draw;
mod harvest;
mod keeper;
mod line;
mod mention;
mod need;
mod packets;
mod shelf;
mod test_age;

use std::sync::Arc;

use jiff::civil::Date;

use super::things::Things;
use super::types::{BedHarvest, HeadsUp};
use crate::agronomy;
use crate::catalog::CropId;
use crate::layout::{BedId, Form, LotId, Packet, with_cultivar};
use crate::quantity::{Fraction, Mass};

pub use age::{LotAge, USUAL_YEARS};
pub(super) use keeper::{OrderKeeper, Place};

/// What to buy, what for, and where it goes.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Order {
    /// One line for each cultivar and kind of thing, by the crop's name, the cultivar's, and the thing.
    pub lines: Vec<Arc<OrderLine>>,
    /// What the packets of all lines cost that have prices, in the grower's own currency.
    pub cost: f64,
    /// Lines with something to buy and no price for it.
    pub unpriced: usize,
}

/// All of one cultivar that is put in the ground in one form.
#[derive(Clone, Debug, PartialEq)]
pub struct OrderLine {
    /// The crop.
    pub crop: CropId,
    /// Its name.
    pub crop_name: String,
    /// The cultivar, in the grower's words; may be empty.
    pub cultivar: String,
    /// What is counted: seeds, sets, plants.
    pub things: Things,
    /// Plants that come up and are still to be thinned; as many as `plants` where nothing is thinned.
    pub plants_before_thinning: u64,
    /// Plants that are to stand.
    pub plants: u64,
    /// All that the beds take: the sum of their rows.
    pub need: Quantity,
    /// The part of what is bought that comes up in a test, as it is counted on; the whole where it is not seed. `None`
    /// where a bed does not know it: then only good seeds are counted, and it takes more than the need says.
    pub germination: Option<Fraction>,
    /// The part of that which comes up in the field too; the whole where it is not sown there.
    pub field_emergence: Fraction,
    /// What is drawn from the shelf, in the order in which it is used up.
    pub drawn: Vec<Drawn>,
    /// What is left to buy.
    pub to_buy: Quantity,
    /// What the crop usually lies on the shelf as, and what lots and packets hold that do not say.
    pub on_shelf: Things,
    /// Packets that cover what is left to buy, where the grower said which sizes there are.
    pub packets: Option<PacketsToBuy>,
    /// Why there are no packets although there are sizes, in a sentence.
    pub packets_problem: Option<String>,
    /// The beds it goes to, in the layout's order.
    pub beds: Vec<ForBed>,
    /// Trays to sow, for beds whose plants are raised in them.
    pub trays: Vec<TraysToSow>,
    /// What all its beds may give together, by published yields. A range to plan by, never a promise.
    pub harvest: Option<BedHarvest>,
    /// What a careful neighbour would mention of it.
    pub heads_up: Vec<Arc<HeadsUp>>,
}

/// So much of something, by count and by weight.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Quantity {
    /// How many.
    pub count: u64,
    /// Their weight; `None` where the weight of one is not known.
    pub mass: Option<Mass>,
}

/// What is taken from one lot on the shelf.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Drawn {
    /// The lot.
    pub lot: LotId,
    /// How much. More than a fresh lot would take where the lot comes up badly.
    pub amount: Quantity,
    /// So much less is to buy for it, at the germination that is counted on for seed to buy. With what is to buy, what all
    /// lots are worth comes to the need.
    pub worth: u64,
    /// The part of it that comes up, as it is counted on.
    pub germination: Fraction,
    /// Whether the lot itself says so; otherwise what is counted on for seed to buy was taken.
    pub germination_known: bool,
}

/// Packets that cover what is left to buy.
#[derive(Clone, Debug, PartialEq)]
pub struct PacketsToBuy {
    /// The sizes to take, each at least once, in the grower's order.
    pub sizes: Vec<PacketsOfSize>,
    /// What they hold together.
    pub amount: Quantity,
    /// What they cost together; `None` where no size has a price.
    pub cost: Option<f64>,
    /// Sizes that were left out because only others have a price.
    pub unpriced_sizes: usize,
    /// Whether no other choice is cheaper, or leaves fewer over where prices are not known.
    pub proven: bool,
}

/// So many packets of one size.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PacketsOfSize {
    /// The size.
    pub packet: Packet,
    /// How many.
    pub count: u64,
}

/// What one bed takes of a line.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ForBed {
    /// The bed.
    pub bed: BedId,
    /// How much.
    pub amount: Quantity,
    /// Plants that are to stand there.
    pub plants: u64,
}

/// Trays to sow for one bed.
#[derive(Clone, Debug, PartialEq)]
pub struct TraysToSow {
    /// The bed.
    pub bed: BedId,
    /// Plants to set out.
    pub plants: u64,
    /// Cells to sow: each lot's by its own germination.
    pub cells: u64,
    /// Which seed goes into how many of them, in the order in which the shelf is used up; what is bought comes last.
    pub from: Vec<CellsFrom>,
    /// Seeds in each cell.
    pub seeds_per_cell: u16,
    /// Cells in a tray, where given.
    pub cells_per_tray: Option<u16>,
    /// Whole trays, where the cells of a tray are given.
    pub trays: Option<u64>,
    /// The day to sow, where the day of setting out and the days in the tray are given.
    pub sow_on: Option<Date>,
    /// The day of setting out, where given.
    pub set_out: Option<Date>,
}

/// Trays of several beds that are sown together.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TraysTogether {
    /// How many beds.
    pub beds: u64,
    /// Plants to set out.
    pub plants: u64,
    /// Cells to sow.
    pub cells: u64,
    /// Seeds in each cell.
    pub seeds_per_cell: u16,
    /// Cells in a tray, where given.
    pub cells_per_tray: Option<u16>,
    /// The day to sow, where known.
    pub sow_on: Option<Date>,
    /// The day of setting out, where given.
    pub set_out: Option<Date>,
}

impl TraysTogether {
    /// Whole trays, where the cells of a tray are given.
    pub fn trays(&self) -> Option<u64> {
        let per_tray = self.cells_per_tray?;
        agronomy::trays_needed(self.cells, per_tray).ok()
    }
}

/// Cells that are sown with seed of one lot.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CellsFrom {
    /// The lot; `None` for seed to buy.
    pub lot: Option<LotId>,
    /// How many cells.
    pub cells: u64,
}

impl Order {
    /// The line of a bed.
    pub fn line_of(&self, bed: BedId) -> Option<&OrderLine> {
        self.lines
            .iter()
            .find(|line| line.beds.iter().any(|of| of.bed == bed))
            .map(Arc::as_ref)
    }

    /// How much the plan draws from a lot, over all lines.
    pub fn drawn_from(&self, lot: LotId) -> u64 {
        let drawn = self.lines.iter().flat_map(|line| &line.drawn);
        drawn
            .filter(|drawn| drawn.lot == lot)
            .fold(0, |sum, drawn| sum.saturating_add(drawn.amount.count))
    }
}

impl OrderLine {
    /// The crop with its cultivar: "Sweet corn, Early Amber".
    pub fn name(&self) -> String {
        with_cultivar(&self.crop_name, &self.cultivar)
    }

    /// Trays of several beds that are sown on one day in one kind of tray, counted together: the beds share trays, so
    /// there may be fewer than theirs added up. One entry for each day and kind of more than one bed.
    pub fn trays_together(&self) -> Vec<TraysTogether> {
        let mut together: Vec<TraysTogether> = Vec::new();
        for trays in &self.trays {
            let alike = |of: &&mut TraysTogether| {
                (of.sow_on, of.set_out, of.cells_per_tray, of.seeds_per_cell)
                    == (trays.sow_on, trays.set_out, trays.cells_per_tray, trays.seeds_per_cell)
            };
            if let Some(of) = together.iter_mut().find(alike) {
                of.beds += 1;
                of.cells = of.cells.saturating_add(trays.cells);
                of.plants = of.plants.saturating_add(trays.plants);
            } else {
                together.push(TraysTogether {
                    beds: 1,
                    plants: trays.plants,
                    cells: trays.cells,
                    seeds_per_cell: trays.seeds_per_cell,
                    cells_per_tray: trays.cells_per_tray,
                    sow_on: trays.sow_on,
                    set_out: trays.set_out,
                });
            }
        }
        together.retain(|of| of.beds > 1);
        together
    }

    /// The form under which packets of this line are listed: none where it is the crop's usual one.
    pub fn packets_form(&self) -> Option<Form> {
        (self.things != self.on_shelf).then_some(self.things.form())
    }

    /// What is drawn from the shelf is worth so much seed to buy, over all lots.
    pub fn drawn_worth(&self) -> u64 {
        self.drawn.iter().fold(0, |sum, drawn| sum.saturating_add(drawn.worth))
    }

    /// What is drawn from the shelf, over all lots.
    pub fn drawn_count(&self) -> u64 {
        self.drawn
            .iter()
            .fold(0, |sum, drawn| sum.saturating_add(drawn.amount.count))
    }
}
