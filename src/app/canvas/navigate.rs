//! Looking around: wheel, pinch, and the hand that moves the sheet.

use egui::{Event, Key, MouseWheelSource, MouseWheelUnit, PointerButton, Response, Ui, Vec2};

use super::viewport::Viewport;

/// How far the wheel has to turn to look from e times as near, in the points that the window counts it by: a notch
/// of a usual wheel, 40 points, is a fifth nearer.
const WHEEL: f32 = 220.0;

/// How the sheet is looked around on.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Navigation {
    /// Whether scrolling came from fingers on a surface last: it goes on for some frames after it was told.
    by_fingers: bool,
    /// Whether the hand moves the sheet with the main button, because the space bar is down.
    grabbing: bool,
}

impl Navigation {
    /// Whether the main button moves the sheet now, rather than what is on it.
    pub(super) const fn is_grabbing(&self) -> bool {
        self.grabbing
    }

    /// Moves the view as the hand asks. Nothing when the hand is elsewhere.
    pub(super) fn read(&mut self, ui: &Ui, response: &Response, viewport: &mut Viewport) {
        let space = ui.input(|input| input.key_down(Key::Space)) && !ui.text_edit_focused();
        if !ui.input(|input| input.pointer.primary_down()) {
            self.grabbing = space && response.contains_pointer();
        }
        let dragged = [PointerButton::Middle, PointerButton::Secondary]
            .into_iter()
            .any(|button| response.dragged_by(button))
            || (self.grabbing && response.dragged_by(PointerButton::Primary));
        if dragged {
            viewport.pan(response.drag_delta());
            ui.set_cursor_icon(egui::CursorIcon::Grabbing);
        } else if self.grabbing {
            ui.set_cursor_icon(egui::CursorIcon::Grab);
        }
        if !response.contains_pointer() {
            return;
        }
        let Some(pointer) = ui
            .input(|input| input.pointer.hover_pos())
            .filter(|at| viewport.screen().contains(*at))
        else {
            return;
        };
        let (fingers, zoom, scrolled, shift) = ui.input(|input| {
            let fingers = input.events.iter().rev().find_map(|event| match event {
                Event::MouseWheel { source, unit, .. } => Some(is_by_fingers(*source, *unit)),
                _ => None,
            });
            (
                fingers,
                input.zoom_delta(),
                input.smooth_scroll_delta(),
                input.modifiers.shift,
            )
        });
        self.by_fingers = fingers.unwrap_or(self.by_fingers);
        if (zoom - 1.0).abs() > f32::EPSILON {
            viewport.zoom_about(pointer, f64::from(zoom));
        }
        if scrolled == Vec2::ZERO {
            return;
        }
        if self.by_fingers || shift {
            viewport.pan(scrolled);
        } else {
            viewport.zoom_about(pointer, f64::from((scrolled.y / WHEEL).exp()));
        }
    }
}

/// Whether scrolling comes from fingers on a surface, which push the sheet about, and not from a wheel. Where the
/// system does not say, a wheel counts in lines and fingers in points.
const fn is_by_fingers(source: MouseWheelSource, unit: MouseWheelUnit) -> bool {
    match source {
        MouseWheelSource::Wheel => false,
        MouseWheelSource::Unknown => matches!(unit, MouseWheelUnit::Point),
        _ => true,
    }
}
