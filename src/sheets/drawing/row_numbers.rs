//! The numbers at both ends of the rows.

use super::layers::Layers;
use super::legend::CropKey;
use super::row_axes::RowAxes;
use super::thinning::step_of;
use super::view::{Surface, View};
use crate::geometry::{Bounds, Point, polygon};
use crate::layout::{Bed, Item};
use crate::plan::{BedPlan, Row};
use crate::sheets::mark::{Anchor, Face, Ink, Mark, Words};
use crate::sheets::type_metrics;

/// Free space kept between numbers, and between a number and the edge of its bed, in points.
const AIR: f64 = 3.0;
/// Free space between the edge of what is seen and a number that stays there, in points.
const EDGE_AIR: f64 = 6.0;
/// Outlines of more corners than this are not asked whether a number lies inside: it would take too long.
const MOST_CORNERS: usize = 400;
/// Most numbers set for one bed.
const MOST_NUMBERS: usize = 400;
/// Numbers the rows of a bed at both ends: all of them where there is room, else the first and every fifth,
/// tenth and so on.
///
/// A number stands off the end of its row where the bed leaves free ground there, and else on the end of the
/// row itself, on a plate. It never crosses the edge of its bed.
pub(super) fn number_rows(
    bed: &Bed,
    plan: &BedPlan,
    key: Option<&CropKey>,
    rows: &[&Row],
    view: &View,
    layers: &mut Layers,
) {
    let axes = RowAxes::of(bed);
    let size = view.letters(if bed.row_spacing.to_metres() * view.points_per_metre < 11.0 {
        6.5
    } else {
        7.5
    });
    let rings: Vec<&[Point]> = if plan.ground.rings().map(<[Point]>::len).sum::<usize>() > MOST_CORNERS {
        Vec::new()
    } else {
        plan.ground.rings().collect()
    };
    let Some(widest) = rows.last().map(|row| row.number.to_string()) else {
        return;
    };
    let half_of = |text: &str| {
        let half_height = type_metrics::capital_height(size) / 2.0;
        axes.half_size(type_metrics::width(text, size, true) / 2.0, half_height)
    };
    let gap = bed.row_spacing.to_metres() * view.points_per_metre;
    let needed = 2.0 * half_of(&widest).1 + AIR;
    let step = step_of(needed / gap);
    let free = (bed.headland + bed.clear).to_metres() * view.points_per_metre;
    let plate = key.map_or(Ink::Ground, CropKey::tint);
    let mut last_across = f64::NEG_INFINITY;
    let numbered = rows
        .iter()
        .filter(|row| row.number == 1 || row.number % step == 0 || is_lit(view, bed, row));
    for row in numbered.take(MOST_NUMBERS) {
        let pieces = plan.pieces_of(row);
        let (Some(first), Some(last)) = (pieces.first(), pieces.last()) else {
            continue;
        };
        let across = axes.across(first.start) * view.points_per_metre;
        if (across - last_across).abs() < needed && !is_lit(view, bed, row) {
            continue;
        }
        last_across = across;
        let text = row.number.to_string();
        let (half_along, _) = half_of(&text);
        // Off the end where the free ground takes the number with air on both sides, else on the end itself.
        let off_end = free >= 2.0 * half_along + 2.0 * AIR;
        let length = first.start.distance(last.end).to_metres() * view.points_per_metre;
        if length < if off_end { 6.0 } else { 10.0 } * half_along {
            continue;
        }
        let out = if off_end {
            half_along + AIR
        } else {
            (free - AIR - half_along).min(0.0)
        };
        let lit = is_lit(view, bed, row);
        let set = Setting {
            text: &text,
            size,
            lit,
            plate: (!off_end).then_some(plate),
            axes,
            rings: &rings,
        };
        let (start, end) = (first.start, last.end);
        // Where an end is out of sight, on a screen, the number stays on the row at the edge of what is seen.
        let edge = Setting {
            plate: Some(plate),
            ..set
        };
        let inner = view.visible.grown(view.metres(-EDGE_AIR - half_along));
        let seen = if view.surface == Surface::Screen {
            inner.cut(start, end)
        } else {
            None
        };
        for (way, true_end, part) in [
            (-1.0, start, seen.map(|(from, _)| from).filter(|&from| from > 0.0)),
            (1.0, end, seen.map(|(_, to)| to).filter(|&to| to < 1.0)),
        ] {
            if view.visible.contains(true_end) {
                set.at_end(true_end, way, out, view, layers);
            } else if let Some(part) = part {
                edge.at_end(start.towards(end, part), way, 0.0, view, layers);
            }
        }
    }
}

fn is_lit(view: &View, bed: &Bed, row: &Row) -> bool {
    view.is_lit(Item::Row(bed.id, row.number))
}

#[derive(Clone, Copy)]
struct Setting<'a> {
    text: &'a str,
    size: f32,
    lit: bool,
    plate: Option<Ink>,
    axes: RowAxes,
    rings: &'a [&'a [Point]],
}

impl Setting<'_> {
    /// Sets the number `out` points past the end of a row, `way` being 1 at the far end and -1 at the near one;
    /// further in, by as little as it takes, where the edge runs aslant.
    fn at_end(&self, end: Point, way: f64, out: f64, view: &View, layers: &mut Layers) {
        let half_width = view.metres(type_metrics::width(self.text, self.size, true) / 2.0 + 1.0);
        let half_height = view.metres(type_metrics::capital_height(self.size) / 2.0 + 1.0);
        let in_steps = [0.0, 3.0, 6.0, 10.0, 15.0];
        let place = in_steps.into_iter().find_map(|back| {
            let at = self.axes.shift(end, way * view.metres(out - back), 0.0);
            let ground = Bounds::about(at, half_width, half_height);
            let within = self.rings.is_empty()
                || ground
                    .corners()
                    .iter()
                    .all(|&corner| polygon::is_inside(self.rings, corner));
            (within && view.visible.overlaps(ground) && layers.room.is_free(ground)).then_some((at, ground, back))
        });
        let Some((at, ground, back)) = place else {
            return;
        };
        layers.room.take(ground);
        let on_row = self.plate.is_some() || back > 0.0;
        layers.words.push(Mark::Words(Words {
            at,
            text: self.text.to_owned(),
            anchor: Anchor::Middle,
            face: Face {
                size: self.size,
                bold: self.lit,
                ink: if self.lit { Ink::Accent } else { Ink::Soft },
            },
            turn: 0.0,
            plate: if on_row {
                Some(self.plate.unwrap_or(Ink::Paper))
            } else {
                None
            },
        }));
    }
}
