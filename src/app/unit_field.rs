//! A field for a quantity, a number or a name: it holds what is typed until it is done, and says what is accepted
//! when it cannot be read.
//!
//! - Taken over on Enter, on Tab and when the field is left any other way; Escape brings the old value back.
//! - A text that cannot be read stays as it was typed, the field is marked, and a sentence below says what would do.
//! - One accepted value is one reply, so one step of undo. A text that was not changed is no reply.
//! - A value that changes from outside is shown at once, unless the field is just being typed in.
//! - A value that can be read and is refused all the same, by the change it asks for, goes back into its field, with
//!   the reason below it.

use egui::{Context, Id, Response, TextEdit, Ui};

use super::theme;

/// What the field holds while it differs from the value it stands for.
#[derive(Clone, Default)]
struct Draft {
    text: String,
    /// What the value looked like when typing began.
    origin: String,
    /// Why the text could not be read.
    wrong: Option<String>,
    /// Whether the field is being typed in.
    open: bool,
}

/// What was taken over last, until the change that it asks for was carried out.
#[derive(Clone)]
struct TakenOver {
    field: Id,
    text: String,
    origin: String,
    frame: u64,
}

/// What came of a field in this frame.
#[derive(Debug)]
pub struct Reply<T> {
    /// The value that was accepted in this frame.
    pub accepted: Option<T>,
    /// Why what stands in the field cannot be read.
    pub wrong: Option<String>,
    /// The field itself.
    pub response: Response,
}

/// Draws a field. `shown` is the value as it is worded now, `read` reads what was typed. The caller names the field
/// for screen readers.
pub fn unit_field<T>(
    ui: &mut Ui,
    id: Id,
    shown: &str,
    width: f32,
    read: impl FnOnce(&str) -> Result<T, String>,
) -> Reply<T> {
    let mut draft = kept(ui, id, shown);
    let mut text = draft
        .as_ref()
        .map_or_else(|| shown.to_owned(), |draft| draft.text.clone());
    let marked = draft.as_ref().is_some_and(|draft| draft.wrong.is_some());
    let response = ui
        .scope(|ui| {
            if marked {
                mark(ui);
            }
            ui.add(TextEdit::singleline(&mut text).id(id).desired_width(width))
        })
        .inner;
    let mut accepted = None;
    if response.has_focus() {
        let draft = draft.get_or_insert_with(|| Draft {
            origin: shown.to_owned(),
            ..Draft::default()
        });
        if response.changed() {
            draft.wrong = None;
        }
        draft.text = text;
        draft.open = true;
    } else if let Some(left) = draft.take_if(|draft| draft.open) {
        let given_up = ui.input(|input| input.key_pressed(egui::Key::Escape));
        if !given_up && text.trim() != left.origin.trim() {
            match read(text.trim()) {
                Ok(value) => {
                    accepted = Some(value);
                    take_over(ui, id, &text, &left.origin);
                }
                Err(sentence) => {
                    draft = Some(Draft {
                        text,
                        wrong: Some(sentence),
                        open: false,
                        ..left
                    });
                }
            }
        }
    }
    let wrong = draft.as_ref().and_then(|draft| draft.wrong.clone());
    ui.data_mut(|data| match draft {
        Some(draft) => {
            data.insert_temp(id, draft);
        }
        None => {
            data.remove::<Draft>(id);
        }
    });
    Reply {
        accepted,
        wrong,
        response,
    }
}

fn take_over(ui: &Ui, field: Id, text: &str, origin: &str) {
    let taken = TakenOver {
        field,
        text: text.to_owned(),
        origin: origin.to_owned(),
        frame: ui.ctx().cumulative_frame_nr(),
    };
    ui.data_mut(|data| data.insert_temp(Id::NULL, taken));
}

/// Ties the next change of this frame to the field whose value was taken over in it, if one was.
pub(crate) fn taken_over(ctx: &Context) -> Option<Refusable> {
    let taken = ctx.data_mut(|data| {
        let taken: Option<TakenOver> = data.get_temp(Id::NULL);
        data.remove::<TakenOver>(Id::NULL);
        taken
    })?;
    (taken.frame == ctx.cumulative_frame_nr()).then_some(Refusable(taken))
}

/// A value on its way from its field into the layout.
pub(crate) struct Refusable(TakenOver);

impl Refusable {
    /// Puts what was typed back into its field, with the reason why it cannot be.
    pub(crate) fn refuse(self, ctx: &Context, sentence: String) {
        let Self(taken) = self;
        let draft = Draft {
            text: taken.text,
            origin: taken.origin,
            wrong: Some(sentence),
            open: false,
        };
        ctx.data_mut(|data| data.insert_temp(taken.field, draft));
    }
}

/// The draft of the field, unless the value has changed from outside meanwhile and nobody is typing.
fn kept(ui: &Ui, id: Id, shown: &str) -> Option<Draft> {
    let mut draft = ui.data(|data| data.get_temp::<Draft>(id))?;
    if draft.origin == shown {
        return Some(draft);
    }
    if draft.open {
        if draft.text == draft.origin {
            // Focused, but nothing typed yet: the new value shows.
            shown.clone_into(&mut draft.text);
            shown.clone_into(&mut draft.origin);
        }
        return Some(draft);
    }
    None
}

/// Rings the field in the colour of what needs a look.
fn mark(ui: &mut Ui) {
    let colours = theme::colours(ui.theme_in_force());
    let ring = egui::Stroke::new(1.5, colours.accent);
    let widgets = &mut ui.visuals_mut().widgets;
    for state in [&mut widgets.inactive, &mut widgets.hovered, &mut widgets.active] {
        state.bg_stroke = ring;
    }
}

use theme::ThemeInForce as _;
