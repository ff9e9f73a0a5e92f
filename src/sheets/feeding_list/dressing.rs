//! One dressing in words, and what every row gets of it.

use jiff::civil::Date;

use super::measure;
use crate::agronomy;
use crate::layout::{Bed, Dressing, DressingId};
use crate::plan::feeding::{Feeding, feedings};
use crate::plan::{BedPlan, Column, ColumnKind, DressingPlan, Ledger};
use crate::quantity::{Length, Mass, Units};
use crate::sheets::dressing_words;

/// One dressing.
#[derive(Clone, Debug, PartialEq)]
pub struct DressingWords {
    /// The dressing.
    pub dressing: DressingId,
    /// What the grower calls it.
    pub name: String,
    /// The material with its analysis: "Sodium nitrate (15-0-0)".
    pub material: String,
    /// How much, and of what, as it is now: "10 lb/1,000 sq ft".
    pub amount: String,
    /// How much was planned: "8 lb/1,000 sq ft planned"; empty where that is the same.
    pub amount_planned: String,
    /// Where it goes: "beside the plants".
    pub place: String,
    /// When: "knee-high, about 3 June"; empty when nobody said.
    pub when: String,
    /// What it is shared out by: "by row feet: 330 ft × 3 ft = 990 sq ft".
    pub goes_by: String,
    /// Why there are no amounts; empty when there are.
    pub problem: String,
    /// What every row gets over the season, in the rows' own order; [`fed_rows`] where the list was made without. The
    /// weights add up to `total`.
    pub rows: Vec<FedRow>,
    /// What a row gets: once where all get the same, else from the least to the most; empty without rows.
    pub each_row: String,
    /// That in kitchen measure; empty where the density is not known.
    pub each_row_scoops: String,
    /// All rows together, by weight; broadcast on a bed without rows, what its ground takes.
    pub total: String,
    /// All rows together in kitchen measure; empty where the density is not known.
    pub scoops: String,
    /// What to know of the measure: that a cup is a guide, or that this one has to be weighed.
    pub scoops_note: &'static str,
    /// What falls on a stretch of row, each time: "4.8 oz"; empty without rows.
    pub pace: String,
    /// The stretch: "10 ft".
    pub stretch: &'static str,
    /// How many times it is given.
    pub times: u16,
    /// That in kitchen measure: "½ cup"; empty where the density is not known.
    pub pace_scoop: String,
    /// What was really used, or how the amount follows what was used before; empty where all is as planned.
    pub changed: String,
    /// Whether all of it was put down already.
    pub is_done: bool,
    /// How far it is: "done", "2 of 4 done"; empty where nothing is.
    pub done: String,
    /// One by one what is given several times; empty of the others.
    pub feedings: Vec<FeedingWords>,
}

/// One feeding of a dressing that is given several times.
#[derive(Clone, Debug, PartialEq)]
pub struct FeedingWords {
    /// Which it is: "1st feeding".
    pub name: String,
    /// The day, where anybody knows: noted, or counted.
    pub day: String,
    /// Product by weight: what was really used, or what is still ahead.
    pub product: String,
    /// Whether it is done.
    pub is_done: bool,
}

/// What one row gets of a dressing.
#[derive(Clone, Debug, PartialEq)]
pub struct FedRow {
    /// The number it carries on the map.
    pub number: u32,
    /// Its length.
    pub length: String,
    /// Product by weight.
    pub weight: String,
    /// Product in kitchen measure; empty where the density is not known.
    pub scoops: String,
}

/// What is said where a density is known.
const GUIDE: &str = "a cup is a guide";
/// What is said where none is.
const NO_CUP: &str = "no cup weight: weigh a level cup";

impl FeedingWords {
    /// The whole in a line: "2nd feeding, 10 June: 2.10 lb, done".
    pub fn line(&self) -> String {
        let day = match self.day.as_str() {
            "" => String::new(),
            day => format!(", {day}"),
        };
        let done = if self.is_done { ", done" } else { "" };
        format!("{}{day}: {}{done}", self.name, self.product)
    }
}

impl DressingWords {
    /// Where and when: "beside the plants, knee-high".
    pub fn where_and_when(&self) -> String {
        match self.when.as_str() {
            "" => self.place.clone(),
            when => format!("{}, {when}", self.place),
        }
    }

    /// Its pace: "4.8 oz per 10 ft"; empty without rows.
    pub fn pace_words(&self) -> String {
        match (self.pace.as_str(), self.times) {
            ("", _) => String::new(),
            (pace, 0 | 1) => format!("{pace} per {}", self.stretch),
            (pace, _) => format!("{pace} per {} each time", self.stretch),
        }
    }

