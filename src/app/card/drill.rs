//! Setting the drill: how thickly seed is to run, what to count when trying it, and how far off it is.

use egui::{Id, RichText, Ui};

use super::{Hand, length_line, planting};
use crate::agronomy::{DrillRate, rolled};
use crate::app::form;
use crate::app::seed_words::{plain, read_positive};
use crate::app::theme;
use crate::layout::{Bed, Sowing};
use crate::quantity::{Length, Units};

/// How the drill is tried. It is the grower's drill and not the bed's, so it stays from bed to bed.
#[derive(Clone, Copy, Debug)]
pub(crate) struct DrillTrial {
    way: Way,
    distance: Length,
    wheel: Length,
    turns: f64,
    counted: Option<f64>,
}

#[derive(Clone, Copy, Debug, PartialEq)]
enum Way {
    Distance,
    Turns,
}

impl Default for DrillTrial {
    /// Over ten feet, or ten turns of a wheel of three feet round.
    ///
    /// # Source
    /// Common practice, no source: long enough to even out single seeds, short enough to count.
    fn default() -> Self {
        Self {
            way: Way::Distance,
            distance: Length::feet(10.0),
            wheel: Length::feet(3.0),
            turns: 10.0,
            counted: None,
        }
    }
}

/// How thickly seed is to run in one line of the bed; nothing where no drill runs.
pub(super) fn aim(hand: &Hand<'_>, bed: &Bed) -> Option<DrillRate> {
    let stand = planting::stand(hand, bed)?;
    if !matches!(stand.sowing, Sowing::Seed { .. } | Sowing::Dropped { .. }) {
        return None;
    }
    DrillRate::for_stand(stand.in_row, stand.seeds_per_place()?, stand.comes_up()).ok()
}

pub(super) fn show(ui: &mut Ui, hand: &mut Hand<'_>, aim: DrillRate, field: Id) {
    let units = hand.desk.layout().units;
    let field = field.with("drill");
    let (unit, words) = match units {
        Units::Customary => (Length::feet(1.0), "a foot"),
        Units::Metric => (Length::metres(1.0), "a metre"),
    };
    if let Ok(seeds) = aim.seeds_on(unit) {
        let words = format!("Aim for {} seeds {words}", one_decimal(seeds));
        ui.label(RichText::new(words).font(theme::bold(14.0)));
    }
    if let Some(between) = aim.between_seeds() {
        form::follows(
            ui,
            format!(
                "in each line, one every {} or so; what does not come up is counted in",
                between.show_short(units)
            ),
        );
    }
    let trial = &mut *hand.drill;
    let ways = [("over a distance", Way::Distance), ("by wheel turns", Way::Turns)];
    let chosen = ways
        .iter()
        .find(|(_, way)| *way == trial.way)
        .map_or("", |(name, _)| *name);
    if let Some(way) = form::choices(ui, field.with("way"), "Try it", chosen, &ways) {
        trial.way = way;
        trial.counted = None;
    }
    let ground = match trial.way {
        Way::Distance => {
            let read = |text: &str| positive(Length::parse(text, units).map_err(|error| error.to_string())?);
            let shown = trial.distance.show(units);
            if let Some(distance) = form::field(ui, field.with("distance"), "Distance", &shown, read) {
                trial.distance = distance;
                trial.counted = None;
            }
            trial.distance
        }
        Way::Turns => {
            let shown = trial.wheel.show(units);
            let read = |text: &str| positive(length_line::read_short(text, &shown, units)?);
            if let Some(wheel) = form::field(ui, field.with("wheel"), "Wheel round", &shown, read) {
                trial.wheel = wheel;
                trial.counted = None;
            }
            form::follows(ui, "its circumference; chalk one turn on the ground and measure it");
            let read = |text: &str| read_positive(text, "10");
            if let Some(turns) = form::field(ui, field.with("turns"), "Turns", &plain(trial.turns), read) {
                trial.turns = turns;
                trial.counted = None;
            }
            match rolled(trial.wheel, trial.turns) {
                Ok(ground) => {
                    form::follows(ui, format!("rolls {}", ground.show(units)));
                    ground
                }
                Err(error) => return form::wrong(ui, &error.to_string()),
            }
        }
    };
    let expected = match aim.seeds_on(ground) {
        Ok(seeds) => seeds,
        Err(error) => return form::wrong(ui, &error.to_string()),
    };
    let words = format!("Count {} seeds from one spout", whole_seeds(expected));
    ui.label(RichText::new(words).font(theme::bold(14.0)));
    let shown = trial.counted.map_or_else(String::new, plain);
    let read = |text: &str| match text {
        "" => Ok(None),
        text => read_positive(text, "96").map(Some),
    };
    if let Some(counted) = form::field(ui, field.with("counted"), "Counted", &shown, read) {
        trial.counted = counted;
    }
    let Some(counted) = trial.counted else {
        return form::follows(ui, "what really fell in the trial");
    };
    match DrillRate::counted(counted, ground).and_then(|fell| aim.correction(fell)) {
        Ok(correction) => form::follows(ui, correction_words(correction)),
        Err(error) => form::wrong(ui, &error.to_string()),
    }
}

fn correction_words(correction: f64) -> String {
    let percent = (correction - 1.0) * 100.0;
    if percent.abs() < 5.0 {
        return "as near as a drill gets; leave it".to_owned();
    }
    let way = if percent > 0.0 { "too thin" } else { "too thick" };
    format!(
        "{way}: {} times as much has to run, {:.0} % {}; set it, and count again",
        plain(correction),
        percent.abs(),
        if percent > 0.0 { "more" } else { "less" }
    )
}

fn positive(length: Length) -> Result<Length, String> {
    if length <= Length::ZERO {
        return Err("This must be longer than nothing".to_owned());
    }
    Ok(length)
}

/// To a tenth below a hundred, whole above.
fn one_decimal(seeds: f64) -> String {
    if seeds < 100.0 {
        plain((seeds * 10.0).round() / 10.0)
    } else {
        crate::quantity::count(seeds.round() as u64)
    }
}

/// To a whole seed, as they are counted; few of them to a tenth.
fn whole_seeds(seeds: f64) -> String {
    if seeds < 20.0 {
        one_decimal(seeds)
    } else {
        crate::quantity::count(seeds.round() as u64)
    }
}
