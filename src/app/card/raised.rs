//! Plants raised in trays: seeds in a cell, losses, tray, weeks, and the day of setting out.

use egui::{Id, Ui};

use super::Hand;
use super::planting::{change, crop_of};
use crate::app::day_words;
use crate::app::form;
use crate::app::seed_words::{read_weeks, weeks};
use crate::catalog::Mark;
use crate::layout::limits::{MOST_CELLS, MOST_LOST, MOST_SEEDS_PER_PLANT};
use crate::layout::{Bed, BedChange, Planting, Raised, Sowing};
use crate::quantity::Fraction;

/// Draws the lines, and takes over what is changed in them.
pub(super) fn show(ui: &mut Ui, hand: &mut Hand<'_>, bed: &Bed, planting: &Planting, raised: Raised, field: Id) {
    // The day may be that of planting the bed, which is kept beside the way.
    let kept = match planting.sowing {
        Some(Sowing::Raised(raised)) => raised.set_out,
        _ => None,
    };
    let of_way = Raised {
        set_out: kept,
        ..raised
    };
    let family = crop_of(hand, bed).map_or("", |crop| crop.family.as_str());
    if let Some(raised) = way(ui, of_way, usual_weeks(family), field) {
        change(hand, bed, BedChange::SetSowing(Some(Sowing::Raised(raised))));
    }
    let season = hand.desk.layout().season;
    let shown = raised
        .set_out
        .map_or_else(String::new, |day| day_words::day(day, season));
    let read = |text: &str| day_words::read_day(text, season);
    if let Some(day) = form::field(ui, field.with("set out"), "Set out on", &shown, read) {
        change(hand, bed, BedChange::SetPlanted(day));
        if kept.is_some() {
            // One day in one place.
            let raised = Raised {
                set_out: None,
                ..of_way
            };
            change(hand, bed, BedChange::SetSowing(Some(Sowing::Raised(raised))));
        }
    }
    form::follows(
        ui,
        "the day the bed is planted, such as 20 May; the day to sow is counted back from it by the weeks in the tray",
    );
}

/// Cell, losses, tray and weeks. Gives back what was changed.
fn way(ui: &mut Ui, raised: Raised, usual_weeks: &str, field: Id) -> Option<Raised> {
    let mut changed = None;
    let shown = raised.seeds_per_cell.to_string();
    let read = |text: &str| form::read_whole(text, 1, MOST_SEEDS_PER_PLANT as i32);
    if let Some(seeds) = form::field(ui, field.with("cell"), "Seeds a cell", &shown, read)
        && let Ok(seeds_per_cell) = u16::try_from(seeds)
    {
        changed = Some(Raised {
            seeds_per_cell,
            ..raised
        });
    }
    form::follows(ui, "thinned to one plant");
    let read = |text: &str| {
        Fraction::parse_percent(text)
            .ok()
            .filter(|part| part.get() <= MOST_LOST)
            .ok_or_else(|| format!("“{text}” does not do; write a percentage from 0 to 99, such as 10 %"))
    };
    if let Some(losses) = form::field(ui, field.with("losses"), "Losses", &raised.losses.show(), read) {
        changed = Some(Raised { losses, ..raised });
    }
    form::follows(ui, "young plants that do not make it to the field");
    let shown = raised
        .cells_per_tray
        .map_or_else(String::new, |cells| cells.to_string());
    let read = |text: &str| match text {
        "" => Ok(None),
        text => form::read_whole(text, 1, i32::from(MOST_CELLS)).map(|cells| u16::try_from(cells).ok()),
    };
    if let Some(cells_per_tray) = form::field(ui, field.with("tray"), "Cells a tray", &shown, read) {
        changed = Some(Raised {
            cells_per_tray,
            ..raised
        });
    }
    form::follows(ui, "such as 50, 72 or 128; then trays are counted too");
    let shown = weeks(raised.days_in_tray);
    if let Some(days_in_tray) = form::field(ui, field.with("weeks"), "In the tray", &shown, read_weeks) {
        changed = Some(Raised { days_in_tray, ..raised });
    }
    form::follows(
        ui,
        format!(
            "from sowing to setting out, {usual_weeks} as a rule ({})",
            Mark::CommonPractice.words()
        ),
    );
    changed
}

/// How long plants of a family are usually raised before they are set out.
///
/// # Source
/// Common practice, no source.
fn usual_weeks(family: &str) -> &'static str {
    match family {
        "Cucurbitaceae" => "3 to 4 weeks",
        "Brassicaceae" | "Asteraceae" => "4 to 6 weeks",
        "Solanaceae" => "6 to 8 weeks",
        "Apiaceae" | "Amaryllidaceae" => "8 to 10 weeks",
        _ => "4 to 8 weeks",
    }
}
