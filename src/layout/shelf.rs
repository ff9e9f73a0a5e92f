//! What lies on the seed shelf, and what the supplier sells.

use jiff::civil::Date;

use super::ids::LotId;
use crate::catalog::{CropId, PlantingMethod};
use crate::quantity::{Fraction, Mass};

/// The form in which a cultivar lies on the shelf or is sold: one cultivar may come as seed, as sets and as plants.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Form {
    /// Seed.
    Seed,
    /// Sets, cloves, bulbs, seed pieces: whole or cut parts that are put in as they are.
    Pieces,
    /// Young plants, slips, crowns, divisions.
    Plants,
}

impl Form {
    /// The form in which a crop that is put in the ground in this way lies on the shelf.
    pub const fn usual(method: PlantingMethod) -> Self {
        match method {
            PlantingMethod::Drilled | PlantingMethod::Transplant => Self::Seed,
            PlantingMethod::SeedPiece | PlantingMethod::Set | PlantingMethod::Clove | PlantingMethod::Bulb => {
                Self::Pieces
            }
            PlantingMethod::Slip | PlantingMethod::Crown | PlantingMethod::Division | PlantingMethod::BareRoot => {
                Self::Plants
            }
        }
    }
}

/// One lot of seed, or of sets or pieces, on the shelf.
#[derive(Clone, Debug, PartialEq)]
pub struct SeedLot {
    /// Unique in the layout.
    pub id: LotId,
    /// The crop.
    pub crop: CropId,
    /// The cultivar, in the grower's words; may be empty.
    pub cultivar: String,
    /// Its form; `None` for the one in which the crop usually lies on the shelf.
    pub form: Option<Form>,
    /// The year on the tag, or that it was grown in.
    pub year: i16,
    /// How much is left of it.
    pub amount: SeedAmount,
    /// How much of it comes up.
    pub germination: LotGermination,
}

/// So much seed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum SeedAmount {
    /// By weight.
    Weight(Mass),
    /// By count: seeds, sets, pieces, plants.
    Count(u64),
}

/// How much of a lot comes up.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub enum LotGermination {
    /// Not known.
    #[default]
    NotKnown,
    /// As the tag says.
    Tag(Fraction),
    /// As a test of one's own found.
    OwnTest {
        /// Seeds that came up; may be none.
        came_up: u32,
        /// Seeds tested; one or more.
        of: u32,
        /// The day they were counted, where the grower noted it.
        on: Option<Date>,
    },
}

/// The packets in which a supplier sells a cultivar in one form.
#[derive(Clone, Debug, PartialEq)]
pub struct PacketList {
    /// The crop.
    pub crop: CropId,
    /// The cultivar, in the grower's words; empty for the crop without one.
    pub cultivar: String,
    /// The form it is sold in; `None` for the one in which the crop usually lies on the shelf.
    pub form: Option<Form>,
    /// The sizes, in the grower's order.
    pub sizes: Vec<Packet>,
}

/// One size of packet.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Packet {
    /// What it holds.
    pub amount: SeedAmount,
    /// What it costs, in the grower's own currency; not known when left out.
    pub price: Option<f64>,
}

impl SeedAmount {
    /// Whether there is nothing of it.
    pub fn is_nothing(self) -> bool {
        match self {
            Self::Weight(mass) => mass <= Mass::ZERO,
            Self::Count(count) => count == 0,
        }
    }
}

impl LotGermination {
    /// The part that comes up, as far as it is known.
    pub fn found(self) -> Option<Fraction> {
        match self {
            Self::NotKnown => None,
            Self::Tag(part) => Some(part),
            Self::OwnTest { came_up, of, .. } => Fraction::new(f64::from(came_up) / f64::from(of)),
        }
    }
}

/// Whether two names are of one cultivar: blanks round them, and upper and lower case, do not count.
pub fn same_cultivar(one: &str, other: &str) -> bool {
    cultivar_key(one) == cultivar_key(other)
}

/// The form of a cultivar's name by which it is told from others.
pub fn cultivar_key(name: &str) -> String {
    name.trim().to_lowercase()
}
