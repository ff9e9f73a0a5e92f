//! The card of a note on the map.

use egui::{Id, Ui};

use super::{Hand, head, remove};
use crate::app::command::Command;
use crate::app::form;
use crate::layout::{Edit, NoteId};

pub(super) fn show(ui: &mut Ui, hand: &mut Hand<'_>, id: NoteId) {
    let Some(note) = hand.desk.layout().note(id) else {
        return;
    };
    head(ui, "Note", "on the map and on the printed sheet");
    let field = Id::unique(("card of note", id));
    let reply = ui
        .push_id(field, |ui| {
            let width = ui.available_width() - 8.0;
            let reply = crate::app::unit_field::unit_field(ui, field, &note.text, width, form::read_name);
            reply.response.clone().accessible_name("Words of the note");
            reply
        })
        .inner;
    if let Some(text) = reply.accepted {
        hand.out.push(Command::Edit(Edit::SetNoteText { note: id, text }));
    }
    if let Some(wrong) = reply.wrong {
        form::wrong(ui, &wrong);
    }
    form::follows(ui, "Drag it on the sheet to put it elsewhere.");
    if remove(ui, "note") {
        hand.out.push(Command::Edit(Edit::RemoveNote(id)));
    }
}
