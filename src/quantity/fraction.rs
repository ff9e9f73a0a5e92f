//! Parts of a whole.

/// A part of a whole, from 0 to 1.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
pub struct Fraction(f64);

impl Fraction {
    /// Nothing.
    pub const ZERO: Self = Self(0.0);
    /// The whole.
    pub const ONE: Self = Self(1.0);

    /// From a number from 0 to 1; `None` outside of it or when not a number.
    pub fn new(value: f64) -> Option<Self> {
        (0.0..=1.0).contains(&value).then_some(Self(value))
    }

    /// From a percentage from 0 to 100; `None` outside of it or when not a number.
    pub fn percent(value: f64) -> Option<Self> {
        Self::new(value / 100.0)
    }

    /// As a number from 0 to 1.
    pub const fn get(self) -> f64 {
        self.0
    }

    /// As a percentage.
    pub const fn to_percent(self) -> f64 {
        self.0 * 100.0
    }
}
