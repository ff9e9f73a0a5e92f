//! The layout under work: its history, what the hand is just doing to it, the plan that follows, and what is
//! chosen. Knows nothing of how any of it is drawn, so that tests can do all that the window can.

use std::collections::BTreeMap;
use std::path::PathBuf;
use std::sync::Arc;

use crate::layout::{BedId, Edit, History, Item, Layout};
use crate::plan::feeding::MaterialBook;
use crate::plan::{BedPlan, CropBook, Ledger, Plan, Planner};
use crate::quantity::Units;

use super::step::Step;

/// The layout under work and everything that follows from it.
pub struct Desk {
    history: History,
    preview: Option<Preview>,
    planner: Planner,
    plan: Arc<Plan>,
    ledgers: BTreeMap<BedId, KeptLedger>,
    revision: u64,
    /// What is chosen, if anything.
    pub chosen: Option<Item>,
    /// What the pointer is over, in sheet or ledger.
    pub pointed: Option<Item>,
    /// The question being answered.
    pub step: Step,
    /// The file the layout was read from or saved to last.
    pub path: Option<PathBuf>,
    /// What was done last, or what went wrong, said to the grower.
    pub said: Option<Said>,
}

/// Something said to the grower in the top bar.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Said {
    /// The sentence.
    pub text: String,
    /// Whether something went wrong.
    pub wrong: bool,
}

/// The layout as the hand would have it.
struct Preview {
    layout: Layout,
    label: String,
}

/// A ledger and what it was made from.
struct KeptLedger {
    bed: Arc<BedPlan>,
    units: Units,
    ledger: Arc<Ledger>,
}

impl Desk {
    /// A desk with a layout on it.
    pub fn new(layout: Layout, path: Option<PathBuf>) -> Self {
        let mut planner = Planner::default();
        let plan = Arc::new(planner.plan(&layout));
        Self {
            history: History::new(layout),
            preview: None,
            planner,
            plan,
            ledgers: BTreeMap::new(),
            revision: 0,
            chosen: None,
            pointed: None,
            step: Step::default(),
            path,
            said: None,
        }
    }

    /// The layout as it is to be drawn: with what the hand is just doing to it.
    pub fn layout(&self) -> &Layout {
        self.preview
            .as_ref()
            .map_or_else(|| self.history.current(), |preview| &preview.layout)
    }

    /// The layout as of the last step.
    pub fn settled(&self) -> &Layout {
        self.history.current()
    }

    /// What follows from [`Desk::layout`].
    pub fn plan(&self) -> &Arc<Plan> {
        &self.plan
    }

    /// A number that changes whenever [`Desk::layout`] does.
    pub fn revision(&self) -> u64 {
        self.revision
    }

    /// The crops that the layout can name, with the grower's own values in them.
    pub const fn crop_book(&self) -> &CropBook {
        self.planner.crop_book()
    }

    /// The fertilizer materials that the layout can name, with what the shed knows of them.
    pub const fn material_book(&self) -> &MaterialBook {
        self.planner.material_book()
    }

    /// The steps so far.
    pub fn history(&self) -> &History {
        &self.history
    }

    /// Whether a hand is in the middle of something.
    pub fn is_previewing(&self) -> bool {
        self.preview.is_some()
    }

    /// The ledger of a bed, in the layout's units. Kept as long as the bed's plan stays the same.
    pub fn ledger(&mut self, bed: BedId) -> Option<Arc<Ledger>> {
        let units = self.layout().units;
        let plan = self.plan.bed(bed)?;
        if let Some(kept) = self.ledgers.get(&bed)
            && Arc::ptr_eq(&kept.bed, plan)
            && kept.units == units
        {
            return Some(kept.ledger.clone());
        }
        let ledger = Arc::new(Ledger::of(plan, units));
        self.ledgers.insert(
            bed,
            KeptLedger {
                bed: plan.clone(),
                units,
                ledger: ledger.clone(),
            },
        );
        Some(ledger)
    }

