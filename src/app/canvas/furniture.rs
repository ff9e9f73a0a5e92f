//! What lies on every sheet: its title, the scale bar and the north arrow.

use egui::{Color32, CornerRadius, Rect, Shape, Stroke, StrokeKind, Ui, vec2};

use super::paint::{Painted, colour, paint_screen, palette};
use super::pointer_words::theme_of;
use super::viewport::Viewport;
use crate::app::desk::Desk;
use crate::app::theme;
use crate::geometry::{Point, polygon};
use crate::quantity::{Area, count};
use crate::sheets::drawing::{NORTH_ARROW_HEIGHT, NORTH_ARROW_WIDTH, ScaleBar, north_arrow};
use crate::sheets::{Anchor, Face, Ink, Mark, Words, type_metrics};

/// From the edge of the sheet to what lies on it, in points.
const MARGIN: f32 = 20.0;
/// From the edge of the window to the sheet, in points.
const TABLE: f32 = 20.0;

/// Where the sheet lies on the table.
pub(super) fn sheet_on(table: Rect) -> Rect {
    let around = if table.width().min(table.height()) > 240.0 {
        TABLE
    } else {
        4.0
    };
    table.shrink(around)
}

/// The part of the sheet that a drawing is fitted into: title and measures need room round it.
pub(super) fn room_on(sheet: Rect) -> Rect {
    let (aside, up, down) = (72.0, 84.0, 74.0);
    if sheet.width() < 400.0 || sheet.height() < 340.0 {
        return sheet.shrink(sheet.width().min(sheet.height()) * 0.12);
    }
    Rect::from_min_max(sheet.min + vec2(aside, up), sheet.max - vec2(aside, down))
}

/// Paints the table and the bare sheet on it.
pub(super) fn lay_sheet(ui: &Ui, table: Rect, sheet: Rect) {
    let colours = theme::colours(theme_of(ui));
    let painter = ui.painter_at(table);
    painter.rect_filled(table, CornerRadius::ZERO, colours.table);
    let shadow = egui::Shadow {
        offset: [2, 3],
        blur: 8,
        spread: 0,
        color: Color32::from_black_alpha(if ui.visuals().dark_mode { 110 } else { 34 }),
    };
    painter.add(shadow.as_shape(sheet, CornerRadius::same(3)));
    painter.rect(
        sheet,
        CornerRadius::same(3),
        colour(palette(ui), Ink::Paper),
        Stroke::new(1.0, colours.line),
        StrokeKind::Outside,
    );
}

/// Title, scale bar and north arrow.
pub(super) fn furniture(ui: &Ui, desk: &Desk, viewport: &Viewport) -> Painted {
    let sheet = viewport.screen();
    let mut painted = Painted::default();
    let mut add = |marks: &[Mark], pad: bool| {
        let part = paint_screen(ui, marks);
        if pad {
            let round = part
                .shapes
                .iter()
                .fold(Rect::NOTHING, |round, shape| round.union(shape.visual_bounding_rect()));
            if round.is_positive() {
                painted.shapes.push(plate(ui, round.expand2(vec2(7.0, 4.0))));
            }
        }
        painted.shapes.extend(part.shapes);
        painted.words.extend(part.words);
    };
    add(&title(desk, sheet), true);
    if sheet.height() > 220.0 && sheet.width() > 260.0 {
        add(&scale_bar(desk, viewport), true);
        let tip = Point::metres(
            f64::from(sheet.right() - MARGIN) - NORTH_ARROW_WIDTH,
            f64::from(sheet.top() + MARGIN),
        );
        if f64::from(sheet.height()) > NORTH_ARROW_HEIGHT * 3.0 {
            add(&north_arrow(tip), true);
        }
    }
    painted
}

/// A plate of paper, so that the drawing does not run through the words.
fn plate(ui: &Ui, rect: Rect) -> Shape {
    Shape::rect_filled(
        rect,
        CornerRadius::same(4),
        colour(palette(ui), Ink::Paper).gamma_multiply(0.9),
    )
}

/// The plot by name with its size, or the layout with all its ground.
fn title(desk: &Desk, sheet: Rect) -> Vec<Mark> {
    let layout = desk.layout();
    let ground: Area = layout
        .plots
        .iter()
        .map(|plot| polygon::signed_area(&plot.outline).abs())
        .sum();
    let (name, size) = match layout.plots.as_slice() {
        [] => return Vec::new(),
        [plot] => (plot.name.clone(), ground.show(layout.units)),
        plots => (
            layout.name.clone(),
            format!("{} plots · {}", count(plots.len() as u64), ground.show(layout.units)),
        ),
    };
    let line = |text: String, down: f32, size: f32, bold: bool, ink: Ink| {
        Mark::Words(Words {
            at: Point::metres(f64::from(sheet.left() + MARGIN), f64::from(sheet.top() + down)),
            text,
            anchor: Anchor::Left,
            face: Face { size, bold, ink },
            turn: 0.0,
            plate: None,
        })
    };
    vec![
        line(name, 30.0, 16.0, true, Ink::Strong),
        line(size, 49.0, 12.5, false, Ink::Soft),
    ]
}

/// Figures of the scale bar are so much larger on the screen than on paper.
const LARGER: f32 = 1.5;

fn scale_bar(desk: &Desk, viewport: &Viewport) -> Vec<Mark> {
    let sheet = viewport.screen();
    let Some(bar) = ScaleBar::fitting(viewport.points_per_metre(), desk.layout().units, 130.0) else {
        return Vec::new();
    };
    let left = Point::metres(
        f64::from(sheet.left() + MARGIN),
        f64::from(sheet.bottom() - MARGIN - 4.0),
    );
    let mut marks = bar.marks(left);
    // Long figures would run into each other: the ends say enough.
    let figures = marks.iter().filter_map(|mark| match mark {
        Mark::Words(Words { text, face, .. }) => Some(type_metrics::width(text, face.size * LARGER, false)),
        _ => None,
    });
    if figures.sum::<f64>() + 12.0 > bar.points + 20.0 {
        marks.retain(
            |mark| !matches!(mark, Mark::Words(Words { at, .. }) if (at.x - left.x - bar.points / 2.0).abs() < 1.0),
        );
    }
    // On paper it is read in the hand, on the screen from an arm's length.
    for mark in &mut marks {
        if let Mark::Words(Words { face, at, .. }) = mark {
            face.size *= LARGER;
            at.y -= 1.5;
        }
    }
    marks
}
