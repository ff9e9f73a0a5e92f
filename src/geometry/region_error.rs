//! What can be wrong with a ring of corners, said so that a grower can mend it.

use super::point::Point;
use super::wording::in_metres;
use crate::quantity::{Length, count};

/// Which ring of corners a sentence is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RingName {
    /// The outline of the plot.
    Outline,
    /// The outline of the bed.
    Bed,
    /// An obstacle, by its place in the list given, from 0.
    Obstacle(usize),
}

impl std::fmt::Display for RingName {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Outline => write!(f, "The outline"),
            Self::Bed => write!(f, "The bed"),
            Self::Obstacle(index) => write!(f, "Obstacle {}", index + 1),
        }
    }
}

/// Why a ring of corners bounds no ground. Corners and sides are numbered as they were given, from 0 in the fields
/// and from 1 in the sentences; side `i` runs from corner `i` to the next one.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum RegionError {
    /// Fewer than three different corners.
    #[error("{ring} has {} and needs at least three different ones. Add the missing corners.", corners_in_words(*distinct))]
    TooFewCorners {
        /// The ring.
        ring: RingName,
        /// How many different corners it has.
        distinct: usize,
    },
    /// More corners than the program works with.
    #[error(
        "{ring} has {} corners; up to {} can be worked with. Leave out corners that lie close together.",
        count(*corners as u64), count(*limit as u64)
    )]
    TooManyCorners {
        /// The ring.
        ring: RingName,
        /// How many corners it has.
        corners: usize,
        /// How many it may have.
        limit: usize,
    },
    /// The corners lie on one line, or all but.
    #[error("{ring} encloses no ground: its corners lie on one line, {}. Move a corner off that line.", place(*at))]
    NoArea {
        /// The ring.
        ring: RingName,
        /// Its first corner.
        at: Point,
    },
    /// Two sides cross, or run back over one another so that inside and outside cannot be told apart.
    #[error(
        "{ring} crosses itself where side {} meets side {}, {}. Move a corner of one of these sides, or put the corners in the order you walk them.",
        sides.0 + 1, sides.1 + 1, place(*at)
    )]
    SelfCrossing {
        /// The ring.
        ring: RingName,
        /// Where the two sides meet.
        at: Point,
        /// The two sides.
        sides: (usize, usize),
    },
    /// A coordinate that is infinite or "not a number".
    #[error("Corner {} of {} is not a place: a coordinate is not a number. Type the corner again.", corner + 1, in_sentence(*ring))]
    NotFinite {
        /// The ring.
        ring: RingName,
        /// The corner.
        corner: usize,
    },
    /// A corner too far from the layout's origin.
    #[error(
        "Corner {} of {} is more than 1,000 km from the layout's origin. Check the corner's numbers and their unit.",
        corner + 1, in_sentence(*ring)
    )]
    TooFar {
        /// The ring.
        ring: RingName,
        /// The corner.
        corner: usize,
    },
    /// A clear distance that is negative, not a number or larger than 1,000 km.
    #[error(
        "The clear distance of {} is {}; it has to be a length from 0 up to 1,000 km. Type it again.",
        in_sentence(*ring), in_metres(*clear)
    )]
    Clear {
        /// The ring.
        ring: RingName,
        /// The distance as it was given.
        clear: Length,
    },
}

fn in_sentence(ring: RingName) -> String {
    match ring {
        RingName::Outline => "the outline".to_owned(),
        RingName::Bed => "the bed".to_owned(),
        RingName::Obstacle(index) => format!("obstacle {}", index + 1),
    }
}

fn corners_in_words(distinct: usize) -> &'static str {
    match distinct {
        0 => "no corner",
        1 => "one corner",
        _ => "two corners",
    }
}

/// A place in both families of units, since a sentence is read far from the choice of units.
fn place(at: Point) -> String {
    let feet = |metres: f64| Length::metres(metres).to_feet();
    format!(
        "at {:.1} ft east, {:.1} ft north ({:.2} m, {:.2} m)",
        feet(at.x),
        feet(at.y),
        at.x,
        at.y
    )
}
