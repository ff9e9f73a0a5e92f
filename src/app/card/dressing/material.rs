//! The material of a dressing, chosen from the catalogue and the shed, and what to watch out for with it.

use egui::{Id, RichText, Ui};

use crate::agronomy;
use crate::app::card::Hand;
use crate::app::form;
use crate::app::picker::{Choice, picker};
use crate::catalog::{Catalog, CautionTopic};
use crate::layout::Dressing;
use crate::plan::DressingPlan;
use crate::quantity::Fraction;
use crate::sheets::held_together;

pub(super) fn show(ui: &mut Ui, hand: &Hand<'_>, field: Id, dressing: &mut Dressing) {
    let book = hand.desk.material_book();
    let all = book.all();
    let choices: Vec<Choice> = all
        .iter()
        .map(|known| {
            Choice::named(
                &known.material.name,
                if known.shed.is_some() {
                    format!("{} · in the shed", known.analysis().label())
                } else {
                    known.analysis().label()
                },
            )
        })
        .collect();
    let current = book.get(&dressing.material);
    let name = current.map_or(dressing.material.0.as_str(), |known| known.material.name.as_str());
    let picked = form::line(ui, "Material", |ui| {
        let width = ui.available_width();
        picker(ui, field.with("material"), "Material", name, &choices, width)
    });
    if let Some(known) = picked.and_then(|index| all.get(index)) {
        dressing.material = known.material.id.clone();
    }
    match current {
        Some(known) => {
            let words = format!(
                "{}, {}: nitrogen, phosphate, potash in percent",
                known.material.name,
                known.analysis().label()
            );
            ui.label(RichText::new(words).small().weak())
                .on_hover_text(Catalog::built_in().cite_value(&known.material.analysis));
        }
        None => form::wrong(
            ui,
            &format!(
                "neither the catalogue nor the shed has a material “{}”; choose another",
                dressing.material.0
            ),
        ),
    }
}

/// What can go wrong with it, and what goes before all of this.
pub(super) fn cautions(ui: &mut Ui, hand: &Hand<'_>, dressing: &Dressing, of_plan: Option<&DressingPlan>) {
    ui.add_space(4.0);
    let catalog = Catalog::built_in();
    let known = hand.desk.material_book().get(&dressing.material);
    let of_material = known.map(|known| [&known.material.caution, &known.material.note]);
    let of_material: Vec<_> = of_material.into_iter().flatten().flatten().collect();
    // What the material's own caution says is not said again.
    let says_dust = of_material.iter().any(|words| words.value.contains("breathe"));
    let general = [
        Some(CautionTopic::LabelFirst),
        (!says_dust).then_some(CautionTopic::GlovesAndDust),
    ];
    let general = general.into_iter().flatten().filter_map(|topic| catalog.caution(topic));
    let units = hand.desk.layout().units;
    let general = general.map(|caution| (caution.words(units), &caution.sentence));
    let of_material = of_material.into_iter().map(|words| (words.value.as_str(), words));
    for (words, source) in of_material.chain(general) {
        ui.label(RichText::new(held_together(words)).small())
            .on_hover_text(catalog.cite_value(source));
    }
    let sodium = known.and_then(|known| known.material.sodium_part.as_ref());
    let sodium = sodium.filter(|part| part.value > Fraction::ZERO);
    if let (Some(part), Some(of_plan)) = (sodium, of_plan.filter(|of_plan| of_plan.problem.is_none())) {
        let brings = agronomy::sodium_in(of_plan.total, part.value).show_product(units);
        ui.label(RichText::new(format!("It brings {brings} of sodium to the bed.")).small())
            .on_hover_text(catalog.cite_value(part));
    }
}
