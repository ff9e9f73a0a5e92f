//! Where a place that the hand points at is drawn to: corners, sides, right angles, parallels, whole steps; and
//! the words for the reason. Knows nothing of the screen: distances are metres of ground.

use crate::geometry::Point;
use crate::geometry::polygon::nearest_on;
use crate::quantity::{Length, Units};

/// A side that is there already.
#[derive(Clone, Debug)]
pub(super) struct Side {
    /// Where it starts.
    pub(super) from: Point,
    /// Where it ends.
    pub(super) to: Point,
    /// Whose side it is: "Lower plot".
    pub(super) of: String,
}

/// A line on which the place would make something even.
#[derive(Clone, Debug)]
pub(super) struct Guide {
    /// A place on the line.
    pub(super) through: Point,
    /// The unit step along it, east and north.
    pub(super) along: (f64, f64),
    /// What is even there: "right angle".
    pub(super) why: &'static str,
}

/// Everything that a place may be drawn to.
#[derive(Clone, Debug, Default)]
pub(super) struct Around {
    /// Corners that are there already, with whose they are.
    pub(super) corners: Vec<(Point, String)>,
    /// Sides that are there already.
    pub(super) sides: Vec<Side>,
    /// Lines through what is being drawn, the more telling first.
    pub(super) guides: Vec<Guide>,
    /// Where whole steps are counted from.
    pub(super) origin: Point,
    /// Where the side being drawn starts: away from every line its length goes by whole steps.
    pub(super) side_from: Option<Point>,
    /// Whole steps; none when not positive.
    pub(super) step: Option<Step>,
    /// How far a place is drawn, in metres.
    pub(super) reach: f64,
}

/// A step of the grid.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Step {
    /// Its size in metres.
    pub(super) metres: f64,
    /// What it is called: "whole feet".
    pub(super) words: &'static str,
}

/// Where a place came to lie.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Snapped {
    /// The place.
    pub(super) at: Point,
    /// Why there, in words; empty where it is just where the hand is.
    pub(super) why: String,
}

/// Steps of the grid that growers think in, the finer first.
const FEET: [(f64, &str); 8] = [
    (1.0 / 12.0, "whole inches"),
    (0.25, "3 in steps"),
    (1.0, "whole feet"),
    (5.0, "5 ft steps"),
    (10.0, "10 ft steps"),
    (50.0, "50 ft steps"),
    (100.0, "100 ft steps"),
    (500.0, "500 ft steps"),
];
const METRES: [(f64, &str); 8] = [
    (0.01, "whole centimetres"),
    (0.05, "5 cm steps"),
    (0.25, "25 cm steps"),
    (1.0, "whole metres"),
    (5.0, "5 m steps"),
    (10.0, "10 m steps"),
    (50.0, "50 m steps"),
    (100.0, "100 m steps"),
];

/// The finest step that is at least so many metres.
pub(super) fn step_of_at_least(metres: f64, units: Units) -> Option<Step> {
    let (steps, unit) = match units {
        Units::Customary => (FEET, Length::feet(1.0).to_metres()),
        Units::Metric => (METRES, 1.0),
    };
    steps
        .into_iter()
        .map(|(size, words)| Step {
            metres: size * unit,
            words,
        })
        .find(|step| step.metres >= metres)
}

/// Draws a place to what is nearest around it. A corner goes before all; then the crossing of two lines; then one
/// line, and whole steps along it; then whole steps alone.
pub(super) fn snap(place: Point, around: &Around) -> Snapped {
    if let Some((at, of)) = nearest_corner(place, around) {
        return Snapped {
            at,
            why: if of.is_empty() {
                "corner".to_owned()
            } else {
                format!("corner of {of}")
            },
        };
    }
    let lines = lines_in_reach(place, around);
    if let Some(crossing) = nearest_crossing(place, &lines, around) {
        return crossing;
    }
    if let Some(line) = lines.first() {
        let (at, stepped) = step_along(line, around);
        let why = match stepped {
            Some(words) => format!("{}, {words}", line.why),
            None => line.why.clone(),
        };
        return Snapped { at, why };
    }
    match around.step {
        Some(step) if step.metres > 0.0 => Snapped {
            at: whole_side(place, around, step).unwrap_or_else(|| on_grid(place, around.origin, step)),
            why: step.words.to_owned(),
        },
        _ => Snapped {
            at: place,
            why: String::new(),
        },
    }
}

/// A line in reach and the place on it that is nearest.
struct InReach {
    at: Point,
    along: (f64, f64),
    through: Point,
    /// For a side, its ends: places past them are not on it.
    ends: Option<(Point, Point)>,
    why: String,
    off: f64,
}

fn nearest_corner(place: Point, around: &Around) -> Option<(Point, &str)> {
    around
        .corners
        .iter()
        .map(|(corner, of)| (corner.distance(place).to_metres(), *corner, of.as_str()))
        .filter(|(off, ..)| *off <= around.reach)
        .min_by(|a, b| a.0.total_cmp(&b.0))
        .map(|(_, corner, of)| (corner, of))
}

