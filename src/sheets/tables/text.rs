//! The ledger as a table of plain text, for a terminal, and tab separated for the clipboard.

use std::fmt::Write as _;

use crate::layout::Layout;
use crate::plan::{BedPlan, Ledger, Plan};
use crate::sheets::stand_words;

/// The ledger of every bed as lines of text: a heading, one line a row, and the sums.
pub fn ledger_text(layout: &Layout, plan: &Plan) -> String {
    let mut text = String::new();
    for bed_plan in &plan.beds {
        let Some(bed) = layout.bed(bed_plan.bed) else { continue };
        // Writing to a string does not fail.
        let _ = writeln!(text, "{}", bed_heading(layout, bed_plan));
        if let Some(problem) = &bed_plan.problem {
            let _ = writeln!(text, "  {problem}");
        }
        let ledger = Ledger::of(bed_plan, layout.units);
        if bed_plan.rows.is_empty() {
            let _ = writeln!(text, "  No rows in {}.", bed.name);
        } else {
            lay_out(&mut text, &table(&ledger));
        }
        text.push('\n');
    }
    text
}

/// What a bed is, in one line: "Corn block in Lower plot · sweet corn · buried drip · rows 3 ft · in the row 6 in".
pub fn bed_heading(layout: &Layout, plan: &BedPlan) -> String {
    let Some(bed) = layout.bed(plan.bed) else {
        return String::new();
    };
    let units = layout.units;
    let mut parts = vec![match layout.plot(bed.plot) {
        Some(plot) => format!("{} in {}", bed.name, plot.name),
        None => bed.name.clone(),
    }];
    if let Some(crop) = &plan.crop {
        parts.push(match crop.cultivar.as_str() {
            "" => crop.name.clone(),
            cultivar => format!("{} {cultivar}", crop.name),
        });
    }
    parts.push(bed.water.name().to_owned());
    parts.push(format!("rows {} apart", bed.row_spacing.show_short(units)));
    if let Some(stand) = plan.stand {
        parts.push(format!("{} in the row", stand.in_row.show_short(units)));
    }
    let seed_at = stand_words::seed_at(plan);
    parts.extend((!seed_at.is_empty()).then_some(seed_at));
    parts.push(plan.area.show(units));
    parts.join(" · ")
}

/// The ledger tab separated, heads first and sums last, as spreadsheets take it from the clipboard.
pub fn ledger_tabs(ledger: &Ledger) -> String {
    let lines: Vec<String> = table(ledger)
        .iter()
        .map(|cells| cells.join("\t").replace('\u{a0}', " "))
        .collect();
    lines.join("\n")
}

/// Heads, one line a row, and sums.
fn table(ledger: &Ledger) -> Vec<Vec<String>> {
    let mut lines = Vec::with_capacity(ledger.numbers.len() + 2);
    lines.push(
        std::iter::once("Row".to_owned())
            .chain(ledger.columns.iter().map(|c| c.title.clone()))
            .collect(),
    );
    for (row, number) in ledger.numbers.iter().enumerate() {
        lines.push(
            std::iter::once(number.to_string())
                .chain(ledger.columns.iter().map(|c| c.cell(row)))
                .collect(),
        );
    }
    let rows = ledger.numbers.len().to_string();
    lines.push(
        std::iter::once(rows)
            .chain(ledger.columns.iter().map(|c| c.total()))
            .collect(),
    );
    lines
}

/// Lines of cells, each column as wide as its widest cell and set to the right.
fn lay_out(text: &mut String, lines: &[Vec<String>]) {
    let columns = lines.first().map_or(0, Vec::len);
    let width = |column: usize| {
        lines
            .iter()
            .filter_map(|cells| cells.get(column))
            .map(|c| c.chars().count())
            .max()
    };
    let widths: Vec<usize> = (0..columns).map(|column| width(column).unwrap_or(0)).collect();
    for (index, cells) in lines.iter().enumerate() {
        if index + 1 == lines.len() {
            let rule = widths.iter().sum::<usize>() + 2 * widths.len();
            let _ = writeln!(text, "{}", "-".repeat(rule));
        }
        for (cell, width) in cells.iter().zip(&widths) {
            let _ = write!(text, "  {cell:>width$}");
        }
        text.push('\n');
    }
}
