//! Turning the rows of a bed, and setting them closer or wider: what the hand means, in steps that growers use.

use crate::geometry::Remainder;
use crate::quantity::{Bearing, Length, Units};

/// A bearing within so many degrees of one worth keeping goes to it.
const NEAR: f64 = 2.6;
/// Bearings go by whole steps of so many degrees where nothing else is near.
const STEP: f64 = 5.0;

/// A bearing that the hand came to, and why it is kept.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Turned {
    /// The bearing.
    pub(super) bearing: Bearing,
    /// Why there, in words; empty where it is just where the hand is.
    pub(super) why: &'static str,
}

/// The bearing that the hand means: along or square to a side of the plot, else whole steps of five degrees.
pub(super) fn turn(degrees: f64, sides: &[Bearing]) -> Turned {
    let along = sides.iter().flat_map(|side| {
        let side = side.to_degrees();
        [
            (side, "along a side"),
            (side + 180.0, "along a side"),
            (side + 90.0, "square to a side"),
            (side + 270.0, "square to a side"),
        ]
    });
    // Sides first: along one that happens to run due north, the side is what the hand means.
    let nearest = along
        .map(|(target, why)| (apart(degrees, target), target, why))
        .filter(|(off, ..)| *off <= NEAR)
        .min_by(|a, b| a.0.total_cmp(&b.0));
    match nearest {
        Some((_, target, why)) => Turned {
            bearing: Bearing::degrees(target),
            why,
        },
        None => Turned {
            bearing: Bearing::degrees((degrees / STEP).round() * STEP),
            why: "steps of 5°",
        },
    }
}

/// Degrees between two directions, 0 to 180.
fn apart(a: f64, b: f64) -> f64 {
    let between = (a - b).rem_euclid(360.0);
    between.min(360.0 - between)
}

/// A bearing in words: "N – S, 0°".
pub(super) fn words(bearing: Bearing) -> String {
    let back = Bearing::degrees(bearing.to_degrees() + 180.0);
    format!(
        "{} – {}, {}",
        bearing.compass_word(),
        back.compass_word(),
        bearing.show()
    )
}

/// The row spacing when a row is pulled sideways by so much: its distance to the neighbour that stays behind, in
/// whole inches or centimetres unless `free`. `pulled` is positive to the right of the bearing, and `left_of_middle`
/// says on which half of the bed the row stands: shared left-over width keeps the middle where it is.
pub(super) fn pull(
    spacing: Length,
    pulled: Length,
    remainder: Remainder,
    left_of_middle: bool,
    units: Units,
    free: bool,
) -> Length {
    let widens_to_the_right = match remainder {
        Remainder::Centred => !left_of_middle,
        // The first row on the left stands fast when the left-over width lies on the right, and the other way round.
        Remainder::Right => true,
        Remainder::Left => false,
    };
    let wider = if widens_to_the_right { pulled } else { -pulled };
    let step = match units {
        Units::Customary => Length::inches(1.0),
        Units::Metric => Length::metres(0.01),
    };
    let wanted = spacing + wider;
    let steps = (wanted / step).round().max(1.0);
    if free { wanted.max(step) } else { step * steps }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check_turn(degrees: f64, sides: &[f64], expected: f64, why: &str) {
        let sides: Vec<Bearing> = sides.iter().map(|side| Bearing::degrees(*side)).collect();
        let turned = turn(degrees, &sides);
        assert!((turned.bearing.to_degrees() - expected).abs() < 1e-9, "{turned:?}");
        assert_eq!(turned.why, why);
    }

    #[test]
    fn rows_turn_in_steps_of_five_degrees() {
        check_turn(12.0, &[], 10.0, "steps of 5°");
        check_turn(358.0, &[], 0.0, "steps of 5°");
        check_turn(-91.0, &[], 270.0, "steps of 5°");
    }

    #[test]
    fn rows_keep_to_the_sides_of_the_plot() {
        check_turn(34.0, &[33.0], 33.0, "along a side");
        check_turn(214.5, &[33.0], 213.0, "along a side");
        check_turn(124.0, &[33.0], 123.0, "square to a side");
        check_turn(40.0, &[33.0], 40.0, "steps of 5°");
    }

    #[test]
    fn a_direction_is_said_both_ways() {
        assert_eq!(words(Bearing::NORTH), "N – S, 0°");
        assert_eq!(words(Bearing::degrees(67.5)), "ENE – WSW, 67.5°");
    }

    #[test]
    fn pulling_a_row_away_from_what_stands_fast_widens_in_whole_inches() {
        let three = Length::feet(3.0);
        let pulled =
            |by: f64, remainder, left| pull(three, Length::inches(by), remainder, left, Units::Customary, false);
        let check =
            |length: Length, inches: f64| assert!(length.approx_eq(Length::inches(inches)), "{}", length.to_inches());
        check(pulled(4.3, Remainder::Centred, false), 40.0);
        check(pulled(4.3, Remainder::Centred, true), 32.0);
        check(pulled(-6.0, Remainder::Right, true), 30.0);
        check(pulled(-6.0, Remainder::Left, true), 42.0);
    }

    #[test]
    fn rows_pulled_onto_each_other_stay_an_inch_apart() {
        let pulled = pull(
            Length::feet(1.0),
            Length::feet(-5.0),
            Remainder::Right,
            false,
            Units::Customary,
            false,
        );
        assert!(pulled.approx_eq(Length::inches(1.0)));
        let free = pull(
            Length::feet(1.0),
            Length::feet(-5.0),
            Remainder::Right,
            false,
            Units::Customary,
            true,
        );
        assert!(free.approx_eq(Length::inches(1.0)));
    }
}
