//! Where a bed is split along its rows: what each part takes over, so that rows stay where they stand.
//!
//! Rows of a bed stand at its clear strip and its edge margin from the outermost edges. A part has one edge that the bed
//! had not, the line it was split along, and the rows beside that line stand at a distance of their own from it.

use super::EditError;
use crate::geometry::{Point, Region, Remainder, RowFit, part};
use crate::layout::bed::{Bed, BedGround};
use crate::layout::bed_fit::{self, BedFit};
use crate::layout::ground::Plot;
use crate::quantity::{Bearing, Length};

/// A line this near, in degrees, to a bed's rows runs along them.
const ALONG_ROWS: f64 = 1e-6;
/// What the arithmetic may lose of a distance, in metres.
const LOST: f64 = 1e-6;

/// On which hand of the line a part lies.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Hand {
    Left,
    Right,
}

impl Hand {
    /// Which way its outer side lies, measured to the right of the line.
    const fn outward(self) -> f64 {
        match self {
            Self::Left => -1.0,
            Self::Right => 1.0,
        }
    }
}

/// A line along the rows of a bed, and the rows that are to stay.
pub(super) struct LineAlongRows<'a> {
    plot: &'a Plot,
    /// The bed that is split, with the clear strip that its parts take over.
    bed: Bed,
    at: Point,
    bearing: Bearing,
    /// Whether the line runs as the rows do, not the other way.
    as_rows: bool,
    /// From the line to the next row on the left hand and on the right hand of it.
    to_rows: (Length, Length),
    rows: RowFit,
}

impl<'a> LineAlongRows<'a> {
    /// `None` where the line does not run along the rows, lies on one, or the bed has none.
    pub(super) fn of(plot: &'a Plot, bed: &Bed, at: Point, bearing: Bearing) -> Option<Self> {
        let turned = (bearing.to_degrees() - bed.bearing.to_degrees()).rem_euclid(360.0);
        let as_rows = turned.min(360.0 - turned) <= ALONG_ROWS;
        if !as_rows && (turned - 180.0).abs() > ALONG_ROWS {
            return None;
        }
        let rows = BedFit::of(plot, bed).ok()?.rows;
        let spacing = bed.row_spacing.to_metres();
        let beyond = (across(at, bed.bearing) - rows.row(0)?.across).to_metres();
        let after_row = beyond.rem_euclid(spacing);
        // Half a spacing is what a grower has typed and halved; it is kept to the last bit.
        let after_row = if (after_row - spacing / 2.0).abs() <= LOST {
            spacing / 2.0
        } else {
            after_row
        };
        if after_row <= LOST || spacing - after_row <= LOST {
            return None;
        }
        let (before, after) = (Length::metres(after_row), Length::metres(spacing - after_row));
        Some(Self {
            plot,
            bed: bed.clone(),
            at,
            bearing,
            as_rows,
            to_rows: if as_rows { (before, after) } else { (after, before) },
            rows,
        })
    }

    /// The outlines to split. Where the clear strip is wider than from the line to the rows beside it, it stays outside
    /// the parts, which then have none: along the line it would take those rows away.
    pub(super) fn outlines(&mut self) -> Result<Option<Vec<Vec<Point>>>, EditError> {
        if self.bed.clear.to_metres() <= self.to_rows.0.min(self.to_rows.1).to_metres() + LOST {
            return Ok(None);
        }
        let drawn_in = bed_fit::drawn_in(self.plot, &self.bed).map_err(|_| EditError::NotParted {
            bed: self.bed.name.clone(),
        })?;
        self.bed.clear = Length::ZERO;
        let outlines = drawn_in.pieces().iter().map(|piece| piece.outer().to_vec());
        Ok(Some(outlines.collect()))
    }

    /// The bed on a piece of its ground: the first way of making it in which every row stays, or the first of all.
    pub(super) fn part(&self, piece: &Bed, hand: Hand) -> Option<Bed> {
        let BedGround::Corners(piece) = &piece.ground else {
            return None;
        };
        let evened = self.evened(piece, hand);
        let to_stay = self.rows_on(piece);
        let ways = [
            Some(evened.clone()),
            self.at_margin(piece, hand),
            self.narrowed(&evened, hand),
        ];
        let mut ways = ways.into_iter().flatten();
        Some(ways.find(|bed| self.keeps(bed, to_stay)).unwrap_or(evened))
    }

