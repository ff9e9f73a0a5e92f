//! Choosing one of many by typing part of its name: crops and materials.

use egui::{Id, Key, Popup, PopupCloseBehavior, RichText, TextEdit, Ui};

use super::form;
use super::theme::{self, ThemeInForce as _};

/// One of the things to choose from.
#[derive(Clone, Debug)]
pub(super) struct Choice {
    /// Its name.
    pub(super) name: String,
    /// A few words about it; may be empty.
    pub(super) note: String,
}

/// What is typed into the search, and which of the matches Enter takes.
#[derive(Clone, Default)]
struct Search {
    text: String,
    at: usize,
}

/// A button that shows what is chosen and opens a list to search. Gives back the place of a new choice.
pub(super) fn picker(ui: &mut Ui, id: Id, label: &str, current: &str, choices: &[Choice], width: f32) -> Option<usize> {
    let colours = theme::colours(ui.theme_in_force());
    let words = if current.is_empty() {
        RichText::new("choose…").color(colours.soft)
    } else {
        RichText::new(current)
    };
    let button = egui::Button::new(words).wrap().min_size(egui::vec2(width, 26.0));
    let response = ui
        .allocate_ui_with_layout(
            egui::vec2(width, 26.0),
            egui::Layout::left_to_right(egui::Align::Center)
                .with_main_align(egui::Align::Min)
                .with_main_justify(true),
            |ui| ui.add(button),
        )
        .inner;
    let name = format!("{label} {current}");
    response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Button, true, name.trim_end()));
    let response = if current.is_empty() {
        response
    } else {
        response.on_hover_text(current)
    };
    if response.clicked() {
        ui.data_mut(|data| data.insert_temp(id, Search::default()));
    }
    let opened = response.clicked();
    Popup::from_toggle_button_response(&response)
        .close_behavior(PopupCloseBehavior::CloseOnClickOutside)
        .width(width.max(280.0))
        .show(|ui| {
            let picked = list(ui, id, label, choices, opened);
            if picked.is_some() {
                ui.close();
            }
            picked
        })
        .and_then(|shown| shown.inner)
}

fn list(ui: &mut Ui, id: Id, label: &str, choices: &[Choice], opened: bool) -> Option<usize> {
    let mut search: Search = ui.data(|data| data.get_temp(id)).unwrap_or_default();
    let up = ui.input_mut(|input| input.consume_key(egui::Modifiers::NONE, Key::ArrowUp));
    let down = ui.input_mut(|input| input.consume_key(egui::Modifiers::NONE, Key::ArrowDown));
    let field = ui.add(
        TextEdit::singleline(&mut search.text)
            .id(id.with("search"))
            .hint_text("Type part of a name")
            .desired_width(f32::INFINITY),
    );
    let field = field.accessible_name(format!("Find {}", label.to_lowercase()));
    if opened {
        field.request_focus();
    }
    if field.changed() {
        search.at = 0;
    }
    let matches = matching(choices, &search.text);
    if down {
        search.at = (search.at + 1).min(matches.len().saturating_sub(1));
    }
    if up {
        search.at = search.at.saturating_sub(1);
    }
    let taken = !opened && field.lost_focus() && ui.input(|input| input.key_pressed(Key::Enter));
    let mut picked = taken.then(|| matches.get(search.at).copied()).flatten();
    ui.add_space(4.0);
    egui::ScrollArea::vertical()
        .max_height(300.0)
        .auto_shrink([false, true])
        .show(ui, |ui| {
            ui.spacing_mut().item_spacing.y = 1.0;
            if matches.is_empty() {
                form::follows(ui, "nothing of that name");
            }
            for (place, &index) in matches.iter().enumerate() {
                let Some(choice) = choices.get(index) else { continue };
                let line = form::list_line(ui, place == search.at, &choice.name, &choice.note);
                if (up || down) && place == search.at {
                    line.scroll_to_me(None);
                }
                if line.clicked() {
                    picked = Some(index);
                }
            }
        });
    ui.data_mut(|data| data.insert_temp(id, search));
    picked
}

/// Places of the choices that have the text in their name, those that start with it first.
pub(super) fn matching(choices: &[Choice], text: &str) -> Vec<usize> {
    let text = text.trim().to_lowercase();
    let rank = |choice: &Choice| {
        let name = choice.name.to_lowercase();
        if name.starts_with(&text) {
            Some(0)
        } else if name.split([' ', '-', '(']).any(|word| word.starts_with(&text)) {
            Some(1)
        } else if name.contains(&text) {
            Some(2)
        } else {
            None
        }
    };
    let mut found: Vec<(u8, usize)> = choices
        .iter()
        .enumerate()
        .filter_map(|(index, choice)| Some((rank(choice)?, index)))
        .collect();
    found.sort();
    found.into_iter().map(|(_, index)| index).collect()
}
