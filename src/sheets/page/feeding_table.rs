//! The table of what every row of a bed gets: for each dressing its weight, its kitchen measure, and a box for what was
//! really used.

use super::frame::{CellHead, Role};
use super::sheet::{Sheet, frame_box, rule, words};
use super::word_table::Setting;
use crate::sheets::feeding_list::{DressingWords, FedBed};
use crate::sheets::mark::{Anchor, Ink};
use crate::sheets::type_metrics;

/// Below each part of the table.
const BELOW: f64 = 8.0;
const SIZE: f32 = 9.0;
const HEAD_SIZE: f32 = 8.0;
const HEAD_LINE: f64 = 10.0;
/// Between two columns.
const BETWEEN: f64 = 8.0;
/// Between two dressings.
const APART: f64 = 14.0;
/// Width of the box for what was really used.
const BOX: f64 = 46.0;
/// Kept for the heading of the bed on a later sheet.
const HEADING: f64 = 40.0;
/// Most lines that the name of a dressing is given.
const MOST_NAME_LINES: usize = 2;
/// Lines of a part that are begun on a sheet at least.
const LINES_BEGUN: f64 = 8.0;
/// What sums of heights may be off by.
const A_HAIR: f64 = 1e-6;

/// One dressing's columns: places from the left margin.
struct Group<'a> {
    dressing: &'a DressingWords,
    left: f64,
    /// Right edge of the weights.
    weight: f64,
    /// Right edge of the kitchen measure; where the weights end when there is none.
    scoops: f64,
    /// Right edge of the box.
    right: f64,
    name: Vec<String>,
}

/// The dressings that go side by side on one sheet.
struct Band<'a> {
    groups: Vec<Group<'a>>,
    /// Right edges of row numbers and lengths.
    row: f64,
    length: f64,
    /// What the last line is called: "each 10 ft".
    stretch: String,
}

/// Widest of some words.
fn widest<'a>(texts: impl Iterator<Item = &'a str>, size: f32, bold: bool) -> f64 {
    texts
        .map(|text| type_metrics::width(text, size, bold))
        .fold(0.0, f64::max)
}

/// The table of a bed, in as many parts side by side as its dressings take.
pub(super) struct RowsTable<'a> {
    bands: Vec<Band<'a>>,
}

impl<'a> RowsTable<'a> {
    /// The table of what goes row by row, on a sheet so wide.
    pub(super) fn of(bed: &'a FedBed, across: f64) -> Self {
        let by_rows = bed.dressings.iter().filter(|dressing| !dressing.rows.is_empty());
        Self {
            bands: share_out(&by_rows.collect::<Vec<_>>(), across),
        }
    }

    /// Its height in one piece with lines so high, in points.
    pub(super) fn height(&self, line: f64) -> f64 {
        self.bands.iter().map(|band| band.height(line) + BELOW).sum()
    }

    /// Height of so much of it as is begun at least below the heading of its bed.
    pub(super) fn begun(&self, line: f64) -> f64 {
        self.bands.first().map_or(0.0, |band| band.begun(line))
    }

    /// Sets it with lines so high.
    pub(super) fn set(&self, setting: &mut Setting<'_>, line: f64) {
        for (place, band) in self.bands.iter().enumerate() {
            // The first stands below its bed's heading; a later one is not parted when it fits a sheet of its own.
            let whole = band.height(line);
            setting.need(if place > 0 && whole <= setting.empty_room() - HEADING {
                whole
            } else {
                band.begun(line)
            });
            let table = setting.next_table();
            set_band(setting, table, band, line);
            setting.sheet.y += BELOW;
        }
    }
}

