//! How a crop is put in the ground.

use serde::{Deserialize, Serialize};

use crate::layout;
use crate::layout::file::value::{Day, Part, Seeds, UnitMass};
use crate::layout::limits::{self, ValueError};

checked_whole! {
    /// How a crop is put in the ground.
    Sowing(layout::Sowing) as "SowingText": SowingText
}

#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
enum SowingText {
    Seed {
        seeds_per_plant: Seeds,
    },
    Dropped {
        seeds_per_place: u16,
    },
    Hills {
        seeds_per_hill: u16,
        #[serde(default = "one")]
        plants_per_hill: u16,
    },
    Raised {
        #[serde(default = "one")]
        seeds_per_cell: u16,
        #[serde(default, skip_serializing_if = "Part::is_zero")]
        lost_part: Part,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        cells_per_tray: Option<u16>,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        days_in_tray: Option<u16>,
        /// Year, month and day: 2027-05-10.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        set_out: Option<Day>,
    },
    Pieces {
        #[serde(default, skip_serializing_if = "Option::is_none")]
        each_kg: Option<UnitMass>,
    },
    Plants,
}

impl TryFrom<SowingText> for Sowing {
    type Error = ValueError;
    fn try_from(text: SowingText) -> Result<Self, ValueError> {
        let sowing = match text {
            SowingText::Seed { seeds_per_plant } => layout::Sowing::Seed {
                seeds_per_plant: seeds_per_plant.into(),
            },
            SowingText::Dropped { seeds_per_place } => layout::Sowing::Dropped { seeds_per_place },
            SowingText::Hills {
                seeds_per_hill,
                plants_per_hill,
            } => layout::Sowing::Hills {
                seeds_per_hill,
                plants_per_hill,
            },
            SowingText::Raised {
                seeds_per_cell,
                lost_part,
                cells_per_tray,
                days_in_tray,
                set_out,
            } => layout::Sowing::Raised(layout::Raised {
                seeds_per_cell,
                losses: lost_part.fraction(),
                cells_per_tray,
                days_in_tray,
                set_out: set_out.map(|day| day.0),
            }),
            SowingText::Pieces { each_kg } => layout::Sowing::Pieces {
                each: each_kg.map(UnitMass::mass),
            },
            SowingText::Plants => layout::Sowing::Plants,
        };
        limits::sowing(sowing)?;
        Ok(Self(sowing))
    }
}

impl From<Sowing> for SowingText {
    fn from(sowing: Sowing) -> Self {
        match sowing.0 {
            layout::Sowing::Seed { seeds_per_plant } => Self::Seed {
                seeds_per_plant: Seeds::of(seeds_per_plant),
            },
            layout::Sowing::Dropped { seeds_per_place } => Self::Dropped { seeds_per_place },
            layout::Sowing::Hills {
                seeds_per_hill,
                plants_per_hill,
            } => Self::Hills {
                seeds_per_hill,
                plants_per_hill,
            },
            layout::Sowing::Raised(raised) => Self::Raised {
                seeds_per_cell: raised.seeds_per_cell,
                lost_part: Part::of(raised.losses.get()),
                cells_per_tray: raised.cells_per_tray,
                days_in_tray: raised.days_in_tray,
                set_out: raised.set_out.map(Day),
            },
            layout::Sowing::Pieces { each } => Self::Pieces {
                each_kg: each.map(UnitMass::from),
            },
            layout::Sowing::Plants => Self::Plants,
        }
    }
}

const fn one() -> u16 {
    1
}
