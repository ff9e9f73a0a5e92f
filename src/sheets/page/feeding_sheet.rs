//! The fertilizer sheet: bed by bed what every row gets, with room to write what was really used; then what to buy, what
//! runs through the tape, and what to watch out for.

use super::feeding_table::RowsTable;
use super::frame::{Frame, Role};
use super::heading::{AIR_ABOVE, about, heading};
use super::pages::{BETWEEN_TABLES, CAUTION_SIZE, MOST_ROWS, cautions};
use super::paper::Turned;
use super::sheet::Sheet;
use super::table::{LINE, LOWEST_LINE};
use super::word_table::{Columns, Setting, Tick, Words};
use super::{PageError, PageOptions};
use crate::layout::{Bed, Layout};
use crate::plan::Plan;
use crate::quantity::{Units, count};
use crate::sheets::feeding_list::{DressingWords, FedBed, FeedingList, RunWords, rate_unit, stretch_words};
use crate::sheets::mark::Ink;
use crate::sheets::type_metrics;

/// Size of sentences.
const SIZE: f32 = 9.0;
/// Height of a sentence on one line, in points.
const ONE_SENTENCE: f64 = 12.0;
/// Between what is put down and the rows, in points.
const ABOVE_ROWS: f64 = 10.0;

/// Makes the fertilizer sheets. The same input gives the same sheets.
///
/// # Errors
/// [`PageError::NothingToFeed`] when nothing is put down on any bed.
pub fn feeding_pages(layout: &Layout, plan: &Plan, options: &PageOptions) -> Result<Vec<Frame>, PageError> {
    let list = FeedingList::of(layout, plan);
    if list.is_empty() {
        return Err(PageError::NothingToFeed);
    }
    let at_foot = cautions(layout, plan, options);
    let across = Sheet::new(options.paper, Turned::Portrait, 0.0).across();
    let lines: usize = at_foot
        .iter()
        .map(|caution| type_metrics::break_lines(caution, across, CAUTION_SIZE, false).len())
        .sum();
    let foot = lines as f64 * f64::from(CAUTION_SIZE) * 1.3 + 5.0;
    let mut setting = Setting::new(options, foot);
    for fed in &list.beds {
        let (Some(bed), Some(of_plan)) = (layout.bed(fed.bed), plan.bed(fed.bed)) else {
            continue;
        };
        set_bed(&mut setting, bed, about(layout, bed, of_plan), fed, layout.units);
    }
    set_shopping(&mut setting, &list);
    set_runs(&mut setting, &list.runs);
    let minding = set_cautions(&mut setting, &list);
    setting.done.push(setting.sheet);
    let count = setting.done.len();
    let place = format!("{}, season {}", layout.name, layout.season);
    let frames = setting.done.into_iter().enumerate().map(|(k, mut sheet)| {
        sheet.notes(110.0);
        sheet.y = sheet.bottom + 5.0;
        // What stands above is not said again below it.
        let below = if k < minding { &at_foot } else { &options.cautions };
        for caution in below.iter().filter(|caution| !caution.trim().is_empty()) {
            // Told once; on later sheets it is for the eye alone.
            let role = if k == 0 { Role::Sentence } else { Role::Ornament };
            sheet.sentence(role, caution, CAUTION_SIZE, Ink::Strong);
        }
        let mut number = format!("sheet {} of {count}", k + 1);
        if !options.date.trim().is_empty() {
            number.push_str(&format!(" · plan of {}", options.date.trim()));
        }
        sheet.head("Fertilizer", &place, &number, k == 0);
        sheet.finish(&format!("Fertilizer, {place}"))
    });
    Ok(frames.collect())
}

fn set_bed<'a>(setting: &mut Setting<'a>, bed: &'a Bed, about: String, fed: &FedBed, units: Units) {
    let above = setting.height_of(|trial| {
        heading(&mut trial.sheet, bed, &about, &[], false);
        set_dressings(trial, &fed.dressings, units);
    }) + AIR_ABOVE
        + ABOVE_ROWS;
    let below = setting.height_of(|trial| set_accounts(trial, fed, units));
    let most = fed.dressings.iter().map(|dressing| dressing.rows.len()).max();
    let is_too_long = most.is_some_and(|rows| rows > MOST_ROWS);
    let rows = if is_too_long {
        None
    } else {
        Some(RowsTable::of(fed, setting.sheet.across()))
    };
    let rows_height = |line: f64| rows.as_ref().map_or(ONE_SENTENCE, |rows| rows.height(line));
    let whole = |line: f64| above + rows_height(line) + below;
    // A bed that fits a sheet stands on one sheet; of a longer one a good part is begun with its heading.
    let begun = above + rows.as_ref().map_or(ONE_SENTENCE, |rows| rows.begun(LINE));
    setting.need(if whole(LOWEST_LINE) <= setting.empty_room() {
        whole(LOWEST_LINE)
    } else {
        begun
    });
    let line = if whole(LINE) <= setting.sheet.room() || whole(LOWEST_LINE) > setting.sheet.room() {
        LINE
    } else {
        LOWEST_LINE
    };
    heading(&mut setting.sheet, bed, &about, &[], false);
    setting.under = Some((bed, about));
    set_dressings(setting, &fed.dressings, units);
    setting.sheet.y += ABOVE_ROWS;
    match rows {
        Some(rows) => rows.set(setting, line),
        None => {
            let sentence = format!(
                "{} rows are too many to print one by one. Save them as a table instead.",
                count(most.unwrap_or_default() as u64)
            );
            setting.sheet.sentence(Role::Sentence, &sentence, SIZE, Ink::Strong);
        }
    }
    setting.need(below);
    set_accounts(setting, fed, units);
    setting.under = None;
    setting.sheet.y += BETWEEN_TABLES;
}

