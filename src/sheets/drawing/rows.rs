//! Rows: how much of them is worth drawing at a size, and the drawing of just that.
//!
//! A bed may have a hundred thousand rows. Rows stand in order across the bed, so those in sight are found by
//! halving, and of those only as many are touched as are drawn.

use super::layers::Layers;
use super::legend::CropKey;
use super::plants;
use super::row_axes::RowAxes;
use super::row_numbers;
use super::strokes::in_step;
use super::thinning::step_of;
use super::view::View;
use crate::geometry::{Bounds, Point};
use crate::layout::{Bed, Item};
use crate::plan::{BedPlan, Row};
use crate::sheets::mark::{Dash, Ink, Mark, Pen};

/// How much of a bed's rows is worth drawing at a size.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Level {
    /// Rows are too close together: the bed is hatched.
    Hatch,
    /// Rows are lines, one out of every `every`.
    Lines {
        /// 1 for all of them.
        every: u32,
    },
    /// Rows are lines with every plant on them.
    Plants,
}

/// Rows closer than this many points run together on paper, so every second or third alone is drawn. ISO 128
/// asks for 0.7 mm (2 pt) between parallel lines, as secondary summaries give it; the rest is our choice.
pub const CLOSEST_ROWS: f64 = 2.5;
/// Rows closer than this many points are not drawn one by one at all: even one in four would be a poor picture.
const HATCHED_ROWS: f64 = 0.7;
/// A bed narrower or shorter than this many points is a hatch: lines in it could not be told apart.
const SMALLEST_BED: f64 = 8.0;
/// Plants closer than this many points along the row are left out.
const CLOSEST_PLANTS: f64 = 3.0;
/// Rows closer than this many points have no plants drawn on them, whose ticks would touch.
const CLOSEST_ROWS_WITH_PLANTS: f64 = 6.0;
/// Most pieces of row drawn for one bed; with more in sight, rows are left out evenly until fewer are.
const MOST_PIECES: usize = 3000;

/// How much of a bed's rows is worth drawing in a view.
pub fn level(bed: &Bed, plan: &BedPlan, view: &View) -> Level {
    let gap = bed.row_spacing.to_metres() * view.points_per_metre;
    let extent = plan.ground.bounds();
    let smallest = extent.map_or(0.0, |extent| extent.width().min(extent.height())) * view.points_per_metre;
    if gap.is_nan() || gap < HATCHED_ROWS || smallest < SMALLEST_BED {
        return Level::Hatch;
    }
    if gap < CLOSEST_ROWS {
        return Level::Lines {
            every: step_of(CLOSEST_ROWS / gap),
        };
    }
    let in_row = plan.stand.map_or(0.0, |stand| stand.in_row.to_metres()) * view.points_per_metre;
    if in_row >= CLOSEST_PLANTS && gap >= CLOSEST_ROWS_WITH_PLANTS {
        Level::Plants
    } else {
        Level::Lines { every: 1 }
    }
}

/// The rows of a bed in sight, `every` n-th by the numbers they carry (5, 10, 15, …), so that the same rows stay
/// drawn while the sheet is moved, and are the ones that get numbers.
pub(super) fn in_sight<'p>(plan: &'p BedPlan, axes: RowAxes, sight: &Bounds, every: u32) -> Vec<&'p Row> {
    let corners = sight.corners().map(|corner| axes.across(corner));
    let low = corners.into_iter().fold(f64::INFINITY, f64::min);
    let high = corners.into_iter().fold(f64::NEG_INFINITY, f64::max);
    let across = |row: &Row| {
        plan.pieces
            .get(row.pieces.start)
            .map_or(f64::NAN, |piece| axes.across(piece.start))
    };
    let from = plan.rows.partition_point(|row| across(row) < low);
    let to = plan.rows.partition_point(|row| across(row) <= high);
    let rows = plan.rows.get(from..to).unwrap_or_default();
    if every <= 1 {
        return rows.iter().collect();
    }
    let (Some(first), Some(last)) = (rows.first(), rows.last()) else {
        return Vec::new();
    };
    let start = first.number.div_ceil(every).saturating_mul(every);
    (start..=last.number)
        .step_by(every as usize)
        .filter_map(|number| {
            let index = rows.binary_search_by_key(&number, |row| row.number).ok()?;
            rows.get(index)
        })
        .collect()
}

