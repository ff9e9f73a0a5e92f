//! The ledger: one line a row, with every number worded once for window, paper and tables.
//!
//! Amounts are held as whole steps of what is shown (hundredths of a pound, say). The bed's amount is rounded
//! once, and the rows' steps are shared out so that they add up to it exactly.

use super::apportion::whole_steps;
use super::things::Things;
use super::types::{BedPlan, DressingPlan, GerminationFrom};
use crate::quantity::{Length, Mass, Units, capital, count, number};

/// The ledger of one bed.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Ledger {
    /// The columns, from the left.
    pub columns: Vec<Column>,
    /// The numbers the rows carry on the map, in the order of the cells.
    pub numbers: Vec<u32>,
}

/// One column of a ledger.
#[derive(Clone, Debug, PartialEq)]
pub struct Column {
    /// What it counts.
    pub kind: ColumnKind,
    /// Its head: "Length", "Plants", the name of a dressing.
    pub title: String,
    /// The unit, as printed behind each amount; empty for plain counts.
    pub unit: &'static str,
    /// Decimals shown.
    pub decimals: u8,
    /// For each row, the amount in steps of the last decimal shown.
    pub steps: Vec<i64>,
    /// For the bed, likewise; always the sum of the rows' steps.
    pub total: i64,
}

/// What a column counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ColumnKind {
    /// Length of the row.
    Length,
    /// Plants.
    Plants,
    /// Seeds by count.
    Seeds,
    /// Seeds by weight.
    SeedWeight,
    /// Cells to sow in trays.
    Cells,
    /// Sets, pieces, slips, crowns or bought plants by count.
    SetOut,
    /// The same by weight.
    SetOutWeight,
    /// A dressing's product by weight; the index is the dressing's place in the bed's order.
    Product(usize),
    /// A dressing's product in kitchen measure.
    Scoops(usize),
    /// Tape.
    Tape,
}

impl Ledger {
    /// The ledger of a bed in the units given. Columns that would be empty all the way down are left out.
    pub fn of(bed: &BedPlan, units: Units) -> Self {
        let mut columns = vec![length_column(bed, units)];
        if bed.stand.is_some() {
            columns.push(counts(
                ColumnKind::Plants,
                "Plants",
                bed.rows.iter().map(|row| row.plants),
            ));
        }
        if bed.totals.seeds > 0 {
            // Where nobody says how much comes up, only good seeds are counted.
            let is_known = bed
                .stand
                .is_some_and(|stand| stand.germination_from != GerminationFrom::NotKnown);
            let title = if is_known { "Seeds" } else { "Good seeds" };
            columns.push(counts(ColumnKind::Seeds, title, bed.rows.iter().map(|row| row.seeds)));
            columns.extend(seed_weight_column(bed, units));
        }
        if bed.totals.cells > 0 {
            columns.push(counts(ColumnKind::Cells, "Cells", bed.rows.iter().map(|row| row.cells)));
        }
        columns.extend(set_out_column(bed));
        columns.extend(set_out_weight_column(bed, units));
        for (index, dressing) in bed.dressings.iter().enumerate() {
            if dressing.problem.is_none() && !dressing.is_injected {
                columns.push(product_column(dressing, index, units));
                columns.extend(scoops_column(dressing, index, units));
            }
        }
        if bed.totals.tape > Length::ZERO {
            columns.push(tape_column(bed, units));
        }
        Self {
            columns,
            numbers: bed.rows.iter().map(|row| row.number).collect(),
        }
    }
}

impl Column {
    /// Rounds amounts to `decimals` and shares the rounding out.
    fn amounts(kind: ColumnKind, title: &str, unit: &'static str, decimals: u8, amounts: &[f64]) -> Self {
        let (steps, total) = whole_steps(amounts, 10f64.powi(-i32::from(decimals)));
        Self {
            kind,
            title: title.to_owned(),
            unit,
            decimals,
            steps,
            total,
        }
    }

    /// The amount of a row with its unit, as shown everywhere.
    pub fn cell(&self, row: usize) -> String {
        self.steps.get(row).map_or_else(String::new, |&steps| self.word(steps))
    }

