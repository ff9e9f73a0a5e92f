//! Weights and the kitchen measure beside them.

use crate::quantity::{Density, Length, Mass, Units, Volume, number};

/// The stretch of row by which a walking pace is set: 10 ft, or 3 m.
pub const fn pace_stretch(units: Units) -> Length {
    match units {
        Units::Customary => Length::feet(10.0),
        Units::Metric => Length::metres(3.0),
    }
}

/// That stretch as it is said.
pub const fn stretch_words(units: Units) -> &'static str {
    match units {
        Units::Customary => "10 ft",
        Units::Metric => "3 m",
    }
}

/// A measure that hangs on the fence post: cups and spoons, or millilitres and litres.
pub fn scoop(mass: Mass, density: Option<Density>, units: Units) -> String {
    density.map_or_else(String::new, |density| volume(mass / density, units))
}

fn volume(volume: Volume, units: Units) -> String {
    match units {
        Units::Customary => volume.show_measure(),
        Units::Metric => volume.show(units),
    }
}

/// A bag as it is sold: `50 lb`, `25 kg`.
pub fn bag_words(bag: Mass, units: Units) -> String {
    match units {
        Units::Customary => format!("{} lb", number(bag.to_pounds(), 2)),
        Units::Metric => format!("{} kg", number(bag.to_kilograms(), 2)),
    }
}
