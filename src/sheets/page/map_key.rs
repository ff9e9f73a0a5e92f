//! The foot of the map: scale bar with its check, and the key of the crops.

use super::frame::Role;
use super::scale::Scale;
use super::sheet::{Sheet, corners, frame_box, words};
use crate::geometry::Point;
use crate::layout::Layout;
use crate::plan::Plan;
use crate::quantity::number;
use crate::sheets::drawing::{CropKey, Level, ScaleBar, View, crop_keys, level};
use crate::sheets::mark::{Anchor, Ink, Mark, Pen};
use crate::sheets::type_metrics;

/// Height of the line with the scale bar, in points.
pub(super) const BAR_HEIGHT: f64 = 26.0;
/// Height of one line of the key.
const LINE: f64 = 14.0;
/// Most lines of the key: a map of more crops says where to find the rest.
const MOST_LINES: usize = 14;
const SIZE: f32 = 8.0;

/// One line of the key: a crop and how it stands.
pub(super) struct KeyLine {
    key: Option<CropKey>,
    text: String,
}

/// The lines of the key, in the order of the beds.
pub(super) fn key_lines(layout: &Layout, plan: &Plan) -> Vec<KeyLine> {
    let keys = crop_keys(layout, plan);
    let mut lines: Vec<KeyLine> = Vec::new();
    for bed in &layout.beds {
        let key = bed
            .planting
            .as_ref()
            .and_then(|planting| keys.iter().find(|key| key.crop == planting.crop));
        let (Some(key), Some(plan)) = (key, plan.bed(bed.id)) else {
            continue;
        };
        let stand = plan.stand.map_or_else(String::new, |stand| {
            format!("{} in the row, ", stand.in_row.show_short(layout.units))
        });
        let rows = bed.row_spacing.show_short(layout.units);
        let text = format!("{}: {stand}rows {rows}, {}", key.name, bed.water.name());
        if !lines.iter().any(|line| line.text == text) {
            lines.push(KeyLine {
                key: Some(key.clone()),
                text,
            });
        }
    }
    lines
}

/// Words for rows that the map does not show one by one at a scale, if there are any.
pub(super) fn thinned(layout: &Layout, plan: &Plan, view: &View) -> Option<String> {
    let mut hatched = false;
    let mut thinned = false;
    for bed in &layout.beds {
        match plan
            .bed(bed.id)
            .map(|plan| (level(bed, plan, view), plan.rows.is_empty()))
        {
            Some((Level::Hatch, false)) => hatched = true,
            Some((Level::Lines { every }, false)) if every > 1 => thinned = true,
            _ => {}
        }
    }
    match (hatched, thinned) {
        (false, false) => None,
        (true, false) => {
            Some("Hatched beds: rows are too close to draw at this scale; the tables have them all.".to_owned())
        }
        (_, true) => Some("Not every row is drawn at this scale; the tables have them all.".to_owned()),
    }
}

/// Height that the key takes on a sheet so wide.
pub(super) fn key_height(lines: &[KeyLine], across: f64) -> f64 {
    let shown = lines.len().min(MOST_LINES);
    let columns = columns(lines, across);
    if shown == 0 {
        0.0
    } else {
        shown.div_ceil(columns) as f64 * LINE + 6.0
    }
}

fn columns(lines: &[KeyLine], across: f64) -> usize {
    let widest = lines
        .iter()
        .map(|line| type_metrics::width(&line.text, SIZE, false) + 74.0)
        .fold(0.0, f64::max);
    ((across / widest.max(1.0)) as usize).clamp(1, 2)
}

/// Sets the scale bar at the left with its words beside it, and moves down past it.
pub(super) fn set_bar(sheet: &mut Sheet, scale: Scale, bar: Option<ScaleBar>) {
    let top = sheet.y + 13.0;
    let shown = scale.show();
    let with_ratio = if shown.starts_with("1:") {
        shown
    } else {
        format!("{shown} (1:{})", number(scale.to_ratio(), 2))
    };
    match bar {
        Some(bar) => {
            let marks = bar.marks(Point::metres(sheet.left + 4.0, top));
            let figure = format!("Scale bar of {}", bar.ground.show_short(bar.units));
            sheet.push(Role::Figure(figure), marks);
            let text = format!(
                "{with_ratio}. This bar must measure {}; if not, print again at 100 %.",
                bar.on_paper()
            );
            let x = sheet.left + bar.points + 34.0;
            let lines = type_metrics::break_lines(&text, sheet.right - x - 24.0, 8.5, false);
            let lift = (lines.len() as f64 - 1.0) * 5.5;
            let marks = lines.iter().enumerate().map(|(k, line)| {
                let y = top + 4.5 - lift + k as f64 * 11.0;
                words(x, y, line, Anchor::Left, 8.5, false, Ink::Strong)
            });
            sheet.push(Role::Sentence, marks.collect());
        }
        None => sheet.push(
            Role::Sentence,
            vec![words(
                sheet.left,
                top,
                &with_ratio,
                Anchor::Left,
                8.5,
                false,
                Ink::Strong,
            )],
        ),
    }
    sheet.y += BAR_HEIGHT;
}

/// Sets the key of the crops, and moves down past it.
pub(super) fn set_key(sheet: &mut Sheet, lines: &[KeyLine]) {
    if lines.is_empty() {
        return;
    }
    let columns = columns(lines, sheet.across());
    let shown = lines.len().min(MOST_LINES);
    let deep = shown.div_ceil(columns);
    let across = sheet.across() / columns as f64;
    for (k, line) in lines.iter().take(shown).enumerate() {
        let x = sheet.left + (k / deep) as f64 * across;
        let y = sheet.y + 4.0 + (k % deep) as f64 * LINE;
        let last_of_many = k + 1 == shown && lines.len() > shown;
        let text = if last_of_many {
            format!("and {} more; see the tables", lines.len() - shown + 1)
        } else {
            line.text.clone()
        };
        if let (Some(key), false) = (&line.key, last_of_many) {
            sheet.push(Role::Ornament, swatch(key, x, y));
            let letters = words(x + 46.0, y + 8.5, &key.letters, Anchor::Left, SIZE, true, Ink::Strong);
            sheet.push(Role::Ornament, vec![letters]);
        }
        let text = type_metrics::shortened(&text, across - 70.0, SIZE, false);
        sheet.push(
            Role::Sentence,
            vec![words(x + 66.0, y + 8.5, &text, Anchor::Left, SIZE, false, Ink::Strong)],
        );
    }
    sheet.y += key_height(lines, sheet.across());
}

/// A bit of the crop's ground with its hatch, and a bit of its rows.
fn swatch(key: &CropKey, x: f64, y: f64) -> Vec<Mark> {
    let ground = corners(x, y + 0.5, 14.0, 10.0);
    let line = key.line();
    vec![
        Mark::Fill {
            rings: vec![ground.clone()],
            ink: key.tint(),
        },
        Mark::Hatch {
            rings: vec![ground],
            hatch: crate::sheets::mark::Hatch {
                gap: key.hatch.gap * 0.6,
                ..key.hatch
            },
            pen: Pen {
                width: 0.5,
                ink: line,
                dash: crate::sheets::mark::Dash::Solid,
            },
        },
        frame_box(x, y + 0.5, 14.0, 10.0, 0.4, Ink::Soft),
        Mark::Strokes {
            strokes: vec![[Point::metres(x + 18.0, y + 5.5), Point::metres(x + 42.0, y + 5.5)]],
            pen: Pen {
                width: 1.1,
                ink: line,
                dash: key.dash,
            },
        },
    ]
}
