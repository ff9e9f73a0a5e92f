//! The label of a bed, on a plate at a spot that hides little of the rows.

use super::drawn::Drawn;
use super::layers::Layers;
use super::rows::Level;
use super::view::View;
use crate::geometry::{Bounds, Point, polygon};
use crate::layout::Item;
use crate::quantity::{Units, counted};
use crate::sheets::mark::{Anchor, Dash, Face, Ink, Mark, Pen, Words};
use crate::sheets::stand_words;
use crate::sheets::type_metrics;

/// One line of a label.
struct Line {
    text: String,
    size: f32,
    bold: bool,
    ink: Ink,
}

/// What a label says, and the room its plate takes in points.
struct Label {
    lines: Vec<Line>,
    width: f64,
    height: f64,
}

/// Space between the words and the edge of the plate, in points.
const PAD: f64 = 5.0;
/// Places tried across and up a bed.
const TRIED: u32 = 9;
/// Most row lines asked whether a label hides them.
const MOST_LINES_ASKED: usize = 600;
/// Outlines of more corners than this are not asked whether a label lies inside.
const MOST_CORNERS: usize = 400;

impl Label {
    fn of(lines: Vec<Line>) -> Self {
        let width = lines
            .iter()
            .map(|line| type_metrics::width(&line.text, line.size, line.bold))
            .fold(0.0, f64::max);
        let height: f64 = lines.iter().map(|line| f64::from(line.size) * 1.25).sum();
        Self {
            lines,
            width: width + 2.0 * PAD,
            height: height + PAD,
        }
    }

    fn ground(&self, middle: Point, view: &View) -> Bounds {
        Bounds::about(middle, view.metres(self.width / 2.0), view.metres(self.height / 2.0))
    }

    fn set(&self, ground: Bounds, lit: bool, view: &View, layers: &mut Layers) {
        let plate = ground.corners().to_vec();
        layers.labels.push(Mark::Fill {
            rings: vec![plate.clone()],
            ink: Ink::Paper,
        });
        layers.labels.push(Mark::Line {
            points: plate,
            closed: true,
            pen: Pen {
                width: if lit { 1.0 } else { 0.6 },
                ink: if lit { Ink::Accent } else { Ink::Soft },
                dash: Dash::Solid,
            },
        });
        let mut down = PAD / 2.0;
        for line in &self.lines {
            down += f64::from(line.size) * 1.25;
            layers.labels.push(Mark::Words(Words {
                at: Point::metres(
                    ground.min.x + view.metres(PAD),
                    ground.max.y - view.metres(down - f64::from(line.size) * 0.3),
                ),
                text: line.text.clone(),
                anchor: Anchor::Left,
                face: Face {
                    size: line.size,
                    bold: line.bold,
                    ink: line.ink,
                },
                turn: 0.0,
                plate: None,
            }));
        }
    }
}

/// Labels a bed: in full where there is room, else shorter and smaller, else beside the bed with a leader.
pub(super) fn label_bed(drawn: &Drawn, lines: &[[Point; 2]], units: Units, view: &View, layers: &mut Layers) {
    let &Drawn { bed, plan, extent, .. } = drawn;
    let Some(seen) = extent.common(view.visible) else {
        return;
    };
    let lit = view.is_lit(Item::Bed(bed.id));
    let sizes = sizes_of(drawn, lit, units, view);
    let asked: Vec<&[Point]> = if plan.ground.rings().map(<[Point]>::len).sum::<usize>() > MOST_CORNERS {
        Vec::new()
    } else {
        plan.ground.rings().collect()
    };
    for label in &sizes {
        if let Some(ground) = inside_the_bed(label, seen, &asked, lines, view, layers) {
            layers.room.take(ground);
            label.set(ground, lit, view, layers);
            return;
        }
    }
    // A bed that reaches out of sight keeps its label for when it is seen whole.
    if seen != extent {
        return;
    }
    // Rather a leader across other words than no label at all.
    let beside = [true, false].into_iter().find_map(|leader_keeps_off| {
        let labels = sizes.iter().rev().skip(1);
        labels
            .into_iter()
            .find_map(|label| Some((label, beside_the_bed(label, extent, leader_keeps_off, view, layers)?)))
    });
    if let Some((label, ground)) = beside {
        layers.room.take(ground);
        layers.labels.push(Mark::Strokes {
            strokes: vec![[foot_of_leader(&ground, extent.middle()), extent.middle()]],
            pen: Pen {
                width: 0.6,
                ink: Ink::Strong,
                dash: Dash::Solid,
            },
        });
        label.set(ground, lit, view, layers);
    }
}

/// The place of a plate nearest to where its leader goes.
fn foot_of_leader(ground: &Bounds, to: Point) -> Point {
    Point::metres(
        to.x.clamp(ground.min.x, ground.max.x),
        to.y.clamp(ground.min.y, ground.max.y),
    )
}

/// A free place beside a bed, the nearest first.
fn beside_the_bed(
    label: &Label,
    extent: Bounds,
    leader_keeps_off: bool,
    view: &View,
    layers: &Layers,
) -> Option<Bounds> {
    const WAYS: [(f64, f64); 8] = [
        (1.0, 0.0),
        (0.0, -1.0),
        (0.0, 1.0),
        (-1.0, 0.0),
        (1.0, 1.0),
        (1.0, -1.0),
        (-1.0, 1.0),
        (-1.0, -1.0),
    ];
    let middle = extent.middle();
    let places = [14.0, 40.0, 70.0].into_iter().flat_map(|reach| {
        WAYS.map(|(east, north)| {
            let away = |size: f64, label: f64| size / 2.0 + view.metres(reach + label / 2.0);
            Point::metres(
                middle.x + east * away(extent.width(), label.width),
                middle.y + north * away(extent.height(), label.height),
            )
        })
    });
    places.map(|at| label.ground(at, view)).find(|ground| {
        let foot = foot_of_leader(ground, middle);
        let leader_is_free = || {
            (1..=20).map(|k| foot.towards(middle, f64::from(k) / 20.0)).all(|at| {
                let about = Bounds::about(at, view.metres(1.0), view.metres(1.0));
                extent.contains(at) || layers.room.is_free(about) && !layers.beds.iter().any(|bed| bed.contains(at))
            })
        };
        inside_bounds(ground, &view.visible)
            && !layers.beds.iter().any(|bed| bed.overlaps(*ground))
            && layers.room.is_free(*ground)
            && (!leader_keeps_off || leader_is_free())
    })
}

