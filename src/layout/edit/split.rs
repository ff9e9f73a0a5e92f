//! Splitting a bed along a straight line: what lies on the far side becomes a bed of its own.

use std::sync::Arc;

use super::split_rows::{Hand, LineAlongRows};
use super::{EditError, fresh_id, replace, sound};
use crate::geometry::{Ground, Point, part};
use crate::layout::bed::{Bed, BedGround};
use crate::layout::bed_fit::ground_area;
use crate::layout::check::check_bed;
use crate::layout::document::Layout;
use crate::layout::dressing::Placement;
use crate::layout::ground::Plot;
use crate::layout::ids::{BedId, DressingId};
use crate::layout::item::Item;
use crate::layout::limits::LARGEST_ID;
use crate::quantity::Bearing;

/// Splits a bed along the line through `at` that runs at `bearing`. The largest piece on the left hand of the line
/// stays the bed; every other piece becomes a new bed with the same planting, water, wants and dressings, those on
/// the right hand first.
///
/// Where the line runs along the rows, width that is left over goes to the outer sides, and the parts take over such an
/// edge margin, clear strip and outline that rows stay where they stood. What was noted as used is shared by ground.
/// Parts that are fed through their tape are one water zone from then on, so that they are still fed at one time.
pub(super) fn split(layout: &mut Layout, id: BedId, at: Point, bearing: Bearing) -> Result<(), EditError> {
    let gone = || EditError::Gone(Item::Bed(id));
    let mut bed = layout.bed(id).ok_or_else(gone)?.as_ref().clone();
    let plot = layout.plot(bed.plot).ok_or_else(gone)?.clone();
    if bed.zone.is_empty() && is_fed_through_tape(&bed) {
        bed.zone = free_zone(layout, &bed.name);
    }
    let mut parts = parts(&plot, &bed, at, bearing)?.into_iter();
    let kept = parts.next().ok_or_else(gone)?;
    sound(check_bed(&kept))?;
    let mut place = layout.beds.iter().position(|bed| bed.id == id).ok_or_else(gone)?;
    if let Some(slot) = layout.beds.get_mut(place) {
        replace(slot, kept);
    }
    for part in parts {
        let first = fresh_id(layout)?;
        let mut new = Bed {
            id: BedId(first),
            name: layout.next_name_like(&bed.name),
            ..part
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

/// The bed on each piece of its ground, the one that stays first, with its share of what was noted as used.
fn parts(plot: &Plot, bed: &Bed, at: Point, bearing: Bearing) -> Result<Vec<Bed>, EditError> {
    let cannot = || EditError::NotParted { bed: bed.name.clone() };
    let mut along_rows = LineAlongRows::of(plot, bed, at, bearing);
    let outlines = match along_rows.as_mut().map(LineAlongRows::outlines).transpose()?.flatten() {
        Some(outlines) => outlines,
        None => vec![match &bed.ground {
            BedGround::Corners(corners) => corners.clone(),
            BedGround::WholePlot => plot.outline.clone(),
        }],
    };
    let (mut left, mut right) = (Vec::new(), Vec::new());
    for outline in outlines {
        let parted = part(&outline, at, bearing).map_err(|_| cannot())?;
        left.extend(parted.left);
        right.extend(parted.right);
    }
    if left.is_empty() || right.is_empty() || left.iter().chain(&right).any(|piece| !piece.holes().is_empty()) {
        return Err(cannot());
    }
    left.sort_by(|one, other| square_metres(other).total_cmp(&square_metres(one)));
    let mut left = left.iter().map(|piece| (on_piece(bed, piece), Hand::Left));
    let stays = left.next().into_iter();
    let right = right.iter().map(|piece| (on_piece(bed, piece), Hand::Right));
    let pieces: Vec<(Bed, Hand)> = stays.chain(right).chain(left).collect();
    let shares = shares(plot, pieces.iter().map(|(bed, _)| bed));
    let parts = pieces.into_iter().zip(shares).map(|((piece, hand), share)| {
        let part = along_rows
            .as_ref()
            .and_then(|line| line.part(&piece, hand))
            .unwrap_or(piece);
        with_share(part, share)
    });
    Ok(parts.collect())
}

/// The bed on a piece of its ground.
fn on_piece(bed: &Bed, piece: &Ground) -> Bed {
    Bed {
        ground: BedGround::Corners(piece.outer().to_vec()),
        ..bed.clone()
    }
}

fn square_metres(piece: &Ground) -> f64 {
    piece.area().to_square_metres()
}

/// Which part of the ground of all beds each has; alike where none has any.
fn shares<'a>(plot: &Plot, beds: impl Iterator<Item = &'a Bed>) -> Vec<f64> {
    let ground = |bed: &Bed| ground_area(plot, bed).map_or(0.0, |area| area.to_square_metres());
    let grounds: Vec<f64> = beds.map(ground).collect();
    let whole: f64 = grounds.iter().sum();
    let alike = 1.0 / grounds.len() as f64;
    let share = |ground: f64| if whole > 0.0 { ground / whole } else { alike };
    grounds.into_iter().map(share).collect()
}

/// The bed with its share of what was noted as used on all of it.
fn with_share(mut bed: Bed, share: f64) -> Bed {
    for used in bed.dressings.iter_mut().flat_map(|dressing| dressing.used.iter_mut()) {
        used.amount = used.amount * share;
    }
    bed
}

fn is_fed_through_tape(bed: &Bed) -> bool {
    let injected = |placement: Placement| matches!(placement, Placement::Injected(_));
    bed.dressings.iter().any(|dressing| injected(dressing.placement))
}

/// A water zone of this name, or with the first number that no zone has.
fn free_zone(layout: &Layout, name: &str) -> String {
    // Upper and lower case of a zone are the same to the runs.
    let taken = |zone: &str| {
        layout
            .beds
            .iter()
            .any(|bed| bed.zone.to_lowercase() == zone.to_lowercase())
    };
    let numbered = (2u32..).map(|number| format!("{name} {number}"));
    std::iter::once(name.to_owned())
        .chain(numbered)
        .find(|zone| !taken(zone))
        .unwrap_or_default()
}
