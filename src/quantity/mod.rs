//! Lengths, areas, weights and rates with their units; reading what a grower types and showing it back.
//!
//! Every quantity is a type of its own over an `f64` in SI. Plain numbers appear only at the edges, through
//! constructors that name the unit.

mod newtype;

mod bearing;
mod fraction;
mod length;
mod mass;
mod parse;
mod rate;
mod rate_unit;
mod show;
mod show_water;
mod temperature;
mod units;
mod water;

pub use bearing::Bearing;
pub use fraction::Fraction;
pub use length::{Area, Length};
pub use mass::{Density, Mass, Volume};
pub use parse::{LengthUnit, MassUnit, ParseError, ParseProblem, QuantityKind, read_number};
pub use rate::{CountPerLength, MassPerArea, MassPerLength};
pub use rate_unit::RateUnit;
pub use show::{capital, count, counted, number};
pub use temperature::Temperature;
pub use units::Units;
pub use water::{Concentration, Flow, FlowPerLength, Span};
