//! Which sides show a length that can be typed over, and where.
//!
//! The drawing sets the measures of plots itself; where it has set one, that is what is clicked. A side of something
//! chosen whose measure the drawing left out is given a small one of its own.

use egui::{Pos2, Rect, vec2};

use super::outline::{Outline, outward, sides};
use super::paint::{Painted, Placed};
use super::viewport::Viewport;
use crate::app::desk::Desk;
use crate::app::step::Step;
use crate::geometry::Point;
use crate::layout::{BedGround, Item, Layout};
use crate::quantity::{Bearing, Length};

/// Outlines of more sides than this are walked ones, whose sides nobody types.
const MOST_SIDES: usize = 40;
/// More measures than this on one sheet would crowd out everything else.
const MOST_MEASURES: usize = 160;
/// From a side to its measure, in points, where the drawing has none.
const AWAY: f32 = 13.0;
/// The drawing sets its measures no farther than this from their side, in points.
const FARTHEST: f32 = 46.0;

/// One side and the words of its length.
#[derive(Clone, Debug)]
pub(super) struct Measure {
    /// Whose side.
    pub(super) outline: Outline,
    /// Which side, by the corner at its start.
    pub(super) side: usize,
    /// The length as it is typed and read.
    pub(super) shown: String,
    /// "North side of Lower plot, 62 ft".
    pub(super) name: String,
    /// Where the words are.
    pub(super) rect: Rect,
    /// Whether the drawing has set them.
    pub(super) drawn: bool,
}

/// What is looked at.
#[derive(Clone, Copy)]
pub(super) struct Sight<'a> {
    /// The layout under work.
    pub(super) desk: &'a Desk,
    /// What of it is seen.
    pub(super) viewport: &'a Viewport,
    /// How it is drawn.
    pub(super) painted: &'a Painted,
}

/// Every side whose length can be typed now, with where its words are.
pub(super) fn find(sight: &Sight) -> Vec<Measure> {
    let Sight {
        desk,
        viewport,
        painted,
    } = *sight;
    let layout = desk.layout();
    if desk.is_previewing() {
        return Vec::new();
    }
    let chosen = desk.chosen.and_then(|chosen| Outline::of(chosen, layout));
    let mut measures = Vec::new();
    let mut taken: Vec<Rect> = Vec::new();
    for outline in outlines(desk) {
        let Some(ring) = outline.ring(layout).filter(|ring| ring.len() <= MOST_SIDES) else {
            continue;
        };
        for (side, from, to) in sides(ring) {
            if measures.len() >= MOST_MEASURES {
                return measures;
            }
            let length = from.distance(to);
            if length <= Length::TOLERANCE {
                continue;
            }
            let (a, b) = (viewport.to_screen(from), viewport.to_screen(to));
            if !Rect::from_two_pos(a, b).expand(FARTHEST).intersects(viewport.screen()) {
                continue;
            }
            let drawn = matches!(outline, Outline::Plot(_))
                .then(|| set_already(a, b, length, layout, &painted.words, &taken))
                .flatten();
            let shown = length.show(layout.units);
            let own = || {
                (chosen == Some(outline))
                    .then(|| beside(ring, side, [a, b], &shown, sight, &taken))
                    .flatten()
            };
            let Some((rect, drawn)) = drawn
                .map(|rect| (rect, true))
                .or_else(|| own().map(|rect| (rect, false)))
            else {
                continue;
            };
            taken.push(rect);
            let name = format!("{} side of {}, {shown}", facing(ring, side), outline.name(layout));
            measures.push(Measure {
                outline,
                side,
                shown,
                name,
                rect,
                drawn,
            });
        }
    }
    measures
}

