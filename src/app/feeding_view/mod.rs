//! The fertilizer list in the ledger's place: what every bed gets and every row of it, what to buy, what runs through
//! the tape, and what to watch out for.

mod columns;
mod dressings;
mod lines;
mod runs;
mod shopping;

use std::sync::Arc;

use egui::{RichText, Ui};

use lines::{Lines, Seen};

use super::command::Command;
use super::desk::Desk;
use super::form;
use super::theme::{self, ThemeInForce as _};
use crate::sheets::feeding_list::{FeedingList, KeptBeds};
use crate::sheets::held_together;

/// How the list is looked at.
pub(super) struct FeedingView {
    /// The list, and the revision of the layout it was made from.
    kept: Option<(u64, Arc<FeedingList>)>,
    /// The words of its beds, which most edits leave as they are.
    beds: KeptBeds,
    dressings: dressings::DressingsView,
    shopping: Lines<usize>,
    runs: Lines<usize>,
    cautions: Lines<usize>,
}

impl Default for FeedingView {
    fn default() -> Self {
        Self {
            kept: None,
            beds: KeptBeds::default(),
            dressings: dressings::DressingsView::default(),
            shopping: Lines::new(shopping::USUAL_HEIGHT),
            runs: Lines::new(runs::USUAL_HEIGHT),
            cautions: Lines::new(USUAL_CAUTION),
        }
    }
}

/// How high a caution is taken to be until it was drawn once.
const USUAL_CAUTION: f32 = 20.0;

impl FeedingView {
    /// The list, made anew only when the layout has changed.
    pub(super) fn list(&mut self, desk: &Desk) -> Arc<FeedingList> {
        let revision = desk.revision();
        if let Some((of, list)) = &self.kept
            && *of == revision
        {
            return list.clone();
        }
        let list = FeedingList::keeping(&mut self.beds, desk.layout(), desk.plan(), desk.material_book());
        let list = Arc::new(list);
        self.kept = Some((revision, list.clone()));
        list
    }
}

/// Draws the list. A click on a dressing goes to it.
pub(super) fn show(ui: &mut Ui, desk: &Desk, view: &mut FeedingView, out: &mut Vec<Command>) {
    let list = view.list(desk);
    if list.is_empty() {
        form::follows(
            ui,
            "Put a dressing down on a bed, and what every row gets of it is listed here.",
        );
        return;
    }
    egui::ScrollArea::both()
        .id_salt("fertilizer list")
        .auto_shrink([false, false])
        .show_viewport(ui, |ui, rect| {
            let seen = Seen::from_here(ui, rect);
            view.dressings.show(ui, seen, desk, &list, out);
            shopping::show(ui, seen, &mut view.shopping, &list);
            runs::show(ui, seen, &mut view.runs, &list.runs);
            cautions(ui, seen, &mut view.cautions, &list);
        });
}

/// The heading over a part of the list.
fn part(ui: &mut Ui, title: &str) {
    ui.add_space(14.0);
    ui.label(RichText::new(title).font(theme::bold(14.0)));
    ui.add_space(2.0);
}

fn cautions(ui: &mut Ui, seen: Seen, lines: &mut Lines<usize>, list: &FeedingList) {
    let colours = theme::colours(ui.theme_in_force());
    part(ui, "Mind");
    let width = ui.available_width().min(900.0);
    ui.scope(|ui| {
        ui.set_max_width(width);
        ui.spacing_mut().item_spacing.y = 2.0;
        let all = list.cautions.iter().enumerate();
        lines.show(ui, seen, width, all, |ui, caution| {
            ui.label(
                RichText::new(held_together(caution.sentence))
                    .size(13.0)
                    .color(colours.strong),
            )
            .on_hover_text(&caution.source);
        });
    });
}
