//! How a crop grows: the soil it sprouts in, the water it uses, how deep it roots, how long its stages last.

use super::source::{Ends, Sourced};
use crate::quantity::{Fraction, Length, Temperature};

/// Temperatures of the soil in which seed sprouts. Each may be missing.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct SoilTemperatures {
    /// The crop whose row of the table was read, where that is another one.
    pub row: Option<String>,
    /// Colder soil sprouts nothing worth while.
    pub least: Option<Sourced<Temperature>>,
    /// The range in which it sprouts well.
    pub good: Option<Ends<Temperature>>,
    /// Where it sprouts best. May lie outside the good range, where the source has it so.
    pub best: Option<Sourced<Temperature>>,
    /// Hotter soil stops it.
    pub most: Option<Sourced<Temperature>>,
}

/// Crop coefficients: what the crop uses, as a multiple of the reference evapotranspiration of grass.
#[derive(Clone, Debug, PartialEq)]
pub struct WaterUse {
    /// The row of the table that was read; another crop's where the marks say that it stands in.
    pub row: String,
    /// From planting to a tenth of the ground covered.
    pub initial: Sourced<f64>,
    /// From full cover to the start of ripening.
    pub middle: Sourced<f64>,
    /// At harvest.
    pub end: Sourced<f64>,
    /// The height that these coefficients were worked out for. Not a height to plan shade by.
    pub height: Option<Sourced<Length>>,
}

/// Where the roots take their water.
#[derive(Clone, Debug, PartialEq)]
pub struct Roots {
    /// The row of the table that was read; another crop's where the marks say that it stands in.
    pub row: String,
    /// The depth to water by: the smaller end of the published range.
    pub effective: Sourced<Length>,
    /// The deepest they go in deep soil that lets them.
    pub deepest: Sourced<Length>,
    /// The part of the water held in the soil that may be used up before the crop feels it.
    pub depletion: Sourced<Fraction>,
}

/// The stages of growth of a crop, as a table gives them for several places.
#[derive(Clone, Debug, PartialEq)]
pub struct Stages {
    /// The row of the table that was read; another crop's where the mark says that it stands in.
    pub row: String,
    /// One entry a place and time of planting, never empty.
    pub lengths: Sourced<Vec<StageLengths>>,
}

/// How many days each stage lasts.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct StageLengths {
    /// From planting to a tenth of the ground covered.
    pub initial: u16,
    /// To full cover.
    pub development: u16,
    /// To the start of ripening.
    pub middle: u16,
    /// To harvest.
    pub late: u16,
    /// When it is planted there: "Apr, May".
    pub planted: String,
    /// Where that is.
    pub region: String,
    /// The total the table prints, where its stages do not add up to it. Which of the two slipped is not known; what
    /// the stages add up to goes first.
    pub printed_total: Option<u16>,
}

impl StageLengths {
    /// Days from planting to harvest: what the stages add up to.
    pub const fn total(&self) -> u16 {
        self.initial + self.development + self.middle + self.late
    }
}
