//! All beds at a glance: one line a bed, with the sums by crop and by material.

use egui::{Grid, RichText, Ui};

use super::command::Command;
use super::desk::Desk;
use super::theme;
use super::wording::row_length;
use crate::layout::Item;
use crate::plan::Totals;
use crate::quantity::{Length, Units, count};

/// Draws the table. A click on a bed chooses it.
pub(super) fn show(ui: &mut Ui, desk: &Desk, out: &mut Vec<Command>) {
    let plan = desk.plan().clone();
    let layout = desk.layout();
    let units = layout.units;
    egui::ScrollArea::both()
        .id_salt("all beds")
        .auto_shrink([false, false])
        .show(ui, |ui| {
            Grid::new("sums of beds")
                .num_columns(8)
                .spacing([28.0, 4.0])
                .striped(false)
                .show(ui, |ui| {
                    heads(ui, &["Bed", "Crop", "Rows", "Length", "Plants", "Seed", "Tape"]);
                    for of_plan in &plan.beds {
                        let Some(bed) = layout.bed(of_plan.bed) else { continue };
                        if ui.link(RichText::new(&bed.name).size(13.0)).clicked() {
                            out.push(Command::Choose(Some(Item::Bed(bed.id))));
                        }
                        cell(
                            ui,
                            of_plan.crop.as_ref().map_or("no crop yet", |crop| crop.name.as_str()),
                        );
                        sums(ui, &of_plan.totals, units, false);
                        ui.end_row();
                    }
                    for crop in plan.crops.iter().filter(|_| plan.crops.len() > 1) {
                        bold(ui, "All of");
                        bold(ui, &crop.name);
                        sums(ui, &crop.totals, units, true);
                        ui.end_row();
                    }
                    bold(ui, "All beds");
                    bold(ui, "");
                    sums(ui, &plan.totals, units, true);
                    ui.end_row();
                });
            if !plan.materials.is_empty() {
                ui.add_space(10.0);
                Grid::new("sums of materials")
                    .num_columns(5)
                    .spacing([28.0, 4.0])
                    .show(ui, |ui| {
                        heads(ui, &["Fertilizer", "Product", "Nitrogen", "Phosphate", "Potash"]);
                        for material in &plan.materials {
                            cell(ui, &material.name);
                            for mass in [material.product, material.n, material.p2o5, material.k2o] {
                                right(ui, mass.show_product(units), false);
                            }
                            ui.end_row();
                        }
                    });
            }
        });
}

fn sums(ui: &mut Ui, totals: &Totals, units: Units, heavy: bool) {
    right(ui, count(totals.rows), heavy);
    right(ui, row_length(totals.row_length, units), heavy);
    right(ui, count(totals.plants), heavy);
    let seed = totals.seed_mass.filter(|_| totals.seeds > 0);
    right(ui, seed.map_or_else(String::new, |mass| mass.show_seed(units)), heavy);
    let tape = totals.tape > Length::ZERO;
    right(
        ui,
        if tape {
            totals.tape.show_total(units)
        } else {
            String::new()
        },
        heavy,
    );
}

fn heads(ui: &mut Ui, titles: &[&str]) {
    for (index, title) in titles.iter().enumerate() {
        let words = RichText::new(*title).small().weak();
        if index < 1 || *title == "Crop" {
            ui.label(words);
        } else {
            ui.with_layout(egui::Layout::right_to_left(egui::Align::Center), |ui| ui.label(words));
        }
    }
    ui.end_row();
}

fn cell(ui: &mut Ui, text: &str) {
    ui.label(RichText::new(text).size(13.0));
}

fn bold(ui: &mut Ui, text: &str) {
    ui.label(RichText::new(text).font(theme::bold(13.0)));
}

fn right(ui: &mut Ui, text: String, heavy: bool) {
    let words = if heavy {
        RichText::new(text).font(theme::bold(13.0))
    } else {
        RichText::new(text).size(13.0)
    };
    ui.with_layout(egui::Layout::right_to_left(egui::Align::Center), |ui| ui.label(words));
}
