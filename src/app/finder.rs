//! Finding by part of a name: actions, plots, beds, what stands in the way, crops for the bed in hand, and materials of
//! the fertilizer shed.

use egui::{Id, Key, Modifiers, RichText, TextEdit, Ui};

use super::action::Action;
use super::command::Command;
use super::desk::Desk;
use super::form;
use super::matching::{other_names, rank_any};
use super::theme::{self, ThemeInForce as _};
use crate::layout::{BedChange, Edit, Item};

/// The finder while it is open.
#[derive(Default)]
pub(super) struct Finder {
    text: String,
    at: usize,
    /// Focus is given once, when it opens.
    started: bool,
}

/// Something that can be found.
struct Found {
    name: String,
    note: String,
    rank: u8,
    command: Command,
}

/// More lines than anyone reads.
const MOST: usize = 60;

/// Draws the finder. Gives back whether it stays open.
pub(super) fn show(ui: &mut Ui, desk: &Desk, finder: &mut Finder, out: &mut Vec<Command>) -> bool {
    let mut stays = true;
    let width = 520.0f32.min(ui.ctx().content_rect().width() - 40.0);
    let area = egui::Modal::default_area(Id::unique("finder")).anchor(egui::Align2::CENTER_TOP, egui::vec2(0.0, 64.0));
    let modal = egui::Modal::new(Id::unique("finder"))
        .frame(theme::dialog(ui.style()))
        .backdrop_color(theme::DIM)
        .area(area)
        .show(ui.ctx(), |ui| {
            ui.set_width(width);
            let up = ui.input_mut(|input| input.consume_key(Modifiers::NONE, Key::ArrowUp));
            let down = ui.input_mut(|input| input.consume_key(Modifiers::NONE, Key::ArrowDown));
            let field = TextEdit::singleline(&mut finder.text)
                .id(Id::unique("finder text"))
                .hint_text("Type part of a name: an action, a bed, a crop, a fertilizer")
                .desired_width(f32::INFINITY);
            let field = ui.add(field).accessible_name("Find");
            if !finder.started {
                field.request_focus();
                finder.started = true;
            }
            if field.changed() {
                finder.at = 0;
            }
            let found = find(desk, &finder.text);
            if down {
                finder.at = (finder.at + 1).min(found.len().saturating_sub(1));
            }
            if up {
                finder.at = finder.at.saturating_sub(1);
            }
            let mut taken = None;
            if field.lost_focus() && ui.input(|input| input.key_pressed(Key::Enter)) {
                taken = Some(finder.at);
            }
            ui.add_space(4.0);
            egui::ScrollArea::vertical()
                .max_height(380.0)
                .min_scrolled_height(380.0)
                .auto_shrink([false, true])
                .show(ui, |ui| {
                    ui.spacing_mut().item_spacing.y = 1.0;
                    for (place, line) in found.iter().enumerate() {
                        let response = form::list_line(ui, place == finder.at, &line.name, &line.note);
                        if (up || down) && place == finder.at {
                            response.scroll_to_me(None);
                        }
                        if response.clicked() {
                            taken = Some(place);
                        }
                    }
                    if found.is_empty() {
                        let soft = theme::colours(ui.theme_in_force()).soft;
                        ui.label(RichText::new("Nothing has that in its name.").color(soft));
                    }
                });
            if let Some(found) = taken.and_then(|place| found.into_iter().nth(place)) {
                out.push(found.command);
                stays = false;
            }
        });
    stays && !modal.should_close()
}

/// Everything that has the text in its name, best matches first.
fn find(desk: &Desk, text: &str) -> Vec<Found> {
    let text = text.trim().to_lowercase();
    let mut found = Vec::new();
    let mut offer_any = |name: &str, others: &[String], note: String, command: Command| {
        if let Some((rank, other)) = rank_any(name, others, &text) {
            found.push(Found {
                name: name.to_owned(),
                note: match other {
                    Some(other) => format!("{other} · {note}"),
                    None => note,
                },
                rank,
                command,
            });
        }
    };
    let mut offer = |name: &str, note: String, command: Command| offer_any(name, &[], note, command);
    for action in Action::ALL {
        if action != Action::Find {
            let keys = action.shortcut().map_or_else(String::new, |shortcut| {
                shortcut.format(&egui::ModifierNames::NAMES, cfg!(target_os = "macos"))
            });
            offer(action.label(), keys, Command::Act(action));
        }
    }
    let layout = desk.layout();
    for plot in &layout.plots {
        offer(&plot.name, "plot".to_owned(), Command::GoTo(Item::Plot(plot.id)));
        for obstacle in &plot.obstacles {
            let item = Item::Obstacle(plot.id, obstacle.id);
            offer(
                &obstacle.name,
                format!("in the way on {}", plot.name),
                Command::GoTo(item),
            );
        }
    }
    for bed in &layout.beds {
        let crop = desk.plan().bed(bed.id).and_then(|plan| plan.crop.as_ref());
        let note = crop.map_or_else(
            || "bed".to_owned(),
            |crop| format!("bed · {}", crop.name.to_lowercase()),
        );
        offer(&bed.name, note, Command::GoTo(Item::Bed(bed.id)));
        for dressing in &bed.dressings {
            let item = Item::Dressing(bed.id, dressing.id);
            offer(&dressing.name, format!("dressing of {}", bed.name), Command::GoTo(item));
        }
    }
    for lot in &layout.lots {
        let item = Item::Lot(lot.id);
        offer(
            &layout.name_of(item),
            "on the seed shelf".to_owned(),
            Command::Choose(Some(item)),
        );
    }
    if !text.is_empty() {
        let bed = desk.bed_in_hand().and_then(|bed| layout.bed(bed));
        for crop in desk.crop_book().crops() {
            let others = other_names(crop);
            if let Some(bed) = bed {
                let command = Command::Edit(Edit::Bed(bed.id, BedChange::SetCrop(crop.id.clone())));
                offer_any(&crop.name, &others, format!("plant it in {}", bed.name), command);
            }
            let command = Command::OpenBook(crop.id.clone(), String::new());
            offer_any(&crop.name, &others, "in the crop book".to_owned(), command);
        }
    }
    let mut offer = |name: &str, note: String, command: Command| offer_any(name, &[], note, command);
    if !text.is_empty() {
        // What a grower looks for by its other name.
        let bags = "Bags, prices and what is at hand of fertilizer";
        offer(bags, "in the fertilizer shed".to_owned(), Command::Act(Action::Shed));
        for known in desk.material_book().all() {
            let name = format!("{}, {}", known.material.name, known.analysis().label());
            let note = match known.shed {
                Some(_) => "in the fertilizer shed",
                None => "fertilizer",
            };
            offer(&name, note.to_owned(), Command::OpenShed(known.material.id.clone()));
        }
    }
    found.sort_by_key(|found| found.rank);
    found.truncate(MOST);
    found
}
