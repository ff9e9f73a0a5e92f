//! How an account runs through the season, in steps: as it was planned, what is done, and what is still ahead.

use super::types::{BedFeeding, FeedingStep};
use crate::agronomy::Nutrient;
use crate::quantity::MassPerArea;

/// How the account of one nutrient runs through the season.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Course {
    /// Every feeding as it was planned.
    pub planned: Vec<CourseStep>,
    /// What was really put down, in order of time.
    pub done: Vec<CourseStep>,
    /// What is still ahead, from where `done` ends.
    pub ahead: Vec<CourseStep>,
}

/// One step of a course.
#[derive(Clone, Debug, PartialEq)]
pub struct CourseStep {
    /// The dressing.
    pub name: String,
    /// When, as a part of the time from planting (0) to harvest (1).
    pub at: f64,
    /// What all steps come to, this one included.
    pub sum: MassPerArea,
}

impl Course {
    /// The course of a nutrient over a bed: a step each feeding.
    pub fn of(feeding: &BedFeeding, nutrient: Nutrient) -> Self {
        let planned = feeding.steps.iter();
        let planned = planned.map(|step| (step, step.planned_at, step.planned.of(nutrient)));
        let is_done = feeding.steps.iter().filter(|step| step.is_done);
        let done = add_up(
            MassPerArea::ZERO,
            is_done.map(|step| (step, step.at, step.brings.of(nutrient))),
        );
        let (from, sum) = done.last().map_or((0.0, MassPerArea::ZERO), |last| (last.at, last.sum));
        // What was meant for a time that has gone by is still ahead, at the earliest now.
        let is_ahead = feeding.steps.iter().filter(|step| !step.is_done);
        let ahead = is_ahead.map(|step| (step, step.at.max(from), step.brings.of(nutrient)));
        Self {
            planned: add_up(MassPerArea::ZERO, planned),
            ahead: add_up(sum, ahead),
            done,
        }
    }
}

/// Adds up amounts in order of time.
fn add_up<'a>(from: MassPerArea, steps: impl Iterator<Item = (&'a FeedingStep, f64, MassPerArea)>) -> Vec<CourseStep> {
    let mut course: Vec<CourseStep> = steps
        // What brings none of it is no step of this nutrient.
        .filter(|(_, _, amount)| *amount > MassPerArea::ZERO)
        .map(|(step, at, amount)| CourseStep {
            name: step.name.clone(),
            at,
            sum: amount,
        })
        .collect();
    course.sort_by(|one, other| one.at.total_cmp(&other.at));
    let mut sum = from;
    for step in &mut course {
        sum += step.sum;
        step.sum = sum;
    }
    course
}
