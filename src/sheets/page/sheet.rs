//! A sheet in the making: the space on it, and setting words, rules and boxes.

use super::frame::{Frame, Part, Role};
use super::paper::{Paper, Turned};
use crate::geometry::Point;
use crate::sheets::mark::{Anchor, Dash, Face, Ink, Mark, Pen, Words};
use crate::sheets::type_metrics;

/// Height of the head of every sheet with its rule, in points.
pub(super) const HEAD: f64 = 36.0;

/// A sheet in the making. `y` runs down from the top of the paper.
pub(super) struct Sheet {
    pub(super) width: f64,
    pub(super) height: f64,
    pub(super) left: f64,
    pub(super) right: f64,
    /// Where the next thing goes.
    pub(super) y: f64,
    /// Where things have to end.
    pub(super) bottom: f64,
    pub(super) parts: Vec<Part>,
}

impl Sheet {
    /// An empty sheet with the head left free and `foot` points kept for its foot.
    pub(super) fn new(paper: Paper, turned: Turned, foot: f64) -> Self {
        let (width, height) = paper.size(turned);
        let margin = paper.margin();
        Self {
            width,
            height,
            left: margin,
            right: width - margin,
            y: margin + HEAD,
            bottom: height - margin - foot,
            parts: Vec::new(),
        }
    }

    /// Points from the left margin to the right one.
    pub(super) fn across(&self) -> f64 {
        self.right - self.left
    }

    /// Points left for further things.
    pub(super) fn room(&self) -> f64 {
        self.bottom - self.y
    }

    /// Whether anything is set on it yet.
    pub(super) fn is_begun(&self) -> bool {
        !self.parts.is_empty()
    }

    pub(super) fn push(&mut self, role: Role, marks: Vec<Mark>) {
        self.parts.push(Part { role, marks });
    }

    /// The head of the sheet: title and place at the left, number and date at the right, a rule below.
    pub(super) fn head(&mut self, title: &str, place: &str, number: &str, is_first: bool) {
        let top = self.left; // All four margins are alike.
        let base = top + 20.0;
        let number_width = type_metrics::width(number, 8.5, false);
        let most = self.across() - number_width - 16.0;
        // The place and season keep a third of the line; a long title is set smaller, and cut at last.
        let place_width = (type_metrics::width(place, 10.0, false) + 10.0).min(most / 3.0);
        let fits = |size: &f32| type_metrics::width(title, *size, true) <= most - place_width;
        let size = [18.0, 15.0, 12.5].into_iter().find(fits).unwrap_or(12.5);
        let title = type_metrics::shortened(title, most - place_width, size, true);
        let title_width = type_metrics::width(&title, size, true);
        let place = type_metrics::shortened(place, most - title_width - 10.0, 10.0, false);
        let mut head = vec![Part {
            role: if is_first { Role::Title } else { Role::Ornament },
            marks: vec![words(self.left, base, &title, Anchor::Left, size, true, Ink::Strong)],
        }];
        if !place.is_empty() {
            head.push(Part {
                role: if is_first { Role::Sentence } else { Role::Ornament },
                marks: vec![words(
                    self.left + title_width + 10.0,
                    base,
                    &place,
                    Anchor::Left,
                    10.0,
                    false,
                    Ink::Soft,
                )],
            });
        }
        head.push(Part {
            role: if is_first { Role::Sentence } else { Role::Ornament },
            marks: vec![words(self.right, base, number, Anchor::Right, 8.5, false, Ink::Soft)],
        });
        self.parts.splice(0..0, head);
        // Over everything: what covers the edges of a drawing reaches up to it.
        let under = rule(self.left, self.right, top + 27.0, 1.2, Ink::Strong);
        self.push(Role::Ornament, vec![under]);
    }

    /// Sets a sentence over as many lines as it takes, and moves down past it.
    pub(super) fn sentence(&mut self, role: Role, text: &str, size: f32, ink: Ink) {
        let lines = type_metrics::break_lines(text, self.across(), size, false);
        let mut marks = Vec::new();
        for line in lines {
            self.y += f64::from(size) * 1.3;
            marks.push(words(
                self.left,
                self.y - f64::from(size) * 0.3,
                &line,
                Anchor::Left,
                size,
                false,
                ink,
            ));
        }
        self.push(role, marks);
    }

    /// A box to write notes in, over what is left of the sheet up to `most` points; nothing where too little is.
    pub(super) fn notes(&mut self, most: f64) {
        let height = (self.room() - 6.0).min(most);
        if height < 40.0 {
            return;
        }
        let top = self.bottom - height;
        let marks = vec![
            frame_box(self.left, top, self.across(), height, 0.6, Ink::Soft),
            words(
                self.left + 5.0,
                top + 11.0,
                "notes",
                Anchor::Left,
                8.0,
                false,
                Ink::Soft,
            ),
        ];
        self.push(Role::Ornament, marks);
    }

    /// The finished sheet.
    pub(super) fn finish(self, title: &str) -> Frame {
        Frame {
            width: self.width,
            height: self.height,
            title: type_metrics::printable(title),
            parts: self.parts.into_iter().filter(|part| !part.marks.is_empty()).collect(),
        }
    }
}

/// Words at a place, as a mark.
pub(super) fn words(x: f64, y: f64, text: &str, anchor: Anchor, size: f32, bold: bool, ink: Ink) -> Mark {
    Mark::Words(line(x, y, text, anchor, size, bold, ink))
}

/// Words at a place, upright and without a plate.
pub(super) fn line(x: f64, y: f64, text: &str, anchor: Anchor, size: f32, bold: bool, ink: Ink) -> Words {
    Words {
        at: Point::metres(x, y),
        text: type_metrics::printable(text),
        anchor,
        face: Face { size, bold, ink },
        turn: 0.0,
        plate: None,
    }
}

/// A level line.
pub(super) fn rule(from: f64, to: f64, y: f64, width: f32, ink: Ink) -> Mark {
    Mark::Strokes {
        strokes: vec![[Point::metres(from, y), Point::metres(to, y)]],
        pen: Pen {
            width,
            ink,
            dash: Dash::Solid,
        },
    }
}

/// An empty box.
pub(super) fn frame_box(x: f64, y: f64, width: f64, height: f64, pen: f32, ink: Ink) -> Mark {
    Mark::Line {
        points: corners(x, y, width, height),
        closed: true,
        pen: Pen {
            width: pen,
            ink,
            dash: Dash::Solid,
        },
    }
}

/// The corners of an upright box.
pub(super) fn corners(x: f64, y: f64, width: f64, height: f64) -> Vec<Point> {
    vec![
        Point::metres(x, y),
        Point::metres(x + width, y),
        Point::metres(x + width, y + height),
        Point::metres(x, y + height),
    ]
}
