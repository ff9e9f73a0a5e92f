//! Heads-up: what a careful neighbour would mention. Each line says what, why and by which source, and goes to the
//! place. It never blocks.

use egui::{Frame, Margin, RichText, Sense, Stroke, Ui};

use super::action::Action;
use super::command::Command;
use super::desk::Desk;
use super::form;
use super::theme::{self, ThemeInForce as _};
use crate::plan::HeadsUp;

/// More lines than anyone reads; the rest is counted.
const MOST: usize = 200;

/// One heads-up on a tint. A click goes to the place.
pub(super) fn note(ui: &mut Ui, heads_up: &HeadsUp, out: &mut Vec<Command>) {
    let colours = theme::colours(ui.theme_in_force());
    let frame = Frame::new()
        .fill(colours.accent_tint)
        .stroke(Stroke::new(1.0, colours.accent.gamma_multiply(0.5)))
        .corner_radius(6)
        .inner_margin(Margin::symmetric(12, 8));
    let shown = frame.show(ui, |ui| {
        ui.set_width(ui.available_width());
        ui.spacing_mut().item_spacing.y = 3.0;
        let words = RichText::new(&heads_up.what)
            .font(theme::bold(13.0))
            .color(colours.accent);
        ui.add(egui::Label::new(words).selectable(false));
        ui.add(egui::Label::new(RichText::new(&heads_up.why).size(13.0)).selectable(false));
        ui.add(egui::Label::new(RichText::new(&heads_up.source).small().color(colours.soft)).selectable(false));
    });
    let response = shown
        .response
        .interact(Sense::click())
        .on_hover_cursor(egui::CursorIcon::PointingHand);
    let name = heads_up.what.clone();
    response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Button, true, &name));
    if response.clicked() {
        out.push(Command::GoTo(heads_up.about));
    }
}

/// The list of all of them, over the sheet's upper right corner.
pub(super) fn list(ui: &mut Ui, desk: &Desk, out: &mut Vec<Command>) {
    let plan = desk.plan().clone();
    let screen = ui.ctx().content_rect();
    let width = 400.0f32.min(screen.width() - 40.0);
    let area = egui::Area::new(egui::Id::unique("heads-up list"))
        .order(egui::Order::Foreground)
        .anchor(egui::Align2::RIGHT_TOP, egui::vec2(-16.0, 52.0));
    area.show(ui.ctx(), |ui| {
        Frame::window(ui.style()).show(ui, |ui| {
            ui.set_width(width);
            ui.horizontal(|ui| {
                ui.label(RichText::new(form::heading(&count_words(plan.heads_up.len()))).font(theme::bold(15.0)));
                ui.with_layout(egui::Layout::right_to_left(egui::Align::Center), |ui| {
                    if ui.button("Close").clicked() {
                        out.push(Command::Act(Action::HeadsUp));
                    }
                });
            });
            ui.add_space(4.0);
            if plan.heads_up.is_empty() {
                form::follows(ui, "Nothing that a careful neighbour would mention.");
            }
            egui::ScrollArea::vertical()
                .max_height(screen.height() - 160.0)
                .show(ui, |ui| {
                    ui.spacing_mut().item_spacing.y = 8.0;
                    for heads_up in plan.heads_up.iter().take(MOST) {
                        note(ui, heads_up, out);
                    }
                    if plan.heads_up.len() > MOST {
                        form::follows(ui, format!("and {} more", plan.heads_up.len() - MOST));
                    }
                });
        });
    });
}

/// "2 heads-up".
pub(super) fn count_words(count: usize) -> String {
    match count {
        0 => "no heads-up".to_owned(),
        count => format!("{count} heads-up"),
    }
}