    /// The amount of the bed with its unit, as shown everywhere. Grams and millilitres of many rows are kilograms and
    /// litres.
    pub fn total(&self) -> String {
        let amount = self.total as f64 / 10f64.powi(i32::from(self.decimals));
        match self.large_unit() {
            Some(unit) if amount >= 1000.0 => format!("{}\u{a0}{unit}", number(amount / 1000.0, 3)),
            _ => self.word(self.total),
        }
    }

    /// A thousand times what its rows are shown in, where the bed's amount is that large.
    fn large_unit(&self) -> Option<&'static str> {
        match (self.unit, self.kind, self.title.as_str()) {
            ("g", ..) => Some("kg"),
            (_, ColumnKind::Scoops(_), MILLILITRES) => Some("litres"),
            _ => None,
        }
    }

    /// The amount of a row as a plain number, for spreadsheets.
    pub fn number(&self, row: usize) -> Option<f64> {
        self.steps
            .get(row)
            .map(|&steps| steps as f64 / 10f64.powi(i32::from(self.decimals)))
    }

    fn word(&self, steps: i64) -> String {
        let digits = group_thousands(steps, self.decimals);
        if self.unit.is_empty() {
            digits
        } else {
            format!("{digits}\u{a0}{}", self.unit)
        }
    }
}

fn counts(kind: ColumnKind, title: &str, counts: impl Iterator<Item = u64>) -> Column {
    let steps: Vec<i64> = counts.map(|count| i64::try_from(count).unwrap_or(i64::MAX)).collect();
    let total = steps.iter().fold(0i64, |total, &step| total.saturating_add(step));
    Column {
        kind,
        title: title.to_owned(),
        unit: "",
        decimals: 0,
        steps,
        total,
    }
}

fn length_column(bed: &BedPlan, units: Units) -> Column {
    let (unit, lengths): (_, Vec<f64>) = match units {
        Units::Customary => ("ft", bed.rows.iter().map(|row| row.length.to_feet()).collect()),
        Units::Metric => ("m", bed.rows.iter().map(|row| row.length.to_metres()).collect()),
    };
    // A tenth of a foot is an inch and a bit; two decimals of a metre are a centimetre.
    let finest = if units == Units::Customary { 1 } else { 2 };
    let decimals = (0..finest)
        .find(|&decimals| all_round(&lengths, decimals))
        .unwrap_or(finest);
    Column::amounts(ColumnKind::Length, "Length", unit, decimals, &lengths)
}

/// Whether every amount is, to a five-hundredth of its unit, a number of that many decimals.
fn all_round(amounts: &[f64], decimals: u8) -> bool {
    let scale = 10f64.powi(i32::from(decimals));
    amounts
        .iter()
        .all(|amount| (amount - (amount * scale).round() / scale).abs() < 0.002)
}

fn tape_column(bed: &BedPlan, units: Units) -> Column {
    let tape: Vec<f64> = match units {
        Units::Customary => bed.rows.iter().map(|row| row.tape.to_feet()).collect(),
        Units::Metric => bed.rows.iter().map(|row| row.tape.to_metres()).collect(),
    };
    match units {
        Units::Customary => Column::amounts(ColumnKind::Tape, "Tape", "ft", 0, &tape),
        Units::Metric => Column::amounts(ColumnKind::Tape, "Tape", "m", 1, &tape),
    }
}

fn seed_weight_column(bed: &BedPlan, units: Units) -> Option<Column> {
    let rows = bed.rows.iter().map(|row| row.seed_mass);
    let (unit, decimals, amounts) = weights(bed.totals.seed_mass?, rows, units);
    let kind = ColumnKind::SeedWeight;
    Some(Column::amounts(kind, "Seed", unit, decimals, &amounts))
}

/// What is put in that is no seed. Bought plants without a spare one are the plants that stand there already.
fn set_out_column(bed: &BedPlan) -> Option<Column> {
    let things = bed.things().filter(|_| bed.totals.set_out > 0)?;
    if things == Things::Plants && bed.totals.set_out == bed.totals.plants {
        return None;
    }
    let title = match things {
        Things::Plants => "Set out".to_owned(),
        things => capital(things.name()),
    };
    let rows = bed.rows.iter().map(|row| row.set_out);
    Some(counts(ColumnKind::SetOut, &title, rows))
}

