//! The one drawing, made from a layout and its plan in ground metres, for a screen or for paper.
//!
//! [`draw`] gives the marks; [`north_arrow`] and [`ScaleBar`] are set by the page or the window, in points.
//! Nothing is worked out here that belongs to the plan: rows, plants and amounts come as they are.

mod drawn;
mod labels;
mod layers;
mod legend;
mod measures;
mod north;
mod notes;
mod obstacles;
mod outline;
mod plants;
mod room;
mod row_axes;
mod row_numbers;
mod rows;
mod scale_bar;
mod strokes;
mod thinning;
mod view;

use self::drawn::Drawn;
use self::layers::Layers;
use super::mark::Mark;
use crate::layout::Layout;
use crate::plan::Plan;

pub use legend::{CropKey, crop_keys};
pub use measures::REACH;
pub use north::{NORTH_ARROW_HEIGHT, NORTH_ARROW_WIDTH, north_arrow};
pub use outline::extent;
pub use rows::{CLOSEST_ROWS, Level, level};
pub use scale_bar::ScaleBar;
pub use view::{MARGIN, Surface, View};

/// Draws what a view sees of a layout and its plan.
///
/// Beds without a plan, and plans without a bed, are left out. A view that is not sound (no extent, or a size
/// that is not a positive number) gives no marks.
pub fn draw(layout: &Layout, plan: &Plan, view: &View) -> Vec<Mark> {
    if !view.is_sound() {
        return Vec::new();
    }
    let mut layers = Layers::default();
    let keys = crop_keys(layout, plan);
    let beds: Vec<Drawn> = layout
        .beds
        .iter()
        .filter_map(|bed| {
            let plan = plan.bed(bed.id)?;
            let planted = bed.planting.as_ref();
            let key = planted.and_then(|planting| keys.iter().find(|key| key.crop == planting.crop));
            let extent = plan.ground.bounds()?;
            Some(Drawn {
                bed,
                plan,
                key,
                extent,
                level: level(bed, plan, view),
            })
        })
        .collect();
    layers.beds = beds.iter().map(|drawn| drawn.extent).collect();
    let in_sight: Vec<&Drawn> = beds
        .iter()
        .filter(|drawn| drawn.extent.overlaps(view.cutting()))
        .collect();
    for plot in &layout.plots {
        outline::lay_plot(plot, view, &mut layers);
        obstacles::draw_obstacles(plot, view, &mut layers);
        outline::outline_plot(plot, view, &mut layers);
    }
    let mut lines = Vec::with_capacity(in_sight.len());
    for Drawn {
        bed, plan, key, level, ..
    } in in_sight.iter().copied()
    {
        outline::lay_bed(plan, *key, *level, view, &mut layers);
        lines.push(rows::draw_rows(bed, plan, *key, *level, view, &mut layers));
        outline::outline_bed(bed, plan, view, &mut layers);
    }
    for plot in &layout.plots {
        if layout.plots.len() > 1 {
            outline::name_plot(plot, view, &mut layers);
        }
        obstacles::name_obstacles(plot, view, &mut layers);
        measures::measure_plot(layout, plot, view, &mut layers);
    }
    for note in &layout.notes {
        notes::set_note(note, layout, view, &mut layers);
    }
    for (drawn, lines) in in_sight.iter().copied().zip(&lines) {
        labels::label_bed(drawn, lines, layout.units, view, &mut layers);
    }
    layers.marks()
}
