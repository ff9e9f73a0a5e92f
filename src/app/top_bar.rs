//! The bar on top: what is being laid out, whether it is saved, the way back, the finder and the heads-up.

use egui::{Align, Button, Layout as Direction, RichText, Stroke, Ui};

use super::action::Action;
use super::command::Command;
use super::desk::Desk;
use super::settings::Settings;
use super::theme::{self, ThemeInForce as _};
use crate::layout::Item;

/// Draws the bar.
pub(super) fn show(ui: &mut Ui, desk: &Desk, settings: &Settings, out: &mut Vec<Command>) {
    let colours = theme::colours(ui.theme_in_force());
    ui.horizontal_centered(|ui| {
        menu(ui, settings, out);
        title(ui, desk, out);
        let state = saved_words(desk);
        ui.label(RichText::new(state.0).size(13.0).color(colours.soft))
            .on_hover_text(state.1);
        ui.with_layout(Direction::right_to_left(Align::Center), |ui| {
            heads_up(ui, desk, out);
            ui.add_space(8.0);
            find(ui, out);
            ui.add_space(8.0);
            ui.with_layout(Direction::left_to_right(Align::Center), |ui| {
                ui.add_space(16.0);
                way_back(ui, desk, [Action::Undo, Action::Redo], out);
                if let Some(said) = desk.said.as_ref().filter(|said| !said.wrong) {
                    ui.add_space(8.0);
                    said_words(ui, &said.text);
                }
            });
        });
    });
}

/// What was said last, on one line; cut at the end of a word where there is no room, with the whole where the pointer rests.
fn said_words(ui: &mut Ui, text: &str) {
    let soft = theme::colours(ui.theme_in_force()).soft;
    let font = egui::FontId::proportional(13.0);
    let mut job = egui::text::LayoutJob::simple(text.to_owned(), font, soft, ui.available_width());
    job.wrap.max_rows = 1;
    let words = ui.painter().layout_job(job);
    let is_cut = words.elided;
    let label = ui.label(words);
    label.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Label, true, text));
    if is_cut {
        label.on_hover_text(text);
    }
}

/// What went wrong last, in full, on a strip below the bar.
pub(super) fn wrong_strip(ui: &mut Ui, desk: &Desk, out: &mut Vec<Command>) {
    let Some(said) = desk.said.as_ref().filter(|said| said.wrong) else {
        return;
    };
    let colours = theme::colours(ui.theme_in_force());
    let frame = egui::Frame::new()
        .fill(colours.accent_tint)
        .inner_margin(egui::Margin::symmetric(20, 8));
    egui::Panel::top("what went wrong")
        .frame(frame)
        .show_separator_line(false)
        .show(ui, |ui| {
            ui.horizontal(|ui| {
                let room = ui.available_width() - 70.0;
                ui.allocate_ui_with_layout(egui::vec2(room, 20.0), Direction::top_down(Align::Min), |ui| {
                    ui.label(RichText::new(&said.text).color(colours.accent));
                });
                ui.with_layout(Direction::right_to_left(Align::Center), |ui| {
                    if ui.button("Seen").on_hover_text("Put this message away").clicked() {
                        out.push(Command::Say(String::new()));
                    }
                });
            });
        });
}

fn menu(ui: &mut Ui, settings: &Settings, out: &mut Vec<Command>) {
    ui.menu_button("Menu", |ui| {
        ui.set_min_width(240.0);
        let item = |ui: &mut Ui, action: Action, out: &mut Vec<Command>| {
            let mut button = Button::new(action.label());
            if let Some(shortcut) = action.shortcut() {
                button = button.shortcut_text(ui.ctx().format_shortcut(&shortcut));
            }
            if ui.add(button).on_hover_text(action.tooltip()).clicked() {
                out.push(Command::Act(action));
                ui.close();
            }
        };
        item(ui, Action::New, out);
        item(ui, Action::Open, out);
        ui.menu_button("Open again", |ui| {
            if settings.recent.is_empty() {
                ui.label(RichText::new("no files yet").weak());
            }
            for path in &settings.recent {
                let name = path
                    .file_stem()
                    .map_or_else(String::new, |name| name.to_string_lossy().into_owned());
                if ui.button(name).on_hover_text(path.display().to_string()).clicked() {
                    out.push(Command::OpenPath(path.clone()));
                    ui.close();
                }
            }
        });
        item(ui, Action::Save, out);
        item(ui, Action::SaveAs, out);
        ui.separator();
        item(ui, Action::Print, out);
        item(ui, Action::SaveTable, out);
        item(ui, Action::OrderList, out);
        item(ui, Action::FertilizerList, out);
        ui.separator();
        item(ui, Action::CropBook, out);
        item(ui, Action::Shed, out);
        item(ui, Action::Mix, out);
        ui.separator();
        item(ui, Action::Units, out);
        item(ui, Action::Theme, out);
        ui.separator();
        item(ui, Action::Quit, out);
    });
}