fn set_out_weight_column(bed: &BedPlan, units: Units) -> Option<Column> {
    let total = bed.totals.set_out_mass.filter(|_| bed.totals.set_out > 0)?;
    let rows = bed.rows.iter().map(|row| row.set_out_mass);
    let (unit, decimals, amounts) = weights(total, rows, units);
    let kind = ColumnKind::SetOutWeight;
    Some(Column::amounts(kind, "Weight", unit, decimals, &amounts))
}

/// Unit, decimals and amounts of weights of seed. The bed's sum stands in the unit that it has on the card and in the
/// order; its rows follow.
fn weights(
    total: Mass,
    rows: impl ExactSizeIterator<Item = Option<Mass>>,
    units: Units,
) -> (&'static str, u8, Vec<f64>) {
    let usual = usual(total, rows.len());
    let (unit, in_unit) = total.seed_unit(units);
    let amounts = rows.map(|mass| in_unit(mass.unwrap_or(Mass::ZERO))).collect();
    (unit, two_figures(in_unit(usual)).min(3), amounts)
}

fn product_column(dressing: &DressingPlan, index: usize, units: Units) -> Column {
    let usual = usual(dressing.total, dressing.rows.len());
    let (unit, in_unit): (_, fn(Mass) -> f64) = match units {
        Units::Customary if usual > Mass::ZERO && usual.to_pounds() < 0.1 => ("oz", Mass::to_ounces),
        Units::Customary => ("lb", Mass::to_pounds),
        Units::Metric if usual.to_kilograms() < 1.0 => ("g", Mass::to_grams),
        Units::Metric => ("kg", Mass::to_kilograms),
    };
    let decimals = match unit {
        _ if dressing.total <= Mass::ZERO => 0,
        "g" => two_figures(in_unit(usual)).min(1),
        // A hundredth of a pound is a level teaspoon or so, a hundredth of a kilogram two.
        _ => 2,
    };
    let amounts: Vec<f64> = dressing.rows.iter().copied().map(in_unit).collect();
    Column::amounts(ColumnKind::Product(index), &dressing.name, unit, decimals, &amounts)
}

/// Head of a kitchen measure in millilitres.
const MILLILITRES: &str = "ml";

fn scoops_column(dressing: &DressingPlan, index: usize, units: Units) -> Option<Column> {
    let density = dressing.density?;
    let usual = usual(dressing.total, dressing.rows.len()) / density;
    let volumes = dressing.rows.iter().map(|&mass| mass / density);
    Some(match units {
        Units::Customary => {
            let decimals = match usual.to_cups() {
                usual if usual <= 0.0 => 0,
                usual if usual < 0.5 => 2,
                _ => 1,
            };
            let cups: Vec<f64> = volumes.map(|volume| volume.to_cups()).collect();
            Column::amounts(ColumnKind::Scoops(index), "cups", "", decimals, &cups)
        }
        Units::Metric if usual.to_litres() < 1.0 => {
            let millilitres: Vec<f64> = volumes.map(|volume| volume.to_litres() * 1000.0).collect();
            Column::amounts(ColumnKind::Scoops(index), MILLILITRES, "", 0, &millilitres)
        }
        Units::Metric => {
            let litres: Vec<f64> = volumes.map(|volume| volume.to_litres()).collect();
            Column::amounts(ColumnKind::Scoops(index), "litres", "", 2, &litres)
        }
    })
}

/// What a row usually takes: the mean.
fn usual(total: Mass, rows: usize) -> Mass {
    if rows == 0 { total } else { total / rows as f64 }
}

/// How many decimals show at least two figures of such an amount.
fn two_figures(amount: f64) -> u8 {
    match amount.abs() {
        amount if amount >= 10.0 || amount == 0.0 => 0,
        amount if amount >= 1.0 => 1,
        amount if amount >= 0.1 => 2,
        amount if amount >= 0.01 => 3,
        _ => 4,
    }
}

/// Steps of the last decimal as digits with thousands marks: `123456` with two decimals is `1,234.56`.
fn group_thousands(steps: i64, decimals: u8) -> String {
    let decimals = decimals.min(9);
    let scale = 10u64.pow(u32::from(decimals));
    let sign = if steps < 0 { "−" } else { "" };
    let whole = count(steps.unsigned_abs() / scale);
    if decimals == 0 {
        return format!("{sign}{whole}");
    }
    let part = steps.unsigned_abs() % scale;
    format!("{sign}{whole}.{part:0width$}", width = usize::from(decimals))
}
