//! What follows from a layout: every bed's rows and every row's numbers.

use std::ops::Range;
use std::sync::Arc;

use jiff::civil::Date;

use super::feeding::{BedFeeding, Injection, Shopping};
use super::order::Order;
use super::things::Things;
use crate::agronomy::{Harvest, Nutrient};
use crate::catalog::{Analysis, CropId, Mark, MaterialId, PlantingMethod, SourceKey};
use crate::geometry::{Point, Region, RowFit};
use crate::layout::{Basis, BedId, DressingId, Item, PlotId, Sowing};
use crate::quantity::{Area, Density, Fraction, Length, Mass, MassPerArea, Volume};

/// Everything that can be computed from a layout. Never saved and never edited.
#[derive(Clone, Debug, Default)]
pub struct Plan {
    /// One for each bed of the layout, in the layout's order.
    pub beds: Vec<Arc<BedPlan>>,
    /// The ground of each plot, in the layout's order.
    pub plots: Vec<Arc<PlotPlan>>,
    /// Sums over all beds.
    pub totals: Totals,
    /// Sums by crop, in order of the crops' names.
    pub crops: Vec<CropSum>,
    /// Sums by material, in order of the materials' names.
    pub materials: Vec<MaterialSum>,
    /// What to buy, what for, and where it goes.
    pub order: Order,
    /// What to buy of fertilizer.
    pub shopping: Shopping,
    /// Runs of feeding through the tape.
    pub injections: Vec<Injection>,
    /// What a careful neighbour would mention: bed by bed in the layout's order, then what is about several beds, then
    /// of the seed shelf and the order.
    pub heads_up: Vec<Arc<HeadsUp>>,
}

/// The ground of one plot.
#[derive(Clone, Debug)]
pub struct PlotPlan {
    /// The plot.
    pub plot: PlotId,
    /// Its ground inside the outline, obstacles included; or why the outline bounds none.
    pub ground: Result<Region, String>,
}

/// The rows of one bed and their numbers.
#[derive(Clone, Debug)]
pub struct BedPlan {
    /// The bed.
    pub bed: BedId,
    /// Why the bed has no rows, in a sentence, when it cannot have any.
    pub problem: Option<String>,
    /// Ground of the bed: inside its outline and its plot, without the bare ground of obstacles.
    pub ground: Region,
    /// Where rows may stand: the ground, drawn in by the clear distances.
    pub rows_ground: Region,
    /// Size of the bed's ground.
    pub area: Area,
    /// The rows as they were fitted.
    pub fit: RowFit,
    /// What is planted, if anything is and the crop book has it.
    pub crop: Option<PlantedCrop>,
    /// How plants stand in the row, if anything is planted.
    pub stand: Option<Stand>,
    /// Every row that kept at least one piece, from the left hand seen along the bearing.
    pub rows: Vec<Row>,
    /// Every piece of every row; a row names its own by [`Row::pieces`].
    pub pieces: Vec<Piece>,
    /// Every dressing of the bed, in the bed's order.
    pub dressings: Vec<DressingPlan>,
    /// What the bed wants in nutrients, against what is planned and done.
    pub feeding: BedFeeding,
    /// Sums over the rows.
    pub totals: Totals,
    /// What its rows may give, by published yields. A range to plan by, never a promise.
    pub harvest: Option<BedHarvest>,
    /// What a careful neighbour would mention of this bed alone.
    pub heads_up: Vec<Arc<HeadsUp>>,
}

/// What is planted in a bed.
#[derive(Clone, Debug, PartialEq)]
pub struct PlantedCrop {
    /// The crop.
    pub id: CropId,
    /// The crop of the catalogue that texts on feeding speak of.
    pub kin: CropId,
    /// Its name.
    pub name: String,
    /// The cultivar, in the grower's words; may be empty.
    pub cultivar: String,
    /// The crop's usual way into the ground.
    pub method: PlantingMethod,
    /// Weight of one seed, set or piece, where known.
    pub seed_weight: Option<Mass>,
}

