//! The hand with the splitting tool: a line over the bed that follows the pointer from row to row, or along the rows
//! by whole steps; a number typed says where instead, on the bed that was under the pointer when typing began.

use egui::{CursorIcon, Event, Key, Modifiers, Response, Stroke, Ui};

use super::pointer_words::{PointerWords, theme_of};
use super::snap::step_of_at_least;
use super::tool::{SplitWay, Tool};
use super::viewport::Viewport;
use crate::app::command::Command;
use crate::app::desk::Desk;
use crate::app::theme;
use crate::geometry::Point;
use crate::layout::{BedId, EditError, Item};
use crate::plan::{BedPlan, SplitLine, SplitOutcome};
use crate::quantity::{Bearing, Length, counted};

/// Whole steps along the rows are no closer on the screen than this, in points.
const CLOSEST_STEPS: f32 = 6.0;
/// The line sticks out of the bed by so many points on either side.
const STICKS_OUT: f32 = 9.0;
/// No row's number and no length is longer than this.
const LONGEST: usize = 24;

/// What has been said of the split so far.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Splitting {
    /// Where, as far as it is typed.
    typed: String,
    /// The bed that was meant when typing began: what is typed is about it, wherever the pointer goes.
    held: Option<BedId>,
    /// Why the last try was refused; said until the hand does something else.
    refused: Option<String>,
    /// The line that would be made now, for painting.
    line: Option<(BedId, SplitLine)>,
    /// What came of the line that was last asked about, of that revision of the layout.
    outcome: Option<(Asked, Result<SplitOutcome, EditError>)>,
}

/// A line that was asked about: the revision of the layout, the bed, and the line.
type Asked = (u64, BedId, SplitLine);

/// What a place, or what is typed, comes to.
struct Meant {
    line: Option<SplitLine>,
    words: PointerWords,
}

impl Splitting {
    /// Reads the pointer and the keys, and pushes the edit when a place is settled. Gives what is said at the pointer.
    pub(super) fn read(
        &mut self,
        ui: &Ui,
        response: &Response,
        tool: &mut Tool,
        desk: &Desk,
        viewport: &Viewport,
        out: &mut Vec<Command>,
    ) -> PointerWords {
        self.line = None;
        let Tool::Split(way) = *tool else {
            return PointerWords::default();
        };
        let pointer = ui
            .input(|input| input.pointer.latest_pos())
            .filter(|at| viewport.screen().contains(*at));
        let place = pointer.map(|at| viewport.to_ground(at));
        if pointer.is_some() && response.contains_pointer() {
            ui.set_cursor_icon(CursorIcon::Crosshair);
        }
        let under = bed_meant(desk, place);
        let mut settled = false;
        if !ui.text_edit_focused() {
            if ui.input_mut(|input| input.consume_key(Modifiers::NONE, Key::Escape)) {
                *self = Self::default();
                *tool = Tool::Choose;
                return PointerWords::default();
            }
            settled = self.keys(ui);
        }
        let pressed = ui.input(|input| input.pointer.primary_pressed());
        if pressed && pointer.is_some() && response.is_pointer_button_down_on() {
            self.refused = None;
            settled = true;
        }
        let held = self.held.filter(|bed| desk.plan().bed(*bed).is_some());
        let meant = held.filter(|_| !self.typed.is_empty()).or(under);
        self.held = meant;
        let Some((bed, plan)) = meant.and_then(|bed| Some((bed, desk.plan().bed(bed)?))) else {
            return PointerWords::new("", "There is no bed here to split");
        };
        let free = ui.input(|input| input.modifiers.alt);
        let meant = self.meant(way, desk, plan, place, viewport, free);
        self.line = meant.line.map(|line| (bed, line));
        if settled {
            match meant.line {
                Some(line) => return self.carry_out(bed, line, tool, desk, out),
                None => self.refused = Some(meant.words.bold.clone()).filter(|sentence| !sentence.is_empty()),
            }
        }
        match &self.refused {
            Some(sentence) => PointerWords::wrong(sentence.clone()),
            None if pointer.is_some() => meant.words,
            None => PointerWords::default(),
        }
    }

