//! The lengths of sides as things that can be clicked and typed over: see [`side_lengths`](super::side_lengths).

use egui::{
    Align2, CornerRadius, FontId, Id, Key, Modifiers, Rect, Role, Sense, Stroke, StrokeKind, TextEdit, Ui, WidgetInfo,
    pos2, vec2,
};

use super::outline::Outline;
use super::pointer_words::{self, PointerWords, theme_of};
use super::side_lengths::{Measure, Sight, find};
use super::viewport::Viewport;
use crate::app::command::Command;
use crate::app::desk::Desk;
use crate::app::theme;
use crate::layout::{Edit, OutlineChange};
use crate::quantity::Length;

/// The length that is being typed.
#[derive(Clone, Debug)]
struct Typing {
    outline: Outline,
    side: usize,
    text: String,
    wrong: Option<String>,
    /// Whether the field still has to be given the keyboard.
    is_new: bool,
}

/// The measures on the sheet, and the one that is being typed over.
#[derive(Clone, Debug, Default)]
pub(super) struct Measures {
    typing: Option<Typing>,
}

impl Measures {
    /// Whether a length is being typed.
    pub(super) const fn is_typing(&self) -> bool {
        self.typing.is_some()
    }

    /// Stops typing without changing anything.
    pub(super) fn close(&mut self) {
        self.typing = None;
    }

    /// Shows the measures and reads what is typed over them.
    pub(super) fn show(&mut self, ui: &mut Ui, sight: &Sight, out: &mut Vec<Command>) {
        let (desk, viewport) = (sight.desk, sight.viewport);
        let measures = find(sight);
        for (index, measure) in measures.iter().enumerate() {
            let is_typed = self.typing.as_ref().is_some_and(|typing| typing.is_of(measure));
            if is_typed {
                let following = measures.get((index + 1) % measures.len());
                self.field(ui, desk, measure, following, viewport, out);
            } else {
                self.plate(ui, measure);
            }
        }
        // What is typed over has gone out of sight.
        if self
            .typing
            .as_ref()
            .is_some_and(|typing| !measures.iter().any(|measure| typing.is_of(measure)))
        {
            self.typing = None;
        }
    }

    /// Words that can be clicked.
    fn plate(&mut self, ui: &Ui, measure: &Measure) {
        // Dragging is sensed too, or a press would take hold of the sheet below at the same time.
        let response = ui.interact(measure.rect.expand(3.0), id_of(ui, measure), Sense::click_and_drag());
        response.widget_info(|| WidgetInfo::labeled(Role::Button, true, measure.name.clone()));
        let colours = theme::colours(theme_of(ui));
        let lit = response.hovered() || response.has_focus();
        let painter = ui.painter();
        if lit || !measure.drawn {
            let (fill, edge) = if lit {
                (colours.accent_tint, colours.accent)
            } else {
                (colours.paper, colours.line)
            };
            painter.rect(
                measure.rect.expand2(vec2(5.0, 2.0)),
                CornerRadius::same(4),
                fill,
                Stroke::new(1.0, edge),
                StrokeKind::Inside,
            );
            painter.text(
                measure.rect.center(),
                Align2::CENTER_CENTER,
                &measure.shown,
                FontId::proportional(12.0),
                colours.strong,
            );
        }
        if response.hovered() {
            ui.set_cursor_icon(egui::CursorIcon::Text);
        }
        if response.clicked() {
            self.typing = Some(Typing::of(measure));
        }
    }

    /// The field over the words.
    fn field(
        &mut self,
        ui: &mut Ui,
        desk: &Desk,
        measure: &Measure,
        following: Option<&Measure>,
        viewport: &Viewport,
        out: &mut Vec<Command>,
    ) {
        let Some(typing) = &mut self.typing else { return };
        let sheet = viewport.screen();
        let size = vec2(96.0, 26.0);
        let middle = pos2(
            measure.rect.center().x.clamp(
                sheet.left() + size.x / 2.0 + 4.0,
                (sheet.right() - size.x / 2.0 - 4.0).max(sheet.left() + size.x / 2.0 + 4.0),
            ),
            measure.rect.center().y.clamp(
                sheet.top() + size.y / 2.0 + 4.0,
                (sheet.bottom() - size.y / 2.0 - 4.0).max(sheet.top() + size.y / 2.0 + 4.0),
            ),
        );
        let rect = Rect::from_center_size(middle, size);
        let id = id_of(ui, measure).with("field");
        // Tab goes on to the next side, and must not leave the field by itself.
        let focused = ui.memory(|memory| memory.has_focus(id));
        let tab = focused && ui.input_mut(|input| input.consume_key(Modifiers::NONE, Key::Tab));
        let response = ui.put(
            rect,
            TextEdit::singleline(&mut typing.text)
                .id(id)
                .desired_width(size.x)
                .align(Align2::CENTER_CENTER),
        );
        response.widget_info(|| WidgetInfo::labeled(Role::TextInput, true, measure.name.clone()));
        if typing.is_new {
            response.request_focus();
            select_all(ui, id, &typing.text);
            typing.is_new = false;
            return;
        }
        if response.changed() {
            typing.wrong = None;
        }
        if let Some(sentence) = &typing.wrong {
            pointer_words::show_at(
                ui,
                &PointerWords::wrong(sentence.clone()),
                rect.left_bottom() - vec2(18.0, 12.0),
                sheet,
            );
        }
        if ui.input(|input| input.key_pressed(Key::Escape)) {
            self.typing = None;
            return;
        }
        if !(response.lost_focus() || tab) {
            return;
        }
        let (text, shown) = (typing.text.trim().to_owned(), measure.shown.trim());
        let done = if text == shown {
            Ok(())
        } else {
            set_length(desk, measure, &text).map(|edit| out.push(Command::Edit(edit)))
        };
        match done {
            Ok(()) => self.typing = following.filter(|_| tab).map(Typing::of),
            Err(sentence) => {
                typing.wrong = Some(sentence);
                // Left by Enter or Tab, the field stays for another try; left by a click elsewhere, it stays open too.
                response.request_focus();
            }
        }
    }
}

impl Typing {
    fn of(measure: &Measure) -> Self {
        Self {
            outline: measure.outline,
            side: measure.side,
            text: measure.shown.clone(),
            wrong: None,
            is_new: true,
        }
    }

    fn is_of(&self, measure: &Measure) -> bool {
        self.outline == measure.outline && self.side == measure.side
    }
}

fn id_of(ui: &Ui, measure: &Measure) -> Id {
    ui.scope_id().with(("length of side", measure.outline, measure.side))
}

fn select_all(ui: &Ui, id: Id, text: &str) {
    let mut state = egui::text_edit::TextEditState::load(ui, id).unwrap_or_default();
    let all = egui::text::CCursorRange::two(
        egui::text::CCursor::new(0),
        egui::text::CCursor::new(text.chars().count()),
    );
    state.cursor.set_char_range(Some(all));
    state.store(ui, id);
}

/// The edit that gives a side the length typed, tried on the layout first so that the reason stands at the field.
fn set_length(desk: &Desk, measure: &Measure, text: &str) -> Result<Edit, String> {
    let layout = desk.settled();
    let length = Length::parse(text, layout.units).map_err(|error| error.to_string())?;
    if length <= Length::TOLERANCE {
        return Err("A side must be longer than nothing".to_owned());
    }
    let edit = measure.outline.changed(OutlineChange::SetSideLength {
        side: measure.side,
        length,
    });
    layout
        .apply(&edit)
        .map_err(|error| format!("{error} {}", error.hint()))?;
    Ok(edit)
}
