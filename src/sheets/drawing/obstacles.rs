//! What stands in the way: the sign of each kind, its name, and how far rows keep away.

use super::layers::Layers;
use super::room::words_box;
use super::strokes::stroke;
use super::view::View;
use crate::geometry::{Bounds, Point, polygon};
use crate::layout::{Item, Obstacle, ObstacleKind, Plot, Shape};
use crate::quantity::{Area, Length};
use crate::sheets::mark::{Anchor, Dash, Face, Hatch, Ink, Mark, Pen, Words};
use crate::sheets::type_metrics;

/// Draws what stands in the way on a plot.
pub(super) fn draw_obstacles(plot: &Plot, view: &View, layers: &mut Layers) {
    for obstacle in &plot.obstacles {
        let ring = obstacle.shape.ring();
        let clear = obstacle.clear.to_metres().max(0.0);
        let Some(bounds) = finite_bounds(&ring) else {
            continue;
        };
        if !bounds.grown(clear).overlaps(view.cutting()) {
            continue;
        }
        let lit = view.is_lit(Item::Obstacle(plot.id, obstacle.id));
        let ink = if lit { Ink::Accent } else { Ink::Strong };
        if view.points_per_metre * clear >= 3.0 {
            let pen = Pen {
                width: 0.7,
                ink: if lit { Ink::Accent } else { Ink::Soft },
                dash: Dash::Short,
            };
            stroke(
                &clear_line(&obstacle.shape, clear),
                true,
                pen,
                view,
                &mut layers.obstacles,
            );
        }
        fill(
            &ring,
            if lit { Ink::AccentTint } else { Ink::Obstacle },
            view,
            &mut layers.obstacles,
        );
        sign(obstacle, &ring, &bounds, ink, view, &mut layers.obstacles);
        stroke(
            &ring,
            true,
            Pen {
                width: 1.1,
                ink,
                dash: Dash::Solid,
            },
            view,
            &mut layers.obstacles,
        );
        layers.room.take(bounds);
        layers.room.avoid(bounds.grown(clear));
    }
}

/// Names what stands in the way, inside where the name fits, else beside it.
pub(super) fn name_obstacles(plot: &Plot, view: &View, layers: &mut Layers) {
    for obstacle in &plot.obstacles {
        let ring = obstacle.shape.ring();
        let Some(bounds) = finite_bounds(&ring) else {
            continue;
        };
        if obstacle.name.trim().is_empty() || !bounds.overlaps(view.visible) {
            continue;
        }
        let size = view.letters(8.0);
        let text_width = type_metrics::width(&obstacle.name, size, false);
        let lit = view.is_lit(Item::Obstacle(plot.id, obstacle.id));
        let face = Face {
            size,
            bold: lit,
            ink: if lit { Ink::Accent } else { Ink::Strong },
        };
        let middle = bounds.middle();
        let within = words_box(view, middle, &obstacle.name, size, face.bold, 0.0, 2.0);
        let fits = within
            .corners()
            .iter()
            .all(|&corner| polygon::is_inside([&ring], corner));
        let (at, plate) = if fits {
            (within.overlaps(view.visible).then_some(middle), Ink::Obstacle)
        } else {
            let side = beside(&bounds, obstacle, view, text_width, size);
            let at = side.into_iter().find(|&at| {
                let wanted = words_box(view, at, &obstacle.name, size, face.bold, 0.0, 1.0);
                wanted.overlaps(view.visible) && layers.room.claim(wanted)
            });
            (at, Ink::Paper)
        };
        if let Some(at) = at {
            layers.words.push(Mark::Words(Words {
                at,
                text: obstacle.name.clone(),
                anchor: Anchor::Middle,
                face,
                turn: 0.0,
                plate: Some(plate),
            }));
        }
    }
}

/// Places for the middle of a name beside its obstacle: right, above, below, left, inside the clear distance or
/// just past it.
fn beside(bounds: &Bounds, obstacle: &Obstacle, view: &View, text_width: f64, size: f32) -> [Point; 8] {
    let (half_width, half_height) = (
        view.metres(text_width / 2.0 + 3.0) + bounds.width() / 2.0,
        view.metres(f64::from(size) / 2.0 + 3.0) + bounds.height() / 2.0,
    );
    let clear = obstacle.clear.to_metres().max(0.0);
    let middle = bounds.middle();
    let about = |east: f64, north: f64| Point::metres(middle.x + east, middle.y + north);
    [
        about(half_width, 0.0),
        about(0.0, half_height),
        about(0.0, -half_height),
        about(-half_width, 0.0),
        about(half_width + clear, 0.0),
        about(0.0, half_height + clear),
        about(0.0, -half_height - clear),
        about(-half_width - clear, 0.0),
    ]
}

fn fill(ring: &[Point], ink: Ink, view: &View, marks: &mut Vec<Mark>) {
    let ring = view.cutting().cut_ring(ring);
    if ring.len() > 2 {
        marks.push(Mark::Fill { rings: vec![ring], ink });
    }
}

