//! The unit a rate was typed in, so that the number stays the one on the paper it came from.

use std::fmt;

use super::parse::{AreaUnit, LengthUnit, MassUnit, Unit};
use super::show::{number, trimmed_metric};
use super::{Mass, MassPerArea, MassPerLength, Units};

/// A weight over so much ground, along so much row or to the plant: lb/acre, lb/1,000 sq ft, oz/10 ft, g/m², oz/plant.
/// [`RateUnit::of_rate`] reads it off what was typed, [`RateUnit::named`] from its name in a file.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RateUnit {
    weight: MassUnit,
    /// How many of what it is spread over.
    number: f64,
    over: SpreadOver,
}

/// What a weight is spread over.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum SpreadOver {
    Ground(AreaUnit),
    Row(LengthUnit),
    Plants,
}

/// More figures than anybody types, and fewer than sums in binary keep.
const FIGURES: i32 = 9;
/// As many as one can weigh by.
const ABOUT: i32 = 3;
/// Past these nothing is weighed.
const MOST_DECIMALS: i32 = 12;

impl RateUnit {
    pub(super) const fn new(weight: MassUnit, number: f64, over: SpreadOver) -> Self {
        Self { weight, number, over }
    }

    /// Its name with so many of it before it. Customary units set off thousands in what it is spread over.
    fn with_number(self, value: f64, figures: i32, units: Units) -> String {
        let decimals_of_value = decimals(value, figures);
        let value = match units {
            Units::Customary => number(value, decimals_of_value),
            Units::Metric => trimmed_metric(value, decimals_of_value),
        };
        let many = if self.weight == MassUnit::ShortTons && value != "1" {
            "s"
        } else {
            ""
        };
        let spread = match units {
            Units::Customary => self.spread(&number(self.number, decimals(self.number, FIGURES))),
            // A lone comma can be read two ways there.
            Units::Metric => self.spread(&self.number.to_string()),
        };
        format!("{value} {}{many}/{spread}", self.weight.symbol())
    }

    /// What it is spread over, with the number of it where that is not one: `acre`, `100 ft`.
    fn spread(self, number: &str) -> String {
        let unit = match self.over {
            SpreadOver::Ground(unit) => unit.symbol(),
            SpreadOver::Row(unit) => unit.symbol(),
            SpreadOver::Plants => "plant",
        };
        if number == "1" {
            unit.to_owned()
        } else {
            format!("{number} {unit}")
        }
    }
}

/// The decimals with which a number has so many figures.
fn decimals(value: f64, figures: i32) -> i32 {
    let before_point = value.abs().max(1e-9).log10().floor() as i32 + 1;
    (figures - before_point).clamp(0, MOST_DECIMALS)
}

/// Its name, as [`RateUnit::named`] reads it.
impl fmt::Display for RateUnit {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            out,
            "{}/{}",
            self.weight.symbol(),
            self.spread(&self.number.to_string())
        )
    }
}

impl MassPerArea {
    /// As [`MassPerArea::show_field`], but in the unit it was typed in where that is known.
    pub fn show_field_in(self, typed_in: Option<RateUnit>, units: Units) -> String {
        let typed = typed_in.and_then(|unit| self.show_in(unit, units));
        typed.unwrap_or_else(|| self.show_field(units))
    }

    /// As [`MassPerArea::show_garden`], but in the unit it was typed in where that is known.
    pub fn show_garden_in(self, typed_in: Option<RateUnit>, units: Units) -> String {
        let typed = typed_in.and_then(|unit| self.show_in(unit, units));
        typed.unwrap_or_else(|| self.show_garden(units))
    }

    /// In the unit it was typed in, with all its figures: `120 lb/acre`, `2.5 lb/1,000 sq ft`; `None` where that is no
    /// unit over ground.
    pub fn show_in(self, unit: RateUnit, units: Units) -> Option<String> {
        self.show_figures_in(unit, FIGURES, units)
    }

    /// The same rounded to what can be weighed, for what was worked out and not typed.
    pub fn show_about_in(self, unit: RateUnit, units: Units) -> Option<String> {
        self.show_figures_in(unit, ABOUT, units)
    }

    fn show_figures_in(self, unit: RateUnit, figures: i32, units: Units) -> Option<String> {
        let SpreadOver::Ground(area) = unit.over else {
            return None;
        };
        let one = unit.weight.size() / (unit.number * area.size());
        Some(unit.with_number(self.to_kilograms_per_square_metre() / one, figures, units))
    }
}

impl MassPerLength {
    /// As [`MassPerLength::show`], but in the unit it was typed in where that is known.
    pub fn show_along_in(self, typed_in: Option<RateUnit>, units: Units) -> String {
        let typed = typed_in.and_then(|unit| self.show_in(unit, units));
        typed.unwrap_or_else(|| self.show(units))
    }

    /// In the unit it was typed in, with all its figures: `3 lb/100 ft`; `None` where that is no unit along a row.
    pub fn show_in(self, unit: RateUnit, units: Units) -> Option<String> {
        self.show_figures_in(unit, FIGURES, units)
    }

    /// The same rounded to what can be weighed, for what was worked out and not typed.
    pub fn show_about_in(self, unit: RateUnit, units: Units) -> Option<String> {
        self.show_figures_in(unit, ABOUT, units)
    }

    fn show_figures_in(self, unit: RateUnit, figures: i32, units: Units) -> Option<String> {
        let SpreadOver::Row(length) = unit.over else {
            return None;
        };
        let one = unit.weight.size() / (unit.number * length.size());
        Some(unit.with_number(self.to_kilograms_per_metre() / one, figures, units))
    }
}

impl Mass {
    /// What a plant gets, in the unit it was typed in, with all its figures: `2 oz/plant`; `None` where that is no unit
    /// to the plant.
    pub fn show_to_plant_in(self, unit: RateUnit, units: Units) -> Option<String> {
        self.show_to_plant_figures_in(unit, FIGURES, units)
    }

    /// The same rounded to what can be weighed, for what was worked out and not typed.
    pub fn show_to_plant_about_in(self, unit: RateUnit, units: Units) -> Option<String> {
        self.show_to_plant_figures_in(unit, ABOUT, units)
    }

    fn show_to_plant_figures_in(self, unit: RateUnit, figures: i32, units: Units) -> Option<String> {
        let SpreadOver::Plants = unit.over else { return None };
        let one = unit.weight.size() / unit.number;
        Some(unit.with_number(self.to_kilograms() / one, figures, units))
    }
}