/// What the rows of a bed may give.
#[derive(Clone, Debug, PartialEq)]
pub struct BedHarvest {
    /// What is weighed or counted: "ears", "shelled beans".
    pub what: String,
    /// How much of it.
    pub amount: HarvestAmount,
    /// The keys of the sources of both ends, and how they were read.
    pub sources: (Vec<SourceKey>, Mark),
}

/// How much rows may give.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum HarvestAmount {
    /// By weight.
    Weight(Harvest<Mass>),
    /// By number.
    Number(Harvest<f64>),
}

/// How plants stand in the row.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stand {
    /// From plant to plant in one line.
    pub in_row: Length,
    /// Where that distance comes from.
    pub in_row_from: InRowFrom,
    /// From the end of a piece of row to its first plant.
    pub end_gap: Length,
    /// How it is put in the ground: the grower's way, or the crop's usual one.
    pub sowing: Sowing,
    /// Good seeds for each plant that is to stand, where seed is what it takes; seeds in a cell where it is raised.
    pub seeds_per_plant: Option<f64>,
    /// Seeds that come up in a test, out of those sown.
    pub germination: Fraction,
    /// Where that part comes from.
    pub germination_from: GerminationFrom,
    /// Of those that come up in a test, the part that comes up in the field.
    pub field_emergence: Fraction,
}

/// Where a germination comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum GerminationFrom {
    /// The grower's.
    Grower,
    /// The grower's too, given in the crop book for the crop or cultivar.
    CropBook,
    /// The federal standard of the kind; a packet under it must say so.
    FederalStandard,
    /// Nowhere: only good seeds are counted, so that it takes more than is counted.
    NotKnown,
}

/// Where an in-row spacing comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum InRowFrom {
    /// The crop's own, with all the water it asks for.
    CropWatered,
    /// The crop's own, where water may run short.
    CropDry,
    /// The grower's.
    Grower,
}

/// One row.
#[derive(Clone, Debug, PartialEq)]
pub struct Row {
    /// The number it carries on the map, from 1; every line laid across the bed has one, so a number may be
    /// missing where a line kept no piece.
    pub number: u32,
    /// All its pieces together.
    pub length: Length,
    /// Plants on all its pieces and lines.
    pub plants: u64,
    /// Seeds to sow; 0 where plants are set out that were not raised from seed.
    pub seeds: u64,
    /// Cells to sow in trays; 0 where nothing is raised.
    pub cells: u64,
    /// Sets, pieces, slips, crowns or bought plants to put in, with the spare ones; 0 where seed is sown.
    pub set_out: u64,
    /// Weight of the seeds; `None` where the seed's weight is not known.
    pub seed_mass: Option<Mass>,
    /// Weight of what is put in that is no seed; `None` where the weight of one is not known, as with bought plants.
    pub set_out_mass: Option<Mass>,
    /// Tape for it; zero where there is no tape.
    pub tape: Length,
    /// Which of [`BedPlan::pieces`] are its own, in order along the bearing.
    pub pieces: Range<usize>,
}

/// One piece of a row.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Piece {
    /// Where it starts, seen along the bearing.
    pub start: Point,
    /// Where it ends.
    pub end: Point,
    /// From start to end.
    pub length: Length,
    /// Plants on all its lines.
    pub plants: u64,
}