/// Lines in reach, the nearest first; of equally near ones, those named first.
fn lines_in_reach(place: Point, around: &Around) -> Vec<InReach> {
    let guides = around.guides.iter().map(|guide| {
        let at = foot(place, guide.through, guide.along);
        InReach {
            at,
            along: guide.along,
            through: guide.through,
            ends: None,
            why: guide.why.to_owned(),
            off: at.distance(place).to_metres(),
        }
    });
    let sides = around.sides.iter().filter_map(|side| {
        let length = side.from.distance(side.to).to_metres();
        let at = nearest_on(side.from, side.to, place);
        (length > 0.0).then(|| InReach {
            at,
            along: ((side.to.x - side.from.x) / length, (side.to.y - side.from.y) / length),
            through: side.from,
            ends: Some((side.from, side.to)),
            why: format!("on the side of {}", side.of),
            off: at.distance(place).to_metres(),
        })
    });
    let mut lines: Vec<InReach> = guides.chain(sides).filter(|line| line.off <= around.reach).collect();
    lines.sort_by(|a, b| a.off.total_cmp(&b.off));
    lines
}

fn nearest_crossing(place: Point, lines: &[InReach], around: &Around) -> Option<Snapped> {
    /// Lines that meet at less than this sine cross too far off to be meant.
    const FLAT: f64 = 0.05;
    let mut best: Option<(f64, Snapped)> = None;
    for (index, one) in lines.iter().enumerate() {
        for two in lines.iter().skip(index + 1) {
            let turn = one.along.0 * two.along.1 - one.along.1 * two.along.0;
            if turn.abs() < FLAT {
                continue;
            }
            let (dx, dy) = (two.through.x - one.through.x, two.through.y - one.through.y);
            let far = (dx * two.along.1 - dy * two.along.0) / turn;
            let at = Point::metres(one.through.x + one.along.0 * far, one.through.y + one.along.1 * far);
            let off = at.distance(place).to_metres();
            let on_sides = [one, two].into_iter().all(|line| {
                line.ends
                    .is_none_or(|(from, to)| nearest_on(from, to, at).distance(at) <= Length::TOLERANCE)
            });
            if off <= around.reach * 1.5 && on_sides && best.as_ref().is_none_or(|(least, _)| off < *least) {
                let why = if one.why == two.why {
                    one.why.clone()
                } else {
                    format!("{}, {}", one.why, two.why)
                };
                best = Some((off, Snapped { at, why }));
            }
        }
    }
    best.map(|(_, snapped)| snapped)
}

/// Whole steps along a line, counted from the place it goes through.
fn step_along(line: &InReach, around: &Around) -> (Point, Option<&'static str>) {
    let Some(step) = around.step.filter(|step| step.metres > 0.0) else {
        return (line.at, None);
    };
    let far = (line.at.x - line.through.x) * line.along.0 + (line.at.y - line.through.y) * line.along.1;
    let whole = (far / step.metres).round() * step.metres;
    let at = Point::metres(
        line.through.x + line.along.0 * whole,
        line.through.y + line.along.1 * whole,
    );
    match line.ends {
        // Past the end of a side there is no side.
        Some((from, to)) if nearest_on(from, to, at).distance(at) > Length::TOLERANCE => (line.at, None),
        _ => (at, Some(step.words)),
    }
}

/// The place in the same direction at a whole length; `None` where no side is drawn, or one without length.
fn whole_side(place: Point, around: &Around, step: Step) -> Option<Point> {
    let from = around.side_from?;
    let (east, north) = unit(from, place)?;
    let length = (from.distance(place).to_metres() / step.metres).round().max(1.0) * step.metres;
    Some(Point::metres(from.x + east * length, from.y + north * length))
}

fn on_grid(place: Point, origin: Point, step: Step) -> Point {
    let whole = |at: f64, from: f64| from + ((at - from) / step.metres).round() * step.metres;
    Point::metres(whole(place.x, origin.x), whole(place.y, origin.y))
}

fn foot(place: Point, through: Point, along: (f64, f64)) -> Point {
    let far = (place.x - through.x) * along.0 + (place.y - through.y) * along.1;
    Point::metres(through.x + along.0 * far, through.y + along.1 * far)
}

/// The unit step from one place to another; `None` where they are one.
pub(super) fn unit(from: Point, to: Point) -> Option<(f64, f64)> {
    let length = from.distance(to).to_metres();
    (length.is_finite() && length > 1e-9).then(|| ((to.x - from.x) / length, (to.y - from.y) / length))
}

#[cfg(test)]
mod tests {
    use super::super::guides::{guides_for_corner, guides_for_next};
    use super::*;

    fn feet(x: f64, y: f64) -> Point {
        Point::feet(x, y)
    }