/// The outlines whose sides show their lengths: every plot while ground is drawn, and what is chosen.
fn outlines(desk: &Desk) -> Vec<Outline> {
    let layout = desk.layout();
    let mut outlines: Vec<Outline> = Vec::new();
    if desk.step == Step::Ground {
        outlines.extend(layout.plots.iter().map(|plot| Outline::Plot(plot.id)));
    }
    let chosen = desk.chosen.and_then(|chosen| Outline::of(chosen, layout));
    // The rows of a bed that fills its plot end at the plot's sides.
    let of_bed = desk
        .chosen
        .and_then(Item::bed)
        .and_then(|bed| layout.bed(bed))
        .map(|bed| match bed.ground {
            BedGround::WholePlot => Outline::Plot(bed.plot),
            BedGround::Corners(_) => Outline::Bed(bed.id),
        });
    for outline in chosen.into_iter().chain(of_bed) {
        if !outlines.contains(&outline) {
            outlines.push(outline);
        }
    }
    outlines
}

/// Where the drawing has set the measure of a side: words that read as its length, close beside it.
fn set_already(a: Pos2, b: Pos2, length: Length, layout: &Layout, words: &[Placed], taken: &[Rect]) -> Option<Rect> {
    /// The drawing rounds to a tenth of a foot or a centimetre.
    const ROUNDED: f64 = 0.02;
    words
        .iter()
        .filter(|placed| placed.text.starts_with(|sign: char| sign.is_ascii_digit()))
        .filter_map(|placed| {
            let off = off_segment(a, b, placed.rect.center());
            (off <= FARTHEST && !taken.contains(&placed.rect)).then_some((off, placed))
        })
        .filter(|(_, placed)| {
            Length::parse(&placed.text, layout.units).is_ok_and(|read| (read - length).abs().to_metres() <= ROUNDED)
        })
        .min_by(|a, b| a.0.total_cmp(&b.0))
        .map(|(_, placed)| placed.rect)
}

/// How far a place is from the middle third of a side: measures stand about its middle.
fn off_segment(a: Pos2, b: Pos2, at: Pos2) -> f32 {
    let along = b - a;
    let length = along.length_sq();
    if length <= 0.0 {
        return f32::INFINITY;
    }
    let t = ((at - a).dot(along) / length).clamp(0.15, 0.85);
    (a + along * t).distance(at)
}

/// A place for a measure close to a side: inside the outline if it can be, by the middle of the side if it can be,
/// on nothing that is there already if it can be. `None` where the side is too short on the screen or out of sight.
fn beside(ring: &[Point], side: usize, ends: [Pos2; 2], shown: &str, sight: &Sight, taken: &[Rect]) -> Option<Rect> {
    let [a, b] = ends;
    let size = vec2(7.0 * shown.chars().count() as f32, 15.0);
    if a.distance(b) < size.x.min(46.0) {
        return None;
    }
    let (east, north) = outward(ring, side)?;
    let out = vec2(east as f32, -north as f32);
    let away = AWAY + size.x * 0.5 * out.x.abs();
    let free = |rect: Rect| {
        let plate = rect.expand2(vec2(6.0, 3.0));
        !sight.painted.plates.iter().any(|other| other.intersects(plate))
            && !sight.painted.words.iter().any(|words| words.rect.intersects(plate))
    };
    let places = [-away, away].into_iter().flat_map(|off| {
        // Handles lie on the middle of the side, clear of a measure beside it.
        [0.5, 0.35, 0.65, 0.22, 0.78].map(|t| Rect::from_center_size(a + (b - a) * t + out * off, size))
    });
    let seen: Vec<Rect> = places
        .filter(|rect| sight.viewport.screen().contains_rect(*rect))
        .filter(|rect| !taken.iter().any(|other| other.intersects(*rect)))
        .collect();
    seen.iter()
        .copied()
        .find(|rect| free(*rect))
        .or_else(|| seen.first().copied())
}

/// Which way a side faces, in words: "North", "South-east".
fn facing(ring: &[Point], side: usize) -> &'static str {
    const WORDS: [&str; 8] = [
        "North",
        "North-east",
        "East",
        "South-east",
        "South",
        "South-west",
        "West",
        "North-west",
    ];
    let Some((east, north)) = outward(ring, side) else {
        return "One";
    };
    let degrees = Bearing::degrees(east.atan2(north).to_degrees()).to_degrees();
    let eighth = (degrees / 45.0).round() as usize % WORDS.len();
    WORDS.get(eighth).copied().unwrap_or("One")
}
