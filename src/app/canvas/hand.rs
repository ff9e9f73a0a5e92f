//! The hand with the choosing tool: pointing, clicking, dragging.

use egui::{CursorIcon, Key, PointerButton, Pos2, Response, Ui};

use super::drag_words::counts;
use super::dragging::{Drag, Held, is_drag};
use super::needle::Needle;
use super::outline::ends;
use super::pick::{Grip, pick};
use super::pointer_words::PointerWords;
use super::scene::Scene;
use super::viewport::Viewport;
use crate::app::command::Command;
use crate::app::desk::Desk;
use crate::geometry::polygon::nearest_on;
use crate::layout::{Item, OutlineChange};

/// What the hand is in the middle of.
#[derive(Clone, Copy, Debug, Default)]
pub(super) enum Hand {
    /// Nothing.
    #[default]
    Idle,
    /// It has pressed, and has not moved far enough to mean more than a click.
    Pressed {
        /// Where on the screen.
        origin: Pos2,
        /// What a drag would hold; the sheet itself when `None`.
        held: Option<Held>,
        /// What a click chooses.
        grip: Option<Grip>,
    },
    /// It moves something.
    Dragging(Drag),
    /// It moves the sheet.
    Panning,
}

/// What the choosing tool sees in one frame.
pub(super) struct Sight<'a> {
    /// The layout under work.
    pub(super) desk: &'a Desk,
    /// What of it is seen.
    pub(super) viewport: &'a Viewport,
    /// How it is drawn.
    pub(super) scene: &'a Scene,
    /// The needle of the bed in hand.
    pub(super) needle: Option<Needle>,
}

/// What came of a frame, for painting.
#[derive(Clone, Debug, Default)]
pub(super) struct Seen {
    /// The handle under the pointer or in the hand.
    pub(super) held: Option<Grip>,
    /// Whether the needle is under the pointer or in the hand.
    pub(super) needle: bool,
    /// Said at the pointer.
    pub(super) words: PointerWords,
}

impl Hand {
    /// Whether something is held and moved.
    pub(super) const fn is_dragging(&self) -> bool {
        matches!(self, Self::Dragging(_))
    }

    /// Reads the pointer and pushes what it asks for.
    pub(super) fn read(
        &mut self,
        ui: &Ui,
        response: &Response,
        sight: &Sight,
        viewport_pan: &mut egui::Vec2,
        out: &mut Vec<Command>,
    ) -> Seen {
        let Some(pointer) = ui.input(|input| input.pointer.latest_pos()) else {
            return Seen::default();
        };
        let free = ui.input(|input| input.modifiers.alt);
        let (pressed, released) = ui.input(|input| (input.pointer.primary_pressed(), input.pointer.primary_released()));
        if pressed && response.is_pointer_button_down_on() && sight.viewport.screen().contains(pointer) {
            *self = press(sight, ui.input(|input| input.pointer.press_origin()).unwrap_or(pointer));
        }
        if let Self::Pressed { origin, held, .. } = *self
            && is_drag(origin, pointer)
        {
            *self = match held {
                Some(held) => Self::Dragging(Drag {
                    held,
                    from: sight.viewport.to_ground(origin),
                    last: None,
                    shown: false,
                }),
                None => Self::Panning,
            };
            if let (
                Self::Dragging(Drag {
                    held: Held::Grip(Grip::Thing(item)),
                    ..
                }),
                desk,
            ) = (&*self, sight.desk)
                && desk.chosen != Some(*item)
            {
                out.push(Command::Choose(Some(*item)));
            }
            if matches!(self, Self::Panning) {
                *viewport_pan += pointer - origin;
            }
        } else if matches!(self, Self::Panning) {
            *viewport_pan += ui.input(|input| input.pointer.delta());
        }
        let mut seen = Seen::default();
        match self {
            Self::Dragging(drag) => {
                // Somebody else has taken the preview away: the hand holds nothing any more.
                if (drag.shown && !sight.desk.is_previewing()) || ui.input(|input| input.key_pressed(Key::Escape)) {
                    if drag.shown && sight.desk.is_previewing() {
                        out.push(Command::DropPreview);
                    }
                    *self = Self::Idle;
                    return seen;
                }
                seen = drag.read(sight, pointer, free, out);
                ui.set_cursor_icon(CursorIcon::Grabbing);
                if released {
                    drag.let_go(out);
                    *self = Self::Idle;
                }
            }
            Self::Pressed { grip, .. } if released => {
                let (grip, double) = (
                    *grip,
                    ui.input(|input| input.pointer.button_double_clicked(PointerButton::Primary)),
                );
                click(sight, grip, pointer, double, out);
                *self = Self::Idle;
            }
            Self::Panning if released => *self = Self::Idle,
            Self::Panning => ui.set_cursor_icon(CursorIcon::Grabbing),
            Self::Idle | Self::Pressed { .. } => {
                if response.hovered() && sight.viewport.screen().contains(pointer) {
                    seen = hover(ui, sight, pointer, out);
                }
            }
        }
        seen
    }
}

/// What a press takes hold of.
fn press(sight: &Sight, origin: Pos2) -> Hand {
    if let Some(needle) = sight.needle.filter(|needle| needle.is_at(sight.viewport, origin)) {
        let held = Some(Held::Needle(needle.bed, needle.middle));
        return Hand::Pressed {
            origin,
            held,
            grip: Some(Grip::Thing(Item::Bed(needle.bed))),
        };
    }
    let grip = pick(sight.desk, sight.viewport, origin, &sight.scene.notes);
    Hand::Pressed {
        origin,
        held: grip.and_then(|grip| hold(sight.desk, grip)),
        grip,
    }
}

