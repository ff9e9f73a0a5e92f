//! Edits of beds, what grows in them and what is put down.

use std::sync::Arc;

use super::outline::OutlineChange;
use super::{EditError, fresh_id, outline, replace, sound, tidy};
use crate::catalog::CropId;
use crate::geometry::{Lines, Point, Remainder};
use crate::layout::bed::{Bed, BedGround, Planting, Sowing, Tape, Water};
use crate::layout::check::check_bed;
use crate::layout::document::Layout;
use crate::layout::dressing::{Dressing, When};
use crate::layout::feeding::{Credit, Recommendation};
use crate::layout::ids::{BedId, DressingId, PlotId};
use crate::layout::item::Item;
use crate::layout::limits::LARGEST_ID;
use crate::quantity::{Bearing, Fraction, Length};
use jiff::civil::Date;

/// One change to a bed.
#[derive(Clone, Debug, PartialEq)]
pub enum BedChange {
    /// Another name.
    Rename(String),
    /// Another part of the plot.
    SetGround(BedGround),
    /// A corner or a side of the bed's own outline changed.
    Outline(OutlineChange),
    /// The whole bed shifted in its plot; only where it has an outline of its own.
    Shift {
        /// How far east.
        east: Length,
        /// How far north.
        north: Length,
    },
    /// Rows run another way.
    SetBearing(Bearing),
    /// Rows stand closer or wider.
    SetRowSpacing(Length),
    /// Another edge margin, or half a row spacing again.
    SetEdgeMargin(Option<Length>),
    /// Left-over width goes elsewhere.
    SetRemainder(Remainder),
    /// Another headland.
    SetHeadland(Length),
    /// Another distance kept clear along the outline.
    SetClear(Length),
    /// Another shortest piece of row.
    SetShortest(Length),
    /// Other lines of plants on one row.
    SetLines(Lines),
    /// Other water.
    SetWater(Water),
    /// Other tape.
    SetTape(Tape),
    /// Another planting altogether, or nothing.
    SetPlanting(Option<Planting>),
    /// Another crop. Cultivar, in-row spacing, end gap, sowing, germination and field
    /// emergence go back to the crop's own; the part
    /// of seed added on top stays. Choosing the crop that grows there already changes nothing.
    SetCrop(CropId),
    /// Another cultivar.
    SetCultivar(String),
    /// Another crop, as [`BedChange::SetCrop`] chooses it, and its cultivar.
    SetCropAndCultivar(CropId, String),
    /// The grower's own in-row spacing, or the crop's again.
    SetInRow(Option<Length>),
    /// The grower's own end gap, or half the in-row spacing again.
    SetEndGap(Option<Length>),
    /// The grower's own way of sowing, or the crop's again.
    SetSowing(Option<Sowing>),
    /// The grower's own germination, or the federal standard again.
    SetGermination(Option<Fraction>),
    /// The part of what would come up in a test that comes up in the field, or all of it again.
    SetFieldEmergence(Option<Fraction>),
    /// Another part of seed on top.
    SetSpare(Fraction),
    /// The day it is sown or set out, or not known again.
    SetPlanted(Option<Date>),
    /// Another water zone; empty when the bed runs by itself.
    SetZone(String),
    /// What the soil laboratory recommends, or nothing again.
    SetRecommendation(Option<Recommendation>),
    /// Another published rate of the crop, by where it holds, or the first one again.
    SetPublished(Option<String>),
    /// A new credit after the others.
    AddCredit(Credit),
    /// A credit changed, counted from 0.
    SetCredit(usize, Credit),
    /// A credit taken away, counted from 0.
    RemoveCredit(usize),
    /// Whether dressings stay as planned, whatever was really used before them.
    SetHoldsToPlan(bool),
    /// Several dressings at once: a published programme, or a mix. They are given ids.
    LayDown {
        /// What they are called together.
        name: String,
        /// The dressings, in order.
        dressings: Vec<Dressing>,
        /// Whether the dressings that are not done yet give way to them.
        in_place: bool,
    },
    /// A new dressing after the others. It is given an id; the one it comes with is not read.
    AddDressing(Dressing),
    /// A dressing changed: the one with this id becomes this.
    SetDressing(Dressing),
    /// A dressing taken away.
    RemoveDressing(DressingId),
    /// A dressing put at another place in the order.
    MoveDressing {
        /// The dressing.
        dressing: DressingId,
        /// Its new place, counted from 0; past the end is the end.
        to: usize,
    },
}

