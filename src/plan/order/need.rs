//! What the beds of a line come to together.

use std::sync::Arc;

use super::{ForBed, Quantity};
use crate::agronomy;
use crate::layout::{BedId, Raised, Sowing};
use crate::plan::types::{BedPlan, GerminationFrom, Stand};
use crate::quantity::{Fraction, Mass};

/// What the beds of a line come to together.
#[derive(Default)]
pub(super) struct Need {
    pub(super) count: u64,
    pub(super) mass: Option<Mass>,
    /// The part of it that comes up, as the beds count on it.
    pub(super) germination: Fraction,
    /// Whether all beds know it; where one does not, only its good seeds are counted, and it takes more than that.
    pub(super) germination_known: bool,
    /// The part of that which comes up in the field too.
    pub(super) field_emergence: Fraction,
    pub(super) plants: u64,
    pub(super) before_thinning: u64,
    pub(super) beds: Vec<ForBed>,
    pub(super) wants: Vec<Want>,
}

/// What draws from the shelf together: all that goes straight into the ground, or the cells of one bed.
pub(super) struct Want {
    /// Seeds sown together of which one has to come up: those of a cell, elsewhere 1.
    pub(super) together: u16,
    /// So many times they are sown, as the beds count on what comes up.
    pub(super) places: u64,
    /// Of these, so many are expected to give a plant. Lots give these, each by its own germination.
    pub(super) live: f64,
    /// Plants that are to stand.
    pub(super) plants: u64,
    /// Where they are cells, the bed and how it raises its plants.
    pub(super) raised: Option<(BedId, Raised)>,
}

impl Want {
    /// The part of the places that gives a plant, with seed of which a part comes up.
    pub(super) fn filled(&self, comes_up: Fraction) -> f64 {
        agronomy::places_filled(self.together, comes_up).get()
    }
}

/// Adds up what the beds take.
pub(super) fn need_of(beds: &[Arc<BedPlan>]) -> Need {
    let mut need = Need {
        mass: Some(Mass::ZERO),
        germination_known: true,
        ..Need::default()
    };
    let mut straight = Want {
        together: 1,
        places: 0,
        live: 0.0,
        plants: 0,
        raised: None,
    };
    // Seeds that come up in a test.
    let mut up = 0.0;
    // Of these, seeds that come up where they are to stand.
    let mut up_there = 0.0;
    for bed in beds {
        let Some(stand) = bed.stand.as_ref() else { continue };
        let amount = amount_of(bed, stand);
        need.count = need.count.saturating_add(amount.count);
        need.mass = need.mass.zip(amount.mass).map(|(sum, mass)| sum + mass);
        if stand.sowing.takes_seed() && stand.germination_from == GerminationFrom::NotKnown {
            need.germination_known = false;
        }
        let part = if stand.sowing.takes_seed() {
            stand.germination
        } else {
            Fraction::ONE
        };
        up += amount.count as f64 * part.get();
        let part_there = if stand.sowing.takes_seed() {
            stand.comes_up()
        } else {
            Fraction::ONE
        };
        up_there += amount.count as f64 * part_there.get();
        if let Sowing::Raised(raised) = stand.sowing {
            let mut cells = Want {
                together: raised.seeds_per_cell,
                places: bed.totals.cells,
                live: 0.0,
                plants: bed.totals.plants,
                raised: Some((bed.bed, raised)),
            };
            cells.live = cells.places as f64 * cells.filled(part);
            need.wants.push(cells);
        } else {
            straight.places = straight.places.saturating_add(amount.count);
            straight.plants = straight.plants.saturating_add(bed.totals.plants);
            straight.live += amount.count as f64 * part.get();
        }
        need.plants = need.plants.saturating_add(bed.totals.plants);
        need.before_thinning = need
            .before_thinning
            .saturating_add(stand.before_thinning(bed.totals.plants));
        need.beds.push(ForBed {
            bed: bed.bed,
            amount,
            plants: bed.totals.plants,
        });
    }
    if straight.places > 0 {
        need.wants.insert(0, straight);
    }
    need.germination = share(up, need.count as f64);
    need.field_emergence = share(up_there, up);
    need
}

/// A part of a whole; all of it where there is nothing.
fn share(part: f64, whole: f64) -> Fraction {
    if whole > 0.0 {
        Fraction::new((part / whole).clamp(0.0, 1.0)).unwrap_or(Fraction::ONE)
    } else {
        Fraction::ONE
    }
}

/// What a bed takes.
fn amount_of(bed: &BedPlan, stand: &Stand) -> Quantity {
    let (count, mass) = if stand.sowing.takes_seed() {
        (bed.totals.seeds, bed.totals.seed_mass)
    } else {
        (bed.totals.set_out, bed.totals.set_out_mass)
    };
    Quantity { count, mass }
}
