//! Reading what a grower types of a bag and its label. What cannot be read says what would
//! do, so that the field can say it. A field left empty gives the value back.

use crate::agronomy;
use crate::quantity::{Concentration, Fraction, Mass, MassUnit, Units, Volume};
use crate::sheets::feeding_list::bag_words;

/// Reads what a bag holds: `50 lb`, `25 kg`, `50 lb bag`.
pub(super) fn read_bag(text: &str, units: Units) -> Result<Option<Mass>, String> {
    let text = without_bag(text).unwrap_or(text);
    some_weight(text, |text| Mass::parse(text, units), "A bag holds more than nothing")
}

/// Reads what a level cup weighs, in ounces or grams where no unit is typed; or what a pint does, as tables for small
/// areas have it: `13 oz/pint`.
pub(super) fn read_cup(text: &str, units: Units) -> Result<Option<Mass>, String> {
    let pint = ["/pint", "per pint", "a pint", "/pt"]
        .into_iter()
        .find_map(|ending| text.strip_suffix(ending));
    if let Some(weight) = pint {
        let weight = read_cup(weight.trim_end(), units)?;
        let density = weight.map(agronomy::density_of_pint).transpose();
        let density = density.map_err(|error| error.to_string())?;
        return Ok(density.map(|density| Volume::cups(1.0) * density));
    }
    let bare = match units {
        Units::Customary => MassUnit::Ounces,
        Units::Metric => MassUnit::Grams,
    };
    some_weight(
        text,
        |text| Mass::parse_with(text, bare),
        "A cup weighs more than nothing",
    )
}

/// Reads what a gallon or a litre of a liquid weighs, in pounds or kilograms where no unit is typed.
pub(super) fn read_whole_measure(text: &str, units: Units) -> Result<Option<Mass>, String> {
    let bare = match units {
        Units::Customary => MassUnit::Pounds,
        Units::Metric => MassUnit::Kilograms,
    };
    let none = "It weighs more than nothing";
    some_weight(text, |text| Mass::parse_with(text, bare), none)
}

fn some_weight<E: ToString>(
    text: &str,
    parse: impl FnOnce(&str) -> Result<Mass, E>,
    none: &str,
) -> Result<Option<Mass>, String> {
    if text.is_empty() {
        return Ok(None);
    }
    let mass = parse(text).map_err(|error| error.to_string())?;
    if mass <= Mass::ZERO {
        return Err(format!("{none}; leave the field empty where it is not known"));
    }
    Ok(Some(mass))
}

/// Reads what is at hand, by weight or, where it is known what a bag holds, in bags: `120 lb`, `2 1/2 bags`.
pub(super) fn read_at_hand(text: &str, bag: Option<Mass>, units: Units) -> Result<Option<Mass>, String> {
    if text.is_empty() {
        return Ok(None);
    }
    let mass = match without_bag(text) {
        Some(bags) => {
            let bag = bag.ok_or_else(|| {
                format!("“{text}”: it is not known what a bag holds; type that first, or write a weight")
            })?;
            let number = Mass::parse_with(bags, MassUnit::Kilograms)
                .map_err(|_| format!("“{text}” is not understood; write 2 bags, or a weight"))?;
            bag * number.to_kilograms()
        }
        None => Mass::parse(text, units).map_err(|error| error.to_string())?,
    };
    if mass < Mass::ZERO {
        return Err(format!("“{text}” is less than nothing; write 0 where none is at hand"));
    }
    Ok(Some(mass))
}

/// What stands before the word "bag".
fn without_bag(text: &str) -> Option<&str> {
    let before = text.strip_suffix("bags").or_else(|| text.strip_suffix("bag"))?;
    Some(before.trim())
}

/// Reads a part in percent.
pub(super) fn read_percent(text: &str) -> Result<Option<Fraction>, String> {
    if text.is_empty() {
        return Ok(None);
    }
    Fraction::parse_percent(text)
        .map(Some)
        .map_err(|_| format!("“{text}” does not do; write a percentage from 0 to 100, such as 25 %"))
}

/// Reads how much dissolves in water: `9 lb/gal`, `1,100 g/l`.
pub(super) fn read_solubility(text: &str, units: Units) -> Result<Option<Concentration>, String> {
    if text.is_empty() {
        return Ok(None);
    }
    Concentration::parse(text, units)
        .map(Some)
        .map_err(|error| error.to_string())
}

/// A weight without zeros at its end: `50 lb`, `22.68 kg`; nothing where not known.
pub(super) fn weight(mass: Option<Mass>, units: Units) -> String {
    mass.map_or_else(String::new, |mass| bag_words(mass, units))
}

/// A price, without a currency: the grower's own.
pub(super) fn price(price: f64) -> String {
    format!("{price:.2}")
}

/// The unit that a price is worked out to, for one of it.
pub(super) const fn price_unit(units: Units) -> (&'static str, Mass) {
    match units {
        Units::Customary => ("a lb", Mass::pounds(1.0)),
        Units::Metric => ("a kg", Mass::kilograms(1.0)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Louisiana State University AgCenter, Fertilizer Conversion Table for Small Area, gives ounces to the pint: half of
    /// them are in a cup.
    #[test]
    fn a_cup_may_be_read_off_a_table_of_pints() {
        let ounces = |text| read_cup(text, Units::Customary).map(|mass| mass.map(|mass| mass.to_ounces().round()));
        for text in [
            "16 oz/pint",
            "16 oz per pint",
            "16 oz a pint",
            "1 lb/pt",
            "16/pint",
            "8",
            "8 oz",
        ] {
            assert_eq!(ounces(text), Ok(Some(8.0)), "{text}");
        }
        assert_eq!(ounces("/pint"), Ok(None));
        assert!(ounces("0 oz/pint").is_err());
    }

    #[test]
    fn what_is_at_hand_may_be_counted_in_bags() {
        let bag = Some(Mass::pounds(50.0));
        let pounds = |text, bag| {
            let read = read_at_hand(text, bag, Units::Customary);
            read.map(|mass| mass.map(|mass| mass.to_pounds().round()))
        };
        assert_eq!(pounds("2 1/2 bags", bag), Ok(Some(125.0)));
        assert_eq!(pounds("30 lb", bag), Ok(Some(30.0)));
        assert_eq!(pounds("", bag), Ok(None));
        assert!(pounds("2 bags", None).is_err());
        assert!(pounds("-1 lb", bag).is_err());
        assert!(read_bag("0 lb", Units::Customary).is_err());
        assert!(read_bag("50 lb bag", Units::Customary).is_ok_and(|bag| bag.is_some()));
    }
}
