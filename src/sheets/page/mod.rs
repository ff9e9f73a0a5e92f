//! Sheets to carry outside: the map at a true scale, the tables of the rows, and the order list.
//!
//! [`map_pages`] and [`order_pages`] give finished [`Frame`]s; the writers of PDF, SVG and PNG only paint them.

mod frame;
mod map_key;
mod map_sheet;
mod order_sheet;
mod paper;
mod scale;
mod sheet;
mod table;

use jiff::civil::Date;
use thiserror::Error;

use self::sheet::Sheet;
use self::table::{Band, LINE, LOWEST_LINE};
use super::drawing;
use super::mark::{Anchor, Ink};
use super::type_metrics;
use crate::layout::{Bed, BedId, Layout};
use crate::plan::{BedPlan, Ledger, Plan};
use crate::quantity::count;

pub use frame::{CellHead, Frame, Part, Role};
pub use order_sheet::{SEED_CAUTION, order_pages};
pub use paper::{POINTS_PER_MILLIMETRE, Paper, Turned};
pub use scale::{Scale, ScaleError};

/// How a map is printed.
#[derive(Clone, Debug, PartialEq)]
pub struct PageOptions {
    /// The paper.
    pub paper: Paper,
    /// The scale.
    pub scale: ScaleChoice,
    /// The title of every sheet.
    pub title: String,
    /// The day of the plan as it is to be read, such as "12 January"; may be empty.
    pub date: String,
    /// Sentences of caution for the foot of every sheet, besides the one that dressings bring.
    pub cautions: Vec<String>,
}

impl PageOptions {
    /// The options of a layout's map made on a day: its only plot's name for a title, or the layout's own where there
    /// are several.
    pub fn of(layout: &Layout, paper: Paper, scale: ScaleChoice, date: Date) -> Self {
        let title = match layout.plots.as_slice() {
            [plot] => plot.name.clone(),
            _ => layout.name.clone(),
        };
        let date = date.strftime("%-d %B %Y").to_string();
        Self {
            paper,
            scale,
            title,
            date,
            cautions: Vec::new(),
        }
    }
}

/// Which scale a map gets.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub enum ScaleChoice {
    /// The largest standard scale at which everything fits one sheet.
    #[default]
    Fit,
    /// This one, or an error that says which would fit.
    Chosen(Scale),
}

/// Why there is no page.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum PageError {
    /// Nothing is drawn yet.
    #[error("There is nothing to print yet: draw a plot first")]
    Empty,
    /// No bed takes anything yet.
    #[error("There is nothing to order yet: choose a crop for a bed first")]
    NothingToOrder,
    /// The chosen scale needs a larger sheet.
    #[error("At {asked} the map is larger than a sheet of {paper}. The largest standard scale that fits is {largest}")]
    DoesNotFit {
        /// The scale that was asked for.
        asked: String,
        /// The paper.
        paper: &'static str,
        /// The largest standard scale that fits.
        largest: String,
    },
    /// No standard scale is small enough.
    #[error(
        "The ground is too far apart to fit one sheet at any standard scale. Move far plots nearer, or print them apart"
    )]
    TooLarge,
}

/// The caution that goes with every table of dressings.
///
/// # Source
/// Side-dress beside the stalks where hilling covers it, never on leaves or in the whorl: common practice, no
/// source.
pub const DRESSING_CAUTION: &str = "Beside the stalks where the hill will cover it; keep it off leaves and out of the whorl: the salt burns. Wear gloves. Follow the label and your soil laboratory.";

const CAUTION_SIZE: f32 = 8.0;
/// Beds of more rows than this, over a hundred sheets of them, are printed by their sums alone.
const MOST_ROWS: usize = 5000;
/// Between two tables, in points.
const BETWEEN_TABLES: f64 = 16.0;

