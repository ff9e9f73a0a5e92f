//! What panels and canvas ask for. They push commands while they draw; the program carries them out once the
//! frame is drawn, so that nothing changes under a panel's feet.

use std::path::PathBuf;

use super::action::Action;
use super::files::Purpose;
use super::step::Step;
use crate::catalog::{CropId, MaterialId};
use crate::layout::{Edit, Item};

/// Something that a panel or the canvas asks for.
#[derive(Clone, Debug)]
pub enum Command {
    /// Carry out a named action.
    Act(Action),
    /// Change the layout: one step that undo takes back.
    Edit(Edit),
    /// Show the layout as this change would make it, while the hand still moves. Each preview starts from the
    /// last step, not from the preview before.
    Preview(Edit),
    /// Make the preview a step.
    KeepPreview,
    /// Forget the preview.
    DropPreview,
    /// Choose a thing, or nothing.
    Choose(Option<Item>),
    /// Light a thing up while the pointer is over it, or nothing.
    PointAt(Option<Item>),
    /// Choose a thing and bring it into view.
    GoTo(Item),
    /// Turn to one of the winter's questions.
    Step(Step),
    /// Open the crop book, at a crop and one of its cultivars.
    OpenBook(CropId, String),
    /// Open the fertilizer shed, at a material.
    OpenShed(MaterialId),
    /// Open the layout in a file.
    OpenPath(PathBuf),
    /// Save the layout to a file.
    SavePath(PathBuf),
    /// Choose a file, and then do with it what it was chosen for.
    Ask(Purpose),
    /// Do with a file what it was chosen for.
    File(Purpose, PathBuf),
    /// Take up unsaved work, by its place in the offer.
    TakeUp(usize),
    /// Throw unsaved work away, by its place in the offer.
    ThrowAway(usize),
    /// Say something in the top bar; nothing takes away what was said.
    Say(String),
}
