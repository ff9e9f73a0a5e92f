//! Drawing something new on the sheet: a rectangle, corner by corner, a circle, a note.

use super::around::{around, directions};
use super::drag_words::radius_words;
use super::dragging::radius;
use super::drawn::{finish, first_radius, obstacle, of};
use super::guides::guides_for_next;
use super::outline::Outline;
use super::pointer_words::PointerWords;
use super::snap::{self, Snapped, snap};
use super::tool::{Drawn, Tool};
use super::viewport::Viewport;
use crate::geometry::{Point, Region, polygon};
use crate::layout::{Edit, Item, Layout, NoteId, Shape};
use crate::quantity::Length;

/// What has been drawn so far.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Drawing {
    /// Corners set so far; the first is the middle of a circle.
    pub(super) corners: Vec<Point>,
    /// The length typed for the side being drawn, as far as it is typed.
    pub(super) typed: String,
    /// Why the last try was refused; said until the pointer sets another corner.
    pub(super) refused: Option<String>,
}

/// What comes of a press, a key or a release.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Outcome {
    /// Drawing goes on.
    Goes,
    /// Something is finished: the edit that adds it, and what it will be called in the layout.
    Finished(Box<Edit>, Item),
}

/// Two places of the screen this near, in points, are one place to a hand that clicks twice.
const SAME_PLACE: f32 = 8.0;

impl Drawing {
    /// Where the next place goes with the pointer there; `free` switches snapping off.
    pub(super) fn next(&self, tool: Tool, layout: &Layout, viewport: &Viewport, to: Point, free: bool) -> Snapped {
        if free {
            return Snapped {
                at: to,
                why: String::new(),
            };
        }
        // Whole steps count from where drawing began, so that sides are whole; on empty ground from the origin.
        let origin = self.corners.last().copied().unwrap_or_default();
        let mut around = around(layout, None, origin, viewport);
        if let Tool::Corners(_) = tool {
            around.side_from = self.corners.last().copied();
            around.guides = guides_for_next(&self.corners, &directions_near(tool, layout));
        }
        snap(to, &around)
    }

    /// The pointer pressed there.
    pub(super) fn pressed(
        &mut self,
        tool: Tool,
        layout: &Layout,
        viewport: &Viewport,
        to: Point,
        free: bool,
    ) -> Outcome {
        self.refused = None;
        match tool {
            Tool::Choose | Tool::Split(_) => Outcome::Goes,
            Tool::Note => {
                let at = self.next(tool, layout, viewport, to, true).at;
                Outcome::Finished(
                    Box::new(Edit::AddNote {
                        at,
                        text: "Note".to_owned(),
                    }),
                    Item::Note(NoteId(layout.next_id())),
                )
            }
            Tool::Rectangle(_) if self.corners.is_empty() => {
                self.corners.push(self.next(tool, layout, viewport, to, free).at);
                Outcome::Goes
            }
            // The second of two clicks, for a hand that would rather not drag.
            Tool::Rectangle(_) => self.released(tool, layout, viewport, to, free),
            Tool::Circle(_) => {
                self.corners = vec![self.next(tool, layout, viewport, to, free).at];
                Outcome::Goes
            }
            Tool::Corners(drawn) => {
                if self.closes(viewport, to) {
                    return self.close(drawn, layout);
                }
                let at = match self.typed_corner(layout, viewport, tool, to, free) {
                    Some(Ok(at)) => at,
                    Some(Err(sentence)) => {
                        self.refused = Some(sentence);
                        return Outcome::Goes;
                    }
                    None => self.next(tool, layout, viewport, to, free).at,
                };
                self.set_corner(at);
                Outcome::Goes
            }
        }
    }

