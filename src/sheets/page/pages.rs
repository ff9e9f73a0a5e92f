//! The sheets of a map, one after the other.

use super::frame::{Frame, Role};
use super::heading::{about, heading, heading_height, spread_lines};
use super::map_parts::MapParts;
use super::options::{PageError, PageOptions, ScaleChoice};
use super::paper::Turned;
use super::sheet::Sheet;
use super::table::{Band, LINE, LOWEST_LINE};
use super::{map_key, map_sheet};
use crate::layout::{Bed, BedId, Dressing, Layout, Placement};
use crate::plan::{BedPlan, Ledger, Plan};
use crate::quantity::count;
use crate::sheets::mark::Ink;
use crate::sheets::{drawing, stand_words, type_metrics};

/// The caution that goes with every table of dressings.
///
/// # Source
/// Side-dress beside the stalks where hilling covers it, never on leaves or in the whorl: common practice, no
/// source.
pub const DRESSING_CAUTION: &str = "Beside the plants, where a hill will cover it if there is one; keep it off leaves, and with corn out of the whorl: the salt burns. Wear gloves. Follow the label and your soil laboratory.";

/// The caution where nothing goes beside growing plants.
///
/// # Source
/// Fertilizer salts hurt seed, roots and leaves that they touch: common practice, no source.
const FERTILIZER_CAUTION: &str = "Fertilizer salts burn: keep them off seed, stems and leaves, and out of eyes and lungs. Wear gloves. Follow the label and your soil laboratory.";

pub(super) const CAUTION_SIZE: f32 = 8.0;
/// Beds of more rows than this, over a hundred sheets of them, are printed by their sums alone.
pub(super) const MOST_ROWS: usize = 5000;
/// Between two tables, in points.
pub(super) const BETWEEN_TABLES: f64 = 16.0;

/// Makes the sheets: the map first, then the table of every bed that has a ledger, each with the same head.
///
/// A map too large for one sheet at the chosen scale goes on several that lap over each other, after a sheet with all of
/// it. Tables begin on the map's own sheet where there is room below it. The same input gives the same sheets.
///
/// # Errors
/// [`PageError`] when there is nothing to print, or the map would take too many sheets at the chosen scale; the
/// message names the largest that fits one.
pub fn map_pages(
    layout: &Layout,
    plan: &Plan,
    ledgers: &[(BedId, Ledger)],
    options: &PageOptions,
) -> Result<Vec<Frame>, PageError> {
    let extent = drawing::extent(layout)
        .filter(|extent| extent.width() > 0.0 || extent.height() > 0.0)
        .ok_or(PageError::Empty)?;
    let cautions = cautions(layout, plan, options);
    let foot = |across: f64| {
        let lines: usize = cautions
            .iter()
            .map(|caution| type_metrics::break_lines(caution, across, CAUTION_SIZE, false).len())
            .sum();
        if lines == 0 {
            0.0
        } else {
            lines as f64 * f64::from(CAUTION_SIZE) * 1.3 + 5.0
        }
    };
    let key = map_key::key_lines(layout, plan);
    let across = |turned: Turned| options.paper.size(turned).0 - 2.0 * options.paper.margin();
    let upright_foot = foot(across(Turned::Portrait));
    let map_fit = map_sheet::fit(layout, &extent, options, &key, upright_foot)?;
    let mut sheet = Sheet::new(options.paper, map_fit.turned, foot(across(map_fit.turned)));
    let parts = match options.scale {
        ScaleChoice::Chosen(scale) if map_fit.is_overview => Some(MapParts::of(
            layout,
            &extent,
            options,
            scale,
            upright_foot,
            map_fit.scale,
        )?),
        _ => None,
    };
    map_sheet::set_map(&mut sheet, layout, plan, &extent, map_fit.scale, &key, parts.as_ref());
    let mut pages = Pages {
        options,
        foot: upright_foot,
        done: Vec::new(),
        sheet,
        tables: 0,
    };
    if let Some(parts) = &parts {
        for index in 0..parts.sheets() {
            let mut sheet = Sheet::new(options.paper, parts.turned, foot(across(parts.turned)));
            parts.set_part(&mut sheet, layout, plan, index);
            pages.done.push(std::mem::replace(&mut pages.sheet, sheet));
        }
    }
    for bed in &layout.beds {
        let Some(plan) = plan.bed(bed.id) else {
            continue;
        };
        let ledger = ledgers.iter().find(|(id, _)| *id == bed.id).map(|(_, ledger)| ledger);
        pages.set_bed(layout, bed, plan, ledger);
    }
    pages.done.push(pages.sheet);
    let count = pages.done.len();
    let season = format!("season {}", layout.season);
    // Said once where the sheets are titled with the layout's own name.
    let place = if layout.name == options.title {
        season
    } else {
        format!("{}, {season}", layout.name)
    };
    let frames = pages.done.into_iter().enumerate().map(|(k, mut sheet)| {
        sheet.notes(110.0);
        sheet.y = sheet.bottom + 5.0;
        for caution in &cautions {
            // Told once; on later sheets it is for the eye alone.
            let role = if k == 0 { Role::Sentence } else { Role::Ornament };
            sheet.sentence(role, caution, CAUTION_SIZE, Ink::Strong);
        }
        let mut number = format!("sheet {} of {count}", k + 1);
        if !options.date.trim().is_empty() {
            number.push_str(&format!(" · plan of {}", options.date.trim()));
        }
        sheet.head(&options.title, &place, &number, k == 0);
        sheet.finish(&options.title)
    });
    Ok(frames.collect())
}

