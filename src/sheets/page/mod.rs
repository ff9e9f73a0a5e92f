//! Sheets to carry outside: the map at a true scale, and the tables of the rows.
//!
//! [`map_pages`] gives finished [`Frame`]s; the writers of PDF, SVG and PNG only paint them.

mod frame;
mod map_key;
mod map_sheet;
mod paper;
mod scale;
mod sheet;
mod table;

use thiserror::Error;

use self::sheet::Sheet;
use self::table::{Band, LINE};
use super::drawing;
use super::mark::{Anchor, Ink};
use super::type_metrics;
use crate::layout::{Bed, BedId, Layout};
use crate::plan::{BedPlan, Ledger, Plan};

pub use frame::{CellHead, Frame, Part, Role};
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
    let place = format!("{}, season {}", layout.name, layout.season);
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
        // A sheet that lies the long way takes a bed's tables only whole: they go on over upright sheets otherwise.
        let height = |band: &Band| HEADING + band.head_height() + (ledger.numbers.len() + 1) as f64 * LINE;
        let lying = self.sheet.width > self.sheet.height;
        let all: f64 = Band::share_out(ledger, self.sheet.across())
            .iter()
            .map(|band| height(band) + BETWEEN_TABLES)
            .sum();
        if lying && self.sheet.room() < all {
            self.turn_over();
        }
        let bands = Band::share_out(ledger, self.sheet.across());
        for (k, band) in bands.iter().enumerate() {
            let about = if bands.len() > 1 {
                format!("{about} · columns, part {} of {}", k + 1, bands.len())
            } else {
                about.clone()
            };
            // Begun low on a sheet only when it ends there too, or at least a good part of it does.
            let begun = HEADING + band.head_height() + 8.0 * LINE;
            if self.sheet.room() < height(band).min(begun) {
                self.turn_over();
            }
            self.set_table(bed, &about, ledger, band);
        }
    }

    fn set_table(&mut self, bed: &Bed, about: &str, ledger: &Ledger, band: &Band) {
        let table = self.tables;
        self.tables += 1;
        heading(&mut self.sheet, bed, about, false);
        band.set_heads(&mut self.sheet, table, false);
        for (row, &number) in ledger.numbers.iter().enumerate() {
            // The last row keeps the sums with it.
            let needed = if row + 1 == ledger.numbers.len() {
                2.0 * LINE
            } else {
                LINE
            };
            if self.sheet.room() < needed {
                self.turn_over();
                heading(&mut self.sheet, bed, about, true);
                band.set_heads(&mut self.sheet, table, true);
            }
            band.set_row(&mut self.sheet, table, row, number);
        }
        band.set_totals(&mut self.sheet, table, ledger.numbers.len());
        self.sheet.y += BETWEEN_TABLES;
    }
}

/// Height of the heading of a table.
const HEADING: f64 = 24.0;

fn heading(sheet: &mut Sheet, bed: &Bed, about: &str, again: bool) {
    let base = sheet.y + 15.0;
    let most = sheet.across() * 0.5;
    let name = if bed.name.trim().is_empty() {
        "Bed"
    } else {
        bed.name.trim()
    };
    let name = type_metrics::shortened(name, most, 11.5, true);
    let role = |role| if again { Role::Ornament } else { role };
    let x = sheet.left + type_metrics::width(&name, 11.5, true) + 8.0;
    let mut about = about.to_owned();
    if again {
        about.push_str(" · continued");
    }
    let about = type_metrics::shortened(&about, sheet.right - x, 8.5, false);
    let (left, ink) = (sheet.left, Ink::Strong);
    sheet.push(
        role(Role::Heading),
        vec![sheet::words(left, base, &name, Anchor::Left, 11.5, true, ink)],
    );
    sheet.push(
        role(Role::Sentence),
        vec![sheet::words(x, base, &about, Anchor::Left, 8.5, false, Ink::Soft)],
    );
    sheet.y += HEADING;
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