/// Shares the dressings out over as few parts as fit across.
fn share_out<'a>(dressings: &[&'a DressingWords], across: f64) -> Vec<Band<'a>> {
    let Some(first) = dressings.first() else {
        return Vec::new();
    };
    let stretch = format!("each {}", first.stretch);
    let heads = ["Row", "All"];
    let numbers = first.rows.last().map(|row| row.number.to_string()).unwrap_or_default();
    let row = widest(heads.into_iter().chain([numbers.as_str()]), SIZE, true) + 2.0;
    let lengths = first.rows.iter().map(|row| row.length.as_str());
    let length = row + BETWEEN + widest(lengths.chain(["length"]), SIZE, false);
    let length = length.max(type_metrics::width(&stretch, SIZE, true));
    let mut bands: Vec<Band<'a>> = Vec::new();
    let mut x = across;
    for &dressing in dressings {
        let (weight, scoops) = widths(dressing);
        let width = weight + if scoops > 0.0 { BETWEEN + scoops } else { 0.0 } + BETWEEN + BOX;
        if x + APART + width > across {
            bands.push(Band {
                groups: Vec::new(),
                row,
                length,
                stretch: stretch.clone(),
            });
            x = length;
        }
        let left = x + APART;
        let weight = left + weight;
        let scoops = if scoops > 0.0 {
            weight + BETWEEN + scoops
        } else {
            weight
        };
        x = left + width;
        if let Some(band) = bands.last_mut() {
            band.groups.push(Group {
                dressing,
                left,
                weight,
                scoops,
                right: x,
                name: name_lines(dressing, width),
            });
        }
    }
    bands
}

/// Widths of the weights and of the kitchen measure.
fn widths(dressing: &DressingWords) -> (f64, f64) {
    let weights = dressing.rows.iter().map(|row| row.weight.as_str());
    let weights = weights.chain(["weight", dressing.pace.as_str()]);
    let weight = widest(weights, SIZE, false).max(type_metrics::width(&dressing.total, SIZE, true));
    if dressing.scoops.is_empty() {
        return (weight, 0.0);
    }
    let scoops = dressing.rows.iter().map(|row| row.scoops.as_str());
    let scoops = widest(scoops.chain(["a guide", dressing.pace_scoop.as_str()]), SIZE, false);
    (weight, scoops.max(type_metrics::width(&dressing.scoops, SIZE, true)))
}

fn name_lines(dressing: &DressingWords, width: f64) -> Vec<String> {
    let name = match dressing.times {
        0 | 1 => dressing.name.clone(),
        times => format!("{}, all {times} times", dressing.name),
    };
    let mut lines = type_metrics::break_lines(&name, width, HEAD_SIZE, true);
    if lines.len() > MOST_NAME_LINES {
        let rest = lines.split_off(MOST_NAME_LINES - 1).join(" ");
        lines.push(type_metrics::shortened(&rest, width, HEAD_SIZE, true));
    }
    lines
}

impl Band<'_> {
    fn head_height(&self) -> f64 {
        let name = self.groups.iter().map(|group| group.name.len()).max().unwrap_or(1);
        (name + 1) as f64 * HEAD_LINE + 9.0
    }

    /// Its height in one piece with lines so high, sums and all.
    fn height(&self, line: f64) -> f64 {
        let rows = self.groups.first().map_or(0, |group| group.dressing.rows.len());
        self.head_height() + (rows + 2) as f64 * line
    }

    /// Height of a good part of it, or of the whole where that is less.
    fn begun(&self, line: f64) -> f64 {
        (self.head_height() + LINES_BEGUN * line).min(self.height(line))
    }

    /// Right edge of the whole.
    fn right(&self) -> f64 {
        self.groups.last().map_or(self.length, |group| group.right)
    }

    /// Sets the heads. On a later sheet they only repeat, and are left out of the reading order.
    fn set_heads(&self, sheet: &mut Sheet, table: usize, again: bool) {
        let role = || Role::column_head(table, again);
        let (left, right, top) = (sheet.left, sheet.left + self.right(), sheet.y);
        let height = self.head_height();
        let base = top + height - 5.5;
        sheet.push(Role::Ornament, vec![rule(left, right, top, 1.2, Ink::Strong)]);
        let head = |x: f64, text: &str| words(left + x, base, text, Anchor::Right, HEAD_SIZE, false, Ink::Soft);
        sheet.push(role(), vec![head(self.row, "Row")]);
        sheet.push(role(), vec![head(self.length, "length")]);
        for group in &self.groups {
            let lines = group.name.len();
            let mut marks: Vec<_> = group
                .name
                .iter()
                .enumerate()
                .map(|(line, text)| {
                    let y = base - (lines - line) as f64 * HEAD_LINE - 1.0;
                    words(left + group.left, y, text, Anchor::Left, HEAD_SIZE, true, Ink::Strong)
                })
                .collect();
            marks.push(head(group.weight, "weight"));
            sheet.push(role(), marks);
            if group.scoops > group.weight {
                sheet.push(role(), vec![head(group.scoops, "a guide")]);
            }
            sheet.push(role(), vec![head(group.right, "really used")]);
        }
        sheet.y = top + height;
        sheet.push(Role::Ornament, vec![rule(left, right, sheet.y, 0.7, Ink::Strong)]);
    }

    /// Sets a line: its head, its length, and for each dressing weight, kitchen measure, and a box where asked.
    fn set_line(&self, sheet: &mut Sheet, cells: &Line<'_>, of: &dyn Fn(&DressingWords) -> (String, String)) {
        let (left, top) = (sheet.left, sheet.y);
        let base = top + cells.height * 0.5 + 3.2;
        let role = |head| Role::Cell {
            table: cells.table,
            line: cells.line,
            head,
        };
        let cell = |x: f64, text: &str, bold: bool| words(left + x, base, text, Anchor::Right, SIZE, bold, Ink::Strong);
        // What has no length of its own has the room of both columns.
        let head = if cells.length.is_empty() { self.length } else { self.row };
        sheet.push(role(CellHead::Line), vec![cell(head, cells.head, true)]);
        sheet.push(role(CellHead::None), vec![cell(self.length, cells.length, false)]);
        for group in &self.groups {
            let (weight, scoops) = of(group.dressing);
            sheet.push(role(CellHead::None), vec![cell(group.weight, &weight, cells.bold)]);
            if group.scoops > group.weight {
                sheet.push(role(CellHead::None), vec![cell(group.scoops, &scoops, false)]);
            }
            let square = frame_box(
                left + group.right - BOX,
                top + 1.5,
                BOX,
                cells.height - 3.0,
                0.5,
                Ink::Soft,
            );
            // An empty cell is told too, so that those after it keep their columns.
            let mark = if cells.boxed {
                square
            } else {
                cell(group.right, "", false)
            };
            sheet.push(role(CellHead::None), vec![mark]);
        }
        sheet.y += cells.height;
    }
}

