//! The map on paper: which way round, at which scale, and where on the sheet.

use super::frame::Role;
use super::map_key::{self, KeyLine};
use super::map_parts::MapParts;
use super::options::{PageError, PageOptions, ScaleChoice};
use super::paper::{Paper, Turned};
use super::scale::Scale;
use super::sheet::{HEAD, Sheet};
use crate::geometry::{Bounds, Point};
use crate::layout::Layout;
use crate::plan::Plan;
use crate::quantity::counted;
use crate::sheets::drawing::{self, NORTH_ARROW_HEIGHT, NORTH_ARROW_WIDTH, REACH, ScaleBar, View};
use crate::sheets::mark::{Mark, Words};
use crate::sheets::stand_words;
use crate::sheets::{Placing, type_metrics};

/// Kept below the map for notes, in points.
const NOTES: f64 = 46.0;
/// Between the head and the map.
const AIR: f64 = 4.0;

/// How the whole map goes on a sheet.
pub(super) struct Fit {
    pub(super) turned: Turned,
    pub(super) scale: Scale,
    /// Whether it is smaller than was asked for.
    pub(super) is_overview: bool,
}

/// The space for the drawing itself on a sheet, in points: across and down.
fn space(paper: Paper, turned: Turned, key: &[KeyLine], foot: f64) -> (f64, f64) {
    let (width, height) = paper.size(turned);
    let across = width - 2.0 * paper.margin();
    let down = height - 2.0 * paper.margin() - HEAD - AIR;
    (
        across,
        down - map_key::BAR_HEIGHT - map_key::key_height(key, across) - NOTES - foot,
    )
}

/// Whether ground of this extent fits at a scale, with its measures round it.
fn fits(extent: &Bounds, scale: Scale, (across, down): (f64, f64)) -> bool {
    // A hair of slack, so that ground that fills the sheet to the last point still fits.
    let slack = 1e-6;
    extent.width() * scale.points_per_metre() + 2.0 * REACH <= across + slack
        && extent.height() * scale.points_per_metre() + 2.0 * REACH <= down + slack
}

/// Finds the way round and the scale of the whole map: the one asked for where it fits a sheet, else the largest
/// standard one that does.
pub(super) fn fit(
    layout: &Layout,
    extent: &Bounds,
    options: &PageOptions,
    key: &[KeyLine],
    foot: f64,
) -> Result<Fit, PageError> {
    let try_scale = |scale: Scale| {
        [Turned::Portrait, Turned::Landscape]
            .into_iter()
            .find(|&turned| fits(extent, scale, space(options.paper, turned, key, foot)))
            .map(|turned| Fit {
                turned,
                scale,
                is_overview: false,
            })
    };
    let asked = match options.scale {
        ScaleChoice::Fit => None,
        ScaleChoice::Chosen(scale) => Some(scale),
    };
    if let Some(fit) = asked.and_then(try_scale) {
        return Ok(fit);
    }
    let largest = Scale::standard(layout.units)
        .find_map(try_scale)
        .ok_or(PageError::TooLarge)?;
    Ok(Fit {
        is_overview: asked.is_some(),
        ..largest
    })
}

/// Sets the map with its north arrow, scale bar and key at the top of a sheet, the parts that it is cut into drawn over it.
pub(super) fn set_map(
    sheet: &mut Sheet,
    layout: &Layout,
    plan: &Plan,
    extent: &Bounds,
    scale: Scale,
    key: &[KeyLine],
    parts: Option<&MapParts>,
) {
    let points_per_metre = scale.points_per_metre();
    let (width, height) = (extent.width() * points_per_metre, extent.height() * points_per_metre);
    sheet.y += AIR;
    let top = sheet.y + REACH;
    let left = sheet.left + (sheet.across() - width) / 2.0;
    let placing = Placing {
        points_per_metre,
        ground: Point::metres(extent.min.x, extent.max.y),
        sheet: Point::metres(left, top),
    };
    let visible = Bounds {
        min: placing.to_ground(Point::metres(sheet.left, top + height + REACH)),
        max: placing.to_ground(Point::metres(sheet.right, sheet.y)),
    };
    let view = View::of_paper(visible, points_per_metre);
    let marks: Vec<Mark> = drawing::draw(layout, plan, &view)
        .iter()
        .map(|mark| printable(mark.placed(&placing)))
        .collect();
    sheet.push(Role::Figure(in_words(layout, plan, scale)), marks);
    if let Some(parts) = parts {
        parts.set_overview(sheet, &placing);
    }
    let map_right = left + width + REACH;
    let beside = sheet.right - map_right >= NORTH_ARROW_WIDTH;
    sheet.y = top + height + REACH;
    let tip = if beside {
        Point::metres(sheet.right - NORTH_ARROW_WIDTH / 2.0 - 3.0, top - REACH + 4.0)
    } else {
        Point::metres(
            sheet.right - NORTH_ARROW_WIDTH / 2.0 - 3.0,
            sheet.y + map_key::BAR_HEIGHT - NORTH_ARROW_HEIGHT,
        )
    };
    sheet.push(
        Role::Figure("North is up the sheet".to_owned()),
        drawing::north_arrow(tip),
    );
    map_key::set_bar(sheet, scale, ScaleBar::to_check(points_per_metre, layout.units));
    map_key::set_key(sheet, key);
    set_thinned(sheet, layout, plan, &view);
    if let Some(parts) = parts {
        parts.announce(sheet);
    }
}

/// Says where the map does not show every row.
pub(super) fn set_thinned(sheet: &mut Sheet, layout: &Layout, plan: &Plan, view: &View) {
    if let Some(sentence) = map_key::thinned(layout, plan, view) {
        sheet.sentence(Role::Sentence, &sentence, 8.0, crate::sheets::Ink::Soft);
    }
}

/// The mark with signs that the fonts lack replaced.
pub(super) fn printable(mark: Mark) -> Mark {
    match mark {
        Mark::Words(words) => Mark::Words(Words {
            text: type_metrics::printable(&words.text),
            ..words
        }),
        mark => mark,
    }
}

/// What the map shows, for those who cannot see it.
fn in_words(layout: &Layout, plan: &Plan, scale: Scale) -> String {
    let mut words = format!("Map at {}.", scale.show());
    for plot in &layout.plots {
        words.push_str(&format!(" Plot {}.", plot.name));
        for bed in layout.beds_of(plot.id) {
            let Some(plan) = plan.bed(bed.id) else {
                continue;
            };
            words.push_str(&format!(
                " Bed {}: {}, {}, {}.",
                bed.name,
                counted(plan.totals.rows, "row", "rows"),
                stand_words::rows(bed, layout.units),
                counted(plan.totals.plants, "plant", "plants"),
            ));
        }
        for obstacle in &plot.obstacles {
            words.push_str(&format!(" In the way: {}.", obstacle.name));
        }
    }
    words
}