/// The sign of the kind: a building is crossed from corner to corner, a tree has spokes, a well a cross, and
/// anything else is hatched.
fn sign(obstacle: &Obstacle, ring: &[Point], bounds: &Bounds, ink: Ink, view: &View, marks: &mut Vec<Mark>) {
    let pen = Pen {
        width: 0.5,
        ink,
        dash: Dash::Solid,
    };
    let (middle, radius) = match obstacle.shape {
        Shape::Circle { centre, radius } => (centre, radius.to_metres()),
        Shape::Corners(_) => (bounds.middle(), bounds.width().min(bounds.height()) / 2.0),
    };
    let spoke = |degrees: f64, from: f64, to: f64| {
        let (sin, cos) = degrees.to_radians().sin_cos();
        [from, to].map(|part| Point::metres(middle.x + sin * radius * part, middle.y + cos * radius * part))
    };
    let strokes: Vec<[Point; 2]> = match (obstacle.kind, ring) {
        (ObstacleKind::Building, &[a, b, c, d]) => vec![[a, c], [b, d]],
        (ObstacleKind::Tree, _) => (0..12).map(|k| spoke(f64::from(k) * 30.0, 0.35, 0.8)).collect(),
        (ObstacleKind::Well, _) => (0..4).map(|k| spoke(f64::from(k) * 90.0 + 45.0, 0.0, 1.0)).collect(),
        (ObstacleKind::Building | ObstacleKind::Other, _) => {
            let ring = view.cutting().cut_ring(ring);
            if ring.len() > 2 {
                marks.push(Mark::Hatch {
                    rings: vec![ring],
                    hatch: Hatch {
                        bearing: 45.0,
                        gap: 4.0,
                        crossed: obstacle.kind == ObstacleKind::Building,
                    },
                    pen: Pen { ink: Ink::Soft, ..pen },
                });
            }
            return;
        }
    };
    let cutting = view.cutting();
    let strokes: Vec<[Point; 2]> = strokes
        .into_iter()
        .filter_map(|[a, b]| {
            cutting
                .cut(a, b)
                .map(|(from, to)| [a.towards(b, from), a.towards(b, to)])
        })
        .collect();
    if !strokes.is_empty() {
        marks.push(Mark::Strokes { strokes, pen });
    }
}

/// The box round a ring; `None` when a corner is not a number.
fn finite_bounds(ring: &[Point]) -> Option<Bounds> {
    let finite = ring.iter().all(|point| point.is_finite());
    Bounds::of(ring).filter(|_| finite)
}

/// The line `clear` metres outside a shape: round at corners that stick out. Where a notch is narrower than
/// twice that distance the line crosses itself there; it is drawn as a guide only, rows are cut by true insets.
fn clear_line(shape: &Shape, clear: f64) -> Vec<Point> {
    let corners = match shape {
        Shape::Circle { centre, radius } => return polygon::circle_ring(*centre, *radius + Length::metres(clear)),
        Shape::Corners(corners) => corners,
    };
    let clockwise = polygon::signed_area(corners) < Area::ZERO;
    let out = if clockwise { -clear } else { clear };
    let outward: Vec<(f64, f64)> = sides(corners)
        .map(|(a, b)| {
            let length = (b.x - a.x).hypot(b.y - a.y).max(f64::MIN_POSITIVE);
            ((b.y - a.y) / length * out, (a.x - b.x) / length * out)
        })
        .collect();
    let mut line = Vec::new();
    for (k, &corner) in corners.iter().enumerate() {
        let before = outward
            .get((k + corners.len() - 1) % corners.len())
            .copied()
            .unwrap_or_default();
        let after = outward.get(k).copied().unwrap_or_default();
        let turn = (before.0 * after.1 - before.1 * after.0).atan2(before.0 * after.0 + before.1 * after.1);
        let shifted = |(x, y): (f64, f64)| Point::metres(corner.x + x, corner.y + y);
        if turn * out > 0.0 {
            // Sticks out: an arc in steps of at most ten degrees.
            let steps = (turn.abs() / 10_f64.to_radians()).ceil().max(1.0) as u32;
            line.extend((0..=steps).map(|step| {
                let (sin, cos) = (turn * f64::from(step) / f64::from(steps)).sin_cos();
                shifted((before.0 * cos - before.1 * sin, before.0 * sin + before.1 * cos))
            }));
        } else {
            // Goes in, or straight on: where the two shifted sides meet.
            let (x, y) = (before.0 + after.0, before.1 + after.1);
            let stretch = 2.0 * clear * clear / x.hypot(y).powi(2).max(clear * clear * 0.1);
            line.push(shifted((x * stretch, y * stretch)));
        }
    }
    line
}

/// The sides of a closed ring.
pub(super) fn sides(ring: &[Point]) -> impl Iterator<Item = (Point, Point)> {
    ring.iter().copied().zip(ring.iter().copied().cycle().skip(1))
}