/// What one dressing comes to.
#[derive(Clone, Debug, PartialEq)]
pub struct DressingPlan {
    /// The dressing.
    pub dressing: DressingId,
    /// What the grower calls it.
    pub name: String,
    /// The material.
    pub material: MaterialId,
    /// The material's name.
    pub material_name: String,
    /// Why there are no amounts, in a sentence, when there cannot be any.
    pub problem: Option<String>,
    /// Product for each row, in the order of [`BedPlan::rows`]; over the whole season where it is given more than once.
    pub rows: Vec<Mass>,
    /// Product for the bed: what was really used, and what is planned after it for what is still ahead.
    pub total: Mass,
    /// Product for the bed as the grower planned it.
    pub planned: Mass,
    /// What of the total was really used.
    pub done: Mass,
    /// How many times it is given.
    pub times: u16,
    /// How many of these times are done.
    pub times_done: u16,
    /// When it is to be given the first time, as planned, as far as anybody knows.
    pub from: DressingDay,
    /// Whether it goes through the tape, all rows at once, so that nobody measures it out row by row.
    pub is_injected: bool,
    /// The ground that it feeds: the bed's where it is broadcast, or a strip one row spacing wide for every row. A band
    /// on a narrower strip feeds the row's whole ground all the same.
    pub counted: Area,
    /// Whether it goes by the bed's ground or by row feet.
    pub goes_by: GoesBy,
    /// Nitrogen, phosphate and potash as parts of the product's weight.
    pub analysis: Analysis,
    /// The part of its nitrogen that comes free in the season.
    pub available_n: Fraction,
    /// How heavy the material is poured, when known.
    pub density: Option<Density>,
}

/// When a dressing is given the first time.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct DressingDay {
    /// As a part of the time from planting (0) to harvest (1), as planned; below nothing ahead of planting.
    pub at: f64,
    /// The day, as planned: as it was given, or as a stage comes about, counted from the planting day.
    pub day: Option<Date>,
}

/// The nutrient that an amount counts; none where it counts the product.
pub(super) const fn counted_nutrient(basis: Basis) -> Option<Nutrient> {
    match basis {
        Basis::Product => None,
        Basis::Nitrogen => Some(Nutrient::Nitrogen),
        Basis::Phosphate => Some(Nutrient::Phosphate),
        Basis::Potash => Some(Nutrient::Potash),
    }
}

/// What a dressing's amount is shared out by.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum GoesBy {
    /// The bed's ground, shared over rows by length.
    Ground,
    /// Row length times the strip that belongs to the row.
    RowFeet,
    /// Plants.
    Plants,
}

/// Sums over rows.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Totals {
    /// Rows with at least one piece.
    pub rows: u64,
    /// Their length.
    pub row_length: Length,
    /// Plants.
    pub plants: u64,
    /// Seeds.
    pub seeds: u64,
    /// Cells to sow in trays.
    pub cells: u64,
    /// Sets, pieces, slips, crowns or bought plants.
    pub set_out: u64,
    /// Weight of seeds; `None` as soon as one bed's is not known.
    pub seed_mass: Option<Mass>,
    /// Weight of sets, pieces and the like; `None` as soon as one bed's is not known.
    pub set_out_mass: Option<Mass>,
    /// Tape.
    pub tape: Length,
}

/// What all beds of one crop come to.
#[derive(Clone, Debug, PartialEq)]
pub struct CropSum {
    /// The crop.
    pub crop: CropId,
    /// Its name.
    pub name: String,
    /// Sums over its beds.
    pub totals: Totals,
}

/// What all dressings of one material come to.
#[derive(Clone, Debug, PartialEq)]
pub struct MaterialSum {
    /// The material.
    pub material: MaterialId,
    /// Its name.
    pub name: String,
    /// Product.
    pub product: Mass,
    /// Nitrogen in it.
    pub n: Mass,
    /// Phosphate (P2O5) in it.
    pub p2o5: Mass,
    /// Potash (K2O) in it.
    pub k2o: Mass,
    /// How heavy the material is poured, when known.
    pub density: Option<Density>,
}

/// What a careful neighbour would mention. It never blocks.
#[derive(Clone, Debug, PartialEq)]
pub struct HeadsUp {
    /// What it is about.
    pub about: Item,
    /// What is seen, in one sentence.
    pub what: String,
    /// Why it matters, in one sentence.
    pub why: String,
    /// Where the judgement comes from: a citation, or "common practice, no source".
    pub source: String,
}

