//! The hand with a drawing tool: reading it, and showing what is drawn so far.

use egui::{Event, Key, Modifiers, Pos2, Rect, Response, Shape as Painting, Stroke, StrokeKind, Ui, Vec2};

use super::dragging::radius;
use super::drawing::{Drawing, Outcome};
use super::pointer_words::{PointerWords, theme_of};
use super::tool::Tool;
use super::viewport::Viewport;
use crate::app::command::Command;
use crate::app::desk::Desk;
use crate::app::theme;
use crate::geometry::polygon::rectangle;
use crate::layout::Layout;

/// Reads the pointer and the keys, and pushes the edit when something is finished. Gives what is said at the pointer.
pub(super) fn read(
    ui: &Ui,
    response: &Response,
    tool: &mut Tool,
    drawing: &mut Drawing,
    desk: &Desk,
    viewport: &Viewport,
    out: &mut Vec<Command>,
) -> PointerWords {
    let layout = desk.settled();
    let pointer = ui.input(|input| input.pointer.latest_pos());
    let free = ui.input(|input| input.modifiers.alt);
    let place = |at: Pos2| viewport.to_ground(at);
    let on_sheet = pointer.is_some_and(|at| viewport.screen().contains(at));
    if on_sheet && response.contains_pointer() {
        ui.set_cursor_icon(egui::CursorIcon::Crosshair);
    }
    if !ui.text_edit_focused()
        && keys(
            ui,
            tool,
            drawing,
            desk,
            viewport,
            pointer.filter(|_| on_sheet),
            free,
            out,
        )
    {
        return PointerWords::default();
    }
    let (pressed, released, origin) = ui.input(|input| {
        (
            input.pointer.primary_pressed(),
            input.pointer.primary_released(),
            input.pointer.press_origin(),
        )
    });
    if pressed
        && on_sheet
        && response.is_pointer_button_down_on()
        && let Some(at) = origin.or(pointer)
    {
        let outcome = drawing.pressed(*tool, layout, viewport, place(at), free);
        carry_out(outcome, tool, drawing, desk, out);
    }
    if released && let Some(at) = pointer {
        let outcome = drawing.released(*tool, layout, viewport, place(at), free);
        carry_out(outcome, tool, drawing, desk, out);
    }
    match pointer {
        Some(at) if on_sheet && *tool != Tool::Choose => drawing.words(*tool, layout, viewport, place(at), free),
        _ => PointerWords::default(),
    }
}

/// Reads the keys; gives whether drawing was stopped.
#[expect(clippy::too_many_arguments, reason = "the tool and all that it reads, in one place")]
fn keys(
    ui: &Ui,
    tool: &mut Tool,
    drawing: &mut Drawing,
    desk: &Desk,
    viewport: &Viewport,
    pointer: Option<Pos2>,
    free: bool,
    out: &mut Vec<Command>,
) -> bool {
    let pressed = |key: Key| ui.input_mut(|input| input.consume_key(Modifiers::NONE, key));
    if pressed(Key::Escape) {
        *drawing = Drawing::default();
        *tool = Tool::Choose;
        return true;
    }
    if !matches!(tool, Tool::Corners(_)) {
        return false;
    }
    if pressed(Key::Backspace) {
        drawing.take_back();
    }
    let typed: Vec<String> = ui.input(|input| {
        let texts = input.events.iter().filter_map(|event| match event {
            Event::Text(text) => Some(text.clone()),
            _ => None,
        });
        texts.collect()
    });
    for text in typed {
        drawing.type_text(&text);
    }
    if pressed(Key::Enter) {
        let to = pointer.map(|at| viewport.to_ground(at));
        let outcome = drawing.entered(*tool, desk.settled(), viewport, to, free);
        carry_out(outcome, tool, drawing, desk, out);
    }
    false
}

/// Adds what is finished and goes back to choosing, with the new thing chosen. What cannot be added is said, and
/// drawing goes on.
fn carry_out(outcome: Outcome, tool: &mut Tool, drawing: &mut Drawing, desk: &Desk, out: &mut Vec<Command>) {
    let Outcome::Finished(edit, item) = outcome else {
        return;
    };
    match desk.settled().apply(&edit) {
        Ok(_) => {
            out.push(Command::Edit(*edit));
            out.push(Command::Choose(Some(item)));
            *drawing = Drawing::default();
            *tool = Tool::Choose;
        }
        Err(error) => drawing.refused = Some(format!("{error} {}", error.hint())),
    }
}

/// Shows what is drawn so far, up to the pointer.
pub(super) fn paint(ui: &Ui, drawing: &Drawing, tool: Tool, layout: &Layout, viewport: &Viewport) {
    let Some(pointer) = ui
        .input(|input| input.pointer.latest_pos())
        .filter(|at| viewport.screen().contains(*at))
    else {
        return;
    };
    let colours = theme::colours(theme_of(ui));
    let line = Stroke::new(2.0, colours.accent);
    let faint = Stroke::new(1.2, colours.accent.gamma_multiply(0.55));
    let tint = colours.accent.gamma_multiply(0.12);
    let free = ui.input(|input| input.modifiers.alt);
    let to = viewport.to_ground(pointer);
    let next = drawing.next(tool, layout, viewport, to, free).at;
    let screen = |at| viewport.to_screen(at);
    let painter = ui.painter_at(viewport.screen());
    match (tool, drawing.corners.first()) {
        (Tool::Rectangle(_), Some(&first)) => {
            let ring = rectangle(first, next).map(screen);
            painter.rect(Rect::from_two_pos(ring[0], ring[2]), 0, tint, line, StrokeKind::Middle);
        }
        (Tool::Circle(_), Some(&middle)) => {
            let points = radius(middle, to, layout, viewport, free).0.to_metres() * viewport.points_per_metre();
            painter.circle(screen(middle), points as f32, tint, line);
            painter.circle_filled(screen(middle), 2.5, colours.accent);
        }
        (Tool::Corners(_), Some(&first)) => {
            let mut corners: Vec<Pos2> = drawing.corners.iter().map(|corner| screen(*corner)).collect();
            painter.add(Painting::line(corners.clone(), line));
            if let Some(&last) = corners.last() {
                painter.line_segment([last, screen(next)], line);
                if corners.len() > 1 {
                    painter.add(Painting::Vec(Painting::dashed_line(
                        &[screen(next), screen(first)],
                        faint,
                        5.0,
                        4.0,
                    )));
                }
            }
            corners.dedup();
            for corner in corners {
                let rect = Rect::from_center_size(corner, Vec2::splat(7.0));
                painter.rect(
                    rect,
                    2,
                    colours.paper,
                    Stroke::new(1.6, colours.accent),
                    StrokeKind::Inside,
                );
            }
        }
        _ => {}
    }
    if tool != Tool::Note {
        painter.circle(screen(next), 4.0, colours.paper, Stroke::new(1.6, colours.accent));
    }
}