    /// The pointer let go there.
    pub(super) fn released(
        &mut self,
        tool: Tool,
        layout: &Layout,
        viewport: &Viewport,
        to: Point,
        free: bool,
    ) -> Outcome {
        let Some(&first) = self.corners.first() else {
            return Outcome::Goes;
        };
        match tool {
            Tool::Rectangle(drawn) => {
                let second = self.next(tool, layout, viewport, to, free).at;
                let ring = polygon::rectangle(first, second).to_vec();
                let (width, height) = (second.x - first.x, second.y - first.y);
                if width.abs().min(height.abs()) <= Length::TOLERANCE.to_metres() {
                    // A click alone sets the first corner; the next one sets the opposite corner.
                    return Outcome::Goes;
                }
                finish(ring, drawn, layout)
            }
            Tool::Circle(drawn) => {
                let dragged = viewport.to_screen(first).distance(viewport.to_screen(to)) > SAME_PLACE;
                let radius = if dragged {
                    radius(first, to, layout, viewport, free).0
                } else {
                    first_radius(layout.units)
                };
                self.corners.clear();
                match drawn {
                    Drawn::Obstacle(plot, kind) => {
                        obstacle(plot, kind, Shape::Circle { centre: first, radius }, layout)
                    }
                    Drawn::Plot | Drawn::Bed(_) => finish(polygon::circle_ring(first, radius), drawn, layout),
                }
            }
            Tool::Choose | Tool::Split(_) | Tool::Note | Tool::Corners(_) => Outcome::Goes,
        }
    }

    /// Enter: sets the side that is typed, else closes the outline.
    pub(super) fn entered(
        &mut self,
        tool: Tool,
        layout: &Layout,
        viewport: &Viewport,
        to: Option<Point>,
        free: bool,
    ) -> Outcome {
        let Tool::Corners(drawn) = tool else {
            return Outcome::Goes;
        };
        self.refused = None;
        let Some(to) = to else { return self.close(drawn, layout) };
        match self.typed_corner(layout, viewport, tool, to, free) {
            Some(Ok(at)) => {
                self.set_corner(at);
                Outcome::Goes
            }
            Some(Err(sentence)) => {
                self.refused = Some(sentence);
                Outcome::Goes
            }
            None => self.close(drawn, layout),
        }
    }

    /// Backspace: takes back the last sign typed, else the last corner.
    pub(super) fn take_back(&mut self) {
        self.refused = None;
        if self.typed.pop().is_none() {
            self.corners.pop();
        }
    }

    /// A sign typed while corners are set: part of the length of the side being drawn.
    pub(super) fn type_text(&mut self, text: &str) {
        /// No length is longer than this in words.
        const LONGEST: usize = 24;
        let begins = text.starts_with(|sign: char| sign.is_ascii_digit() || sign == '.' || sign == ',');
        if self.corners.is_empty() || (self.typed.is_empty() && !begins) {
            return;
        }
        self.refused = None;
        let room = LONGEST.saturating_sub(self.typed.chars().count());
        self.typed
            .extend(text.chars().filter(|sign| !sign.is_control()).take(room));
    }

    /// What is said at the pointer.
    pub(super) fn words(
        &self,
        tool: Tool,
        layout: &Layout,
        viewport: &Viewport,
        to: Point,
        free: bool,
    ) -> PointerWords {
        let units = layout.units;
        if let Some(sentence) = &self.refused {
            return PointerWords::wrong(sentence.clone()).with(self.typed.clone());
        }
        let next = self.next(tool, layout, viewport, to, free);
        match tool {
            Tool::Choose | Tool::Split(_) => PointerWords::default(),
            Tool::Note => PointerWords::new("", "Click where the note shall stand"),
            Tool::Rectangle(drawn) => match self.corners.first() {
                None => PointerWords::new("", format!("Drag from one corner {} to the opposite one", of(drawn)))
                    .with(next.why),
                Some(first) => {
                    let (across, up) = ((next.at.x - first.x).abs(), (next.at.y - first.y).abs());
                    let (across, up) = (Length::metres(across), Length::metres(up));
                    PointerWords::new(
                        format!("{} × {}", across.show(units), up.show(units)),
                        (across * up).show(units),
                    )
                    .with(next.why)
                }
            },
            Tool::Circle(_) => match self.corners.first() {
                None => PointerWords::new("", "Press at the middle and drag out to the edge").with(next.why),
                Some(&middle) => {
                    let (radius, why) = radius(middle, to, layout, viewport, free);
                    PointerWords::new(radius_words(radius, units), why)
                }
            },
            Tool::Corners(drawn) => self.corner_words(drawn, layout, viewport, to, next),
        }
    }