    /// Reads the keys; gives whether what is typed is to be carried out.
    fn keys(&mut self, ui: &Ui) -> bool {
        if ui.input_mut(|input| input.consume_key(Modifiers::NONE, Key::Backspace)) {
            self.refused = None;
            self.typed.pop();
        }
        let typed: String = ui.input(|input| {
            let texts = input.events.iter().filter_map(|event| match event {
                Event::Text(text) => Some(text.as_str()),
                _ => None,
            });
            texts.collect()
        });
        let begins = typed.starts_with(|sign: char| sign.is_ascii_digit() || sign == '.' || sign == ',');
        if begins || (!self.typed.is_empty() && !typed.is_empty()) {
            self.refused = None;
            let room = LONGEST.saturating_sub(self.typed.chars().count());
            self.typed
                .extend(typed.chars().filter(|sign| !sign.is_control()).take(room));
        }
        !self.typed.is_empty() && ui.input_mut(|input| input.consume_key(Modifiers::NONE, Key::Enter))
    }

    fn meant(
        &mut self,
        way: SplitWay,
        desk: &Desk,
        plan: &BedPlan,
        place: Option<Point>,
        viewport: &Viewport,
        free: bool,
    ) -> Meant {
        match way {
            SplitWay::BetweenRows => self.between_rows(desk, plan, place),
            SplitWay::AcrossRows => self.across_rows(desk, plan, place, viewport, free),
        }
    }

    /// After the row that is typed, or the one on the left hand of the place.
    fn between_rows(&mut self, desk: &Desk, plan: &BedPlan, place: Option<Point>) -> Meant {
        let Some((first, last)) = plan
            .rows
            .first()
            .zip(plan.rows.last())
            .filter(|(a, b)| a.number < b.number)
        else {
            return nowhere("The bed has no two rows to split between");
        };
        let number = match self.typed.trim() {
            "" => match place.and_then(|place| plan.row_left_of(place)) {
                Some(number) => number,
                None => return nowhere(""),
            },
            typed => match typed.parse::<u32>() {
                Ok(number) => number,
                Err(_) => return nowhere(format!("\"{typed}\" is no row's number")),
            },
        };
        // At the far edge the last gap is meant.
        let number = if self.typed.is_empty() {
            let before_last = plan.rows.iter().rev().nth(1).map_or(number, |row| row.number);
            number.min(before_last)
        } else {
            number
        };
        let Some(line) = plan.line_after_row(number) else {
            return nowhere(format!(
                "Type a row from {} to {}: rows up to it stay, the others become a bed of their own",
                first.number,
                last.number - 1
            ));
        };
        let outcome = match self.outcome(desk, plan.bed, line) {
            Ok(outcome) => outcome,
            Err(error) => return nowhere(format!("{error} {}", error.hint())),
        };
        let rows: Vec<String> = outcome
            .rows
            .iter()
            .map(|rows| counted(*rows as u64, "row", "rows"))
            .collect();
        let bed = desk.layout().name_of(Item::Bed(plan.bed));
        let words =
            PointerWords::new(rows.join(" | "), format!("split {bed} after row {number}")).with(if outcome.rows_stay {
                String::new()
            } else {
                let whole = counted(plan.rows.len() as u64, "row", "rows");
                format!("of {whole}: the parts' outlines do not let all of them stay where they stand")
            });
        Meant {
            line: Some(line),
            words: words.with(self.hint("or type the number of a row")),
        }
    }

    /// What would come of a line. Rows are fitted anew only for another line, not for every frame.
    fn outcome(&mut self, desk: &Desk, bed: BedId, line: SplitLine) -> Result<SplitOutcome, EditError> {
        let asked = (desk.revision(), bed, line);
        match &self.outcome {
            Some((before, outcome)) if *before == asked => outcome.clone(),
            _ => {
                let outcome = line.outcome(desk.settled(), bed);
                self.outcome = Some((asked, outcome.clone()));
                outcome
            }
        }
    }

