//! What a soil laboratory found, and the class it falls into.

use super::unworkable::{Unworkable, not_negative};

/// How much of a nutrient an extract of the soil held, as a laboratory reports it. Numbers of different extracts
/// (Mehlich-3, Bray P1, Olsen) must not be held against each other.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct SoilLevel {
    parts_per_million: f64,
}

/// An acre of soil about 6 2/3 in deep weighs two million pounds.
const POUNDS_PER_ACRE_IN_A_PART: f64 = 2.0;

impl SoilLevel {
    /// From parts per million of dry soil, by weight.
    ///
    /// # Errors
    /// When it is less than nothing or no number.
    pub fn parts_per_million(value: f64) -> Result<Self, Unworkable> {
        let parts_per_million = not_negative(value, "the soil test")?;
        Ok(Self { parts_per_million })
    }

    /// From pounds per acre of plough layer.
    ///
    /// # Errors
    /// When it is less than nothing or no number.
    ///
    /// # Source
    /// US soil test handbooks (from memory): lb/acre = 2 × ppm for a layer of about 6 2/3 in.
    pub fn pounds_per_acre(value: f64) -> Result<Self, Unworkable> {
        Self::parts_per_million(value / POUNDS_PER_ACRE_IN_A_PART)
    }

    /// In parts per million of dry soil.
    pub const fn to_parts_per_million(self) -> f64 {
        self.parts_per_million
    }

    /// In pounds per acre of plough layer.
    pub const fn to_pounds_per_acre(self) -> f64 {
        self.parts_per_million * POUNDS_PER_ACRE_IN_A_PART
    }
}

/// Which nutrient was tested for. Soil tests are in the element, not in the terms of a label.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TestedFor {
    /// Phosphorus, P.
    Phosphorus,
    /// Potassium, K.
    Potassium,
}

/// How well a soil is supplied.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Supply {
    /// Far too little.
    VeryLow,
    /// Too little.
    Low,
    /// Some is wanted.
    Medium,
    /// Enough.
    High,
    /// More than enough.
    VeryHigh,
}

impl Supply {
    /// In words.
    pub const fn name(self) -> &'static str {
        match self {
            Self::VeryLow => "very low",
            Self::Low => "low",
            Self::Medium => "medium",
            Self::High => "high",
            Self::VeryHigh => "very high",
        }
    }
}

/// The class of a Mehlich-3 test. The table has whole pounds; what lies between two classes belongs to the upper one.
///
/// # Source
/// Rutgers New Jersey Agricultural Experiment Station, Soil Testing Laboratory, Relative Levels of Nutrients: lb/acre, P
/// 0–24, 25–45, 46–71, 72–137, above; K 0–40, 41–81, 82–145, 146–277, above.
pub fn supply_by_mehlich_3(nutrient: TestedFor, found: SoilLevel) -> Supply {
    let tops = match nutrient {
        TestedFor::Phosphorus => [24.0, 45.0, 71.0, 137.0],
        TestedFor::Potassium => [40.0, 81.0, 145.0, 277.0],
    };
    let classes = [Supply::VeryLow, Supply::Low, Supply::Medium, Supply::High];
    let pounds = found.to_pounds_per_acre();
    tops.into_iter()
        .zip(classes)
        .find_map(|(top, class)| (pounds <= top).then_some(class))
        .unwrap_or(Supply::VeryHigh)
}
