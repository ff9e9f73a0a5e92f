//! Water and what is dissolved in it, in words that the reader in `parse` takes back.

use super::show::{fixed, number, trimmed_metric};
use super::{Concentration, Flow, FlowPerLength, Span, Units};

impl Concentration {
    /// As feed at the plant: `69 ppm`, below ten to a tenth, `2.5 ppm`.
    pub fn show(self, units: Units) -> String {
        let ppm = self.to_parts_per_million();
        let shown = match units {
            _ if ppm.abs() < 9.95 => number(ppm, 1),
            Units::Customary => fixed(ppm, 0),
            Units::Metric if ppm.abs() < 999.5 => fixed(ppm, 0),
            Units::Metric => trimmed_metric(ppm.round(), 0),
        };
        format!("{shown} ppm")
    }

    /// As a stock or a solubility: `1.08 lb/gal`, to a hundredth; `133 g/l`, to a tenth.
    pub fn show_stock(self, units: Units) -> String {
        match units {
            Units::Customary => format!("{} lb/gal", number(self.to_pounds_per_gallon(), 2)),
            Units::Metric => format!("{} g/l", trimmed_metric(self.to_grams_per_litre(), 1)),
        }
    }
}

impl Flow {
    /// `1.35 gpm`, to a hundredth; `307 l/h`, to a tenth.
    pub fn show(self, units: Units) -> String {
        match units {
            Units::Customary => format!("{} gpm", number(self.to_gallons_per_minute(), 2)),
            Units::Metric => format!("{} l/h", trimmed_metric(self.to_litres_per_hour(), 1)),
        }
    }
}

impl FlowPerLength {
    /// As tape is sold: `0.45 gpm/100 ft`, `3.35 l/h per m`, to a hundredth.
    pub fn show(self, units: Units) -> String {
        match units {
            Units::Customary => {
                format!("{} gpm/100 ft", number(self.to_gallons_per_minute_per_100_feet(), 2))
            }
            Units::Metric => format!("{} l/h per m", trimmed_metric(self.to_litres_per_hour_per_metre(), 2)),
        }
    }
}

impl Span {
    /// To a minute: `6 h 10 min`, `45 min`, `2 h`; below a minute to a second, `40 s`. Sixty minutes carry over.
    pub fn show(self) -> String {
        let sign = if self < Self::seconds(-0.5) { "−" } else { "" };
        let span = self.abs();
        if span.to_seconds() < 59.5 {
            return format!("{sign}{} s", fixed(span.to_seconds(), 0));
        }
        let minutes = span.to_minutes().round();
        let hours = (minutes / 60.0).floor();
        let rest = fixed(minutes - hours * 60.0, 0);
        match (hours > 0.0, rest.as_str()) {
            (true, "0") => format!("{sign}{} h", fixed(hours, 0)),
            (true, _) => format!("{sign}{} h {rest} min", fixed(hours, 0)),
            (false, _) => format!("{sign}{rest} min"),
        }
    }
}
