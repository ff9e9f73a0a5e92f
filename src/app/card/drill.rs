//! Setting the drill: how thickly seed is to run, what to count when trying it, and how far off it is.

use std::sync::Arc;

use egui::{Id, RichText, Ui};

use super::{Hand, length_line, lot, outcome, planting};
use crate::agronomy::{DrillRate, comes_up, rolled};
use crate::app::form;
use crate::app::seed_words::{plain, read_positive, whole};
use crate::app::settings::Drill;
use crate::app::theme;
use crate::layout::{Bed, BedId, LotId, SeedLot, Sowing, same_cultivar};
use crate::plan::{GerminationFrom, Stand, Things};
use crate::quantity::{Fraction, Length, Units};

/// A trial of the drill: how it is tried, and what fell.
#[derive(Clone, Copy, Debug)]
pub(crate) struct DrillTrial {
    /// How it is tried, from bed to bed and from day to day.
    pub(crate) drill: Drill,
    /// Seeds counted, and for which bed: another bed has another seed.
    counted: Option<(BedId, f64)>,
    /// The lot that was put in the hopper, and for which bed; no lot is seed to buy.
    hopper: Option<(BedId, Option<LotId>)>,
}

impl DrillTrial {
    /// A trial that is still to be made.
    pub(crate) const fn of(drill: Drill) -> Self {
        Self {
            drill,
            counted: None,
            hopper: None,
        }
    }
}

/// Whether a drill sows the bed.
pub(super) fn runs(hand: &Hand<'_>, bed: &Bed) -> bool {
    aim(hand, bed, None).is_some()
}

/// How thickly seed is to run in one line of the bed: seed of the lot in the hopper, or seed to buy. Nothing where no
/// drill runs.
fn aim(hand: &Hand<'_>, bed: &Bed, lot: Option<&SeedLot>) -> Option<DrillRate> {
    let stand = planting::stand(hand, bed)?;
    if !matches!(stand.sowing, Sowing::Seed { .. } | Sowing::Dropped { .. }) {
        return None;
    }
    DrillRate::for_stand(stand.in_row, stand.seeds_per_place()?, up_of(&stand, lot)).ok()
}

/// Asks which seed is in the hopper, where there is a lot of the cultivar on the shelf: by itself the lot that is used up
/// first.
fn hopper<'a>(ui: &mut Ui, hand: &mut Hand<'a>, bed: &Bed, field: Id) -> Option<&'a SeedLot> {
    let layout = hand.desk.layout();
    let planting = bed.planting.as_ref()?;
    let is_of_bed = |lot: &SeedLot| {
        lot.crop == planting.crop
            && same_cultivar(&lot.cultivar, &planting.cultivar)
            && lot::things_of(hand, lot) == Things::Seeds
            && lot.germination.found().is_none_or(|up| up > Fraction::ZERO)
            && !lot.amount.is_nothing()
    };
    let lots: Vec<&SeedLot> = layout
        .lots
        .iter()
        .map(Arc::as_ref)
        .filter(|lot| is_of_bed(lot))
        .collect();
    if lots.is_empty() {
        return None;
    }
    let drawn = hand
        .desk
        .plan()
        .order
        .line_of(bed.id)
        .and_then(|line| line.drawn.first());
    let chosen = match hand.drill.hopper {
        Some((of, lot)) if of == bed.id => lot,
        _ => drawn.map(|drawn| drawn.lot),
    };
    let chosen = lots.iter().copied().find(|lot| Some(lot.id) == chosen);
    let bought = "seed to buy";
    let names: Vec<(String, Option<LotId>)> = lots
        .iter()
        .map(|lot| (lot::short_note(hand, lot), Some(lot.id)))
        .collect();
    let mut all: Vec<(&str, Option<LotId>)> = names.iter().map(|(name, lot)| (name.as_str(), *lot)).collect();
    all.push((bought, None));
    let shown = chosen.map_or_else(|| bought.to_owned(), |lot| lot::short_note(hand, lot));
    if let Some(lot) = form::choices(ui, field.with("hopper"), "In the hopper", &shown, &all) {
        hand.drill.hopper = Some((bed.id, lot));
        hand.drill.counted = None;
    }
    chosen
}

pub(super) fn show(ui: &mut Ui, hand: &mut Hand<'_>, bed: &Bed, field: Id) {
    let units = hand.desk.layout().units;
    let field = field.with("drill");
    let lot = hopper(ui, hand, bed, field);
    let Some(aim) = aim(hand, bed, lot) else { return };
    let spread = spread_words(hand, bed, lot, aim);
    let is_known = planting::stand(hand, bed).is_some_and(|stand| up_is_known(&stand, lot));
    let bed = bed.id;
    let (unit, words) = match units {
        Units::Customary => (Length::feet(1.0), "a foot"),
        Units::Metric => (Length::metres(1.0), "a metre"),
    };
    if let Ok(seeds) = aim.seeds_on(unit) {
        let words = format!("Aim for {} seeds {words}", one_decimal(seeds, units));
        ui.label(RichText::new(words).font(theme::bold(14.0)));
    }
    match spread {
        Some(words) if is_known => form::follows(
            ui,
            format!("in each line, {words}; what does not come up is counted in"),
        ),
        Some(words) => form::wrong(
            ui,
            &format!(
                "in each line, {words}, if every seed came up; how much does is not known, so give the germination first"
            ),
        ),
        None => {}
    }
    let trial = &mut *hand.drill;
    let before = trial.drill;
    let ground = ground(ui, &mut trial.drill, field, units);
    if trial.drill != before {
        trial.counted = None;
    }
    let ground = match ground {
        Ok(ground) => ground,
        Err(sentence) => return form::wrong(ui, &sentence),
    };
    let expected = match aim.seeds_on(ground) {
        Ok(seeds) => seeds,
        Err(error) => return form::wrong(ui, &error.to_string()),
    };
    let words = format!("Count {} seeds from one spout", whole_seeds(expected, units));
    ui.label(RichText::new(words).font(theme::bold(14.0)));
    let counted = trial.counted.filter(|(of, _)| *of == bed).map(|(_, seeds)| seeds);
    let shown = counted.map_or_else(String::new, plain);
    let read = |text: &str| match text {
        "" => Ok(None),
        text => read_positive(text, "96", units).map(Some),
    };
    if let Some(counted) = form::field(ui, field.with("counted"), "Counted", &shown, read) {
        trial.counted = counted.map(|seeds| (bed, seeds));
    }
    let Some(counted) = counted else {
        return form::follows(ui, "what really fell in the trial");
    };
    match DrillRate::counted(counted, ground).and_then(|fell| aim.correction(fell)) {
        Ok(correction) => form::follows(ui, correction_words(correction)),
        Err(error) => form::wrong(ui, &error.to_string()),
    }
}