/// Name and season; a click opens their card.
fn title(ui: &mut Ui, desk: &Desk, out: &mut Vec<Command>) {
    let colours = theme::colours(ui.theme_in_force());
    let layout = desk.layout();
    let mut job = egui::text::LayoutJob::default();
    let part = |font, color| egui::TextFormat {
        font_id: font,
        color,
        valign: Align::Center,
        ..Default::default()
    };
    job.append(&layout.name, 0.0, part(theme::bold(16.0), colours.strong));
    let season = format!("season {}", layout.season);
    job.append(&season, 10.0, part(egui::FontId::proportional(14.0), colours.soft));
    job.wrap = egui::text::TextWrapping::truncate_at_width(340.0);
    let button = ui.add(Button::new(job).frame_when_inactive(false));
    if button.on_hover_text("Change name, season and place").clicked() {
        out.push(Command::Choose(Some(Item::Layout)));
    }
}

/// Whether the layout is in its file, and where that is.
fn saved_words(desk: &Desk) -> (&'static str, String) {
    match (&desk.path, desk.is_unsaved()) {
        (None, false) => ("", String::new()),
        (None, true) => (
            "not saved yet",
            "It is kept meanwhile, and offered at the next start".to_owned(),
        ),
        (Some(path), false) => ("saved", path.display().to_string()),
        (Some(path), true) => ("changed since it was saved", path.display().to_string()),
    }
}

/// The head of a page that lies over the window: title, the way back, and closing. Gives back whether the page stays open.
pub(super) fn page_head(ui: &mut Ui, title: &str, desk: &Desk, out: &mut Vec<Command>) -> bool {
    let mut stays = true;
    ui.horizontal_centered(|ui| {
        ui.label(RichText::new(title).font(theme::bold(19.0)));
        ui.with_layout(Direction::right_to_left(Align::Center), |ui| {
            stays = !ui.button("Close").clicked();
            ui.add_space(12.0);
            // From the right, so the last goes first.
            way_back(ui, desk, [Action::Redo, Action::Undo], out);
        });
    });
    let typing = ui.ctx().text_edit_focused();
    for action in [Action::Redo, Action::Undo] {
        if let Some(shortcut) = action.shortcut().filter(|_| !typing)
            && ui.ctx().input_mut(|input| input.consume_shortcut(&shortcut))
        {
            out.push(Command::Act(action));
        }
    }
    stays
}

pub(super) fn way_back(ui: &mut Ui, desk: &Desk, actions: [Action; 2], out: &mut Vec<Command>) {
    let history = desk.history();
    for action in actions {
        let label = if action == Action::Undo {
            history.undo_label()
        } else {
            history.redo_label()
        };
        let words = match label {
            Some(label) => format!("{}: {label}", action.label()),
            None => action.label().to_owned(),
        };
        let short = shortened(&words);
        let is_cut = short != words;
        let whole = words;
        let words = RichText::new(short).size(13.0);
        let button = Button::new(words).frame_when_inactive(false);
        let shortcut = action
            .shortcut()
            .map(|shortcut| ui.ctx().format_shortcut(&shortcut))
            .unwrap_or_default();
        if ui
            .add_enabled(label.is_some(), button)
            .on_hover_text(match is_cut {
                true => format!("{whole}\n{} ({shortcut})", action.tooltip()),
                false => format!("{} ({shortcut})", action.tooltip()),
            })
            .clicked()
        {
            out.push(Command::Act(action));
        }
    }
}

/// Long names of steps are cut, so that the bar keeps its room.
fn shortened(words: &str) -> String {
    const MOST: usize = 36;
    if words.chars().count() <= MOST {
        return words.to_owned();
    }
    let mut cut: String = words.chars().take(MOST - 1).collect();
    // At the end of a word, where there is one.
    if let Some(end) = cut.rfind(' ') {
        cut.truncate(end);
    }
    cut.push('…');
    cut
}

fn find(ui: &mut Ui, out: &mut Vec<Command>) {
    let soft = theme::colours(ui.theme_in_force()).soft;
    let shortcut = Action::Find
        .shortcut()
        .map(|shortcut| ui.ctx().format_shortcut(&shortcut))
        .unwrap_or_default();
    let button = Button::new(RichText::new("Find an action or a bed…").size(13.0).color(soft))
        .right_text(RichText::new(shortcut).small().color(soft))
        .min_size(egui::vec2(230.0, 26.0));
    let response = ui.add(button);
    response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Button, true, Action::Find.label()));
    if response.clicked() {
        out.push(Command::Act(Action::Find));
    }
}

fn heads_up(ui: &mut Ui, desk: &Desk, out: &mut Vec<Command>) {
    let colours = theme::colours(ui.theme_in_force());
    let count = desk.plan().heads_up.len();
    let mut button = Button::new(if count == 0 {
        RichText::new("no heads-up").size(13.0).color(colours.soft)
    } else {
        let words = super::heads_up::count_words(count);
        RichText::new(words).font(theme::bold(13.0)).color(colours.accent)
    })
    .corner_radius(13)
    .min_size(egui::vec2(110.0, 26.0));
    if count > 0 {
        button = button
            .fill(colours.accent_tint)
            .stroke(Stroke::new(1.0, colours.accent.gamma_multiply(0.5)));
    }
    if ui.add(button).on_hover_text(Action::HeadsUp.tooltip()).clicked() {
        out.push(Command::Act(Action::HeadsUp));
    }
}
