//! The order list on paper: what to buy, what it is for, what comes off the shelf, and trays to sow.

use super::frame::{Frame, Role};
use super::paper::Turned;
use super::sheet::Sheet;
use super::word_table::{Columns, Setting, Tick, Words};
use super::{PageError, PageOptions};
use crate::layout::Layout;
use crate::plan::Plan;
use crate::sheets::mark::Ink;
use crate::sheets::order_list::OrderList;
use crate::sheets::type_metrics;

/// The caution at the foot of every order list.
///
/// # Source
/// Common practice, no source.
pub const SEED_CAUTION: &str = "Treated seed is poison: keep it in its own bag, away from children, stock and birds, wear gloves, and follow its label.";

/// How the amounts are come by.
const HOW: &str = "Worked out from the rows as drawn: plants that are to stand × good seeds for each ÷ the part that comes up, and the spare given. What is on the shelf is used first. No amount is taken from a table of seed for so long a row. What a crop may give is what gardens have harvested from so long a row of one line at the usual spacing, never a promise.";

const SIZE: f32 = 9.0;
const SMALL: f32 = 8.0;
const COLUMNS: Columns<'_> = Columns {
    parts: &[0.22, 0.21, 0.18, 0.19, 0.20],
    titles: &["what", "goes to", "needed", "from the shelf", "to buy"],
    ticks: true,
};
const TRAY_COLUMNS: Columns<'_> = Columns {
    parts: &[0.30, 0.22, 0.24, 0.24],
    titles: &["raise in trays", "goes to", "sow", "when"],
    ticks: true,
};

/// Makes the sheets of the order list. The same input gives the same sheets.
///
/// # Errors
/// [`PageError::NothingToOrder`] when no bed has a crop that takes anything.
pub fn order_pages(layout: &Layout, plan: &Plan, options: &PageOptions) -> Result<Vec<Frame>, PageError> {
    let list = OrderList::of(layout, plan);
    if list.lines.is_empty() {
        return Err(PageError::NothingToOrder);
    }
    let foot = {
        let sheet = Sheet::new(options.paper, Turned::Portrait, 0.0);
        let lines = [HOW, SEED_CAUTION]
            .map(|text| type_metrics::break_lines(text, sheet.across(), SMALL, false).len())
            .iter()
            .sum::<usize>();
        lines as f64 * f64::from(SMALL) * 1.3 + 5.0
    };
    let mut pages = Setting::new(options, foot);
    let lines = list.lines.iter().map(|words| {
        let mut to_buy = vec![
            Words::bold(&words.to_buy),
            Words::soft(&words.packets),
            Words::soft(&words.left_over),
        ];
        to_buy.extend(said("costs", &words.cost));
        let mut what = vec![Words::bold(&words.name)];
        what.extend(said("may give", &words.harvest));
        let cells = vec![
            what,
            words.goes_to.iter().map(Words::plain).collect(),
            vec![Words::plain(&words.need)],
            words.from_shelf.iter().map(Words::plain).collect(),
            to_buy,
        ];
        (cells, if words.is_to_buy() { Tick::Open } else { Tick::None })
    });
    pages.table_with(&COLUMNS, &lines.collect::<Vec<_>>());
    for sentence in &list.not_counted {
        pages.sheet.y += 6.0;
        pages.sheet.sentence(Role::Sentence, sentence, SIZE, Ink::Strong);
    }
    if let Some(cost) = list.cost_sentence() {
        pages.need(18.0);
        pages.sheet.y += 6.0;
        pages.sheet.sentence(Role::Sentence, &cost, SIZE, Ink::Strong);
    }
    if !list.trays.is_empty() {
        pages.sheet.y += 16.0;
        pages.need(60.0);
        let lines = list.trays.iter().map(|words| {
            vec![
                vec![Words::bold(&words.name)],
                vec![Words::plain(&words.bed)],
                vec![Words::plain(&words.sow), Words::soft(&words.seed)],
                vec![Words::plain(&words.when)],
            ]
        });
        pages.table(&TRAY_COLUMNS, &lines.collect::<Vec<_>>());
    }
    pages.done.push(pages.sheet);
    let count = pages.done.len();
    let place = format!("{}, season {}", layout.name, layout.season);
    let frames = pages.done.into_iter().enumerate().map(|(k, mut sheet)| {
        sheet.notes(110.0);
        sheet.y = sheet.bottom + 5.0;
        let role = || if k == 0 { Role::Sentence } else { Role::Ornament };
        sheet.sentence(role(), HOW, SMALL, Ink::Soft);
        sheet.sentence(role(), SEED_CAUTION, SMALL, Ink::Strong);
        let mut number = format!("sheet {} of {count}", k + 1);
        if !options.date.trim().is_empty() {
            number.push_str(&format!(" · plan of {}", options.date.trim()));
        }
        sheet.head("Order list", &place, &number, k == 0);
        sheet.finish(&format!("Order list, {place}"))
    });
    Ok(frames.collect())
}

/// What there is to say after a word or two; nothing where there is nothing.
fn said<'a>(before: &str, words: &str) -> Option<Words<'a>> {
    (!words.is_empty()).then(|| Words::soft(format!("{before} {words}")))
}
