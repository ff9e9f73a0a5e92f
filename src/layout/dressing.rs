//! What is put down on a bed: which material, how much, where and when, and what was really used.

use jiff::ToSpan as _;
use jiff::civil::Date;

use super::ids::DressingId;
use crate::catalog::{Catalog, MaterialId, StageId};
use crate::quantity::{Length, Mass, MassPerArea, MassPerLength, RateUnit, Volume};

/// Something put down on a bed: fertilizer of one material at one time.
#[derive(Clone, Debug, PartialEq)]
pub struct Dressing {
    /// Unique in the layout.
    pub id: DressingId,
    /// What the grower calls it: "at planting", "first side-dressing".
    pub name: String,
    /// The material.
    pub material: MaterialId,
    /// What the amount counts.
    pub basis: Basis,
    /// How much.
    pub amount: Amount,
    /// The unit the amount was typed in; the layout's usual one where left out.
    pub typed_in: Option<RateUnit>,
    /// Where it goes.
    pub placement: Placement,
    /// When.
    pub when: When,
    /// What was really used, feeding by feeding: none where nothing is done yet, several of what is given several times.
    pub used: Vec<Used>,
}

/// When something is put down.
#[derive(Clone, Debug, Default, PartialEq)]
pub enum When {
    /// Not said yet.
    #[default]
    Unsaid,
    /// In the grower's words.
    Words(String),
    /// At a stage of growth.
    Stage(StageId),
    /// On a day.
    Day(Date),
}

/// What was really used in one feeding.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Used {
    /// Product, for the whole bed.
    pub amount: Mass,
    /// The day, when noted.
    pub on: Option<Date>,
}

/// What the amount of a dressing counts.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Basis {
    /// The material as it comes out of the bag.
    #[default]
    Product,
    /// The nitrogen in it.
    Nitrogen,
    /// The phosphate (P2O5) in it.
    Phosphate,
    /// The potash (K2O) in it.
    Potash,
}

/// How much of a dressing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Amount {
    /// So much over ground.
    PerArea(MassPerArea),
    /// So much along each row.
    PerRowLength(MassPerLength),
    /// So much for each plant.
    PerPlant(Mass),
}

/// Where a dressing goes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Placement {
    /// Over all the bed's ground.
    Broadcast,
    /// In a band at the row, at or before planting.
    Band {
        /// Width of the strip of ground that belongs to the row; one row spacing when not given.
        strip: Option<Length>,
    },
    /// Beside the growing plants.
    SideDress {
        /// Width of the strip of ground that belongs to the row; one row spacing when not given.
        strip: Option<Length>,
    },
    /// Dissolved, through the tape.
    Injected(Injecting),
}

/// How a dressing is put through the tape. Its amount is what goes in each time.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Injecting {
    /// Width of the strip of ground that belongs to the row; one row spacing when not given.
    pub strip: Option<Length>,
    /// How many times; one or more.
    pub times: u16,
    /// Days from one time to the next; one or more.
    pub every_days: u16,
    /// What the stock tank holds.
    pub tank: Volume,
    /// One part of stock in so many parts of what comes out of the tape; one or more.
    pub ratio: f64,
    /// Whether the ratio counts the water that one part of stock is added to instead.
    pub to_water: bool,
    /// Length of the pipe from the injector to the bed.
    pub supply: Length,
    /// Width of that pipe inside.
    pub supply_bore: Length,
}

impl Dressing {
    /// How many feedings it has: those planned, and those done beyond them.
    pub fn feedings(&self) -> usize {
        usize::from(self.placement.times()).max(self.used.len())
    }

    /// The days of its feedings where the first is planned for `first`: those done on their own days where noted, and those
    /// after them so many days apart.
    pub fn days(&self, first: Option<Date>) -> Vec<Option<Date>> {
        let every = i64::from(self.placement.every_days());
        let mut next = first;
        let days = (0..self.feedings()).map(|feeding| {
            let noted = self.used.get(feeding).and_then(|used| used.on);
            let day = noted.or(next);
            next = day.and_then(|day| day.checked_add(every.days()).ok());
            day
        });
        days.collect()
    }
}

impl Amount {
    /// So many times as much of it.
    pub fn times(self, factor: f64) -> Self {
        match self {
            Self::PerArea(rate) => Self::PerArea(rate * factor),
            Self::PerRowLength(rate) => Self::PerRowLength(rate * factor),
            Self::PerPlant(each) => Self::PerPlant(each * factor),
        }
    }
}

impl When {
    /// As it is shown, in a few words; empty when nothing is said.
    pub fn words(&self) -> String {
        match self {
            Self::Unsaid => String::new(),
            Self::Words(words) => words.clone(),
            Self::Stage(stage) => Catalog::built_in()
                .stage(stage)
                .map_or_else(|| stage.0.clone(), |stage| stage.name.value.clone()),
            Self::Day(day) => day.strftime("%-d %B").to_string(),
        }
    }
}

impl Placement {
    /// The width of the strip that the grower gives to a row, where one counts.
    pub const fn strip(self) -> Option<Length> {
        match self {
            Self::Broadcast => None,
            Self::Band { strip } | Self::SideDress { strip } => strip,
            Self::Injected(injecting) => injecting.strip,
        }
    }

    /// How many times it is done.
    pub const fn times(self) -> u16 {
        match self {
            Self::Injected(injecting) => injecting.times,
            _ => 1,
        }
    }

    /// Days from one time to the next; 0 where it is done once.
    pub const fn every_days(self) -> u16 {
        match self {
            Self::Injected(injecting) => injecting.every_days,
            _ => 0,
        }
    }
}

impl Default for Injecting {
    /// Once, from a 5-gallon pail at 1 in 100 through 50 ft of three-quarter-inch pipe: starting values of our own
    /// choice, common practice, no source.
    fn default() -> Self {
        Self {
            strip: None,
            times: 1,
            every_days: 7,
            tank: Volume::gallons(5.0),
            ratio: 100.0,
            to_water: false,
            supply: Length::feet(50.0),
            supply_bore: Length::inches(0.75),
        }
    }
}
