//! Plants and tape along the rows, when the sheet is near enough to show them.

use super::Layers;
use super::rows::RowAxes;
use super::view::View;
use crate::geometry::Point;
use crate::layout::Bed;
use crate::plan::{BedPlan, Piece, Row, Stand};
use crate::sheets::mark::{Dash, Ink, Mark, Pen};

/// Most plants drawn for one bed; with more in sight none are, because a part of them would mislead.
const MOST_PLANTS: f64 = 20_000.0;
/// Plants closer than this many points are ticks across the row; wider apart they are dots.
const CLOSEST_DOTS: f64 = 7.0;
/// Rows closer than this many points show no tape.
const CLOSEST_TAPE: f64 = 48.0;

/// Draws the plants on rows in sight, and the tape beside them.
pub(super) fn draw_plants(bed: &Bed, plan: &BedPlan, rows: &[&Row], ink: Ink, view: &View, layers: &mut Layers) {
    let Some(stand) = plan.stand.filter(|stand| stand.in_row.to_metres() > 0.0) else {
        return;
    };
    let axes = RowAxes::of(bed);
    let runs: Vec<Run> = rows
        .iter()
        .flat_map(|row| plan.pieces_of(row))
        .filter_map(|piece| Run::in_sight(piece, stand, axes, view))
        .collect();
    let lines = bed.lines.per_row.max(1);
    let gap = stand.in_row.to_metres() * view.points_per_metre;
    let tick_room = bed.row_spacing.to_metres() * view.points_per_metre;
    if runs.iter().map(|run| run.count * f64::from(lines)).sum::<f64>() <= MOST_PLANTS {
        let places: Vec<Point> = runs
            .iter()
            .flat_map(|run| (0..lines).flat_map(move |line| run.places(bed, line, stand)))
            .collect();
        if gap < CLOSEST_DOTS && lines == 1 {
            let half = view.metres((tick_room / 5.0).min(2.6));
            let strokes = places
                .iter()
                .map(|&at| [axes.shift(at, 0.0, -half), axes.shift(at, 0.0, half)])
                .collect::<Vec<_>>();
            if !strokes.is_empty() {
                let pen = Pen {
                    width: 0.7,
                    ink,
                    dash: Dash::Solid,
                };
                layers.rows.push(Mark::Strokes { strokes, pen });
            }
        } else if !places.is_empty() {
            let apart = if lines > 1 {
                bed.lines.apart.to_metres() * view.points_per_metre
            } else {
                gap
            };
            let radius = (gap.min(apart) / 4.0).min(tick_room / 8.0).clamp(0.8, 3.0) as f32;
            layers.rows.push(Mark::Dots {
                at: places,
                radius,
                ink,
            });
        }
    }
    if bed.water.through_tape() && tick_room >= CLOSEST_TAPE {
        draw_tape(bed, &runs, axes, view, layers);
    }
}

/// Draws tape as a fine line to the right of the row: it lies on the row, and would not be seen there.
/// Buried tape is dashed, tape on top of the ground is not.
fn draw_tape(bed: &Bed, runs: &[Run], axes: RowAxes, view: &View, layers: &mut Layers) {
    let dash = if bed.water == crate::layout::Water::BuriedDrip {
        Dash::Short
    } else {
        Dash::Solid
    };
    let strokes: Vec<[Point; 2]> = (0..bed.tape.lines_per_row.min(4))
        .flat_map(|line| {
            let aside = view.metres(4.5 + 2.0 * f64::from(line));
            runs.iter()
                .map(move |run| run.seen.map(|end| axes.shift(end, 0.0, aside)))
        })
        .collect();
    if !strokes.is_empty() {
        let pen = Pen {
            width: 0.4,
            ink: Ink::Soft,
            dash,
        };
        layers.rows.push(Mark::Strokes { strokes, pen });
    }
}

/// The plants of one piece that are in sight.
struct Run {
    start: Point,
    axes: RowAxes,
    /// Length of the piece, in metres.
    length: f64,
    /// Number of the first plant in sight, from 0.
    first: f64,
    /// How many are in sight on one line.
    count: f64,
    /// The part of the piece in sight.
    seen: [Point; 2],
}

impl Run {
    fn in_sight(piece: &Piece, stand: Stand, axes: RowAxes, view: &View) -> Option<Self> {
        let (from, to) = view.cutting().cut(piece.start, piece.end)?;
        let (step, gap) = (stand.in_row.to_metres(), stand.end_gap.to_metres());
        let length = piece.length.to_metres();
        // A hair of slack for what decimal feet lose in binary: 30 ft at 6 in is 60 plants, never 59.
        let last = ((length - 2.0 * gap) / step + 1e-6).floor();
        let first = ((from * length - gap) / step - 1e-6).ceil().max(0.0);
        let end = ((to * length - gap) / step + 1e-6).floor().min(last);
        Some(Self {
            start: piece.start,
            axes,
            length,
            first,
            count: (end - first + 1.0).max(0.0),
            seen: [piece.start.towards(piece.end, from), piece.start.towards(piece.end, to)],
        })
    }

    fn places(&self, bed: &Bed, line: u8, stand: Stand) -> impl Iterator<Item = Point> {
        let (start, axes, first, length) = (self.start, self.axes, self.first, self.length);
        let (step, gap) = (stand.in_row.to_metres(), stand.end_gap.to_metres());
        let middle = f64::from(bed.lines.per_row.max(1) - 1) / 2.0;
        let aside = (f64::from(line) - middle) * bed.lines.apart.to_metres();
        let shift = if bed.lines.staggered && line % 2 == 1 {
            step / 2.0
        } else {
            0.0
        };
        (0..self.count as u32)
            .map(move |k| gap + shift + (first + f64::from(k)) * step)
            .filter(move |&along| along <= length - gap + 1e-6)
            .map(move |along| axes.shift(start, along, aside))
    }
}