/// Adds a bed to a plot.
pub(super) fn add(layout: &mut Layout, plot: PlotId, name: Option<&str>, ground: &BedGround) -> Result<(), EditError> {
    let id = BedId(fresh_id(layout)?);
    let ground_of = layout.plot(plot).ok_or(EditError::Gone(Item::Plot(plot)))?;
    let bed = layout.new_bed(ground_of, ground.clone(), name.map(tidy), id);
    sound(check_bed(&bed))?;
    layout.beds.push(Arc::new(bed));
    Ok(())
}

/// Takes a bed away.
pub(super) fn remove(layout: &mut Layout, id: BedId) -> Result<(), EditError> {
    if layout.bed(id).is_none() {
        return Err(EditError::Gone(Item::Bed(id)));
    }
    layout.beds.retain(|bed| bed.id != id);
    Ok(())
}

/// Changes a bed.
pub(super) fn change(layout: &mut Layout, id: BedId, change: &BedChange) -> Result<(), EditError> {
    // New dressings need ids from the whole layout.
    let fresh = match change {
        BedChange::AddDressing(_) | BedChange::LayDown { .. } => fresh_id(layout)?,
        _ => 0,
    };
    let slot = layout
        .beds
        .iter_mut()
        .find(|bed| bed.id == id)
        .ok_or(EditError::Gone(Item::Bed(id)))?;
    let mut bed = slot.as_ref().clone();
    match change {
        BedChange::Rename(name) => bed.name = tidy(name),
        BedChange::SetGround(ground) => bed.ground = ground.clone(),
        BedChange::Outline(change) => {
            let name = bed.name.clone();
            reshape(&mut bed, |corners| {
                outline::change(corners, *change, Item::Bed(id), &name)
            })?;
        }
        BedChange::Shift { east, north } => {
            reshape(&mut bed, |corners| Ok(outline::shift(corners, *east, *north)))?;
        }
        BedChange::SetBearing(bearing) => bed.bearing = *bearing,
        BedChange::SetRowSpacing(spacing) => bed.row_spacing = *spacing,
        BedChange::SetEdgeMargin(margin) => bed.edge_margin = *margin,
        BedChange::SetRemainder(remainder) => bed.remainder = *remainder,
        BedChange::SetHeadland(headland) => bed.headland = *headland,
        BedChange::SetClear(clear) => bed.clear = *clear,
        BedChange::SetShortest(shortest) => bed.shortest = *shortest,
        BedChange::SetLines(lines) => bed.lines = *lines,
        BedChange::SetWater(water) => bed.water = *water,
        BedChange::SetTape(tape) => bed.tape = *tape,
        BedChange::SetPlanting(planting) => {
            bed.planting = planting.as_ref().map(|planting| Planting {
                cultivar: tidy(&planting.cultivar),
                ..planting.clone()
            });
        }
        BedChange::SetCrop(crop) => set_crop(&mut bed, crop),
        BedChange::SetCultivar(cultivar) => planted(&mut bed)?.cultivar = tidy(cultivar),
        BedChange::SetCropAndCultivar(crop, cultivar) => {
            set_crop(&mut bed, crop);
            planted(&mut bed)?.cultivar = tidy(cultivar);
        }
        BedChange::SetInRow(in_row) => planted(&mut bed)?.in_row = *in_row,
        BedChange::SetEndGap(end_gap) => planted(&mut bed)?.end_gap = *end_gap,
        BedChange::SetSowing(sowing) => planted(&mut bed)?.sowing = *sowing,
        BedChange::SetGermination(germination) => planted(&mut bed)?.germination = *germination,
        BedChange::SetFieldEmergence(emergence) => planted(&mut bed)?.field_emergence = *emergence,
        BedChange::SetSpare(spare) => planted(&mut bed)?.spare = *spare,
        BedChange::SetPlanted(day) => planted(&mut bed)?.planted = *day,
        BedChange::SetZone(zone) => bed.zone = tidy(zone),
        BedChange::SetRecommendation(recommendation) => bed.feeding.laboratory = *recommendation,
        BedChange::SetPublished(condition) => bed.feeding.published.clone_from(condition),
        BedChange::AddCredit(credit) => bed.feeding.credits.push(tidy_credit(credit)),
        BedChange::SetCredit(place, credit) => {
            let mut credits = bed.feeding.credits.iter_mut();
            *credits.nth(*place).ok_or(EditError::Gone(Item::Bed(id)))? = tidy_credit(credit);
        }
        BedChange::RemoveCredit(place) => {
            if *place >= bed.feeding.credits.len() {
                return Err(EditError::Gone(Item::Bed(id)));
            }
            bed.feeding.credits.remove(*place);
        }
        BedChange::SetHoldsToPlan(holds) => bed.feeding.holds_to_plan = *holds,
        BedChange::LayDown {
            dressings, in_place, ..
        } => lay_down(&mut bed, dressings, *in_place, fresh)?,
        BedChange::AddDressing(dressing) => {
            bed.dressings.push(tidy_dressing(dressing, DressingId(fresh)));
        }
        BedChange::SetDressing(dressing) => {
            let place = place_of(&bed, dressing.id)?;
            if let Some(slot) = bed.dressings.get_mut(place) {
                *slot = tidy_dressing(dressing, dressing.id);
            }
        }
        BedChange::RemoveDressing(dressing) => {
            let place = place_of(&bed, *dressing)?;
            bed.dressings.remove(place);
        }
        BedChange::MoveDressing { dressing, to } => {
            let place = place_of(&bed, *dressing)?;
            let moved = bed.dressings.remove(place);
            let to = (*to).min(bed.dressings.len());
            bed.dressings.insert(to, moved);
        }
    }
    sound(check_bed(&bed))?;
    replace(slot, bed);
    Ok(())
}

