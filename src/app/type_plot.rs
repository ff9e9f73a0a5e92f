//! A plot from its two sides: typed in a moment, laid beside what is drawn already.

use egui::{Id, Key, RichText, TextEdit, Ui};

use super::command::Command;
use super::form;
use super::step::Step;
use super::theme::{self, ThemeInForce as _};
use crate::geometry::{Point, polygon};
use crate::layout::{Edit, Layout, Shape};
use crate::quantity::{Length, Units};

/// The dialog while it is open.
#[derive(Default)]
pub(super) struct TypePlot {
    name: String,
    along: String,
    deep: String,
    started: bool,
    /// What was wrong when Enter was pressed.
    asked: bool,
}

/// From the plots drawn already to the new one.
const BESIDE: Length = Length::metres(3.0);

/// Draws the dialog. Gives back whether it stays open.
pub(super) fn show(ui: &mut Ui, layout: &Layout, typed: &mut TypePlot, out: &mut Vec<Command>) -> bool {
    let units = layout.units;
    let mut stays = true;
    let modal = egui::Modal::new(Id::unique("plot from two sides"))
        .frame(theme::dialog(ui.style()))
        .backdrop_color(theme::DIM)
        .show(ui.ctx(), |ui| {
            ui.set_width(340.0);
            ui.label(RichText::new("Plot from two sides").font(theme::bold(17.0)));
            form::follows(ui, "A rectangle, to be dragged into its true shape afterwards.");
            ui.add_space(6.0);
            let example = match units {
                Units::Customary => ["62 ft", "48 ft"],
                Units::Metric => ["19 m", "14.5 m"],
            };
            let along = field(ui, "West to east", &mut typed.along, example[0]);
            let deep = field(ui, "South to north", &mut typed.deep, example[1]);
            let name = field(ui, "Name", &mut typed.name, &layout.next_plot_name());
            if !typed.started {
                along.request_focus();
                typed.started = true;
            }
            let sides = read_sides(&typed.along, &typed.deep, units);
            ui.add_space(4.0);
            let soft = theme::colours(ui.theme_in_force()).soft;
            match &sides {
                Ok((along, deep)) => {
                    ui.label(RichText::new((*along * *deep).show(units)).font(theme::bold(15.0)));
                }
                Err(sentence) if typed.asked => form::wrong(ui, sentence),
                Err(_) => {
                    ui.label(RichText::new("area").color(soft));
                }
            }
            ui.add_space(8.0);
            let entered = ui.input(|input| input.key_pressed(Key::Enter))
                && [&along, &deep, &name].into_iter().any(egui::Response::lost_focus);
            ui.horizontal(|ui| {
                let add = ui.button("Add plot").clicked() || entered;
                if add {
                    typed.asked = true;
                    match sides {
                        Ok((east, north)) => {
                            out.push(Command::Edit(new_plot(layout, &typed.name, east, north)));
                            out.push(Command::Step(Step::Rows));
                            stays = false;
                        }
                        Err(_) if Length::parse(&typed.along, units).is_err() => along.request_focus(),
                        Err(_) => deep.request_focus(),
                    }
                }
                if ui.button("Cancel").clicked() {
                    stays = false;
                }
            });
        });
    stays && !modal.should_close()
}

fn field(ui: &mut Ui, label: &str, text: &mut String, example: &str) -> egui::Response {
    form::line(ui, label, |ui| {
        let soft = theme::colours(ui.theme_in_force()).soft.gamma_multiply(0.7);
        let field = TextEdit::singleline(text)
            .id(Id::unique(("plot from two sides", label)))
            .hint_text(RichText::new(example).color(soft))
            .desired_width(180.0);
        ui.add(field).accessible_name(label)
    })
}

/// Both sides, each longer than nothing.
fn read_sides(along: &str, deep: &str, units: Units) -> Result<(Length, Length), String> {
    let read = |name: &str, text: &str| {
        let length = Length::parse(text, units).map_err(|error| format!("{name}: {error}"))?;
        if length <= Length::TOLERANCE {
            return Err(format!("{name} has to be longer than nothing"));
        }
        Ok(length)
    };
    Ok((read("West to east", along)?, read("South to north", deep)?))
}

/// A plot of that size beside what is drawn already, with a bed that fills it.
pub(super) fn new_plot(layout: &Layout, name: &str, east: Length, north: Length) -> Edit {
    let places = layout.plots.iter().flat_map(|plot| {
        let standing = plot.obstacles.iter().flat_map(|obstacle| match &obstacle.shape {
            Shape::Corners(corners) => corners.clone(),
            Shape::Circle { centre, radius } => vec![centre.offset(*radius, Length::ZERO)],
        });
        plot.outline.iter().copied().chain(standing)
    });
    let most_east = places.map(|place| place.x).fold(f64::NEG_INFINITY, f64::max);
    let low = if most_east.is_finite() {
        Point {
            x: most_east + BESIDE.to_metres(),
            y: 0.0,
        }
    } else {
        Point { x: 0.0, y: 0.0 }
    };
    let name = name.trim();
    Edit::AddPlotWithBed {
        name: (!name.is_empty()).then(|| name.to_owned()),
        outline: polygon::rectangle(low, low.offset(east, north)).to_vec(),
    }
}
