//! Ways of planting, the shelf and packets as they stand in the file.
//!
//! What belongs together is checked together while it is read, so that the error names the place.

use std::sync::Arc;

use serde::{Deserialize, Serialize};

use super::to_layout::Ids;
use crate::catalog::CropId;
use crate::layout::file::value::{Day, Name, Part, Price, Seeds, SomePart, UnitMass, Weight, Words};
use crate::layout::limits::{self, Least, ValueError};
use crate::layout::{self, LotId};
use crate::quantity::Mass;

/// Defines a value that is read and written as `$text`, and checked as a whole.
macro_rules! checked_whole {
    ($(#[$doc:meta])* $name:ident($inner:ty) as $text_name:literal: $text:ty) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
        #[serde(try_from = $text_name, into = $text_name)]
        pub(in crate::layout::file) struct $name(pub(super) $inner);
    };
}

checked_whole! {
    /// How a crop is put in the ground.
    Sowing(layout::Sowing) as "SowingText": SowingText
}
checked_whole! {
    /// How much of a lot comes up.
    Germination(layout::LotGermination) as "GerminationText": GerminationText
}
checked_whole! {
    /// So much seed.
    SeedAmount(layout::SeedAmount) as "AmountText": AmountText
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

#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
enum GerminationText {
    NotKnown,
    /// A part of one: 0.85.
    Tag(SomePart),
    OwnTest {
        came_up: u32,
        of: u32,
    },
}

impl TryFrom<GerminationText> for Germination {
    type Error = ValueError;
    fn try_from(text: GerminationText) -> Result<Self, ValueError> {
        Ok(Self(match text {
            GerminationText::NotKnown => layout::LotGermination::NotKnown,
            GerminationText::Tag(part) => layout::LotGermination::Tag(part.fraction()),
            GerminationText::OwnTest { came_up, of } => {
                limits::germination_test(came_up, of)?;
                layout::LotGermination::OwnTest { came_up, of }
            }
        }))
    }
}

impl From<Germination> for GerminationText {
    fn from(germination: Germination) -> Self {
        match germination.0 {
            layout::LotGermination::NotKnown => Self::NotKnown,
            layout::LotGermination::Tag(part) => Self::Tag(SomePart::of(part.get())),
            layout::LotGermination::OwnTest { came_up, of } => Self::OwnTest { came_up, of },
        }
    }
}

impl Germination {
    fn is_not_known(&self) -> bool {
        self.0 == layout::LotGermination::NotKnown
    }
}

impl Default for Germination {
    fn default() -> Self {
        Self(layout::LotGermination::NotKnown)
    }
}

#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
enum AmountText {
    Kg(Weight),
    Count(u64),
}

impl TryFrom<AmountText> for SeedAmount {
    type Error = ValueError;
    fn try_from(text: AmountText) -> Result<Self, ValueError> {
        let amount = match text {
            AmountText::Kg(weight) => layout::SeedAmount::Weight(Mass::kilograms(weight.into())),
            AmountText::Count(count) => layout::SeedAmount::Count(count),
        };
        limits::seed_amount("this amount", amount, Least::Nothing)?;
        Ok(Self(amount))
    }
}

impl From<SeedAmount> for AmountText {
    fn from(amount: SeedAmount) -> Self {
        match amount.0 {
            layout::SeedAmount::Weight(mass) => Self::Kg(Weight::of(mass.to_kilograms())),
            layout::SeedAmount::Count(count) => Self::Count(count),
        }
    }
}

#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(in crate::layout::file) struct Lot {
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub(super) id: Option<u32>,
    crop: Name,
    #[serde(default, skip_serializing_if = "Words::is_empty")]
    cultivar: Words,
    year: Year,
    amount: SeedAmount,
    #[serde(default, skip_serializing_if = "Germination::is_not_known")]
    germination: Germination,
}

/// A year.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(try_from = "i16", into = "i16")]
struct Year(i16);

impl TryFrom<i16> for Year {
    type Error = ValueError;
    fn try_from(year: i16) -> Result<Self, ValueError> {
        let (first, last) = (*limits::SEASONS.start(), *limits::SEASONS.end());
        limits::range("the year", f64::from(year), f64::from(first), f64::from(last))?;
        Ok(Self(year))
    }
}

impl From<Year> for i16 {
    fn from(year: Year) -> Self {
        year.0
    }
}

impl Lot {
    pub(super) fn read(self, ids: &mut Ids) -> Arc<layout::SeedLot> {
        Arc::new(layout::SeedLot {
            id: LotId(ids.or_new(self.id)),
            crop: CropId(self.crop.into()),
            cultivar: self.cultivar.into(),
            year: self.year.0,
            amount: self.amount.0,
            germination: self.germination.0,
        })
    }
}

impl From<&layout::SeedLot> for Lot {
    fn from(lot: &layout::SeedLot) -> Self {
        Self {
            id: Some(lot.id.0),
            crop: Name::from(&lot.crop.0),
            cultivar: Words::from(&lot.cultivar),
            year: Year(lot.year),
            amount: SeedAmount(lot.amount),
            germination: Germination(lot.germination),
        }
    }
}

/// What a supplier sells of a cultivar.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(in crate::layout::file) struct PacketList {
    crop: Name,
    #[serde(default, skip_serializing_if = "Words::is_empty")]
    cultivar: Words,
    sizes: Sizes,
}

#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(try_from = "Vec<Packet>", into = "Vec<Packet>")]
struct Sizes(Vec<Packet>);

impl TryFrom<Vec<Packet>> for Sizes {
    type Error = ValueError;
    fn try_from(sizes: Vec<Packet>) -> Result<Self, ValueError> {
        limits::packet_count(sizes.len())?;
        for size in &sizes {
            limits::seed_amount("what a packet holds", size.amount.0, Least::Something)?;
        }
        Ok(Self(sizes))
    }
}

impl From<Sizes> for Vec<Packet> {
    fn from(sizes: Sizes) -> Self {
        sizes.0
    }
}

#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Packet {
    amount: SeedAmount,
    /// In the grower's own currency.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    price: Option<Price>,
}

impl PacketList {
    pub(super) fn read(self) -> Arc<layout::PacketList> {
        let sizes = self.sizes.0.into_iter().map(|packet| layout::Packet {
            amount: packet.amount.0,
            price: packet.price.map(f64::from),
        });
        Arc::new(layout::PacketList {
            crop: CropId(self.crop.into()),
            cultivar: self.cultivar.into(),
            sizes: sizes.collect(),
        })
    }
}

impl From<&layout::PacketList> for PacketList {
    fn from(list: &layout::PacketList) -> Self {
        let sizes = list.sizes.iter().map(|packet| Packet {
            amount: SeedAmount(packet.amount),
            price: packet.price.map(Price::of),
        });
        Self {
            crop: Name::from(&list.crop.0),
            cultivar: Words::from(&list.cultivar),
            sizes: Sizes(sizes.collect()),
        }
    }
}

const fn one() -> u16 {
    1
}