    /// Nothing around but whole feet.
    fn empty() -> Around {
        Around {
            step: step_of_at_least(0.2, Units::Customary),
            reach: 0.15,
            ..Around::default()
        }
    }

    #[track_caller]
    fn check(place: Point, around: &Around, at: Point, why: &str) {
        let snapped = snap(place, around);
        assert!(
            snapped.at.distance(at).to_metres() < 1e-9,
            "{:?} is not {at:?} ({})",
            snapped.at,
            snapped.why
        );
        assert_eq!(snapped.why, why);
    }

    #[test]
    fn with_nothing_around_a_place_goes_to_whole_feet() {
        check(feet(10.3, 4.6), &empty(), feet(10.0, 5.0), "whole feet");
    }

    #[test]
    fn without_a_step_a_place_stays() {
        let around = Around { step: None, ..empty() };
        check(feet(10.3, 4.6), &around, feet(10.3, 4.6), "");
    }

    #[test]
    fn whole_steps_count_from_where_drawing_began() {
        let around = Around {
            origin: feet(0.25, 0.5),
            ..empty()
        };
        check(feet(10.3, 4.6), &around, feet(10.25, 4.5), "whole feet");
    }

    #[test]
    fn a_side_away_from_every_line_is_a_whole_length() {
        // 3 east and 4 north is 5 long; 2 % more than that still is.
        let around = Around {
            side_from: Some(feet(1.0, 1.0)),
            ..empty()
        };
        check(feet(4.06, 5.08), &around, feet(4.0, 5.0), "whole feet");
    }

    #[test]
    fn a_corner_goes_before_a_side_and_the_grid() {
        let mut around = empty();
        around.corners.push((feet(10.4, 4.4), "Lower plot".to_owned()));
        around.sides.push(Side {
            from: feet(0.0, 4.4),
            to: feet(10.4, 4.4),
            of: "Lower plot".to_owned(),
        });
        check(feet(10.3, 4.6), &around, feet(10.4, 4.4), "corner of Lower plot");
    }

    #[test]
    fn a_side_draws_the_place_onto_it_in_whole_steps() {
        let mut around = empty();
        around.sides.push(Side {
            from: feet(0.0, 4.4),
            to: feet(30.0, 4.4),
            of: "Lower plot".to_owned(),
        });
        check(
            feet(10.3, 4.6),
            &around,
            feet(10.0, 4.4),
            "on the side of Lower plot, whole feet",
        );
        check(feet(10.3, 6.6), &around, feet(10.0, 7.0), "whole feet");
    }

    #[test]
    fn a_right_angle_to_the_side_before_is_found_at_any_turn() {
        // The first side runs 3 east and 4 north, so square to it is 4 west and 3 north.
        let corners = [feet(0.0, 0.0), feet(3.0, 4.0)];
        let around = Around {
            guides: guides_for_next(&corners, &[]),
            ..empty()
        };
        check(
            feet(3.0 - 8.1, 4.0 + 6.1),
            &around,
            feet(3.0 - 8.0, 4.0 + 6.0),
            "right angle, whole feet",
        );
    }

    #[test]
    fn two_lines_that_cross_in_reach_give_both_reasons() {
        // Three corners of a rectangle: the fourth closes it.
        let corners = [feet(0.0, 0.0), feet(20.0, 0.0), feet(20.0, 11.5)];
        let mut guides = guides_for_next(&corners, &[]);
        guides.retain(|guide| guide.why == "right angle" || guide.why == "square to the first side");
        let around = Around { guides, ..empty() };
        check(
            feet(0.2, 11.7),
            &around,
            feet(0.0, 11.5),
            "right angle, square to the first side",
        );
    }

    #[test]
    fn a_corner_of_a_rectangle_pulled_straight_keeps_its_right_angle() {
        let ring = [feet(0.0, 0.0), feet(20.0, 0.0), feet(20.0, 10.0), feet(0.0, 10.0)];
        let around = Around {
            guides: guides_for_corner(&ring, 2),
            ..empty()
        };
        let snapped = snap(feet(24.2, 10.1), &around);
        assert!(snapped.at.distance(feet(24.0, 10.0)).to_metres() < 1e-9, "{snapped:?}");
        assert!(snapped.why.starts_with("right angle"), "{snapped:?}");
    }

    #[test]
    fn steps_grow_with_the_distance_looked_from() {
        let words = |metres, units| step_of_at_least(metres, units).map(|step| step.words);
        assert_eq!(words(0.01, Units::Customary), Some("whole inches"));
        assert_eq!(words(0.1, Units::Customary), Some("whole feet"));
        assert_eq!(words(1.0, Units::Customary), Some("5 ft steps"));
        assert_eq!(words(0.1, Units::Metric), Some("25 cm steps"));
        assert_eq!(words(1e9, Units::Metric), None);
    }
}
