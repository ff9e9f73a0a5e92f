//! An amount in several doses.

use super::amount::{Amount, amount_not_negative};
use super::unworkable::{Unworkable, not_negative, positive};

/// An amount in doses by weight of their shares, which need not add up to one or a hundred: published shares often do
/// not. The last dose that has a share takes what is left, so that the doses add up to the whole.
///
/// # Errors
/// When there is no share, or one of them or the amount is less than nothing or no number.
///
/// # Source
/// Common practice, no source: share ÷ sum of shares.
pub fn split<Q: Amount>(whole: Q, shares: &[f64]) -> Result<Vec<Q>, Unworkable> {
    for &share in shares {
        not_negative(share, "a share")?;
    }
    let all = positive(shares.iter().sum(), "the sum of the shares")?;
    let last = shares.iter().rposition(|&share| share > 0.0);
    let mut left = amount_not_negative(whole, "the amount to split")?;
    let mut doses: Vec<Q> = Vec::with_capacity(shares.len());
    for (index, share) in shares.iter().enumerate() {
        let dose = if Some(index) == last {
            left
        } else {
            whole * (share / all)
        };
        left = left - dose;
        doses.push(dose);
    }
    Ok(doses)
}