fn inside_bounds(inner: &Bounds, outer: &Bounds) -> bool {
    outer.contains(inner.min) && outer.contains(inner.max)
}

/// The place inside the bed that hides least of the rows; nearest the middle where several hide as little.
fn inside_the_bed(
    label: &Label,
    seen: Bounds,
    rings: &[&[Point]],
    drawn: &[[Point; 2]],
    view: &View,
    layers: &Layers,
) -> Option<Bounds> {
    let (width, height) = (view.metres(label.width), view.metres(label.height));
    let free = (seen.width() - width, seen.height() - height);
    if free.0 < 0.0 || free.1 < 0.0 {
        return None;
    }
    let stride = drawn.len().div_ceil(MOST_LINES_ASKED).max(1);
    let mut best: Option<(f64, Bounds)> = None;
    for across in 0..TRIED {
        for up in 0..TRIED {
            // From the middle out, and never against the edge where the numbers stand.
            let part = |k: u32| (f64::from(k) + 0.5) / f64::from(TRIED);
            let (east, north) = (part(across), part(up));
            let ground = label.ground(
                Point::metres(
                    seen.min.x + width / 2.0 + free.0 * east,
                    seen.min.y + height / 2.0 + free.1 * north,
                ),
                view,
            );
            let within = rings.is_empty()
                || (ground
                    .corners()
                    .iter()
                    .chain([&ground.middle()])
                    .all(|&corner| polygon::is_inside(rings, corner))
                    && !rings.iter().copied().flatten().any(|&corner| ground.contains(corner)));
            if !within || !layers.room.is_free(ground) {
                continue;
            }
            let hidden: f64 = drawn
                .iter()
                .step_by(stride)
                .filter_map(|&[a, b]| {
                    ground
                        .cut(a, b)
                        .map(|(from, to)| (to - from) * a.distance(b).to_metres())
                })
                .sum();
            let off_middle = (east - 0.5).hypot(north - 0.5) * view.metres(60.0);
            let avoided = if layers.room.is_avoided(ground) {
                view.metres(1000.0)
            } else {
                0.0
            };
            let cost = hidden + off_middle + avoided;
            if best.is_none_or(|(least, _)| cost < least) {
                best = Some((cost, ground));
            }
        }
    }
    best.map(|(_, ground)| ground)
}

/// The label of a bed from the fullest to the shortest.
fn sizes_of(drawn: &Drawn, lit: bool, units: Units, view: &View) -> Vec<Label> {
    let Drawn {
        bed, plan, key, level, ..
    } = *drawn;
    let ink = if lit { Ink::Accent } else { Ink::Strong };
    let name = if bed.name.trim().is_empty() {
        "bed".to_owned()
    } else {
        bed.name.clone()
    };
    let name = type_metrics::shortened(&name, 150.0, view.letters(9.5), true);
    let line = |text: &str, size: f32, bold: bool| Line {
        text: text.to_owned(),
        size: view.letters(size),
        bold,
        ink: if bold { ink } else { Ink::Soft },
    };
    let letters = key.map(|key| key.letters.clone());
    let crop = key.map_or_else(
        || "nothing planted".to_owned(),
        |key| type_metrics::shortened(&key.name, 150.0, view.letters(7.5), false),
    );
    let rows = stand_words::rows(bed, units);
    let apart = stand_words::in_row(plan, units);
    let short = letters
        .as_ref()
        .map_or_else(|| rows.clone(), |letters| format!("{letters} · {rows}"));
    let full = if apart.is_empty() {
        short.clone()
    } else {
        format!("{short}, {apart}")
    };
    let totals = format!(
        "{} · {}",
        counted(plan.totals.rows, "row", "rows"),
        counted(plan.totals.plants, "plant", "plants")
    );
    let mut sizes = Vec::new();
    if level == Level::Hatch {
        sizes.push(vec![
            line(&name, 9.5, true),
            line(&crop, 7.5, false),
            line(&totals, 7.5, false),
        ]);
    }
    sizes.push(vec![line(&name, 9.5, true), line(&full, 7.5, false)]);
    sizes.push(vec![
        line(&name, 9.0, true),
        line(&short, 7.5, false),
        line(&apart, 7.5, false),
    ]);
    if bed.lines.per_row > 1 {
        // Where there is no room to say how far lines are apart, how many there are matters more.
        let lines = format!("{} lines a row", bed.lines.per_row);
        sizes.push(vec![
            line(&name, 9.0, true),
            line(&lines, 7.5, false),
            line(&apart, 7.5, false),
        ]);
        sizes.push(vec![line(&name, 8.5, true), line(&lines, 7.0, false)]);
    }
    sizes.push(vec![line(&name, 8.5, true)]);
    sizes.push(vec![line(&name, 7.0, true)]);
    sizes.push(vec![line(letters.as_deref().unwrap_or("–"), 6.5, true)]);
    sizes.into_iter().map(Label::of).collect()
}
