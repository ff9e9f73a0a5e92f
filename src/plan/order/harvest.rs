//! What the beds of a line may give together.

use std::sync::Arc;

use crate::agronomy::Harvest;
use crate::plan::types::{BedHarvest, BedPlan, HarvestAmount};

/// The sum of what the beds may give, by published yields; `None` where none is published for the crop.
pub(super) fn harvest_of(beds: &[Arc<BedPlan>]) -> Option<BedHarvest> {
    let mut all = beds.iter().filter_map(|bed| bed.harvest.as_ref());
    let mut sum = all.next()?.clone();
    for harvest in all {
        sum.amount = match (sum.amount, harvest.amount) {
            (HarvestAmount::Weight(one), HarvestAmount::Weight(other)) => HarvestAmount::Weight(Harvest {
                low: one.low + other.low,
                high: one.high + other.high,
            }),
            (HarvestAmount::Number(one), HarvestAmount::Number(other)) => HarvestAmount::Number(Harvest {
                low: one.low + other.low,
                high: one.high + other.high,
            }),
            // Beds of one cultivar are weighed or counted alike.
            (one, _) => one,
        };
    }
    Some(sum)
}

impl BedHarvest {
    /// Whether one average stands behind it and no range.
    pub fn is_average(&self) -> bool {
        match self.amount {
            HarvestAmount::Weight(range) => range.is_average(),
            HarvestAmount::Number(range) => range.is_average(),
        }
    }
}
