//! How a map is printed, and why there is no page.

use jiff::civil::Date;
use thiserror::Error;

use super::paper::Paper;
use super::scale::Scale;
use crate::layout::Layout;
use crate::quantity::count as marked;

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
    /// This one, over as many sheets as it takes.
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
    /// No bed is fed yet.
    #[error("Nothing is put down yet: add a dressing to a bed first")]
    NothingToFeed,
    /// The chosen scale needs more sheets than anyone would lay together.
    #[error(
        "At {asked} the map would take {} sheets of {paper}; up to {most} are made. The largest standard scale that fits one sheet is {largest}",
        marked(*sheets as u64)
    )]
    TooManySheets {
        /// The scale that was asked for.
        asked: String,
        /// How many sheets it would take.
        sheets: usize,
        /// How many there may be.
        most: usize,
        /// The paper.
        paper: &'static str,
        /// The largest standard scale that fits one sheet.
        largest: String,
    },
    /// No standard scale is small enough.
    #[error(
        "The ground is too far apart to fit one sheet at any standard scale. Move far plots nearer, or print them apart"
    )]
    TooLarge,
}
