//! The words of the command line.

use std::path::PathBuf;

use clap::{Args, Parser, Subcommand, ValueEnum};
use jiff::civil::Date;

/// A drawing table for growers who plant in rows.
#[derive(Debug, Parser)]
#[command(
    name = "quillet",
    version,
    about,
    args_conflicts_with_subcommands = true,
    disable_help_subcommand = true
)]
pub(super) struct Words {
    /// What to do without a window
    #[command(subcommand)]
    pub(super) job: Option<Job>,
    /// The layout to open in the window; the last one, or a sample, when left out
    pub(super) file: Option<PathBuf>,
}

/// What can be done without a window.
#[derive(Debug, Subcommand)]
pub(super) enum Job {
    /// Start a layout from measured corners: one plot, and one bed that fills it
    New(Box<New>),
    /// The numbers, row by row
    Ledger(Ledger),
    /// What to buy, what for, and where it goes
    Order(Order),
    /// What every row gets of every dressing, what to buy, and what runs through the tape
    Feed(Feed),
    /// The map to carry outside
    Map(Map),
    /// What is wrong with a layout, and what a careful neighbour would mention
    Check(Check),
}

/// The words of `new`. Lengths are typed as growers write them: 3ft, 3'6", 42 in, 3 1/2 ft, 1.1 m.
#[derive(Debug, Args)]
pub(super) struct New {
    /// Table with the head ring,east_ft,north_ft (or east_m,north_m): ring 0 is the outline, every other ring stands in the way
    #[arg(long, value_name = "FILE.csv")]
    pub(super) corners: PathBuf,
    /// The layout to write
    #[arg(short, long, value_name = "FILE.ron")]
    pub(super) output: PathBuf,
    /// What the layout is called
    #[arg(long)]
    pub(super) name: Option<String>,
    /// The crop's id in the catalogue, such as sweet_corn
    #[arg(long, value_name = "ID")]
    pub(super) crop: Option<String>,
    /// How the bed gets its water
    #[arg(long)]
    pub(super) water: Option<WaterWord>,
    /// Which way rows run, in degrees clockwise from north
    #[arg(long, value_name = "DEG", allow_hyphen_values = true)]
    pub(super) bearing: Option<String>,
    /// From row to row
    #[arg(long, value_name = "LEN", allow_hyphen_values = true)]
    pub(super) row_spacing: Option<String>,
    /// From plant to plant in the row
    #[arg(long, value_name = "LEN", allow_hyphen_values = true)]
    pub(super) in_row: Option<String>,
    /// From the extreme edge to the first row; half a row spacing when left out
    #[arg(long, value_name = "LEN", allow_hyphen_values = true)]
    pub(super) edge: Option<String>,
    /// From the end of a row to its first plant; half the in-row spacing when left out
    #[arg(long, value_name = "LEN", allow_hyphen_values = true)]
    pub(super) end_gap: Option<String>,
    /// Kept free at both ends of every piece of row
    #[arg(long, value_name = "LEN", allow_hyphen_values = true)]
    pub(super) headland: Option<String>,
    /// Kept free along the outline and round whatever stands in the way; 0 when left out
    #[arg(long, value_name = "LEN", allow_hyphen_values = true)]
    pub(super) clear: Option<String>,
    /// Where left-over width goes, seen along the bearing
    #[arg(long)]
    pub(super) remainder: Option<RemainderWord>,
    /// Pieces of row shorter than this are dropped; 0 when left out
    #[arg(long, value_name = "LEN", allow_hyphen_values = true)]
    pub(super) shortest: Option<String>,
}

/// How a bed gets its water.
#[derive(Clone, Copy, Debug, ValueEnum)]
pub(super) enum WaterWord {
    /// Tape buried under the row
    BuriedDrip,
    /// Tape on top of the ground
    SurfaceDrip,
    /// Sprinklers
    Overhead,
    /// Rain alone
    Rain,
}

/// Where left-over width goes.
#[derive(Clone, Copy, Debug, ValueEnum)]
pub(super) enum RemainderWord {
    /// Half on either side
    Centred,
    /// On the left hand
    Left,
    /// On the right hand: the first row stands at the edge margin on the left
    Right,
}

/// The words of `ledger`.
#[derive(Debug, Args)]
pub(super) struct Ledger {
    /// The layout to read
    #[arg(value_name = "FILE.ron")]
    pub(super) file: PathBuf,
    /// How the numbers are written; by the ending of the file to write, or lines of text, when left out
    #[arg(long, value_enum)]
    pub(super) format: Option<TableFormat>,
    /// The file to write; printed when left out
    #[arg(short, long, value_name = "OUT")]
    pub(super) output: Option<PathBuf>,
}