impl DressingPlan {
    /// The part of the product's weight that counts as a nutrient; of nitrogen what comes free in the season.
    pub const fn part_of(&self, nutrient: Nutrient) -> f64 {
        let part = nutrient.part_of(self.analysis);
        match nutrient {
            Nutrient::Nitrogen => part * self.available_n.get(),
            Nutrient::Phosphate | Nutrient::Potash => part,
        }
    }

    /// The part of the product's weight that an amount counts.
    pub fn part_counted(&self, basis: Basis) -> f64 {
        counted_nutrient(basis).map_or(1.0, |nutrient| self.part_of(nutrient))
    }

    /// A weight of product over the ground that it feeds.
    pub fn over_ground(&self, product: Mass) -> MassPerArea {
        if self.counted > Area::ZERO {
            product / self.counted
        } else {
            MassPerArea::ZERO
        }
    }

    /// Product over the ground that it feeds.
    pub fn rate(&self) -> MassPerArea {
        self.over_ground(self.total)
    }

    /// Whether all of it was put down already.
    pub const fn is_done(&self) -> bool {
        self.times_done >= self.times
    }

    /// How many times it is still to be given.
    pub const fn times_ahead(&self) -> u16 {
        self.times.saturating_sub(self.times_done)
    }

    /// What was planned for the times that are still ahead.
    pub fn planned_ahead(&self) -> Mass {
        self.planned * (f64::from(self.times_ahead()) / f64::from(self.times.max(1)))
    }

    /// What each time still ahead takes; nothing where none is.
    pub fn each_ahead(&self) -> Mass {
        match self.times_ahead() {
            0 => Mass::ZERO,
            times => (self.total - self.done) / f64::from(times),
        }
    }

    /// What each time takes as planned.
    pub fn each_planned(&self) -> Mass {
        self.planned / f64::from(self.times.max(1))
    }

    /// The kitchen measure of a weight of this material, when its density is known.
    pub fn volume(&self, mass: Mass) -> Option<Volume> {
        self.density.map(|density| mass / density)
    }
}

impl Plan {
    /// The plan of a bed.
    pub fn bed(&self, id: BedId) -> Option<&Arc<BedPlan>> {
        self.beds.iter().find(|bed| bed.bed == id)
    }
}

impl BedPlan {
    /// Its dressings in order of time, those of one time in the bed's order, with their places in that.
    pub fn dressings_in_time(&self) -> Vec<(usize, &DressingPlan)> {
        let mut dressings: Vec<_> = self.dressings.iter().enumerate().collect();
        dressings.sort_by(|(_, one), (_, other)| one.from.at.total_cmp(&other.from.at));
        // Where the season of the bed is not known, days stand in their own order all the same.
        let has_day = |(_, dressing): &(usize, &DressingPlan)| dressing.from.day.is_some();
        let mut dated: Vec<_> = dressings.iter().copied().filter(has_day).collect();
        dated.sort_by_key(|(_, dressing)| dressing.from.day);
        for (place, next) in dressings.iter_mut().filter(|dressing| has_day(dressing)).zip(dated) {
            *place = next;
        }
        dressings
    }

    /// The pieces of a row.
    pub fn pieces_of(&self, row: &Row) -> &[Piece] {
        self.pieces.get(row.pieces.clone()).unwrap_or_default()
    }

    /// Whether seed goes into its ground: plants raised in trays stand there with roots already.
    pub fn is_sown_in_place(&self) -> bool {
        let sowing = self.stand.map(|stand| stand.sowing);
        sowing.is_some_and(|sowing| sowing.takes_seed() && !matches!(sowing, Sowing::Raised(_)))
    }

    /// What is put in its places; `None` where nothing is planted.
    pub fn things(&self) -> Option<Things> {
        let method = self.crop.as_ref().map_or(PlantingMethod::Drilled, |crop| crop.method);
        self.stand.map(|stand| Things::of(stand.sowing, method))
    }

    /// The row of that number, if it kept a piece.
    pub fn row(&self, number: u32) -> Option<&Row> {
        let index = self.rows.binary_search_by_key(&number, |row| row.number).ok()?;
        self.rows.get(index)
    }
}
