//! Lines of a card for lengths: spacings, widths and sides.

use egui::{Id, Ui};

use crate::app::form;
use crate::quantity::{Length, LengthUnit, Units};

/// A spacing or width, shown in the short form. A number typed without a unit is in the unit that the field shows.
pub(super) fn short(ui: &mut Ui, id: Id, label: &str, value: Length, units: Units) -> Option<Length> {
    let shown = value.show_short(units);
    form::field(ui, id, label, &shown, |text| read_short(text, &shown, units))
}

/// A side or distance as large as a plot.
pub(super) fn long(ui: &mut Ui, id: Id, label: &str, value: Length, units: Units) -> Option<Length> {
    let shown = value.show(units);
    form::field(ui, id, label, &shown, |text| {
        Length::parse(text, units).map_err(|error| error.to_string())
    })
}

/// Reads a spacing where the field shows `shown`.
pub(super) fn read_short(text: &str, shown: &str, units: Units) -> Result<Length, String> {
    let bare = match (units, shown.rsplit(' ').next()) {
        (Units::Customary, Some("ft")) => LengthUnit::Feet,
        (Units::Customary, _) => LengthUnit::Inches,
        (Units::Metric, Some("cm")) => LengthUnit::Centimetres,
        (Units::Metric, _) => LengthUnit::Metres,
    };
    Length::parse_with(text, bare).map_err(|error| error.to_string())
}
