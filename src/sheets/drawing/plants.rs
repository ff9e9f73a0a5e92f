//! Plants and tape along the rows, when the sheet is near enough to show them.

use super::layers::Layers;
use super::row_axes::RowAxes;
use super::view::View;
use crate::geometry::{PlantRule, Point};
use crate::layout::Bed;
use crate::plan::{BedPlan, Piece, Row};
use crate::quantity::Length;
use crate::sheets::mark::{Dash, Ink, Mark, Pen};

/// Most plants drawn for one bed; with more in sight none are, because a part of them would mislead.
const MOST_PLANTS: f64 = 20_000.0;
/// Plants closer than this many points are ticks across the row; wider apart they are dots.
const CLOSEST_DOTS: f64 = 7.0;
/// Rows closer than this many points show no tape.
const CLOSEST_TAPE: f64 = 48.0;

/// Draws the plants on rows in sight, and the tape beside them.
pub(super) fn draw_plants(bed: &Bed, plan: &BedPlan, rows: &[&Row], ink: Ink, view: &View, layers: &mut Layers) {
    let rule = plan
        .stand
        .and_then(|stand| PlantRule::new(stand.in_row, stand.end_gap, bed.lines).ok());
    let Some(rule) = rule else {
        return;
    };
    let axes = RowAxes::of(bed);
    let runs: Vec<Run> = rows
        .iter()
        .flat_map(|row| plan.pieces_of(row))
        .filter_map(|piece| Run::in_sight(piece, axes, view))
        .collect();
    let lines = bed.lines.per_row;
    let gap = rule.in_row().to_metres() * view.points_per_metre;
    let tick_room = bed.row_spacing.to_metres() * view.points_per_metre;
    let most: f64 = runs.iter().map(|run| run.most_on_a_line(&rule)).sum();
    if most * f64::from(lines) <= MOST_PLANTS {
        let places: Vec<Point> = runs
            .iter()
            .flat_map(|run| (0..lines).flat_map(|line| run.places(&rule, line)))
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

/// The part of one piece that is in sight.
struct Run<'p> {
    piece: &'p Piece,
    axes: RowAxes,
    /// From the start of the piece to where it comes in sight.
    low: Length,
    /// From the start of the piece to where it goes out of sight.
    high: Length,
    /// The part in sight.
    seen: [Point; 2],
}

impl<'p> Run<'p> {
    fn in_sight(piece: &'p Piece, axes: RowAxes, view: &View) -> Option<Self> {
        let (from, to) = view.cutting().cut(piece.start, piece.end)?;
        Some(Self {
            piece,
            axes,
            low: piece.length * from,
            high: piece.length * to,
            seen: [piece.start.towards(piece.end, from), piece.start.towards(piece.end, to)],
        })
    }

    /// No fewer plants than stand on one line in sight.
    fn most_on_a_line(&self, rule: &PlantRule) -> f64 {
        (self.high - self.low) / rule.in_row() + 1.0
    }

    /// The plants of one line in sight, where the rule that the plan counts by sets them.
    fn places(&self, rule: &PlantRule, line: u8) -> impl Iterator<Item = Point> {
        let (start, axes) = (self.piece.start, self.axes);
        let right = rule.right_of_row(line).to_metres();
        rule.along_line(self.piece.length, line, self.low..=self.high)
            .map(move |along| axes.shift(start, along.to_metres(), right))
    }
}
