//! Runs of feeding through the tape.

use egui::{RichText, Ui};

use super::columns::{Column, accent, bold, cell, heads, line, plain, soft, widths};
use super::lines::{Lines, Seen};
use super::part;
use crate::app::form;
use crate::quantity::counted;
use crate::sheets::feeding_list::RunWords;

const COLUMNS: [Column; 6] = [
    ("Zone and dressing", 150.0, 0.15),
    ("Each run", 140.0, 0.15),
    ("When", 150.0, 0.2),
    ("Stock", 160.0, 0.15),
    ("At the outlets", 110.0, 0.05),
    ("How long", 220.0, 0.3),
];

/// How high a line is taken to be until it was drawn once.
pub(super) const USUAL_HEIGHT: f32 = 80.0;

/// Draws the runs that are seen.
pub(super) fn show(ui: &mut Ui, seen: Seen, lines: &mut Lines<usize>, runs: &[RunWords]) {
    if runs.is_empty() {
        return;
    }
    part(ui, "Through the tape");
    let widths = widths(ui, &COLUMNS);
    heads(ui, &COLUMNS, &widths);
    lines.show(ui, seen, widths.iter().sum(), runs.iter().enumerate(), |ui, run| {
        show_run(ui, widths, run);
        form::rule(ui);
    });
}

fn show_run(ui: &mut Ui, [zone, each, when, stock, outlets, long]: [f32; 6], run: &RunWords) {
    line(ui, |ui| {
        let beds = if run.beds == run.zone { "" } else { run.beds.as_str() };
        cell(ui, zone, &[bold(ui, &run.zone), plain(ui, &run.name), soft(ui, beds)]);
        cell(ui, each, &[bold(ui, &run.each), soft(ui, &run.material)]);
        cell(ui, when, &when_words(ui, run));
        cell(
            ui,
            stock,
            &[plain(ui, &run.tank), plain(ui, &run.stock), soft(ui, &run.dissolves)],
        );
        let strength = match run.nitrogen.as_str() {
            "" => String::new(),
            ppm => format!("{ppm} N"),
        };
        cell(ui, outlets, &[plain(ui, strength), soft(ui, run.water())]);
        cell(ui, long, &[plain(ui, run.how_long()), accent(ui, &run.problem)]);
    });
}

/// When it runs, and the runs one by one as far as they fit, those that are done in soft ink.
fn when_words(ui: &Ui, run: &RunWords) -> Vec<RichText> {
    let feedings = run.one_by_one();
    let mut words = vec![plain(ui, run.when())];
    words.extend(feedings.iter().take(MOST_SHOWN).map(|feeding| {
        if feeding.is_done {
            soft(ui, feeding.line())
        } else {
            plain(ui, feeding.line())
        }
    }));
    let more = feedings.len().saturating_sub(MOST_SHOWN);
    if more > 0 {
        words.push(soft(ui, format!("and {}", counted(more as u64, "more", "more"))));
    }
    words
}

/// More runs than fit in a cell.
const MOST_SHOWN: usize = 30;
