//! Soluble fertilizer through the tape: how strong, in how much water, how long.
//!
//! Product from a strength of nutrient is [`super::product_for`]: 250 ppm of nitrogen from a 15 % material are 250 ÷ 0.15
//! ppm of it.

use std::f64::consts::PI;

use super::unworkable::{Unworkable, not_negative, positive, positive_length};
use crate::quantity::{Area, Concentration, Flow, Fraction, Length, Mass, Span, Volume};

/// How much an injector thins the stock. "1:100" is said for both; at 1:100 they are 1 % apart, at 1:16 6 %.
///
/// # Source
/// University of Massachusetts fact sheet, Ratios and Concentrations: one gallon of concentrate makes 100 gallons of final
/// solution. Other pages add one gallon to 100 gallons of water.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum InjectorRatio {
    /// One part of stock in so many parts of feed.
    OneIn(f64),
    /// One part of stock added to so many parts of water.
    OneTo(f64),
}

impl InjectorRatio {
    /// From the part of the feed that is stock: 1 % is one in a hundred.
    ///
    /// # Errors
    /// When it is nothing.
    pub fn of_feed(part: Fraction) -> Result<Self, Unworkable> {
        Ok(Self::OneIn(1.0 / positive(part.get(), "the injector's ratio")?))
    }

    /// Parts of feed for each part of stock.
    fn parts(self) -> Result<f64, Unworkable> {
        let parts = match self {
            Self::OneIn(parts) => parts,
            Self::OneTo(water) => not_negative(water, "the injector's ratio")? + 1.0,
        };
        if parts >= 1.0 {
            positive(parts, "the injector's ratio")
        } else {
            Err(Unworkable::NotPositive("the injector's ratio"))
        }
    }

    /// The stock that makes a feed of this strength.
    ///
    /// # Errors
    /// When the ratio is none: one in less than one.
    pub fn stock_for(self, feed: Concentration) -> Result<Concentration, Unworkable> {
        Ok(feed * self.parts()?)
    }

    /// The feed that a stock becomes, as it leaves the emitters.
    ///
    /// # Errors
    /// As for [`InjectorRatio::stock_for`].
    pub fn at_emitters(self, stock: Concentration) -> Result<Concentration, Unworkable> {
        Ok(stock / self.parts()?)
    }

    /// The feed that a volume of stock makes.
    ///
    /// # Errors
    /// As for [`InjectorRatio::stock_for`].
    pub fn feed_from(self, stock: Volume) -> Result<Volume, Unworkable> {
        Ok(stock * self.parts()?)
    }

    /// How long a tank of stock takes to go out: feed ÷ flow.
    ///
    /// # Errors
    /// When the ratio is none, or no water runs.
    ///
    /// # Source
    /// Common practice, no source: arithmetic.
    pub fn time_for(self, stock: Volume, flow: Flow) -> Result<Span, Unworkable> {
        Ok(self.feed_from(stock)? / running(flow)?)
    }
}

fn running(flow: Flow) -> Result<Flow, Unworkable> {
    positive(flow.to_cubic_metres_per_second(), "the flow").map(|_| flow)
}

/// Whether a weight dissolves in a volume of water.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Dissolves {
    /// With room to spare.
    Well,
    /// Only just, over four fifths of what the water takes: some may stay at the bottom or come back when it cools.
    Barely,
    /// Not all of it.
    Not,
}

/// Water for dissolving a weight.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Dissolving {
    /// The least that takes it.
    pub least: Volume,
    /// The least that is advised: four fifths as strong.
    pub advised: Volume,
}

impl Dissolving {
    /// How a weight dissolves at this solubility, which should be for cold water: urea and nitrates chill the tank. Two salts
    /// together dissolve less.
    ///
    /// # Errors
    /// When the solubility is nothing, or the weight is less than nothing or no number.
    ///
    /// # Source
    /// Weight ÷ solubility, as Lorenz and Maynard (1980), Knott's Handbook for Vegetable Growers, 2nd ed., tabulates it, in
    /// lb per 100 gal. At most 80 % of it: common practice, no source.
    pub fn of(mass: Mass, solubility: Concentration) -> Result<Self, Unworkable> {
        not_negative(mass.to_kilograms(), "the weight to dissolve")?;
        positive(solubility.to_kilograms_per_cubic_metre(), "the solubility")?;
        let least = mass / solubility;
        Ok(Self {
            least,
            advised: least / MOST_OF_SOLUBILITY,
        })
    }

