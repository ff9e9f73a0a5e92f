//! What a new thing is like before the grower says otherwise, and what it is called.

use super::bed::{Bed, BedGround, Planting, Tape, Water};
use super::document::Layout;
use super::feeding::Feeding;
use super::ground::{ObstacleKind, Plot};
use super::ids::BedId;
use crate::catalog::CropId;
use crate::geometry::{Lines, Point, Remainder};
use crate::quantity::{Bearing, FlowPerLength, Fraction, Length, Units};

/// The year that a plan made on a day is for: from September on, the next one.
pub const fn season_planned_on(year: i16, month: i8) -> i16 {
    if month >= 9 { year.saturating_add(1) } else { year }
}

impl Layout {
    /// A bed in a plot, as it is before the grower says otherwise. It is not put into the layout.
    ///
    /// Rows run along the longest side of its outline, for fewer turns; of equally long sides, along the one that
    /// runs closer to north and south, so that rows shade each other least. Nothing is planted.
    ///
    /// # Source
    /// Row spacing 3 ft: the standard one of sweet corn, common practice, no source; 0.9 m is the same in round
    /// metres. Rows along the longest side, north to south where either will do: common practice, no source.
    /// Shortest piece (2 ft, 0.6 m), distance between lines (8 in, 0.2 m) and spare tape (1 ft, 0.3 m): starting
    /// values of our own choice.
    pub fn new_bed(&self, plot: &Plot, ground: BedGround, name: Option<String>, id: BedId) -> Bed {
        let bearing = match &ground {
            BedGround::WholePlot => along_longest_side(&plot.outline),
            BedGround::Corners(corners) => along_longest_side(corners),
        };
        let by_units = |customary, metric| match self.units {
            Units::Customary => customary,
            Units::Metric => metric,
        };
        Bed {
            id,
            plot: plot.id,
            name: name.unwrap_or_else(|| self.next_bed_name()),
            ground,
            bearing,
            row_spacing: by_units(Length::feet(3.0), Length::metres(0.9)),
            edge_margin: None,
            remainder: Remainder::Centred,
            headland: Length::ZERO,
            clear: Length::ZERO,
            shortest: by_units(Length::feet(2.0), Length::metres(0.6)),
            lines: Lines {
                per_row: 1,
                apart: by_units(Length::inches(8.0), Length::metres(0.2)),
                staggered: false,
            },
            water: Water::BuriedDrip,
            tape: Tape {
                lines_per_row: 1,
                spare: by_units(Length::feet(1.0), Length::metres(0.3)),
                ..Tape::PLAIN
            },
            zone: String::new(),
            planting: None,
            feeding: Feeding::default(),
            dressings: Vec::new(),
        }
    }

    /// "Plot 1", or the first number that no plot has.
    pub fn next_plot_name(&self) -> String {
        first_free("Plot", |name| self.plots.iter().any(|plot| plot.name == name))
    }

    /// "Bed 1", or the first number that no bed of the layout has.
    pub fn next_bed_name(&self) -> String {
        first_free("Bed", |name| self.beds.iter().any(|bed| bed.name == name))
    }

    /// The name with the first number from 2 on that no bed has: "Corn 2" after "Corn" or "Corn 1".
    pub fn next_name_like(&self, name: &str) -> String {
        let stem = match name.rsplit_once(' ') {
            Some((stem, number)) if number.parse::<u32>().is_ok() => stem,
            _ => name,
        };
        let taken = |name: &String| self.beds.iter().any(|bed| bed.name == *name);
        (2u32..)
            .map(|number| format!("{stem} {number}"))
            .find(|name| !taken(name))
            .unwrap_or_else(|| self.next_bed_name())
    }

    /// "Tree 1", or the first number that nothing in the way in the layout has.
    pub fn next_obstacle_name(&self, kind: ObstacleKind) -> String {
        first_free(kind.word(), |name| {
            self.plots
                .iter()
                .flat_map(|plot| &plot.obstacles)
                .any(|obstacle| obstacle.name == name)
        })
    }
}

impl Tape {
    /// One line of medium-flow tape, five eighths of an inch wide, with an outlet every foot and nothing spare.
    ///
    /// # Source
    /// About 0.5 gpm to 100 ft for medium flow: University of Missouri Extension, G6462. Width and outlets: common
    /// practice, no source.
    pub const PLAIN: Self = Self {
        lines_per_row: 1,
        spare: Length::ZERO,
        flow: FlowPerLength::gallons_per_minute_per_100_feet(0.5),
        outlets: Length::feet(1.0),
        bore: Length::inches(0.625),
    };
}

impl Planting {
    /// A crop with everything else left to the crop, and no seed on top.
    pub const fn of(crop: CropId) -> Self {
        Self {
            crop,
            cultivar: String::new(),
            planted: None,
            in_row: None,
            end_gap: None,
            sowing: None,
            germination: None,
            field_emergence: None,
            spare: Fraction::ZERO,
        }
    }
}

impl ObstacleKind {
    /// Every kind, in the order they are offered.
    pub const ALL: [Self; 4] = [Self::Tree, Self::Well, Self::Building, Self::Other];

    /// The word that a new one is named by.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Tree => "Tree",
            Self::Well => "Well",
            Self::Building => "Building",
            Self::Other => "Obstacle",
        }
    }
}

/// The direction of the longest side, from 0 to 180 degrees; of equally long ones, that closest to north and
/// south. North where there is no side at all.
fn along_longest_side(outline: &[Point]) -> Bearing {
    let mut longest = Length::ZERO;
    let mut bearing = Bearing::NORTH;
    for (start, end) in outline.iter().zip(outline.iter().cycle().skip(1)) {
        let length = start.distance(*end);
        let direction = along(*start, *end);
        let longer = length > longest + Length::TOLERANCE;
        let closer_to_north = length.approx_eq(longest) && from_north(direction) < from_north(bearing);
        if longer || closer_to_north {
            longest = length.max(longest);
            bearing = direction;
        }
    }
    bearing
}

/// The direction from one point to another, turned by half a circle where that brings it under 180 degrees: rows
/// run both ways, and the row numbers should not depend on which way round an outline was drawn.
fn along(start: Point, end: Point) -> Bearing {
    let degrees = (end.x - start.x).atan2(end.y - start.y).to_degrees();
    let half = degrees.rem_euclid(180.0);
    if 180.0 - half < Bearing::TOLERANCE_DEGREES {
        return Bearing::NORTH;
    }
    Bearing::degrees(half)
}

/// Degrees between a direction under 180 and the line from north to south.
fn from_north(bearing: Bearing) -> f64 {
    let degrees = bearing.to_degrees();
    degrees.min(180.0 - degrees)
}

fn first_free(word: &str, taken: impl Fn(&str) -> bool) -> String {
    let mut number: u64 = 1;
    loop {
        let name = format!("{word} {number}");
        if !taken(&name) {
            return name;
        }
        number += 1;
    }
}
