//! When the dressings of a bed fall, as parts of the time from planting (0) to harvest (1).

use jiff::ToSpan as _;
use jiff::civil::Date;

use super::super::types::DressingDay;
use crate::catalog::{Catalog, Crop};
use crate::layout::{Bed, Dressing, Placement, Planting, Sowing, When};

/// What is known of a bed's season.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(in crate::plan) struct SeasonOfBed {
    /// The day it is planted.
    pub(super) planted: Option<Date>,
    /// Days from planting to harvest.
    pub(super) days: Option<u16>,
}

/// When a dressing falls.
#[derive(Clone, Debug, PartialEq)]
pub(in crate::plan) struct DressingTimes {
    /// The first time, as planned.
    pub(in crate::plan) first: DressingDay,
    /// Each of its feedings, at least one.
    pub(super) feedings: Vec<FeedingTime>,
}

/// When a feeding falls, as parts of the time from planting (0) to harvest (1).
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct FeedingTime {
    /// As planned.
    pub(super) planned: f64,
    /// As it was done, or is to be after those that were.
    pub(super) now: f64,
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

    /// When the dressings of the bed fall, in the bed's order; one without a time follows the one before it in the list.
    pub(in crate::plan) fn times(self, bed: &Bed) -> Vec<DressingTimes> {
        let mut before = 0.0;
        let times = bed.dressings.iter().map(|dressing| {
            let at = self
                .at(&dressing.when)
                .or_else(|| usual(dressing.placement))
                .unwrap_or(before);
            before = at;
            self.times_of(dressing, at)
        });
        times.collect()
    }

    /// The feedings of a dressing that begins at that part of the season.
    fn times_of(self, dressing: &Dressing, at: f64) -> DressingTimes {
        let every = self
            .days
            .filter(|days| *days > 0)
            .map_or(0.0, |days| f64::from(dressing.placement.every_days()) / f64::from(days));
        let mut next = at;
        let feedings = (0..dressing.feedings()).map(|feeding| {
            let noted = dressing.used.get(feeding).and_then(|used| used.on);
            let now = noted.and_then(|day| self.part(day)).unwrap_or(next);
            next = now + every;
            FeedingTime {
                planned: (at + feeding as f64 * every).clamp(0.0, 1.0),
                now: now.clamp(0.0, 1.0),
            }
        });
        DressingTimes {
            first: DressingDay {
                at,
                day: self.day_of(&dressing.when),
            },
            feedings: feedings.collect(),
        }
    }

    fn at(self, when: &When) -> Option<f64> {
        match when {
            When::Stage(stage) => Some(Catalog::built_in().stage(stage)?.at.value.get()),
            When::Day(day) => self.part(*day),
            When::Unsaid | When::Words(_) => None,
        }
    }

    /// The day: as it is given, or as a stage comes about, counted from the planting day.
    pub(super) fn day_of(self, when: &When) -> Option<Date> {
        match when {
            When::Day(day) => Some(*day),
            When::Stage(_) => self.day_at(self.at(when)?),
            When::Unsaid | When::Words(_) => None,
        }
    }

    /// The day at a part of the season, to the nearest day.
    pub(super) fn day_at(self, at: f64) -> Option<Date> {
        let after = (at * f64::from(self.days?)).round() as i64;
        self.planted?.checked_add(after.days()).ok()
    }

    /// A day as a part of the season; outside of 0 to 1 ahead of planting and after harvest.
    fn part(self, day: Date) -> Option<f64> {
        let since = self.planted?.until(day).ok()?.get_days();
        let days = self.days.filter(|days| *days > 0)?;
        Some(f64::from(since) / f64::from(days))
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
