//! From a recommendation to product, from product to nutrients, and each row's share.

use std::ops::{Div, Mul};

use super::unworkable::{Unworkable, not_negative, positive, positive_length, round_up};
use crate::catalog::Analysis;
use crate::quantity::{Area, Length, Mass, MassPerArea};

/// A nutrient in the terms of a label.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Nutrient {
    /// Nitrogen, N.
    Nitrogen,
    /// Phosphate, P2O5.
    Phosphate,
    /// Potash, K2O.
    Potash,
}

impl Nutrient {
    /// All three, in the order of a label.
    pub const ALL: [Self; 3] = [Self::Nitrogen, Self::Phosphate, Self::Potash];

    /// In words.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Nitrogen => "nitrogen",
            Self::Phosphate => "phosphate",
            Self::Potash => "potash",
        }
    }

    /// The part of a product's weight that it is, from 0 to 1.
    pub const fn part_of(self, analysis: Analysis) -> f64 {
        match self {
            Self::Nitrogen => analysis.n.get(),
            Self::Phosphate => analysis.p2o5.get(),
            Self::Potash => analysis.k2o.get(),
        }
    }
}

/// Weights of the three nutrients.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Nutrients {
    /// Nitrogen, N.
    pub n: Mass,
    /// Phosphate, P2O5.
    pub p2o5: Mass,
    /// Potash, K2O.
    pub k2o: Mass,
}

impl Nutrients {
    /// The weight of one of them.
    pub const fn of(&self, nutrient: Nutrient) -> Mass {
        match nutrient {
            Nutrient::Nitrogen => self.n,
            Nutrient::Phosphate => self.p2o5,
            Nutrient::Potash => self.k2o,
        }
    }
}

/// The product that holds so much of a nutrient: amount ÷ part. The amount may be a weight or a rate; the product is
/// the same kind.
///
/// # Errors
/// When the material holds none of the nutrient.
///
/// # Source
/// Oklahoma State University Extension, Tulsa Master Gardeners, Fertilizer page, "Pounds of Fertilizer Needed per 1000
/// Square Feet": lb product = lb N ÷ (%N/100).
pub fn product_for<Q: Div<f64, Output = Q>>(
    amount: Q,
    nutrient: Nutrient,
    analysis: Analysis,
) -> Result<Q, Unworkable> {
    let part = nutrient.part_of(analysis);
    if part > 0.0 {
        Ok(amount / part)
    } else {
        Err(Unworkable::NoNutrient(nutrient))
    }
}

/// How much of one nutrient is in a product: amount × part. The amount may be a weight or a rate.
pub fn nutrient_in<Q: Mul<f64, Output = Q>>(product: Q, nutrient: Nutrient, analysis: Analysis) -> Q {
    product * nutrient.part_of(analysis)
}

/// The three nutrients in a weight of product.
pub fn nutrients_in(product: Mass, analysis: Analysis) -> Nutrients {
    Nutrients {
        n: nutrient_in(product, Nutrient::Nitrogen, analysis),
        p2o5: nutrient_in(product, Nutrient::Phosphate, analysis),
        k2o: nutrient_in(product, Nutrient::Potash, analysis),
    }
}

/// One row's share of a banded dressing: its length × the strip that belongs to it × the rate. Rows share by row feet;
/// headlands and edges get nothing.
///
/// # Errors
/// When the strip is nothing, or the length is less than nothing.
///
/// # Source
/// University of Tennessee Extension home-garden text, read in a reprint: three rows 36 in apart and 100 ft long are
/// 900 sq ft.
pub fn banded_share(length: Length, strip: Length, rate: MassPerArea) -> Result<Mass, Unworkable> {
    not_negative(length.to_metres(), "the row's length")?;
    Ok(rate * (length * positive_length(strip, "the width of the strip")?))
}

/// One row's share of a broadcast dressing: the bed's ground × the rate, shared over rows by length. The shares of all
/// rows add up to the bed's amount, edges and headlands included. A bed without row length gives a row nothing.
///
/// # Errors
/// When the ground or a length is less than nothing or no number.
///
/// # Source
/// Common practice, no source: arithmetic.
pub fn broadcast_share(length: Length, all_rows: Length, ground: Area, rate: MassPerArea) -> Result<Mass, Unworkable> {
    not_negative(length.to_metres(), "the row's length")?;
    not_negative(all_rows.to_metres(), "the length of all rows")?;
    not_negative(ground.to_square_metres(), "the bed's ground")?;
    if all_rows > Length::ZERO {
        Ok(rate * ground * (length / all_rows))
    } else {
        Ok(Mass::ZERO)
    }
}

/// Whole bags to buy for so much product.
///
/// # Errors
/// When the bag holds nothing, or the bags come to more than any farm has.
///
/// # Source
/// Common practice, no source: arithmetic, rounded up.
pub fn bags(product: Mass, bag: Mass) -> Result<u64, Unworkable> {
    positive(bag.to_kilograms(), "the weight of a bag")?;
    round_up(product / bag, "the bags")
}
