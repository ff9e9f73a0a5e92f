//! One bed: its ground, its rows, and what every row comes to.

use super::crop_book::CropBook;
use super::dressing::dressing_plan;
use super::feeding::{
    BedFeeding, MaterialBook, SeasonOfBed, feeding_heads_up, follow_what_was_used, opened, put_on_account,
};
use super::heads_up::bed_heads_up;
use super::missing::missing_in_row;
use super::row_seed::{RowSeed, row_seed};
use super::stand::stand;
use super::types::{BedHarvest, BedPlan, HarvestAmount, Piece, PlantedCrop, Row, Totals};
use crate::agronomy::{self, Unworkable};
use crate::catalog::{Crop, RowMeasure};
use crate::geometry::{PlantRule, Region, RowFit};
use crate::layout::{Bed, BedFit, Plot};
use crate::quantity::{Area, Length, Mass, Units};

/// What a bed's numbers depend on besides the bed and its plot.
#[derive(Clone, Copy, Debug)]
pub(super) struct Surroundings<'a> {
    pub(super) crops: &'a CropBook,
    pub(super) materials: &'a MaterialBook,
    /// Words the heads-up.
    pub(super) units: Units,
    /// Whether the layout is kept within organic rules.
    pub(super) organic: bool,
}

/// Works out one bed from nothing. The same plot, bed and surroundings give the same numbers.
pub(super) fn bed_plan(plot: &Plot, bed: &Bed, of: &Surroundings<'_>) -> BedPlan {
    let (book, units) = (of.crops, of.units);
    let catalog = book.catalog();
    let crop = bed
        .planting
        .as_ref()
        .and_then(|planting| book.cultivar(&planting.crop, &planting.cultivar));
    let mut plan = empty_plan(bed);
    match BedFit::of(plot, bed) {
        Ok(fit) => {
            plan.area = fit.ground.area();
            plan.ground = fit.ground;
            plan.rows_ground = fit.rows_ground;
            plan.fit = fit.rows;
        }
        Err(error) => plan.problem = Some(error.to_string()),
    }
    plan.crop = bed.planting.as_ref().zip(crop).map(|(planting, crop)| PlantedCrop {
        id: crop.id.clone(),
        kin: crop.kin.clone(),
        name: crop.name.clone(),
        cultivar: planting.cultivar.clone(),
        method: crop.method.value,
        seed_weight: crop.seed_weight.as_ref().map(|weight| weight.value),
    });
    plan.stand = bed
        .planting
        .as_ref()
        .and_then(|planting| stand(planting, bed.water, crop));
    let rule = plan
        .stand
        .map(|stand| PlantRule::new(stand.in_row, stand.end_gap, bed.lines));
    let filled = match rule.transpose() {
        Ok(rule) => fill_rows(&mut plan, bed, rule).map_err(|error| error.to_string()),
        Err(error) => Err(error.to_string()),
    };
    if let Err(sentence) = filled {
        plan.problem = Some(sentence);
        plan.rows.clear();
        plan.pieces.clear();
    }
    plan.totals = totals(&plan.rows);
    plan.harvest = crop.and_then(|crop| bed_harvest(crop, plan.totals.row_length));
    plan.dressings = bed
        .dressings
        .iter()
        .map(|dressing| dressing_plan(dressing, bed, &plan, of.materials))
        .collect();
    let lengths: Vec<Length> = plan.rows.iter().map(|row| row.length).collect();
    let season = SeasonOfBed::of(bed, crop);
    let times = season.times(bed);
    plan.feeding = opened(bed, crop, season);
    let accounts = &plan.feeding;
    let to_give = |nutrient| accounts.account(nutrient).to_give;
    for (of_plan, times) in plan.dressings.iter_mut().zip(&times) {
        of_plan.from = times.first;
    }
    follow_what_was_used(bed, &mut plan.dressings, &times, &lengths, to_give);
    put_on_account(bed, &mut plan, &times);
    plan.heads_up = bed_heads_up(plot, bed, units, &plan, crop, catalog);
    plan.heads_up
        .extend(crop.and_then(|crop| missing_in_row(bed, &plan, crop)));
    let of_feeding = feeding_heads_up(bed, &plan, units, of.organic, of.materials);
    plan.heads_up.extend(of_feeding);
    plan
}

/// A bed without rows.
fn empty_plan(bed: &Bed) -> BedPlan {
    BedPlan {
        bed: bed.id,
        problem: None,
        ground: Region::default(),
        rows_ground: Region::default(),
        area: Area::ZERO,
        fit: RowFit::empty(bed.bearing),
        crop: None,
        stand: None,
        rows: Vec::new(),
        pieces: Vec::new(),
        dressings: Vec::new(),
        feeding: BedFeeding::default(),
        totals: Totals::default(),
        harvest: None,
        heads_up: Vec::new(),
    }
}

