//! A map too large for one sheet at the scale that is asked for: cut into parts that lap over each other, a sheet
//! each, with the whole map before them to show which part is where.

use super::frame::Role;
use super::map_key;
use super::map_sheet::{self, printable};
use super::options::{PageError, PageOptions};
use super::paper::Turned;
use super::scale::Scale;
use super::sheet::{HEAD, Sheet, corners, frame_box, line};
use crate::geometry::{Bounds, Point};
use crate::layout::{Layout, Plot};
use crate::plan::Plan;
use crate::sheets::Placing;
use crate::sheets::drawing::{self, MARGIN, NORTH_ARROW_HEIGHT, NORTH_ARROW_WIDTH, REACH, ScaleBar, View};
use crate::sheets::mark::{Anchor, Dash, Ink, Mark, Pen, Words};

/// Neighbouring parts show so much of the same ground, in points: half an inch to lay them together by.
const LAP: f64 = 36.0;
/// Kept free round a part for the words that say where it goes on, in points.
const EDGE: f64 = 14.0;
/// Kept below the scale bar for the line on rows that are not drawn, in points.
const THINNED: f64 = 12.0;
/// More sheets than this are a slip of the scale.
const MOST_SHEETS: usize = 40;

/// A map in parts.
pub(super) struct MapParts {
    pub(super) turned: Turned,
    scale: Scale,
    /// Size of a part on paper, in points.
    across: f64,
    down: f64,
    /// The parts that have something to show, from the north-west, row after row.
    parts: Vec<MapPart>,
}

/// One part.
struct MapPart {
    column: usize,
    row: usize,
    ground: Bounds,
}

/// The part next to another, and the side of it where it lies.
#[derive(Clone, Copy)]
enum Side {
    Left,
    Right,
    Top,
    Bottom,
}

impl MapParts {
    /// Cuts a map at this scale into as few parts as possible. `foot` is what every sheet keeps free at its foot, and
    /// `fits_one` the largest standard scale at which one sheet is enough.
    pub(super) fn of(
        layout: &Layout,
        extent: &Bounds,
        options: &PageOptions,
        scale: Scale,
        foot: f64,
        fits_one: Scale,
    ) -> Result<Self, PageError> {
        let ways = [Turned::Portrait, Turned::Landscape].map(|turned| {
            let (width, height) = options.paper.size(turned);
            let margins = 2.0 * options.paper.margin();
            let across = width - margins - 2.0 * EDGE;
            let down = height - margins - HEAD - 2.0 * EDGE - map_key::BAR_HEIGHT - THINNED - foot;
            let on_paper = |length: f64| length * scale.points_per_metre() + 2.0 * REACH;
            let (wide, high) = (on_paper(extent.width()), on_paper(extent.height()));
            // A part alone in its row or column is no larger than what it has to show.
            (
                turned,
                across.min(wide),
                down.min(high),
                count(wide, across),
                count(high, down),
            )
        });
        let [upright, lying] = ways;
        let fewest = if lying.3.saturating_mul(lying.4) < upright.3.saturating_mul(upright.4) {
            lying
        } else {
            upright
        };
        let (turned, across, down, columns, rows) = fewest;
        let sheets = columns.saturating_mul(rows);
        if sheets > MOST_SHEETS {
            return Err(PageError::TooManySheets {
                asked: scale.show(),
                sheets,
                most: MOST_SHEETS,
                paper: options.paper.name(),
                largest: fits_one.show(),
            });
        }
        let mut parts = Vec::with_capacity(sheets);
        for row in 0..rows {
            for column in 0..columns {
                let ground = part_ground(extent, scale, (across, down), (column, columns), (row, rows));
                if shows_something(layout, &ground) {
                    parts.push(MapPart { column, row, ground });
                }
            }
        }
        Ok(Self {
            turned,
            scale,
            across,
            down,
            parts,
        })
    }

    /// How many sheets they take.
    pub(super) fn sheets(&self) -> usize {
        self.parts.len()
    }

    /// Draws over the whole map, the first sheet, which sheet has which part of it.
    pub(super) fn set_overview(&self, sheet: &mut Sheet, placing: &Placing) {
        let mut marks = Vec::new();
        for (k, part) in self.parts.iter().enumerate() {
            let ring = part.ground.corners().map(|corner| placing.to_sheet(corner));
            marks.push(Mark::Line {
                points: ring.to_vec(),
                closed: true,
                pen: Pen {
                    width: 1.0,
                    ink: Ink::Accent,
                    dash: Dash::Short,
                },
            });
            let south_west = ring[0];
            let text = format!("sheet {}", k + 2);
            marks.push(plate(south_west.x + 5.0, south_west.y - 5.0, &text));
        }
        sheet.push(Role::Ornament, marks);
    }

    /// Says on the first sheet what comes on the next ones.
    pub(super) fn announce(&self, sheet: &mut Sheet) {
        let scale = self.scale.show();
        let told = match self.parts.len() {
            1 => format!("Sheet 2 shows the dashed part at {scale}."),
            parts => format!(
                "Sheets 2 {} {} show the dashed parts at {scale}; they lap over each other by half an inch or more.",
                if parts == 2 { "and" } else { "to" },
                parts + 1
            ),
        };
        sheet.sentence(Role::Sentence, &told, 8.5, Ink::Strong);
    }

