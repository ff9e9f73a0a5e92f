//! Programmes published for the crop: looked at, and laid down in one step.

use egui::{Id, RichText, Ui};

use crate::app::card::Hand;
use crate::app::card::dressing::injecting;
use crate::app::card::planting::change;
use crate::app::card::planting::crop_of;
use crate::app::feed_words::span;
use crate::app::form;
use crate::catalog::{Catalog, Programme, ProgrammeId, ProgrammeStep, StepAmount};
use crate::layout::{Amount, Basis, Bed, BedChange, Dressing, Injecting, Placement};
use crate::plan::feeding::programme_dressings;
use crate::quantity::{Units, counted};
use crate::sheets::dressing_words;

pub(super) fn show(ui: &mut Ui, hand: &mut Hand<'_>, bed: &Bed, field: Id) {
    let Some(crop) = crop_of(hand, bed).map(|crop| crop.kin.clone()) else {
        form::follows(ui, "choose a crop to see the programmes published for it");
        return;
    };
    let programmes: Vec<&Programme> = Catalog::built_in().programmes_for(&crop).collect();
    if programmes.is_empty() {
        form::follows(ui, "none is published here for this crop; add dressings of your own");
        return;
    }
    let at = field.with("open programme");
    let mut open: Option<ProgrammeId> = ui.data(|data| data.get_temp(at));
    for programme in programmes {
        let is_open = open.as_ref() == Some(&programme.id);
        if form::opening_line(ui, is_open, &programme.name, "").clicked() {
            open = if is_open { None } else { Some(programme.id.clone()) };
        }
        if is_open {
            one(ui, hand, bed, programme);
        }
    }
    ui.data_mut(|data| match open {
        Some(id) => {
            data.insert_temp(at, id);
        }
        None => {
            data.remove::<ProgrammeId>(at);
        }
    });
}

fn one(ui: &mut Ui, hand: &mut Hand<'_>, bed: &Bed, programme: &Programme) {
    let units = hand.desk.layout().units;
    let dressings = to_lay_down(programme, units);
    if !programme.condition.is_empty() {
        form::follows(ui, format!("for {}", programme.condition));
    }
    ui.label(RichText::new(&programme.note.value).small())
        .on_hover_text(Catalog::built_in().cite_value(&programme.note));
    for step in &programme.steps {
        // What is given more than once is a dressing each time, and told once.
        if let Some(dressing) = dressings.iter().find(|dressing| dressing.name == step.name) {
            line(ui, hand, step, dressing, units);
        }
    }
    let through_tape = dressings
        .iter()
        .any(|dressing| matches!(dressing.placement, Placement::Injected(_)));
    if through_tape && !bed.water.through_tape() {
        form::wrong(
            ui,
            &format!(
                "a part of it goes through the tape, and this bed's water is {}",
                bed.water.name()
            ),
        );
    }
    if ui
        .button("Lay it down")
        .on_hover_text("Put its dressings on the bed, to be changed as you like; undo takes them back")
        .clicked()
    {
        change(
            hand,
            bed,
            BedChange::LayDown {
                name: programme.name.clone(),
                dressings,
                in_place: true,
            },
        );
    }
    let not_done = bed.dressings.iter().filter(|dressing| dressing.used.is_empty()).count();
    if not_done > 0 {
        form::follows(
            ui,
            format!(
                "in place of the {} not done yet; undo brings {} back",
                counted(not_done as u64, "dressing", "dressings"),
                if not_done == 1 { "it" } else { "them" }
            ),
        );
    }
    ui.add_space(4.0);
}

/// The programme's dressings, with a tank and a pipe in the layout's own units.
fn to_lay_down(programme: &Programme, units: Units) -> Vec<Dressing> {
    let mut dressings = programme_dressings(programme);
    for dressing in &mut dressings {
        if let Placement::Injected(of_programme) = dressing.placement {
            dressing.placement = Placement::Injected(Injecting {
                times: of_programme.times,
                every_days: of_programme.every_days,
                ..injecting(of_programme.strip, units)
            });
        }
    }
    dressings
}

/// A step in words, with its sources behind them.
fn line(ui: &mut Ui, hand: &Hand<'_>, step: &ProgrammeStep, dressing: &Dressing, units: Units) {
    let material = hand
        .desk
        .material_book()
        .get(&step.material)
        .map_or(step.material.0.as_str(), |known| known.material.name.as_str());
    let mut words = vec![
        dressing.when.words(),
        format!("{} as {material}", how_much(step, dressing, units)),
        dressing_words::way(dressing.placement).to_owned(),
    ];
    if let Some(repeat) = &step.repeat {
        words.push(format!(
            "{} times, every {}",
            repeat.times.value,
            counted(u64::from(repeat.every_days.value), "day", "days")
        ));
    }
    ui.label(RichText::new(&step.name).size(13.0));
    let rate = match &step.rate.amount {
        StepAmount::OverGround(ends) => Catalog::built_in().cite_value(&ends.low),
        StepAmount::AlongRow(ends) => Catalog::built_in().cite_value(&ends.low),
    };
    ui.label(RichText::new(words.join(" · ")).small().weak())
        .on_hover_text(format!(
            "The time: {}\nThe rate: {rate}",
            Catalog::built_in().cite_value(&step.stage)
        ));
}

/// How much of a step is published, and what of it is laid down where that is a range.
fn how_much(step: &ProgrammeStep, dressing: &Dressing, units: Units) -> String {
    let words = |amount: Amount| dressing_words::rate(amount, None, dressing.basis, units);
    let (low, high) = match &step.rate.amount {
        StepAmount::OverGround(ends) => (Amount::PerArea(ends.low.value), Amount::PerArea(ends.high.value)),
        StepAmount::AlongRow(ends) => (
            Amount::PerRowLength(ends.low.value),
            Amount::PerRowLength(ends.high.value),
        ),
    };
    let (low, high) = (words(low), words(high));
    let of = match dressing.basis {
        Basis::Product => String::new(),
        basis => format!(" of {}", dressing_words::counted(basis)),
    };
    let middle = if low == high {
        String::new()
    } else {
        format!(", laid down at {},", words(dressing.amount))
    };
    format!("{}{of}{middle}", span(&low, &high))
}
