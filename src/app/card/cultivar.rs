//! The cultivar of a bed or a lot: free words, with those that are known to pick from.

use egui::{Id, Ui};

use super::Hand;
use crate::app::form;
use crate::app::picker::{Choice, OFFERS_WIDTH, offers};
use crate::app::unit_field::unit_field;
use crate::catalog::CropId;
use crate::layout::{Layout, same_cultivar};

/// Draws the line. Gives back the name that was typed or picked.
pub(super) fn show(ui: &mut Ui, hand: &Hand<'_>, field: Id, crop: &CropId, cultivar: &str) -> Option<String> {
    let mut known = known(hand.desk.layout(), crop);
    if known.iter().all(|choice| same_cultivar(&choice.name, cultivar)) {
        // The one that stands there already is no help.
        known.clear();
    }
    let mut picked = None;
    let reply = form::line(ui, "Cultivar", |ui| {
        ui.spacing_mut().item_spacing.x = 6.0;
        let room = ui.available_width();
        let offered = if known.is_empty() { 0.0 } else { OFFERS_WIDTH + 6.0 };
        let id = field.with("cultivar");
        let reply = unit_field(ui, id, cultivar, room - offered, form::read_words);
        if !known.is_empty() {
            picked = offers(ui, id.with("known"), "cultivars", &known);
        }
        reply
    });
    if let Some(sentence) = &reply.wrong {
        form::wrong(ui, sentence);
    }
    let picked = picked.and_then(|place| known.into_iter().nth(place));
    picked.map(|choice| choice.name).or(reply.accepted)
}

/// The cultivars of a crop that stand anywhere in the layout, each once, with the first place where it stands: the grower's own,
/// then the shelf's, those that are sold, and those that other beds have.
pub(in crate::app) fn known(layout: &Layout, crop: &CropId) -> Vec<Choice> {
    let mut known: Vec<Choice> = Vec::new();
    let mut add = |name: &str, place: &str| {
        let is_there = known.iter().any(|choice| same_cultivar(&choice.name, name));
        if !is_there && !name.trim().is_empty() {
            known.push(Choice::named(name.trim(), place));
        }
    };
    for cultivar in layout.cultivars.iter().filter(|cultivar| cultivar.crop == *crop) {
        add(&cultivar.name, "in the crop book");
    }
    for lot in layout.lots.iter().filter(|lot| lot.crop == *crop) {
        add(&lot.cultivar, "on the shelf");
    }
    for list in layout.packets.iter().filter(|list| list.crop == *crop) {
        add(&list.cultivar, "in packets");
    }
    for bed in &layout.beds {
        if let Some(planting) = bed.planting.as_ref().filter(|planting| planting.crop == *crop) {
            add(&planting.cultivar, &format!("in {}", bed.name));
        }
    }
    known
}
