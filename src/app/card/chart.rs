//! Row feet by direction: what the bed would hold if its rows ran another way. Worked out off the window's thread.

use std::collections::BTreeMap;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::mpsc::{Receiver, TryRecvError, channel};

use egui::Ui;
use egui_plot::{GridMark, Line, Plot, PlotPoint, Points, VLine};

use crate::app::form;
use crate::app::theme::{self, ThemeInForce as _};
use crate::app::wording::row_length;
use crate::geometry::{Region, RowRule, fit_rows};
use crate::layout::{Bed, BedId};
use crate::plan::BedPlan;
use crate::quantity::{Bearing, Length, Units};

/// Directions tried over half a turn; rows run the same both ways.
const DIRECTIONS: u32 = 60;
const HALF_TURN: f64 = 180.0;

/// Row feet by direction for the beds that were looked at.
#[derive(Default)]
pub(crate) struct Sweeps {
    of_bed: BTreeMap<BedId, Sweep>,
}

/// Row feet by direction over one ground.
struct Sweep {
    ground: Region,
    rule: RowRule,
    state: State,
}

enum State {
    Running {
        answer: Receiver<Vec<(f64, Length)>>,
        stop: Arc<AtomicBool>,
    },
    Done(Vec<(f64, Length)>),
    Failed,
}

impl Drop for Sweep {
    fn drop(&mut self) {
        if let State::Running { stop, .. } = &self.state {
            stop.store(true, Ordering::Relaxed);
        }
    }
}

impl Sweeps {
    /// The sweep of the bed as far as it is there; starts one when the ground or the rule has changed.
    fn of(&mut self, bed: &Bed, plan: &BedPlan, hold: bool, ctx: &egui::Context) -> Option<&[(f64, Length)]> {
        let rule = RowRule {
            bearing: Bearing::NORTH,
            spacing: bed.row_spacing,
            edge_margin: bed.edge_margin_in_force(),
            remainder: bed.remainder,
            headland: bed.headland,
            shortest: bed.shortest,
        };
        let fresh = self
            .of_bed
            .get(&bed.id)
            .is_some_and(|sweep| sweep.rule == rule && sweep.ground == plan.rows_ground);
        if !fresh && !hold {
            self.of_bed
                .insert(bed.id, Sweep::start(plan.rows_ground.clone(), rule, ctx));
        }
        let sweep = self.of_bed.get_mut(&bed.id)?;
        sweep.poll();
        match &sweep.state {
            State::Done(lengths) => Some(lengths),
            State::Running { .. } | State::Failed => None,
        }
    }
}

impl Sweep {
    fn start(ground: Region, rule: RowRule, ctx: &egui::Context) -> Self {
        let (sender, answer) = channel();
        let stop = Arc::new(AtomicBool::new(false));
        let (worker_ground, worker_stop, ctx) = (ground.clone(), stop.clone(), ctx.clone());
        let worker = std::thread::Builder::new()
            .name("row feet by direction".to_owned())
            .spawn(move || {
                if let Some(lengths) = sweep(&worker_ground, rule, &worker_stop) {
                    let _ = sender.send(lengths);
                    ctx.request_repaint();
                }
            });
        let state = if worker.is_ok() {
            State::Running { answer, stop }
        } else {
            State::Failed
        };
        Self { ground, rule, state }
    }

    fn poll(&mut self) {
        if let State::Running { answer, .. } = &self.state {
            match answer.try_recv() {
                Ok(lengths) => self.state = State::Done(lengths),
                Err(TryRecvError::Empty) => {}
                Err(TryRecvError::Disconnected) => self.state = State::Failed,
            }
        }
    }
}

/// Row length for each direction from 0 to 180 degrees; nothing when stopped or when no rows fit.
fn sweep(ground: &Region, rule: RowRule, stop: &AtomicBool) -> Option<Vec<(f64, Length)>> {
    let mut lengths = Vec::new();
    for index in 0..DIRECTIONS {
        if stop.load(Ordering::Relaxed) {
            return None;
        }
        let degrees = HALF_TURN * f64::from(index) / f64::from(DIRECTIONS);
        let turned = RowRule {
            bearing: Bearing::degrees(degrees),
            ..rule
        };
        lengths.push((degrees, fit_rows(ground, &turned).ok()?.total_length()));
    }
    let first = lengths.first().map(|(_, length)| *length)?;
    lengths.push((HALF_TURN, first));
    Some(lengths)
}