/// How the numbers are written.
#[derive(Clone, Copy, Debug, ValueEnum)]
pub(super) enum TableFormat {
    /// Lines of text
    Table,
    /// Comma separated values, units in the heads
    Csv,
    /// JSON in SI units, named in each key
    Json,
}

/// The words of `order`.
#[derive(Debug, Args)]
pub(super) struct Order {
    /// The layout to read
    #[arg(value_name = "FILE.ron")]
    pub(super) file: PathBuf,
    /// How the order is written; by the ending of the file to write, or lines of text, when left out
    #[arg(long, value_enum)]
    pub(super) format: Option<OrderFormat>,
    /// The file to write; a spreadsheet needs one, everything else is printed when left out
    #[arg(short, long, value_name = "OUT")]
    pub(super) output: Option<PathBuf>,
    #[command(flatten)]
    pub(super) on: OnDay,
}

/// How the order is written.
#[derive(Clone, Copy, Debug, ValueEnum)]
pub(super) enum OrderFormat {
    /// Lines of text
    Table,
    /// Comma separated values, units in the heads
    Csv,
    /// JSON in SI units, named in each key
    Json,
    /// A spreadsheet, units in the heads
    Xlsx,
}

/// The words of `feed`.
#[derive(Debug, Args)]
pub(super) struct Feed {
    /// The layout to read
    #[arg(value_name = "FILE.ron")]
    pub(super) file: PathBuf,
    /// How the feeding is written; by the ending of the file to write, or lines of text, when left out
    #[arg(long, value_enum)]
    pub(super) format: Option<FeedFormat>,
    /// The file to write; a spreadsheet or a PDF needs one, everything else is printed when left out
    #[arg(short, long, value_name = "OUT")]
    pub(super) output: Option<PathBuf>,
    /// The paper of a PDF; the usual one for the layout's units when left out
    #[arg(long)]
    pub(super) paper: Option<PaperWord>,
    /// A PDF in black and white
    #[arg(long)]
    pub(super) black_and_white: bool,
    #[command(flatten)]
    pub(super) on: OnDay,
}

/// How the feeding is written.
#[derive(Clone, Copy, Debug, ValueEnum)]
pub(super) enum FeedFormat {
    /// Lines of text
    Table,
    /// Comma separated values of every row, units in the heads
    Csv,
    /// JSON in SI units, named in each key
    Json,
    /// A spreadsheet, units in the heads
    Xlsx,
    /// The sheets to carry outside
    Pdf,
}

/// The words of `map`.
#[derive(Debug, Args)]
pub(super) struct Map {
    /// The layout to read
    #[arg(value_name = "FILE.ron")]
    pub(super) file: PathBuf,
    /// The file to write; its ending says what it is
    #[arg(short, long, value_name = "OUT.pdf|OUT.svg|OUT.png")]
    pub(super) output: PathBuf,
    /// The paper; the usual one for the layout's units when left out
    #[arg(long)]
    pub(super) paper: Option<PaperWord>,
    /// The scale: fit, 1:120, or "1 in = 10 ft"
    #[arg(long, default_value = "fit")]
    pub(super) scale: String,
    /// In black and white
    #[arg(long)]
    pub(super) black_and_white: bool,
    #[command(flatten)]
    pub(super) on: OnDay,
}

/// The day on which something is made.
#[derive(Debug, Args)]
pub(super) struct OnDay {
    /// The day that stands on it as the day it was made, such as 2027-03-01; today when left out
    #[arg(long, value_name = "DATE", value_parser = read_day)]
    on: Option<Date>,
}

impl OnDay {
    /// That day.
    pub(super) fn day(&self) -> Date {
        self.on.unwrap_or_else(|| jiff::ZonedDateTime::now().date())
    }
}

/// Reads a day of the calendar.
fn read_day(text: &str) -> Result<Date, String> {
    // The reader of the library takes times of day and weeks, too.
    let parts: Vec<&str> = text.trim().split('-').collect();
    let is_day =
        matches!(parts.as_slice(), [year, month, day] if year.len() == 4 && month.len() == 2 && day.len() == 2);
    text.trim()
        .parse()
        .ok()
        .filter(|_| is_day)
        .ok_or_else(|| "no day of the calendar; write year, month and day: 2027-03-01".to_owned())
}

/// The paper.
#[derive(Clone, Copy, Debug, ValueEnum)]
pub(super) enum PaperWord {
    /// 8.5 by 11 inches
    Letter,
    /// 210 by 297 millimetres
    A4,
}

/// The words of `check`.
#[derive(Debug, Args)]
pub(super) struct Check {
    /// The layout to read
    #[arg(value_name = "FILE.ron")]
    pub(super) file: PathBuf,
}
