//! What the sums here ask of a quantity: a weight, a weight over ground, or a weight along a row.

use std::ops::{Add, Div, Mul, Sub};

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
