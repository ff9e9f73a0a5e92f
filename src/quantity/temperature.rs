//! How warm it is.

use super::Units;
use super::show::whole;

/// A temperature of soil or air.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct Temperature(f64);

impl Temperature {
    /// From degrees Celsius.
    pub const fn celsius(degrees: f64) -> Self {
        Self(degrees)
    }

    /// From degrees Fahrenheit: °C = (°F − 32) / 1.8 (NIST Special Publication 811, 2008, Appendix B.8).
    pub const fn fahrenheit(degrees: f64) -> Self {
        Self((degrees - 32.0) / 1.8)
    }

    /// In degrees Celsius.
    pub const fn to_celsius(self) -> f64 {
        self.0
    }

    /// In degrees Fahrenheit.
    pub const fn to_fahrenheit(self) -> f64 {
        self.0 * 1.8 + 32.0
    }

    /// Neither infinite nor "not a number".
    pub const fn is_finite(self) -> bool {
        self.0.is_finite()
    }

    /// To a degree: `60 °F`, `16 °C`.
    pub fn show(self, units: Units) -> String {
        match units {
            Units::Customary => format!("{} °F", whole(self.to_fahrenheit())),
            Units::Metric => format!("{} °C", whole(self.to_celsius())),
        }
    }
}
