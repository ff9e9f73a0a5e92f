//! The ledger: one line a row, with every number worded once for window, paper and tables.
//!
//! Amounts are held as whole steps of what is shown (hundredths of a pound, say). The bed's amount is rounded
//! once, and the rows' steps are shared out so that they add up to it exactly.

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
    /// A dressing's product by weight; the index is the dressing's place in the bed's order.
    Product(usize),
    /// A dressing's product in kitchen measure.
    Scoops(usize),
    /// Tape.
    Tape,
}

impl Column {
    /// The amount of a row with its unit, as shown everywhere.
    pub fn cell(&self, row: usize) -> String {
        self.steps.get(row).map_or_else(String::new, |&steps| self.word(steps))
    }

    /// The amount of the bed with its unit, as shown everywhere.
    pub fn total(&self) -> String {
        self.word(self.total)
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

/// Steps of the last decimal as digits with thousands marks: `123456` with two decimals is `1,234.56`.
fn group_thousands(steps: i64, decimals: u8) -> String {
    let scale = 10u64.pow(u32::from(decimals.min(9)));
    let whole = (steps.unsigned_abs() / scale).to_string();
    let mut grouped = String::new();
    for (place, digit) in whole.chars().enumerate() {
        if place > 0 && (whole.len() - place) % 3 == 0 {
            grouped.push(',');
        }
        grouped.push(digit);
    }
    let sign = if steps < 0 { "−" } else { "" };
    if decimals == 0 {
        format!("{sign}{grouped}")
    } else {
        let part = steps.unsigned_abs() % scale;
        format!("{sign}{grouped}.{part:0width$}", width = usize::from(decimals.min(9)))
    }
}