    /// Up to the line, with an edge margin that puts the next row where it stands.
    fn evened(&self, piece: &[Point], hand: Hand) -> Bed {
        let mut bed = self.away_from_line(piece, hand);
        let margin = (self.to_row(hand) - bed.clear).max(Length::ZERO);
        if (margin - bed.edge_margin_in_force()).abs().to_metres() > LOST {
            bed.edge_margin = Some(margin);
        }
        bed
    }

    /// With the bed's own edge margin, and as far from the next row as that says: a strip along the line is left free.
    fn at_margin(&self, piece: &[Point], hand: Hand) -> Option<Bed> {
        let free = self.to_row(hand) - self.bed.clear - self.bed.edge_margin_in_force();
        let line = across(self.at, self.bearing) + free * hand.outward();
        let outline = self.kept(piece, line, hand).filter(|_| free > Length::ZERO)?;
        Some(self.away_from_line(&outline, hand))
    }

    /// Without what a wider margin kept free on the outer side, where the narrower one would let another row in.
    fn narrowed(&self, evened: &Bed, hand: Hand) -> Option<Bed> {
        let BedGround::Corners(piece) = &evened.ground else {
            return None;
        };
        let more = self.bed.edge_margin_in_force() - self.to_row(hand);
        let rows_ground = BedFit::of(self.plot, evened).ok()?.rows_ground;
        let (low, high) = rows_ground.extent_across(self.bearing)?;
        let (line, inner) = match hand {
            Hand::Left => (low + more, Hand::Right),
            Hand::Right => (high - more, Hand::Left),
        };
        let outline = self.kept(piece, line, inner)?;
        Some(Bed {
            ground: BedGround::Corners(outline),
            ..evened.clone()
        })
    }

    /// The bed on a piece, left-over width on its outer side.
    fn away_from_line(&self, piece: &[Point], hand: Hand) -> Bed {
        Bed {
            ground: BedGround::Corners(piece.to_vec()),
            remainder: match (hand, self.as_rows) {
                (Hand::Left, true) | (Hand::Right, false) => Remainder::Left,
                (Hand::Right, true) | (Hand::Left, false) => Remainder::Right,
            },
            ..self.bed.clone()
        }
    }

    /// What lies on one hand of a line so far across; `None` where that is not one piece.
    fn kept(&self, piece: &[Point], line: Length, hand: Hand) -> Option<Vec<Point>> {
        let (ux, uy) = self.bearing.unit();
        let at = Point::metres(line.to_metres() * uy, -line.to_metres() * ux);
        let parted = part(piece, at, self.bearing).ok()?;
        let kept = match hand {
            Hand::Left => parted.left,
            Hand::Right => parted.right,
        };
        let [one] = &kept[..] else { return None };
        one.holes().is_empty().then(|| one.outer().to_vec())
    }

    fn to_row(&self, hand: Hand) -> Length {
        match hand {
            Hand::Left => self.to_rows.0,
            Hand::Right => self.to_rows.1,
        }
    }

    /// How many pieces of row stand on a piece of the ground.
    fn rows_on(&self, piece: &[Point]) -> usize {
        let Ok(ground) = Region::new(piece) else { return 0 };
        let pieces = self.rows.rows().flat_map(|row| row.pieces());
        pieces
            .filter(|piece| ground.contains(piece.start().towards(piece.end(), 0.5)))
            .count()
    }

    /// Whether the part has so many pieces of row, each where one of the bed's stands.
    fn keeps(&self, bed: &Bed, pieces: usize) -> bool {
        BedFit::of(self.plot, bed)
            .is_ok_and(|fit| fit.rows.piece_count() == pieces && self.rows.has_all_of(&fit.rows, Length::TOLERANCE))
    }
}

/// How far to the right of a bearing a place lies, from the layout's origin.
fn across(place: Point, bearing: Bearing) -> Length {
    let (ux, uy) = bearing.unit();
    Length::metres(place.x * uy - place.y * ux)
}
