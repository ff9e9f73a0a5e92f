//! Sheets of paper and which way round they lie.

use crate::quantity::Units;

/// A sheet of paper.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Paper {
    /// 8.5 by 11 in (ANSI/ASME Y14.1 size A).
    #[default]
    Letter,
    /// 210 by 297 mm (ISO 216).
    A4,
}

/// Which way round a sheet lies.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Turned {
    /// The short side across.
    Portrait,
    /// The long side across.
    Landscape,
}

/// Points in a millimetre: 72 to the inch of 25.4 mm.
pub const POINTS_PER_MILLIMETRE: f64 = 72.0 / 25.4;

impl Paper {
    /// The paper in the drawer of someone who uses those units.
    pub const fn usual(units: Units) -> Self {
        match units {
            Units::Customary => Self::Letter,
            Units::Metric => Self::A4,
        }
    }

    /// Every sheet, in the order they are offered.
    pub const ALL: [Self; 2] = [Self::Letter, Self::A4];

    /// The word for it on screen.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Letter => "Letter",
            Self::A4 => "A4",
        }
    }

    /// Width and height in points of 1/72 in.
    pub fn size(self, turned: Turned) -> (f64, f64) {
        let (short, long) = match self {
            Self::Letter => (612.0, 792.0),
            Self::A4 => (210.0 * POINTS_PER_MILLIMETRE, 297.0 * POINTS_PER_MILLIMETRE),
        };
        match turned {
            Turned::Portrait => (short, long),
            Turned::Landscape => (long, short),
        }
    }

    /// Kept free along every edge, in points: 0.5 in or 12 mm, what common printers leave white at least.
    pub fn margin(self) -> f64 {
        match self {
            Self::Letter => 36.0,
            Self::A4 => 12.0 * POINTS_PER_MILLIMETRE,
        }
    }
}
