//! Published programmes: what is put down for a crop, how much, where and when.

use serde::Deserialize;

use crate::catalog::ids::{CropId, MaterialId, ProgrammeId, StageId};
use crate::catalog::source::{Ends, Sourced};
use crate::quantity::{MassPerArea, MassPerLength};

/// A programme of feeding, to be laid down in one step and then changed.
#[derive(Clone, Debug, PartialEq)]
pub struct Programme {
    /// Its name in files.
    pub id: ProgrammeId,
    /// Its name for people: "Half at planting, half as vines run".
    pub name: String,
    /// The crops it is for; never empty.
    pub crops: Vec<CropId>,
    /// Where it holds: "light soil, low in organic matter"; may be empty.
    pub condition: String,
    /// What it is and what to watch out for, in a sentence, with who says so.
    pub note: Sourced<String>,
    /// What is done, in order of time; never empty.
    pub steps: Vec<ProgrammeStep>,
}

/// One step of a programme.
#[derive(Clone, Debug, PartialEq)]
pub struct ProgrammeStep {
    /// Its name for people: "First side-dressing".
    pub name: String,
    /// The stage of growth, and who says so.
    pub stage: Sourced<StageId>,
    /// How much each time.
    pub rate: StepRate,
    /// A material that fits; another one with the same nutrient will do.
    pub material: MaterialId,
    /// Where it goes.
    pub placement: StepPlacement,
    /// How often it is given again; `None` for once.
    pub repeat: Option<Repeat>,
}

/// How much of a step, and of what.
#[derive(Clone, Debug, PartialEq)]
pub struct StepRate {
    /// What is weighed.
    pub of: RateOf,
    /// How much of it.
    pub amount: StepAmount,
}

/// What the weight of a rate counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Deserialize)]
pub enum RateOf {
    /// The material as it comes out of the bag.
    Product,
    /// The nitrogen in it.
    Nitrogen,
    /// The phosphate (P2O5) in it.
    Phosphate,
    /// The potash (K2O) in it.
    Potash,
}

/// How much of a step.
#[derive(Clone, Debug, PartialEq)]
pub enum StepAmount {
    /// Over ground.
    OverGround(Ends<MassPerArea>),
    /// Along the row.
    AlongRow(Ends<MassPerLength>),
}

/// Where a step goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Deserialize)]
pub enum StepPlacement {
    /// Over all the ground.
    Broadcast,
    /// In a band at the row, at or before planting.
    Band,
    /// Beside the growing plants.
    SideDress,
    /// Through the tape.
    Injected,
}

/// A step that is given more than once.
#[derive(Clone, Debug, PartialEq)]
pub struct Repeat {
    /// How often in all, more than once.
    pub times: Sourced<u16>,
    /// Days from one time to the next.
    pub every_days: Sourced<u16>,
}
