//! Sharing rounded amounts out so that what is shown of the rows adds up to what is shown of the bed.

/// Each amount in whole steps, such that they sum to the rounded whole.
///
/// The whole is rounded once. Every amount is then rounded down, and the steps that are still missing go to the
/// amounts that lost most by it; among equals, to the earlier. So no amount is off by a whole step, and the sum is
/// off by half a step at most. (The method of largest remainders.)
///
/// `amounts` and `step` are in the same unit; amounts that are not finite count as nothing.
pub(super) fn whole_steps(amounts: &[f64], step: f64) -> (Vec<i64>, i64) {
    let in_steps: Vec<f64> = amounts
        .iter()
        .map(|amount| if amount.is_finite() { amount / step } else { 0.0 })
        .collect();
    let total = (in_steps.iter().sum::<f64>() + HALF).floor() as i64;
    let mut steps: Vec<i64> = in_steps
        .iter()
        .map(|amount| (amount + FORGIVEN).floor() as i64)
        .collect();
    let missing = total - steps.iter().sum::<i64>();
    if missing == 0 {
        return (steps, total);
    }
    let mut order: Vec<usize> = (0..steps.len()).collect();
    let lost = |row: usize| in_steps[row] - (in_steps[row] + FORGIVEN).floor();
    if missing > 0 {
        order.sort_by(|&a, &b| lost(b).total_cmp(&lost(a)));
    } else {
        order.sort_by(|&a, &b| lost(a).total_cmp(&lost(b)));
    }
    let count = usize::try_from(missing.unsigned_abs()).unwrap_or(usize::MAX);
    for &row in order.iter().cycle().take(count.min(steps.len().saturating_mul(2))) {
        steps[row] += missing.signum();
    }
    (steps, total)
}

/// Steps that decimal fractions lose in binary: 0.29 lb is 28.999999999999996 hundredths, and is meant as 29.
const FORGIVEN: f64 = 1e-6;
/// Half a step, and what binary loses, so that halves go up.
const HALF: f64 = 0.5 + FORGIVEN;

#[cfg(test)]
mod tests {
    use super::whole_steps;

    #[test]
    fn equal_rows_add_up_to_the_bed() {
        // Eleven rows share 10 lb: 0.909… lb each. In hundredths, ten rows of 0.91 and one of 0.90 make 10.00.
        let (steps, total) = whole_steps(&[10.0 / 11.0; 11], 0.01);
        assert_eq!(total, 1000);
        assert_eq!(steps.iter().sum::<i64>(), 1000);
        assert_eq!(steps.iter().filter(|&&step| step == 91).count(), 10);
        assert_eq!(steps.iter().filter(|&&step| step == 90).count(), 1);
    }

    #[test]
    fn amounts_that_are_whole_steps_stay_as_they_are() {
        let (steps, total) = whole_steps(&[0.29, 0.58, 1.16], 0.01);
        assert_eq!(steps, [29, 58, 116]);
        assert_eq!(total, 203);
    }

    #[test]
    fn no_rows_sum_to_nothing() {
        assert_eq!(whole_steps(&[], 0.01), (vec![], 0));
    }
}
