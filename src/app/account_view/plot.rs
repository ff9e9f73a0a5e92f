//! The plot of an account through the season.

use egui::{Align2, FontId, RichText, Ui, Vec2};
use egui_plot::{GridMark, HLine, Line, LineStyle, Plot, PlotPoint, Points, Span, Text};

use super::axis;
use super::key::{self, Kind};
use crate::agronomy::Nutrient;
use crate::app::form;
use crate::app::theme::{self, Colours, ThemeInForce as _};
use crate::layout::Bed;
use crate::plan::feeding::{BedFeeding, Course, CourseStep};
use crate::quantity::{MassPerArea, Units, number};
use crate::sheets::feeding_list::{rate_number, rate_unit};

/// Left and right of the season, as parts of it.
const MARGIN: f64 = 0.06;

/// Everything that is drawn, in the unit of the account.
struct Drawn {
    /// What is still wanted after credits, and the ends of what is published.
    wanted: Option<(f64, f64, f64)>,
    planned: Vec<[f64; 2]>,
    done: Vec<[f64; 2]>,
    ahead: Vec<[f64; 2]>,
    /// Where each dressing stands, to be named there.
    names: Vec<([f64; 2], String)>,
    top: f64,
}

impl Drawn {
    fn of(feeding: &BedFeeding, nutrient: Nutrient, units: Units) -> Self {
        let rate = |rate: MassPerArea| rate_number(rate, units);
        let account = feeding.account(nutrient);
        let still = |published: MassPerArea| rate((published - account.credited).max(MassPerArea::ZERO));
        let wanted = feeding.wants.of(nutrient).zip(account.to_give);
        let wanted = wanted.map(|(want, to_give)| (rate(to_give), still(want.low), still(want.high)));
        let course = Course::of(feeding, nutrient);
        let (from, sum) = course.done.last().map_or((0.0, 0.0), |last| (last.at, rate(last.sum)));
        let has_ahead = !course.ahead.is_empty();
        let planned = stairs([0.0, 0.0], &course.planned, Some(1.0), units);
        let done = stairs([0.0, 0.0], &course.done, (!has_ahead).then_some(1.0), units);
        let ahead = stairs([from, sum], &course.ahead, Some(1.0), units);
        let top = [&planned, &done, &ahead].into_iter().flatten().map(|point| point[1]);
        let top = top
            .chain(wanted.map(|wanted| wanted.0.max(wanted.2)))
            .fold(0.0, f64::max);
        Self {
            wanted,
            planned: if course.planned.is_empty() { Vec::new() } else { planned },
            done: if course.done.is_empty() { Vec::new() } else { done },
            ahead: if has_ahead { ahead } else { Vec::new() },
            names: names(&course, units),
            // Room over the highest line for the name of a step.
            top: if top > 0.0 { top * 1.22 } else { 1.0 },
        }
    }
}

/// The steps as a line: level until a step, then straight up; level to the end at last.
fn stairs(from: [f64; 2], steps: &[CourseStep], to: Option<f64>, units: Units) -> Vec<[f64; 2]> {
    let mut line = vec![from];
    let mut level = from[1];
    for step in steps {
        line.push([step.at, level]);
        level = rate_number(step.sum, units);
        line.push([step.at, level]);
    }
    line.extend(to.map(|to| [to, level]));
    // A stroke of no length has no direction to be drawn in.
    line.dedup();
    line
}

/// The names of the steps, each once. Steps too near each other to be named apart share a line at the top of the last.
fn names(course: &Course, units: Units) -> Vec<([f64; 2], String)> {
    let mut named: Vec<([f64; 2], Vec<&str>)> = Vec::new();
    for step in course.done.iter().chain(&course.ahead) {
        if named.iter().any(|(_, names)| names.contains(&step.name.as_str())) {
            continue;
        }
        let at = [step.at, rate_number(step.sum, units)];
        match named.last_mut() {
            Some((last, names)) if step.at - last[0] < TOO_NEAR => {
                *last = at;
                names.push(&step.name);
            }
            _ => named.push((at, vec![&step.name])),
        }
    }
    let words = |names: Vec<&str>| match names.as_slice() {
        [only] => (*only).to_owned(),
        [first, rest @ ..] => format!("{first} and {} more", rest.len()),
        [] => String::new(),
    };
    named.into_iter().map(|(at, names)| (at, words(names))).collect()
}

/// Steps nearer than this part of the season have no room for a name each.
const TOO_NEAR: f64 = 0.04;

