//! Edits of the notes on the map.

use std::sync::Arc;

use super::{EditError, fresh_id, replace, sound};
use crate::geometry::Point;
use crate::layout::check::check_note;
use crate::layout::document::{Layout, Note};
use crate::layout::ids::NoteId;
use crate::layout::item::Item;

/// Adds a note.
pub(super) fn add(layout: &mut Layout, at: Point, text: &str) -> Result<(), EditError> {
    let note = Note {
        id: NoteId(fresh_id(layout)?),
        at,
        text: tidy_text(text),
    };
    sound(check_note(&note))?;
    layout.notes.push(Arc::new(note));
    Ok(())
}

/// Puts a note at another place.
pub(super) fn move_to(layout: &mut Layout, id: NoteId, to: Point) -> Result<(), EditError> {
    change(layout, id, |note| note.at = to)
}

/// Gives a note other words.
pub(super) fn set_text(layout: &mut Layout, id: NoteId, text: &str) -> Result<(), EditError> {
    change(layout, id, |note| note.text = tidy_text(text))
}

/// Takes a note away.
pub(super) fn remove(layout: &mut Layout, id: NoteId) -> Result<(), EditError> {
    if layout.note(id).is_none() {
        return Err(EditError::Gone(Item::Note(id)));
    }
    layout.notes.retain(|note| note.id != id);
    Ok(())
}

fn change(layout: &mut Layout, id: NoteId, change: impl FnOnce(&mut Note)) -> Result<(), EditError> {
    let slot = layout
        .notes
        .iter_mut()
        .find(|note| note.id == id)
        .ok_or(EditError::Gone(Item::Note(id)))?;
    let mut note = slot.as_ref().clone();
    change(&mut note);
    sound(check_note(&note))?;
    replace(slot, note);
    Ok(())
}

/// Words of a note as they are kept: without blanks round them, and with one kind of line end.
fn tidy_text(text: &str) -> String {
    text.trim().replace("\r\n", "\n").replace('\t', " ")
}
