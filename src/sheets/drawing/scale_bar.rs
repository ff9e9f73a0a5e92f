//! The scale bar: a round length of ground, drawn true, in points of the sheet.

use crate::geometry::Point;
use crate::quantity::{Length, Units, number};
use crate::sheets::mark::{Anchor, Dash, Face, Ink, Mark, Pen, Words};

/// A scale bar.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ScaleBar {
    /// The ground it stands for.
    pub ground: Length,
    /// Its length on the sheet in points of 1/72 in.
    pub points: f64,
    /// The units it is marked in.
    pub units: Units,
}

/// Points in an inch of paper.
const POINTS_PER_INCH: f64 = 72.0;

impl ScaleBar {
    /// The longest bar of round ground that is no longer than `most` points.
    pub fn fitting(points_per_metre: f64, units: Units, most: f64) -> Option<Self> {
        Self::round_lengths(units, false)
            .map(|ground| Self::of(ground, points_per_metre, units))
            .filter(|bar| bar.points <= most && bar.points > 0.0)
            .last()
    }

    /// The bar for a printed sheet: of round ground, and where it can be of a round length on paper too, close
    /// to 2 in or 50 mm, so that it can be checked with a ruler.
    pub fn to_check(points_per_metre: f64, units: Units) -> Option<Self> {
        let (wished, step) = match units {
            Units::Customary => (2.0 * POINTS_PER_INCH, POINTS_PER_INCH / 2.0),
            Units::Metric => (50.0 / 25.4 * POINTS_PER_INCH, 10.0 / 25.4 * POINTS_PER_INCH),
        };
        let off = |bar: &Self| {
            let steps = bar.points / step;
            let uneven = (steps - steps.round()).abs() > 1e-6;
            (bar.points - wished).abs() + if uneven { POINTS_PER_INCH } else { 0.0 }
        };
        Self::round_lengths(units, true)
            .map(|ground| Self::of(ground, points_per_metre, units))
            .filter(|bar| (0.6..=1.8).contains(&(bar.points / wished)))
            .min_by(|a, b| off(a).total_cmp(&off(b)))
    }

    fn of(ground: Length, points_per_metre: f64, units: Units) -> Self {
        Self {
            ground,
            points: ground.to_metres() * points_per_metre,
            units,
        }
    }

    /// Lengths that halve well, from short to long; `more` of them for a sheet, so that one comes out round on
    /// paper too.
    fn round_lengths(units: Units, more: bool) -> impl Iterator<Item = Length> {
        let digits: &[f64] = match (units, more) {
            (_, false) => &[1.0, 2.0, 4.0, 5.0],
            (Units::Customary, true) => &[1.0, 1.2, 1.6, 2.0, 2.4, 3.0, 3.2, 4.0, 5.0, 6.0, 8.0],
            (Units::Metric, true) => &[1.0, 2.0, 4.0, 5.0, 6.0, 8.0],
        };
        (-1..6).flat_map(move |power| {
            digits
                .iter()
                .map(move |digit| digit * 10f64.powi(power))
                .map(move |value| match units {
                    Units::Customary => Length::feet(value),
                    Units::Metric => Length::metres(value),
                })
        })
    }

    /// Its length on paper in words, for the line that says how to check it: "2 in", "50 mm".
    pub fn on_paper(&self) -> String {
        let inches = self.points / POINTS_PER_INCH;
        match self.units {
            Units::Customary => format!("{} in", number(inches, 2)),
            Units::Metric => format!("{} mm", number(inches * 25.4, 1)),
        }
    }

    /// The bar with its left end at a place of the sheet (points, y down), figures above it.
    pub fn marks(&self, left: Point) -> Vec<Mark> {
        /// How thick the bar is, in points.
        const THICK: f64 = 4.0;
        let quarter = self.points / 4.0;
        let at = |right: f64, down: f64| Point::metres(left.x + right, left.y + down);
        let block = |k: f64| {
            vec![
                at(k * quarter, 0.0),
                at((k + 1.0) * quarter, 0.0),
                at((k + 1.0) * quarter, THICK),
                at(k * quarter, THICK),
            ]
        };
        let mut marks = vec![
            Mark::Fill {
                rings: vec![vec![
                    at(0.0, 0.0),
                    at(self.points, 0.0),
                    at(self.points, THICK),
                    at(0.0, THICK),
                ]],
                ink: Ink::Paper,
            },
            Mark::Fill {
                rings: vec![block(0.0)],
                ink: Ink::Strong,
            },
            Mark::Fill {
                rings: vec![block(2.0)],
                ink: Ink::Strong,
            },
            Mark::Line {
                points: vec![
                    at(0.0, 0.0),
                    at(self.points, 0.0),
                    at(self.points, THICK),
                    at(0.0, THICK),
                ],
                closed: true,
                pen: Pen {
                    width: 0.5,
                    ink: Ink::Strong,
                    dash: Dash::Solid,
                },
            },
        ];
        let (whole, unit) = match self.units {
            Units::Customary => (self.ground.to_feet(), "ft"),
            Units::Metric => (self.ground.to_metres(), "m"),
        };
        let half = number(whole / 2.0, 2);
        for (right, text) in [
            (0.0, "0".to_owned()),
            (self.points / 2.0, half),
            (self.points, format!("{} {unit}", number(whole, 2))),
        ] {
            marks.push(Mark::Words(Words {
                at: at(right, -3.5),
                text,
                anchor: Anchor::Centre,
                face: Face {
                    size: 7.5,
                    bold: false,
                    ink: Ink::Strong,
                },
                turn: 0.0,
                plate: None,
            }));
        }
        marks
    }
}
