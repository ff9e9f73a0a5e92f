//! Moving what is chosen by the arrow keys; with nothing to move they look around.

use egui::{Key, Modifiers, Response, Ui, Vec2, vec2};

use super::outline;
use super::viewport::Viewport;
use crate::app::command::Command;
use crate::app::desk::Desk;
use crate::quantity::{Length, Units};

/// One press of an arrow key moves the sheet by so many points.
const LOOK: f32 = 60.0;

/// Reads the arrow keys, unless something other than the sheet and what lies on it has the keyboard.
pub(super) fn read(ui: &Ui, sheet: &Response, desk: &Desk, viewport: &mut Viewport, out: &mut Vec<Command>) {
    let elsewhere = ui.memory(|memory| memory.focused()).is_some_and(|id| {
        // The boxes of things on the sheet move what is chosen too.
        id != sheet.id && !desk_things(ui, desk).any(|thing| thing == id)
    });
    // An open list takes the arrows for itself.
    if elsewhere || desk.is_previewing() || egui::Popup::is_any_open(ui.ctx()) {
        return;
    }
    let arrows = [
        (Key::ArrowUp, 0.0, 1.0),
        (Key::ArrowDown, 0.0, -1.0),
        (Key::ArrowRight, 1.0, 0.0),
        (Key::ArrowLeft, -1.0, 0.0),
    ];
    for (key, east, north) in arrows {
        for modifiers in [Modifiers::SHIFT, Modifiers::NONE] {
            for _ in 0..ui.input_mut(|input| input.count_and_consume_key(modifiers, key)) {
                let step = step(desk.layout().units, modifiers.shift);
                let edit = desk
                    .chosen
                    .and_then(|chosen| outline::shift(chosen, desk.settled(), step * east, step * north));
                match edit {
                    Some(edit) => out.push(Command::Edit(edit)),
                    None => look(viewport, vec2(east as f32, north as f32)),
                }
            }
        }
    }
}

/// The step of one press: a foot or a quarter of a metre, or finer an inch or a centimetre.
fn step(units: Units, fine: bool) -> Length {
    match (units, fine) {
        (Units::Customary, false) => Length::feet(1.0),
        (Units::Customary, true) => Length::inches(1.0),
        (Units::Metric, false) => Length::metres(0.25),
        (Units::Metric, true) => Length::metres(0.01),
    }
}

fn look(viewport: &mut Viewport, towards: Vec2) {
    viewport.pan(vec2(-towards.x, towards.y) * LOOK);
}

/// The boxes that the Tab key comes to on the sheet.
fn desk_things<'a>(ui: &'a Ui, desk: &'a Desk) -> impl Iterator<Item = egui::Id> + 'a {
    let chosen = desk.chosen.into_iter().chain(desk.pointed);
    chosen.map(move |item| ui.scope_id().with(("thing", item)))
}