/// Draws the chart. Gives back the direction that was clicked.
pub(super) fn show(
    ui: &mut Ui,
    sweeps: &mut Sweeps,
    bed: &Bed,
    plan: &BedPlan,
    units: Units,
    hold: bool,
) -> Option<Bearing> {
    if plan.problem.is_some() || plan.rows_ground.is_empty() {
        return None;
    }
    let colours = theme::colours(ui.theme_in_force());
    ui.with_layout(egui::Layout::right_to_left(egui::Align::Min), |ui| {
        form::follows(
            ui,
            match units {
                Units::Customary => "row feet by direction",
                Units::Metric => "row metres by direction",
            },
        );
    });
    let now = bed.bearing.to_degrees() % HALF_TURN;
    let lengths: Vec<(f64, f64)> = sweeps
        .of(bed, plan, hold, ui.ctx())
        .unwrap_or_default()
        .iter()
        .map(|(degrees, length)| (*degrees, length.to_feet()))
        .collect();
    if lengths.is_empty() {
        let (rect, _) = ui.allocate_exact_size(egui::vec2(ui.available_width(), CHART_HEIGHT), egui::Sense::hover());
        ui.painter().hline(
            rect.x_range(),
            rect.bottom() - 16.0,
            egui::Stroke::new(1.0, colours.line),
        );
        return None;
    }
    let most = lengths.iter().map(|(_, length)| *length).fold(0.0, f64::max);
    let least = lengths.iter().map(|(_, length)| *length).fold(f64::INFINITY, f64::min);
    let room = (most - least).max(most * 0.05).max(1.0);
    let here = plan.totals.row_length.to_feet();
    let line: Vec<[f64; 2]> = lengths.iter().map(|(degrees, length)| [*degrees, *length]).collect();
    let compass = |mark: GridMark, _: &std::ops::RangeInclusive<f64>| match mark.value {
        value if value < 1.0 => "N–S".to_owned(),
        value if (value - 90.0).abs() < 1.0 => "E–W".to_owned(),
        value if value > 179.0 => "N–S".to_owned(),
        _ => String::new(),
    };
    ui.style_mut()
        .text_styles
        .insert(egui::TextStyle::Body, egui::FontId::proportional(11.0));
    let quarter = |value: f64| GridMark { value, step_size: 90.0 };
    let shown = Plot::new(("row feet by direction", bed.id))
        .height(CHART_HEIGHT)
        .allow_zoom(false)
        .allow_scroll(false)
        .allow_drag(false)
        .allow_boxed_zoom(false)
        .allow_double_click_reset(false)
        .show_background(false)
        .show_grid([false, false])
        .show_axes([true, false])
        .show_x(false)
        .show_y(false)
        .x_grid_spacer(move |_| vec![quarter(0.0), quarter(90.0), quarter(180.0)])
        .x_axis_formatter(compass)
        .set_margin_fraction(egui::Vec2::ZERO)
        .show(ui, |chart| {
            // Set anew every time: the chart would keep the bounds of the rule it was first drawn for.
            chart.set_plot_bounds_x(-8.0..=188.0);
            chart.set_plot_bounds_y(least - room * 0.25..=most + room * 0.25);
            chart.vline(VLine::new("now", now).color(colours.line).width(1.0));
            chart.line(Line::new("row feet", line).color(colours.soft).width(1.5));
            chart.points(
                Points::new("these rows", vec![[now, here]])
                    .radius(4.5)
                    .color(colours.accent),
            );
            chart.pointer_coordinate()
        });
    let response = shown.response.on_hover_cursor(egui::CursorIcon::PointingHand);
    let pointer: Option<PlotPoint> = shown.inner.filter(|_| response.hovered());
    let bearing = pointer.map(|point| Bearing::degrees(point.x.clamp(0.0, HALF_TURN).round()));
    response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Button, true, "Row feet by direction"));
    if let Some(bearing) = bearing {
        let far = |place: f64| (place - bearing.to_degrees()).abs();
        let nearest = lengths.iter().min_by(|one, other| far(one.0).total_cmp(&far(other.0)));
        let length = row_length(Length::feet(nearest.map_or(0.0, |(_, length)| *length)), units);
        let words = format!("{}, about {length}. Click to turn the rows.", bearing.show());
        response.clone().on_hover_text_at_pointer(words);
    }
    bearing.filter(|_| response.clicked())
}

const CHART_HEIGHT: f32 = 84.0;
