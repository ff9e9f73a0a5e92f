//! The card of a lot on the seed shelf: what it is, how much is left, how much of it comes up, and what takes it.

use std::sync::Arc;

use egui::{Id, RichText, Ui};

use super::{Hand, cultivar, head, remove};
use crate::agronomy;
use crate::app::action::Action;
use crate::app::command::Command;
use crate::app::day_words::read_day;
use crate::app::form;
use crate::app::picker::{Choice, picker};
use crate::app::seed_words;
use crate::app::step::Step;
use crate::catalog::{Catalog, Mark};
use crate::layout::limits::SEASONS;
use crate::layout::{
    Edit, Form, Item, LotContents, LotGermination, LotId, SeedEdit, SeedLot, same_cultivar, with_cultivar,
};
use crate::plan::{LotAge, OrderLine, Things};
use crate::quantity::{Fraction, Units, count};
use crate::sheets::order_list::{amount_words, day_words, quantity_words};

pub(super) fn show(ui: &mut Ui, hand: &mut Hand<'_>, id: LotId) {
    let layout = hand.desk.layout();
    let Some(lot) = layout.lot(id).cloned() else { return };
    let units = layout.units;
    let field = Id::unique(("card of lot", id));
    head(ui, &name(hand, &lot), "lot of seed on the shelf");
    crop(ui, hand, &lot, field);
    if let Some(cultivar) = cultivar::show(ui, hand, field, &lot.crop, &lot.cultivar) {
        change(hand, &lot, |lot| lot.cultivar = cultivar);
    }
    form_of(ui, hand, &lot, field);
    let read = |text: &str| form::read_whole(text, i32::from(*SEASONS.start()), i32::from(*SEASONS.end()));
    let year = form::field(ui, field.with("year"), "Year", &lot.year.to_string(), read);
    if let Some(year) = year.and_then(|year| i16::try_from(year).ok()) {
        change(hand, &lot, |lot| lot.year = year);
    }
    form::follows(ui, "on the tag, or that it was grown in");
    let things = things_of(hand, &lot);
    let shown = if lot.amount.is_nothing() {
        String::new()
    } else {
        amount_words(lot.amount, things, units)
    };
    let read = |text: &str| seed_words::read_amount(text, "a lot", units);
    if let Some(amount) = form::field(ui, field.with("amount"), "Amount left", &shown, read) {
        change(hand, &lot, |lot| lot.amount = amount);
    }
    let example = match units {
        Units::Customary => "1/2 oz",
        Units::Metric => "15 g",
    };
    form::follows(
        ui,
        format!("by weight as {example}, or by count as 340 {}", things.name()),
    );
    if things == Things::Seeds {
        germination(ui, hand, &lot, field);
    }
    taken(ui, hand, &lot, things, units);
    if remove(ui, "lot") {
        hand.out.push(Command::Edit(Edit::Seed(SeedEdit::RemoveLot(id))));
    }
}

/// The lot by cultivar and crop.
pub(super) fn name(hand: &Hand<'_>, lot: &SeedLot) -> String {
    let crop = hand.desk.crop_book().crop(&lot.crop);
    let crop = crop.map_or(lot.crop.0.as_str(), |crop| crop.name.as_str());
    with_cultivar(crop, &lot.cultivar)
}

/// A few words about a lot, for lists.
pub(super) fn note(hand: &Hand<'_>, lot: &SeedLot) -> String {
    let units = hand.desk.layout().units;
    let mut words = vec![
        lot.year.to_string(),
        amount_words(lot.amount, things_of(hand, lot), units),
    ];
    words.extend(seed_words::germination_note(lot.germination));
    words.join(" · ")
}

/// The same in fewer words: without what was tested, and when.
pub(super) fn short_note(hand: &Hand<'_>, lot: &SeedLot) -> String {
    let amount = amount_words(lot.amount, things_of(hand, lot), hand.desk.layout().units);
    let up = lot.germination.found().map(|found| format!(" · {} up", found.show()));
    format!("{} · {amount}{}", lot.year, up.unwrap_or_default())
}

