//! Lines of a card for an outline: each side with its length, each corner with its place.

use egui::{Id, RichText, Ui};

use super::length_line;
use crate::app::form;
use crate::app::unit_field::unit_field;
use crate::geometry::{Point, polygon};
use crate::layout::OutlineChange;
use crate::quantity::{Area, Length, Units};

/// Beyond this many corners the lists are cut, so that a walked boundary does not fill the card.
const MOST_LINES: usize = 40;

/// Sides, and corners folded away. Gives back what was typed.
pub(super) fn lines(ui: &mut Ui, field: Id, outline: &[Point], units: Units) -> Option<OutlineChange> {
    let mut changed = None;
    for side in 0..outline.len().min(MOST_LINES) {
        let Some(length) = polygon::side_length(outline, side) else {
            continue;
        };
        let label = side_words(outline, side);
        if let Some(length) = length_line::long(ui, field.with(("side", side)), &label, length, units) {
            changed = Some(OutlineChange::SetSideLength { side, length });
        }
    }
    cut(ui, outline.len());
    let head = RichText::new("Corners").size(13.0);
    egui::CollapsingHeader::new(head)
        .id_salt(field.with("corners"))
        .show_unindented(ui, |ui| {
            if let Some((corner, to)) = corners(ui, field, outline, units) {
                changed = Some(OutlineChange::MoveCorner { corner, to });
            }
        });
    changed
}

fn cut(ui: &mut Ui, corners: usize) {
    if corners > MOST_LINES {
        let more = corners - MOST_LINES;
        form::follows(ui, format!("and {more} more; choose them on the sheet"));
    }
}

/// "Side 1, north": by where the side lies, seen from the middle.
fn side_words(outline: &[Point], side: usize) -> String {
    let number = side + 1;
    let Some(bearing) = polygon::side_bearing(outline, side) else {
        return format!("Side {number}");
    };
    // Going round anticlockwise, outside is on the right hand.
    let anticlockwise = polygon::signed_area(outline) > Area::ZERO;
    let outward = if anticlockwise {
        bearing.right()
    } else {
        bearing.right().right().right()
    };
    let way = match outward.compass_word() {
        "N" => "north",
        "E" => "east",
        "S" => "south",
        "W" => "west",
        letters => letters,
    };
    format!("Side {number}, {way}")
}

/// Two fields a corner: how far east and how far north. Gives back the corner that was typed and where it goes.
fn corners(ui: &mut Ui, field: Id, corners: &[Point], units: Units) -> Option<(usize, Point)> {
    form::follows(ui, "how far east and how far north of the sheet's zero");
    let mut moved = None;
    for (index, corner) in corners.iter().enumerate().take(MOST_LINES) {
        let label = format!("Corner {}", index + 1);
        let mut wrong = None;
        form::line(ui, &label, |ui| {
            let width = (ui.available_width() - ui.spacing().item_spacing.x) / 2.0;
            for axis in ["east", "north"] {
                let value = if axis == "east" { corner.x } else { corner.y };
                let shown = Length::metres(value).show(units);
                let read = |text: &str| Length::parse(text, units).map_err(|error| error.to_string());
                let reply = unit_field(ui, field.with(("corner", index, axis)), &shown, width, read);
                reply.response.accessible_name(format!("{label}, {axis}"));
                if let Some(length) = reply.accepted {
                    let mut to = *corner;
                    let place = if axis == "east" { &mut to.x } else { &mut to.y };
                    *place = length.to_metres();
                    moved = Some((index, to));
                }
                wrong = wrong.take().or(reply.wrong);
            }
        });
        if let Some(sentence) = wrong {
            form::wrong(ui, &sentence);
        }
    }
    cut(ui, corners.len());
    moved
}
