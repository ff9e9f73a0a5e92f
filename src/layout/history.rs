//! The way back: every finished action with its name, without end, in both directions.

use super::document::Layout;

/// The layout now, the ones before it, and the ones that were gone back from. Each is a whole layout; they
/// share all that an edit did not touch.
#[derive(Clone, Debug)]
pub struct History {
    current: Layout,
    /// Oldest first; each holds the layout as it was before the step.
    undo: Vec<Step>,
    /// The next to be done again last; each holds the layout as it is after the step. Emptied by every commit.
    redo: Vec<Step>,
    /// How many steps led to the layout that is in the file; `None` when no way leads there any more.
    saved_at: Option<usize>,
}

#[derive(Clone, Debug)]
struct Step {
    label: String,
    layout: Layout,
}

impl History {
    /// Starts with a layout that is in its file already, or that there is nothing to save of.
    pub const fn new(layout: Layout) -> Self {
        Self {
            current: layout,
            undo: Vec::new(),
            redo: Vec::new(),
            saved_at: Some(0),
        }
    }

    /// Starts with a layout that is in no file yet, such as one that was rescued.
    pub const fn new_unsaved(layout: Layout) -> Self {
        Self {
            current: layout,
            undo: Vec::new(),
            redo: Vec::new(),
            saved_at: None,
        }
    }

    /// The layout as it is now.
    pub const fn current(&self) -> &Layout {
        &self.current
    }

    /// Takes one finished action as a step of its own. A layout equal to the current one makes no step and
    /// leaves the steps that can be done again.
    pub fn commit(&mut self, layout: Layout, label: impl Into<String>) {
        if layout == self.current {
            return;
        }
        if self.saved_at.is_some_and(|saved| saved > self.undo.len()) {
            // What was saved lay ahead, among the steps that are dropped now.
            self.saved_at = None;
        }
        self.redo.clear();
        let before = std::mem::replace(&mut self.current, layout);
        self.undo.push(Step {
            label: label.into(),
            layout: before,
        });
    }

    /// Goes back one step and gives its name; `None` at the start.
    pub fn undo(&mut self) -> Option<&str> {
        let step = self.undo.pop()?;
        let after = std::mem::replace(&mut self.current, step.layout);
        self.redo.push(Step {
            label: step.label,
            layout: after,
        });
        self.redo_label()
    }

    /// Does the step again that was last gone back from, and gives its name; `None` when there is none.
    pub fn redo(&mut self) -> Option<&str> {
        let step = self.redo.pop()?;
        let before = std::mem::replace(&mut self.current, step.layout);
        self.undo.push(Step {
            label: step.label,
            layout: before,
        });
        self.undo_label()
    }

    /// The name of the step that [`History::undo`] goes back.
    pub fn undo_label(&self) -> Option<&str> {
        self.undo.last().map(|step| step.label.as_str())
    }

    /// The name of the step that [`History::redo`] does again.
    pub fn redo_label(&self) -> Option<&str> {
        self.redo.last().map(|step| step.label.as_str())
    }

    /// The names of all steps that led here, oldest first.
    pub fn labels(&self) -> impl DoubleEndedIterator<Item = &str> {
        self.undo.iter().map(|step| step.label.as_str())
    }

    /// The current layout is in its file now.
    pub const fn mark_saved(&mut self) {
        self.saved_at = Some(self.undo.len());
    }

    /// Whether the current layout is the one that is in its file.
    pub fn is_saved(&self) -> bool {
        self.saved_at == Some(self.undo.len())
    }
}