/// What is held when the hand moves off from there. Whole plots and beds are moved only once they are chosen: a
/// hand that means to look elsewhere must not shift the ground.
fn hold(desk: &Desk, grip: Grip) -> Option<Held> {
    match grip {
        Grip::Thing(item) => match item {
            Item::Row(bed, _) => (desk.chosen.and_then(Item::bed) == Some(bed)).then_some(Held::Row(bed)),
            Item::Note(_) | Item::Obstacle(..) => Some(Held::Grip(grip)),
            _ if desk.chosen == Some(item) => movable(desk, item).then_some(Held::Grip(grip)),
            _ => None,
        },
        grip => Some(Held::Grip(grip)),
    }
}

fn movable(desk: &Desk, item: Item) -> bool {
    super::outline::shift(
        item,
        desk.layout(),
        crate::quantity::Length::ZERO,
        crate::quantity::Length::ZERO,
    )
    .is_some()
}

fn click(sight: &Sight, grip: Option<Grip>, pointer: Pos2, double: bool, out: &mut Vec<Command>) {
    let layout = sight.desk.settled();
    if let (true, Some(Grip::Side(outline, side) | Grip::NewCorner(outline, side))) = (double, grip)
        && let Some((from, to)) = outline.ring(layout).and_then(|ring| ends(ring, side))
    {
        let at = nearest_on(from, to, sight.viewport.to_ground(pointer));
        out.push(Command::Edit(outline.changed(OutlineChange::InsertCorner { side, at })));
        out.push(Command::Choose(Some(outline.corner_item(side + 1))));
        return;
    }
    let item = grip.map(Grip::item);
    if sight.desk.chosen != item {
        out.push(Command::Choose(item));
    }
}

fn hover(ui: &Ui, sight: &Sight, pointer: Pos2, out: &mut Vec<Command>) -> Seen {
    if let Some(needle) = sight.needle.filter(|needle| needle.is_at(sight.viewport, pointer)) {
        ui.set_cursor_icon(CursorIcon::Grab);
        let words = PointerWords::new(
            super::turning::words(needle.bearing),
            counts(sight.desk, Item::Bed(needle.bed)),
        )
        .with("drag to turn the rows, Alt for any angle");
        return Seen {
            needle: true,
            words,
            held: None,
        };
    }
    let grip = pick(sight.desk, sight.viewport, pointer, &sight.scene.notes);
    let item = match grip {
        Some(Grip::Thing(item)) => Some(item),
        _ => None,
    };
    if sight.desk.pointed != item {
        out.push(Command::PointAt(item));
    }
    ui.set_cursor_icon(cursor(sight, grip));
    Seen {
        held: grip,
        ..Seen::default()
    }
}

fn cursor(sight: &Sight, grip: Option<Grip>) -> CursorIcon {
    match grip {
        Some(Grip::Corner(..)) => CursorIcon::Move,
        Some(Grip::NewCorner(..)) => CursorIcon::Cell,
        Some(Grip::Edge(_)) => CursorIcon::Move,
        Some(Grip::Side(outline, side)) => outline
            .ring(sight.desk.layout())
            .and_then(|ring| super::outline::outward(ring, side))
            .map_or(CursorIcon::Move, |(x, y)| {
                if x.abs() > y.abs() {
                    CursorIcon::ResizeHorizontal
                } else {
                    CursorIcon::ResizeVertical
                }
            }),
        Some(Grip::Thing(Item::Row(bed, _))) if sight.desk.chosen.and_then(Item::bed) == Some(bed) => {
            let sideways = sight.desk.layout().bed(bed).map(|bed| bed.bearing.right().unit());
            sideways.map_or(CursorIcon::Default, |(x, y)| {
                if x.abs() > y.abs() {
                    CursorIcon::ResizeColumn
                } else {
                    CursorIcon::ResizeRow
                }
            })
        }
        Some(Grip::Thing(item)) if hold(sight.desk, Grip::Thing(item)).is_some() => CursorIcon::Grab,
        Some(Grip::Thing(_)) => CursorIcon::PointingHand,
        None => CursorIcon::Default,
    }
}

impl Drag {
    /// Shows what the hand does, if it has moved since the last frame.
    fn read(&mut self, sight: &Sight, pointer: Pos2, free: bool, out: &mut Vec<Command>) -> Seen {
        let held = match self.held {
            Held::Grip(grip) => Some(grip),
            Held::Needle(..) | Held::Row(_) => None,
        };
        let mut seen = Seen {
            held,
            needle: matches!(self.held, Held::Needle(..)),
            words: PointerWords::default(),
        };
        let Some(moved) = self.moved(sight.desk, sight.viewport, pointer, free) else {
            return seen;
        };
        // Tried first: an edit that cannot be made leaves what was shown last, and says why here.
        if let Err(error) = sight.desk.settled().apply(&moved.edit) {
            seen.words = PointerWords::wrong(error.to_string()).with(error.hint());
            return seen;
        }
        if self.last != Some((pointer, free)) {
            self.last = Some((pointer, free));
            self.shown = true;
            out.push(Command::Preview(moved.edit));
        }
        seen.words = moved.words.with(counts(sight.desk, self.item()));
        seen
    }

    /// The hand lets go: what is shown becomes a step.
    fn let_go(self, out: &mut Vec<Command>) {
        if self.shown {
            out.push(Command::KeepPreview);
            if let Some(item) = self.chooses() {
                out.push(Command::Choose(Some(item)));
            }
        }
    }
}
