//! Beds: a part of a plot with rows of its own, and what grows there.

use jiff::civil::Date;

use super::dressing::Dressing;
use super::feeding::Feeding;
use super::ids::{BedId, DressingId, PlotId};
use crate::catalog::CropId;
use crate::geometry::{Lines, Point, Remainder};
use crate::quantity::{Bearing, FlowPerLength, Fraction, Length, Mass};

/// A part of a plot with rows of its own.
#[derive(Clone, Debug, PartialEq)]
pub struct Bed {
    /// Unique in the layout.
    pub id: BedId,
    /// The plot it lies in.
    pub plot: PlotId,
    /// What the grower calls it.
    pub name: String,
    /// Which part of the plot it takes.
    pub ground: BedGround,
    /// Which way rows run.
    pub bearing: Bearing,
    /// From row to row, square to the rows.
    pub row_spacing: Length,
    /// From the extreme edge to the first row; half a row spacing when not given, so that each row owns a
    /// strip one spacing wide.
    pub edge_margin: Option<Length>,
    /// Where left-over width goes.
    pub remainder: Remainder,
    /// Kept free at each end of every piece of row, measured along the row.
    pub headland: Length,
    /// Kept free all along the bed's outline, square to it.
    pub clear: Length,
    /// Pieces of row shorter than this are not planted.
    pub shortest: Length,
    /// Lines of plants on one row.
    pub lines: Lines,
    /// How the bed gets its water.
    pub water: Water,
    /// Tape laid with the rows; it counts only where the water comes through tape.
    pub tape: Tape,
    /// The beds that get water together name one zone; a bed without a name runs by itself.
    pub zone: String,
    /// What grows there; nothing yet if `None`.
    pub planting: Option<Planting>,
    /// What it wants in nutrients, and what it has already.
    pub feeding: Feeding,
    /// What is put down over the season, in order.
    pub dressings: Vec<Dressing>,
}

/// Which part of its plot a bed takes.
#[derive(Clone, Debug, PartialEq)]
pub enum BedGround {
    /// All of it: the bed follows the plot when the plot changes.
    WholePlot,
    /// An outline of its own; what lies past the plot does not count.
    Corners(Vec<Point>),
}

/// How a bed gets its water, which sets how close plants may stand in the row.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Water {
    /// Tape buried under the row.
    #[default]
    BuriedDrip,
    /// Tape on top of the ground.
    SurfaceDrip,
    /// Sprinklers.
    Overhead,
    /// Rain alone.
    Rain,
}

impl Water {
    /// Every kind, in the order they are offered.
    pub const ALL: [Self; 4] = [Self::BuriedDrip, Self::SurfaceDrip, Self::Overhead, Self::Rain];

    /// Whether it comes through tape, so that the crop gets all the water it asks for.
    pub const fn through_tape(self) -> bool {
        matches!(self, Self::BuriedDrip | Self::SurfaceDrip)
    }

    /// The word for it in files and on the command line.
    pub const fn id(self) -> &'static str {
        match self {
            Self::BuriedDrip => "buried-drip",
            Self::SurfaceDrip => "surface-drip",
            Self::Overhead => "overhead",
            Self::Rain => "rain",
        }
    }

    /// The word for it on screen and on paper.
    pub const fn name(self) -> &'static str {
        match self {
            Self::BuriedDrip => "buried drip",
            Self::SurfaceDrip => "surface drip",
            Self::Overhead => "overhead",
            Self::Rain => "rain only",
        }
    }

    /// The kind with that id.
    pub fn from_id(id: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|water| water.id() == id)
    }
}

/// Tape laid with each row.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tape {
    /// Lines of tape on one row.
    pub lines_per_row: u8,
    /// Added to every piece of row for the fittings at its ends.
    pub spare: Length,
    /// Water that one line of it lets out.
    pub flow: FlowPerLength,
    /// From outlet to outlet.
    pub outlets: Length,
    /// Width inside, when full.
    pub bore: Length,
}