    fn corner_words(
        &self,
        drawn: Drawn,
        layout: &Layout,
        viewport: &Viewport,
        to: Point,
        next: Snapped,
    ) -> PointerWords {
        let Some(last) = self.corners.last() else {
            return PointerWords::new("", format!("Click the first corner {}", of(drawn))).with(next.why);
        };
        if !self.typed.is_empty() {
            return match Length::parse(&self.typed, layout.units) {
                Ok(_) => {
                    // With the pointer on the last corner there is no direction to give a reason for.
                    let why = if last.distance(next.at) > Length::TOLERANCE {
                        next.why
                    } else {
                        String::new()
                    };
                    PointerWords::new(format!("{} |", self.typed), "Enter or click sets the side").with(why)
                }
                Err(error) => PointerWords::new(format!("{} |", self.typed), error.to_string()),
            };
        }
        if self.closes(viewport, to) {
            return PointerWords::new("Close the outline", format!("{} corners", self.corners.len()));
        }
        let hint = if self.corners.len() < 3 {
            "type a number to set this side"
        } else {
            "Enter closes, or click the first corner"
        };
        PointerWords::new(last.distance(next.at).show(layout.units), next.why).with(hint)
    }

    /// The corner that the typed length leads to, in the direction of the pointer; `None` when nothing is typed.
    fn typed_corner(
        &self,
        layout: &Layout,
        viewport: &Viewport,
        tool: Tool,
        to: Point,
        free: bool,
    ) -> Option<Result<Point, String>> {
        if self.typed.trim().is_empty() {
            return None;
        }
        let last = *self.corners.last()?;
        let length = match Length::parse(&self.typed, layout.units) {
            Ok(length) if length > Length::TOLERANCE => length,
            Ok(_) => return Some(Err("A side must be longer than nothing".to_owned())),
            Err(error) => return Some(Err(error.to_string())),
        };
        let next = self.next(tool, layout, viewport, to, free).at;
        let along = snap::unit(last, next).or_else(|| snap::unit(last, to));
        let Some((east, north)) = along else {
            return Some(Err("Point in the direction that the side shall run".to_owned()));
        };
        let metres = length.to_metres();
        Some(Ok(Point::metres(last.x + east * metres, last.y + north * metres)))
    }

    fn set_corner(&mut self, at: Point) {
        self.typed.clear();
        if self
            .corners
            .last()
            .is_none_or(|last| last.distance(at) > Length::TOLERANCE)
        {
            self.corners.push(at);
        }
    }

    /// Whether a click there closes the outline: on the first corner, or twice on the last one.
    fn closes(&self, viewport: &Viewport, to: Point) -> bool {
        let near = |corner: &Point| viewport.to_screen(*corner).distance(viewport.to_screen(to)) <= SAME_PLACE;
        self.typed.is_empty()
            && self.corners.len() >= 3
            && (self.corners.first().is_some_and(near) || self.corners.last().is_some_and(near))
    }

    fn close(&mut self, drawn: Drawn, layout: &Layout) -> Outcome {
        if self.corners.len() < 3 {
            self.refused = Some("An outline needs three corners at least".to_owned());
            return Outcome::Goes;
        }
        match Region::new(&self.corners) {
            Ok(_) => finish(self.corners.clone(), drawn, layout),
            Err(error) => {
                self.refused = Some(error.to_string());
                Outcome::Goes
            }
        }
    }
}

/// The directions that a side may be parallel to: those of the plot that is drawn on.
fn directions_near(tool: Tool, layout: &Layout) -> Vec<(f64, f64)> {
    match tool {
        Tool::Corners(Drawn::Bed(plot) | Drawn::Obstacle(plot, _)) => {
            Outline::Plot(plot).ring(layout).map(directions).unwrap_or_default()
        }
        Tool::Corners(Drawn::Plot) => layout
            .plots
            .iter()
            .take(4)
            .flat_map(|plot| directions(&plot.outline))
            .collect(),
        _ => Vec::new(),
    }
}
