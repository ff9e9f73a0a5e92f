//! Outlines of plots and beds, and the ground they enclose.

use super::layers::Layers;
use super::legend::CropKey;
use super::room::words_box;
use super::rows::Level;
use super::strokes::stroke;
use super::view::View;
use crate::geometry::{Bounds, Point};
use crate::layout::{Bed, BedGround, Item, Plot};
use crate::plan::BedPlan;
use crate::sheets::mark::{Anchor, Dash, Face, Ink, Mark, Pen, Words};
use crate::sheets::type_metrics;

/// Lays the ground of a plot under everything.
pub(super) fn lay_plot(plot: &Plot, view: &View, layers: &mut Layers) {
    let ring = view.cutting().cut_ring(&plot.outline);
    if ring.len() > 2 {
        layers.ground.push(Mark::Fill {
            rings: vec![ring],
            ink: Ink::Ground,
        });
    }
}

/// Draws the outline of a plot, the heaviest line of the drawing.
pub(super) fn outline_plot(plot: &Plot, view: &View, layers: &mut Layers) {
    let lit = view.is_lit(Item::Plot(plot.id));
    let pen = Pen {
        // 0.7 mm: the width of ISO 128-2:2020 for an outline when rows are drawn at half of it.
        width: 2.0,
        ink: if lit { Ink::Accent } else { Ink::Strong },
        dash: Dash::Solid,
    };
    stroke(&plot.outline, true, pen, view, &mut layers.outlines);
}

/// Names a plot above its north-west corner, where the sheet shows more than one plot.
pub(super) fn name_plot(plot: &Plot, view: &View, layers: &mut Layers) {
    let Some(bounds) = Bounds::of(&plot.outline) else {
        return;
    };
    let size = view.letters(8.0);
    let most = bounds.width() * view.points_per_metre;
    let text = type_metrics::shortened(plot.name.trim(), most, size, true);
    if text.is_empty() {
        return;
    }
    let half = type_metrics::width(&text, size, true) / 2.0;
    let above = f64::from(view.letters(7.5));
    let middle = Point::metres(bounds.min.x + view.metres(half), bounds.max.y + view.metres(above));
    let words = words_box(view, middle, &text, size, true, 0.0, 1.0);
    if words.overlaps(view.visible) && layers.room.claim(words) {
        let lit = view.is_lit(Item::Plot(plot.id));
        layers.words.push(Mark::Words(Words {
            at: middle,
            text,
            anchor: Anchor::Middle,
            face: Face {
                size,
                bold: true,
                ink: if lit { Ink::Accent } else { Ink::Strong },
            },
            turn: 0.0,
            plate: None,
        }));
    }
}

/// Lays the ground of a bed: its crop's tint, and a hatch where its rows are too close to draw.
pub(super) fn lay_bed(plan: &BedPlan, key: Option<&CropKey>, level: Level, view: &View, layers: &mut Layers) {
    let cutting = view.cutting();
    let rings: Vec<Vec<Point>> = plan
        .ground
        .rings()
        .map(|ring| cutting.cut_ring(ring))
        .filter(|ring| ring.len() > 2)
        .collect();
    if rings.is_empty() {
        return;
    }
    if let Some(key) = key {
        layers.ground.push(Mark::Fill {
            rings: rings.clone(),
            ink: key.tint(),
        });
    }
    if let (Some(key), Level::Hatch) = (key, level) {
        let pen = Pen {
            width: 0.6,
            ink: key.line(),
            dash: Dash::Solid,
        };
        layers.ground.push(Mark::Hatch {
            rings,
            hatch: key.hatch,
            pen,
        });
    }
}

/// Draws the edge of a bed that has an outline of its own.
pub(super) fn outline_bed(bed: &Bed, plan: &BedPlan, view: &View, layers: &mut Layers) {
    let lit = view.is_lit(Item::Bed(bed.id));
    if bed.ground == BedGround::WholePlot && !lit {
        return;
    }
    let pen = if lit {
        Pen {
            width: 2.4,
            ink: Ink::Accent,
            dash: Dash::Solid,
        }
    } else {
        Pen {
            width: 0.7,
            ink: Ink::Soft,
            dash: Dash::Short,
        }
    };
    // What is chosen is outlined over the plot's own heavy line.
    let marks = if lit { &mut layers.lit } else { &mut layers.bed_outlines };
    for ring in plan.ground.rings() {
        stroke(ring, true, pen, view, marks);
    }
}

/// The box round everything of a layout that is drawn true to scale: plots, obstacles with their clear
/// distance, and notes. `None` for an empty sheet.
pub fn extent(layout: &crate::layout::Layout) -> Option<Bounds> {
    let mut extent: Option<Bounds> = None;
    let mut include = |bounds: Option<Bounds>, by: f64| {
        if let Some(bounds) = bounds.map(|bounds| bounds.grown(by)) {
            extent = Some(extent.map_or(bounds, |extent| extent.with(bounds)));
        }
    };
    for plot in &layout.plots {
        include(Bounds::of(&plot.outline), 0.0);
        for obstacle in &plot.obstacles {
            let ring = obstacle.shape.ring();
            let clear = obstacle.clear.to_metres();
            include(Bounds::of(&ring), if clear.is_finite() { clear.max(0.0) } else { 0.0 });
        }
    }
    for note in &layout.notes {
        include(Bounds::of([note.at]), 0.0);
    }
    extent
}