    /// Whether it dissolves in so much water.
    pub fn within(&self, water: Volume) -> Dissolves {
        if water >= self.advised * (1.0 - FORGIVEN) {
            Dissolves::Well
        } else if water >= self.least * (1.0 - FORGIVEN) {
            Dissolves::Barely
        } else {
            Dissolves::Not
        }
    }
}

/// The part of a material's solubility that a stock should stay within.
const MOST_OF_SOLUBILITY: f64 = 0.8;
/// What unit factors lose.
const FORGIVEN: f64 = 1e-9;

/// How long to run water for a depth of it over ground: ground × depth ÷ flow. Over beds, the ground is the width that is
/// wetted × length.
///
/// # Errors
/// When no water runs, or the ground or depth is less than nothing or no number.
///
/// # Source
/// Penn State Extension, Determining How Long to Run Drip Irrigation Systems for Vegetables, 26 June 2013.
pub fn run_time(ground: Area, depth: Length, flow: Flow) -> Result<Span, Unworkable> {
    not_negative(ground.to_square_metres(), "the ground")?;
    not_negative(depth.to_metres(), "the depth of water")?;
    Ok(ground * depth / running(flow)?)
}

/// How deep a volume of water lies over ground.
///
/// # Errors
/// When the ground is nothing.
///
/// # Source
/// Common practice, no source: arithmetic; 0.62338 gal for an inch on a square foot.
pub fn water_depth(water: Volume, ground: Area) -> Result<Length, Unworkable> {
    positive(ground.to_square_metres(), "the ground")?;
    Ok(water / ground)
}

/// The water in a length of pipe or tape: π/4 × inside diameter² × length.
///
/// # Errors
/// When the diameter is nothing, or the length is less than nothing or no number.
///
/// # Source
/// Arithmetic.
pub fn pipe_volume(inside_diameter: Length, length: Length) -> Result<Volume, Unworkable> {
    let diameter = positive_length(inside_diameter, "the inside diameter")?;
    not_negative(length.to_metres(), "the length of pipe")?;
    Ok(diameter * diameter * (PI / 4.0) * length)
}

/// How long feed takes from the injector to the last emitter: through the supply pipe, volume ÷ flow, and then along the
/// tape.
///
/// Along a tape of volume V with N equal emitters at equal distances and the flow Q into it, the water slows down at each
/// emitter. A piece of tape between emitters holds V/N. Where k emitters are still ahead, it carries k × Q/N, so that the
/// water takes V/N ÷ (k Q/N) = V/Q × 1/k to pass it. All pieces together take V/Q × (1 + 1/2 + ... + 1/N): several times
/// as long as filling the tape does, and the longer the more emitters there are.
///
/// Where several equal tapes run side by side, `tape` and `flow` are those of all of them and `emitters` those of one.
///
/// # Errors
/// When no water runs, there is no emitter, or a volume is less than nothing or no number.
///
/// # Source
/// Plain arithmetic as above. That feed needs a time of advance which belongs to each system: da Silva, da Cunha and de Brito
/// (2022), Horticulturae 8(12):1103 (the idea only).
pub fn time_to_last_emitter(supply: Volume, tape: Volume, flow: Flow, emitters: u64) -> Result<Span, Unworkable> {
    not_negative(supply.to_cubic_metres(), "the water in the supply pipe")?;
    not_negative(tape.to_cubic_metres(), "the water in the tape")?;
    if emitters == 0 {
        return Err(Unworkable::NotPositive("the number of emitters"));
    }
    Ok((supply + tape * harmonic(emitters)) / running(flow)?)
}

/// 1 + 1/2 + ... + 1/n; from a thousand terms up by Euler's expansion, which is exact there to the last digit.
fn harmonic(n: u64) -> f64 {
    if n <= 1000 {
        return (1..=n).map(|k| 1.0 / k as f64).sum();
    }
    let n = n as f64;
    n.ln() + EULER_MASCHERONI + 1.0 / (2.0 * n) - 1.0 / (12.0 * n * n)
}

const EULER_MASCHERONI: f64 = 0.577_215_664_901_532_9;

/// How long to run plain water after feeding: until the last of the feed has left the last emitter, and never below a
/// quarter of an hour.
///
/// # Source
/// 10 to 15 min clear most systems: University of Minnesota figure, read as quoted in a secondary article.
pub fn rinse_time(to_last_emitter: Span) -> Span {
    to_last_emitter.max(Span::minutes(15.0))
}
