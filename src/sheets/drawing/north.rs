//! The north arrow, in points of the sheet.

use crate::geometry::Point;
use crate::sheets::mark::{Anchor, Dash, Face, Ink, Mark, Pen, Words};

/// Height of the arrow with its letter, in points.
pub const NORTH_ARROW_HEIGHT: f64 = 46.0;
/// Width of the arrow, in points.
pub const NORTH_ARROW_WIDTH: f64 = 14.0;

/// The north arrow with its tip at a place of the sheet (points, y down). North is always up the sheet.
pub fn north_arrow(tip: Point) -> Vec<Mark> {
    let at = |right: f64, down: f64| Point::metres(tip.x + right, tip.y + down);
    vec![
        Mark::Strokes {
            strokes: vec![[at(0.0, 9.0), at(0.0, 33.0)]],
            pen: Pen {
                width: 1.1,
                ink: Ink::Strong,
                dash: Dash::Solid,
            },
        },
        Mark::Fill {
            rings: vec![vec![at(0.0, 0.0), at(5.5, 13.0), at(0.0, 10.0), at(-5.5, 13.0)]],
            ink: Ink::Strong,
        },
        Mark::Words(Words {
            at: at(0.0, 45.0),
            text: "N".to_owned(),
            anchor: Anchor::Centre,
            face: Face {
                size: 11.0,
                bold: true,
                ink: Ink::Strong,
            },
            turn: 0.0,
            plate: None,
        }),
    ]
}
