//! The feedings of a dressing one by one: when each is, how much it takes, and whether it is done.

use jiff::civil::Date;

use super::super::types::DressingPlan;
use crate::layout::Dressing;
use crate::quantity::Mass;

/// One of the times that a dressing is given.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Feeding {
    /// The day: noted where it is done, else counted from the first or from the last that was noted.
    pub day: Option<Date>,
    /// Product: what was really used, or what is still ahead.
    pub product: Mass,
    /// Whether it is done.
    pub is_done: bool,
}

/// Every feeding of a dressing, those done and those ahead.
pub fn feedings(dressing: &Dressing, of_plan: &DressingPlan) -> Vec<Feeding> {
    let days = dressing.days(of_plan.from.day).into_iter().enumerate();
    let feedings = days.map(|(place, day)| {
        let used = dressing.used.get(place);
        Feeding {
            day: used.map_or(day, |used| used.on),
            product: used.map_or_else(|| of_plan.each_ahead(), |used| used.amount),
            is_done: used.is_some(),
        }
    });
    feedings.collect()
}
