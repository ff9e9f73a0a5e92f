//! Water and what is dissolved in it: `150 ppm`, `22 oz/100 gal`, `0.45 gpm/100 ft`, `6 h 10 min`.

use super::error::{ParseProblem, QuantityKind, Result};
use super::rate::{per, rate};
use super::sum::{Reader, parse, within};
use super::unit::{DissolvedUnit, LengthUnit, TimeUnit, Unit, VolumeUnit};
use crate::quantity::{Concentration, Flow, FlowPerLength, Span, Units};

/// Heavier than any solution: ten tonnes on a cubic metre.
const MOST_KILOGRAMS_PER_CUBIC_METRE: f64 = 1e4;
/// More than any farm's well: a thousand cubic metres a second.
const MOST_CUBIC_METRES_PER_SECOND: f64 = 1e3;
/// More than a burst pipe: a cubic metre a second from each metre.
const MOST_SQUARE_METRES_PER_SECOND: f64 = 1.0;
/// A hundred years.
const MOST_SECONDS: f64 = 3.2e9;

impl Concentration {
    /// Reads how strong a solution is: `150 ppm`, `150 mg/L`, `2 lb/gal`, `108 lb/100 gal`, `22 oz/100 gal`,
    /// `133 g/L`. The unit must be there: a feed in ppm and a stock in pounds are a thousandfold apart. `units` only
    /// settles how a comma is read.
    ///
    /// # Errors
    /// When a unit is missing, or a part is not understood, can be read two ways, or is absurdly large.
    pub fn parse(text: &str, units: Units) -> Result<Self> {
        let kind = QuantityKind::Concentration;
        let mut reader = Reader::new(text, kind, units)?;
        let number = reader.number()?;
        let parts = reader.take_word(&["ppm"])
            || (reader.take_word(&["parts"]) && reader.take_word(&["per"]) && reader.take_word(&["million"]));
        if parts && reader.done() {
            let strength = Self::parts_per_million(number);
            within(
                strength.to_kilograms_per_cubic_metre(),
                MOST_KILOGRAMS_PER_CUBIC_METRE,
                &reader,
            )?;
            return Ok(strength);
        }
        rate::<DissolvedUnit, VolumeUnit>(text, kind, units, MOST_KILOGRAMS_PER_CUBIC_METRE)
            .map(Self::kilograms_per_cubic_metre)
    }
}

impl Flow {
    /// Reads how fast water runs: `1.35 gpm`, `5 gal/min`, `80 gph`, `300 l/h`, `5 l/min`. The unit must be there.
    /// `units` only settles how a comma is read.
    ///
    /// # Errors
    /// When a unit is missing, or a part is not understood, can be read two ways, or is absurdly large.
    pub fn parse(text: &str, units: Units) -> Result<Self> {
        let mut reader = Reader::new(text, QuantityKind::Flow, units)?;
        let flow = flow(&mut reader)?;
        if !reader.done() {
            return Err(reader.not_understood());
        }
        within(flow, MOST_CUBIC_METRES_PER_SECOND, &reader)?;
        Ok(Self::cubic_metres_per_second(flow))
    }
}

impl FlowPerLength {
    /// Reads how fast water leaves tape: `0.45 gpm/100 ft`, `0.45 gpm per 100 ft`, `27 gph/100 ft`, `3.3 l/h per m`,
    /// `3.3 l/h/m`. Both units must be there. `units` only settles how a comma is read.
    ///
    /// # Errors
    /// When a unit is missing, or a part is not understood, can be read two ways, or is absurdly large.
    pub fn parse(text: &str, units: Units) -> Result<Self> {
        let mut reader = Reader::new(text, QuantityKind::FlowPerLength, units)?;
        let flow = flow(&mut reader)?;
        let from = per::<LengthUnit>(&mut reader)?;
        let rate = flow / from;
        within(rate, MOST_SQUARE_METRES_PER_SECOND, &reader)?;
        Ok(Self::square_metres_per_second(rate))
    }
}

impl Span {
    /// Reads how long something takes: `6 h 10 min`, `45 min`, `1.5 hours`, `40 s`. The unit must be there. `units`
    /// only settles how a comma is read.
    ///
    /// # Errors
    /// When the unit is missing, or a part is not understood, can be read two ways, or is absurdly large.
    pub fn parse(text: &str, units: Units) -> Result<Self> {
        parse::<TimeUnit>(text, QuantityKind::Span, units, None, MOST_SECONDS).map(Self::seconds)
    }
}

/// A flow in SI: one word for both units, or a volume over a time.
fn flow(reader: &mut Reader<'_>) -> Result<f64> {
    let start = reader.mark();
    let number = reader.number()?;
    for (words, flow) in [
        (&["gpm"], Flow::gallons_per_minute(number)),
        (&["gph"], Flow::gallons_per_minute(number / 60.0)),
        (&["lph"], Flow::litres_per_hour(number)),
        (&["lpm"], Flow::litres_per_hour(number * 60.0)),
    ] {
        if reader.take_word(words) {
            return Ok(flow.to_cubic_metres_per_second());
        }
    }
    reader.back_to(start);
    let volume = reader.sum::<VolumeUnit>(None)?;
    if !reader.take_per() {
        return Err(reader.about_all(ParseProblem::UnitMissing));
    }
    let Some(time) = reader.unit::<TimeUnit>() else {
        return Err(reader.not_understood());
    };
    Ok(volume / time.size())
}
