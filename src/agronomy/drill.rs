//! Setting a drill: how thickly seed is to run, what to count when trying it, and how far off it is.

use super::unworkable::{Unworkable, not_negative, positive, positive_length};
use crate::quantity::{Fraction, Length};

/// How thickly seed is to run in one line.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DrillRate {
    per_metre: f64,
}

impl DrillRate {
    /// The rate for a stand: seeds for each plant ÷ the part that comes up ÷ in-row spacing. It counts one line; a row
    /// of two lines takes it twice.
    ///
    /// # Errors
    /// When one of them is nothing.
    ///
    /// # Source
    /// Common practice, no source: arithmetic.
    ///
    /// # Examples
    /// ```
    /// # use quillet::{agronomy::DrillRate, quantity::{Fraction, Length}};
    /// // A plant every 6 in from two good seeds each, of which three quarters come up: 5 1/3 seeds to the foot.
    /// let up = Fraction::new(0.75).unwrap_or_default();
    /// let rate = DrillRate::for_stand(Length::inches(6.0), 2.0, up)?;
    /// assert!((rate.seeds_on(Length::feet(1.0))? - 16.0 / 3.0).abs() < 1e-12);
    /// # Ok::<(), quillet::agronomy::Unworkable>(())
    /// ```
    pub fn for_stand(in_row: Length, seeds_per_plant: f64, comes_up: Fraction) -> Result<Self, Unworkable> {
        let seeds = positive(seeds_per_plant, "the number of seeds for each plant")?;
        let up = positive(comes_up.get(), "germination")?;
        let spacing = positive_length(in_row, "the in-row spacing")?;
        Self::counted(seeds / up, spacing)
    }

    /// The rate at which so many seeds fell over a length.
    ///
    /// # Errors
    /// When the length is nothing, or the count is less than nothing.
    ///
    /// # Source
    /// Common practice, no source: arithmetic.
    pub fn counted(seeds: f64, length: Length) -> Result<Self, Unworkable> {
        not_negative(seeds, "the count of seeds")?;
        let metres = positive_length(length, "the length")?.to_metres();
        let per_metre = not_negative(seeds / metres, "the count of seeds")?;
        Ok(Self { per_metre })
    }

    /// Seeds to expect on a length of one line.
    ///
    /// # Errors
    /// When the length is less than nothing or no number.
    pub fn seeds_on(self, length: Length) -> Result<f64, Unworkable> {
        Ok(self.per_metre * not_negative(length.to_metres(), "the length")?)
    }

    /// From seed to seed, on average; `None` where none falls.
    pub fn between_seeds(self) -> Option<Length> {
        (self.per_metre > 0.0).then(|| Length::metres(1.0 / self.per_metre))
    }

    /// What the setting has to be multiplied by: the aim over what a trial counted. Over 1, more seed has to run.
    ///
    /// # Errors
    /// When the trial counted nothing.
    ///
    /// # Source
    /// Common practice, no source: aim ÷ count. Seed does not run in proportion to a drill's plates or holes, so set
    /// by it, and count again.
    pub fn correction(self, trial: Self) -> Result<f64, Unworkable> {
        Ok(self.per_metre / positive(trial.per_metre, "the count of seeds")?)
    }
}

/// How far a wheel rolls in so many turns, from its circumference.
///
/// # Errors
/// When the circumference is nothing, or the turns are less than nothing.
///
/// # Source
/// Common practice, no source: turns × circumference; measured on the ground in a chalked turn it counts the tread's
/// sinking too.
pub fn rolled(circumference: Length, turns: f64) -> Result<Length, Unworkable> {
    let circumference = positive_length(circumference, "the circumference of the wheel")?;
    Ok(circumference * not_negative(turns, "the number of turns")?)
}