/// The sentences for the foot of every sheet.
pub(super) fn cautions(layout: &Layout, plan: &Plan, options: &PageOptions) -> Vec<String> {
    let dressed = plan.beds.iter().any(|bed| !bed.dressings.is_empty());
    let beside = |dressing: &Dressing| matches!(dressing.placement, Placement::SideDress { .. });
    let beside = layout.beds.iter().flat_map(|bed| &bed.dressings).any(beside);
    let caution = if beside { DRESSING_CAUTION } else { FERTILIZER_CAUTION };
    dressed
        .then(|| caution.to_owned())
        .into_iter()
        .chain(
            options
                .cautions
                .iter()
                .filter(|caution| !caution.trim().is_empty())
                .cloned(),
        )
        .collect()
}

/// The sheets in the making.
struct Pages<'a> {
    options: &'a PageOptions,
    /// Height of the foot of an upright sheet.
    foot: f64,
    done: Vec<Sheet>,
    /// The sheet that is being set.
    sheet: Sheet,
    /// How many tables there are so far.
    tables: usize,
}

impl Pages<'_> {
    fn turn_over(&mut self) {
        let fresh = Sheet::new(self.options.paper, Turned::Portrait, self.foot);
        self.done.push(std::mem::replace(&mut self.sheet, fresh));
    }

    /// Sets the heading and the table of a bed.
    fn set_bed(&mut self, layout: &Layout, bed: &Bed, plan: &BedPlan, ledger: Option<&Ledger>) {
        let mut about = about(layout, bed, plan);
        let seed_at = stand_words::seed_at(plan);
        if !seed_at.is_empty() {
            about.push_str(&format!(" · {seed_at}"));
        }
        let spread = spread_lines(bed, plan, layout.units);
        let Some(ledger) = ledger.filter(|ledger| !ledger.numbers.is_empty()) else {
            if self.sheet.room() < 60.0 {
                self.turn_over();
            }
            heading(&mut self.sheet, bed, &about, &[], false);
            let problem = plan.problem.as_deref().unwrap_or("No row fits this bed.");
            self.sheet.sentence(Role::Sentence, problem, 9.0, Ink::Strong);
            self.sheet.y += BETWEEN_TABLES;
            return;
        };
        if ledger.numbers.len() > MOST_ROWS {
            return self.set_sums_alone(bed, &about, &spread, ledger);
        }
        let above = heading_height(&self.sheet, bed, &about, spread.len());
        let lines = ledger.numbers.len() as f64 + 1.0;
        let height = |band: &Band, line: f64| above + band.head_height() + lines * line;
        // A sheet that lies the long way takes a bed's tables only whole: they go on over upright sheets otherwise.
        let lying = self.sheet.width > self.sheet.height;
        let all: f64 = Band::share_out(ledger, self.sheet.across())
            .iter()
            .map(|band| height(band, LINE) + BETWEEN_TABLES)
            .sum();
        if lying && self.sheet.room() < all {
            self.turn_over();
        }
        let mut bands = Band::share_out(ledger, self.sheet.across());
        let parts = bands.len();
        for (k, band) in bands.iter_mut().enumerate() {
            let about = if parts > 1 {
                format!("part {} of {parts} · {about}", k + 1)
            } else {
                about.clone()
            };
            // Not parted when it fits a sheet of its own; a longer one is begun here if a good part goes on.
            let begun = above + band.head_height() + 12.0 * LINE;
            let whole = height(band, LOWEST_LINE);
            let enough = if whole <= self.empty_room() { whole } else { begun };
            if self.sheet.room() < enough && self.sheet.is_begun() {
                self.turn_over();
            }
            if self.sheet.room() >= height(band, LOWEST_LINE) {
                let line = (self.sheet.room() - above - band.head_height()) / lines;
                band.line = line.clamp(LOWEST_LINE, LINE);
            }
            // Said once, over the first part.
            let spread = if k == 0 { spread.as_slice() } else { &[] };
            self.set_table(bed, &about, spread, ledger, band);
        }
    }

    /// Sets the sums of a bed that has too many rows to print.
    fn set_sums_alone(&mut self, bed: &Bed, about: &str, spread: &[String], ledger: &Ledger) {
        for band in Band::share_out(ledger, self.sheet.across()) {
            if self.sheet.room() < 100.0 {
                self.turn_over();
            }
            heading(&mut self.sheet, bed, about, spread, false);
            let rows = count(ledger.numbers.len() as u64);
            let sentence = format!("{rows} rows are too many to print one by one. Save them as a table instead.");
            self.sheet.sentence(Role::Sentence, &sentence, 9.0, Ink::Strong);
            self.sheet.y += 6.0;
            let table = self.tables;
            self.tables += 1;
            band.set_heads(&mut self.sheet, table, false);
            band.set_totals(&mut self.sheet, table, 0);
            self.sheet.y += BETWEEN_TABLES;
        }
    }

    fn set_table(&mut self, bed: &Bed, about: &str, spread: &[String], ledger: &Ledger, band: &Band) {
        let table = self.tables;
        self.tables += 1;
        heading(&mut self.sheet, bed, about, spread, false);
        band.set_heads(&mut self.sheet, table, false);
        let rows = ledger.numbers.len();
        let mut left = self.rows_here(rows, band.line);
        for (row, &number) in ledger.numbers.iter().enumerate() {
            if left == 0 {
                self.turn_over();
                heading(&mut self.sheet, bed, about, &[], true);
                band.set_heads(&mut self.sheet, table, true);
                left = self.rows_here(rows - row, band.line);
            }
            band.set_row(&mut self.sheet, table, row, number);
            left = left.saturating_sub(1);
        }
        band.set_totals(&mut self.sheet, table, rows);
        self.sheet.y += BETWEEN_TABLES;
    }

    /// Room on an upright sheet with nothing on it.
    fn empty_room(&self) -> f64 {
        Sheet::new(self.options.paper, Turned::Portrait, self.foot).room()
    }

    /// How many of the rows still to come go on this sheet: all of them with their sums if they fit, else as many
    /// as leave at least three for the next sheet.
    fn rows_here(&self, to_come: usize, line: f64) -> usize {
        // A hair of slack: the height of a line may be chosen so that the table fills the sheet exactly.
        let fit = ((self.sheet.room() + 1e-6) / line).max(1.0) as usize;
        if to_come < fit {
            to_come
        } else {
            fit.min(to_come.saturating_sub(3)).max(1)
        }
    }
}
