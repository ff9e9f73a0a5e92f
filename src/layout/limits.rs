//! How small, how large and how long a thing may be that a grower enters. One rule for one kind of value;
//! edits, the file and the check of a whole layout all ask here.

use thiserror::Error;

use super::bed::{Raised, Sowing};
use super::dressing::Amount;
use super::shelf::SeedAmount;
use crate::geometry::{FARTHEST, Point};
use crate::quantity::{Concentration, FlowPerLength, Fraction, Length, Mass, MassPerArea, Volume};

/// Letters in a name; more does not fit on any map.
pub const LONGEST_NAME: usize = 200;

/// Letters in a note on the map.
pub const LONGEST_NOTE: usize = 2000;

/// Lines of plants, or of tape, on one row. Six already fills a wide bed; a larger number is a slip of the hand.
pub const MOST_LINES: u8 = 6;

/// Seeds sown for each plant that is to stand. Far above any sowing; a larger number is a slip of the hand.
pub const MOST_SEEDS_PER_PLANT: f64 = 1000.0;

/// The largest part of young plants that may be lost: of all of them none could be set out.
pub const MOST_LOST: f64 = 0.99;

/// The largest number taken for an amount of a dressing, in kilograms per square metre, per metre or per plant.
pub const LARGEST_AMOUNT: f64 = 1e6;

/// Seeds, sets or plants in one lot or packet. More than any farm has.
pub const MOST_SEEDS: u64 = 1_000_000_000_000;

/// The heaviest lot, packet, set or piece: a thousand tonnes.
pub const HEAVIEST: Mass = Mass::kilograms(1e6);

/// The highest price of a packet, in any currency.
pub const HIGHEST_PRICE: f64 = 1e9;

/// Times that a dressing goes through the tape in a season. One a day; more is a slip of the hand.
pub const MOST_TIMES: u16 = 366;

/// Credits of one bed. More than any ground has had.
pub const MOST_CREDITS: usize = 50;

/// The largest stock tank, in cubic metres.
pub const LARGEST_TANK: f64 = 1000.0;

/// Sizes of packet for one cultivar; no seed list has more.
pub const MOST_SIZES: usize = 12;

/// Cells in a tray. More than any tray has.
pub const MOST_CELLS: u16 = 5000;

/// Days in a tray, or to harvest. Two years; a larger number is a slip of the hand.
pub const MOST_DAYS: u16 = 731;

/// The largest number that an id may have. No hand draws so many things; a larger one is a slip in a file.
pub const LARGEST_ID: u32 = 999_999_999;

/// Years a layout may be for.
pub const SEASONS: std::ops::RangeInclusive<i16> = 1..=9999;

