//! Values as they stand in a file. Each refuses what cannot be while it is read, so that the reader can name the
//! line and the column.

use jiff::civil::Date;
use serde::{Deserialize, Serialize};

use crate::geometry::Point;
use crate::layout::SeedAmount;
use crate::layout::limits::{self, Least, ValueError};
use crate::quantity::{Concentration, FlowPerLength, Fraction, Length, Mass, RateUnit, Volume};

/// Defines a plain number in a file that is checked while it is read.
macro_rules! checked_number {
    ($(#[$doc:meta])* $name:ident, |$value:ident| $check:expr) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
        #[serde(try_from = "f64", into = "f64")]
        pub(in crate::layout) struct $name(f64);

        impl TryFrom<f64> for $name {
            type Error = ValueError;
            fn try_from($value: f64) -> Result<Self, ValueError> {
                $check?;
                Ok(Self($value))
            }
        }

        impl From<$name> for f64 {
            fn from(number: $name) -> Self {
                // Turns a negative zero into a plain one: equal layouts are to give equal files.
                number.0 + 0.0
            }
        }

        impl $name {
            /// A number that was checked already.
            pub(in crate::layout) const fn of(value: f64) -> Self {
                Self(value)
            }
        }
    };
}

checked_number! {
    /// A distance that may be negative.
    Distance, |value| limits::distance("this coordinate", Length::metres(value))
}
checked_number! {
    /// A length that may be zero.
    Extent, |value| limits::length("this length", Length::metres(value))
}
checked_number! {
    /// A length that may not be zero.
    Spacing, |value| limits::spacing("this length", Length::metres(value))
}
checked_number! {
    /// Degrees clockwise from north; any finite number is a direction.
    Degrees, |value| limits::range("this angle", value, -1e6, 1e6)
}
checked_number! {
    /// Degrees north of the equator.
    Latitude, |value| limits::range("the latitude", value, -90.0, 90.0)
}
checked_number! {
    /// Degrees east of Greenwich.
    Longitude, |value| limits::range("the longitude", value, -180.0, 180.0)
}
checked_number! {
    /// A part of a whole, 0 to 1.
    Part, |value| limits::range("this part of a whole", value, 0.0, 1.0)
}
checked_number! {
    /// A part of a whole that is not nothing.
    SomePart, |value| limits::some_part("this part of a whole", value)
}
checked_number! {
    /// Seeds for each plant.
    Seeds, |value| limits::range("the number of seeds for each plant", value, 1.0, limits::MOST_SEEDS_PER_PLANT)
}
checked_number! {
    /// A weight of seed, in kilograms.
    Weight, |value| {
        limits::seed_amount("this weight", SeedAmount::Weight(Mass::kilograms(value)), Least::Nothing)
    }
}
checked_number! {
    /// The weight of one seed, set or piece, in kilograms.
    UnitMass, |value| limits::one_seed(Mass::kilograms(value))
}
checked_number! {
    /// What a packet costs.
    Price, |value| limits::price(value)
}
checked_number! {
    /// An amount of a dressing.
    Amount, |value| limits::amount_number(value)
}

checked_number! {
    /// A rate, in kilograms per square metre or per metre.
    RateNumber, |value| limits::rate_number("this rate", value)
}
checked_number! {
    /// A weight that may not be nothing, in kilograms.
    SomeWeight, |value| limits::some_weight("this weight", Mass::kilograms(value))
}
checked_number! {
    /// Something dissolved in water, in kilograms per cubic metre.
    Dissolved, |value| limits::dissolved("this strength", Concentration::kilograms_per_cubic_metre(value))
}
checked_number! {
    /// Calcium carbonate equivalent of lime, as a part.
    LimePurity, |value| limits::lime_purity(value)
}
checked_number! {
    /// What a stock tank holds, in cubic metres.
    Tank, |value| limits::tank(Volume::cubic_metres(value))
}
checked_number! {
    /// How many parts one part of stock makes.
    InjectionRatio, |value| limits::injection_ratio(value)
}
checked_number! {
    /// What a line of tape lets out, in cubic metres a second from each metre.
    TapeFlow, |value| limits::tape_flow(FlowPerLength::square_metres_per_second(value))
}

/// A day of the calendar.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub(in crate::layout) struct Day(pub(in crate::layout) Date);

impl TryFrom<String> for Day {
    type Error = ValueError;
    fn try_from(text: String) -> Result<Self, ValueError> {
        text.parse().map(Self).map_err(|_| ValueError::NotADay("this day"))
    }
}

impl From<Day> for String {
    fn from(day: Day) -> Self {
        day.0.to_string()
    }
}

/// The unit a rate was typed in, by its name.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub(in crate::layout) struct TypedIn(RateUnit);

impl TryFrom<String> for TypedIn {
    type Error = ValueError;
    fn try_from(name: String) -> Result<Self, ValueError> {
        RateUnit::named(&name)
            .map(Self)
            .map_err(|_| ValueError::NotARateUnit("this unit"))
    }
}

impl From<TypedIn> for String {
    fn from(unit: TypedIn) -> Self {
        unit.0.to_string()
    }
}

impl From<RateUnit> for TypedIn {
    fn from(unit: RateUnit) -> Self {
        Self(unit)
    }
}

impl From<TypedIn> for RateUnit {
    fn from(unit: TypedIn) -> Self {
        unit.0
    }
}

impl UnitMass {
    /// As a weight.
    pub(in crate::layout) const fn mass(self) -> Mass {
        Mass::kilograms(self.0)
    }
}

impl From<Mass> for UnitMass {
    fn from(mass: Mass) -> Self {
        Self::of(mass.to_kilograms())
    }
}

impl From<Length> for Distance {
    fn from(length: Length) -> Self {
        Self::of(length.to_metres())
    }
}

impl From<Length> for Extent {
    fn from(length: Length) -> Self {
        Self::of(length.to_metres())
    }
}

impl From<Length> for Spacing {
    fn from(length: Length) -> Self {
        Self::of(length.to_metres())
    }
}

impl Extent {
    /// Nothing.
    pub(in crate::layout) const ZERO: Self = Self(0.0);

    /// Whether there is none; such keys are left out.
    pub(in crate::layout) fn is_zero(&self) -> bool {
        *self == Self::ZERO
    }

    /// As a length, where the file is in metres.
    pub(in crate::layout) const fn metres(self) -> Length {
        Length::metres(self.0)
    }

    /// As a length, where the file is in feet.
    pub(in crate::layout) const fn feet(self) -> Length {
        Length::feet(self.0)
    }
}

impl Default for Extent {
    fn default() -> Self {
        Self::ZERO
    }
}

impl Spacing {
    /// As a length, where the file is in metres.
    pub(in crate::layout) const fn metres(self) -> Length {
        Length::metres(self.0)
    }

    /// As a length, where the file is in feet.
    pub(in crate::layout) const fn feet(self) -> Length {
        Length::feet(self.0)
    }
}

impl Part {
    /// Nothing.
    pub(in crate::layout) const ZERO: Self = Self(0.0);

    /// Whether there is none; such keys are left out.
    pub(in crate::layout) fn is_zero(&self) -> bool {
        *self == Self::ZERO
    }

    /// As a part of a whole.
    pub(in crate::layout) fn fraction(self) -> Fraction {
        Fraction::new(self.0).unwrap_or(Fraction::ZERO)
    }
}

impl Default for Part {
    fn default() -> Self {
        Self::ZERO
    }
}

impl SomePart {
    /// As a part of a whole.
    pub(in crate::layout) fn fraction(self) -> Fraction {
        Fraction::new(self.0).unwrap_or(Fraction::ONE)
    }
}

/// A place: `(east, north)`.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub(in crate::layout) struct Place(Distance, Distance);

impl Place {
    /// As a point, where the file is in metres.
    pub(in crate::layout) const fn metres(self) -> Point {
        Point::metres(self.0.0, self.1.0)
    }

    /// As a point, where the file is in feet.
    pub(in crate::layout) const fn feet(self) -> Point {
        Point::feet(self.0.0, self.1.0)
    }
}

impl From<Point> for Place {
    fn from(point: Point) -> Self {
        Self(Distance::of(point.x), Distance::of(point.y))
    }
}

/// The corners of an outline in order; three at least.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(try_from = "Vec<Place>", into = "Vec<Place>")]
pub(in crate::layout) struct Corners(Vec<Place>);

impl TryFrom<Vec<Place>> for Corners {
    type Error = ValueError;
    fn try_from(corners: Vec<Place>) -> Result<Self, ValueError> {
        if corners.len() < 3 {
            return Err(ValueError::TooFewCorners {
                what: "this outline",
                corners: corners.len(),
            });
        }
        Ok(Self(corners))
    }
}

impl From<Corners> for Vec<Place> {
    fn from(corners: Corners) -> Self {
        corners.0
    }
}

impl Corners {
    /// As points, where the file is in metres.
    pub(in crate::layout) fn metres(&self) -> Vec<Point> {
        self.0.iter().map(|corner| corner.metres()).collect()
    }

    /// As points, where the file is in feet.
    pub(in crate::layout) fn feet(&self) -> Vec<Point> {
        self.0.iter().map(|corner| corner.feet()).collect()
    }
}

impl From<&[Point]> for Corners {
    fn from(points: &[Point]) -> Self {
        Self(points.iter().map(|point| Place::from(*point)).collect())
    }
}

/// Defines words in a file that are checked while they are read.
macro_rules! checked_words {
    ($(#[$doc:meta])* $name:ident, |$words:ident| $check:expr) => {
        $(#[$doc])*
        #[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
        #[serde(try_from = "String", into = "String")]
        pub(in crate::layout) struct $name(String);

        impl TryFrom<String> for $name {
            type Error = ValueError;
            fn try_from($words: String) -> Result<Self, ValueError> {
                $check?;
                Ok(Self($words))
            }
        }

        impl From<$name> for String {
            fn from(words: $name) -> Self {
                words.0
            }
        }

        impl From<&String> for $name {
            fn from(words: &String) -> Self {
                Self(words.clone())
            }
        }
    };
}

checked_words! {
    /// A name of at least one letter.
    Name, |words| limits::name("this name", &words)
}
checked_words! {
    /// Words on one line, or none.
    Words, |words| limits::words("this line", &words)
}
checked_words! {
    /// The words of a note.
    NoteText, |words| limits::note(&words)
}

impl Name {
    /// The words.
    pub(in crate::layout) fn as_str(&self) -> &str {
        &self.0
    }
}

impl Words {
    /// Whether there are none; such keys are left out.
    pub(in crate::layout) const fn is_empty(&self) -> bool {
        self.0.is_empty()
    }
}
