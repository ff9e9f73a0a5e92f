//! One writer for what the screen and the paper show: quantities in words that the reader in `parse` takes back.
//!
//! Only characters that the printing fonts have are written: Latin text and ½ ¼ ¾ ° · − ² and the like; no primes.
//! Commas set off thousands. In metric units a number from a thousand up always shows a decimal, because `1,050`
//! alone can be read two ways there.

use super::bearing::POINTS;
use super::{Area, Bearing, Fraction, Length, Mass, MassPerArea, MassPerLength, Units, Volume};

/// A whole number with commas between thousands: `1,440`.
pub fn count(n: u64) -> String {
    let digits = n.to_string();
    let mut shown = String::with_capacity(digits.len() + digits.len() / 3);
    for (index, digit) in digits.chars().enumerate() {
        if index > 0 && (digits.len() - index).is_multiple_of(3) {
            shown.push(',');
        }
        shown.push(digit);
    }
    shown
}

/// A number with exactly so many decimals, commas between thousands and a true minus sign.
///
/// Half a step rounds away from zero. The hair of 1e-12 lifts what binary arithmetic left just below a half, so that
/// an eighth of a pound worked out another way still shows as 0.13.
pub(super) fn fixed(value: f64, decimals: i32) -> String {
    let steps = (value.abs() * 10_f64.powi(decimals) * (1.0 + 1e-12)).round();
    let places = usize::try_from(decimals).unwrap_or(0);
    let rounded = format!("{:.places$}", steps / 10_f64.powi(decimals));
    let (whole, part) = rounded.split_once('.').unwrap_or((&rounded, ""));
    let whole = whole.parse().map_or_else(|_| whole.to_owned(), count);
    let sign = if value < 0.0 && steps > 0.0 { "−" } else { "" };
    let point = if part.is_empty() { "" } else { "." };
    format!("{sign}{whole}{point}{part}")
}

/// A whole number, with a true minus sign.
pub(super) fn whole(value: f64) -> String {
    fixed(value, 0)
}

/// A number to so many decimals, without zeros at the end, commas between thousands and a true minus sign: `62.5`,
/// `1,440`.
pub fn number(value: f64, decimals: i32) -> String {
    let shown = fixed(value, decimals);
    if shown.contains('.') {
        shown.trim_end_matches('0').trim_end_matches('.').to_owned()
    } else {
        shown
    }
}

/// A count with its noun: `1 row`, `1,440 rows`.
pub fn counted(n: u64, one: &str, many: &str) -> String {
    format!("{} {}", count(n), if n == 1 { one } else { many })
}