/// What a lot holds.
pub(super) fn things_of(hand: &Hand<'_>, lot: &SeedLot) -> Things {
    Things::in_form(lot.form, usual_things(hand, lot))
}

/// What the crop of a lot usually lies on the shelf as.
fn usual_things(hand: &Hand<'_>, lot: &SeedLot) -> Things {
    let crop = hand.desk.crop_book().cultivar(&lot.crop, &lot.cultivar);
    crop.map_or(Things::Seeds, |crop| Things::on_shelf(crop.method.value))
}

fn change(hand: &mut Hand<'_>, lot: &SeedLot, set: impl FnOnce(&mut LotContents)) {
    let mut contents = LotContents::from(lot);
    set(&mut contents);
    hand.out
        .push(Command::Edit(Edit::Seed(SeedEdit::SetLot(lot.id, contents))));
}

fn crop(ui: &mut Ui, hand: &mut Hand<'_>, lot: &SeedLot, field: Id) {
    let book = hand.desk.crop_book();
    let crops = book.crops();
    let choices: Vec<Choice> = crops
        .iter()
        .map(|crop| Choice::of_crop(crop, book, hand.desk.layout()))
        .collect();
    let current = book
        .crop(&lot.crop)
        .map_or_else(|| lot.crop.0.clone(), |crop| crop.name.clone());
    let picked = form::line(ui, "Crop", |ui| {
        let width = ui.available_width();
        picker(ui, field.with("crop"), "Crop", &current, &choices, width)
    });
    let picked = picked.and_then(|place| crops.get(place)).map(|crop| crop.id.clone());
    if let Some(crop) = picked {
        let known = cultivar::known(hand.desk.layout(), &crop);
        let stays = known.iter().any(|choice| same_cultivar(&choice.name, &lot.cultivar));
        change(hand, lot, |lot| {
            lot.crop = crop;
            if !stays {
                lot.cultivar.clear();
            }
        });
        let dropped = lot.cultivar.trim();
        if !stays && !dropped.is_empty() {
            let words = format!("“{dropped}” is a cultivar of {current}, so the lot has none now");
            hand.out.push(Command::Say(words));
        }
    }
}

/// The form in which the lot lies here: one cultivar may come as seed, as sets and as plants.
fn form_of(ui: &mut Ui, hand: &mut Hand<'_>, lot: &SeedLot, field: Id) {
    let usual = usual_things(hand, lot);
    let all = [Form::Seed, Form::Pieces, Form::Plants].map(|form| {
        let things = Things::in_form(Some(form), usual);
        (things.name(), (things != usual).then_some(form))
    });
    let chosen = Things::in_form(lot.form, usual).name();
    if let Some(form) = form::choices(ui, field.with("form"), "Holds", chosen, &all) {
        change(hand, lot, |lot| lot.form = form);
    }
}

fn germination(ui: &mut Ui, hand: &mut Hand<'_>, lot: &SeedLot, field: Id) {
    let shown = seed_words::germination(lot.germination);
    let season = hand.desk.layout().season;
    let read = |text: &str| seed_words::read_germination(text, season);
    if let Some(germination) = form::field(ui, field.with("germination"), "Germination", &shown, read) {
        change(hand, lot, |lot| lot.germination = germination);
    }
    match lot.germination {
        LotGermination::NotKnown => {
            form::follows(ui, "as the tag says, 85 %, or as your own test found, 34 of 40");
        }
        LotGermination::Tag(_) => form::follows(ui, "as the tag says; your own test goes in as 34 of 40"),
        LotGermination::OwnTest { came_up, of, on } => match agronomy::germination_test(came_up, of) {
            Ok(test) => {
                let words = format!(
                    "{} came up; after a test of {} seeds the lot itself lies between {} and {}, 19 times out of 20",
                    test.found.show(),
                    count(u64::from(of)),
                    test.low.show(),
                    test.high.show()
                );
                let label = ui.label(RichText::new(words).small().weak());
                let shown = on.map_or_else(String::new, day_words);
                let read = |text: &str| read_day(text, season);
                if let Some(on) = form::field(ui, field.with("tested on"), "Tested on", &shown, read) {
                    let germination = LotGermination::OwnTest { came_up, of, on };
                    change(hand, lot, |lot| lot.germination = germination);
                }
                if on.is_none() {
                    form::follows(ui, "the day, such as 12 February; may stay empty");
                } else if on.is_some_and(|on| agronomy::test_is_old(on, season)) {
                    form::wrong(
                        ui,
                        "an old test: seed grows weaker on the shelf, so test again in the winter before it is sown (common \
                         practice, no source)",
                    );
                }
                let source = Catalog::built_in().cite_key("WILSON-1927", Mark::FromMemory);
                label.on_hover_text(format!("95 % Wilson score interval: {source}"));
            }
            Err(error) => form::wrong(ui, &error.to_string()),
        },
    }
}

