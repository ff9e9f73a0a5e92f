//! Where a dressing goes: over the bed, at the row, beside the plants, or through the tape.

use egui::{Id, Ui};

use super::first::injecting;
use super::injected;
use crate::app::card::{Hand, length_line};
use crate::app::form;
use crate::layout::{Amount, Bed, Dressing, Injecting, Placement};
use crate::quantity::{Length, Units};
use crate::sheets::dressing_words;

pub(super) fn show(ui: &mut Ui, hand: &mut Hand<'_>, field: Id, dressing: &mut Dressing, bed: &Bed) {
    let units = hand.desk.layout().units;
    let strip = dressing.placement.strip();
    let through_tape = match dressing.placement {
        Placement::Injected(injecting) => injecting,
        _ => injecting(strip, units),
    };
    let all = [
        Placement::Broadcast,
        Placement::Band { strip },
        Placement::SideDress { strip },
        Placement::Injected(through_tape),
    ];
    let all = all.map(|way| (dressing_words::way(way), way));
    let chosen = dressing_words::way(dressing.placement);
    if let Some(way) = form::choices(ui, field.with("placement"), "Where", chosen, &all) {
        dressing.placement = way;
    }
    if let Amount::PerArea(_) = dressing.amount {
        strip_line(ui, field, dressing, bed, units);
    }
    if let Placement::Injected(injecting) = dressing.placement {
        if !bed.water.through_tape() {
            form::wrong(
                ui,
                &format!(
                    "{} has no tape: its water is {}; choose drip on the bed's card, or another way here",
                    bed.name,
                    bed.water.name()
                ),
            );
        }
        if let Some(changed) = injected::fields(ui, field, injecting, units) {
            dressing.placement = Placement::Injected(changed);
        }
        crate::app::card::tape::zone(ui, hand, bed, field);
    }
}

/// The width of ground that belongs to a row.
fn strip_line(ui: &mut Ui, field: Id, dressing: &mut Dressing, bed: &Bed, units: Units) {
    if dressing.placement == Placement::Broadcast {
        return;
    }
    let strip = dressing.placement.strip();
    let in_force = strip.unwrap_or(bed.row_spacing);
    if let Some(width) = length_line::short(ui, field.with("strip"), "Strip", in_force, units) {
        dressing.placement = with_strip(dressing.placement, Some(width));
    }
    if strip.is_some() {
        if form::yours(ui, "use the row spacing") {
            dressing.placement = with_strip(dressing.placement, None);
        }
    } else {
        form::follows(ui, "width of ground that belongs to a row: the row spacing");
    }
}

const fn with_strip(placement: Placement, strip: Option<Length>) -> Placement {
    match placement {
        Placement::Broadcast => Placement::Broadcast,
        Placement::Band { .. } => Placement::Band { strip },
        Placement::SideDress { .. } => Placement::SideDress { strip },
        Placement::Injected(injecting) => Placement::Injected(Injecting { strip, ..injecting }),
    }
}
