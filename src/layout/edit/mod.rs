//! Edits: each is one finished action of the grower, and the only way in which a layout changes.
//!
//! [`Layout::apply`] gives a new layout that shares everything the edit did not touch, or says why it cannot be
//! done; [`Edit::label`] names the step for undo.

mod bed;
mod error;
mod fill;
mod label;
mod note;
mod obstacle;
mod outline;
mod plot;
mod seed;
mod shed;
mod split;
mod split_rows;

pub use bed::BedChange;
pub use error::EditError;
pub use obstacle::ObstacleChange;
pub use outline::OutlineChange;
pub use plot::PlotChange;
pub use seed::{LotContents, SeedEdit};
pub use shed::ShedEdit;

use std::sync::Arc;

use super::bed::BedGround;
use super::check::{Problem, check_head};
use super::document::{Layout, Place};
use super::ids::{BedId, NoteId, PlotId};
use super::limits::LARGEST_ID;
use crate::geometry::Point;
use crate::quantity::{Bearing, Units};

/// One finished action.
///
/// New things get the ids from [`Layout::next_id`] on, in the order in which they are named here; where a name is
/// left out they are called "Plot 1", "Bed 1", "Tree 1", with the first number that is free.
#[derive(Clone, Debug, PartialEq)]
pub enum Edit {
    /// Another name for the layout.
    SetName(String),
    /// Another year.
    SetSeason(i16),
    /// Other units to read and type in; nothing on the ground changes.
    SetUnits(Units),
    /// Another place on earth, or none.
    SetPlace(Option<Place>),
    /// A new plot, without a bed.
    AddPlot {
        /// What the grower calls it.
        name: Option<String>,
        /// Its corners in order, either way round, not closed.
        outline: Vec<Point>,
    },
    /// A new plot, and a bed that fills it.
    AddPlotWithBed {
        /// What the grower calls the plot.
        name: Option<String>,
        /// Its corners in order, either way round, not closed.
        outline: Vec<Point>,
    },
    /// A plot taken away, with its beds and what stands on it.
    RemovePlot(PlotId),
    /// A plot changed.
    Plot(PlotId, PlotChange),
    /// A new bed in a plot, as [`Layout::new_bed`] makes it.
    AddBed {
        /// The plot it lies in.
        plot: PlotId,
        /// What the grower calls it.
        name: Option<String>,
        /// Which part of the plot it takes.
        ground: BedGround,
    },
    /// A bed over the whole plot, as [`Layout::new_bed`] makes it, or over each piece of it that its beds leave free.
    FillPlot(PlotId),
    /// A bed taken away.
    RemoveBed(BedId),
    /// A bed split along the straight line through `at` that runs at `bearing`. The largest piece on the left hand
    /// stays the bed; every other becomes a new bed with the same planting and dressings.
    SplitBed {
        /// The bed.
        bed: BedId,
        /// A place on the line.
        at: Point,
        /// The direction of the line.
        bearing: Bearing,
    },
    /// A bed changed.
    Bed(BedId, BedChange),
    /// A new note on the map.
    AddNote {
        /// Where its first letter stands.
        at: Point,
        /// The words.
        text: String,
    },
    /// A note put at another place.
    MoveNote {
        /// The note.
        note: NoteId,
        /// Where its first letter goes.
        to: Point,
    },
    /// Other words for a note.
    SetNoteText {
        /// The note.
        note: NoteId,
        /// The words.
        text: String,
    },
    /// A note taken away.
    RemoveNote(NoteId),
    /// The seed shelf, packets, or own crops and cultivars changed.
    Seed(SeedEdit),
    /// The fertilizer shed changed.
    Shed(ShedEdit),
    /// Whether the layout is to be kept within organic rules.
    SetOrganic(bool),
}

impl Layout {
    /// The layout as it is after the edit. What the edit does not touch is shared, not copied; an edit that
    /// changes nothing gives an equal layout that shares everything.
    ///
    /// # Errors
    /// [`EditError`] says why the edit cannot be done; this layout stays as it is either way.
    pub fn apply(&self, edit: &Edit) -> Result<Self, EditError> {
        let mut layout = self.clone();
        match edit {
            Edit::SetName(name) => {
                layout.name = tidy(name);
                sound(check_head(&layout))?;
            }
            Edit::SetSeason(season) => {
                layout.season = *season;
                sound(check_head(&layout))?;
            }
            Edit::SetUnits(units) => layout.units = *units,
            Edit::SetPlace(place) => {
                layout.place = place.as_ref().map(|place| Place {
                    name: tidy(&place.name),
                    ..*place
                });
                sound(check_head(&layout))?;
            }
            Edit::AddPlot { name, outline } => {
                plot::add(&mut layout, name.as_deref(), outline)?;
            }
            Edit::AddPlotWithBed { name, outline } => {
                let plot = plot::add(&mut layout, name.as_deref(), outline)?;
                bed::add(&mut layout, plot, None, &BedGround::WholePlot)?;
            }
            Edit::RemovePlot(id) => plot::remove(&mut layout, *id)?,
            Edit::Plot(id, change) => plot::change(&mut layout, *id, change)?,
            Edit::AddBed { plot, name, ground } => bed::add(&mut layout, *plot, name.as_deref(), ground)?,
            Edit::FillPlot(id) => fill::fill(&mut layout, *id)?,
            Edit::RemoveBed(id) => bed::remove(&mut layout, *id)?,
            Edit::SplitBed { bed, at, bearing } => split::split(&mut layout, *bed, *at, *bearing)?,
            Edit::Bed(id, change) => bed::change(&mut layout, *id, change)?,
            Edit::AddNote { at, text } => note::add(&mut layout, *at, text)?,
            Edit::MoveNote { note, to } => note::move_to(&mut layout, *note, *to)?,
            Edit::SetNoteText { note, text } => note::set_text(&mut layout, *note, text)?,
            Edit::RemoveNote(id) => note::remove(&mut layout, *id)?,
            Edit::Seed(edit) => seed::change(&mut layout, edit)?,
            Edit::Shed(edit) => shed::change(&mut layout, edit)?,
            Edit::SetOrganic(organic) => layout.organic = *organic,
        }
        Ok(layout)
    }
}

/// The next id, as long as there are any.
fn fresh_id(layout: &Layout) -> Result<u32, EditError> {
    let id = layout.next_id();
    if id > LARGEST_ID {
        return Err(EditError::IdsUsedUp);
    }
    Ok(id)
}

/// Words as they are kept: without blanks round them.
fn tidy(words: &str) -> String {
    words.trim().to_owned()
}

/// Nothing wrong, or the first thing that is.
fn sound(problems: Vec<Problem>) -> Result<(), EditError> {
    problems
        .into_iter()
        .next()
        .map_or(Ok(()), |problem| Err(EditError::Refused(problem)))
}

/// Puts a changed thing in the place of the old one; one that is equal after all stays the very same.
fn replace<T: PartialEq>(slot: &mut Arc<T>, changed: T) {
    if **slot != changed {
        *slot = Arc::new(changed);
    }
}

/// An id for something of the grower's own: its name in small letters, with a number where that is taken.
fn free_id(name: &str, is_taken: impl Fn(&str) -> bool) -> String {
    let letters = |letter: char| if letter.is_alphanumeric() { letter } else { '_' };
    let stem: String = name.to_lowercase().chars().map(letters).collect();
    let stem = format!("own_{}", stem.trim_matches('_'));
    let mut id = stem.clone();
    let mut number = 2u32;
    while is_taken(&id) {
        id = format!("{stem}_{number}");
        number = number.saturating_add(1);
    }
    id
}
