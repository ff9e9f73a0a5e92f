//! What the catalogue knows of a crop.

use serde::Deserialize;

use super::growth::{Roots, SoilTemperatures, Stages, WaterUse};
use super::ids::CropId;
use super::row_amount::RowAmount;
use super::source::{Ends, Sourced};
use crate::quantity::{Fraction, Length, Mass, MassPerArea};

/// A crop and its numbers. What no source gives is left out. Spacings and depth stand for every crop of the catalogue;
/// they may be missing only where the grower made a crop from nothing.
#[derive(Clone, Debug, PartialEq)]
pub struct Crop {
    /// Its name in files.
    pub id: CropId,
    /// The crop of the catalogue that texts on feeding speak of: itself, or what a crop of the grower's own is based on.
    pub kin: CropId,
    /// Its name for people: "Bean, snap, bush".
    pub name: String,
    /// Other names that people know it by: "zucchini".
    pub also_called: Vec<String>,
    /// Its botanical name; empty where nobody says.
    pub botanical: String,
    /// Its plant family, by which crops are rotated; empty where nobody says.
    pub family: String,
    /// From row to row.
    pub row_spacing: Option<Ends<Length>>,
    /// From plant to plant in the row, as published.
    pub in_row: Option<Ends<Length>>,
    /// In-row spacing when it has all the water it asks for, as from buried or surface drip.
    pub in_row_watered: Option<Sourced<Length>>,
    /// In-row spacing where water may run short, as under sprinklers or on rain alone.
    pub in_row_dry: Option<Sourced<Length>>,
    /// Depth of seed, set or piece.
    pub depth: Option<Ends<Length>>,
    /// Mean weight of one seed.
    pub seed_weight: Option<Sourced<Mass>>,
    /// The lightest and the heaviest seed of the kind, on the mean of a lot; the tag of the lot in hand goes first.
    pub seed_weight_range: Option<Ends<Mass>>,
    /// What seed tables say to buy for a length of row. It is for sowing thickly and thinning, or for a bed of
    /// transplants: no count of plants follows from it.
    pub buying: Option<RowAmount>,
    /// Seed drilled in fields, for the ground.
    pub field_seed: Option<Ends<MassPerArea>>,
    /// The least part of the seeds that must come up for seed to be sold as this kind.
    pub least_germination: Option<Sourced<Fraction>>,
    /// Seeds that come up in a test, as a grower counts on for the crop or cultivar. It is a lot's and not a kind's,
    /// so the catalogue itself leaves it out.
    pub germination: Option<Sourced<Fraction>>,
    /// Years that its seed keeps on a cool and dry shelf.
    pub seed_keeps_years: Option<Sourced<u16>>,
    /// How it is usually put in the ground.
    pub method: Sourced<PlantingMethod>,
    /// Another way that is usual too.
    pub also_method: Option<Sourced<PlantingMethod>>,
    /// Good seeds sown for each plant that is to stand, where it is sown; the rest are thinned out.
    pub seeds_per_plant: Option<Sourced<f64>>,
    /// Height when grown: the middle of what is usual.
    pub height: Option<Sourced<Length>>,
    /// Heights that are usual; on its support where it climbs.
    pub height_range: Option<Ends<Length>>,
    /// Temperatures of the soil in which it sprouts.
    pub soil: Option<SoilTemperatures>,
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
    /// How heavily it feeds on nitrogen.
    pub nitrogen_need: Option<Sourced<NitrogenNeed>>,
    /// Nitrogen for the whole season where the soil gives little. A recommendation, not what the crop takes up.
    pub season_nitrogen: Option<Sourced<MassPerArea>>,
    /// What gardens harvest from a length of row. A guide, not a promise.
    pub harvest: Option<RowAmount>,
    /// How much water it uses.
    pub water_use: Option<WaterUse>,
    /// How deep it roots.
    pub roots: Option<Roots>,
    /// How long its stages of growth last.
    pub stages: Option<Stages>,
    /// Anything else a grower should know.
    pub notes: Vec<Sourced<String>>,
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
    /// Whole bulbs that split into several.
    Bulb,
    /// Crowns of old plants.
    Crown,
    /// Pieces of old plants with roots on.
    Division,
    /// Young plants without soil on their roots.
    BareRoot,
}

impl PlantingMethod {
    /// Whether seeds go into the ground one place after another, so that seed is counted by germination.
    pub const fn is_sown(self) -> bool {
        matches!(self, Self::Drilled)
    }

    /// Whether it starts from seed, where it is to stand or under cover.
    pub const fn is_from_seed(self) -> bool {
        matches!(self, Self::Drilled | Self::Transplant)
    }

    /// Whether a crop put in the ground in this way lies on the shelf as the very same thing as in another way, so that
    /// what one of it weighs holds for both.
    pub fn is_same_on_shelf(self, other: Self) -> bool {
        self == other || (self.is_from_seed() && other.is_from_seed())
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

/// The season that a crop belongs to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Season {
    /// Planted before the last frost, or in late summer for fall.
    Cool,
    /// Planted after the last frost.
    Warm,
}

impl Hardiness {
    /// The season that crops of this class belong to: tender ones to the warm season, all others to the cool one.
    ///
    /// # Source
    ///
    /// Texas Agricultural Extension Service, Vegetable Grower's Handbook, Table 1.
    pub const fn season(self) -> Season {
        match self {
            Self::VeryHardy | Self::Hardy | Self::HalfHardy => Season::Cool,
            Self::Tender | Self::VeryTender => Season::Warm,
        }
    }
}

/// How heavily a crop feeds on nitrogen.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Deserialize)]
pub enum NitrogenNeed {
    /// Little: it finds or makes most of its own.
    Light,
    /// A middling amount.
    Medium,
    /// Much, and again while it grows.
    Heavy,
}

impl Crop {
    /// The season that it belongs to, by its hardiness.
    pub fn season(&self) -> Option<Season> {
        self.hardiness.as_ref().map(|class| class.value.season())
    }

    /// Seeds in an ounce, as seed tables give them.
    pub fn seeds_per_ounce(&self) -> Option<f64> {
        self.seed_weight.as_ref().map(|weight| Mass::ounces(1.0) / weight.value)
    }
}
