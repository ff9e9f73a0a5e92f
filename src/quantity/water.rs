//! Water and what is dissolved in it: how strong, how fast, how long.

use super::length::{Area, Length};
use super::mass::{Mass, Volume};
use super::newtype::{product, quantity};

quantity! {
    /// How much of something is dissolved in a volume of water. Parts per million in water are milligrams to the litre.
    Concentration, kilograms_per_cubic_metre, to_kilograms_per_cubic_metre, "kilograms per cubic metre"
}

quantity! {
    /// How fast water runs.
    Flow, cubic_metres_per_second, to_cubic_metres_per_second, "cubic metres per second"
}

quantity! {
    /// How fast water leaves a length of tape.
    FlowPerLength, square_metres_per_second, to_square_metres_per_second, "cubic metres per second from each metre"
}

quantity! {
    /// How long something takes.
    Span, seconds, to_seconds, "seconds"
}

product!(
    Flow * Span = Volume,
    to_cubic_metres_per_second,
    to_seconds,
    cubic_metres,
    cubic_metres_per_second,
    seconds,
    to_cubic_metres
);
product!(
    FlowPerLength * Length = Flow,
    to_square_metres_per_second,
    to_metres,
    cubic_metres_per_second,
    square_metres_per_second,
    metres,
    to_cubic_metres_per_second
);
product!(
    Area * Length = Volume,
    to_square_metres,
    to_metres,
    cubic_metres,
    square_metres,
    metres,
    to_cubic_metres
);

/// What is dissolved in so much water.
impl std::ops::Mul<Volume> for Concentration {
    type Output = Mass;
    fn mul(self, water: Volume) -> Mass {
        Mass::kilograms(self.to_kilograms_per_cubic_metre() * water.to_cubic_metres())
    }
}

/// What is dissolved in so much water.
impl std::ops::Mul<Concentration> for Volume {
    type Output = Mass;
    fn mul(self, strength: Concentration) -> Mass {
        strength * self
    }
}

/// The water that dissolves a weight to this strength.
impl std::ops::Div<Concentration> for Mass {
    type Output = Volume;
    fn div(self, strength: Concentration) -> Volume {
        Volume::cubic_metres(self.to_kilograms() / strength.to_kilograms_per_cubic_metre())
    }
}

impl Concentration {
    /// A weight dissolved in a volume. (A weight over a volume by the division sign is a [`super::Density`].)
    pub const fn of(mass: Mass, water: Volume) -> Self {
        Self::kilograms_per_cubic_metre(mass.to_kilograms() / water.to_cubic_metres())
    }

    /// From parts per million, which in water are milligrams to the litre.
    pub const fn parts_per_million(value: f64) -> Self {
        Self::kilograms_per_cubic_metre(value / 1000.0)
    }

    /// From grams to the litre.
    pub const fn grams_per_litre(value: f64) -> Self {
        Self::kilograms_per_cubic_metre(value)
    }

    /// From pounds to the US gallon.
    pub const fn pounds_per_gallon(value: f64) -> Self {
        Self::of(Mass::pounds(value), Volume::gallons(1.0))
    }

    /// From pounds to 100 US gallons.
    pub const fn pounds_per_100_gallons(value: f64) -> Self {
        Self::of(Mass::pounds(value), Volume::gallons(100.0))
    }

    /// From ounces by weight to 100 US gallons.
    pub const fn ounces_per_100_gallons(value: f64) -> Self {
        Self::of(Mass::ounces(value), Volume::gallons(100.0))
    }

    /// In parts per million, which in water are milligrams to the litre.
    pub const fn to_parts_per_million(self) -> f64 {
        self.to_kilograms_per_cubic_metre() * 1000.0
    }

    /// In grams to the litre.
    pub const fn to_grams_per_litre(self) -> f64 {
        self.to_kilograms_per_cubic_metre()
    }

    /// In pounds to the US gallon.
    pub fn to_pounds_per_gallon(self) -> f64 {
        (self * Volume::gallons(1.0)).to_pounds()
    }

    /// In pounds to 100 US gallons.
    pub fn to_pounds_per_100_gallons(self) -> f64 {
        (self * Volume::gallons(100.0)).to_pounds()
    }

    /// In ounces by weight to 100 US gallons.
    pub fn to_ounces_per_100_gallons(self) -> f64 {
        (self * Volume::gallons(100.0)).to_ounces()
    }
}

impl Flow {
    /// From US gallons a minute.
    pub const fn gallons_per_minute(value: f64) -> Self {
        Self::cubic_metres_per_second(Volume::gallons(value).to_cubic_metres() / SECONDS_PER_MINUTE)
    }

    /// From litres an hour.
    pub const fn litres_per_hour(value: f64) -> Self {
        Self::cubic_metres_per_second(Volume::litres(value).to_cubic_metres() / SECONDS_PER_HOUR)
    }

    /// In US gallons a minute.
    pub fn to_gallons_per_minute(self) -> f64 {
        (self * Span::minutes(1.0)).to_gallons()
    }

    /// In litres an hour.
    pub fn to_litres_per_hour(self) -> f64 {
        (self * Span::hours(1.0)).to_litres()
    }
}

impl FlowPerLength {
    /// From US gallons a minute out of 100 feet.
    pub const fn gallons_per_minute_per_100_feet(value: f64) -> Self {
        let flow = Flow::gallons_per_minute(value).to_cubic_metres_per_second();
        Self::square_metres_per_second(flow / Length::feet(100.0).to_metres())
    }

    /// From litres an hour out of a metre.
    pub fn litres_per_hour_per_metre(value: f64) -> Self {
        Flow::litres_per_hour(value) / Length::metres(1.0)
    }

    /// In US gallons a minute out of 100 feet.
    pub fn to_gallons_per_minute_per_100_feet(self) -> f64 {
        (self * Length::feet(100.0)).to_gallons_per_minute()
    }

    /// In litres an hour out of a metre.
    pub fn to_litres_per_hour_per_metre(self) -> f64 {
        (self * Length::metres(1.0)).to_litres_per_hour()
    }
}

/// Seconds in a minute.
pub(super) const SECONDS_PER_MINUTE: f64 = 60.0;
/// Seconds in an hour.
pub(super) const SECONDS_PER_HOUR: f64 = 3600.0;

impl Span {
    /// From minutes.
    pub const fn minutes(value: f64) -> Self {
        Self::seconds(value * SECONDS_PER_MINUTE)
    }

    /// From hours.
    pub const fn hours(value: f64) -> Self {
        Self::seconds(value * SECONDS_PER_HOUR)
    }

    /// In minutes.
    pub const fn to_minutes(self) -> f64 {
        self.to_seconds() / SECONDS_PER_MINUTE
    }

    /// In hours.
    pub const fn to_hours(self) -> f64 {
        self.to_seconds() / SECONDS_PER_HOUR
    }
}
