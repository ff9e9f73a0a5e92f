//! When the dressings of a bed fall, as parts of the time from planting (0) to harvest (1).

use jiff::civil::Date;

use crate::catalog::{Catalog, Crop};
use crate::layout::{Bed, Placement, Planting, Sowing, When};

/// What is known of a bed's season.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(in crate::plan) struct SeasonOfBed {
    /// The day it is planted.
    pub(super) planted: Option<Date>,
    /// Days from planting to harvest.
    pub(super) days: Option<u16>,
}

impl SeasonOfBed {
    /// As the bed's planting and the crop book say.
    pub(in crate::plan) fn of(bed: &Bed, crop: Option<&Crop>) -> Self {
        Self {
            planted: bed.planting.as_ref().and_then(planted_on),
            days: crop.and_then(|crop| {
                let days = crop.days_to_harvest.as_ref()?;
                Some(days.low.value.midpoint(days.high.value))
            }),
        }
    }

    /// When each dressing of the bed falls, in the bed's order. What is done falls on its day.
    pub(in crate::plan) fn times(self, bed: &Bed) -> Vec<f64> {
        let planned = self.planned_times(bed);
        let times = bed.dressings.iter().zip(planned).map(|(dressing, planned)| {
            let on = dressing.used.and_then(|used| used.on);
            on.and_then(|day| self.part(day)).unwrap_or(planned)
        });
        times.collect()
    }

    /// When each dressing was to fall, whenever it was really done; one without a time follows the one before it in the
    /// list.
    pub(in crate::plan) fn planned_times(self, bed: &Bed) -> Vec<f64> {
        let mut before = 0.0;
        let times = bed.dressings.iter().map(|dressing| {
            before = self
                .at(&dressing.when)
                .or_else(|| usual(dressing.placement))
                .unwrap_or(before);
            before
        });
        times.collect()
    }

    fn at(self, when: &When) -> Option<f64> {
        match when {
            When::Stage(stage) => Some(Catalog::built_in().stage(stage)?.at.value.get()),
            When::Day(day) => self.part(*day),
            When::Unsaid | When::Words(_) => None,
        }
    }

    fn part(self, day: Date) -> Option<f64> {
        let since = self.planted?.until(day).ok()?.get_days();
        let days = self.days.filter(|days| *days > 0)?;
        Some((f64::from(since) / f64::from(days)).clamp(0.0, 1.0))
    }
}

/// The day a bed is planted: as noted, or the day its plants are set out.
fn planted_on(planting: &Planting) -> Option<Date> {
    planting.planted.or(match planting.sowing {
        Some(Sowing::Raised(raised)) => raised.set_out,
        _ => None,
    })
}

/// What is broadcast or banded without a time goes down at planting.
const fn usual(placement: Placement) -> Option<f64> {
    match placement {
        Placement::Broadcast | Placement::Band { .. } => Some(0.0),
        Placement::SideDress { .. } | Placement::Injected(_) => None,
    }
}
