//! How an account runs through the season, in steps: as it was planned, what is done, and what is still ahead.

use super::types::{BedFeeding, FeedingStep};
use crate::agronomy::Nutrient;
use crate::layout::{Bed, Placement};
use crate::quantity::MassPerArea;

/// How the account of one nutrient runs through the season.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Course {
    /// Every dressing as it was planned.
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
    /// The course of a nutrient over a bed. What goes through the tape several times is a step each time, where the
    /// days to harvest are known; else it is one step.
    pub fn of(bed: &Bed, feeding: &BedFeeding, nutrient: Nutrient) -> Self {
        let all = |step: &FeedingStep| (step.planned.of(nutrient), times(bed, feeding, step));
        let planned = add_up(MassPerArea::ZERO, feeding.steps.iter().map(|step| (step, all(step))));
        let is_done = feeding.steps.iter().filter(|step| step.is_done);
        let done = is_done.map(|step| (step, (step.brings.of(nutrient), vec![step.at])));
        let done = add_up(MassPerArea::ZERO, done);
        let (from, sum) = done.last().map_or((0.0, MassPerArea::ZERO), |last| (last.at, last.sum));
        let is_ahead = feeding.steps.iter().filter(|step| !step.is_done);
        // What was meant for a time that has gone by is still ahead, at the earliest now.
        let ahead = is_ahead.map(|step| {
            let times = times(bed, feeding, step).into_iter().map(|at| at.max(from));
            (step, (step.brings.of(nutrient), times.collect()))
        });
        Self {
            planned,
            ahead: add_up(sum, ahead),
            done,
        }
    }
}

/// When a step is done, once or several times.
fn times(bed: &Bed, feeding: &BedFeeding, step: &FeedingStep) -> Vec<f64> {
    let injecting = bed
        .dressing(step.dressing)
        .and_then(|dressing| match dressing.placement {
            Placement::Injected(injecting) => Some(injecting),
            _ => None,
        });
    match (injecting, feeding.days_to_harvest.filter(|days| *days > 0)) {
        (Some(how), Some(days)) => {
            let every = f64::from(how.every_days) / f64::from(days);
            let at = |time: u16| (step.at + f64::from(time) * every).min(1.0);
            (0..how.times.max(1)).map(at).collect()
        }
        _ => vec![step.at],
    }
}

/// Adds up amounts, each shared over its times, in order of time.
fn add_up<'a>(
    from: MassPerArea,
    steps: impl Iterator<Item = (&'a FeedingStep, (MassPerArea, Vec<f64>))>,
) -> Vec<CourseStep> {
    let mut course: Vec<CourseStep> = steps
        // What brings none of it is no step of this nutrient.
        .filter(|(_, (amount, _))| *amount > MassPerArea::ZERO)
        .flat_map(|(step, (amount, times))| {
            let each = amount / times.len().max(1) as f64;
            times.into_iter().map(move |at| CourseStep {
                name: step.name.clone(),
                at,
                sum: each,
            })
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
