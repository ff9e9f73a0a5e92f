//! The card on the right: the chosen thing, its few choices, what follows from each and where its value comes from.

mod bed;
mod chart;
pub(super) mod cultivar;
mod dressing;
mod drill;
mod feeding;
mod harvest;
mod layout;
mod length_line;
mod lot;
mod note;
mod obstacle;
mod outcome;
mod outline;
mod packets;
mod planting;
mod plot;
mod raised;
mod sowing;
mod sowing_way;
mod tally;
mod tape;

pub(super) use chart::Sweeps;
pub(super) use dressing::{first_dressing, injecting};
pub(super) use drill::DrillTrial;

use egui::{RichText, Ui};

use super::command::Command;
use super::desk::Desk;
use super::form;
use super::heads_up;
use super::step::Step;
use super::theme::{self, ThemeInForce as _};
use crate::layout::Item;
use crate::plan::HeadsUp;

/// What a card reads and what it asks for.
pub(crate) struct Hand<'a> {
    /// The layout under work.
    pub(crate) desk: &'a Desk,
    /// Row feet by direction, as far as they are worked out.
    pub(crate) sweeps: &'a mut Sweeps,
    /// How the drill is tried.
    pub(crate) drill: &'a mut DrillTrial,
    /// What is asked for.
    pub(crate) out: &'a mut Vec<Command>,
}

/// Draws the card that answers what is chosen and which question is being asked.
pub(crate) fn show(ui: &mut Ui, desk: &Desk, sweeps: &mut Sweeps, drill: &mut DrillTrial, out: &mut Vec<Command>) {
    let mut hand = Hand {
        desk,
        sweeps,
        drill,
        out,
    };
    let about = subject(desk);
    let mut area = egui::ScrollArea::vertical().auto_shrink([false, false]);
    // Another thing, or another question, starts at the head of its card.
    area = area.id_salt((item_of_card(about), desk.step));
    area.show(ui, |ui| {
        ui.spacing_mut().item_spacing.y = 5.0;
        match about {
            Item::Layout if desk.chosen.is_none() && desk.step == Step::Sow => sowing::show(ui, &mut hand),
            Item::Layout => layout::show(ui, &mut hand),
            Item::Plot(id) | Item::Corner(id, _) | Item::Side(id, _) => plot::show(ui, &mut hand, id),
            Item::Obstacle(plot, id) => obstacle::show(ui, &mut hand, plot, id),
            Item::Bed(id) | Item::BedCorner(id, _) | Item::Row(id, _) => bed::show(ui, &mut hand, id),
            Item::Dressing(bed, id) => dressing::show(ui, &mut hand, bed, id),
            Item::Note(id) => note::show(ui, &mut hand, id),
            Item::Lot(id) => lot::show(ui, &mut hand, id),
            Item::Shed(_) => {}
        }
        concerns(ui, desk, about, hand.out);
        ui.add_space(12.0);
    });
}

/// The thing whose card is shown: a row has the card of its bed, a side that of its plot.
const fn item_of_card(about: Item) -> Item {
    match about {
        Item::BedCorner(bed, _) | Item::Row(bed, _) => Item::Bed(bed),
        Item::Corner(plot, _) | Item::Side(plot, _) => Item::Plot(plot),
        other => other,
    }
}

/// What the card is about: what is chosen, or what the question asks about when nothing is.
fn subject(desk: &Desk) -> Item {
    if let Some(chosen) = desk.chosen {
        return chosen;
    }
    match desk.step {
        Step::Rows | Step::OnRows | Step::Feed => desk.bed_in_hand().map_or(Item::Layout, Item::Bed),
        Step::Ground | Step::Sow | Step::Outside => Item::Layout,
    }
}

/// Heads-up about the thing on the card.
fn concerns(ui: &mut Ui, desk: &Desk, about: Item, out: &mut Vec<Command>) {
    let plan = desk.plan();
    let of_card = |heads_up: &HeadsUp| match about {
        Item::Layout => false,
        Item::Bed(bed) | Item::BedCorner(bed, _) | Item::Row(bed, _) => heads_up.about.bed() == Some(bed),
        Item::Corner(plot, _) | Item::Side(plot, _) => heads_up.about == Item::Plot(plot),
        other => heads_up.about == other,
    };
    for heads_up in plan.heads_up.iter().filter(|heads_up| of_card(heads_up)) {
        ui.add_space(6.0);
        heads_up::note(ui, heads_up, out);
    }
}

/// The head of a card: the thing's name, and what it is.
fn head(ui: &mut Ui, name: &str, what: &str) {
    let soft = theme::colours(ui.theme_in_force()).soft;
    ui.label(RichText::new(name).font(theme::bold(19.0)));
    ui.label(RichText::new(what).size(13.0).color(soft));
    ui.add_space(6.0);
}

/// A small button to take the thing away. It can be undone, so nothing is asked.
fn remove(ui: &mut Ui, what: &str) -> bool {
    ui.add_space(8.0);
    form::rule(ui);
    ui.add_space(4.0);
    ui.add(egui::Button::new(RichText::new(format!("Remove {what}")).size(13.0)))
        .clicked()
}
