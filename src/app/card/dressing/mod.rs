//! The card of a dressing: what is put down, how much, where and when, what it comes to, and what was really used.

mod amount;
mod first;
mod injected;
mod material;
mod near_seed;
mod outcome;
mod placement;
mod strength;
mod used;
mod when;

pub(crate) use first::{first_dressing, injecting};

use egui::{Id, RichText, Ui};

use super::{Hand, head, remove};
use crate::app::command::Command;
use crate::app::form;
use crate::layout::{BedChange, BedId, DressingId, Edit, Item, Placement};

pub(super) fn show(ui: &mut Ui, hand: &mut Hand<'_>, bed_id: BedId, id: DressingId) {
    let layout = hand.desk.layout();
    let units = layout.units;
    let Some(bed) = layout.bed(bed_id) else { return };
    let Some(dressing) = bed.dressing(id) else { return };
    let field = Id::unique(("card of dressing", bed_id, id));
    head(ui, &dressing.name, &format!("dressing of {}", bed.name));
    let back = RichText::new(format!("Back to {}", bed.name)).size(13.0);
    if ui.add(egui::Button::new(back)).clicked() {
        hand.out.push(Command::Choose(Some(Item::Bed(bed_id))));
    }
    ui.add_space(4.0);
    let mut changed = dressing.clone();
    if let Some(name) = form::field(ui, field.with("name"), "Name", &dressing.name, form::read_name) {
        changed.name = name;
    }
    material::show(ui, hand, field, &mut changed);
    amount::show(ui, field, &mut changed, units);
    placement::show(ui, hand, field, &mut changed, bed);
    when::show(ui, hand, field, &mut changed, bed);
    let plan = hand.desk.plan().bed(bed_id).cloned();
    let plans = plan.as_deref().and_then(|plan| {
        let of_plan = plan.dressings.iter().find(|plan| plan.dressing == id)?;
        Some((plan, of_plan))
    });
    if let Some((bed_plan, of_plan)) = plans {
        outcome::show(ui, dressing, bed, (bed_plan, of_plan), units);
    }
    if let Placement::Injected(_) = dressing.placement {
        injected::run(ui, hand, (bed_id, id), field);
    }
    used::show(ui, field, &mut changed, bed, plans, (units, layout.season));
    material::cautions(ui, hand, dressing, plans.map(|(_, of_plan)| of_plan));
    if let (Placement::Band { .. }, Some((bed_plan, of_plan))) = (dressing.placement, plans)
        && bed_plan.is_sown_in_place()
    {
        near_seed::show(ui, of_plan.analysis, units);
    }
    if changed != *dressing {
        hand.out
            .push(Command::Edit(Edit::Bed(bed_id, BedChange::SetDressing(changed))));
    }
    if remove(ui, "dressing") {
        hand.out.push(Command::Choose(Some(Item::Bed(bed_id))));
        hand.out
            .push(Command::Edit(Edit::Bed(bed_id, BedChange::RemoveDressing(id))));
    }
}