    /// As far along the rows as is typed, or as the place is.
    fn across_rows(&self, desk: &Desk, plan: &BedPlan, place: Option<Point>, viewport: &Viewport, free: bool) -> Meant {
        let units = desk.layout().units;
        let Some(whole) = plan.length_along_rows() else {
            return nowhere("The bed has no ground to split");
        };
        let along = match self.typed.trim() {
            "" => {
                let Some(along) = place.and_then(|place| plan.along_rows_to(place)) else {
                    return nowhere("");
                };
                match step_of_at_least(viewport.metres(CLOSEST_STEPS), units).filter(|_| !free) {
                    Some(step) => Length::metres((along.to_metres() / step.metres).round() * step.metres),
                    None => along,
                }
            }
            typed => match Length::parse(typed, units) {
                Ok(length) => length,
                Err(error) => return nowhere(error.to_string()),
            },
        };
        let back = Bearing::degrees(plan.fit.bearing().to_degrees() + 180.0).compass_word();
        let Some(line) = plan.line_across_rows(along) else {
            return nowhere(format!(
                "The bed reaches {} from its {back} end: split it at less than that",
                whole.show(units)
            ));
        };
        let bed = desk.layout().name_of(Item::Bed(plan.bed));
        let words = PointerWords::new(
            format!("{} | {}", along.show(units), (whole - along).show(units)),
            format!("split {bed} across the rows, from the {back} end"),
        );
        Meant {
            line: Some(line),
            words: words.with(self.hint("or type how far from that end; Alt for any place")),
        }
    }

    /// How to go on.
    fn hint(&self, before: &str) -> String {
        if self.typed.is_empty() {
            before.to_owned()
        } else {
            format!("{} | Enter splits the bed there", self.typed)
        }
    }

    /// Splits the bed and goes back to choosing, with the new bed chosen.
    fn carry_out(
        &mut self,
        bed: BedId,
        line: SplitLine,
        tool: &mut Tool,
        desk: &Desk,
        out: &mut Vec<Command>,
    ) -> PointerWords {
        let layout = desk.settled();
        let edit = line.edit(bed);
        match layout.apply(&edit) {
            Ok(_) => {
                out.push(Command::Edit(edit));
                out.push(Command::Choose(Some(Item::Bed(BedId(layout.next_id())))));
                *self = Self::default();
                *tool = Tool::Choose;
                PointerWords::default()
            }
            Err(error) => {
                let sentence = format!("{error} {}", error.hint());
                self.refused = Some(sentence.clone());
                PointerWords::wrong(sentence)
            }
        }
    }

    /// Shows the line over the bed.
    pub(super) fn paint(&self, ui: &Ui, desk: &Desk, viewport: &Viewport) {
        let Some((from, to)) = self.line.and_then(|(bed, line)| across(desk, bed, line)) else {
            return;
        };
        let colours = theme::colours(theme_of(ui));
        let (from, to) = (viewport.to_screen(from), viewport.to_screen(to));
        let out = (to - from).normalized() * STICKS_OUT;
        let painter = ui.painter_at(viewport.screen());
        painter.line_segment([from - out, to + out], Stroke::new(4.5, colours.paper));
        painter.line_segment([from - out, to + out], Stroke::new(2.0, colours.accent));
    }
}

fn nowhere(why: impl Into<String>) -> Meant {
    Meant {
        line: None,
        words: PointerWords::new(why, ""),
    }
}

/// The bed under the place, or the one in hand.
fn bed_meant(desk: &Desk, place: Option<Point>) -> Option<BedId> {
    let under = place.and_then(|place| {
        let mut beds = desk.plan().beds.iter().rev();
        beds.find(|plan| plan.ground.contains(place)).map(|plan| plan.bed)
    });
    under.or_else(|| desk.bed_in_hand())
}

/// From where to where the line lies over the bed.
fn across(desk: &Desk, bed: BedId, line: SplitLine) -> Option<(Point, Point)> {
    let ground = &desk.plan().bed(bed)?.ground;
    let (ux, uy) = line.bearing.unit();
    let (mut low, mut high) = (f64::INFINITY, f64::NEG_INFINITY);
    for ring in ground.rings() {
        for (a, b) in ring.iter().zip(ring.iter().cycle().skip(1)) {
            // How far to the right of the line both ends of the side lie.
            let right = |p: &Point| (p.x - line.at.x) * uy - (p.y - line.at.y) * ux;
            let (from, to) = (right(a), right(b));
            if (from < 0.0) != (to < 0.0) {
                let place = a.towards(*b, from / (from - to));
                let along = (place.x - line.at.x) * ux + (place.y - line.at.y) * uy;
                low = low.min(along);
                high = high.max(along);
            }
        }
    }
    let place = |along: f64| Point::metres(line.at.x + along * ux, line.at.y + along * uy);
    (low < high).then(|| (place(low), place(high)))
}
