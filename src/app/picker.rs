//! Choosing one of many by typing part of its name: crops, cultivars and materials.

use egui::{Id, Key, Popup, PopupCloseBehavior, Response, RichText, TextEdit, Ui};

use super::form;
use super::matching::{other_names, rank_any};
use super::theme::{self, ThemeInForce as _};
use crate::catalog::Crop;
use crate::layout::Layout;
use crate::plan::CropBook;

/// Width of the button at the end of a field that may be picked from.
pub(super) const OFFERS_WIDTH: f32 = 26.0;

/// One of the things to choose from.
#[derive(Clone, Debug)]
pub(super) struct Choice {
    /// Its name.
    pub(super) name: String,
    /// A few words about it; may be empty.
    pub(super) note: String,
    /// Other names by which it is found; shown in place of the note when it was found by one.
    pub(super) others: Vec<String>,
    /// Whether it is on the layout already, and so goes before those that answer as well and are not.
    pub(super) in_use: bool,
}

impl Choice {
    /// A crop of the crop book.
    pub(super) fn of_crop(crop: &Crop, book: &CropBook, layout: &Layout) -> Self {
        let planted = layout.beds.iter().filter_map(|bed| bed.planting.as_ref());
        Self {
            in_use: planted.map(|planting| &planting.crop).any(|of_bed| *of_bed == crop.id),
            name: crop.name.clone(),
            note: if book.is_own(&crop.id) {
                "yours".to_owned()
            } else {
                crop.family.clone()
            },
            others: other_names(crop),
        }
    }

    /// Something with one name.
    pub(super) fn named(name: impl Into<String>, note: impl Into<String>) -> Self {
        Self {
            name: name.into(),
            note: note.into(),
            others: Vec::new(),
            in_use: false,
        }
    }
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
    popup(ui, id, label, &response, choices, width)
}

/// A small button at the end of a field that opens a list of what the field may hold. Gives back the place of what
/// was picked.
pub(super) fn offers(ui: &mut Ui, id: Id, label: &str, choices: &[Choice]) -> Option<usize> {
    let button = egui::Button::new("").min_size(egui::vec2(OFFERS_WIDTH, 26.0));
    let response = ui
        .add(button)
        .on_hover_text(format!("Those that are known: {}", choices.len()));
    let name = format!("Known {label}");
    response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Button, true, &name));
    let middle = response.rect.center();
    let colour = theme::colours(ui.theme_in_force()).soft;
    let corners = [(-4.0, -2.0), (4.0, -2.0), (0.0, 3.0)].map(|(x, y)| middle + egui::vec2(x, y));
    let triangle = egui::Shape::convex_polygon(corners.to_vec(), colour, egui::Stroke::NONE);
    ui.painter().add(triangle);
    popup(ui, id, label, &response, choices, 0.0)
}

fn popup(ui: &Ui, id: Id, label: &str, button: &Response, choices: &[Choice], width: f32) -> Option<usize> {
    let opened = button.clicked();
    if opened {
        ui.data_mut(|data| data.insert_temp(id, Search::default()));
    }
    Popup::from_toggle_button_response(button)
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
    let mut picked = taken.then(|| matches.get(search.at).map(|(index, _)| *index)).flatten();
    ui.add_space(4.0);
    egui::ScrollArea::vertical()
        .max_height(300.0)
        // After a short answer the popup has shrunk, and a longer one needs its room again.
        .min_scrolled_height(300.0)
        .auto_shrink([false, true])
        .show(ui, |ui| {
            ui.spacing_mut().item_spacing.y = 1.0;
            if matches.is_empty() {
                form::follows(ui, "nothing of that name");
            }
            for (place, &(index, other)) in matches.iter().enumerate() {
                let Some(choice) = choices.get(index) else { continue };
                let note = other.unwrap_or(&choice.note);
                let line = form::list_line(ui, place == search.at, &choice.name, note);
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

/// Places of the choices that have the text in one of their names, the best answers first; with the other name, where
/// that is the one that has it.
fn matching<'a>(choices: &'a [Choice], text: &str) -> Vec<(usize, Option<&'a str>)> {
    let text = text.trim().to_lowercase();
    let mut found: Vec<_> = choices
        .iter()
        .enumerate()
        .filter_map(|(index, choice)| {
            let (rank, other) = rank_any(&choice.name, &choice.others, &text)?;
            Some((order(choice, rank, &text), index, other))
        })
        .collect();
    found.sort_by_key(|(order, index, _)| (*order, *index));
    found.into_iter().map(|(_, index, other)| (index, other)).collect()
}

/// What the answers are put in order by: the very name first, then what is on the layout and has a word that begins like
/// the text, then how well the name answers, and of names that begin alike the shorter.
fn order(choice: &Choice, rank: u8, text: &str) -> (bool, bool, u8, usize) {
    if text.is_empty() {
        return (false, false, rank, 0);
    }
    let is_name = choice.name.to_lowercase() == text;
    let is_near = choice.in_use && rank <= OF_A_WORD;
    let length = if rank == 0 { choice.name.chars().count() } else { 0 };
    (!is_name, !is_near, rank, length)
}

/// The last rank of names that have a word which begins like the text.
const OF_A_WORD: u8 = 1;
