//! What comes of mixing: the cheapest mix, or what is in the way and the two nearest mixes; and laying one down.

use egui::{RichText, Ui};

use super::mixing::Mixing;
use super::words::price;
use crate::app::command::Command;
use crate::app::desk::Desk;
use crate::app::form;
use crate::app::step::Step;
use crate::app::theme::{self, ThemeInForce as _};
use crate::catalog::{Catalog, Mark};
use crate::layout::{Bed, BedChange, Edit, Item};
use crate::plan::BedPlan;
use crate::plan::feeding::{MixBlend, MixFound, MixLine, mixed_dressings};
use crate::quantity::{Length, Mass, MassPerArea, Units, counted, number};

impl Mixing {
    /// Draws the answer. Gives back whether the shed stays open.
    pub(super) fn answer(
        &mut self,
        ui: &mut Ui,
        desk: &Desk,
        bed: &Bed,
        plan: &BedPlan,
        out: &mut Vec<Command>,
    ) -> bool {
        let units = desk.layout().units;
        let asked = self.asked(desk, bed, plan);
        let rows = plan.totals.row_length;
        ui.add_space(8.0);
        form::rule(ui);
        let found = match self.found(desk, asked, units) {
            Ok(found) => found,
            Err(sentence) => {
                form::wrong(ui, &sentence);
                return true;
            }
        };
        let mut stays = true;
        match &found {
            MixFound::Met(blend) => {
                let title = match blend.unpriced.is_empty() {
                    true => "The cheapest mix by weight",
                    false => "The lightest mix",
                };
                stays = self.blend(ui, bed, title, "", blend, rows, units, out);
            }
            MixFound::Unmet {
                least_short,
                never_over,
                in_the_way,
            } => {
                let accent = theme::colours(ui.theme_in_force()).accent;
                let words = "No mix of these keeps to every limit.";
                ui.label(RichText::new(words).font(theme::bold(15.0)).color(accent));
                let why = match in_the_way.as_slice() {
                    [] => "More than one limit is in the way; ticking more materials may help.".to_owned(),
                    [one] => format!("In the way is {one}."),
                    many => format!("In the way is any of these: {}.", many.join("; ")),
                };
                ui.label(why);
                let same = least_short.lines == never_over.lines;
                let title = if same {
                    "The nearest mix"
                } else {
                    "Comes nearest to what is wanted"
                };
                stays &= self.blend(ui, bed, title, "least short", least_short, rows, units, out);
                if !same {
                    stays &= self.blend(ui, bed, "Goes over nothing", "never over", never_over, rows, units, out);
                }
            }
        }
        stays
    }

    /// One mix, and the button that lays it down. Gives back whether the shed stays open.
    #[expect(clippy::too_many_arguments, reason = "everything one mix is drawn from")]
    fn blend(
        &self,
        ui: &mut Ui,
        bed: &Bed,
        title: &str,
        which: &str,
        blend: &MixBlend,
        rows: Length,
        units: Units,
        out: &mut Vec<Command>,
    ) -> bool {
        let colours = theme::colours(ui.theme_in_force());
        ui.add_space(8.0);
        ui.label(RichText::new(title).font(theme::bold(16.0)));
        if !blend.unpriced.is_empty() {
            let names = blend.unpriced.join("; ");
            form::follows(
                ui,
                format!(
                    "Not the cheapest: a bag or its price is not known of {names}. So it is the one that weighs least."
                ),
            );
        }
        if blend.lines.is_empty() {
            form::follows(ui, "nothing at all");
        } else {
            table(ui, title, blend, rows, units);
            if let Some(words) = bags_words(blend) {
                ui.label(words);
            }
        }
        let brings = [
            ("nitrogen", blend.brings.n),
            ("phosphate", blend.brings.p2o5),
            ("potash", blend.brings.k2o),
        ];
        let brings: Vec<String> = brings
            .into_iter()
            .filter(|(_, rate)| *rate > MassPerArea::ZERO)
            .map(|(name, rate)| format!("{name} {}", rate.show_field(units)))
            .collect();
        if !brings.is_empty() {
            ui.label(format!("Brings {}.", brings.join(", ")));
        }
        if let Some(index) = blend.salt_index {
            let words = format!(
                "Salt index {}: weight for weight, sodium nitrate is 100.",
                number(index, 0)
            );
            ui.label(RichText::new(words).color(colours.soft))
                .on_hover_text(Catalog::built_in().cite_key("MORTVEDT", Mark::FromMemory));
        }
        for miss in &blend.misses {
            form::wrong(ui, miss);
        }
        if !blend.beyond.is_empty() {
            let beyond = blend.beyond.join("; ");
            ui.label(RichText::new(format!("Beyond what is wanted: {beyond}.")).color(colours.soft));
        }
        if blend.lines.is_empty() {
            return true;
        }
        ui.add_space(4.0);
        let words = format!("Lay it down {}", self.goes.words());
        let button = ui.button(&words);
        let button = match which {
            "" => button,
            which => button.accessible_name(format!("{words} ({which})")),
        };
        if !button.clicked() {
            return true;
        }
        let dressings = mixed_dressings(blend, "Mix", self.goes.placement(units), &self.when());
        let said = counted(dressings.len() as u64, "dressing", "dressings");
        let change = BedChange::LayDown {
            name: "a mix".to_owned(),
            dressings,
            in_place: false,
        };
        out.push(Command::Edit(Edit::Bed(bed.id, change)));
        out.push(Command::Step(Step::Feed));
        out.push(Command::GoTo(Item::Bed(bed.id)));
        out.push(Command::Say(format!("Laid down in {}: {said}", bed.name)));
        false
    }
}