/// How seed lies in a line: one after another where it runs, some in each place where it is dropped.
fn spread_words(hand: &Hand<'_>, bed: &Bed, lot: Option<&SeedLot>, aim: DrillRate) -> Option<String> {
    let units = hand.desk.layout().units;
    let stand = planting::stand(hand, bed)?;
    if matches!(stand.sowing, Sowing::Dropped { .. }) {
        let each = outcome::each_place(stand.seeds_per_place()?, up_of(&stand, lot))?;
        let in_row = stand.in_row.show_short(units);
        return Some(format!(
            "{} in one place, a place every {in_row}",
            outcome::each_words(each)
        ));
    }
    let between = aim.between_seeds()?;
    Some(format!("one every {} or so", between.show_short(units)))
}

/// The part of the seed in the hopper that comes up in the field.
fn up_of(stand: &Stand, lot: Option<&SeedLot>) -> Fraction {
    let germination = lot.and_then(|lot| lot.germination.found());
    comes_up(germination.unwrap_or(stand.germination), stand.field_emergence)
}

/// Whether anybody knows how much of the seed in the hopper comes up.
fn up_is_known(stand: &Stand, lot: Option<&SeedLot>) -> bool {
    let of_lot = lot.and_then(|lot| lot.germination.found());
    of_lot.is_some() || stand.germination_from != GerminationFrom::NotKnown
}

/// How the drill is tried, and the ground that one of its spouts sows in that.
fn ground(ui: &mut Ui, drill: &mut Drill, field: Id, units: Units) -> Result<Length, String> {
    let ways = [("over a distance", false), ("by wheel turns", true)];
    let chosen = if drill.by_turns {
        "by wheel turns"
    } else {
        "over a distance"
    };
    if let Some(by_turns) = form::choices(ui, field.with("way"), "Try it", chosen, &ways) {
        drill.by_turns = by_turns;
    }
    if !drill.by_turns {
        let distance = Length::metres(drill.distance_m);
        let read = |text: &str| positive(Length::parse(text, units).map_err(|error| error.to_string())?);
        if let Some(typed) = form::field(ui, field.with("distance"), "Distance", &distance.show(units), read) {
            drill.distance_m = typed.to_metres();
        }
        return Ok(distance);
    }
    let wheel = Length::metres(drill.wheel_m);
    let shown = wheel.show(units);
    let read = |text: &str| positive(length_line::read_short(text, &shown, units)?);
    if let Some(typed) = form::field(ui, field.with("wheel"), "Wheel round", &shown, read) {
        drill.wheel_m = typed.to_metres();
    }
    form::follows(ui, "its circumference; chalk one turn on the ground and measure it");
    let read = |text: &str| read_positive(text, "10", units);
    if let Some(turns) = form::field(ui, field.with("turns"), "Turns", &plain(drill.turns), read) {
        drill.turns = turns;
    }
    let ground = rolled(wheel, drill.turns).map_err(|error| error.to_string())?;
    form::follows(ui, format!("rolls {}", ground.show(units)));
    Ok(ground)
}

fn correction_words(correction: f64) -> String {
    let percent = (correction - 1.0) * 100.0;
    if percent.abs() < 5.0 {
        return "as near as a drill gets; leave it".to_owned();
    }
    let way = if percent > 0.0 { "too thin" } else { "too thick" };
    // Over 200 %, percent say less than how many times it is.
    let in_percent = match percent {
        more if more > 200.0 => String::new(),
        more if more > 0.0 => format!(", {more:.0} % more"),
        less => format!(", {:.0} % less", less.abs()),
    };
    format!(
        "{way}: {} times as much has to run{in_percent}; set it, and count again",
        plain(correction)
    )
}

fn positive(length: Length) -> Result<Length, String> {
    if length <= Length::ZERO {
        return Err("This must be longer than nothing".to_owned());
    }
    Ok(length)
}

/// To a tenth below a hundred, whole above.
fn one_decimal(seeds: f64, units: Units) -> String {
    if seeds < 100.0 {
        plain((seeds * 10.0).round() / 10.0)
    } else {
        whole(seeds.round() as u64, units)
    }
}

/// To a whole seed, as they are counted; few of them to a tenth.
fn whole_seeds(seeds: f64, units: Units) -> String {
    if seeds < 20.0 {
        one_decimal(seeds, units)
    } else {
        whole(seeds.round() as u64, units)
    }
}
