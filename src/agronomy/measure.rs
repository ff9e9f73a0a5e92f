//! Weights as cups, for measuring out in the field. Weight goes first: published cup weights of one material differ by
//! two fifths, so a cup is a guide only.

use super::unworkable::{Unworkable, not_negative, positive};
use crate::quantity::{Density, Length, Mass, MassPerLength, Volume};

/// The room that a weight of poured material takes: weight ÷ density.
///
/// # Errors
/// When the density is nothing or no number.
///
/// # Source
/// Common practice, no source: arithmetic; 119.688 cups to the cubic foot.
pub fn volume_of(mass: Mass, density: Density) -> Result<Volume, Unworkable> {
    positive(density.to_kilograms_per_cubic_metre(), "the density")?;
    Ok(mass / density)
}

/// The density of a material that weighs so much to the US liquid pint of 28.875 cubic inches, as small-area tables
/// give it. (A US dry pint is a sixth larger.)
///
/// # Errors
/// When the weight is nothing or no number.
///
/// # Source
/// Louisiana State University AgCenter, Fertilizer Conversion Table for Small Area: ounces to the pint.
pub fn density_of_pint(weight: Mass) -> Result<Density, Unworkable> {
    positive(weight.to_kilograms(), "the weight of a pint")?;
    Ok(weight / Volume::pints(1.0))
}

/// The density of a material of which a level US cup weighs so much, as growers find it on their own scales.
///
/// # Errors
/// When the weight is nothing or no number.
///
/// # Source
/// Common practice, no source: arithmetic.
pub fn density_of_cup(weight: Mass) -> Result<Density, Unworkable> {
    positive(weight.to_kilograms(), "the weight of a level cup")?;
    Ok(weight / Volume::cups(1.0))
}

/// What is to fall on a stretch of row, by which a walking pace is set: rate × stretch, most often 10 ft.
///
/// # Errors
/// When the stretch or the rate is less than nothing or no number.
///
/// # Source
/// Common practice, no source: arithmetic.
pub fn per_stretch(rate: MassPerLength, stretch: Length) -> Result<Mass, Unworkable> {
    not_negative(rate.to_kilograms_per_metre(), "the rate")?;
    not_negative(stretch.to_metres(), "the stretch of row")?;
    Ok(rate * stretch)
}

/// How much more was put down than planned, as a part of the plan: 0.2 for a fifth more, negative for less.
///
/// # Errors
/// When nothing was planned.
///
/// # Source
/// Common practice, no source: measuring out by cup over many rows misses; a fifth more than planned is tolerated on a
/// heavy feeder.
pub fn over_plan(planned: Mass, given: Mass) -> Result<f64, Unworkable> {
    positive(planned.to_kilograms(), "the planned weight")?;
    Ok(given / planned - 1.0)
}