fn set_dressings(setting: &mut Setting<'_>, dressings: &[DressingWords], units: Units) {
    let each = format!("each {} of row", stretch_words(units));
    let columns = Columns {
        parts: &[0.17, 0.22, 0.19, 0.13, 0.29],
        titles: &["dressing", "how much of what", "where and when", &each, "in all"],
        ticks: true,
    };
    let about: Vec<String> = dressings.iter().map(|words| about_scoop(&words.pace_scoop)).collect();
    let paces: Vec<String> = dressings.iter().map(pace).collect();
    let scoops: Vec<String> = dressings.iter().map(DressingWords::scoops_words).collect();
    let lines: Vec<_> = (0..dressings.len())
        .filter_map(|k| {
            let words = dressings.get(k)?;
            let mut total = vec![Words::bold(&words.total)];
            if words.problem.is_empty() {
                total.extend([Words::plain(scoops.get(k)?), Words::soft(&words.goes_by)]);
                total.push(Words::plain(&words.changed));
            } else {
                total = vec![Words::plain(&words.problem)];
            }
            let cells = vec![
                vec![Words::bold(&words.name), Words::soft(&words.done)],
                vec![
                    Words::plain(&words.amount),
                    Words::soft(&words.amount_planned),
                    Words::soft(&words.material),
                ],
                vec![Words::plain(&words.place), Words::soft(&words.when)],
                vec![Words::plain(paces.get(k)?), Words::soft(about.get(k)?)],
                total,
            ];
            // Several feedings are ticked one by one, below.
            let tick = if words.times > 1 {
                Tick::None
            } else {
                Tick::of(words.is_done)
            };
            Some((cells, tick))
        })
        .collect();
    setting.table_with(&columns, &lines);
}

fn pace(words: &DressingWords) -> String {
    match (words.pace.as_str(), words.times) {
        ("", _) => String::new(),
        (pace, 0 | 1) => pace.to_owned(),
        (pace, _) => format!("{pace} each time"),
    }
}

fn about_scoop(scoop: &str) -> String {
    match scoop {
        "" => String::new(),
        scoop => format!("about {scoop}"),
    }
}

fn set_accounts(setting: &mut Setting<'_>, fed: &FedBed, units: Units) {
    let columns = Columns {
        parts: &[0.16, 0.10, 0.10, 0.10, 0.10, 0.10, 0.10, 0.24],
        titles: &[
            rate_unit(units),
            "wanted",
            "has",
            "to give",
            "planned",
            "done",
            "ahead",
            "stands",
        ],
        ticks: false,
    };
    let lines: Vec<_> = fed
        .accounts
        .iter()
        .map(|account| {
            let stands = if account.is_off {
                Words::bold(&account.standing)
            } else {
                Words::plain(&account.standing)
            };
            vec![
                vec![Words::plain(account.nutrient.name())],
                vec![Words::plain(&account.wanted)],
                vec![Words::plain(&account.has)],
                vec![Words::plain(&account.to_give)],
                vec![Words::plain(&account.planned)],
                vec![Words::plain(&account.done)],
                vec![Words::plain(&account.ahead)],
                vec![stands],
            ]
        })
        .collect();
    setting.sheet.y += 4.0;
    setting.table(&columns, &lines);
    for credit in &fed.credits {
        let sentence = format!("Has {credit}.");
        setting
            .sheet
            .sentence(Role::Sentence, &sentence, CAUTION_SIZE, Ink::Strong);
    }
    if !fed.lime.is_empty() {
        let sentence = format!("Lime: {}.", fed.lime);
        setting
            .sheet
            .sentence(Role::Sentence, &sentence, CAUTION_SIZE, Ink::Strong);
    }
}