    /// Sets a part on its sheet.
    pub(super) fn set_part(&self, sheet: &mut Sheet, layout: &Layout, plan: &Plan, index: usize) {
        let Some(part) = self.parts.get(index) else { return };
        let points_per_metre = self.scale.points_per_metre();
        let left = sheet.left + (sheet.across() - self.across) / 2.0;
        let top = sheet.y + EDGE;
        let placing = Placing {
            points_per_metre,
            ground: Point::metres(part.ground.min.x, part.ground.max.y),
            sheet: Point::metres(left, top),
        };
        let view = View::of_paper(part.ground, points_per_metre);
        let mut marks: Vec<Mark> = drawing::draw(layout, plan, &view)
            .iter()
            .map(|mark| printable(mark.placed(&placing)))
            .collect();
        marks.extend(self.covers(left, top));
        marks.push(frame_box(left, top, self.across, self.down, 0.8, Ink::Strong));
        let told = format!("Part of the map at {}.", self.scale.show());
        sheet.push(Role::Figure(told), marks);
        set_north(sheet, left + self.across, top);
        self.set_neighbours(sheet, part, left, top);
        sheet.y = top + self.down + EDGE;
        map_key::set_bar(sheet, self.scale, ScaleBar::to_check(points_per_metre, layout.units));
        map_sheet::set_thinned(sheet, layout, plan, &view);
    }

    /// Paper over what the drawing leaves outside the frame.
    fn covers(&self, left: f64, top: f64) -> [Mark; 4] {
        let (right, bottom) = (left + self.across, top + self.down);
        let wide = self.across + 2.0 * MARGIN;
        [
            (left - MARGIN, top - MARGIN, wide, MARGIN),
            (left - MARGIN, bottom, wide, MARGIN),
            (left - MARGIN, top, MARGIN, self.down),
            (right, top, MARGIN, self.down),
        ]
        .map(|(x, y, width, height)| Mark::Fill {
            rings: vec![corners(x, y, width, height)],
            ink: Ink::Paper,
        })
    }

    /// On each side where the map goes on, which sheet has it.
    fn set_neighbours(&self, sheet: &mut Sheet, part: &MapPart, left: f64, top: f64) {
        let (middle, half) = (left + self.across / 2.0, top + self.down / 2.0);
        let places = [
            (Side::Left, left - 7.0, half, 90.0),
            (Side::Right, left + self.across + 7.0, half, 90.0),
            (Side::Top, middle, top - 7.0, 0.0),
            (Side::Bottom, middle, top + self.down + 7.0, 0.0),
        ];
        for (side, x, y, turn) in places {
            let Some(number) = self.beside(part, side) else {
                continue;
            };
            let text = format!("continued on sheet {number}");
            let mark = Mark::Words(Words {
                turn,
                ..line(x, y, &text, Anchor::Middle, 7.5, false, Ink::Soft)
            });
            sheet.push(Role::Sentence, vec![mark]);
        }
    }

    /// The number of the sheet on that side of a part, if there is one.
    fn beside(&self, part: &MapPart, side: Side) -> Option<usize> {
        let (column, row) = match side {
            Side::Left => (part.column.checked_sub(1)?, part.row),
            Side::Right => (part.column + 1, part.row),
            Side::Top => (part.column, part.row.checked_sub(1)?),
            Side::Bottom => (part.column, part.row + 1),
        };
        let index = self
            .parts
            .iter()
            .position(|part| part.column == column && part.row == row)?;
        Some(index + 2)
    }
}

/// Sets the north arrow on a plate in the right upper corner of a part.
fn set_north(sheet: &mut Sheet, right: f64, top: f64) {
    const AIR: f64 = 4.0;
    let (wide, high) = (NORTH_ARROW_WIDTH + 2.0 * AIR, NORTH_ARROW_HEIGHT + 2.0 * AIR);
    let mut marks = vec![
        Mark::Fill {
            rings: vec![corners(right - wide, top, wide, high)],
            ink: Ink::Paper,
        },
        frame_box(right - wide, top, wide, high, 0.8, Ink::Strong),
    ];
    marks.extend(drawing::north_arrow(Point::metres(right - wide / 2.0, top + AIR)));
    sheet.push(Role::Figure("North is up the sheet".to_owned()), marks);
}

/// Whether a part has anything of a plot, something in the way, or a note.
fn shows_something(layout: &Layout, ground: &Bounds) -> bool {
    let shows = |ring: &[Point]| !ground.cut_ring(ring).is_empty();
    let plot =
        |plot: &Plot| shows(&plot.outline) || plot.obstacles.iter().any(|obstacle| shows(&obstacle.shape.ring()));
    layout.plots.iter().any(|each| plot(each)) || layout.notes.iter().any(|note| ground.contains(note.at))
}

/// How many parts of a size, lapping over each other, take up a length.
fn count(length: f64, part: f64) -> usize {
    // A hair of slack, so that what fills the parts to the last point does not take one more.
    (((length - LAP - 1e-6) / (part - LAP)).ceil().max(1.0)) as usize
}

/// The ground of a part: parts are spread evenly over the map with the room for its measures round it.
fn part_ground(
    extent: &Bounds,
    scale: Scale,
    (across, down): (f64, f64),
    (column, columns): (usize, usize),
    (row, rows): (usize, usize),
) -> Bounds {
    let metres = |points: f64| points / scale.points_per_metre();
    let whole = extent.grown(metres(REACH));
    let (wide, high) = (metres(across), metres(down));
    let step = |length: f64, part: f64, index: usize, parts: usize| {
        if parts > 1 {
            (length - part) * index as f64 / (parts - 1) as f64
        } else {
            (length - part) / 2.0
        }
    };
    let west = whole.min.x + step(whole.width(), wide, column, columns);
    let north = whole.max.y - step(whole.height(), high, row, rows);
    Bounds {
        min: Point::metres(west, north - high),
        max: Point::metres(west + wide, north),
    }
}

/// Words on a plate, so that they are read over the drawing.
fn plate(x: f64, y: f64, text: &str) -> Mark {
    Mark::Words(Words {
        plate: Some(Ink::Paper),
        ..line(x, y, text, Anchor::Left, 9.0, true, Ink::Accent)
    })
}
