//! The grower's own crops and cultivars, and own values over the catalogue's.

use crate::catalog::{CropId, PlantingMethod};
use crate::quantity::{CountPerLength, Fraction, Length, Mass, MassPerArea, MassPerLength};

/// A crop with values of the grower's own.
///
/// With an id that the catalogue has, and starting from itself, it puts its values over that crop's; with another id it
/// is a crop of the grower's own.
#[derive(Clone, Debug, PartialEq)]
pub struct OwnCrop {
    /// Its name in files.
    pub id: CropId,
    /// What it starts from.
    pub start: OwnStart,
    /// Its name for people; empty for that of the crop it is based on.
    pub name: String,
    /// What differs.
    pub values: OwnValues,
}

/// What a crop of the grower's own starts from.
#[derive(Clone, Debug, PartialEq)]
pub enum OwnStart {
    /// A crop of the catalogue, from which it has what it does not say itself.
    Crop(CropId),
    /// Nothing: what it does not say itself is not known. It has to say how it is put in the ground.
    Blank(Kind),
}

/// What kind of plant a crop is that no catalogue has.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Kind {
    /// Its botanical name; may be empty.
    pub botanical: String,
    /// Its plant family, by which crops are rotated; may be empty.
    pub family: String,
}

/// A cultivar with values of the grower's own, over its crop's.
#[derive(Clone, Debug, PartialEq)]
pub struct OwnCultivar {
    /// The crop it is of.
    pub crop: CropId,
    /// Its name; beds name it as their cultivar.
    pub name: String,
    /// What differs.
    pub values: OwnValues,
}

/// Values of the grower's own; what is left out stays the crop's.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct OwnValues {
    /// From row to row.
    pub row_spacing: Option<Length>,
    /// In-row spacing with all the water it asks for.
    pub in_row_watered: Option<Length>,
    /// In-row spacing where water may run short.
    pub in_row_dry: Option<Length>,
    /// Depth of seed, set or piece.
    pub depth: Option<Length>,
    /// Mean weight of one seed, set or piece.
    pub seed_weight: Option<Mass>,
    /// How it is put in the ground.
    pub method: Option<PlantingMethod>,
    /// Good seeds sown for each plant that is to stand.
    pub seeds_per_plant: Option<f64>,
    /// Seeds that come up in a test, counted on where neither bed nor lot says otherwise.
    pub germination: Option<Fraction>,
    /// Years that its seed keeps on a cool and dry shelf.
    pub seed_keeps_years: Option<u16>,
    /// Height when grown.
    pub height: Option<Length>,
    /// Days to harvest.
    pub days_to_harvest: Option<u16>,
    /// What a length of row gives.
    pub harvest: Option<OwnHarvest>,
    /// Nitrogen for the whole season where the soil gives little.
    pub season_nitrogen: Option<MassPerArea>,
}

/// What a length of row gives a grower.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum OwnHarvest {
    /// By weight.
    Weight(MassPerLength),
    /// By number: ears, heads, bunches.
    Number(CountPerLength),
}

impl OwnCrop {
    /// Whether it puts values over a crop of the catalogue, instead of being a crop of its own.
    pub fn is_over_catalogue(&self) -> bool {
        self.based_on() == Some(&self.id)
    }

    /// The crop of the catalogue that it is based on; `None` where it starts from nothing.
    pub const fn based_on(&self) -> Option<&CropId> {
        match &self.start {
            OwnStart::Crop(crop) => Some(crop),
            OwnStart::Blank(_) => None,
        }
    }
}

impl OwnValues {
    /// Whether nothing differs.
    pub fn is_empty(&self) -> bool {
        *self == Self::default()
    }
}