/// Draws the plot into all the room that is left.
pub(super) fn show(ui: &mut Ui, bed: &Bed, feeding: &BedFeeding, nutrient: Nutrient, units: Units) {
    let colours = theme::colours(ui.theme_in_force());
    let drawn = Drawn::of(feeding, nutrient, units);
    let nothing = drawn.wanted.is_none() && drawn.planned.is_empty() && drawn.done.is_empty();
    if nothing {
        form::follows(
            ui,
            format!(
                "Nobody says what the bed wants of {}, and nothing is put down.",
                nutrient.name()
            ),
        );
        return;
    }
    let ticks = axis::ticks(bed, feeding);
    let marks = axis::marks(&ticks);
    let top = drawn.top;
    let unit = rate_unit(units);
    ui.style_mut()
        .text_styles
        .insert(egui::TextStyle::Body, FontId::proportional(12.0));
    let height = (ui.available_height() - 2.0).max(120.0);
    let shown = Plot::new(("account", bed.id, nutrient.name()))
        .height(height)
        .allow_zoom(false)
        .allow_scroll(false)
        .allow_drag(false)
        .allow_boxed_zoom(false)
        .allow_double_click_reset(false)
        .show_background(false)
        .show_grid([true, true])
        .grid_color(colours.line)
        .show_x(false)
        .show_y(false)
        .set_margin_fraction(Vec2::ZERO)
        .x_grid_spacer(move |_| marks.clone())
        .x_axis_formatter(move |mark, _| axis::words_at(&ticks, mark.value))
        .y_grid_spacer(move |_| levels(top))
        .y_axis_formatter(|mark, _| number(mark.value, 1))
        .y_axis_label(RichText::new(format!("{} ({unit})", nutrient.name())).size(12.0))
        .show(ui, |plot| {
            plot.set_plot_bounds_x(-MARGIN..=1.0 + MARGIN);
            plot.set_plot_bounds_y(0.0..=top);
            wanted(plot, &drawn, &colours, units);
            for (kind, line) in [
                (Kind::Planned, &drawn.planned),
                (Kind::Ahead, &drawn.ahead),
                (Kind::Done, &drawn.done),
            ] {
                stroke(plot, kind, line, &colours);
            }
            for (at, name) in &drawn.names {
                named(plot, &drawn, *at, name, &colours);
            }
            plot.pointer_coordinate()
        });
    let response = shown.response;
    let words = spoken(&drawn, nutrient, units);
    response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Image, true, &words));
    if let Some(point) = shown.inner.filter(|_| response.hovered()) {
        response.on_hover_text_at_pointer(hovered(&drawn, feeding, point.x, units));
    }
}

/// One line of the account. A solid one is drawn stroke by stroke with dots at its corners: drawn in one go, the space
/// between its strokes is filled where they meet square.
fn stroke(plot: &mut egui_plot::PlotUi<'_>, kind: Kind, line: &[[f64; 2]], colours: &Colours) {
    let colour = kind.colour(colours);
    let part = |points: Vec<[f64; 2]>| {
        Line::new(kind.name(), points)
            .color(colour)
            .width(kind.width())
            .style(kind.style())
            .allow_hover(false)
    };
    if kind.style() != LineStyle::Solid {
        if line.len() > 1 {
            plot.line(part(line.to_vec()));
        }
        return;
    }
    for ends in line.windows(2) {
        plot.line(part(ends.to_vec()));
    }
    if let Some(corners) = line.get(1..line.len().saturating_sub(1))
        && !corners.is_empty()
    {
        let dots = Points::new(kind.name(), corners.to_vec());
        plot.points(dots.radius(kind.width() / 2.0).color(colour).allow_hover(false));
    }
}

/// The name of a step at its top. To the left of it there is always room, but for the first.
fn named(plot: &mut egui_plot::PlotUi<'_>, drawn: &Drawn, at: [f64; 2], name: &str, colours: &Colours) {
    let [x, y] = at;
    let near = drawn.top * 0.1;
    let is_near = |level: f64| level >= y && level - y < near;
    let below = drawn.wanted.is_some_and(|wanted| is_near(wanted.0));
    let anchor = match (x < FIRST, below) {
        (true, false) => Align2::LEFT_BOTTOM,
        (true, true) => Align2::LEFT_TOP,
        (false, false) => Align2::RIGHT_BOTTOM,
        (false, true) => Align2::RIGHT_TOP,
    };
    let aside = if x < FIRST { 0.008 } else { -0.008 };
    let words = RichText::new(name).size(12.0);
    let place = PlotPoint::new(
        x + aside,
        if below {
            y - drawn.top * 0.02
        } else {
            y + drawn.top * 0.01
        },
    );
    plot.text(
        Text::new("", place, words)
            .color(colours.strong)
            .anchor(anchor)
            .allow_hover(false),
    );
}