/// Draws the rows of a bed with their plants and numbers, and gives the lines drawn, for labels to keep off.
pub(super) fn draw_rows(
    bed: &Bed,
    plan: &BedPlan,
    key: Option<&CropKey>,
    level: Level,
    view: &View,
    layers: &mut Layers,
) -> Vec<[Point; 2]> {
    let mut every = match level {
        Level::Hatch => return draw_lit(bed, plan, view, layers),
        Level::Lines { every } => every.max(1),
        Level::Plants => 1,
    };
    let axes = RowAxes::of(bed);
    let sight = view.cutting();
    let mut rows = in_sight(plan, axes, &sight, every);
    // Rows in pieces, or a bed whose rows do not stand as its spacing says: leave out evenly until few enough.
    while rows.len() > MOST_PIECES && every < u32::MAX {
        every = step_of(f64::from(every) + 1.0);
        rows = in_sight(plan, axes, &sight, every);
    }
    let pieces: usize = rows.iter().map(|row| row.pieces.len()).sum();
    let stride = pieces.div_ceil(MOST_PIECES).max(1);
    let dash = key.map_or(Dash::Solid, |key| key.dash);
    let mut strokes = Vec::new();
    for row in rows.iter().step_by(stride) {
        // A single row of very many pieces is drawn as far as the budget goes.
        for piece in plan.pieces_of(row).iter().take(MOST_PIECES) {
            strokes.extend(in_step(piece.start, piece.end, dash, &sight, view));
        }
    }
    let pen = Pen {
        width: if level == (Level::Lines { every: 1 }) || level == Level::Plants {
            1.0
        } else {
            0.6
        },
        ink: key.map_or(Ink::Soft, CropKey::line),
        dash,
    };
    if !strokes.is_empty() {
        layers.rows.push(Mark::Strokes {
            strokes: strokes.clone(),
            pen,
        });
    }
    draw_lit(bed, plan, view, layers);
    if level == Level::Plants && stride == 1 {
        plants::draw_plants(bed, plan, &rows, pen.ink, view, layers);
    }
    row_numbers::number_rows(bed, plan, key, &rows, view, layers);
    strokes
}

/// Draws the rows that are chosen or pointed at, whether or not the level of detail would show them.
fn draw_lit(bed: &Bed, plan: &BedPlan, view: &View, layers: &mut Layers) -> Vec<[Point; 2]> {
    /// More chosen rows than this are not lit one by one.
    const MOST_LIT: usize = 200;
    let sight = view.cutting();
    let lit = view
        .chosen
        .iter()
        .copied()
        .chain(view.pointed)
        .filter_map(|item| match item {
            Item::Row(id, number) if id == bed.id => plan.row(number),
            _ => None,
        });
    let strokes: Vec<[Point; 2]> = lit
        .take(MOST_LIT)
        .flat_map(|row| plan.pieces_of(row).iter().take(MOST_PIECES / MOST_LIT))
        .filter_map(|piece| in_step(piece.start, piece.end, Dash::Solid, &sight, view))
        .collect();
    if !strokes.is_empty() {
        for (width, ink) in [(7.0, Ink::AccentTint), (1.8, Ink::Accent)] {
            layers.rows.push(Mark::Strokes {
                strokes: strokes.clone(),
                pen: Pen {
                    width,
                    ink,
                    dash: Dash::Solid,
                },
            });
        }
    }
    Vec::new()
}
