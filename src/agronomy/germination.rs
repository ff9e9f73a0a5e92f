//! What a germination test of a few seeds says of the whole lot.

use jiff::civil::Date;

use super::unworkable::{Unworkable, positive};
use crate::quantity::Fraction;

/// What a test found: the part that came up, and where the lot's own germination lies nineteen times out of twenty.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TestResult {
    /// The part of the tested seeds that came up.
    pub found: Fraction,
    /// The lower end of the 95 % interval.
    pub low: Fraction,
    /// The upper end of the 95 % interval.
    pub high: Fraction,
}

/// The standard normal deviate that leaves 2.5 % on each side.
const Z: f64 = 1.959_963_984_540_054;

/// The result of a test in which `came_up` of `of` seeds came up, with the 95 % Wilson score interval.
///
/// The interval stays within 0 and 1 and is sound for the ten or twenty seeds of a kitchen test, where the plain
/// "found ± 2 standard errors" is not.
///
/// # Errors
/// When no seed was tested, or more came up than were tested.
///
/// # Source
/// E. B. Wilson, "Probable inference, the law of succession, and statistical inference", Journal of the American
/// Statistical Association 22 (1927), 209–212; citation and formula from memory, numbers checked against a statistics
/// library.
pub fn germination_test(came_up: u32, of: u32) -> Result<TestResult, Unworkable> {
    let n = positive(f64::from(of), "the number of seeds tested")?;
    if came_up > of {
        return Err(Unworkable::MoreThanAll("the seeds that came up", "the seeds tested"));
    }
    let found = f64::from(came_up) / n;
    let z2 = Z * Z;
    let middle = (found + z2 / (2.0 * n)) / (1.0 + z2 / n);
    let half = Z / (1.0 + z2 / n) * (found * (1.0 - found) / n + z2 / (4.0 * n * n)).sqrt();
    let part = |value: f64| Fraction::new(value.clamp(0.0, 1.0)).unwrap_or_default();
    Ok(TestResult {
        found: part(found),
        // At the very ends the formula gives 0 and 1 but for what binary loses.
        low: if came_up == 0 {
            Fraction::ZERO
        } else {
            part(middle - half)
        },
        high: if came_up == of {
            Fraction::ONE
        } else {
            part(middle + half)
        },
    })
}

/// Whether a test says little any more of seed that is sown in a season: it was made before July of the year before, so
/// that the seed has lain through one more season since.
///
/// # Source
/// Common practice, no source: seed is tested in the winter before it is sown.
pub fn test_is_old(tested: Date, season: i16) -> bool {
    let before = season.saturating_sub(1);
    tested.year() < before || (tested.year() == before && tested.month() < 7)
}

/// How a lot stands against the federal standard of germination for its kind.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LegalStanding {
    /// At or over it.
    Meets,
    /// Under it, but the test is so small that the lot itself may meet it.
    UnderMayMeet,
    /// Under it, and the test leaves no room for doubt; or the tag says so.
    Under,
}

/// Compares what a tag or a test says with the federal standard. `high` is the upper end of a test's interval; leave it
/// out for a tag.
///
/// Seed under the standard may be sold: its label then has to give its germination and say that it is below standard.
/// It says nothing against sowing one's own weak seed more thickly.
///
/// # Source
/// The standard itself: U.S. Code of Federal Regulations, Title 7, section 201.31. What a label has to say: Federal Seed
/// Act, U.S. Code, Title 7, section 1571(b), from memory. The comparison: arithmetic.
pub fn legal_standing(found: Fraction, high: Option<Fraction>, least: Fraction) -> LegalStanding {
    // What binary loses of 15 out of 20 is no seed.
    let reaches = |part: Fraction| part.get() >= least.get() - 1e-9;
    if reaches(found) {
        LegalStanding::Meets
    } else if high.is_some_and(reaches) {
        LegalStanding::UnderMayMeet
    } else {
        LegalStanding::Under
    }
}
