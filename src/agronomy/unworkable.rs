//! Why a sum cannot be done.

use super::nutrient::Nutrient;
use crate::quantity::Length;

/// Why a sum cannot be done, and what to change.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum Unworkable {
    /// Something that must be larger than nothing is not, or is no number.
    #[error("{0} must be larger than nothing; type a number above 0")]
    NotPositive(&'static str),
    /// Something that must not be negative is, or is no number.
    #[error("{0} must not be less than nothing; type 0 or more")]
    Negative(&'static str),
    /// A material does not hold the nutrient that was asked for.
    #[error("the material holds no {}; choose one that does", .0.name())]
    NoNutrient(Nutrient),
    /// A part is larger than its whole.
    #[error("{0} must not be more than {1}; check both numbers")]
    MoreThanAll(&'static str, &'static str),
    /// No size of packet is given to choose from.
    #[error("no size of packet is given; give at least one")]
    NoPacket,
    /// No material is given to mix from.
    #[error("no material is given to mix from; choose at least one")]
    NoMaterial,
    /// The answer is larger than anything on a farm.
    #[error("{0} come to more than any farm has; check the numbers they are worked out from")]
    TooMany(&'static str),
}

/// A number above nothing, or the refusal that names it.
pub(super) fn positive(value: f64, what: &'static str) -> Result<f64, Unworkable> {
    if value.is_finite() && value > 0.0 {
        Ok(value)
    } else {
        Err(Unworkable::NotPositive(what))
    }
}

/// A length above nothing, or the refusal that names it.
pub(super) fn positive_length(length: Length, what: &'static str) -> Result<Length, Unworkable> {
    positive(length.to_metres(), what).map(|_| length)
}

/// A number of nothing or more, or the refusal that names it.
pub(super) fn not_negative(value: f64, what: &'static str) -> Result<f64, Unworkable> {
    if value.is_finite() && value >= 0.0 {
        Ok(value)
    } else {
        Err(Unworkable::Negative(what))
    }
}

/// The next whole number, forgiving what binary fractions add to one that is whole already; refuses what no farm has.
pub(super) fn round_up(value: f64, what: &'static str) -> Result<u64, Unworkable> {
    if !value.is_finite() || value >= MOST {
        return Err(Unworkable::TooMany(what));
    }
    Ok((value - value.abs().max(1.0) * FORGIVEN).ceil().max(0.0) as u64)
}

/// A part in a million million: thousands of times what a chain of a few products loses, and still a small part of one
/// seed among a thousand million.
const FORGIVEN: f64 = 1e-12;
/// Below this every whole number is exact in an `f64`, and no farm sows as many seeds.
const MOST: f64 = 1e15;
