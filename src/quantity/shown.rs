//! Columns of amounts: one unit and one number of decimals for the rows and their sum.
//!
//! A column is kept as whole *steps* of its last decimal. The plan shares a bed's steps out over its rows, so that the
//! rows as they are shown add up to the bed as it is shown; this file only says how large a step is and how it is
//! written.

use super::show::count;
use super::{Length, Mass, Volume};

/// The unit a column is in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum ShownUnit {
    /// Feet.
    Feet,
    /// Metres.
    Metres,
    /// Avoirdupois pounds.
    Pounds,
    /// Avoirdupois ounces.
    Ounces,
    /// Grams.
    Grams,
    /// Kilograms.
    Kilograms,
    /// US cups.
    Cups,
    /// Litres.
    Litres,
    /// Things counted: plants, seeds, rows.
    Count,
}

impl ShownUnit {
    /// As it stands at the head of a column, or after a number; empty for counts.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Feet => "ft",
            Self::Metres => "m",
            Self::Pounds => "lb",
            Self::Ounces => "oz",
            Self::Grams => "g",
            Self::Kilograms => "kg",
            Self::Cups => "cups",
            Self::Litres => "l",
            Self::Count => "",
        }
    }
}

/// An amount that can stand in a column.
pub trait Measured {
    /// How many of the unit it is; `None` when the unit measures something else.
    fn in_unit(self, unit: ShownUnit) -> Option<f64>;
}

impl Measured for Length {
    fn in_unit(self, unit: ShownUnit) -> Option<f64> {
        match unit {
            ShownUnit::Feet => Some(self.to_feet()),
            ShownUnit::Metres => Some(self.to_metres()),
            _ => None,
        }
    }
}

impl Measured for Mass {
    fn in_unit(self, unit: ShownUnit) -> Option<f64> {
        match unit {
            ShownUnit::Pounds => Some(self.to_pounds()),
            ShownUnit::Ounces => Some(self.to_ounces()),
            ShownUnit::Grams => Some(self.to_grams()),
            ShownUnit::Kilograms => Some(self.to_kilograms()),
            _ => None,
        }
    }
}

impl Measured for Volume {
    fn in_unit(self, unit: ShownUnit) -> Option<f64> {
        match unit {
            ShownUnit::Cups => Some(self.to_cups()),
            ShownUnit::Litres => Some(self.to_litres()),
            _ => None,
        }
    }
}

/// How a column of amounts is written: its unit and its decimals.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Shown {
    unit: ShownUnit,
    decimals: u8,
}

/// More decimals say nothing about weights and lengths on a farm, and keep every step count far inside an `i64`.
const MOST_DECIMALS: u8 = 6;

impl Shown {
    /// A column in this unit with so many decimals, at most six. Counts have none.
    pub const fn new(unit: ShownUnit, decimals: u8) -> Self {
        let decimals = match unit {
            ShownUnit::Count => 0,
            _ if decimals > MOST_DECIMALS => MOST_DECIMALS,
            _ => decimals,
        };
        Self { unit, decimals }
    }

    /// The unit.
    pub const fn unit(self) -> ShownUnit {
        self.unit
    }

    /// How many decimals are written.
    pub const fn decimals(self) -> u8 {
        self.decimals
    }

    /// Steps in one unit: 100 when two decimals are written.
    pub const fn steps_per_unit(self) -> i64 {
        10_i64.pow(self.decimals as u32)
    }

    /// The smallest difference that shows, in the unit: 0.01 when two decimals are written.
    pub fn step(self) -> f64 {
        10_f64.powi(-i32::from(self.decimals))
    }

    /// How many steps an amount is, not yet rounded; `None` when the unit measures something else.
    pub fn steps(self, amount: impl Measured) -> Option<f64> {
        amount
            .in_unit(self.unit)
            .map(|units| units * 10_f64.powi(i32::from(self.decimals)))
    }

    /// So many steps as a number without its unit, with commas between thousands: 123456 steps of 0.01 are `1,234.56`.
    pub fn format(self, steps: i64) -> String {
        let per_unit = self.steps_per_unit().unsigned_abs();
        let (whole, part) = (steps.unsigned_abs() / per_unit, steps.unsigned_abs() % per_unit);
        let sign = if steps < 0 { "−" } else { "" };
        if self.decimals == 0 {
            return format!("{sign}{}", count(whole));
        }
        format!(
            "{sign}{}.{part:0width$}",
            count(whole),
            width = usize::from(self.decimals)
        )
    }

    /// As [`Shown::format`], with the unit after it: `1,234.56 lb`.
    pub fn format_with_unit(self, steps: i64) -> String {
        let number = self.format(steps);
        if self.unit.name().is_empty() {
            number
        } else {
            format!("{number} {}", self.unit.name())
        }
    }
}
