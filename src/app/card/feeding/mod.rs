//! The part of a bed's card on feeding: what it wants, what it has, how it stands, and programmes to lay down.

mod accounts;
mod compost;
mod credit;
mod credits;
mod lime;
mod paper;
mod programme;
mod soil;
mod wants;

use egui::{Id, RichText, Ui};

use super::planting::change;
use super::{Hand, tape};
use crate::app::day_words;
use crate::app::form;
use crate::app::theme;
use crate::catalog::Catalog;
use crate::layout::{Bed, BedChange, Sowing};
use crate::plan::feeding::cautions_for_bed;
use crate::sheets::held_together;

/// Draws what a bed wants and has.
pub(super) fn show(ui: &mut Ui, hand: &mut Hand<'_>, bed: &Bed, field: Id) {
    planted(ui, hand, bed, field);
    heading(ui, "Wants");
    wants::show(ui, hand, bed, field);
    heading(ui, "Has already");
    credits::show(ui, hand, bed, field);
    let title = form::folded_title(ui, "Reckon from a soil test or manure");
    egui::CollapsingHeader::new(title)
        .id_salt("soil tests")
        .show_unindented(ui, |ui| soil::show(ui, hand, bed, field));
    heading(ui, "How it stands");
    accounts::show(ui, hand, bed);
    heading(ui, "Published programmes");
    programme::show(ui, hand, bed, field);
    if bed.water.through_tape() {
        heading(ui, "Fed with others");
        tape::zone(ui, hand, bed, field.with("feeding"));
    }
}

/// What to watch out for with what is put down on the bed, one line each.
pub(super) fn cautions(ui: &mut Ui, hand: &Hand<'_>, bed: &Bed) {
    let layout = hand.desk.layout();
    let Some(plan) = hand.desk.plan().bed(bed.id) else {
        return;
    };
    for caution in cautions_for_bed(bed, plan, layout.organic, hand.desk.material_book()) {
        ui.label(RichText::new(held_together(caution.words(layout.units))).small())
            .on_hover_text(Catalog::built_in().cite_value(&caution.sentence));
    }
}

/// The day it is planted, from which stages count.
fn planted(ui: &mut Ui, hand: &mut Hand<'_>, bed: &Bed, field: Id) {
    let Some(planting) = &bed.planting else { return };
    let season = hand.desk.layout().season;
    let shown = planting
        .planted
        .map_or_else(String::new, |day| day_words::day(day, season));
    let read = |text: &str| day_words::read_day(text, season);
    if let Some(day) = form::field(ui, field.with("planted"), "Planted on", &shown, read) {
        change(hand, bed, BedChange::SetPlanted(day));
    }
    let set_out = match planting.sowing {
        Some(Sowing::Raised(raised)) => raised.set_out,
        _ => None,
    };
    match (planting.planted, set_out) {
        (None, Some(day)) => form::follows(
            ui,
            format!("set out on {}, as under Seed and planting", day_words::day(day, season)),
        ),
        (None, None) => form::follows(ui, "such as 10 May; stages of growth are dated from it"),
        (Some(_), _) => {}
    }
}

fn heading(ui: &mut Ui, words: &str) {
    ui.add_space(6.0);
    ui.label(RichText::new(words).font(theme::bold(13.0)));
}