/// Words that start with a capital.
pub fn capital(words: &str) -> String {
    let mut letters = words.chars();
    letters
        .next()
        .map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

/// As [`number`], but with one decimal from a thousand up, where a lone comma could be read as a decimal mark.
pub(super) fn trimmed_metric(value: f64, decimals: i32) -> String {
    let shown = number(value, decimals.max(1));
    if shown.contains(',') && !shown.contains('.') {
        shown + ".0"
    } else {
        shown
    }
}

/// Quarters of an inch as feet, inches and a fraction: `44 ft 2 1/2 in`.
fn feet_and_inches(length: Length) -> String {
    let quarters = (length.to_inches().abs() * 4.0).round();
    let feet = (quarters / 48.0).floor();
    let inches = inches(quarters - feet * 48.0);
    let sign = if length < Length::ZERO && quarters > 0.0 {
        "−"
    } else {
        ""
    };
    match (feet > 0.0, inches) {
        (true, Some(inches)) => format!("{sign}{} ft {inches} in", fixed(feet, 0)),
        (false, Some(inches)) => format!("{sign}{inches} in"),
        (_, None) => format!("{sign}{} ft", fixed(feet, 0)),
    }
}

/// Quarters of an inch in inches and a fraction, `2 1/2`; `None` for nothing.
fn inches(quarters: f64) -> Option<String> {
    let whole = (quarters / 4.0).floor();
    // A whole number from 0 to 3, so comparing with halves in between is safe.
    let rest = quarters - whole * 4.0;
    let fraction = match rest {
        rest if rest < 0.5 => "",
        rest if rest < 1.5 => "1/4",
        rest if rest < 2.5 => "1/2",
        _ => "3/4",
    };
    match (whole > 0.0, fraction) {
        (false, "") => None,
        (true, "") => Some(fixed(whole, 0)),
        (false, fraction) => Some(fraction.to_owned()),
        (true, fraction) => Some(format!("{} {fraction}", fixed(whole, 0))),
    }
}

impl Length {
    /// For lengths as large as a plot: `62 ft`, `44 ft 2 1/2 in` to a quarter of an inch; `18.90 m` to a centimetre.
    pub fn show(self, units: Units) -> String {
        match units {
            Units::Customary => feet_and_inches(self),
            Units::Metric => format!("{} m", fixed(self.to_metres(), 2)),
        }
    }

    /// For spacings and widths. Customary, to a quarter of an inch: whole feet from 2 ft up as `3 ft`, other lengths
    /// up to 6 ft in inches as the trade says them (`30 in`, `42 in`), longer ones as `7 ft 6 in`. Metric: `15 cm`
    /// below half a metre, to a millimetre; then `0.9 m`, to a centimetre.
    pub fn show_short(self, units: Units) -> String {
        match units {
            Units::Customary => {
                let quarters = (self.to_inches().abs() * 4.0).round();
                let whole_feet = quarters % 48.0 < 0.5 && quarters > 95.5;
                match inches(quarters) {
                    Some(inches) if quarters < 287.5 && !whole_feet => {
                        format!("{}{inches} in", if self < Self::ZERO { "−" } else { "" })
                    }
                    None => "0 in".to_owned(),
                    Some(_) => feet_and_inches(self),
                }
            }
            Units::Metric => {
                // Decided on the shown step, so that 49.96 cm is 0.5 m and not 50 cm.
                let millimetres = (self.to_metres().abs() * 1000.0).round();
                if millimetres < 499.5 {
                    format!("{} cm", number(self.to_metres() * 100.0, 1))
                } else {
                    format!("{} m", trimmed_metric(self.to_metres(), 2))
                }
            }
        }
    }

    /// For sums of row lengths: `1,440 ft` to a foot, `438.9 m` to a tenth of a metre.
    pub fn show_total(self, units: Units) -> String {
        match units {
            Units::Customary => format!("{} ft", fixed(self.to_feet(), 0)),
            Units::Metric => format!("{} m", fixed(self.to_metres(), 1)),
        }
    }
}

impl Area {
    /// `96.5 sq ft` below 100, then `2,784 sq ft`, and `1.21 acres` from an acre up; `258.6 m²`, and `1.2 ha` from a
    /// hectare up. Acres and hectares are to a hundredth, without zeros at the end.
    pub fn show(self, units: Units) -> String {
        let size = self.abs();
        match units {
            Units::Customary if size.to_acres() >= 1.0 => {
                let acres = number(self.to_acres(), 2);
                let name = if acres == "1" { "acre" } else { "acres" };
                format!("{acres} {name}")
            }
            Units::Customary if size.to_square_feet() < 99.95 => {
                format!("{} sq ft", number(self.to_square_feet(), 1))
            }
            Units::Customary => format!("{} sq ft", fixed(self.to_square_feet(), 0)),
            Units::Metric if size.to_square_metres() >= 10_000.0 => {
                format!("{} ha", trimmed_metric(self.to_square_metres() / 10_000.0, 2))
            }
            Units::Metric => format!("{} m²", fixed(self.to_square_metres(), 1)),
        }
    }
}

impl Mass {
    /// For seed. Customary: ounces to a hundredth below one ounce, to a tenth below a pound, then pounds to a
    /// hundredth. Metric: grams to a tenth below 100 g, then whole, and from a kilogram up to a gram, `1.234 kg`.
    pub fn show_seed(self, units: Units) -> String {
        let (unit, in_unit) = self.seed_unit(units);
        let amount = in_unit(self);
        let decimals = match (unit, amount.abs()) {
            ("kg", _) => 3,
            ("lb", _) => 2,
            ("oz", ounces) if ounces < 0.995 => 2,
            ("g", grams) if grams >= 99.95 => 0,
            _ => 1,
        };
        format!("{} {unit}", fixed(amount, decimals))
    }

    /// The unit in which so much seed is shown, and the number of it.
    pub fn seed_unit(self, units: Units) -> (&'static str, fn(Self) -> f64) {
        match units {
            Units::Customary if self.abs().to_ounces() < 15.95 => ("oz", Self::to_ounces),
            Units::Customary => ("lb", Self::to_pounds),
            Units::Metric if self.abs().to_grams() < 999.5 => ("g", Self::to_grams),
            Units::Metric => ("kg", Self::to_kilograms),
        }
    }

    /// For product and nutrient: `6.89 lb`, `3.12 kg`, to a hundredth.
    pub fn show_product(self, units: Units) -> String {
        match units {
            Units::Customary => format!("{} lb", fixed(self.to_pounds(), 2)),
            Units::Metric => format!("{} kg", fixed(self.to_kilograms(), 2)),
        }
    }

    /// For a hanging scale, in pounds and whole ounces: `2 lb 6 oz`. Sixteen ounces carry over, so `46 lb`, never
    /// "45 lb 16 oz".
    pub fn show_pounds_ounces(self) -> String {
        let total = self.to_ounces().abs().round();
        let pounds = (total / 16.0).floor();
        let ounces = fixed(total - pounds * 16.0, 0);
        let sign = if self < Self::ZERO && total > 0.0 { "−" } else { "" };
        match (pounds > 0.0, ounces.as_str()) {
            (true, "0") => format!("{sign}{} lb", fixed(pounds, 0)),
            (true, _) => format!("{sign}{} lb {ounces} oz", fixed(pounds, 0)),
            (false, _) => format!("{sign}{ounces} oz"),
        }
    }
}

impl Volume {
    /// In US cups, `2.6 cups`: to a tenth, below one cup to a hundredth.
    pub fn show_cups(self) -> String {
        let cups = if self.abs().to_cups() < 0.995 {
            number(self.to_cups(), 2)
        } else {
            number(self.to_cups(), 1)
        };
        let name = if cups == "1" { "cup" } else { "cups" };
        format!("{cups} {name}")
    }

    /// For measuring out by cup or spoon, so fine that a pace and a row agree: tenths of a cup from a cup up, then half
    /// tablespoons, then quarter teaspoons: `1.3 cups`, `6½ tbsp`, `¾ tsp`, `less than ¼ tsp`.
    pub fn show_measure(self) -> String {
        // From a hair under a cup.
        if self >= Self::tablespoons(15.75) {
            return self.show_cups();
        }
        let (steps, each, unit) = if self >= Self::tablespoons(0.75) {
            ((self.to_tablespoons() * 2.0).round(), 2.0, "tbsp")
        } else {
            ((self.to_teaspoons() * 4.0).round(), 4.0, "tsp")
        };
        if steps < 0.5 {
            return "less than ¼ tsp".to_owned();
        }
        let whole = (steps / each).floor();
        let fraction = match (steps / each - whole) * 4.0 {
            rest if rest < 0.5 => "",
            rest if rest < 1.5 => "¼",
            rest if rest < 2.5 => "½",
            _ => "¾",
        };
        let whole_part = if whole > 0.0 { fixed(whole, 0) } else { String::new() };
        format!("{whole_part}{fraction} {unit}")
    }

    /// For liquids: `2.6 cups` below a gallon, then `5.2 gal`; `250 ml` below a litre, then `19.7 l`.
    pub fn show(self, units: Units) -> String {
        match units {
            Units::Customary if self.abs().to_gallons() >= 1.0 => format!("{} gal", number(self.to_gallons(), 1)),
            Units::Customary => self.show_cups(),
            Units::Metric if self.abs().to_litres() >= 0.9995 => {
                format!("{} l", trimmed_metric(self.to_litres(), 2))
            }
            Units::Metric => format!("{} ml", fixed(self.to_litres() * 1000.0, 0)),
        }
    }
}

impl MassPerArea {
    /// As gardens say it: `10 lb/1,000 sq ft`, `30 g/m²`, to a hundredth.
    pub fn show_garden(self, units: Units) -> String {
        match units {
            Units::Customary => format!("{} lb/1,000 sq ft", number(self.to_pounds_per_1000_square_feet(), 2)),
            Units::Metric => format!("{} g/m²", trimmed_metric(self.to_grams_per_square_metre(), 2)),
        }
    }

    /// As fields say it: `65 lb/acre`, `70 kg/ha`, to a tenth.
    pub fn show_field(self, units: Units) -> String {
        match units {
            Units::Customary => format!("{} lb/acre", number(self.to_pounds_per_acre(), 1)),
            Units::Metric => format!("{} kg/ha", trimmed_metric(self.to_kilograms_per_hectare(), 1)),
        }
    }
}

impl MassPerLength {
    /// Along the row: `3 lb/100 ft`, `20 g/m`, to a hundredth.
    pub fn show(self, units: Units) -> String {
        match units {
            Units::Customary => format!("{} lb/100 ft", number(self.to_pounds_per_100_feet(), 2)),
            Units::Metric => format!("{} g/m", trimmed_metric(self.to_grams_per_metre(), 2)),
        }
    }
}

impl Bearing {
    /// Degrees clockwise from north, to a hundredth: `0°`, `12.5°`. Never `360°`.
    pub fn show(self) -> String {
        let degrees = number(self.to_degrees(), 2);
        if degrees == "360" {
            "0°".to_owned()
        } else {
            format!("{degrees}°")
        }
    }

    /// The nearest of the sixteen compass points in letters: `N`, `NNE`, `NE`.
    pub fn compass_word(self) -> &'static str {
        let sixteenths = (self.to_degrees() / 22.5).round();
        POINTS
            .iter()
            .zip(0_u8..)
            .find(|&(_, index)| (f64::from(index) - sixteenths).abs() < 0.5)
            .map_or("N", |(p, _)| p)
    }
}

impl Fraction {
    /// In percent, to a tenth: `85 %`, `15.5 %`.
    pub fn show(self) -> String {
        format!("{} %", number(self.to_percent(), 1))
    }
}
