//! Lines along which a bed is split: between two of its rows, or across all of them.

use super::types::BedPlan;
use crate::geometry::{Point, RowFit};
use crate::layout::{Bed, BedFit, BedId, Edit, EditError, Layout};
use crate::quantity::{Bearing, Length};

/// A straight line across the ground of a bed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SplitLine {
    /// A place on it.
    pub at: Point,
    /// The direction it runs in.
    pub bearing: Bearing,
}

/// What comes of splitting a bed.
#[derive(Clone, Debug, PartialEq)]
pub struct SplitOutcome {
    /// How many rows each part has, the bed that stays first.
    pub rows: Vec<usize>,
    /// Whether every piece of row is still there, and where it stood.
    pub rows_stay: bool,
}

impl SplitLine {
    /// The edit that splits a bed along this line.
    pub const fn edit(self, bed: BedId) -> Edit {
        Edit::SplitBed {
            bed,
            at: self.at,
            bearing: self.bearing,
        }
    }

    /// What would come of splitting a bed along this line, without doing it.
    ///
    /// # Errors
    /// [`EditError`] says why the bed cannot be split there.
    pub fn outcome(self, layout: &Layout, bed: BedId) -> Result<SplitOutcome, EditError> {
        let after = layout.apply(&self.edit(bed))?;
        let fit = |layout: &Layout, bed: &Bed| -> RowFit {
            let fit = layout.plot(bed.plot).and_then(|plot| BedFit::of(plot, bed).ok());
            fit.map_or_else(|| RowFit::empty(bed.bearing), |fit| fit.rows)
        };
        let whole = layout.bed(bed).map(|bed| fit(layout, bed));
        let is_part = |part: &Bed| part.id == bed || layout.bed(part.id).is_none();
        let parts: Vec<RowFit> = after
            .beds
            .iter()
            .filter(|part| is_part(part))
            .map(|part| fit(&after, part))
            .collect();
        let pieces: usize = parts.iter().map(RowFit::piece_count).sum();
        let stay = |whole: &RowFit| {
            pieces == whole.piece_count() && parts.iter().all(|part| whole.has_all_of(part, Length::TOLERANCE))
        };
        Ok(SplitOutcome {
            rows: parts.iter().map(RowFit::row_count).collect(),
            rows_stay: whole.is_some_and(|whole| stay(&whole)),
        })
    }
}

impl BedPlan {
    /// The line along the rows that lies half a spacing to the right of a row, midway to the next line of rows; `None` for a row that is not there, and for the last one, with nothing beyond it.
    pub fn line_after_row(&self, number: u32) -> Option<SplitLine> {
        let line = usize::try_from(number).ok()?.checked_sub(1)?;
        let index = self.rows.iter().position(|row| row.number == number)?;
        let row = self.fit.row(index)?;
        let next = self.fit.row(index + 1)?;
        let lines = next.line.checked_sub(line).filter(|lines| *lines > 0)?;
        let half = (next.across - row.across) / (2.0 * lines as f64);
        Some(SplitLine {
            at: row.pieces().next()?.place_at(Length::ZERO, half),
            bearing: self.fit.bearing(),
        })
    }

    /// The line square across the rows, so far along them from where the bed begins; `None` where that is not within
    /// the bed.
    pub fn line_across_rows(&self, from_start: Length) -> Option<SplitLine> {
        let (begins, ends) = self.along()?;
        let along = begins + from_start;
        (along > begins && along < ends).then(|| {
            let (ux, uy) = self.fit.bearing().unit();
            SplitLine {
                at: Point::metres(along.to_metres() * ux, along.to_metres() * uy),
                // The other way round than the rows' right hand: where they begin lies on the left of it, and stays.
                bearing: self.fit.bearing().left(),
            }
        })
    }

    /// How far the bed reaches along its rows.
    pub fn length_along_rows(&self) -> Option<Length> {
        self.along().map(|(begins, ends)| ends - begins)
    }

    /// How far along the rows a place lies from where the bed begins.
    pub fn along_rows_to(&self, place: Point) -> Option<Length> {
        let (ux, uy) = self.fit.bearing().unit();
        Some(Length::metres(place.x * ux + place.y * uy) - self.along()?.0)
    }

    /// The last row on the left hand of a place, seen along the rows; the first row for a place before all rows,
    /// `None` without rows.
    pub fn row_left_of(&self, place: Point) -> Option<u32> {
        let (ux, uy) = self.fit.bearing().unit();
        let across = Length::metres(place.x * uy - place.y * ux);
        let before = self.fit.rows_between(Length::metres(f64::MIN), across).end;
        self.rows.get(before.saturating_sub(1)).map(|row| row.number)
    }

    /// From where to where the bed reaches along its rows, measured along the bearing from the layout's origin.
    fn along(&self) -> Option<(Length, Length)> {
        // What lies to the right of a quarter turn to the left lies ahead.
        self.ground.extent_across(self.fit.bearing().left())
    }
}