/// What a line of the table begins with.
struct Line<'a> {
    table: usize,
    line: usize,
    height: f64,
    head: &'a str,
    length: &'a str,
    bold: bool,
    boxed: bool,
}

fn set_band(setting: &mut Setting<'_>, table: usize, band: &Band<'_>, height: f64) {
    let Some(first) = band.groups.first() else { return };
    band.set_heads(&mut setting.sheet, table, false);
    let rows = &first.dressing.rows;
    for (index, row) in rows.iter().enumerate() {
        // The sums do not stand on a sheet by themselves.
        let last = index + 1 == rows.len();
        let lines = if last { 3.0 } else { 1.0 };
        if setting.sheet.room() + A_HAIR < lines * height {
            setting.turn_over();
            band.set_heads(&mut setting.sheet, table, true);
        }
        let line = Line {
            table,
            line: index + 1,
            height,
            head: &row.number.to_string(),
            length: &row.length,
            bold: false,
            boxed: true,
        };
        band.set_line(&mut setting.sheet, &line, &|dressing| {
            let row = dressing.rows.get(index);
            row.map_or_else(Default::default, |row| (row.weight.clone(), row.scoops.clone()))
        });
        let (left, y) = (setting.sheet.left, setting.sheet.y);
        let right = left + band.right();
        setting
            .sheet
            .push(Role::Ornament, vec![rule(left, right, y, 0.3, Ink::Faint)]);
    }
    let (left, y) = (setting.sheet.left, setting.sheet.y);
    let right = left + band.right();
    setting
        .sheet
        .push(Role::Ornament, vec![rule(left, right, y, 0.7, Ink::Strong)]);
    let all = Line {
        table,
        line: rows.len() + 1,
        height,
        head: "All",
        length: "",
        bold: true,
        boxed: true,
    };
    band.set_line(&mut setting.sheet, &all, &|dressing| {
        (dressing.total.clone(), dressing.scoops.clone())
    });
    let stretch = Line {
        table,
        line: rows.len() + 2,
        height,
        head: &band.stretch,
        length: "",
        bold: false,
        boxed: false,
    };
    band.set_line(&mut setting.sheet, &stretch, &|dressing| {
        // What is given several times is summed above, and nobody walks it.
        match dressing.times {
            0 | 1 => (dressing.pace.clone(), dressing.pace_scoop.clone()),
            _ => Default::default(),
        }
    });
}