/// What is to be bought for a mix in whole bags, as far as bags are known.
fn bags_words(blend: &MixBlend) -> Option<String> {
    let known: Vec<(&MixLine, u64)> = blend.lines.iter().filter_map(|line| Some((line, line.bags?))).collect();
    let bought: Vec<String> = known
        .iter()
        .filter(|(_, bags)| *bags > 0)
        .map(|(line, bags)| format!("{} of {}", counted(*bags, "bag", "bags"), line.name))
        .collect();
    if known.is_empty() {
        return None;
    }
    if bought.is_empty() {
        return Some("Nothing to buy for it: bags that you have, or buy for other beds, hold it.".to_owned());
    }
    let cost: Option<f64> = known.iter().map(|(line, _)| line.bags_cost).sum();
    let cost = cost.map_or_else(String::new, |cost| format!(", {} in whole bags", price(cost)));
    Some(format!("To buy for it: {}{cost}.", bought.join(", ")))
}

/// The materials of a mix with their weights and costs, and their sum.
fn table(ui: &mut Ui, title: &str, blend: &MixBlend, rows: Length, units: Units) {
    let soft = theme::colours(ui.theme_in_force()).soft;
    let any_cost = blend.lines.iter().any(|line| line.cost.is_some());
    egui::Grid::new(("mix", title))
        .num_columns(5)
        .spacing([16.0, 4.0])
        .striped(true)
        .show(ui, |ui| {
            for head in ["", "over ground", "along the row", "for the bed"] {
                ui.label(RichText::new(head).size(12.0).color(soft));
            }
            if any_cost {
                ui.label(RichText::new("costs").size(12.0).color(soft));
            }
            ui.end_row();
            for line in &blend.lines {
                ui.scope(|ui| {
                    ui.set_max_width(200.0);
                    ui.add(egui::Label::new(&line.name).truncate());
                });
                ui.label(line.rate.show_garden(units));
                let along = (rows > Length::ZERO).then(|| (line.total / rows).show(units));
                ui.label(along.unwrap_or_default());
                ui.label(RichText::new(line.total.show_product(units)).font(theme::bold(14.0)));
                if any_cost {
                    ui.label(line.cost.map_or_else(|| "no price".to_owned(), price));
                }
                ui.end_row();
            }
            if blend.lines.len() > 1 {
                ui.label(RichText::new("All together").color(soft));
                ui.label(
                    blend
                        .lines
                        .iter()
                        .map(|line| line.rate)
                        .sum::<MassPerArea>()
                        .show_garden(units),
                );
                let total: Mass = blend.lines.iter().map(|line| line.total).sum();
                let along = (rows > Length::ZERO).then(|| (total / rows).show(units));
                ui.label(along.unwrap_or_default());
                ui.label(RichText::new(total.show_product(units)).font(theme::bold(14.0)));
                if any_cost {
                    // As shown, so that the column adds up.
                    let shown = |line: &MixLine| line.cost.map(|cost| (cost * 100.0).round() / 100.0);
                    let cost: Option<f64> = blend.lines.iter().map(shown).sum();
                    ui.label(cost.map_or_else(|| "not known".to_owned(), price));
                }
                ui.end_row();
            }
        });
}
