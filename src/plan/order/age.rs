//! How old a lot is for the season, and whether it may still be counted on.

use crate::catalog::Crop;
use crate::layout::{LotGermination, SeedLot};
use crate::plan::things::Things;

/// How old a lot is for the season.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LotAge {
    /// Not older than its kind keeps, or tested by the grower.
    Keeps,
    /// Older than its kind keeps, and all that is known of it is its tag.
    OldByTag,
    /// Older than its kind keeps, and nothing is known of it. Nothing is drawn from it.
    OldAndUnknown,
    /// Of a year after the season: its year must be a slip. Nothing is drawn from it.
    AfterSeason,
}

/// Years that seed keeps of a kind that no table has.
///
/// # Source
/// Common practice, no source.
pub const USUAL_YEARS: u16 = 3;

/// Years that sets, cloves, tubers and other living pieces keep: from one harvest to the next season.
///
/// # Source
/// Common practice, no source.
const YEARS_OF_PIECES: u16 = 1;

impl LotAge {
    /// The age of a lot in a season.
    pub fn of(lot: &SeedLot, crop: Option<&Crop>, season: i16) -> Self {
        let age = i32::from(season) - i32::from(lot.year);
        if age < 0 {
            return Self::AfterSeason;
        }
        if age <= i32::from(years_kept(crop, things_of(lot, crop))) {
            return Self::Keeps;
        }
        match lot.germination {
            LotGermination::OwnTest { .. } => Self::Keeps,
            LotGermination::Tag(_) => Self::OldByTag,
            LotGermination::NotKnown => Self::OldAndUnknown,
        }
    }

    /// Whether anything is drawn from a lot of that age.
    pub const fn gives(self) -> bool {
        matches!(self, Self::Keeps | Self::OldByTag)
    }
}

/// What a lot holds.
pub(super) fn things_of(lot: &SeedLot, crop: Option<&Crop>) -> Things {
    let usual = crop.map_or(Things::Seeds, |crop| Things::on_shelf(crop.method.value));
    Things::in_form(lot.form, usual)
}

/// Years that a crop keeps on the shelf, as what lies there.
pub(super) fn years_kept(crop: Option<&Crop>, things: Things) -> u16 {
    if things != Things::Seeds {
        return YEARS_OF_PIECES;
    }
    let years = crop.and_then(|crop| crop.seed_keeps_years.as_ref());
    years.map_or(USUAL_YEARS, |years| years.value)
}
