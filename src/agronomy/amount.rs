//! What the sums here ask of a quantity: a weight, a weight over ground, or a weight along a row.

use std::ops::{Add, Div, Mul, Sub};

use super::unworkable::Unworkable;

/// A quantity that adds up and can be taken in parts. A recommendation, its credits and its doses may be weights, weights
/// over ground or weights along a row; the arithmetic is the same.
pub trait Amount:
    Copy
    + Default
    + PartialOrd
    + Add<Output = Self>
    + Sub<Output = Self>
    + Mul<f64, Output = Self>
    + Div<f64, Output = Self>
    + Div<Self, Output = f64>
{
}

impl<Q> Amount for Q where
    Q: Copy
        + Default
        + PartialOrd
        + Add<Output = Self>
        + Sub<Output = Self>
        + Mul<f64, Output = Self>
        + Div<f64, Output = Self>
        + Div<Self, Output = f64>
{
}

/// An amount of nothing or more, or the refusal that names it.
pub(super) fn amount_not_negative<Q: Amount>(amount: Q, what: &'static str) -> Result<Q, Unworkable> {
    // Nothing times an infinite amount is no number, and no number is at least nothing.
    if amount >= Q::default() && amount * 0.0 >= Q::default() {
        Ok(amount)
    } else {
        Err(Unworkable::Negative(what))
    }
}

/// An amount of more than nothing, or the refusal that names it.
pub(super) fn amount_positive<Q: Amount>(amount: Q, what: &'static str) -> Result<Q, Unworkable> {
    if amount > Q::default() && amount * 0.0 >= Q::default() {
        Ok(amount)
    } else {
        Err(Unworkable::NotPositive(what))
    }
}