/// Makes the sheets: the map first, then the table of every bed that has a ledger, each with the same head.
///
/// Tables begin on the map's own sheet where there is room below it. The same input gives the same sheets.
///
/// # Errors
/// [`PageError`] when there is nothing to print, or the map does not fit the paper at the chosen scale; the
/// message names the largest that does.
pub fn map_pages(
    layout: &Layout,
    plan: &Plan,
    ledgers: &[(BedId, Ledger)],
    options: &PageOptions,
) -> Result<Vec<Frame>, PageError> {
    let extent = drawing::extent(layout)
        .filter(|extent| extent.width() > 0.0 || extent.height() > 0.0)
        .ok_or(PageError::Empty)?;
    let cautions = cautions(plan, options);
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
    map_sheet::set_map(&mut sheet, layout, plan, &extent, map_fit.scale, &key);
    let mut pages = Pages {
        options,
        foot: upright_foot,
        done: Vec::new(),
        sheet,
        tables: 0,
    };
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
fn cautions(plan: &Plan, options: &PageOptions) -> Vec<String> {
    let dressed = plan.beds.iter().any(|bed| !bed.dressings.is_empty());
    dressed
        .then(|| DRESSING_CAUTION.to_owned())
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
        let about = about(layout, bed, plan);
        let Some(ledger) = ledger.filter(|ledger| !ledger.numbers.is_empty()) else {
            if self.sheet.room() < 60.0 {
                self.turn_over();
            }
            heading(&mut self.sheet, bed, &about, false);
            let problem = plan.problem.as_deref().unwrap_or("No row fits this bed.");
            self.sheet.sentence(Role::Sentence, problem, 9.0, Ink::Strong);
            self.sheet.y += BETWEEN_TABLES;
            return;
        };
        if ledger.numbers.len() > MOST_ROWS {
            return self.set_sums_alone(bed, &about, ledger);
        }
        let above = heading_height(&self.sheet, bed, &about);
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
            self.set_table(bed, &about, ledger, band);
        }
    }

    /// Sets the sums of a bed that has too many rows to print.
    fn set_sums_alone(&mut self, bed: &Bed, about: &str, ledger: &Ledger) {
        for band in Band::share_out(ledger, self.sheet.across()) {
            if self.sheet.room() < 100.0 {
                self.turn_over();
            }
            heading(&mut self.sheet, bed, about, false);
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

    fn set_table(&mut self, bed: &Bed, about: &str, ledger: &Ledger, band: &Band) {
        let table = self.tables;
        self.tables += 1;
        heading(&mut self.sheet, bed, about, false);
        band.set_heads(&mut self.sheet, table, false);
        let rows = ledger.numbers.len();
        let mut left = self.rows_here(rows, band.line);
        for (row, &number) in ledger.numbers.iter().enumerate() {
            if left == 0 {
                self.turn_over();
                heading(&mut self.sheet, bed, about, true);
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

/// Height of the heading of a table, in points; more when the words beside the name need a line of their own.
const HEADING: f64 = 24.0;
const SECOND_LINE: f64 = 12.0;
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

fn heading_height(sheet: &Sheet, bed: &Bed, about: &str) -> f64 {
    let top = if sheet.is_begun() { AIR_ABOVE } else { 0.0 };
    let second = if is_one_line(sheet, bed, about) {
        0.0
    } else {
        SECOND_LINE
    };
    top + HEADING + second
}

/// Kept free above a heading that is not the first thing on its sheet, in points.
const AIR_ABOVE: f64 = 6.0;

fn heading(sheet: &mut Sheet, bed: &Bed, about: &str, again: bool) {
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
}

/// What stands behind the name of a bed over its table.
fn about(layout: &Layout, bed: &Bed, plan: &BedPlan) -> String {
    let mut words = Vec::new();
    if layout.plots.len() > 1 {
        words.extend(layout.plot(bed.plot).map(|plot| plot.name.clone()));
    }
    if let Some(crop) = &plan.crop {
        let cultivar = crop.cultivar.trim();
        words.push(if cultivar.is_empty() {
            crop.name.clone()
        } else {
            format!("{}, {cultivar}", crop.name)
        });
    }
    words.push(bed.water.name().to_owned());
    words.push(format!("{} rows", bed.row_spacing.show_short(layout.units)));
    words.extend(
        plan.stand
            .map(|stand| format!("{} apart", stand.in_row.show_short(layout.units))),
    );
    words.join(" · ")
}
