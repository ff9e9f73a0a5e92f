//! A recommendation over ground as an amount along a row, and back.

use super::unworkable::{Unworkable, not_negative, positive_length};
use crate::quantity::{Length, MassPerArea, MassPerLength};

/// The amount along one plant row that a rate over ground comes to: rate × spacing ÷ plant rows on a bed. The spacing is
/// from bed to bed where a bed carries several plant rows, from row to row where it carries one: a double row that takes
/// the bed's spacing twice gets twice the dose.
///
/// # Errors
/// When the spacing is nothing, or a bed carries no row.
///
/// # Source
/// Common practice, no source: lb per 100 ft = lb/acre × spacing in feet × 100 ÷ 43,560. Double rows on 6 ft beds are
/// among the linear-bed-foot values of the Mid-Atlantic Commercial Vegetable Production Recommendations.
pub fn along_row(rate: MassPerArea, spacing: Length, rows_per_bed: u8) -> Result<MassPerLength, Unworkable> {
    Ok(rate * positive_length(spacing, "the row spacing")? / carried(rows_per_bed)?)
}

/// The rate over ground that an amount along one plant row comes to; undoes [`along_row`].
///
/// # Errors
/// When the spacing is nothing, or a bed carries no row.
///
/// # Source
/// As [`along_row`].
pub fn over_ground(rate: MassPerLength, spacing: Length, rows_per_bed: u8) -> Result<MassPerArea, Unworkable> {
    Ok(rate * carried(rows_per_bed)? / positive_length(spacing, "the row spacing")?)
}

fn carried(rows_per_bed: u8) -> Result<f64, Unworkable> {
    if rows_per_bed == 0 {
        return Err(Unworkable::NotPositive("the number of rows on a bed"));
    }
    Ok(f64::from(rows_per_bed))
}

/// What a recommendation for an acre holds on to where beds stand closer or wider than those it was made for. Both are
/// in use and differ by as much as the spacings do: ask which one the recommendation means.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum BedRule {
    /// The foot of bed: each takes what it would on beds of the usual spacing, so that closer beds bring more to the
    /// acre.
    BedFoot {
        /// The spacing of the beds that the recommendation was made for.
        usual: Length,
    },
    /// The acre: closer beds share the same amount.
    Ground,
}

/// The amount along a bed by either rule: rate × the usual spacing, or rate × the real one.
///
/// # Errors
/// When a spacing is nothing.
///
/// # Source
/// University of Florida/IFAS SL 303 / SS516, Calculating Recommended Fertilizer Rates for Vegetables Grown in Raised-Bed,
/// Mulched Cultural Systems (method from memory).
pub fn along_bed(rate: MassPerArea, spacing: Length, rule: BedRule) -> Result<MassPerLength, Unworkable> {
    let real = positive_length(spacing, "the bed spacing")?;
    let counted = match rule {
        BedRule::BedFoot { usual } => positive_length(usual, "the usual bed spacing")?,
        BedRule::Ground => real,
    };
    Ok(rate * counted)
}

/// How a rate stands to the highest published one for its crop.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RateStanding {
    /// Not above it.
    Published,
    /// Above it.
    Above,
    /// Over ten times as high: a slip of the unit, most likely.
    Absurd,
}

/// Holds a rate against the highest published one.
///
/// # Errors
/// When one of them is less than nothing or no number.
///
/// # Source
/// Common practice, no source: ten times a published rate is what a wrong unit makes.
pub fn standing_of(rate: MassPerArea, most_published: MassPerArea) -> Result<RateStanding, Unworkable> {
    let rate = not_negative(rate.to_kilograms_per_square_metre(), "the rate")?;
    let most = not_negative(most_published.to_kilograms_per_square_metre(), "the published rate")?;
    Ok(match rate {
        // What unit factors lose is no more nitrogen.
        rate if rate <= most * (1.0 + 1e-9) => RateStanding::Published,
        rate if rate <= most * 10.0 => RateStanding::Above,
        _ => RateStanding::Absurd,
    })
}
