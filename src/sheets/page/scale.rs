//! Scales of printed maps: how they are written, read and chosen.

use thiserror::Error;

use crate::quantity::{Length, Units, number, read_number};

/// How many times smaller the map is than the ground.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Scale {
    ratio: f64,
    written: Written,
}

/// How a scale is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Written {
    /// 1:100.
    Ratio,
    /// 1 in = 10 ft.
    InchesToFeet,
}

/// Why words are not a scale.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum ScaleError {
    /// Not a form that is known.
    #[error("“{0}” is not a scale. Write it as 1:120, or as 1 in = 10 ft, or as 1/4 in = 1 ft")]
    NotAScale(String),
    /// A number that no map can have.
    #[error("“{0}” is out of reach: a map can be from 1:1 to 1:1,000,000")]
    OutOfReach(String),
}

/// A quarter, an eighth and a sixteenth of an inch to the foot, and 1 in to 5 ft and so on, as ratios.
///
/// # Source
/// Engineer's scale divisions 10 to 60: US Army engineer training text, "Scales". Ratio = 12 × feet per inch:
/// 1 in = 5 ft 1:60, 10 ft 1:120, 20 ft 1:240, 30 ft 1:360, 40 ft 1:480, 50 ft 1:600, 60 ft 1:720; 1/4 in = 1 ft
/// 1:48, 1/8 in 1:96, 1/16 in 1:192. The 1/2 in and 1 in to the foot before them (1:24, 1:12) for very small
/// ground, and 100 ft and more to the inch after them, carry the same lists on.
const CUSTOMARY: [f64; 19] = [
    12.0, 24.0, 48.0, 60.0, 96.0, 120.0, 192.0, 240.0, 360.0, 480.0, 600.0, 720.0, 1200.0, 2400.0, 3600.0, 4800.0,
    6000.0, 12_000.0, 24_000.0,
];

/// Reductions of metric maps.
///
/// # Source
/// ISO 5455:1979, "Technical drawings: Scales": 1:10, 1:20, 1:50 and their decimal multiples; 1:25 and 1:250 (and
/// 1:2500) are added by national practice.
const METRIC: [f64; 14] = [
    10.0, 20.0, 25.0, 50.0, 100.0, 200.0, 250.0, 500.0, 1000.0, 2000.0, 2500.0, 5000.0, 10_000.0, 20_000.0,
];

impl Scale {
    /// 1 to `ratio`; `None` outside of 1 to 1,000,000 or when not a number.
    pub fn ratio(ratio: f64) -> Option<Self> {
        (1.0..=1e6).contains(&ratio).then_some(Self {
            ratio,
            written: Written::Ratio,
        })
    }

    /// The standard scales of a family of units, from the largest drawing to the smallest.
    pub fn standard(units: Units) -> impl Iterator<Item = Self> {
        let (ratios, written): (&[f64], _) = match units {
            Units::Customary => (&CUSTOMARY, Written::InchesToFeet),
            Units::Metric => (&METRIC, Written::Ratio),
        };
        ratios.iter().map(move |&ratio| Self { ratio, written })
    }

    /// How many times smaller the map is than the ground.
    pub const fn to_ratio(self) -> f64 {
        self.ratio
    }

    /// Points of paper (1/72 in) for each metre of ground.
    pub fn points_per_metre(self) -> f64 {
        72.0 / 0.0254 / self.ratio
    }

    /// Reads a scale: `1:120`, `1/120`, `120`, `1 in = 10 ft`, `1" = 10'`, `1/4 in = 1 ft`, `1 cm = 2 m`.
    ///
    /// # Errors
    /// [`ScaleError`] when the words are not a scale, or one that no map can have.
    pub fn parse(text: &str) -> Result<Self, ScaleError> {
        let not_a_scale = || ScaleError::NotAScale(text.trim().to_owned());
        let out_of_reach = || ScaleError::OutOfReach(text.trim().to_owned());
        if let Some((paper, ground)) = text.split_once('=') {
            let (paper, in_inches) = length(paper).ok_or_else(not_a_scale)?;
            let (ground, _) = length(ground).ok_or_else(not_a_scale)?;
            let ratio = ground / paper;
            // Back to the whole number that was meant, should binary fractions have nudged it.
            let ratio = if (ratio - ratio.round()).abs() < 1e-9 * ratio {
                ratio.round()
            } else {
                ratio
            };
            let written = if in_inches {
                Written::InchesToFeet
            } else {
                Written::Ratio
            };
            return Self::ratio(ratio)
                .map(|scale| Self { written, ..scale })
                .ok_or_else(out_of_reach);
        }
        let ratio = match text.split_once([':', '/']) {
            Some((one, ratio)) if one.trim() == "1" => ratio,
            Some(_) => return Err(not_a_scale()),
            None => text,
        };
        let ratio = read_number(ratio, Units::Customary).ok_or_else(not_a_scale)?;
        Self::ratio(ratio).ok_or_else(out_of_reach)
    }

    /// The scale as it is written on the sheet: `1:100`; `1 in = 10 ft`; `1/4 in = 1 ft`.
    pub fn show(self) -> String {
        let feet = self.ratio / 12.0;
        match self.written {
            Written::Ratio => format!("1:{}", number(self.ratio, 2)),
            Written::InchesToFeet => {
                let inch_parts = [(1.0, "1"), (2.0, "1/2"), (4.0, "1/4"), (8.0, "1/8"), (16.0, "1/16")];
                let part = inch_parts.iter().find(|(parts, _)| (feet - parts).abs() < 1e-9);
                part.map_or_else(
                    || format!("1 in = {} ft", number(feet, 2)),
                    |(_, part)| format!("{part} in = 1 ft"),
                )
            }
        }
    }
}

/// A length of a scale, with its unit, and whether that is the inch.
fn length(text: &str) -> Option<(Length, bool)> {
    if text.trim_end().ends_with(char::is_numeric) {
        return None;
    }
    let length = Length::parse(text, Units::Customary).ok()?;
    let in_inches = ["in", "\"", "″", "”"].iter().any(|unit| text.contains(unit));
    (length > Length::ZERO).then_some((length, in_inches))
}
