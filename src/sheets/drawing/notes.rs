//! Notes: a dot at the place, and the words beside it where they hide least.

use super::layers::Layers;
use super::obstacles::sides;
use super::view::View;
use crate::geometry::{Bounds, Point};
use crate::layout::{Item, Layout, Note};
use crate::sheets::mark::{Anchor, Face, Ink, Mark, Words};
use crate::sheets::type_metrics;

/// Widest that a note is set before it breaks into lines, in points.
const WIDEST: f64 = 200.0;

/// Sets a note: a dot at its place and its words beside it, to the right where that ground is free and no outline
/// runs there, else to the left, above or below.
pub(super) fn set_note(note: &Note, layout: &Layout, view: &View, layers: &mut Layers) {
    if !view.visible.contains(note.at) {
        return;
    }
    let lit = view.is_lit(Item::Note(note.id));
    let ink = if lit { Ink::Accent } else { Ink::Strong };
    let size = view.letters(8.0);
    let leading = f64::from(size) * 1.25;
    let lines = type_metrics::break_lines(note.text.trim(), WIDEST, size, lit);
    let width = lines
        .iter()
        .map(|line| type_metrics::width(line, size, lit))
        .fold(0.0, f64::max);
    let height = leading * lines.len() as f64;
    layers.labels.push(Mark::Dots {
        at: vec![note.at],
        radius: 1.8,
        ink,
    });
    if width == 0.0 {
        return;
    }
    // How far the middle of the words stands from the dot, in points east and north.
    let (beside, above) = (width / 2.0 + 5.0, height / 2.0 + 3.0);
    let places = [
        (beside, 0.0),
        (-beside, 0.0),
        (beside, above),
        (beside, -above),
        (-beside, above),
        (-beside, -above),
        (0.0, above),
        (0.0, -above),
        (beside, 2.0 * above),
        (beside, -2.0 * above),
    ];
    let ground = |(east, north): (f64, f64)| {
        let middle = Point::metres(note.at.x + view.metres(east), note.at.y + view.metres(north));
        Bounds::about(middle, view.metres(width / 2.0 + 1.0), view.metres(height / 2.0))
    };
    let in_sight = |ground: &Bounds| view.visible.contains(ground.min) && view.visible.contains(ground.max);
    let outlines = || layout.plots.iter().flat_map(|plot| sides(&plot.outline));
    let on_an_outline = |ground: &Bounds| outlines().any(|(a, b)| ground.cut(a, b).is_some());
    let free = places
        .into_iter()
        .map(ground)
        .find(|ground| in_sight(ground) && layers.room.is_free(*ground) && !on_an_outline(ground));
    let ground = free.unwrap_or_else(|| ground((beside, 0.0)));
    layers.room.take(ground);
    layers
        .room
        .take(Bounds::about(note.at, view.metres(2.5), view.metres(2.5)));
    for (line, text) in lines.iter().enumerate() {
        // The middle of each line; the first stands on top.
        let down = (line as f64 + 0.5) * leading;
        layers.labels.push(Mark::Words(Words {
            at: Point::metres(
                ground.min.x + view.metres(1.0),
                ground.max.y - view.metres(down + type_metrics::capital_height(size) / 2.0),
            ),
            text: text.clone(),
            anchor: Anchor::Left,
            face: Face { size, bold: lit, ink },
            turn: 0.0,
            plate: Some(Ink::Paper),
        }));
    }
}
