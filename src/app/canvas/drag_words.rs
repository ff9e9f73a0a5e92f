//! What is said of a thing while it is drawn or dragged.

use crate::app::desk::Desk;
use crate::geometry::Point;
use crate::geometry::polygon::side_length;
use crate::layout::{BedId, Item, PlotId};
use crate::quantity::{Length, Units, count};

/// What the rows of a thing come to as it is drawn now: "10 rows · 440 ft · 880 plants"; empty where there are none.
pub(super) fn counts(desk: &Desk, item: Item) -> String {
    let layout = desk.layout();
    let (mut rows, mut length, mut plants) = (0, Length::ZERO, 0_u64);
    let of_item = |bed: &BedId, plot: PlotId| match item {
        Item::Plot(id) | Item::Corner(id, _) | Item::Side(id, _) | Item::Obstacle(id, _) => id == plot,
        other => other.bed() == Some(*bed),
    };
    for bed in layout.beds.iter().filter(|bed| of_item(&bed.id, bed.plot)) {
        let Some(plan) = desk.plan().bed(bed.id) else { continue };
        rows += plan.totals.rows;
        length += plan.totals.row_length;
        plants = plants.saturating_add(plan.totals.plants);
    }
    if rows == 0 {
        return String::new();
    }
    let rows = format!("{} {}", count(rows), if rows == 1 { "row" } else { "rows" });
    let length = length.show_total(layout.units);
    match plants {
        0 => format!("{rows} · {length}"),
        1 => format!("{rows} · {length} · 1 plant"),
        plants => format!("{rows} · {length} · {} plants", count(plants)),
    }
}

/// The lengths of the two sides at a corner: "24 ft · 30 ft".
pub(super) fn sides_at(ring: &[Point], corner: usize, units: Units) -> String {
    let n = ring.len().max(1);
    let show = |side: usize| side_length(ring, side).map(|length| length.show(units));
    match (show((corner + n - 1) % n), show(corner)) {
        (Some(before), Some(after)) => format!("{before} · {after}"),
        _ => String::new(),
    }
}

/// How large a circle is, in words.
pub(super) fn radius_words(radius: Length, units: Units) -> String {
    format!(
        "{} across, {} from the middle",
        (radius * 2.0).show(units),
        radius.show(units)
    )
}

/// A shift in words: "3 ft east, 2 ft south".
pub(super) fn way(east: Length, north: Length, units: Units) -> String {
    let part = |length: Length, ahead: &str, back: &str| {
        (!length.approx_eq(Length::ZERO)).then(|| {
            let word = if length < Length::ZERO { back } else { ahead };
            format!("{} {word}", length.abs().show(units))
        })
    };
    let parts: Vec<String> = [part(east, "east", "west"), part(north, "north", "south")]
        .into_iter()
        .flatten()
        .collect();
    if parts.is_empty() {
        "where it was".to_owned()
    } else {
        parts.join(", ")
    }
}
