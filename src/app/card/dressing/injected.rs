//! A dressing through the tape: tank, ratio, times and pipe, and what one run comes to.

use egui::{Id, Ui};

use super::strength;
use crate::agronomy::{Dissolves, InjectorRatio};
use crate::app::card::{Hand, length_line, tape};
use crate::app::day_words;
use crate::app::form;
use crate::app::theme;
use crate::layout::{BedId, DressingId, Injecting, limits::MOST_TIMES};
use crate::plan::feeding::{Feeding, Injection, Strength};
use crate::quantity::{Concentration, Fraction, Units, Volume, count, number, read_number};
use crate::sheets::feeding_list::{DIFFERS, UNEVEN, depth_words, dissolving_words};

/// What it asks for. Gives it back when it was changed.
pub(super) fn fields(ui: &mut Ui, field: Id, injecting: Injecting, units: Units) -> Option<Injecting> {
    let mut changed = injecting;
    let shown = injecting.times.to_string();
    let read = |text: &str| form::read_whole(text, 1, i32::from(MOST_TIMES));
    let times = form::field(ui, field.with("times"), "Times", &shown, read);
    if let Some(times) = times.and_then(|times| u16::try_from(times).ok()) {
        changed.times = times;
    }
    if injecting.times > 1 {
        let shown = injecting.every_days.to_string();
        let days = form::field(ui, field.with("every days"), "Days apart", &shown, read);
        if let Some(days) = days.and_then(|days| u16::try_from(days).ok()) {
            changed.every_days = days;
        }
    }
    let shown = injecting.tank.show(units);
    let read = |text: &str| read_tank(text, units);
    if let Some(tank) = form::field(ui, field.with("tank"), "Stock tank", &shown, read) {
        changed.tank = tank;
    }
    let ways = [("in feed put out", false), ("to water added", true)];
    let chosen = if injecting.to_water {
        "to water added"
    } else {
        "in feed put out"
    };
    let shown = match units {
        Units::Customary => number(injecting.ratio, 2),
        // A comma between thousands can be read two ways there.
        Units::Metric => number(injecting.ratio, 2).replace(',', ""),
    };
    let read = |text: &str| read_ratio(text, units);
    if let Some(ratio) = form::field(ui, field.with("ratio"), "1 of stock", &shown, read) {
        changed.ratio = ratio.parts;
        changed.to_water = ratio.to_water.unwrap_or(injecting.to_water);
    }
    if let Some(to_water) = form::choices(ui, field.with("to water"), "Counted", chosen, &ways) {
        changed.to_water = to_water;
    }
    let parts = number(injecting.ratio, 2);
    form::follows(
        ui,
        if injecting.to_water {
            format!("1 to {parts}: each part of stock is added to {parts} of water")
        } else {
            format!("1 in {parts}: of {parts} parts that come out, one is stock")
        },
    );
    if let Some(supply) = length_line::long(ui, field.with("supply"), "Supply pipe", injecting.supply, units) {
        changed.supply = supply;
    }
    if let Some(bore) = tape::over_zero(ui, field.with("bore"), "Its width", injecting.supply_bore, units) {
        changed.supply_bore = bore;
    }
    form::follows(
        ui,
        "from the injector to the bed, and inside; the tape's own is on the bed's card",
    );
    (changed != injecting).then_some(changed)
}

fn read_tank(text: &str, units: Units) -> Result<Volume, String> {
    let tank = Volume::parse(text, units).map_err(|error| error.to_string())?;
    if tank > Volume::ZERO && tank <= Volume::litres(1e6) {
        Ok(tank)
    } else {
        Err(format!("“{text}” does not do; write what the tank holds, over zero"))
    }
}

/// A ratio as it is typed.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Ratio {
    /// The parts that one of stock goes to.
    parts: f64,
    /// Whether they are water that it is added to; not said where only a number is typed.
    to_water: Option<bool>,
}

/// Reads a ratio: `100`; `1 in 100`, `1:100` and `1 %`, of what comes out; `1 to 100`, of the water it is added to.
fn read_ratio(text: &str, units: Units) -> Result<Ratio, String> {
    if text.trim_end().ends_with('%') {
        return read_part(text);
    }
    let starts = [
        ("1:", false),
        ("1 :", false),
        ("1 in ", false),
        ("1 part in ", false),
        ("1 to ", true),
        ("1 part to ", true),
    ];
    let lower = text.trim().to_lowercase();
    let said = starts
        .into_iter()
        .find_map(|(start, to_water)| Some((lower.strip_prefix(start)?, to_water)));
    let (parts, to_water) = said.map_or((lower.as_str(), None), |(parts, to_water)| (parts, Some(to_water)));
    let parts = parts.trim();
    read_number(parts.strip_suffix("of water").unwrap_or(parts), units)
        .filter(|parts| (1.0..=MOST_PARTS).contains(parts))
        .map(|parts| Ratio { parts, to_water })
        .ok_or_else(|| format!("“{text}” is not understood; write 100, 1 in 100, 1 %, or 1 to 100 of water"))
}

/// Reads the part of the feed that is stock, as injectors with a dial have it.
fn read_part(text: &str) -> Result<Ratio, String> {
    let part = Fraction::parse_percent(text).map_err(|error| error.to_string())?;
    match InjectorRatio::of_feed(part) {
        Ok(InjectorRatio::OneIn(parts)) if parts <= MOST_PARTS => Ok(Ratio {
            parts,
            to_water: Some(false),
        }),
        _ => Err(format!("“{text}” does not do; injectors put in 0.1 to 10 %")),
    }
}

