//! What the catalogue knows of a crop.

use serde::Deserialize;

use super::ids::CropId;
use super::source::{Ends, Sourced};
use crate::quantity::{Fraction, Length, Mass, MassPerArea};

/// A crop and its published numbers. What no source gives is left out.
#[derive(Clone, Debug, PartialEq)]
pub struct Crop {
    /// Its name in files.
    pub id: CropId,
    /// Its name for people: "Bean, snap, bush".
    pub name: String,
    /// Its botanical name.
    pub botanical: String,
    /// Its plant family, by which crops are rotated.
    pub family: String,
    /// From row to row.
    pub row_spacing: Ends<Length>,
    /// From plant to plant in the row, as published.
    pub in_row: Ends<Length>,
    /// In-row spacing when it has all the water it asks for, as from buried or surface drip.
    pub in_row_watered: Sourced<Length>,
    /// In-row spacing where water may run short, as under sprinklers or on rain alone.
    pub in_row_dry: Sourced<Length>,
    /// Depth of seed, set or piece.
    pub depth: Ends<Length>,
    /// Mean weight of one seed.
    pub seed_weight: Option<Sourced<Mass>>,
    /// The least part of the seeds that must come up for seed to be sold as this kind.
    pub least_germination: Option<Sourced<Fraction>>,
    /// How it is usually put in the ground.
    pub method: Sourced<PlantingMethod>,
    /// Good seeds sown for each plant that is to stand, where it is sown; the rest are thinned out.
    pub seeds_per_plant: Option<Sourced<f64>>,
    /// Height when grown.
    pub height: Option<Sourced<Length>>,
    /// Days to harvest: from transplanting where it is transplanted, otherwise from planting.
    pub days_to_harvest: Option<Ends<u16>>,
    /// Whether it is hilled.
    pub hilled: Option<Sourced<Hilling>>,
    /// What cold it stands.
    pub hardiness: Option<Sourced<Hardiness>>,
    /// First planting, in weeks after the average last frost of spring; before it when negative.
    pub weeks_from_last_frost: Option<Ends<i8>>,
    /// Rows that should stand side by side, for crops that the wind pollinates.
    pub least_rows: Option<Sourced<u64>>,
    /// Nitrogen for the whole season where the soil gives little. A recommendation, not what the crop takes up.
    pub season_nitrogen: Option<Sourced<MassPerArea>>,
    /// Anything else a grower should know.
    pub note: Option<Sourced<String>>,
}

/// How a crop is put in the ground.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Deserialize)]
pub enum PlantingMethod {
    /// Sown where it is to stand, and thinned.
    Drilled,
    /// Set out as young plants.
    Transplant,
    /// Cut pieces of tuber.
    SeedPiece,
    /// Small bulbs.
    Set,
    /// Rooted or unrooted shoots.
    Slip,
    /// Single cloves of a bulb.
    Clove,
    /// Crowns or divisions of old plants.
    Crown,
}

impl PlantingMethod {
    /// Whether seeds go into the ground one place after another, so that seed is counted by germination.
    pub const fn is_sown(self) -> bool {
        matches!(self, Self::Drilled)
    }

    /// What is put in each place, in words: "seeds", "seed pieces".
    pub const fn things(self) -> &'static str {
        match self {
            Self::Drilled => "seeds",
            Self::Transplant => "plants",
            Self::SeedPiece => "seed pieces",
            Self::Set => "sets",
            Self::Slip => "slips",
            Self::Clove => "cloves",
            Self::Crown => "crowns",
        }
    }
}

/// Whether soil is drawn up to a crop.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Deserialize)]
pub enum Hilling {
    /// It is, as a rule.
    Yes,
    /// It may be.
    Optional,
    /// It is not.
    No,
}

/// What cold a crop stands, in the classes of planting calendars.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Deserialize)]
pub enum Hardiness {
    /// Stands hard frost.
    VeryHardy,
    /// Stands frost.
    Hardy,
    /// Stands light frost.
    HalfHardy,
    /// Is hurt by frost.
    Tender,
    /// Is hurt by cold above freezing.
    VeryTender,
}

impl Crop {
    /// Seeds in an ounce, as seed tables give them.
    pub fn seeds_per_ounce(&self) -> Option<f64> {
        self.seed_weight.as_ref().map(|weight| Mass::ounces(1.0) / weight.value)
    }
}