/// Why a value cannot stand. Each names the value in the first words: "the row spacing".
#[derive(Clone, Debug, PartialEq, Error)]
pub enum ValueError {
    /// Not a number, or infinite.
    #[error("{0} is not a number")]
    NotANumber(&'static str),
    /// Zero or less where something is needed.
    #[error("{0} must be more than zero")]
    NotPositive(&'static str),
    /// Less than nothing.
    #[error("{0} must not be less than zero")]
    Negative(&'static str),
    /// Over [`FARTHEST`].
    #[error("{0} is more than 1,000 km")]
    TooFar(&'static str),
    /// Below or above what makes sense.
    #[error("{what} must be from {from} to {to}")]
    OutOfRange {
        /// The value.
        what: &'static str,
        /// The smallest that is taken.
        from: f64,
        /// The largest that is taken.
        to: f64,
    },
    /// Nothing but blanks.
    #[error("{0} is empty")]
    Empty(&'static str),
    /// Something that cannot be left out.
    #[error("{0} is missing")]
    Missing(&'static str),
    /// Too many letters.
    #[error("{what} has more than {limit} letters")]
    TooLong {
        /// The words.
        what: &'static str,
        /// How many letters are taken.
        limit: usize,
    },
    /// Line ends or other signs that cannot be shown on one line.
    #[error("{0} has signs in it that cannot be shown on one line")]
    Unshowable(&'static str),
    /// No day of the calendar.
    #[error("{0} is none of the calendar")]
    NotADay(&'static str),
    /// No unit of a rate.
    #[error("{0} is none of a weight over ground, along the row or to the plant")]
    NotARateUnit(&'static str),
    /// A part that is larger than its whole.
    #[error("{0} is more than {1}")]
    MoreThan(&'static str, &'static str),
    /// Two things of which only one can stand.
    #[error("{0} and {1} cannot both stand")]
    Both(&'static str, &'static str),
    /// An outline with fewer than three corners.
    #[error("{what} has {corners} of the three corners that it needs at least")]
    TooFewCorners {
        /// The outline.
        what: &'static str,
        /// Corners it has.
        corners: usize,
    },
}

impl ValueError {
    /// What to do about it, as a sentence without its full stop.
    pub const fn hint(&self) -> &'static str {
        match self {
            Self::NotANumber(_) => "Give a plain number with its unit",
            Self::NotPositive(_) => "Give a value above zero",
            Self::Negative(_) => "Give zero or more",
            Self::TooFar(_) => "Give a smaller one, and look whether the unit is right",
            Self::OutOfRange { .. } => "Give a value in that range",
            Self::Missing(_) => "Give it",
            Self::Empty(_) => "Give it at least one letter",
            Self::TooLong { .. } => "Shorten it",
            Self::Unshowable(_) => "Write it on one line, in plain letters",
            Self::NotADay(_) => "Write year, month and day: 2027-05-10",
            Self::NotARateUnit(_) => "Write it as lb/acre, lb/1000 sq ft, oz/10 ft, kg/ha or g/plant",
            Self::MoreThan(..) => "Look whether the two numbers are exchanged",
            Self::Both(..) => "Take one of them out",
            Self::TooFewCorners { .. } => "Add corners",
        }
    }
}

/// A distance that may be negative: finite, and no more than [`FARTHEST`] either way.
pub(super) fn distance(what: &'static str, length: Length) -> Result<(), ValueError> {
    if !length.is_finite() {
        return Err(ValueError::NotANumber(what));
    }
    if length.abs() > FARTHEST {
        return Err(ValueError::TooFar(what));
    }
    Ok(())
}

/// A length that may be zero.
pub(super) fn length(what: &'static str, length: Length) -> Result<(), ValueError> {
    distance(what, length)?;
    if length < Length::ZERO {
        return Err(ValueError::Negative(what));
    }
    Ok(())
}

/// A length that may not be zero.
pub(super) fn spacing(what: &'static str, length: Length) -> Result<(), ValueError> {
    distance(what, length)?;
    if length <= Length::ZERO {
        return Err(ValueError::NotPositive(what));
    }
    Ok(())
}

/// A place on the ground.
pub(super) fn place(what: &'static str, point: Point) -> Result<(), ValueError> {
    distance(what, Length::metres(point.x))?;
    distance(what, Length::metres(point.y))
}

/// An outline: three corners or more, each of them a place.
pub(super) fn outline(what: &'static str, corners: &[Point]) -> Result<(), ValueError> {
    if corners.len() < 3 {
        return Err(ValueError::TooFewCorners {
            what,
            corners: corners.len(),
        });
    }
    corners.iter().try_for_each(|corner| place("a corner", *corner))
}

/// A plain number within a range.
pub(super) fn range(what: &'static str, value: f64, from: f64, to: f64) -> Result<(), ValueError> {
    if !value.is_finite() {
        return Err(ValueError::NotANumber(what));
    }
    if value < from || value > to {
        return Err(ValueError::OutOfRange { what, from, to });
    }
    Ok(())
}

/// A name: at least one letter, on one line, no longer than [`LONGEST_NAME`].
pub(super) fn name(what: &'static str, name: &str) -> Result<(), ValueError> {
    if name.trim().is_empty() {
        return Err(ValueError::Empty(what));
    }
    words(what, name)
}

/// Words on one line that may be none at all.
pub(super) fn words(what: &'static str, words: &str) -> Result<(), ValueError> {
    if words.chars().any(char::is_control) {
        return Err(ValueError::Unshowable(what));
    }
    if words.chars().count() > LONGEST_NAME {
        return Err(ValueError::TooLong {
            what,
            limit: LONGEST_NAME,
        });
    }
    Ok(())
}

/// The words of a note, which may run over several lines.
pub(super) fn note(text: &str) -> Result<(), ValueError> {
    let what = "the note";
    if text.trim().is_empty() {
        return Err(ValueError::Empty(what));
    }
    if text.chars().any(|letter| letter.is_control() && letter != '\n') {
        return Err(ValueError::Unshowable(what));
    }
    if text.chars().count() > LONGEST_NOTE {
        return Err(ValueError::TooLong {
            what,
            limit: LONGEST_NOTE,
        });
    }
    Ok(())
}

/// How a crop is put in the ground.
pub(super) fn sowing(sowing: Sowing) -> Result<(), ValueError> {
    match sowing {
        Sowing::Seed { seeds_per_plant: seeds } => seeds_per_plant(seeds),
        Sowing::Dropped { seeds_per_place } => seeds_per_plant(f64::from(seeds_per_place)),
        Sowing::Hills {
            seeds_per_hill,
            plants_per_hill,
        } => hill(seeds_per_hill, plants_per_hill),
        Sowing::Raised(raised_plants) => raised(raised_plants),
        Sowing::Pieces { each: Some(each) } => one_seed(each),
        Sowing::Pieces { each: None } | Sowing::Plants => Ok(()),
    }
}

/// Good seeds for each plant that is to stand.
pub(super) fn seeds_per_plant(seeds: f64) -> Result<(), ValueError> {
    range("the number of seeds for each plant", seeds, 1.0, MOST_SEEDS_PER_PLANT)
}

/// Seeds in a hill, and plants that are to stand in it.
pub(super) fn hill(seeds: u16, plants: u16) -> Result<(), ValueError> {
    range(
        "the number of plants in a hill",
        f64::from(plants),
        1.0,
        MOST_SEEDS_PER_PLANT,
    )?;
    range(
        "the number of seeds in a hill",
        f64::from(seeds),
        1.0,
        MOST_SEEDS_PER_PLANT,
    )?;
    if plants > seeds {
        return Err(ValueError::MoreThan(
            "the number of plants in a hill",
            "the number of seeds in it",
        ));
    }
    Ok(())
}

/// How plants are raised in trays.
pub(super) fn raised(raised: Raised) -> Result<(), ValueError> {
    seeds_per_cell(raised.seeds_per_cell)?;
    losses(raised.losses.get())?;
    raised.cells_per_tray.map_or(Ok(()), cells_per_tray)?;
    raised.days_in_tray.map_or(Ok(()), days)
}

/// Seeds sown in a cell.
pub(super) fn seeds_per_cell(seeds: u16) -> Result<(), ValueError> {
    range(
        "the number of seeds in a cell",
        f64::from(seeds),
        1.0,
        MOST_SEEDS_PER_PLANT,
    )
}

/// Cells in a tray.
pub(super) fn cells_per_tray(cells: u16) -> Result<(), ValueError> {
    range(
        "the number of cells in a tray",
        f64::from(cells),
        1.0,
        f64::from(MOST_CELLS),
    )
}

/// A number of days, one or more.
pub(super) fn days(days: u16) -> Result<(), ValueError> {
    range("the number of days", f64::from(days), 1.0, f64::from(MOST_DAYS))
}

/// Young plants lost: not all of them, or none could be set out.
pub(super) fn losses(part: f64) -> Result<(), ValueError> {
    range("the part of young plants that is lost", part, 0.0, MOST_LOST)
}

/// Weight of one seed, set or piece.
pub(super) fn one_seed(weight: Mass) -> Result<(), ValueError> {
    let what = "the weight of one seed or piece";
    if weight <= Mass::ZERO {
        return Err(ValueError::NotPositive(what));
    }
    // Down to a millionth of a milligram: no seed is a thousandth as light.
    range(what, weight.to_kilograms(), 1e-12, HEAVIEST.to_kilograms())
}

/// Whether an amount may be nothing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Least {
    /// It may: a lot that is used up.
    Nothing,
    /// It may not: a packet.
    Something,
}

/// An amount of seed.
pub(super) fn seed_amount(what: &'static str, amount: SeedAmount, least: Least) -> Result<(), ValueError> {
    let (number, most) = match amount {
        SeedAmount::Weight(mass) => (mass.to_kilograms(), HEAVIEST.to_kilograms()),
        SeedAmount::Count(count) => (count as f64, MOST_SEEDS as f64),
    };
    if number < 0.0 {
        return Err(ValueError::Negative(what));
    }
    if number == 0.0 && least == Least::Something {
        return Err(ValueError::NotPositive(what));
    }
    range(what, number, 0.0, most)
}

/// A test of one's own: some seeds, and no more came up than were tested.
pub(super) fn germination_test(came_up: u32, of: u32) -> Result<(), ValueError> {
    if of == 0 {
        return Err(ValueError::NotPositive("the number of seeds tested"));
    }
    if came_up > of {
        return Err(ValueError::MoreThan(
            "the number of seeds that came up",
            "the number tested",
        ));
    }
    Ok(())
}

/// What a packet costs; nothing is a price too.
pub(super) fn price(price: f64) -> Result<(), ValueError> {
    if price < 0.0 {
        return Err(ValueError::Negative("the price"));
    }
    range("the price", price, 0.0, HIGHEST_PRICE)
}

/// How many sizes of packet there are.
pub(super) fn packet_count(sizes: usize) -> Result<(), ValueError> {
    range("the number of packet sizes", sizes as f64, 1.0, MOST_SIZES as f64)
}

/// Seeds that come up: some must.
pub(super) fn germination(germination: Fraction) -> Result<(), ValueError> {
    some_part("germination", germination.get())
}

/// A part of a whole that is not nothing.
pub(super) fn some_part(what: &'static str, part: f64) -> Result<(), ValueError> {
    if part <= 0.0 {
        return Err(ValueError::NotPositive(what));
    }
    range(what, part, 0.0, 1.0)
}

/// An amount of a dressing.
pub(super) fn amount(amount: Amount) -> Result<(), ValueError> {
    let number = match amount {
        Amount::PerArea(rate) => rate.to_kilograms_per_square_metre(),
        Amount::PerRowLength(rate) => rate.to_kilograms_per_metre(),
        Amount::PerPlant(mass) => mass.to_kilograms(),
    };
    amount_number(number)
}

/// The plain number of an amount of a dressing, in kilograms per square metre, per metre or per plant.
pub(super) fn amount_number(number: f64) -> Result<(), ValueError> {
    let what = "the amount";
    if number < 0.0 {
        return Err(ValueError::Negative(what));
    }
    range(what, number, 0.0, LARGEST_AMOUNT)
}

/// A rate over ground, of a nutrient, of lime or of compost.
pub(super) fn rate(what: &'static str, rate: MassPerArea) -> Result<(), ValueError> {
    rate_number(what, rate.to_kilograms_per_square_metre())
}

/// The plain number of a rate, in kilograms per square metre or per metre.
pub(super) fn rate_number(what: &'static str, number: f64) -> Result<(), ValueError> {
    if number < 0.0 {
        return Err(ValueError::Negative(what));
    }
    range(what, number, 0.0, LARGEST_AMOUNT)
}

/// A weight that may be nothing.
pub(super) fn weight(what: &'static str, mass: Mass) -> Result<(), ValueError> {
    if mass < Mass::ZERO {
        return Err(ValueError::Negative(what));
    }
    range(what, mass.to_kilograms(), 0.0, HEAVIEST.to_kilograms())
}

/// A weight that may not be nothing: of a bag, or of a cup.
pub(super) fn some_weight(what: &'static str, mass: Mass) -> Result<(), ValueError> {
    if mass == Mass::ZERO {
        return Err(ValueError::NotPositive(what));
    }
    weight(what, mass)
}

/// Something dissolved in water; no salt reaches ten kilograms to the litre.
pub(super) fn dissolved(what: &'static str, in_water: Concentration) -> Result<(), ValueError> {
    let number = in_water.to_kilograms_per_cubic_metre();
    if number < 0.0 {
        return Err(ValueError::Negative(what));
    }
    range(what, number, 0.0, 10_000.0)
}

/// Calcium carbonate equivalent of lime, as a part: burnt lime goes to 1.79, and labels to 2 at the most.
pub(super) fn lime_purity(purity: f64) -> Result<(), ValueError> {
    let what = "the purity of the lime";
    if purity <= 0.0 {
        return Err(ValueError::NotPositive(what));
    }
    range(what, purity, 0.0, 2.0)
}

/// Times that a dressing goes through the tape, or the days between them.
pub(super) fn times(what: &'static str, times: u16) -> Result<(), ValueError> {
    range(what, f64::from(times), 1.0, f64::from(MOST_TIMES))
}

/// How many feedings of a dressing were noted.
pub(super) fn feedings_done(feedings: usize) -> Result<(), ValueError> {
    range(
        "the number of feedings done",
        feedings as f64,
        0.0,
        f64::from(MOST_TIMES),
    )
}

/// What a stock tank holds.
pub(super) fn tank(tank: Volume) -> Result<(), ValueError> {
    let what = "what the stock tank holds";
    if tank <= Volume::ZERO {
        return Err(ValueError::NotPositive(what));
    }
    range(what, tank.to_cubic_metres(), 0.0, LARGEST_TANK)
}

/// How many parts one part of stock makes.
pub(super) fn injection_ratio(ratio: f64) -> Result<(), ValueError> {
    range("the injection ratio", ratio, 1.0, 100_000.0)
}

/// What a line of tape lets out; a litre a second to the metre is a broken pipe.
pub(super) fn tape_flow(flow: FlowPerLength) -> Result<(), ValueError> {
    let what = "the flow of the tape";
    let number = flow.to_square_metres_per_second();
    if number <= 0.0 {
        return Err(ValueError::NotPositive(what));
    }
    range(what, number, 0.0, 0.001)
}

/// How many credits a bed has.
pub(super) fn credit_count(credits: usize) -> Result<(), ValueError> {
    range("the number of credits", credits as f64, 0.0, MOST_CREDITS as f64)
}
