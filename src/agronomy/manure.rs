//! How much of the nitrogen in manure the first crop after it gets.

use crate::quantity::Fraction;

/// Animals whose manure is spread.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Animal {
    /// Dairy cows.
    Dairy,
    /// Beef cattle.
    Beef,
    /// Swine.
    Swine,
    /// Poultry.
    Poultry,
}

/// How soon manure that was spread is worked into the ground. On top it loses ammonia to the air.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WorkedIn {
    /// Within 12 hours.
    WithinHalfADay,
    /// After 12 hours, and within four days.
    WithinFourDays,
    /// After more than four days, or never.
    LeftOnTop,
}

impl Animal {
    /// All of them.
    pub const ALL: [Self; 4] = [Self::Dairy, Self::Beef, Self::Swine, Self::Poultry];
}

impl WorkedIn {
    /// All of them, the soonest first.
    pub const ALL: [Self; 3] = [Self::WithinHalfADay, Self::WithinFourDays, Self::LeftOnTop];
}

/// The part of all nitrogen in manure that is available to the first crop, where it is spread in fall on cold ground and
/// worked in so soon.
///
/// # Source
/// University of Minnesota Extension, M. Wilson and C. Modderman, Minnesota Crop News, October 2021, table of nitrogen
/// availability by method of application and animal species, first year, broadcast and incorporated; the table was read on
/// a page that reproduces it.
pub fn manure_nitrogen_available(animal: Animal, worked_in: WorkedIn) -> Fraction {
    let percent = match (animal, worked_in) {
        (Animal::Dairy, WorkedIn::WithinHalfADay) => 55,
        (Animal::Dairy, WorkedIn::WithinFourDays) => 40,
        (Animal::Dairy, WorkedIn::LeftOnTop) => 20,
        (Animal::Beef, WorkedIn::WithinHalfADay) => 60,
        (Animal::Beef, WorkedIn::WithinFourDays) => 45,
        (Animal::Beef, WorkedIn::LeftOnTop) => 25,
        (Animal::Swine, WorkedIn::WithinHalfADay) => 75,
        (Animal::Swine, WorkedIn::WithinFourDays) => 55,
        (Animal::Swine, WorkedIn::LeftOnTop) => 35,
        (Animal::Poultry, WorkedIn::WithinHalfADay) => 70,
        (Animal::Poultry, WorkedIn::WithinFourDays) => 55,
        (Animal::Poultry, WorkedIn::LeftOnTop) => 45,
    };
    Fraction::percent(f64::from(percent)).unwrap_or_default()
}