    /// Its pace with the kitchen measure: "4.8 oz per 10 ft, about ½ cup".
    pub fn pace_and_scoop(&self) -> String {
        match self.pace_scoop.as_str() {
            "" => self.pace_words(),
            scoop => format!("{}, about {scoop}", self.pace_words()),
        }
    }

    /// What the measure is worth: "14.6 cups, a cup is a guide", or that it has to be weighed.
    pub fn scoops_words(&self) -> String {
        match self.scoops.as_str() {
            "" => self.scoops_note.to_owned(),
            scoops => format!("{scoops}, {}", self.scoops_note),
        }
    }
}

/// One dressing of a bed; nothing where the bed has none such.
pub fn dressing_words(bed: &Bed, plan: &BedPlan, id: DressingId, units: Units) -> Option<DressingWords> {
    let index = plan.dressings.iter().position(|of_plan| of_plan.dressing == id)?;
    let both = (bed.dressing(id)?, plan.dressings.get(index)?);
    Some(words_of(bed, plan, &Ledger::of(plan, units), index, both, units))
}

/// What every row of a bed gets of one dressing; none where there are no amounts.
pub fn fed_rows(plan: &BedPlan, id: DressingId, units: Units) -> Vec<FedRow> {
    let sound = |of_plan: &DressingPlan| of_plan.dressing == id && goes_by_rows(of_plan);
    let index = plan.dressings.iter().position(sound);
    index.map_or_else(Vec::new, |index| rows_of(&Ledger::of(plan, units), index))
}

/// Whether it is measured out row by row: what goes through the tape is weighed once for all rows.
const fn goes_by_rows(of_plan: &DressingPlan) -> bool {
    of_plan.problem.is_none() && !of_plan.is_injected
}

fn rows_of(ledger: &Ledger, index: usize) -> Vec<FedRow> {
    let [length, product, scoops] = [
        ColumnKind::Length,
        ColumnKind::Product(index),
        ColumnKind::Scoops(index),
    ]
    .map(|kind| column(ledger, kind));
    let rows = ledger.numbers.iter().enumerate().map(|(row, &number)| FedRow {
        number,
        length: length.map_or_else(String::new, |column| column.cell(row)),
        weight: product.map_or_else(String::new, |column| column.cell(row)),
        scoops: scoops.map_or_else(String::new, |column| scoop_cell(column, &column.cell(row))),
    });
    rows.collect()
}

fn column(ledger: &Ledger, kind: ColumnKind) -> Option<&Column> {
    ledger.columns.iter().find(|column| column.kind == kind)
}

/// The dressings of a bed, in order of time, with their rows one by one or without.
pub(super) fn dressings(bed: &Bed, plan: &BedPlan, units: Units, with_rows: bool) -> Vec<DressingWords> {
    let ledger = Ledger::of(plan, units);
    let in_time = plan.dressings_in_time().into_iter();
    in_time
        .filter_map(|(index, of_plan)| {
            let dressing = bed.dressings.get(index)?;
            let mut words = words_of(bed, plan, &ledger, index, (dressing, of_plan), units);
            if with_rows && goes_by_rows(of_plan) {
                words.rows = rows_of(&ledger, index);
            }
            Some(words)
        })
        .collect()
}

fn words_of(
    bed: &Bed,
    plan: &BedPlan,
    ledger: &Ledger,
    index: usize,
    (dressing, of_plan): (&Dressing, &DressingPlan),
    units: Units,
) -> DressingWords {
    let product = column(ledger, ColumnKind::Product(index));
    let scoops = column(ledger, ColumnKind::Scoops(index));
    let has_rows = goes_by_rows(of_plan) && !ledger.numbers.is_empty();
    let total = if !has_rows {
        of_plan.total.show_product(units)
    } else {
        product.map_or_else(String::new, Column::total)
    };
    let has_amounts = of_plan.problem.is_none();
    let pace = pace(plan, of_plan, units).filter(|_| has_amounts && has_rows);
    let planned = dressing_words::amount(dressing, units);
    let in_force = dressing_words::amount_in_force(dressing, of_plan, units);
    DressingWords {
        dressing: dressing.id,
        name: dressing.name.clone(),
        material: dressing_words::material(of_plan),
        amount: in_force.clone().unwrap_or_else(|| planned.clone()),
        amount_planned: in_force.map_or_else(String::new, |_| format!("{planned} planned")),
        place: dressing_words::place(dressing.placement, units),
        when: dressing_words::when(dressing, of_plan),
        goes_by: if has_amounts {
            dressing_words::goes_by(bed, plan, dressing, of_plan, units)
        } else {
            String::new()
        },
        problem: of_plan.problem.clone().unwrap_or_default(),
        rows: Vec::new(),
        each_row: product.filter(|_| has_amounts).map_or_else(String::new, span),
        each_row_scoops: scoops.map_or_else(String::new, |column| {
            let span = span(column);
            if span.is_empty() {
                span
            } else {
                scoop_cell(column, &span)
            }
        }),
        total: if has_amounts { total } else { String::new() },
        scoops: scoops.map_or_else(String::new, |column| scoop_cell(column, &column.total())),
        scoops_note: if of_plan.density.is_some() { GUIDE } else { NO_CUP },
        pace: pace.as_ref().map_or_else(String::new, |pace| pace.0.clone()),
        pace_scoop: pace.map_or_else(String::new, |pace| pace.1),
        stretch: measure::stretch_words(units),
        times: of_plan.times,
        changed: if has_amounts {
            changed(dressing, of_plan, units)
        } else {
            String::new()
        },
        is_done: of_plan.is_done(),
        done: done(of_plan),
        feedings: if of_plan.times > 1 && has_amounts {
            feeding_words(&feedings(dressing, of_plan), units)
        } else {
            Vec::new()
        },
    }
}