/// Steps before this part of the season have no room to their left.
const FIRST: f64 = 0.15;

/// The level that is wanted, and the published range around it.
fn wanted(plot: &mut egui_plot::PlotUi<'_>, drawn: &Drawn, colours: &Colours, units: Units) {
    let Some((level, low, high)) = drawn.wanted else { return };
    if low < high {
        // Without a name: the plot would write it upright into the band.
        let band = Span::new("", low..=high).axis(egui_plot::Axis::Y);
        plot.span(band.fill(key::band(colours)).border_width(0.0));
    }
    let kind = Kind::Wanted;
    plot.hline(
        HLine::new(kind.name(), level)
            .color(kind.colour(colours))
            .width(kind.width())
            .allow_hover(false),
    );
    let range = if low < high {
        format!(", range {} to {}", number(low, 1), number(high, 1))
    } else {
        String::new()
    };
    let words = format!("wanted {} {}{range}", number(level, 1), rate_unit(units));
    let words = RichText::new(words).size(12.0);
    // Under the line where the account ends close above it.
    let ends = [&drawn.planned, &drawn.done, &drawn.ahead];
    let mut ends = ends.into_iter().filter_map(|line| line.last());
    let is_taken = ends.any(|end| end[1] >= level - drawn.top * 0.01 && end[1] - level < drawn.top * 0.14);
    let anchor = if is_taken {
        Align2::RIGHT_TOP
    } else {
        Align2::RIGHT_BOTTOM
    };
    let at = PlotPoint::new(1.0 + MARGIN - 0.005, level);
    plot.text(
        Text::new("", at, words)
            .color(colours.strong)
            .anchor(anchor)
            .allow_hover(false),
    );
}

/// Four or five round levels from nothing up.
fn levels(top: f64) -> Vec<GridMark> {
    let rough = top / 4.5;
    let ten = 10f64.powf(rough.log10().floor());
    let step = [1.0, 2.0, 5.0, 10.0]
        .into_iter()
        .map(|times| times * ten)
        .find(|step| *step >= rough)
        .unwrap_or(rough);
    if !(step > 0.0 && step.is_finite()) {
        return Vec::new();
    }
    let mark = |k: u32| GridMark {
        value: f64::from(k) * step,
        step_size: step,
    };
    (0..12).map(mark).take_while(|mark| mark.value <= top).collect()
}

/// The height of a line at a place: that of the last step before it.
fn height_at(line: &[[f64; 2]], x: f64) -> Option<f64> {
    let first = line.first()?;
    let last = line.last()?;
    if x < first[0] || x > last[0] {
        return None;
    }
    line.iter().rev().find(|point| point[0] <= x).map(|point| point[1])
}

fn hovered(drawn: &Drawn, feeding: &BedFeeding, x: f64, units: Units) -> String {
    let x = x.clamp(0.0, 1.0);
    let mut lines = vec![form::heading(&axis::place_words(feeding, x))];
    let unit = rate_unit(units);
    for (kind, line) in [
        (Kind::Planned, &drawn.planned),
        (Kind::Done, &drawn.done),
        (Kind::Ahead, &drawn.ahead),
    ] {
        if let Some(height) = height_at(line, x) {
            let name = if kind == Kind::Ahead {
                "with what is ahead"
            } else {
                kind.name()
            };
            lines.push(format!("{name}: {} {unit}", number(height, 1)));
        }
    }
    lines.join("\n")
}

/// The plot in words, for those who cannot see it.
fn spoken(drawn: &Drawn, nutrient: Nutrient, units: Units) -> String {
    let unit = rate_unit(units);
    let end = |line: &[[f64; 2]]| line.last().map_or(0.0, |point| point[1]);
    let wanted = drawn.wanted.map_or_else(
        || "nobody says what is wanted".to_owned(),
        |wanted| format!("{} {unit} still wanted", number(wanted.0, 1)),
    );
    format!(
        "Account of {}: {wanted}, {} planned, {} done",
        nutrient.name(),
        number(end(&drawn.planned), 1),
        number(end(&drawn.done), 1)
    )
}
