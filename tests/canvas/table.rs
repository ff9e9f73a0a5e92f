//! A sheet on a table without a window: it carries out what the sheet asks for, as the program does.

use egui::{Key, Modifiers, Pos2, Vec2, pos2};
use egui_kittest::Harness;
use quillet::app::canvas::Canvas;
use quillet::app::command::Command;
use quillet::app::desk::Desk;
use quillet::app::theme;
use quillet::geometry::Point;
use quillet::layout::{BedGround, BedId, Edit, Item, Layout, ObstacleKind, PlotChange, PlotId, Shape};
use quillet::quantity::{Length, Units};

/// What is on the table.
pub(crate) struct Table {
    pub(crate) desk: Desk,
    pub(crate) canvas: Canvas,
    /// Everything said or asked for by name.
    pub(crate) asked: Vec<Command>,
}

pub(crate) type Hands = Harness<'static, Table>;

fn carry_out(table: &mut Table, command: Command) {
    match &command {
        Command::Edit(edit) => {
            table.desk.edit(edit);
        }
        Command::Preview(edit) => table.desk.preview(edit),
        Command::KeepPreview => table.desk.keep_preview(),
        Command::DropPreview => table.desk.drop_preview(),
        Command::Choose(item) => table.desk.chosen = *item,
        Command::PointAt(item) => table.desk.pointed = *item,
        _ => {}
    }
    table.asked.push(command);
}

/// A sheet with this layout, once it has come to rest.
pub(crate) fn table_with(layout: Layout) -> Hands {
    let table = Table {
        desk: Desk::new(layout, None),
        canvas: Canvas::default(),
        asked: Vec::new(),
    };
    let mut hands = Harness::builder()
        .with_size([900.0, 700.0])
        .with_context_setup(theme::install)
        .build_ui_state(
            |ui, table: &mut Table| {
                let mut out = Vec::new();
                table.canvas.show(ui, &table.desk, &mut out);
                for command in out {
                    carry_out(table, command);
                }
            },
            table,
        );
    hands.run();
    hands
}

/// An empty layout in feet.
pub(crate) fn empty() -> Layout {
    Layout::empty(2027, Units::Customary)
}

/// A plot of 60 by 40 ft, its south-west corner on the origin, with a bed that fills it: rows north to south, 3 ft
/// apart. The plot has id 1 and the bed id 2.
pub(crate) fn one_plot() -> Layout {
    let outline = rectangle(0.0, 0.0, 60.0, 40.0);
    let layout = empty()
        .apply(&Edit::AddPlotWithBed {
            name: Some("Lower plot".to_owned()),
            outline,
        })
        .unwrap();
    layout
        .apply(&Edit::Bed(
            BED,
            quillet::layout::BedChange::SetBearing(quillet::quantity::Bearing::NORTH),
        ))
        .unwrap()
}

/// The same plot with a bed of its own outline in its western part, 20 by 40 ft; the bed has id 2.
pub(crate) fn part_bed() -> Layout {
    let outline = rectangle(0.0, 0.0, 60.0, 40.0);
    let layout = empty()
        .apply(&Edit::AddPlot {
            name: Some("Lower plot".to_owned()),
            outline,
        })
        .unwrap();
    let ground = BedGround::Corners(rectangle(0.0, 0.0, 20.0, 40.0));
    layout
        .apply(&Edit::AddBed {
            plot: PLOT,
            name: Some("Corn block".to_owned()),
            ground,
        })
        .unwrap()
}

/// The plot with a tree of 4 ft round (30, 20).
pub(crate) fn with_tree() -> Layout {
    let shape = Shape::Circle {
        centre: Point::feet(30.0, 20.0),
        radius: Length::feet(4.0),
    };
    let change = PlotChange::AddObstacle {
        name: Some("Pear".to_owned()),
        kind: ObstacleKind::Tree,
        shape,
        clear: Length::feet(2.0),
    };
    part_bed().apply(&Edit::Plot(PLOT, change)).unwrap()
}

