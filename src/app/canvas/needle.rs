//! The needle on the bed in hand, by which its rows are turned.

use egui::{Pos2, Rect, Role, Sense, Shape, Stroke, Ui, Vec2, WidgetInfo, vec2};

use super::pointer_words::theme_of;
use super::viewport::Viewport;
use super::{fill, turning};
use crate::app::desk::Desk;
use crate::app::theme;
use crate::geometry::Point;
use crate::layout::{BedId, Item};
use crate::quantity::Bearing;

/// From the needle's middle to its ring, in points.
pub(super) const RING: f32 = 27.0;
/// A bed smaller than this on the screen has no needle: it would hide the bed.
const SMALLEST_BED: f32 = 64.0;

/// The needle of a bed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Needle {
    /// The bed.
    pub(super) bed: BedId,
    /// The ground under its middle.
    pub(super) middle: Point,
    /// Where it points.
    pub(super) bearing: Bearing,
}

impl Needle {
    /// The needle of the bed that is chosen, or that a chosen row belongs to, where it hides as little as can be.
    /// `plates` are the labels on the sheet.
    pub(super) fn of(desk: &Desk, viewport: &Viewport, plates: &[Rect]) -> Option<Self> {
        let (Item::Bed(id) | Item::Row(id, _) | Item::BedCorner(id, _)) = desk.chosen? else {
            return None;
        };
        let bed = desk.layout().bed(id)?;
        let plan = desk.plan().bed(id)?;
        let bounds = plan.ground.bounds()?;
        let shown = Rect::from_two_pos(viewport.to_screen(bounds.min), viewport.to_screen(bounds.max));
        if shown.width().min(shown.height()) < SMALLEST_BED {
            return None;
        }
        let middle = place(shown, plan.ground.label_point()?, viewport, plates, |at| {
            plan.ground.contains(at)
        })?;
        Some(Self {
            bed: id,
            middle,
            bearing: bed.bearing,
        })
    }

    /// Whether the pointer is on it.
    pub(super) fn is_at(&self, viewport: &Viewport, pointer: Pos2) -> bool {
        viewport.to_screen(self.middle).distance(pointer) <= RING + 3.0
    }

    /// Gives it a name for those who cannot see it.
    pub(super) fn name(&self, ui: &Ui, desk: &Desk, viewport: &Viewport) {
        let of = desk.layout().bed(self.bed).map_or("", |bed| &bed.name);
        let place = Rect::from_center_size(viewport.to_screen(self.middle), Vec2::splat(2.0 * RING));
        let id = ui.scope_id().with(("needle", self.bed));
        let response = ui.interact(place, id, Sense::hover());
        let name = format!("Needle of {of}, rows run {}", turning::words(self.bearing));
        response.widget_info(|| WidgetInfo::labeled(Role::Label, true, name.clone()));
    }

    /// Paints it; `lit` when the pointer is on it or it is held.
    pub(super) fn paint(&self, ui: &Ui, viewport: &Viewport, lit: bool) {
        let colours = theme::colours(theme_of(ui));
        let middle = viewport.to_screen(self.middle);
        let painter = ui.painter_at(viewport.screen());
        let paper = colours.paper.gamma_multiply(if lit { 0.95 } else { 0.86 });
        painter.circle(
            middle,
            RING,
            paper,
            Stroke::new(if lit { 2.0 } else { 1.4 }, colours.accent),
        );
        let (east, north) = self.bearing.unit();
        let along = vec2(east as f32, -north as f32);
        let side = vec2(-along.y, along.x);
        let tip = middle + along * (RING - 4.0);
        painter.line_segment(
            [middle - along * (RING - 6.0), tip - along * 8.0],
            Stroke::new(2.0, colours.accent),
        );
        let mut head = egui::Mesh::default();
        let ring: Vec<Pos2> = [
            tip,
            tip - along * 12.0 + side * 5.5,
            tip - along * 9.0,
            tip - along * 12.0 - side * 5.5,
        ]
        .to_vec();
        fill::fill(&mut head, std::slice::from_ref(&ring), colours.accent);
        painter.add(Shape::mesh(head));
        painter.add(Shape::closed_line(ring, Stroke::new(0.6, colours.accent)));
        painter.circle_filled(middle, 3.0, colours.accent);
    }
}

/// A place in the bed for the needle: the spot deepest inside if it is in sight and no label is there, else the
/// nearest spot that will do.
fn place(
    shown: Rect,
    deepest: Point,
    viewport: &Viewport,
    plates: &[Rect],
    is_ground: impl Fn(Point) -> bool,
) -> Option<Point> {
    /// Places tried across and up.
    const TRIED: usize = 7;
    let seen = shown.intersect(viewport.screen()).shrink(RING + 6.0);
    if !seen.is_positive() {
        return None;
    }
    let is_free = |at: Pos2| {
        let ring = Rect::from_center_size(at, Vec2::splat(2.0 * RING + 8.0));
        seen.contains(at) && !plates.iter().any(|plate| plate.intersects(ring))
    };
    let wanted = viewport.to_screen(deepest);
    if is_free(wanted) {
        return Some(deepest);
    }
    let near = if seen.contains(wanted) { wanted } else { seen.center() };
    let mut tried: Vec<Pos2> = (0..TRIED * TRIED)
        .map(|k| {
            let part = |k: usize| k as f32 / (TRIED - 1) as f32;
            seen.lerp_inside(vec2(part(k % TRIED), part(k / TRIED)))
        })
        .collect();
    tried.sort_by(|a, b| a.distance(near).total_cmp(&b.distance(near)));
    tried
        .into_iter()
        .find(|at| is_free(*at) && is_ground(viewport.to_ground(*at)))
        .map(|at| viewport.to_ground(at))
        .or_else(|| seen.contains(wanted).then_some(deepest))
}
