//! The sizes in which a supplier sells a cultivar, each with what it holds and what it costs.

use egui::{Id, RichText, Ui};

use super::Hand;
use crate::app::command::Command;
use crate::app::form;
use crate::app::seed_words;
use crate::app::theme::{self, ThemeInForce as _};
use crate::app::unit_field::unit_field;
use crate::layout::limits::MOST_SIZES;
use crate::layout::{Edit, Form, Packet, SeedAmount, SeedEdit, same_cultivar};
use crate::plan::{OrderLine, Things};
use crate::quantity::Units;
use crate::sheets::order_list::{amount_words, price_words};

/// Width of the field of a price.
const PRICE_WIDTH: f32 = 58.0;
const REMOVE_WIDTH: f32 = 26.0;
const LABEL_WIDTH: f32 = 58.0;

/// Draws the sizes of a cultivar, and a line for one more.
pub(super) fn show(ui: &mut Ui, hand: &mut Hand<'_>, line: &OrderLine, field: Id) {
    let (crop, cultivar, things) = (&line.crop, line.cultivar.as_str(), line.things);
    let layout = hand.desk.layout();
    let units = layout.units;
    let of_line = layout.packets.iter().filter(|list| {
        list.crop == *crop
            && same_cultivar(&list.cultivar, cultivar)
            && Things::in_form(list.form, line.on_shelf) == things
    });
    // A list that names its form goes before one that does not.
    let list = of_line.max_by_key(|list| list.form.is_some());
    let sizes: Vec<Packet> = list.map_or_else(Vec::new, |list| list.sizes.clone());
    let mut changed: Option<Vec<Packet>> = None;
    if !sizes.is_empty() {
        heads(ui);
    }
    for (place, packet) in sizes.iter().enumerate() {
        let label = format!("Packet {}", place + 1);
        let shown = amount_words(packet.amount, things, units);
        let mut wrong = None;
        let soft = theme::colours(ui.theme_in_force()).soft;
        ui.horizontal(|ui| {
            ui.spacing_mut().item_spacing.x = 6.0;
            // Hardly wider than its words: the field beside it needs the room.
            let size = egui::vec2(LABEL_WIDTH, ui.spacing().interact_size.y);
            ui.allocate_ui_with_layout(size, egui::Layout::left_to_right(egui::Align::Center), |ui| {
                ui.set_min_width(LABEL_WIDTH);
                ui.label(RichText::new(&label).size(13.0).color(soft));
            });
            let room = ui.available_width() - PRICE_WIDTH - REMOVE_WIDTH - 2.0 * ui.spacing().item_spacing.x;
            let id = field.with(("packet", place));
            let read = |text: &str| read_packet(text, units);
            let reply = unit_field(ui, id, &shown, room, read);
            reply.response.accessible_name(format!("{label} holds"));
            if let Some(amount) = reply.accepted {
                changed = Some(with(&sizes, place, |packet| packet.amount = amount));
            }
            wrong = reply.wrong;
            let shown = packet.price.map_or_else(String::new, price_words);
            let reply = unit_field(ui, id.with("price"), &shown, PRICE_WIDTH, seed_words::read_price);
            reply
                .response
                .on_hover_text("What it costs, in your own currency; may be left empty")
                .accessible_name(format!("{label} costs"));
            if let Some(price) = reply.accepted {
                changed = Some(with(&sizes, place, |packet| packet.price = price));
            }
            wrong = wrong.take().or(reply.wrong);
            ui.spacing_mut().button_padding.x = 6.0;
            let away = egui::Button::new(RichText::new("×").size(13.0)).min_size(egui::vec2(REMOVE_WIDTH, 26.0));
            let away = ui.add(away);
            away.widget_info(|| {
                egui::WidgetInfo::labeled(egui::Role::Button, true, format!("Remove {}", label.to_lowercase()))
            });
            if away.clicked() {
                let mut fewer = sizes.clone();
                fewer.remove(place);
                changed = Some(fewer);
            }
        });
        if let Some(sentence) = wrong {
            form::wrong(ui, &sentence);
        }
    }
    if sizes.len() < MOST_SIZES {
        let read = |text: &str| read_packet(text, units);
        let id = field.with(("new packet", sizes.len()));
        if let Some(amount) = form::field(ui, id, "Sold by the", "", read) {
            let mut more = sizes.clone();
            more.push(Packet { amount, price: None });
            changed = Some(more);
        }
        let weight = match units {
            Units::Customary => "1 oz",
            Units::Metric => "25 g",
        };
        form::follows(
            ui,
            if sizes.is_empty() {
                let counted = things.name();
                // Nobody weighs plants.
                let or = match things.form() {
                    Form::Plants => String::new(),
                    Form::Seed | Form::Pieces => format!("{weight} or "),
                };
                format!("a size your supplier sells, such as {or}250 {counted}; then what it costs")
            } else {
                "another size; beside each goes what it costs".to_owned()
            },
        );
    }
    if let Some(sizes) = changed {
        hand.out.push(Command::Edit(Edit::Seed(SeedEdit::SetPackets {
            crop: crop.clone(),
            cultivar: cultivar.to_owned(),
            form: list.map_or_else(|| line.packets_form(), |list| list.form),
            sizes,
        })));
    }
}

/// What the two fields of a size are.
fn heads(ui: &mut Ui) {
    let soft = theme::colours(ui.theme_in_force()).soft;
    let small = |words: &str| RichText::new(words).small().color(soft);
    ui.horizontal(|ui| {
        ui.spacing_mut().item_spacing.x = 6.0;
        ui.allocate_exact_size(egui::vec2(LABEL_WIDTH, 1.0), egui::Sense::hover());
        let room = ui.available_width() - PRICE_WIDTH - REMOVE_WIDTH - 2.0 * ui.spacing().item_spacing.x;
        ui.allocate_ui_with_layout(
            egui::vec2(room, 14.0),
            egui::Layout::left_to_right(egui::Align::Center),
            |ui| {
                ui.set_min_width(room);
                ui.label(small("one holds"));
            },
        );
        ui.label(small("one costs"));
    });
}

fn read_packet(text: &str, units: Units) -> Result<SeedAmount, String> {
    let amount = seed_words::read_amount(text, "a packet", units)?;
    if amount.is_nothing() {
        return Err("A packet holds more than nothing".to_owned());
    }
    Ok(amount)
}

fn with(sizes: &[Packet], place: usize, set: impl FnOnce(&mut Packet)) -> Vec<Packet> {
    let mut sizes = sizes.to_vec();
    if let Some(packet) = sizes.get_mut(place) {
        set(packet);
    }
    sizes
}
