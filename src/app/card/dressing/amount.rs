//! How much of a dressing, of what, and in which words.

use egui::{Id, Ui};

use crate::app::feed_words::not_negative;
use crate::app::form;
use crate::layout::{Amount, Basis, Dressing, Placement};
use crate::quantity::{Mass, MassPerArea, MassPerLength, Units};
use crate::sheets::dressing_words;

pub(super) fn show(ui: &mut Ui, field: Id, dressing: &mut Dressing, units: Units) {
    let shown = dressing_words::rate(dressing.amount, dressing.basis, units);
    let read = |text: &str| read_amount(text, units);
    if let Some(amount) = form::field(ui, field.with("amount"), "Amount", &shown, read) {
        dressing.amount = amount;
    }
    let each_time = if matches!(dressing.placement, Placement::Injected(_)) {
        "each time; "
    } else {
        ""
    };
    let ways = match units {
        Units::Customary => "over ground, along the row or to the plant: 60 lb/acre, 3 lb/100 ft, 1 oz/plant",
        Units::Metric => "over ground, along the row or to the plant: 60 kg/ha, 20 g/m, 30 g/plant",
    };
    form::follows(ui, format!("{each_time}{ways}"));
    let all =
        [Basis::Product, Basis::Nitrogen, Basis::Phosphate, Basis::Potash].map(|of| (dressing_words::counted(of), of));
    if let Some(basis) = form::choices(
        ui,
        field.with("basis"),
        "Of",
        dressing_words::counted(dressing.basis),
        &all,
    ) {
        dressing.basis = basis;
    }
}

/// Reads an amount over ground, along the row or to the plant.
fn read_amount(text: &str, units: Units) -> Result<Amount, String> {
    not_negative(text)?;
    let lower = text.to_lowercase();
    for ending in ["/plant", "/ plant", "per plant", "a plant", "each"] {
        if let Some(mass) = lower.strip_suffix(ending) {
            return Mass::parse(mass.trim(), units)
                .map(Amount::PerPlant)
                .map_err(|error| error.to_string());
        }
    }
    let over_ground = MassPerArea::parse(text, units);
    match over_ground {
        Ok(rate) => Ok(Amount::PerArea(rate)),
        Err(error) => match MassPerLength::parse(text, units) {
            Ok(rate) => Ok(Amount::PerRowLength(rate)),
            Err(_) => Err(error.to_string()),
        },
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_amount_is_read_over_ground_along_the_row_or_to_the_plant() {
        let read = |text| read_amount(text, Units::Customary);
        assert!(matches!(read("10 lb/1000 sq ft"), Ok(Amount::PerArea(_))));
        assert!(matches!(read("3 lb/100 ft"), Ok(Amount::PerRowLength(_))));
        let Ok(Amount::PerPlant(mass)) = read("2 oz/plant") else {
            panic!("to the plant")
        };
        assert!((mass.to_ounces() - 2.0).abs() < 1e-9);
        for text in ["a lot", "-3 lb/100 ft", "-1 lb/acre", "-1 oz/plant"] {
            assert!(read(text).is_err(), "{text}");
        }
    }

    #[test]
    fn an_amount_reads_back_as_it_is_shown() {
        for units in [Units::Customary, Units::Metric] {
            for amount in [
                Amount::PerArea(MassPerArea::pounds_per_1000_square_feet(10.0)),
                Amount::PerRowLength(MassPerLength::pounds_per_100_feet(3.0)),
                Amount::PerPlant(Mass::ounces(2.0)),
            ] {
                for basis in [Basis::Product, Basis::Nitrogen] {
                    let shown = dressing_words::rate(amount, basis, units);
                    let again = read_amount(&shown, units).map(|amount| dressing_words::rate(amount, basis, units));
                    assert_eq!(again.as_deref(), Ok(shown.as_str()));
                }
            }
        }
    }
}
