//! The crops of the book on the left: found by part of a name, by family and by season.

use std::collections::BTreeSet;

use egui::{Id, RichText, TextEdit, Ui};

use super::BookView;
use super::fresh::Fresh;
use crate::app::desk::Desk;
use crate::app::form;
use crate::app::theme::{self, ThemeInForce as _};
use crate::catalog::{Crop, CropId, Season};
use crate::layout::Layout;

impl BookView {
    /// Draws the search and what it finds.
    pub(super) fn list(&mut self, ui: &mut Ui, desk: &Desk) {
        let soft = theme::colours(ui.theme_in_force()).soft;
        let field = TextEdit::singleline(&mut self.find)
            .id(Id::unique("find in the crop book"))
            .hint_text("Part of a name, common or botanical")
            .desired_width(f32::INFINITY);
        let field = ui.add(field).accessible_name("Find a crop");
        let first_time = !self.started;
        if first_time {
            field.request_focus();
            self.started = true;
        }
        self.choices(ui, desk);
        ui.add_space(4.0);
        let book = desk.crop_book();
        let mut crops: Vec<&Crop> = book.find(&self.find);
        let named = of_named_cultivars(desk.layout(), &self.find);
        if !named.is_empty() {
            let found: BTreeSet<CropId> = crops.iter().map(|crop| crop.id.clone()).collect();
            crops = book.crops();
            crops.retain(|crop| found.contains(&crop.id) || named.contains(&crop.id));
        }
        crops.retain(|crop| {
            let of_family = self.family.as_ref().is_none_or(|family| crop.family == *family);
            let of_season = self.season.is_none_or(|season| crop.season() == Some(season));
            of_family && of_season
        });
        let words = match crops.len() {
            0 => "Nothing has that in its name.".to_owned(),
            1 => "1 crop".to_owned(),
            many => format!("{many} crops"),
        };
        ui.label(RichText::new(words).size(12.0).color(soft));
        let tip = "A crop of your own that starts with nothing from any other";
        if ui.button("A crop that is not here…").on_hover_text(tip).clicked() {
            // What was looked for, and is none of the crops, is most likely its name.
            let looked_for = self.find.trim();
            let is_there = crops.iter().any(|crop| crop.name.eq_ignore_ascii_case(looked_for));
            self.fresh = Some(Fresh::named(if is_there { "" } else { looked_for }));
        }
        let entered = field.lost_focus() && ui.input(|input| input.key_pressed(egui::Key::Enter));
        if entered && let Some(first) = crops.first() {
            self.fresh = None;
            self.open = Some((first.id.clone(), String::new()));
        }
        egui::ScrollArea::vertical().auto_shrink([false, false]).show(ui, |ui| {
            ui.spacing_mut().item_spacing.y = 1.0;
            for crop in crops {
                let is_at = self.open.as_ref().is_some_and(|(open, _)| *open == crop.id);
                let open = is_at && self.fresh.is_none();
                let own = desk.layout().own_crops.iter().any(|own| own.id == crop.id);
                let note = if own { "yours" } else { crop.family.as_str() };
                let line = form::list_line(ui, open, &crop.name, note);
                if open && first_time {
                    line.scroll_to_me(Some(egui::Align::Center));
                }
                if line.clicked() {
                    self.fresh = None;
                    self.open = Some((crop.id.clone(), String::new()));
                }
            }
        });
    }

    fn choices(&mut self, ui: &mut Ui, desk: &Desk) {
        let any = "any";
        let mut families: Vec<&str> = desk
            .crop_book()
            .crops()
            .iter()
            .map(|crop| crop.family.as_str())
            .collect();
        families.retain(|family| !family.is_empty());
        families.sort_unstable();
        families.dedup();
        let all: Vec<(&str, Option<&str>)> = std::iter::once((any, None))
            .chain(families.into_iter().map(|family| (family, Some(family))))
            .collect();
        let chosen = self.family.clone().unwrap_or_else(|| any.to_owned());
        if let Some(family) = form::choices(ui, Id::unique("family in the book"), "Family", &chosen, &all) {
            self.family = family.map(str::to_owned);
        }
        let all = [
            (any, None),
            (season_words(Season::Cool), Some(Season::Cool)),
            (season_words(Season::Warm), Some(Season::Warm)),
        ];
        let chosen = self.season.map_or(any, season_words);
        if let Some(season) = form::choices(ui, Id::unique("season in the book"), "Season", chosen, &all) {
            self.season = season;
        }
    }
}

/// Crops with a cultivar that the beds, the shelf or the packets name, and that has all the words typed in its name: the
/// book itself knows only those with values of their own.
fn of_named_cultivars(layout: &Layout, typed: &str) -> BTreeSet<CropId> {
    let words: Vec<String> = typed.split_whitespace().map(str::to_lowercase).collect();
    if words.is_empty() {
        return BTreeSet::new();
    }
    let beds = layout.beds.iter().filter_map(|bed| bed.planting.as_ref());
    let beds = beds.map(|planting| (&planting.crop, &planting.cultivar));
    let lots = layout.lots.iter().map(|lot| (&lot.crop, &lot.cultivar));
    let packets = layout.packets.iter().map(|list| (&list.crop, &list.cultivar));
    beds.chain(lots)
        .chain(packets)
        .filter(|(_, cultivar)| {
            let name = cultivar.to_lowercase();
            words.iter().all(|word| name.contains(word))
        })
        .map(|(crop, _)| crop.clone())
        .collect()
}

/// A season in words.
pub(super) const fn season_words(season: Season) -> &'static str {
    match season {
        Season::Cool => "cool season",
        Season::Warm => "warm season",
    }
}
