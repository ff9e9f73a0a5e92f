//! How plants stand in the row: the crop's spacing for the bed's water, or the grower's own.

use super::things::Things;
use super::types::{GerminationFrom, InRowFrom, PlantedCrop, Stand};
use crate::agronomy;
use crate::catalog::{Crop, PlantingMethod};
use crate::layout::{Planting, Sowing, Water};
use crate::quantity::{Fraction, Length, Mass};

/// How a planting stands. `None` when the grower has given no in-row spacing, and the crop book lacks the crop or its
/// spacing for that water.
pub(super) fn stand(planting: &Planting, water: Water, crop: Option<&Crop>) -> Option<Stand> {
    let mut sowing = planting
        .sowing
        .unwrap_or_else(|| crop.map_or(Sowing::Plants, usual_way));
    if let Sowing::Raised(raised) = &mut sowing {
        // The day the bed is planted is the day they are set out.
        raised.set_out = planting.planted.or(raised.set_out);
    }
    // The crop's spacing is from plant to plant: a hill of two plants stands twice as far from the next.
    let from_place_to_place = |spacing: Length| spacing * f64::from(sowing.plants_per_place().max(1));
    let (in_row, in_row_from) = match (planting.in_row, crop) {
        (Some(own), _) => (own, InRowFrom::Grower),
        (None, Some(crop)) if water.through_tape() => {
            let watered = crop.in_row_watered.as_ref()?;
            (from_place_to_place(watered.value), InRowFrom::CropWatered)
        }
        (None, Some(crop)) => {
            let dry = crop.in_row_dry.as_ref()?;
            (from_place_to_place(dry.value), InRowFrom::CropDry)
        }
        (None, None) => return None,
    };
    let federal_standard = crop
        .and_then(|crop| crop.least_germination.as_ref())
        .map(|least| least.value);
    let of_book = crop.and_then(|crop| crop.germination.as_ref()).map(|part| part.value);
    let (germination, germination_from) = match (planting.germination, of_book, federal_standard) {
        (Some(own), ..) => (own, GerminationFrom::Grower),
        (None, Some(own), _) => (own, GerminationFrom::CropBook),
        (None, None, Some(least)) => (least, GerminationFrom::FederalStandard),
        (None, None, None) => (Fraction::ONE, GerminationFrom::NotKnown),
    };
    Some(Stand {
        in_row,
        in_row_from,
        end_gap: planting.end_gap.unwrap_or(in_row / 2.0),
        sowing,
        seeds_per_plant: seeds_per_plant(sowing),
        germination,
        germination_from,
        field_emergence: planting.field_emergence.unwrap_or(Fraction::ONE),
    })
}

/// The way in which a crop is usually put in the ground.
fn usual_way(crop: &Crop) -> Sowing {
    match crop.method.value {
        PlantingMethod::Drilled => Sowing::Seed {
            seeds_per_plant: crop.seeds_per_plant.as_ref().map_or(1.0, |seeds| seeds.value),
        },
        PlantingMethod::SeedPiece | PlantingMethod::Set | PlantingMethod::Clove | PlantingMethod::Bulb => {
            Sowing::Pieces { each: None }
        }
        PlantingMethod::Transplant
        | PlantingMethod::Slip
        | PlantingMethod::Crown
        | PlantingMethod::Division
        | PlantingMethod::BareRoot => Sowing::Plants,
    }
}

/// Seeds for each plant that is to stand, where seed is what it takes.
fn seeds_per_plant(sowing: Sowing) -> Option<f64> {
    match sowing {
        Sowing::Seed { seeds_per_plant } => Some(seeds_per_plant),
        Sowing::Dropped { seeds_per_place } => Some(f64::from(seeds_per_place)),
        Sowing::Hills {
            seeds_per_hill,
            plants_per_hill,
        } => Some(f64::from(seeds_per_hill) / f64::from(plants_per_hill.max(1))),
        Sowing::Raised(raised) => Some(f64::from(raised.seeds_per_cell)),
        Sowing::Pieces { .. } | Sowing::Plants => None,
    }
}

impl Stand {
    /// The part of the seeds sown that comes up where it is to stand. Under cover nothing is lost to the field, so
    /// plants raised in trays come up as in the test.
    pub fn comes_up(&self) -> Fraction {
        match self.sowing {
            Sowing::Raised(_) => self.germination,
            _ => agronomy::comes_up(self.germination, self.field_emergence),
        }
    }

    /// Plants that come up and are still to be thinned, of so many that are to stand; as many where nothing is thinned.
    pub fn before_thinning(&self, plants: u64) -> u64 {
        match self.sowing {
            Sowing::Seed { .. } | Sowing::Dropped { .. } | Sowing::Hills { .. } => self
                .seeds_per_plant
                .and_then(|seeds| agronomy::plants_before_thinning(plants, seeds).ok())
                .unwrap_or(plants),
            Sowing::Raised(_) | Sowing::Pieces { .. } | Sowing::Plants => plants,
        }
    }

    /// Good seeds that go to one place: one plant's or one hill's.
    pub fn seeds_per_place(&self) -> Option<f64> {
        self.seeds_per_plant
            .map(|seeds| seeds * f64::from(self.sowing.plants_per_place()))
    }
}

impl PlantedCrop {
    /// What one seed, set or piece weighs, sown or set out in this way. The crop book's weight is that of what the crop
    /// usually comes from: a seed's says nothing of a set.
    pub fn one_weighs(&self, sowing: Sowing) -> Option<Mass> {
        let of_book = self
            .seed_weight
            .filter(|_| sowing.takes_seed() == (Things::on_shelf(self.method) == Things::Seeds));
        match sowing {
            Sowing::Pieces { each } => each.or(of_book),
            Sowing::Plants => None,
            _ => of_book,
        }
    }
}
