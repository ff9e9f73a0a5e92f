//! What part of the ground is on the screen, and how large.

use egui::{Pos2, Rect, Vec2, pos2};

use crate::geometry::Bounds;
use crate::geometry::Point;

/// The ground on the screen. Ground is metres in `f64`, y north; the screen is points in `f32`, y down. The middle
/// of the view is taken off in `f64`, so that ground far from the origin does not shake.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Viewport {
    centre: Point,
    points_per_metre: f64,
    screen: Rect,
}

/// A window of usual size shows some 100 km of ground: past any layout.
const FARTHEST: f64 = 0.01;
/// A centimetre is 200 points wide at the most: nearer, there is nothing left to see.
const NEAREST: f64 = 20_000.0;

impl Default for Viewport {
    fn default() -> Self {
        Self {
            centre: Point::default(),
            // An empty sheet is some 130 ft wide, a size that gardens come in.
            points_per_metre: 24.0,
            screen: Rect::from_min_size(Pos2::ZERO, Vec2::splat(100.0)),
        }
    }
}

impl Viewport {
    /// Where on the screen the ground is shown. The middle stays the middle when the window changes.
    pub(super) fn show_on(&mut self, screen: Rect) {
        self.screen = screen;
    }

    /// Where on the screen the ground is shown.
    pub(super) const fn screen(&self) -> Rect {
        self.screen
    }

    /// Points of screen for each metre of ground.
    pub(super) const fn points_per_metre(&self) -> f64 {
        self.points_per_metre
    }

    /// So many points of screen as metres of ground.
    pub(super) fn metres(&self, points: f32) -> f64 {
        f64::from(points) / self.points_per_metre
    }

    /// Where a place on the ground is on the screen.
    pub(super) fn to_screen(self, at: Point) -> Pos2 {
        let middle = self.screen.center();
        pos2(
            middle.x + ((at.x - self.centre.x) * self.points_per_metre) as f32,
            middle.y - ((at.y - self.centre.y) * self.points_per_metre) as f32,
        )
    }

    /// Which place on the ground is there on the screen.
    pub(super) fn to_ground(self, at: Pos2) -> Point {
        let from_middle = at - self.screen.center();
        Point::metres(
            self.centre.x + f64::from(from_middle.x) / self.points_per_metre,
            self.centre.y - f64::from(from_middle.y) / self.points_per_metre,
        )
    }

    /// The ground that can be seen.
    pub(super) fn visible(&self) -> Bounds {
        let (a, b) = (
            self.to_ground(self.screen.left_bottom()),
            self.to_ground(self.screen.right_top()),
        );
        Bounds { min: a, max: b }
    }

    /// Looks from nearer or farther, so that the ground under a place of the screen stays there.
    pub(super) fn zoom_about(&mut self, place: Pos2, factor: f64) {
        if !(factor.is_finite() && factor > 0.0) {
            return;
        }
        let held = self.to_ground(place);
        self.points_per_metre = (self.points_per_metre * factor).clamp(FARTHEST, NEAREST);
        let now = self.to_ground(place);
        self.centre = Point::metres(self.centre.x + held.x - now.x, self.centre.y + held.y - now.y);
    }

    /// Looks from nearer or farther, about the middle.
    pub(super) fn zoom(&mut self, factor: f64) {
        self.zoom_about(self.screen.center(), factor);
    }

    /// Moves the sheet under the window by so many points.
    pub(super) fn pan(&mut self, by: Vec2) {
        self.centre = Point::metres(
            self.centre.x - f64::from(by.x) / self.points_per_metre,
            self.centre.y + f64::from(by.y) / self.points_per_metre,
        );
    }

    /// Shows a box of ground in the middle of a part of the screen, as large as it goes.
    pub(super) fn fit(&mut self, ground: Bounds, room: Rect) {
        let (width, height) = (ground.width(), ground.height());
        let (across, up) = (f64::from(room.width().max(40.0)), f64::from(room.height().max(40.0)));
        let wanted = (across / width.max(1e-6)).min(up / height.max(1e-6));
        // Nothing of a single note or a stake would be seen from as near as it "fits".
        self.points_per_metre = wanted.clamp(FARTHEST, NEAREST.min(400.0));
        self.centre = ground.middle();
        self.pan(room.center() - self.screen.center());
    }

    /// Brings a box of ground into view with as little as possible: not at all when it is in view; moved when it
    /// would fit in; else fitted.
    pub(super) fn bring_into_view(&mut self, ground: Bounds, room: Rect) {
        let shown = Rect::from_two_pos(self.to_screen(ground.min), self.to_screen(ground.max));
        if room.contains_rect(shown) && shown.width().max(shown.height()) > 24.0 {
            return;
        }
        let fits = shown.width() <= room.width() && shown.height() <= room.height();
        if fits && shown.width().max(shown.height()) > 24.0 {
            self.centre = ground.middle();
            self.pan(room.center() - self.screen.center());
        } else {
            let margin = 0.1 * ground.width().max(ground.height());
            self.fit(ground.grown(margin), room);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn viewport() -> Viewport {
        let mut viewport = Viewport::default();
        viewport.show_on(Rect::from_min_size(pos2(20.0, 30.0), Vec2::new(800.0, 600.0)));
        viewport
    }

    #[track_caller]
    fn assert_near(a: Point, b: Point) {
        assert!(a.distance(b).to_metres() < 1e-3, "{a:?} is not {b:?}");
    }

    #[test]
    fn the_ground_under_the_pointer_stays_there_while_zooming() {
        let mut viewport = viewport();
        let place = pos2(600.0, 111.0);
        let before = viewport.to_ground(place);
        for factor in [1.1, 2.0, 0.3, 1.7] {
            viewport.zoom_about(place, factor);
            assert_near(viewport.to_ground(place), before);
        }
    }

    #[test]
    fn zooming_without_end_stops_at_both_ends() {
        let mut viewport = viewport();
        viewport.zoom(1e300);
        assert_eq!(viewport.points_per_metre(), NEAREST);
        viewport.zoom(0.0);
        viewport.zoom(f64::NAN);
        viewport.zoom(f64::INFINITY);
        assert_eq!(viewport.points_per_metre(), NEAREST);
        viewport.zoom(1e-300);
        assert_eq!(viewport.points_per_metre(), FARTHEST);
    }

    #[test]
    fn north_is_up() {
        let viewport = viewport();
        let (south, north) = (Point::metres(3.0, 1.0), Point::metres(3.0, 9.0));
        assert!(viewport.to_screen(north).y < viewport.to_screen(south).y);
        assert_near(viewport.to_ground(viewport.to_screen(north)), north);
    }

    #[test]
    fn fitting_shows_all_of_the_ground_in_the_room() {
        let mut viewport = viewport();
        let ground = Bounds {
            min: Point::metres(100.0, 200.0),
            max: Point::metres(160.0, 230.0),
        };
        let room = Rect::from_min_max(pos2(100.0, 100.0), pos2(700.0, 600.0));
        viewport.fit(ground, room);
        let shown = Rect::from_two_pos(viewport.to_screen(ground.min), viewport.to_screen(ground.max));
        assert!(room.expand(0.5).contains_rect(shown));
        assert!((shown.width() - room.width()).abs() < 0.5);
        assert!((shown.center() - room.center()).length() < 0.5);
    }
}