/// What the plan takes of the lot.
fn taken(ui: &mut Ui, hand: &mut Hand<'_>, lot: &SeedLot, things: Things, units: Units) {
    form::section(ui, "What takes it");
    let plan = hand.desk.plan().clone();
    let mut any = false;
    for line in &plan.order.lines {
        for drawn in line.drawn.iter().filter(|drawn| drawn.lot == lot.id) {
            any = true;
            form::follows(
                ui,
                format!("{} for {}", quantity_words(drawn.amount, things, units), line.name()),
            );
            for of in &line.beds {
                let Some(bed) = hand.desk.layout().bed(of.bed) else {
                    continue;
                };
                if form::list_line(ui, false, &bed.name, "").clicked() {
                    hand.out.push(Command::GoTo(Item::Bed(of.bed)));
                }
            }
        }
    }
    let layout = hand.desk.layout();
    let crop = hand.desk.crop_book().cultivar(&lot.crop, &lot.cultivar);
    let age = LotAge::of(lot, crop, layout.season);
    if !any {
        let other_form = other_form(hand, lot, things);
        form::follows(
            ui,
            if age == LotAge::AfterSeason {
                "its year lies after the season, so nothing is drawn from it"
            } else if age == LotAge::OldAndUnknown {
                "it is older than its kind keeps, so nothing is drawn from it until you say how much of it comes up"
            } else if lot.amount.is_nothing() {
                "there is nothing of it yet, or nothing is left"
            } else if lot.germination.found().is_some_and(|found| found <= Fraction::ZERO) {
                "nothing of it came up in the test, so nothing is drawn from it"
            } else if other_form.is_some() {
                "nothing is drawn from it yet"
            } else {
                "no bed of this crop and cultivar needs it"
            },
        );
        if let Some(words) = other_form {
            form::wrong(ui, &words);
        }
    }
    ui.add_space(4.0);
    ui.horizontal(|ui| {
        if ui.button("The whole shelf").clicked() {
            hand.out.push(Command::Step(Step::Sow));
        }
        let order = ui.button(Action::OrderList.label());
        if order.on_hover_text(Action::OrderList.tooltip()).clicked() {
            hand.out.push(Command::Act(Action::OrderList));
        }
    });
}

/// What to do where beds of the crop are planted from another form than the lot's.
fn other_form(hand: &Hand<'_>, lot: &SeedLot, things: Things) -> Option<String> {
    let of_crop = |line: &&Arc<OrderLine>| {
        line.crop == lot.crop && same_cultivar(&line.cultivar, &lot.cultivar) && line.things.form() != things.form()
    };
    let line = hand.desk.plan().order.lines.iter().find(of_crop)?;
    let counts = match line.things {
        Things::Plants => "bought plants",
        other => other.name(),
    };
    let way = match (things.form(), line.things.form()) {
        (Form::Seed, Form::Plants) => "“raised in trays” to sow this lot, or another way from seed",
        (Form::Seed, _) => "a way from seed to sow this lot",
        (Form::Pieces, _) => "“sets or pieces” to plant this lot",
        (Form::Plants, _) => "“plants or slips” to plant this lot",
    };
    Some(format!(
        "{} is put in as {counts}: under “Put in as” on its bed's card choose {way}",
        line.name()
    ))
}
