//! How long a whole frame of the sheet takes with 100,000 rows on it, the drawing and its triangles together:
//! `cargo bench --bench frame`. A frame may take 4 ms.

#![expect(
    clippy::expect_used,
    reason = "a test or bench that cannot go on says so by stopping"
)]

use std::cell::RefCell;

use divan::Bencher;
use egui::{Event, Pos2, RawInput, Rect, pos2, vec2};
use quillet::app::canvas::Canvas;
use quillet::app::command::Command;
use quillet::app::desk::Desk;
use quillet::app::step::Step;
use quillet::app::theme;
use quillet::geometry::Point;
use quillet::layout::{BedChange, Edit, Item, Layout};
use quillet::quantity::{Bearing, Length, Units};

fn main() {
    divan::main();
}

/// How near the sheet is looked at: 1 shows all of it; rows are told apart from some 200 on, plants from 2,000 on.
const NEARNESS: [f64; 6] = [1.0, 10.0, 60.0, 200.0, 1_000.0, 5_000.0];

const WINDOW: Rect = Rect {
    min: pos2(0.0, 0.0),
    max: pos2(1440.0, 900.0),
};

/// One plot of 2,500 by 1,600 m with one bed of sweet corn: 100,000 rows 2.5 cm apart.
fn many_rows() -> Layout {
    let outline = [(0.0, 0.0), (2500.0, 0.0), (2500.0, 1600.0), (0.0, 1600.0)];
    let outline = outline.map(|(x, y)| Point::metres(x, y)).into();
    let mut layout = Layout::empty(2027, Units::Metric)
        .apply(&Edit::AddPlotWithBed { name: None, outline })
        .expect("a plot");
    let bed = layout.beds[0].id;
    for change in [
        BedChange::SetBearing(Bearing::NORTH),
        BedChange::SetRowSpacing(Length::metres(0.025)),
        BedChange::SetCrop(quillet::catalog::CropId("sweet-corn".to_owned())),
    ] {
        layout = layout.apply(&Edit::Bed(bed, change)).expect("a change");
    }
    layout
}

/// A window with the sheet in it.
struct Window {
    ctx: egui::Context,
    desk: Desk,
    canvas: Canvas,
    frames: u64,
}

impl Window {
    fn looked_at_from(nearness: f64) -> Self {
        let ctx = egui::Context::default();
        theme::install(&ctx);
        let mut desk = Desk::new(many_rows(), None);
        assert_eq!(desk.plan().totals.rows, 100_000);
        desk.step = Step::Rows;
        desk.chosen = Some(Item::Bed(desk.layout().beds[0].id));
        let mut window = Self {
            ctx,
            desk,
            canvas: Canvas::default(),
            frames: 0,
        };
        window.frame(None);
        window.canvas.zoom_by(nearness);
        for _ in 0..4 {
            window.frame(Some(WINDOW.center()));
        }
        window
    }

    /// One whole frame: the sheet, what it asks for, and the triangles that the graphics card is given.
    fn frame(&mut self, pointer: Option<Pos2>) -> usize {
        self.frames += 1;
        let input = RawInput {
            screen_rect: Some(WINDOW),
            time: Some(self.frames as f64 / 60.0),
            events: pointer.map(Event::PointerMoved).into_iter().collect(),
            ..RawInput::default()
        };
        let mut out = Vec::new();
        let output = self.ctx.run_ui(input, |ui| self.canvas.show(ui, &self.desk, &mut out));
        for command in out {
            match command {
                Command::PointAt(item) => self.desk.pointed = item,
                Command::Choose(item) => self.desk.chosen = item,
                _ => {}
            }
        }
        let (shapes, pixels_per_point) = (output.shapes.clone(), output.pixels_per_point);
        output.drop_without_applying_deltas();
        self.ctx.tessellate(shapes, pixels_per_point).len()
    }
}

/// Only the pointer moves, across the rows.
#[divan::bench(args = NEARNESS)]
fn pointing(bencher: Bencher, nearness: f64) {
    let window = RefCell::new(Window::looked_at_from(nearness));
    bencher.bench_local(|| {
        let mut window = window.borrow_mut();
        let across = (window.frames * 7 % 400) as f32;
        window.frame(Some(WINDOW.center() + vec2(across - 200.0, 40.0)))
    });
}

/// Every frame looks from a little nearer or farther.
#[divan::bench(args = NEARNESS)]
fn zooming(bencher: Bencher, nearness: f64) {
    let window = RefCell::new(Window::looked_at_from(nearness));
    bencher.bench_local(|| {
        let mut window = window.borrow_mut();
        let factor = if window.frames % 40 < 20 { 1.02 } else { 1.0 / 1.02 };
        window.canvas.zoom_by(factor);
        window.frame(Some(WINDOW.center()))
    });
}
