//! The axis of the season: days of the calendar where the planting day and the days to harvest are known, else stages.

use egui_plot::GridMark;
use jiff::ToSpan as _;
use jiff::civil::Date;

use crate::layout::{Bed, When};
use crate::plan::feeding::BedFeeding;

/// Where something falls, as a part of the season, and what it is called.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Tick {
    pub(super) at: f64,
    pub(super) words: String,
}

/// Ticks nearer to each other than this part of the season would run into each other.
const LEAST_APART: f64 = 0.2;

/// Names of stages with more letters than this do not fit below the axis.
const LONGEST: usize = 34;

/// The ticks of a bed's season.
pub(super) fn ticks(bed: &Bed, feeding: &BedFeeding) -> Vec<Tick> {
    match (feeding.planted, feeding.days_to_harvest) {
        (Some(planted), Some(days)) if days > 0 => dated(planted, days),
        _ => stages(bed, feeding),
    }
}

/// The planting day, days between, and the day of harvest.
fn dated(planted: Date, days: u16) -> Vec<Tick> {
    // Six spaces at most, in whole weeks.
    let weeks = (f64::from(days) / 6.0 / 7.0).ceil().max(1.0) as i64;
    let step = weeks * 7;
    let show = |day: Date| day.strftime("%-d %b").to_string();
    let mut ticks = Vec::new();
    let mut after = 0;
    while after < i64::from(days) {
        let at = after as f64 / f64::from(days);
        if let Ok(day) = planted.checked_add(after.days()) {
            let words = if after == 0 {
                format!("planted {}", show(day))
            } else {
                show(day)
            };
            ticks.push(Tick { at, words });
        }
        after += step;
    }
    if let Ok(day) = planted.checked_add(i64::from(days).days()) {
        let words = format!("harvest about {}", show(day));
        last(&mut ticks, words, 0.2);
    }
    ticks
}

/// Planting, the stages at which the bed is fed, and harvest.
fn stages(bed: &Bed, feeding: &BedFeeding) -> Vec<Tick> {
    let mut ticks = vec![Tick {
        at: 0.0,
        words: "planting".to_owned(),
    }];
    for step in &feeding.steps {
        // A dressing given several times is named where it begins.
        let first = bed.dressing(step.dressing).filter(|_| step.feeding == 0);
        let when = first.map(|dressing| &dressing.when);
        let words = match when {
            Some(When::Stage(_) | When::Words(_)) => when.map(When::words).unwrap_or_default(),
            _ => continue,
        };
        let far = ticks.last().is_none_or(|last| step.at - last.at >= LEAST_APART);
        if far && words.chars().count() <= LONGEST {
            ticks.push(Tick { at: step.at, words });
        }
    }
    last(&mut ticks, "harvest".to_owned(), LEAST_APART);
    ticks
}

/// Adds the end of the season, and drops a tick that is in its way.
fn last(ticks: &mut Vec<Tick>, words: String, apart: f64) {
    while ticks.last().is_some_and(|tick| tick.at > 0.0 && 1.0 - tick.at < apart) {
        ticks.pop();
    }
    ticks.push(Tick { at: 1.0, words });
}

/// The marks of the plot's grid.
pub(super) fn marks(ticks: &[Tick]) -> Vec<GridMark> {
    let mark = |tick: &Tick| GridMark {
        value: tick.at,
        // As wide as a label needs, so that the plot shows every one in full ink.
        step_size: 1.0,
    };
    ticks.iter().map(mark).collect()
}

/// The words of a mark.
pub(super) fn words_at(ticks: &[Tick], at: f64) -> String {
    let tick = ticks.iter().find(|tick| (tick.at - at).abs() < 1e-6);
    tick.map_or_else(String::new, |tick| tick.words.clone())
}

/// A place on the axis in words: "about 3 June", or "a third of the way to harvest" in per cent.
pub(super) fn place_words(feeding: &BedFeeding, at: f64) -> String {
    let at = at.clamp(0.0, 1.0);
    if let Some(day) = feeding.day_at(at) {
        return format!("about {}", day.strftime("%-d %B"));
    }
    match at {
        at if at < 0.005 => "at planting".to_owned(),
        at if at > 0.995 => "at harvest".to_owned(),
        at => format!("{:.0} % of the way to harvest", at * 100.0),
    }
}