fn set_shopping(setting: &mut Setting<'_>, list: &FeedingList) {
    if list.shopping.is_empty() {
        return;
    }
    setting.need(110.0);
    setting.title("To buy");
    let columns = Columns {
        parts: &[0.28, 0.14, 0.15, 0.18, 0.12, 0.13],
        titles: &["material", "needed", "to buy", "bags", "cost", "left over"],
        ticks: true,
    };
    let done: Vec<String> = list
        .shopping
        .iter()
        .map(|words| match words.done.as_str() {
            "" => String::new(),
            done => format!("{done} done"),
        })
        .collect();
    let at_hand: Vec<String> = list
        .shopping
        .iter()
        .map(|words| match words.at_hand.as_str() {
            "" => String::new(),
            at_hand => format!("{at_hand} at hand"),
        })
        .collect();
    let lines: Vec<_> = list
        .shopping
        .iter()
        .zip(done.iter().zip(&at_hand))
        .map(|(words, (done, at_hand))| {
            let cells = vec![
                vec![Words::bold(&words.name)],
                vec![Words::plain(&words.need), Words::soft(done)],
                vec![Words::bold(&words.to_buy), Words::soft(at_hand)],
                vec![Words::plain(&words.bags)],
                vec![Words::plain(&words.cost)],
                vec![Words::plain(&words.left_over)],
            ];
            let tick = if words.is_to_buy() {
                Tick::of(words.is_done)
            } else {
                Tick::None
            };
            (cells, tick)
        })
        .collect();
    setting.table_with(&columns, &lines);
    if !list.cost.is_empty() {
        let cost = match list.cost_note.as_str() {
            "" => format!("All bags cost {}.", list.cost),
            note => format!("All bags cost {}, {note}.", list.cost),
        };
        setting.need(ONE_SENTENCE + 4.0);
        setting.sheet.y += 4.0;
        setting.sheet.sentence(Role::Sentence, &cost, SIZE, Ink::Strong);
    }
}

fn set_runs(setting: &mut Setting<'_>, runs: &[RunWords]) {
    if runs.is_empty() {
        return;
    }
    setting.need(120.0);
    setting.title("Through the tape");
    let columns = Columns {
        parts: &[0.17, 0.16, 0.18, 0.20, 0.12, 0.17],
        titles: &[
            "zone and dressing",
            "each run",
            "when",
            "stock",
            "at the outlets",
            "how long",
        ],
        ticks: true,
    };
    let strengths: Vec<[String; 3]> = runs.iter().map(run_words).collect();
    let lines: Vec<_> = runs
        .iter()
        .zip(&strengths)
        .flat_map(|(run, [beds, ppm, water])| {
            let cells = vec![
                vec![Words::bold(&run.zone), Words::plain(&run.name), Words::soft(beds)],
                vec![Words::bold(&run.each), Words::soft(&run.material)],
                vec![Words::plain(run.when())],
                vec![
                    Words::plain(&run.tank),
                    Words::plain(&run.stock),
                    Words::soft(&run.dissolves),
                ],
                vec![Words::plain(ppm), Words::soft(water)],
                times(run),
            ];
            let tick = match run.feedings.as_slice() {
                [only] => Tick::of(only.is_done),
                _ => Tick::None,
            };
            let mut lines = vec![(cells, tick)];
            lines.extend(one_by_one(run));
            lines
        })
        .collect();
    setting.table_with(&columns, &lines);
}

/// A line with a box for each of several runs.
fn one_by_one(run: &RunWords) -> impl Iterator<Item = (Vec<Vec<Words<'_>>>, Tick)> {
    run.one_by_one().iter().map(|feeding| {
        let mut cells = vec![
            vec![Words::plain(&feeding.name)],
            vec![Words::plain(&feeding.product)],
            vec![Words::plain(&feeding.day)],
        ];
        cells.extend([Vec::new(), Vec::new(), Vec::new()]);
        (cells, Tick::of(feeding.is_done))
    })
}

fn run_words(run: &RunWords) -> [String; 3] {
    let beds = if run.beds == run.zone {
        String::new()
    } else {
        run.beds.clone()
    };
    let ppm = match run.nitrogen.as_str() {
        "" => String::new(),
        ppm => format!("{ppm} N"),
    };
    [beds, ppm, run.water()]
}

/// How long each part of a run takes, one below the other.
fn times(run: &RunWords) -> Vec<Words<'_>> {
    let mut words = Vec::new();
    if !run.inject.is_empty() {
        for (name, time) in [
            ("inject", &run.inject),
            ("to the last outlet", &run.to_last),
            ("then rinse", &run.rinse),
        ] {
            words.push(Words::plain(format!("{name} {time}")));
        }
    }
    words.push(Words::plain(&run.problem));
    words
}

/// Sets what to watch out for. Gives back the place of the sheet on which that begins.
fn set_cautions(setting: &mut Setting<'_>, list: &FeedingList) -> usize {
    setting.need(80.0);
    let begun_on = setting.done.len();
    setting.title("Mind");
    for caution in &list.cautions {
        let lines =
            |text: &str, size| type_metrics::break_lines(text, setting.sheet.across(), size, false).len() as f64;
        let height = lines(caution.sentence, SIZE) * f64::from(SIZE) * 1.3
            + lines(&caution.source, CAUTION_SIZE) * f64::from(CAUTION_SIZE) * 1.3
            + 4.0;
        setting.need(height);
        setting
            .sheet
            .sentence(Role::Sentence, caution.sentence, SIZE, Ink::Strong);
        setting
            .sheet
            .sentence(Role::Sentence, &caution.source, CAUTION_SIZE, Ink::Soft);
        setting.sheet.y += 4.0;
    }
    begun_on
}