fn done(of_plan: &DressingPlan) -> String {
    match (of_plan.times_done, of_plan.times) {
        (0, _) => String::new(),
        (done, times) if done < times => format!("{done} of {times} done"),
        _ => "done".to_owned(),
    }
}

/// Feedings in words, one by one.
pub(super) fn feeding_words(feedings: &[Feeding], units: Units) -> Vec<FeedingWords> {
    let words = |(place, feeding): (usize, &Feeding)| FeedingWords {
        name: dressing_words::nth_feeding(place),
        day: feeding.day.map_or_else(String::new, day_words),
        product: feeding.product.show_product(units),
        is_done: feeding.is_done,
    };
    feedings.iter().enumerate().map(words).collect()
}

fn day_words(day: Date) -> String {
    day.strftime("%-d %B").to_string()
}

/// The amounts of a column from the least to the most: "1.10 to 1.32 lb", or once where all are the same.
fn span(column: &Column) -> String {
    let ends = (0..column.steps.len()).filter_map(|row| Some((*column.steps.get(row)?, row)));
    let (Some((_, least)), Some((_, most))) = (ends.clone().min(), ends.max()) else {
        return String::new();
    };
    let (least, most) = (column.cell(least), column.cell(most));
    if least == most {
        return most;
    }
    let number = least.split('\u{a0}').next().unwrap_or_default();
    format!("{number} to {most}")
}

/// An amount of a column of scoops with its unit behind it: "1.2 cups"; a sum in a larger unit has its own.
fn scoop_cell(column: &Column, amount: &str) -> String {
    if amount.ends_with(char::is_alphabetic) {
        return amount.to_owned();
    }
    format!("{amount}\u{a0}{}", column.title)
}

/// What falls on a stretch of row each time, by weight and in kitchen measure.
fn pace(plan: &BedPlan, of_plan: &DressingPlan, units: Units) -> Option<(String, String)> {
    let length = plan.totals.row_length;
    if length <= Length::ZERO || of_plan.total <= Mass::ZERO {
        return None;
    }
    let each_time = if of_plan.is_done() {
        of_plan.done / f64::from(of_plan.times_done.max(1))
    } else {
        of_plan.each_ahead()
    };
    let stretch = agronomy::per_stretch(each_time / length, measure::pace_stretch(units)).ok()?;
    Some((
        stretch.show_seed(units),
        measure::scoop(stretch, of_plan.density, units),
    ))
}

/// What was really used against the plan, or how the amount follows what was used before it.
fn changed(dressing: &Dressing, of_plan: &DressingPlan, units: Units) -> String {
    let now = of_plan.total.show_product(units);
    if of_plan.times_done > 0 {
        let used = of_plan.done.show_product(units);
        let on = match dressing.used.as_slice() {
            [only] => only
                .on
                .map_or_else(String::new, |day| format!(" on {}", day_words(day))),
            several => format!(" in {} feedings", several.len()),
        };
        let was_planned = of_plan.planned - of_plan.planned_ahead();
        let against = dressing_words::against_plan(was_planned, of_plan.done, units);
        return format!("used {used}{on}, {against}");
    }
    if now == of_plan.planned.show_product(units) {
        return String::new();
    }
    if of_plan.total <= Mass::ZERO {
        let planned = of_plan.planned.show_product(units);
        return format!("not needed any more, {planned} planned: it follows what was used before");
    }
    let against = dressing_words::against_plan(of_plan.planned, of_plan.total, units);
    format!("now {now}, {against}: it follows what was used before")
}
