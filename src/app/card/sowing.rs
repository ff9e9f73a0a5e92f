//! The card that answers what to sow: the seed shelf, and each cultivar with its need, packets and beds.

use egui::{Id, RichText, Ui};

use super::{Hand, head, lot, packets};
use crate::app::action::Action;
use crate::app::command::Command;
use crate::app::form;
use crate::app::theme;
use crate::layout::Item;
use crate::plan::{OrderLine, Things};
use crate::quantity::count;
use crate::sheets::held_together;
use crate::sheets::order_list::{OrderList, OrderWords, quantity_words};

pub(super) fn show(ui: &mut Ui, hand: &mut Hand<'_>) {
    let layout = hand.desk.layout();
    head(ui, "What to sow", &format!("season {}", layout.season));
    shelf(ui, hand);
    needs(ui, hand);
}

fn shelf(ui: &mut Ui, hand: &mut Hand<'_>) {
    form::section(ui, "Seed shelf");
    let lots = hand.desk.layout().lots.clone();
    if lots.is_empty() {
        form::follows(ui, "nothing on it; what you put here is used before any is bought");
    }
    for of in &lots {
        let (name, note) = (lot::name(hand, of), lot::note(hand, of));
        if form::list_line(ui, false, &name, &note).clicked() {
            hand.out.push(Command::Choose(Some(Item::Lot(of.id))));
        }
    }
    if ui
        .button(Action::AddLot.label())
        .on_hover_text(Action::AddLot.tooltip())
        .clicked()
    {
        hand.out.push(Command::Act(Action::AddLot));
    }
}

fn needs(ui: &mut Ui, hand: &mut Hand<'_>) {
    form::section(ui, "Each cultivar");
    let plan = hand.desk.plan().clone();
    let list = OrderList::of(hand.desk.layout(), &plan);
    for sentence in &list.not_counted {
        form::wrong(ui, sentence);
    }
    if list.lines.is_empty() {
        form::follows(ui, "choose a crop for a bed, and what it takes is counted here");
    }
    for (line, words) in plan.order.lines.iter().zip(&list.lines) {
        let id = Id::unique(("need", &line.crop.0, &line.cultivar, line.things));
        egui::CollapsingHeader::new(form::folded_title(ui, &words.name))
            .id_salt(id)
            .show_unindented(ui, |ui| need(ui, hand, line, words, id));
    }
}

fn need(ui: &mut Ui, hand: &mut Hand<'_>, line: &OrderLine, words: &OrderWords, id: Id) {
    let units = hand.desk.layout().units;
    form::follows(ui, format!("needs {}", words.need));
    if line.things == Things::Seeds {
        form::follows(
            ui,
            format!(
                "{} plants before thinning, {} to stand; {}",
                count(line.plants_before_thinning),
                count(line.plants),
                words.comes_up
            ),
        );
    }
    for lot in &words.from_shelf {
        form::follows(ui, format!("off the shelf {lot}"));
    }
    let strong = if line.to_buy.count == 0 {
        "nothing to buy".to_owned()
    } else {
        format!("to buy {}", words.to_buy)
    };
    ui.label(RichText::new(strong).font(theme::bold(13.0)));
    packets::show(ui, hand, line, id);
    if let Some(problem) = &line.packets_problem {
        form::wrong(ui, problem);
    } else if !words.packets.is_empty() {
        let cost = match words.cost.as_str() {
            "" => String::new(),
            cost => format!("; costs\u{a0}{cost}"),
        };
        let chosen = format!("{}: {}{cost}", form::heading(words.chosen_as), words.packets);
        ui.label(RichText::new(held_together(&chosen)).font(theme::bold(13.0)));
        if !words.left_over.is_empty() {
            form::follows(ui, &words.left_over);
        }
    }
    if !words.harvest.is_empty() {
        form::follows(ui, format!("may give {}, never a promise", words.harvest));
    }
    for of in &line.beds {
        let Some(bed) = hand.desk.layout().bed(of.bed) else {
            continue;
        };
        let note = quantity_words(of.amount, line.things, units);
        if form::list_line(ui, false, &bed.name, &note).clicked() {
            hand.out.push(Command::GoTo(Item::Bed(of.bed)));
        }
    }
    let look_up = egui::Button::new(RichText::new("Look it up").size(13.0));
    if ui
        .add(look_up)
        .on_hover_text("Open the crop book at this crop")
        .clicked()
    {
        hand.out
            .push(Command::OpenBook(line.crop.clone(), line.cultivar.clone()));
    }
    ui.add_space(6.0);
}