/// So thin a stock is none.
const MOST_PARTS: f64 = 100_000.0;

/// What one run comes to.
pub(super) fn run(ui: &mut Ui, hand: &Hand<'_>, of: (BedId, DressingId), field: Id) {
    let plan = hand.desk.plan();
    let layout = hand.desk.layout();
    let units = layout.units;
    let found = plan.injections.iter().find(|injection| injection.of.contains(&of));
    let Some(injection) = found else { return };
    form::section(ui, "Each run");
    let run = match &injection.run {
        Ok(run) => run,
        Err(problem) => {
            form::wrong(ui, problem);
            return;
        }
    };
    let strong = theme::bold(13.0);
    let words = format!(
        "{} in {} of water",
        injection.product.show_product(units),
        injection.how.tank.show(units)
    );
    ui.label(egui::RichText::new(words).font(strong));
    if injection.of.len() > 1 {
        form::follows(ui, format!("for all {} beds of {}", injection.of.len(), injection.zone));
    }
    if injection.differs {
        form::wrong(ui, DIFFERS);
    }
    if injection.is_uneven {
        form::follows(ui, UNEVEN);
    }
    lines(ui, injection, run, units);
    strength::show(ui, hand, injection, field);
    days(ui, injection, layout.season);
}

fn lines(ui: &mut Ui, injection: &Injection, run: &Strength, units: Units) {
    dissolves(ui, injection, run, units);
    let mut say = |words: String| form::follows(ui, words);
    say(format!("stock of {}", run.stock.show_stock(units)));
    if run.nitrogen > Concentration::ZERO {
        say(format!("{} of nitrogen at the outlets", run.nitrogen.show(units)));
    }
    say(format!(
        "{} to inject, at {} through all tapes",
        run.inject.show(),
        run.flow.show(units)
    ));
    say(format!("{} from the injector to the last outlet", run.advance.show()));
    say(format!("then {} of plain water to rinse", run.rinse.show()));
    say(format!(
        "{} of feed, {} deep over the rows' ground",
        much_water(run.feed, units),
        depth_words(run.depth, units)
    ));
}

/// Whether the tank takes it.
fn dissolves(ui: &mut Ui, injection: &Injection, run: &Strength, units: Units) {
    let words = dissolving_words(run.dissolving, injection.how.tank, units);
    match run.dissolving {
        Some((_, Dissolves::Barely | Dissolves::Not)) => form::wrong(ui, &words),
        Some((_, Dissolves::Well)) | None => form::follows(ui, words),
    }
}

/// The days of the runs still ahead, as far as they fit.
fn days(ui: &mut Ui, injection: &Injection, season: i16) {
    let is_ahead = |feeding: &&Feeding| !feeding.is_done;
    let days: Vec<String> = injection
        .feedings
        .iter()
        .filter(is_ahead)
        .filter_map(|feeding| Some(day_words::day(feeding.day?, season)))
        .collect();
    if days.is_empty() {
        if injection.feedings.iter().any(|feeding| !feeding.is_done) {
            form::follows(
                ui,
                "type a day under When, or the planting day on the bed's card, and the days of all runs stand here",
            );
        }
        return;
    }
    let more = days.len().saturating_sub(MOST_DAYS_SHOWN);
    let shown = days.get(..MOST_DAYS_SHOWN).unwrap_or(&days).join(", ");
    let more = if more > 0 {
        format!(" and {} more", count(more as u64))
    } else {
        String::new()
    };
    let ahead = if injection.feedings.iter().any(|feeding| feeding.is_done) {
        "still ahead on"
    } else {
        "on"
    };
    form::follows(ui, format!("{ahead} {shown}{more}"));
}

/// More days than fit on the card.
const MOST_DAYS_SHOWN: usize = 20;

/// A volume of feed, without the decimals of a tank.
fn much_water(volume: Volume, units: Units) -> String {
    match units {
        Units::Customary if volume.to_gallons() >= 20.0 => format!("{} gal", number(volume.to_gallons(), 0)),
        Units::Metric if volume.to_litres() >= 20.0 => format!("{} l", number(volume.to_litres(), 0)),
        _ => volume.show(units),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_in_so_many_counts_the_feed_and_one_to_so_many_the_water() {
        for (typed, parts, to_water) in [
            ("100", 100.0, None),
            ("1,000", 1000.0, None),
            ("1:100", 100.0, Some(false)),
            ("1 in 100", 100.0, Some(false)),
            ("1 to 100", 100.0, Some(true)),
            ("1 to 100 of water", 100.0, Some(true)),
            ("1 Part To 64", 64.0, Some(true)),
            ("1 %", 100.0, Some(false)),
            ("0.8%", 125.0, Some(false)),
        ] {
            assert_eq!(
                read_ratio(typed, Units::Customary),
                Ok(Ratio { parts, to_water }),
                "{typed}"
            );
        }
        for typed in ["", "0", "1 of 100", "1 to", "many", "0 %", "-1 %", "0.0001 %"] {
            assert!(read_ratio(typed, Units::Customary).is_err(), "{typed}");
        }
        let metric = |text| read_ratio(text, Units::Metric).map(|ratio| ratio.parts);
        assert_eq!(metric("1 in 62,5"), Ok(62.5));
        assert!(metric("1,250").is_err(), "read two ways");
    }
}