/// What grows in a bed.
#[derive(Clone, Debug, PartialEq)]
pub struct Planting {
    /// The crop.
    pub crop: CropId,
    /// The cultivar, in the grower's words; may be empty.
    pub cultivar: String,
    /// The day it is sown or set out in the bed, when known.
    pub planted: Option<Date>,
    /// The grower's own in-row spacing; the crop's own for the bed's water when not given.
    pub in_row: Option<Length>,
    /// The grower's own distance from the end of a piece to the first plant; half the in-row spacing when not given.
    pub end_gap: Option<Length>,
    /// How it is put in the ground; the crop's usual way when not given.
    pub sowing: Option<Sowing>,
    /// Seeds that come up out of those sown; the federal standard for the kind when not given.
    pub germination: Option<Fraction>,
    /// Of the seeds that come up in a test, the part that comes up in the field; all of them when not given.
    pub field_emergence: Option<Fraction>,
    /// Seed, sets or plants added on top, as a part of the need.
    pub spare: Fraction,
}

/// How a crop is put in the ground.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Sowing {
    /// Sown, with this many good seeds for each plant that is to stand, and thinned.
    Seed {
        /// Good seeds for each plant that is to stand; 1 or more.
        seeds_per_plant: f64,
    },
    /// Dropped at the in-row spacing, and thinned to one at each place.
    Dropped {
        /// Good seeds at each place; 1 or more.
        seeds_per_place: u16,
    },
    /// Sown in hills at the in-row spacing, and thinned to a few in each.
    Hills {
        /// Good seeds in each hill; as many as plants, or more.
        seeds_per_hill: u16,
        /// Plants that are to stand in each hill; 1 or more.
        plants_per_hill: u16,
    },
    /// Raised from seed in trays and set out, one in each place.
    Raised(Raised),
    /// Sets, cloves, seed pieces or bulbs by weight, one for each place.
    Pieces {
        /// Weight of one; the crop's own when not given.
        each: Option<Mass>,
    },
    /// Bought plants, slips, crowns or bare-root plants by count, one for each place.
    Plants,
}

/// How plants are raised in trays.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Raised {
    /// Seeds sown in each cell; thinned to one.
    pub seeds_per_cell: u16,
    /// Young plants that are lost before setting out, as a part of those that came up; not all of them.
    pub losses: Fraction,
    /// Cells in a tray, when trays are to be counted.
    pub cells_per_tray: Option<u16>,
    /// Days from sowing to setting out, when the day of sowing is to be worked out.
    pub days_in_tray: Option<u16>,
    /// The day of setting out, when known.
    pub set_out: Option<Date>,
}

impl Raised {
    /// One seed a cell and nothing lost, with no trays or days.
    pub const PLAIN: Self = Self {
        seeds_per_cell: 1,
        losses: Fraction::ZERO,
        cells_per_tray: None,
        days_in_tray: None,
        set_out: None,
    };
}

impl Sowing {
    /// Whether seed is what it takes.
    pub const fn takes_seed(self) -> bool {
        !matches!(self, Self::Pieces { .. } | Self::Plants)
    }

    /// In words, for lists.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Seed { .. } => "seed, thinned",
            Self::Dropped { .. } => "seed, dropped at the spacing",
            Self::Hills { .. } => "seed in hills",
            Self::Raised(_) => "plants raised in trays",
            Self::Pieces { .. } => "sets or pieces",
            Self::Plants => "plants",
        }
    }

    /// Plants that are to stand at each place.
    pub const fn plants_per_place(self) -> u16 {
        match self {
            Self::Hills { plants_per_hill, .. } => plants_per_hill,
            _ => 1,
        }
    }
}

impl Bed {
    /// The edge margin in force: the grower's own, or half a row spacing.
    pub fn edge_margin_in_force(&self) -> Length {
        self.edge_margin.unwrap_or(self.row_spacing / 2.0)
    }

    /// The dressing of that id.
    pub fn dressing(&self, id: DressingId) -> Option<&Dressing> {
        self.dressings.iter().find(|dressing| dressing.id == id)
    }
}
