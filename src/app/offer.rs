//! The offer at the start: unsaved work that was kept, to take up or to leave.

use egui::{Id, RichText, Ui};

use super::command::Command;
use super::form;
use super::keeping::Keeping;
use super::theme;
use super::wording::worded;

/// Draws the offer at the foot of the window. Gives back whether it stays.
pub(super) fn show(ui: &mut Ui, keeping: &Keeping, out: &mut Vec<Command>) -> bool {
    let mut stays = true;
    egui::Window::new("Unsaved work")
        .id(Id::unique("unsaved work"))
        .title_bar(false)
        .resizable(false)
        .anchor(egui::Align2::CENTER_BOTTOM, egui::vec2(0.0, -24.0))
        .show(ui.ctx(), |ui| {
            ui.set_width(420.0);
            for (place, rescued) in keeping.offers.iter().enumerate() {
                let file = rescued.original.as_ref().and_then(|path| path.file_name());
                let file = file.map_or_else(
                    || "It was in no file yet.".to_owned(),
                    |file| format!("It belongs to {}.", file.to_string_lossy()),
                );
                match &rescued.layout {
                    Ok(layout) => {
                        let words = format!("Unsaved work of {} was kept", layout.name);
                        ui.label(RichText::new(words).font(theme::bold(15.0)));
                        form::follows(ui, file);
                    }
                    Err(error) => {
                        ui.label(RichText::new("Unsaved work was kept, but cannot be read").font(theme::bold(15.0)));
                        form::wrong(ui, &worded(error));
                    }
                }
                ui.horizontal(|ui| {
                    if rescued.layout.is_ok() && ui.button("Take it up").clicked() {
                        out.push(Command::TakeUp(place));
                    }
                    if ui
                        .button("Leave it")
                        .on_hover_text("It stays, and is offered at the next start")
                        .clicked()
                    {
                        stays = false;
                    }
                    if ui.button("Throw it away").clicked() {
                        out.push(Command::ThrowAway(place));
                    }
                });
                ui.add_space(6.0);
            }
        });
    stays && !keeping.offers.is_empty()
}
