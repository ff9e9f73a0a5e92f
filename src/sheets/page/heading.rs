//! The heading over the table of a bed.

use super::frame::Role;
use super::sheet::{self, Sheet};
use crate::layout::{Bed, Dressing, Layout, with_cultivar};
use crate::plan::{BedPlan, DressingPlan};
use crate::quantity::Units;
use crate::sheets::dressing_words;
use crate::sheets::mark::{Anchor, Ink};
use crate::sheets::stand_words;
use crate::sheets::type_metrics;

/// Height of the heading of a table, in points; more when the words beside the name need a line of their own.
const HEADING: f64 = 24.0;
const SECOND_LINE: f64 = 12.0;
/// Height of a line that says what a dressing is.
const SPREAD_LINE: f64 = 11.0;
const NAME_SIZE: f32 = 11.5;
const ABOUT_SIZE: f32 = 8.5;

fn name_of(bed: &Bed) -> &str {
    let name = bed.name.trim();
    if name.is_empty() { "Bed" } else { name }
}

fn is_one_line(sheet: &Sheet, bed: &Bed, about: &str) -> bool {
    let name = type_metrics::width(name_of(bed), NAME_SIZE, true);
    // Room is kept for "part 1 of 2" before it and "continued" behind it.
    name + 8.0 + type_metrics::width(about, ABOUT_SIZE, false) + 90.0 <= sheet.across()
}

/// Height that the heading takes on a sheet, in points, with so many lines of what is spread.
pub(super) fn heading_height(sheet: &Sheet, bed: &Bed, about: &str, spread: usize) -> f64 {
    let top = if sheet.is_begun() { AIR_ABOVE } else { 0.0 };
    let second = if is_one_line(sheet, bed, about) {
        0.0
    } else {
        SECOND_LINE
    };
    top + HEADING + second + spread as f64 * SPREAD_LINE
}

/// Kept free above a heading that is not the first thing on its sheet, in points.
pub(super) const AIR_ABOVE: f64 = 6.0;

/// Sets the heading, and moves down past it. `again` for a table that goes on from the sheet before.
pub(super) fn heading(sheet: &mut Sheet, bed: &Bed, about: &str, spread: &[String], again: bool) {
    let role = |role| if again { Role::Ornament } else { role };
    let one_line = is_one_line(sheet, bed, about);
    if sheet.is_begun() {
        sheet.y += AIR_ABOVE;
    }
    let name = type_metrics::shortened(name_of(bed), sheet.across(), NAME_SIZE, true);
    let about = if again {
        format!("{about} · continued")
    } else {
        about.to_owned()
    };
    let (left, right, base) = (sheet.left, sheet.right, sheet.y + 15.0);
    let (x, y) = if one_line {
        (left + type_metrics::width(&name, NAME_SIZE, true) + 8.0, base)
    } else {
        (left, base + SECOND_LINE)
    };
    let about = type_metrics::shortened(&about, right - x, ABOUT_SIZE, false);
    let name = sheet::words(left, base, &name, Anchor::Left, NAME_SIZE, true, Ink::Strong);
    let about = sheet::words(x, y, &about, Anchor::Left, ABOUT_SIZE, false, Ink::Soft);
    sheet.push(role(Role::Heading), vec![name]);
    sheet.push(role(Role::Sentence), vec![about]);
    sheet.y += HEADING + if one_line { 0.0 } else { SECOND_LINE };
    for line in spread.iter().filter(|_| !again) {
        let line = type_metrics::shortened(line, right - left, ABOUT_SIZE, false);
        let base = sheet.y + 5.0;
        sheet.push(
            Role::Sentence,
            vec![sheet::words(
                left,
                base,
                &line,
                Anchor::Left,
                ABOUT_SIZE,
                false,
                Ink::Strong,
            )],
        );
        sheet.y += SPREAD_LINE;
    }
}

/// What each dressing of a bed is, one line each: "1st side-dress: Urea, granular (46-0-0), 1.5 lb/1,000 sq ft of
/// nitrogen, beside the plants, a foot tall".
pub(super) fn spread_lines(bed: &Bed, plan: &BedPlan, units: Units) -> Vec<String> {
    let planned = plan.dressings.iter().filter(|planned| planned.problem.is_none());
    planned
        .filter_map(|planned| Some(spread_line(bed.dressing(planned.dressing)?, planned, units)))
        .collect()
}

fn spread_line(dressing: &Dressing, planned: &DressingPlan, units: Units) -> String {
    let mut line = format!(
        "{}: {}, {}, {}",
        dressing.name,
        dressing_words::material(planned),
        dressing_words::amount_in_force(dressing, planned, units)
            .unwrap_or_else(|| dressing_words::amount(dressing, units)),
        dressing_words::place(dressing.placement, units)
    );
    let when = dressing_words::when(dressing, planned);
    if !when.is_empty() {
        line.push_str(&format!(", {when}"));
    }
    line
}

/// What stands behind the name of a bed over its table.
pub(super) fn about(layout: &Layout, bed: &Bed, plan: &BedPlan) -> String {
    let mut words = Vec::new();
    if layout.plots.len() > 1 {
        words.extend(layout.plot(bed.plot).map(|plot| plot.name.clone()));
    }
    if let Some(crop) = &plan.crop {
        words.push(with_cultivar(&crop.name, &crop.cultivar));
    }
    words.push(bed.water.name().to_owned());
    words.push(stand_words::rows(bed, layout.units));
    let in_row = stand_words::in_row(plan, layout.units);
    words.extend((!in_row.is_empty()).then_some(in_row));
    words.join(" · ")
}