/// Changes the bed's own outline.
fn reshape(bed: &mut Bed, change: impl FnOnce(&[Point]) -> Result<Vec<Point>, EditError>) -> Result<(), EditError> {
    match &bed.ground {
        BedGround::WholePlot => Err(EditError::FollowsPlot { bed: bed.name.clone() }),
        BedGround::Corners(corners) => {
            bed.ground = BedGround::Corners(change(corners)?);
            Ok(())
        }
    }
}

fn set_crop(bed: &mut Bed, crop: &CropId) {
    match &bed.planting {
        Some(planting) if planting.crop == *crop => {}
        Some(planting) => {
            bed.planting = Some(Planting {
                spare: planting.spare,
                ..Planting::of(crop.clone())
            });
        }
        None => bed.planting = Some(Planting::of(crop.clone())),
    }
}

fn planted(bed: &mut Bed) -> Result<&mut Planting, EditError> {
    let name = &bed.name;
    bed.planting
        .as_mut()
        .ok_or_else(|| EditError::NothingPlanted { bed: name.clone() })
}

/// Where a dressing stands in the bed's order.
fn place_of(bed: &Bed, id: DressingId) -> Result<usize, EditError> {
    bed.dressings
        .iter()
        .position(|dressing| dressing.id == id)
        .ok_or(EditError::Gone(Item::Dressing(bed.id, id)))
}

fn tidy_dressing(dressing: &Dressing, id: DressingId) -> Dressing {
    Dressing {
        id,
        name: tidy(&dressing.name),
        when: match &dressing.when {
            When::Words(words) if words.trim().is_empty() => When::Unsaid,
            When::Words(words) => When::Words(tidy(words)),
            other => other.clone(),
        },
        ..dressing.clone()
    }
}

fn tidy_credit(credit: &Credit) -> Credit {
    Credit {
        name: tidy(&credit.name),
        ..credit.clone()
    }
}

/// Puts several dressings down, with ids from `first` on.
fn lay_down(bed: &mut Bed, dressings: &[Dressing], in_place: bool, first: u32) -> Result<(), EditError> {
    if in_place {
        bed.dressings.retain(|dressing| !dressing.used.is_empty());
    }
    for (id, dressing) in (first..).zip(dressings) {
        if id > LARGEST_ID {
            return Err(EditError::IdsUsedUp);
        }
        bed.dressings.push(tidy_dressing(dressing, DressingId(id)));
    }
    Ok(())
}