/// Gives every fitted row its numbers.
fn fill_rows(plan: &mut BedPlan, bed: &Bed, rule: Option<PlantRule>) -> Result<(), Unworkable> {
    plan.rows.reserve(plan.fit.row_count());
    plan.pieces.reserve(plan.fit.piece_count());
    let plants_per_place = plan.stand.map_or(1, |stand| u64::from(stand.sowing.plants_per_place()));
    for fitted in plan.fit.rows() {
        let first = plan.pieces.len();
        let (mut length, mut plants, mut places) = (Length::ZERO, 0u64, 0u64);
        for piece in fitted.pieces() {
            let on_piece = rule.map_or(0, |rule| rule.on(piece.length()));
            places = places.saturating_add(on_piece);
            let on_piece = on_piece.saturating_mul(plants_per_place);
            plan.pieces.push(Piece {
                start: piece.start(),
                end: piece.end(),
                length: piece.length(),
                plants: on_piece,
            });
            length += piece.length();
            plants = plants.saturating_add(on_piece);
        }
        let pieces = first..plan.pieces.len();
        let taken = seed(places, plan, bed)?;
        let number = u32::try_from(fitted.line).map_or(u32::MAX, |line| line.saturating_add(1));
        let tape = if bed.water.through_tape() {
            agronomy::tape_for_row(length, pieces.len(), bed.tape.lines_per_row, bed.tape.spare)?
        } else {
            Length::ZERO
        };
        plan.rows.push(Row {
            number,
            length,
            plants,
            seeds: taken.seeds,
            cells: taken.cells,
            set_out: taken.set_out,
            seed_mass: taken.seed_mass,
            set_out_mass: taken.set_out_mass,
            tape,
            pieces,
        });
    }
    Ok(())
}

/// What so many places take.
fn seed(places: u64, plan: &BedPlan, bed: &Bed) -> Result<RowSeed, Unworkable> {
    let Some((stand, planting)) = plan.stand.zip(bed.planting.as_ref()) else {
        return Ok(RowSeed::default());
    };
    let one = plan.crop.as_ref().and_then(|crop| crop.one_weighs(stand.sowing));
    row_seed(places, &stand, planting.spare, one)
}

/// What so much row of a crop may give, by published yields.
fn bed_harvest(crop: &Crop, length: Length) -> Option<BedHarvest> {
    let published = crop.harvest.as_ref().filter(|_| length > Length::ZERO)?;
    let (amount, sources, mark) = match &published.measure {
        RowMeasure::Weight(ends) => (
            HarvestAmount::Weight(agronomy::harvest(length, ends.low.value, ends.high.value)),
            [&ends.low.sources, &ends.high.sources],
            ends.low.mark.max(ends.high.mark),
        ),
        RowMeasure::Number(ends) => (
            HarvestAmount::Number(agronomy::harvest(length, ends.low.value, ends.high.value)),
            [&ends.low.sources, &ends.high.sources],
            ends.low.mark.max(ends.high.mark),
        ),
    };
    let mut keys: Vec<_> = sources.into_iter().flatten().cloned().collect();
    keys.dedup();
    Some(BedHarvest {
        what: published.what.clone(),
        amount,
        sources: (keys, mark),
    })
}

/// Sums over rows.
fn totals(rows: &[Row]) -> Totals {
    let mut totals = Totals {
        seed_mass: Some(Mass::ZERO),
        set_out_mass: Some(Mass::ZERO),
        ..Totals::default()
    };
    for row in rows {
        totals.rows += 1;
        totals.row_length += row.length;
        totals.plants = totals.plants.saturating_add(row.plants);
        totals.seeds = totals.seeds.saturating_add(row.seeds);
        totals.cells = totals.cells.saturating_add(row.cells);
        totals.set_out = totals.set_out.saturating_add(row.set_out);
        totals.tape += row.tape;
        totals.seed_mass = both(totals.seed_mass, row.seed_mass);
        totals.set_out_mass = both(totals.set_out_mass, row.set_out_mass);
    }
    totals
}

/// The sum of two weights; not known as soon as one is not.
fn both(one: Option<Mass>, other: Option<Mass>) -> Option<Mass> {
    one.zip(other).map(|(one, other)| one + other)
}

impl Totals {
    /// Adds the sums of another bed.
    pub(super) fn add(&mut self, other: &Self) {
        self.rows += other.rows;
        self.row_length += other.row_length;
        self.plants = self.plants.saturating_add(other.plants);
        self.seeds = self.seeds.saturating_add(other.seeds);
        self.cells = self.cells.saturating_add(other.cells);
        self.set_out = self.set_out.saturating_add(other.set_out);
        self.tape += other.tape;
        self.seed_mass = both(self.seed_mass, other.seed_mass);
        self.set_out_mass = both(self.set_out_mass, other.set_out_mass);
    }
}
