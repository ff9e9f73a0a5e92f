//! `quillet new`: a layout from measured corners.

use super::corners::{Corners, read_corners};
use super::words::{New, RemainderWord, WaterWord};
use crate::catalog::{Catalog, CropId};
use crate::geometry::{Region, Remainder};
use crate::layout::{
    Bed, BedChange, Edit, Layout, ObstacleKind, Planting, PlotChange, Shape, Water, season_planned_on, store,
};
use crate::plan::Planner;
use crate::quantity::{Bearing, Length, Units};

/// Reads the corners, lays the bed and writes the layout.
pub(super) fn new_layout(words: &New) -> Result<(), String> {
    let corners = read_corners(&words.corners)?;
    let layout = lay_out(words, &corners)
        .and_then(with_rows)
        .map_err(|sentence| format!("{}: {sentence}", words.corners.display()))?;
    store::save(&words.output, &layout).map_err(|error| error.to_string())
}

fn lay_out(words: &New, corners: &Corners) -> Result<Layout, String> {
    Region::new(&corners.outline).map_err(|error| error.to_string())?;
    let today = jiff::ZonedDateTime::now().date();
    let season = season_planned_on(today.year(), today.month());
    let mut layout = Layout::empty(season, corners.units);
    let stem = words
        .output
        .file_stem()
        .and_then(|stem| stem.to_str())
        .unwrap_or_default();
    let name = words.name.as_deref().unwrap_or(stem);
    if !name.trim().is_empty() {
        layout = edited(&layout, &Edit::SetName(name.to_owned()))?;
    }
    layout = edited(
        &layout,
        &Edit::AddPlotWithBed {
            name: None,
            outline: corners.outline.clone(),
        },
    )?;
    let (Some(plot), Some(bed)) = (layout.plots.first().map(|plot| plot.id), layout.beds.first().cloned()) else {
        return Err("no bed could be laid on this ground.".to_owned());
    };
    let clear = length(words.clear.as_deref(), "--clear", corners.units)?.unwrap_or(Length::ZERO);
    for ring in &corners.obstacles {
        let shape = Shape::Corners(ring.clone());
        layout = edited(
            &layout,
            &Edit::Plot(
                plot,
                PlotChange::AddObstacle {
                    name: None,
                    kind: ObstacleKind::Other,
                    shape,
                    clear,
                },
            ),
        )?;
    }
    let bed = change_bed(&layout, words, &bed, corners.units, clear)?;
    Ok(bed)
}

/// The layout, unless its bed cannot have rows at all; a bed in which no row happens to fit is no mistake.
fn with_rows(layout: Layout) -> Result<Layout, String> {
    let plan = Planner::default().plan(&layout);
    let problem = plan.beds.iter().find_map(|bed| bed.problem.clone());
    problem.map_or(Ok(layout), Err)
}

/// The layout after one edit, or the sentence that refuses it.
fn edited(layout: &Layout, edit: &Edit) -> Result<Layout, String> {
    layout.apply(edit).map_err(|error| error.to_string())
}

/// A length word, if it was given.
fn length(word: Option<&str>, option: &str, units: Units) -> Result<Option<Length>, String> {
    word.map(|word| Length::parse(word, units).map_err(|error| format!("{option}: {error}")))
        .transpose()
}

fn change_bed(layout: &Layout, words: &New, bed: &Bed, units: Units, clear: Length) -> Result<Layout, String> {
    let length = |word: &Option<String>, option: &str| length(word.as_deref(), option, units);
    let mut changes = vec![BedChange::SetShortest(
        length(&words.shortest, "--shortest")?.unwrap_or(Length::ZERO),
    )];
    changes.push(BedChange::SetClear(clear));
    if let Some(water) = words.water {
        changes.push(BedChange::SetWater(match water {
            WaterWord::BuriedDrip => Water::BuriedDrip,
            WaterWord::SurfaceDrip => Water::SurfaceDrip,
            WaterWord::Overhead => Water::Overhead,
            WaterWord::Rain => Water::Rain,
        }));
    }
    if let Some(bearing) = &words.bearing {
        let bearing = Bearing::parse(bearing).map_err(|error| format!("--bearing: {error}"))?;
        changes.push(BedChange::SetBearing(bearing));
    }
    if let Some(remainder) = words.remainder {
        changes.push(BedChange::SetRemainder(match remainder {
            RemainderWord::Centred => Remainder::Centred,
            RemainderWord::Left => Remainder::Left,
            RemainderWord::Right => Remainder::Right,
        }));
    }
    changes.extend(length(&words.row_spacing, "--row-spacing")?.map(BedChange::SetRowSpacing));
    changes.extend(length(&words.edge, "--edge")?.map(|edge| BedChange::SetEdgeMargin(Some(edge))));
    changes.extend(length(&words.headland, "--headland")?.map(BedChange::SetHeadland));
    let (in_row, end_gap) = (length(&words.in_row, "--in-row")?, length(&words.end_gap, "--end-gap")?);
    let crop = words.crop.as_deref().map(known_crop).transpose()?;
    // In-row spacing counts plants even where the crop is still open.
    let crop = crop.or_else(|| in_row.map(|_| CropId::not_chosen()));
    match crop {
        Some(crop) => changes.push(BedChange::SetPlanting(Some(Planting {
            in_row,
            end_gap,
            ..Planting::of(crop)
        }))),
        None if end_gap.is_some() => {
            return Err("--end-gap is about plants. Give --crop or --in-row too.".to_owned());
        }
        None => {}
    }
    changes.into_iter().try_fold(layout.clone(), |layout, change| {
        edited(&layout, &Edit::Bed(bed.id, change))
    })
}

fn known_crop(id: &str) -> Result<CropId, String> {
    let crop = CropId(id.to_owned());
    let catalog = Catalog::built_in();
    if catalog.crop(&crop).is_some() {
        return Ok(crop);
    }
    let known: Vec<&str> = catalog.crops().iter().map(|crop| crop.id.0.as_str()).collect();
    Err(format!(
        "--crop: the catalogue has no crop \"{id}\". It has {}.",
        known.join(", ")
    ))
}