    /// Makes a change: one step that undo takes back. What cannot be done is said, and nothing changes.
    /// Gives back whether it was done.
    pub fn edit(&mut self, edit: &Edit) -> bool {
        self.preview = None;
        let label = edit.label(self.history.current());
        match self.history.current().apply(edit) {
            Ok(layout) => {
                self.history.commit(layout, label);
                self.said = None;
                self.settle();
                true
            }
            Err(error) => {
                self.say_wrong(format!("{error} {}", error.hint()));
                self.settle();
                false
            }
        }
    }

    /// Shows what a change would make of the layout as of the last step. A change that cannot be made shows the
    /// layout as it was, and says why.
    pub fn preview(&mut self, edit: &Edit) {
        let base = self.history.current();
        match base.apply(edit) {
            Ok(layout) => {
                self.preview = Some(Preview {
                    layout,
                    label: edit.label(base),
                });
            }
            Err(error) => {
                self.preview = None;
                self.say_wrong(format!("{error} {}", error.hint()));
            }
        }
        self.settle();
    }

    /// Makes the preview a step.
    pub fn keep_preview(&mut self) {
        if let Some(Preview { layout, label }) = self.preview.take() {
            self.history.commit(layout, label);
            self.said = None;
            self.settle();
        }
    }

    /// Forgets the preview.
    pub fn drop_preview(&mut self) {
        if self.preview.take().is_some() {
            self.settle();
        }
    }

    /// Takes back the last step and says which.
    pub fn undo(&mut self) {
        self.preview = None;
        if let Some(label) = self.history.undo().map(str::to_owned) {
            self.say(format!("Taken back: {label}"));
        }
        self.settle();
    }

    /// Does again the step that was taken back last, and says which.
    pub fn redo(&mut self) {
        self.preview = None;
        if let Some(label) = self.history.redo().map(str::to_owned) {
            self.say(format!("Done again: {label}"));
        }
        self.settle();
    }

    /// Puts another layout on the desk, with a history of its own.
    pub fn replace(&mut self, layout: Layout, path: Option<PathBuf>) {
        self.history = History::new(layout);
        self.preview = None;
        self.chosen = None;
        self.pointed = None;
        self.path = path;
        self.settle();
    }

    /// Puts a layout on the desk that is in no file as it is, such as work that was kept.
    pub fn replace_unsaved(&mut self, layout: Layout, path: Option<PathBuf>) {
        self.replace(Layout::empty(layout.season, layout.units), path);
        self.history = History::new_unsaved(layout);
        self.settle();
    }

    /// Notes that the layout as of the last step is what the file holds.
    pub fn mark_saved(&mut self, path: PathBuf) {
        self.history.mark_saved();
        self.path = Some(path);
    }

    /// Whether there are steps that no file holds.
    pub fn is_unsaved(&self) -> bool {
        !self.history.is_saved()
    }

    /// Says something to the grower.
    pub fn say(&mut self, text: impl Into<String>) {
        self.said = Some(Said {
            text: text.into(),
            wrong: false,
        });
    }

    /// Says what went wrong.
    pub fn say_wrong(&mut self, text: impl Into<String>) {
        self.said = Some(Said {
            text: text.into(),
            wrong: true,
        });
    }

    /// The bed that the card and the ledger are about: the chosen one, the one of the chosen row or dressing, the
    /// first of the chosen plot, or the first of all.
    pub fn bed_in_hand(&self) -> Option<BedId> {
        let layout = self.layout();
        let of_choice = self.chosen.and_then(|item| match item {
            Item::Plot(plot) | Item::Corner(plot, _) | Item::Side(plot, _) | Item::Obstacle(plot, _) => {
                layout.beds_of(plot).next().map(|bed| bed.id)
            }
            item => item.bed(),
        });
        of_choice
            .filter(|&bed| layout.bed(bed).is_some())
            .or_else(|| layout.beds.first().map(|bed| bed.id))
    }

    /// Everything that follows from a changed layout: the plan, and a choice that still exists.
    fn settle(&mut self) {
        self.revision += 1;
        let layout = self
            .preview
            .as_ref()
            .map_or_else(|| self.history.current(), |preview| &preview.layout);
        self.plan = Arc::new(self.planner.plan(layout));
        let chosen = self.chosen.filter(|&item| layout.has(item));
        self.chosen = chosen;
        self.pointed = None;
        self.ledgers.retain(|&bed, _| self.plan.bed(bed).is_some());
    }
}
