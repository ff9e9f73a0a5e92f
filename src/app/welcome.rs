//! The empty sheet: what to do first.

use egui::{Id, RichText, Ui};

use super::action::Action;
use super::command::Command;
use super::form;
use super::theme;

/// Draws the first steps over the middle of the empty sheet.
pub(super) fn show(ui: &mut Ui, over: egui::Rect, out: &mut Vec<Command>) {
    let area = egui::Area::new(Id::unique("welcome"))
        .order(egui::Order::Middle)
        .pivot(egui::Align2::CENTER_CENTER)
        .fixed_pos(over.center());
    area.show(ui.ctx(), |ui| {
        egui::Frame::window(ui.style())
            .shadow(egui::Shadow::NONE)
            .show(ui, |ui| {
                ui.set_width(360.0);
                ui.spacing_mut().item_spacing.y = 7.0;
                ui.label(RichText::new("Start with your ground").font(theme::bold(19.0)));
                ui.label("Type the two sides of a plot, or draw it. Rows, plants and seed are counted as you go.");
                ui.add_space(4.0);
                let mut offer = |ui: &mut Ui, action: Action, words: &str| {
                    let button = egui::Button::new(action.label()).min_size(egui::vec2(190.0, 28.0));
                    ui.horizontal(|ui| {
                        if ui.add(button).on_hover_text(action.tooltip()).clicked() {
                            out.push(Command::Act(action));
                        }
                        form::follows(ui, words);
                    });
                };
                offer(ui, Action::TypePlot, "say 62 by 48 ft");
                offer(ui, Action::DragPlot, "with the mouse");
                offer(ui, Action::CornerPlot, "for any shape");
                ui.add_space(4.0);
                form::rule(ui);
                offer(ui, Action::Open, "a layout from a file");
                offer(ui, Action::Sample, "drawn already, to look round");
            });
    });
}
