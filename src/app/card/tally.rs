//! The answer of a bed in one line: rows, row feet, plants.

use egui::{Align, Layout, RichText, Ui};

use crate::app::form;
use crate::app::theme::{self, ThemeInForce as _};
use crate::app::wording::row_length;
use crate::plan::{BedPlan, Row};
use crate::quantity::counted;
use crate::quantity::{Length, Units, count};

/// Rows, row feet and plants in large, the width left over below.
pub(super) fn show(ui: &mut Ui, plan: &BedPlan, units: Units) {
    if let Some(problem) = &plan.problem {
        form::wrong(ui, problem);
        return;
    }
    let totals = &plan.totals;
    let strong = theme::colours(ui.theme_in_force()).strong;
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing.x = 16.0;
        let mut big = |words: String| ui.label(RichText::new(words).font(theme::bold(15.0)).color(strong));
        big(counted(totals.rows, "row", "rows"));
        big(row_length(totals.row_length, units));
        if plan.stand.is_some() {
            big(counted(totals.plants, "plant", "plants"));
        }
    });
    form::follows(ui, left_over(plan.fit.remainder, units));
    if totals.seeds > 0 {
        let seeds = count(totals.seeds);
        form::follows(
            ui,
            totals.seed_mass.map_or_else(
                || format!("{seeds} seeds"),
                |mass| format!("{seeds} seeds, {}", mass.show_seed(units)),
            ),
        );
    }
    if totals.tape > Length::ZERO {
        form::follows(ui, format!("{} of tape", totals.tape.show_total(units)));
    }
}

/// Height of the line of the chosen row.
const ROW_LINE: f32 = 20.0;

/// The chosen row, on a line that is there without one as well: what stands below must not move when a row is chosen.
pub(super) fn row(ui: &mut Ui, row: Option<&Row>, units: Units) {
    let colours = theme::colours(ui.theme_in_force());
    let words = match row {
        Some(row) => {
            let mut words = format!("Row {} · {}", row.number, row.length.show(units));
            if row.plants > 0 {
                words.push_str(&format!(" · {} plants", count(row.plants)));
            }
            RichText::new(words).font(theme::bold(14.0)).color(colours.accent)
        }
        None => RichText::new("click a row to read its numbers here")
            .small()
            .color(colours.soft),
    };
    let size = egui::vec2(ui.available_width(), ROW_LINE);
    ui.allocate_ui_with_layout(size, Layout::left_to_right(Align::Center), |ui| {
        ui.set_min_size(size);
        ui.add(egui::Label::new(words).truncate());
    });
}

fn left_over(remainder: Length, units: Units) -> String {
    if remainder <= Length::TOLERANCE {
        "no width left over".to_owned()
    } else {
        format!("{} of width left over", remainder.show_short(units))
    }
}