pub(crate) const PLOT: PlotId = PlotId(1);
pub(crate) const BED: BedId = BedId(2);

/// Four corners, counter-clockwise from the south-west, in feet.
pub(crate) fn rectangle(x: f64, y: f64, width: f64, height: f64) -> Vec<Point> {
    [(x, y), (x + width, y), (x + width, y + height), (x, y + height)]
        .map(|(x, y)| Point::feet(x, y))
        .to_vec()
}

/// Where on the screen a place in feet is.
pub(crate) fn at(hands: &Hands, x: f64, y: f64) -> Pos2 {
    hands.state().canvas.to_screen(Point::feet(x, y))
}

/// Clicks at a place in feet.
pub(crate) fn click(hands: &mut Hands, x: f64, y: f64) {
    let place = at(hands, x, y);
    click_screen(hands, place);
}

/// Clicks at a place of the screen.
pub(crate) fn click_screen(hands: &mut Hands, place: Pos2) {
    hands.hover_at(place);
    hands.step();
    hands.drag_at(place);
    hands.step();
    hands.drop_at(place);
    hands.run();
    // Long enough that the next click is not the second of two.
    hands.run_steps(3);
}

/// Takes hold at one place in feet and moves to another in several steps, without letting go.
/// Gives where on the screen the hand is then: the sheet may have moved under it.
pub(crate) fn hold_and_move(hands: &mut Hands, from: (f64, f64), to: (f64, f64)) -> Pos2 {
    let (from, to) = (at(hands, from.0, from.1), at(hands, to.0, to.1));
    hands.hover_at(from);
    hands.step();
    hands.drag_at(from);
    hands.step();
    for part in [0.3, 0.6, 1.0] {
        hands.hover_at(from + (to - from) * part);
        hands.step();
    }
    hands.step();
    to
}

/// Drags from one place in feet to another.
pub(crate) fn drag(hands: &mut Hands, from: (f64, f64), to: (f64, f64)) {
    let to = hold_and_move(hands, from, to);
    hands.drop_at(to);
    hands.run();
}

/// Presses a key.
pub(crate) fn key(hands: &mut Hands, modifiers: Modifiers, key: Key) {
    hands.key_press_modifiers(modifiers, key);
    hands.run();
}

/// How many steps undo can take back.
pub(crate) fn steps(hands: &Hands) -> usize {
    hands.state().desk.history().labels().count()
}

/// The corners of the plot in feet, rounded to a thousandth.
pub(crate) fn corners(hands: &Hands) -> Vec<(f64, f64)> {
    ring(&hands.state().desk.layout().plot(PLOT).unwrap().outline)
}

/// Corners in feet, rounded to a thousandth.
pub(crate) fn ring(points: &[Point]) -> Vec<(f64, f64)> {
    let feet = |metres: f64| (Length::metres(metres).to_feet() * 1000.0).round() / 1000.0 + 0.0;
    points.iter().map(|point| (feet(point.x), feet(point.y))).collect()
}

/// Chooses a thing.
pub(crate) fn choose(hands: &mut Hands, item: Item) {
    hands.state_mut().desk.chosen = Some(item);
    hands.run();
}

/// Turns the wheel at a place of the screen by so many notches.
pub(crate) fn wheel(hands: &mut Hands, place: Pos2, notches: f32) {
    hands.hover_at(place);
    hands.step();
    hands.event(egui::Event::MouseWheel {
        unit: egui::MouseWheelUnit::Line,
        delta: Vec2::new(0.0, notches),
        phase: egui::TouchPhase::Move,
        source: egui::MouseWheelSource::Wheel,
        modifiers: Modifiers::NONE,
    });
    hands.run_steps(12);
}

/// The middle of the sheet on the screen.
pub(crate) fn middle() -> Pos2 {
    pos2(450.0, 350.0)
}
