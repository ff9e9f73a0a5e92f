//! How much of a dressing, of what, and in which words.

use egui::{Id, Ui};

use crate::app::feed_words::read_amount;
use crate::app::form;
use crate::layout::{Basis, Dressing, Placement};
use crate::quantity::Units;
use crate::sheets::dressing_words;

pub(super) fn show(ui: &mut Ui, field: Id, dressing: &mut Dressing, units: Units) {
    let shown = dressing_words::rate(dressing.amount, dressing.typed_in, dressing.basis, units);
    let read = |text: &str| read_amount(text, units);
    if let Some((amount, unit)) = form::field(ui, field.with("amount"), "Amount", &shown, read) {
        dressing.amount = amount;
        dressing.typed_in = unit;
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::layout::Amount;
    use crate::quantity::{Mass, MassPerArea, MassPerLength};

    #[test]
    fn an_amount_is_read_over_ground_along_the_row_or_to_the_plant() {
        let read = |text| read_amount(text, Units::Customary).map(|(amount, _)| amount);
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
                    let shown = dressing_words::rate(amount, None, basis, units);
                    let again = read_amount(&shown, units)
                        .map(|(amount, typed_in)| dressing_words::rate(amount, typed_in, basis, units));
                    assert_eq!(again.as_deref(), Ok(shown.as_str()));
                }
            }
        }
    }
    #[test]
    fn an_amount_is_shown_in_the_unit_it_was_typed_in() {
        for units in [Units::Customary, Units::Metric] {
            for basis in [Basis::Product, Basis::Nitrogen] {
                for typed in [
                    "65 lb/acre",
                    "17.5 lb/43560 sq ft",
                    "20 g/m",
                    "5 oz/10 ft",
                    "0.75 oz/plant",
                ] {
                    let shown = read_amount(typed, units)
                        .map(|(amount, typed_in)| dressing_words::rate(amount, typed_in, basis, units));
                    assert_eq!(
                        shown.map(|shown| shown.replace("43,560", "43560")),
                        Ok(typed.to_owned())
                    );
                }
            }
        }
        let shown = |typed| {
            let (amount, typed_in) = read_amount(typed, Units::Customary).ok()?;
            Some(dressing_words::rate(amount, typed_in, Basis::Product, Units::Customary))
        };
        assert_eq!(shown("2 oz each").as_deref(), Some("2 oz/plant"));
        assert_eq!(shown("1/2 oz a plant").as_deref(), Some("0.5 oz/plant"));
    }
}
