//! What each edit does, what it leaves alone, and what it refuses.

mod bed;
mod ground;
mod own_start;
mod seed;
mod split;

use std::sync::Arc;

use quillet::geometry::Point;
use quillet::layout::{
    BedChange, BedGround, BedId, Edit, EditError, Item, Layout, NoteId, OutlineChange, Place, PlotChange, PlotId, check,
};
use quillet::quantity::{Length, Units};

use crate::garden::{CORN, LOWER, NOTE, applied, full_garden, garden};

/// Applies one edit to the garden and looks at its label too.
#[track_caller]
fn check_edit(edit: Edit, label: &str) -> Layout {
    let before = garden();
    assert_eq!(edit.label(&before), label);
    let after = applied(&before, &[edit]);
    assert_eq!(check(&after), []);
    assert_ne!(after, before, "the edit changed nothing");
    after
}

/// An edit that must be refused with these words, and leave the garden as it was.
#[track_caller]
fn check_refused(edit: &Edit, words: &str) {
    let before = garden();
    let error = before.apply(edit).expect_err("the edit should be refused");
    assert_eq!(error.to_string(), words);
    assert!(error.hint().ends_with('.'), "{}", error.hint());
    assert_eq!(before, garden());
}

fn corn(change: BedChange) -> Edit {
    Edit::Bed(CORN, change)
}

#[test]
fn the_head_of_the_layout() {
    let after = check_edit(Edit::SetName("  River field ".to_owned()), "rename the layout");
    assert_eq!(after.name, "River field");
    let after = check_edit(Edit::SetSeason(2027), "set the season");
    assert_eq!(after.season, 2027);
    let after = check_edit(Edit::SetUnits(Units::Metric), "change units");
    assert_eq!(after.units, Units::Metric);
    let place = Place {
        name: "Home".to_owned(),
        latitude: 41.5,
        longitude: -93.25,
    };
    let after = check_edit(Edit::SetPlace(Some(place.clone())), "set the place");
    assert_eq!(after.place, Some(place.clone()));
    check_refused(
        &Edit::SetPlace(Some(Place {
            latitude: 91.0,
            ..place
        })),
        "The layout: the latitude must be from -90 to 90.",
    );
    check_refused(&Edit::SetName("   ".to_owned()), "The layout: its name is empty.");
    check_refused(&Edit::SetSeason(0), "The layout: its season must be from 1 to 9999.");
}

#[test]
fn notes() {
    let after = check_edit(
        Edit::AddNote {
            at: Point::feet(1.0, 1.0),
            text: "  Gate\r\nlocked ".to_owned(),
        },
        "add a note",
    );
    assert_eq!(
        (after.notes[1].id, after.notes[1].text.as_str()),
        (NoteId(9), "Gate\nlocked")
    );
    let to = Point::feet(3.0, 3.0);
    let after = check_edit(Edit::MoveNote { note: NOTE, to }, "move a note");
    assert_eq!(after.notes[0].at, to);
    let text = "Dry by April".to_owned();
    let after = check_edit(
        Edit::SetNoteText {
            note: NOTE,
            text: text.clone(),
        },
        "reword a note",
    );
    assert_eq!(after.notes[0].text, text);
    let after = check_edit(Edit::RemoveNote(NOTE), "remove a note");
    assert!(after.notes.is_empty());
    check_refused(
        &Edit::SetNoteText {
            note: NOTE,
            text: " ".to_owned(),
        },
        "A note: the note is empty.",
    );
}

#[test]
fn what_is_not_there_any_more_is_said() {
    let gone = |edit: Edit, item| assert_eq!(garden().apply(&edit), Err(EditError::Gone(item)));
    gone(Edit::RemovePlot(PlotId(2)), Item::Plot(PlotId(2)));
    gone(Edit::RemoveBed(BedId(1)), Item::Bed(BedId(1)));
    gone(Edit::RemoveNote(NoteId(1)), Item::Note(NoteId(1)));
    gone(
        Edit::Bed(BedId(77), BedChange::SetClear(Length::ZERO)),
        Item::Bed(BedId(77)),
    );
    gone(
        Edit::AddBed {
            plot: PlotId(77),
            name: None,
            ground: BedGround::WholePlot,
        },
        Item::Plot(PlotId(77)),
    );
}

#[test]
fn an_edit_of_one_bed_shares_everything_else() {
    let before = full_garden();
    let after = applied(&before, &[corn(BedChange::SetHeadland(Length::feet(1.0)))]);
    for (index, (old, new)) in before.beds.iter().zip(&after.beds).enumerate() {
        assert_eq!(Arc::ptr_eq(old, new), index != 0, "bed {index}");
    }
    assert!(
        before
            .plots
            .iter()
            .zip(&after.plots)
            .all(|(old, new)| Arc::ptr_eq(old, new))
    );
    assert!(
        before
            .notes
            .iter()
            .zip(&after.notes)
            .all(|(old, new)| Arc::ptr_eq(old, new))
    );
}

#[test]
fn an_edit_of_one_plot_shares_everything_else() {
    let before = full_garden();
    let edit = Edit::Plot(
        LOWER,
        PlotChange::Outline(OutlineChange::MoveCorner {
            corner: 0,
            to: Point::feet(1.0, 1.0),
        }),
    );
    let after = applied(&before, &[edit]);
    assert!(!Arc::ptr_eq(&before.plots[0], &after.plots[0]));
    assert!(Arc::ptr_eq(&before.plots[1], &after.plots[1]));
    assert!(
        before
            .beds
            .iter()
            .zip(&after.beds)
            .all(|(old, new)| Arc::ptr_eq(old, new))
    );
}

#[test]
fn an_edit_that_changes_nothing_shares_everything() {
    let before = garden();
    let spacing = before.beds[0].row_spacing;
    let after = applied(&before, &[corn(BedChange::SetRowSpacing(spacing))]);
    assert!(Arc::ptr_eq(&before.beds[0], &after.beds[0]));
}

#[test]
fn the_same_edits_make_equal_layouts() {
    assert_eq!(garden(), garden());
}
