//! Splitting a bed along a straight line: what lies on the far side becomes a bed of its own.

use std::sync::Arc;

use super::{EditError, fresh_id, replace, sound};
use crate::geometry::{Ground, Point, Remainder, part};
use crate::layout::bed::{Bed, BedGround};
use crate::layout::check::check_bed;
use crate::layout::document::Layout;
use crate::layout::ids::{BedId, DressingId};
use crate::layout::item::Item;
use crate::layout::limits::LARGEST_ID;
use crate::quantity::Bearing;

/// A line this near, in degrees, to a bed's rows runs along them.
const ALONG_ROWS: f64 = 1e-6;

/// Splits a bed along the line through `at` that runs at `bearing`. The largest piece on the left hand of the line
/// stays the bed; every other piece becomes a new bed with the same planting, water, wants and dressings, those on
/// the right hand first.
///
/// Where the line runs along the rows, width that is left over goes to the outer sides, so that rows stay where they
/// stood. What was noted as used is shared by ground.
pub(super) fn split(layout: &mut Layout, id: BedId, at: Point, bearing: Bearing) -> Result<(), EditError> {
    let gone = || EditError::Gone(Item::Bed(id));
    let bed = layout.bed(id).ok_or_else(gone)?.as_ref().clone();
    let outline = match &bed.ground {
        BedGround::Corners(corners) => corners.clone(),
        BedGround::WholePlot => layout.plot(bed.plot).ok_or_else(gone)?.outline.clone(),
    };
    let cannot = || EditError::NotParted { bed: bed.name.clone() };
    let parted = part(&outline, at, bearing).map_err(|_| cannot())?;
    let (mut left, right) = (parted.left, parted.right);
    if left.is_empty() || right.is_empty() || left.iter().chain(&right).any(|piece| !piece.holes().is_empty()) {
        return Err(cannot());
    }
    left.sort_by(|one, other| {
        other
            .area()
            .to_square_metres()
            .total_cmp(&one.area().to_square_metres())
    });
    let whole: f64 = left.iter().chain(&right).map(square_metres).sum();
    let (hand_left, hand_right) = remainders(&bed, bearing);
    let mut left = left.into_iter().map(|piece| (piece, hand_left));
    let Some((stays, remainder)) = left.next() else {
        return Err(cannot());
    };
    let kept = part_of(&bed, &stays, remainder, whole);
    sound(check_bed(&kept))?;
    let slot = layout.beds.iter_mut().find(|bed| bed.id == id).ok_or_else(gone)?;
    replace(slot, kept);
    let mut place = layout.beds.iter().position(|bed| bed.id == id).ok_or_else(gone)?;
    for (piece, remainder) in right.into_iter().map(|piece| (piece, hand_right)).chain(left) {
        let first = fresh_id(layout)?;
        let name = layout.next_name_like(&bed.name);
        let mut new = Bed {
            id: BedId(first),
            name,
            ..part_of(&bed, &piece, remainder, whole)
        };
        for (dressing, id) in new.dressings.iter_mut().zip(first + 1..) {
            if id > LARGEST_ID {
                return Err(EditError::IdsUsedUp);
            }
            dressing.id = DressingId(id);
        }
        sound(check_bed(&new))?;
        place += 1;
        layout.beds.insert(place, Arc::new(new));
    }
    Ok(())
}

fn square_metres(piece: &Ground) -> f64 {
    piece.area().to_square_metres()
}

/// The bed on a piece of its ground.
fn part_of(bed: &Bed, piece: &Ground, remainder: Remainder, whole: f64) -> Bed {
    let mut bed = bed.clone();
    bed.ground = BedGround::Corners(piece.outer().to_vec());
    bed.remainder = remainder;
    let part = square_metres(piece) / whole;
    for used in bed.dressings.iter_mut().flat_map(|dressing| &mut dressing.used) {
        used.amount = used.amount * part;
    }
    bed
}

/// Where left-over width goes on either hand of the line: away from a line that runs along the rows.
fn remainders(bed: &Bed, line: Bearing) -> (Remainder, Remainder) {
    let turned = (line.to_degrees() - bed.bearing.to_degrees()).rem_euclid(360.0);
    if turned.min(360.0 - turned) <= ALONG_ROWS {
        (Remainder::Left, Remainder::Right)
    } else if (turned - 180.0).abs() <= ALONG_ROWS {
        (Remainder::Right, Remainder::Left)
    } else {
        (bed.remainder, bed.remainder)
    }
}
