//! The card of a dressing: what is put down, how much, where and when.

use egui::{Id, RichText, Ui};

use super::planting::source;
use super::{Hand, head, length_line, remove};
use crate::app::command::Command;
use crate::app::form;
use crate::app::picker::{Choice, picker};
use crate::app::wording::nutrients;
use crate::catalog::{Analysis, Catalog, Material, MaterialId};
use crate::layout::{Amount, Basis, Bed, BedChange, BedId, Dressing, DressingId, Edit, Item, Placement, When};
use crate::plan::{DressingPlan, GoesBy};
use crate::quantity::{Mass, MassPerArea, MassPerLength, Units};

pub(super) fn show(ui: &mut Ui, hand: &mut Hand<'_>, bed_id: BedId, id: DressingId) {
    let layout = hand.desk.layout();
    let units = layout.units;
    let Some(bed) = layout.bed(bed_id) else { return };
    let Some(dressing) = bed.dressing(id) else { return };
    let field = Id::unique(("card of dressing", bed_id, id));
    head(ui, &dressing.name, &format!("dressing of {}", bed.name));
    if ui
        .add(egui::Button::new(
            RichText::new(format!("Back to {}", bed.name)).size(13.0),
        ))
        .clicked()
    {
        hand.out.push(Command::Choose(Some(Item::Bed(bed_id))));
    }
    ui.add_space(4.0);
    let mut changed = dressing.clone();
    if let Some(name) = form::field(ui, field.with("name"), "Name", &dressing.name, form::read_name) {
        changed.name = name;
    }
    material(ui, field, &mut changed);
    amount(ui, field, &mut changed, units);
    placement(ui, field, &mut changed, bed, units);
    if let Some(when) = form::field(ui, field.with("when"), "When", &dressing.when.words(), form::read_words) {
        changed.when = When::Words(when);
    }
    form::follows(ui, "in your own words: knee-high, 10 June");
    let plan = hand.desk.plan().bed(bed_id).cloned();
    let of_plan = plan
        .as_ref()
        .and_then(|plan| plan.dressings.iter().find(|plan| plan.dressing == id));
    if let Some(of_plan) = of_plan {
        answer(ui, of_plan, units);
    }
    caution(ui, Catalog::built_in().material(&dressing.material));
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

/// The next dressing of a bed as it is before the grower says otherwise: a first one in a band at planting, later
/// ones beside the plants.
///
/// # Source
/// 10 lb of a 10-10-10 over 1,000 sq ft, a pound of nitrogen: common practice, no source; a value to start from,
/// which a soil test replaces. 50 g over a square metre is nearly the same.
pub(crate) fn first_dressing(bed: &Bed, units: Units) -> Dressing {
    let before = bed.dressings.len();
    let (name, placement) = match before {
        0 => ("At planting".to_owned(), Placement::Band { strip: None }),
        1 => ("1st side-dressing".to_owned(), Placement::SideDress { strip: None }),
        2 => ("2nd side-dressing".to_owned(), Placement::SideDress { strip: None }),
        3 => ("3rd side-dressing".to_owned(), Placement::SideDress { strip: None }),
        more => (format!("{more}th side-dressing"), Placement::SideDress { strip: None }),
    };
    let material = bed
        .dressings
        .last()
        .map(|last| last.material.clone())
        .or_else(|| {
            let materials = Catalog::built_in().materials();
            let mixed = materials.iter().find(|material| material.name.contains("10-10-10"));
            mixed.or_else(|| materials.first()).map(|material| material.id.clone())
        })
        .unwrap_or_else(|| MaterialId(String::new()));
    Dressing {
        id: DressingId(0),
        name,
        material,
        basis: Basis::Product,
        amount: Amount::PerArea(match units {
            Units::Customary => MassPerArea::pounds_per_1000_square_feet(10.0),
            Units::Metric => MassPerArea::grams_per_square_metre(50.0),
        }),
        placement,
        when: When::Unsaid,
        used: None,
    }
}

fn material(ui: &mut Ui, field: Id, dressing: &mut Dressing) {
    let materials = Catalog::built_in().materials();
    let choices: Vec<Choice> = materials
        .iter()
        .map(|material| Choice::named(&material.name, material.analysis.value.label()))
        .collect();
    let current = Catalog::built_in().material(&dressing.material);
    let name = current.map_or(dressing.material.0.as_str(), |material| material.name.as_str());
    let picked = form::line(ui, "Material", |ui| {
        let width = ui.available_width();
        picker(ui, field.with("material"), "Material", name, &choices, width)
    });
    if let Some(material) = picked.and_then(|index| materials.get(index)) {
        dressing.material = material.id.clone();
    }
    match current {
        Some(material) => {
            let words = format!(
                "analysis {}: nitrogen, phosphate, potash in percent",
                material.analysis.value.label()
            );
            ui.label(RichText::new(words).small().weak())
                .on_hover_text(source(&material.analysis));
        }
        None => form::wrong(
            ui,
            &format!(
                "the catalogue has no material “{}”; choose another",
                dressing.material.0
            ),
        ),
    }
}

fn amount(ui: &mut Ui, field: Id, dressing: &mut Dressing, units: Units) {
    let shown = amount_words(dressing.amount, units);
    let read = |text: &str| read_amount(text, units);
    if let Some(amount) = form::field(ui, field.with("amount"), "Amount", &shown, read) {
        dressing.amount = amount;
    }
    let ways = match units {
        Units::Customary => "over ground, along the row or to the plant: 3 lb/100 ft, 1 oz/plant",
        Units::Metric => "over ground, along the row or to the plant: 20 g/m, 30 g/plant",
    };
    form::follows(ui, ways);
    let all = [Basis::Product, Basis::Nitrogen, Basis::Phosphate, Basis::Potash].map(|of| (basis_words(of), of));
    if let Some(basis) = form::choices(ui, field.with("basis"), "Of", basis_words(dressing.basis), &all) {
        dressing.basis = basis;
    }
}

const fn basis_words(basis: Basis) -> &'static str {
    match basis {
        Basis::Product => "product",
        Basis::Nitrogen => "nitrogen",
        Basis::Phosphate => "phosphate, P2O5",
        Basis::Potash => "potash, K2O",
    }
}

fn placement(ui: &mut Ui, field: Id, dressing: &mut Dressing, bed: &Bed, units: Units) {
    let strip = dressing.placement.strip();
    let all = [
        Placement::Broadcast,
        Placement::Band { strip },
        Placement::SideDress { strip },
    ];
    let all = all.map(|way| (placement_words(way), way));
    let chosen = placement_words(dressing.placement);
    if let Some(way) = form::choices(ui, field.with("placement"), "Where", chosen, &all) {
        dressing.placement = way;
    }
    let is_band = matches!(dressing.placement, Placement::Band { .. });
    if dressing.placement == Placement::Broadcast || !matches!(dressing.amount, Amount::PerArea(_)) {
        return;
    }
    let in_force = strip.unwrap_or(bed.row_spacing);
    let with = |strip| {
        if is_band {
            Placement::Band { strip }
        } else {
            Placement::SideDress { strip }
        }
    };
    if let Some(width) = length_line::short(ui, field.with("strip"), "Strip", in_force, units) {
        dressing.placement = with(Some(width));
    }
    if strip.is_some() {
        if form::yours(ui, "use the row spacing") {
            dressing.placement = with(None);
        }
    } else {
        form::follows(ui, "width of ground that belongs to a row: the row spacing");
    }
}

const fn placement_words(placement: Placement) -> &'static str {
    match placement {
        Placement::Broadcast => "broadcast over the bed",
        Placement::Band { .. } => "in a band at the row",
        Placement::SideDress { .. } => "beside the plants",
        Placement::Injected(_) => "through the tape",
    }
}

fn answer(ui: &mut Ui, plan: &DressingPlan, units: Units) {
    ui.add_space(4.0);
    form::rule(ui);
    if let Some(problem) = &plan.problem {
        form::wrong(ui, problem);
        return;
    }
    let total = plan.total;
    let volume = plan
        .volume(total)
        .map_or_else(String::new, |volume| format!(" · {}", volume.show(units)));
    let bold = crate::app::theme::bold(15.0);
    ui.label(RichText::new(format!("{}{volume}", total.show_product(units))).font(bold));
    let by = match plan.goes_by {
        GoesBy::Ground => "for the bed's ground, shared over the rows by their length",
        GoesBy::RowFeet => "for the bed, by row length times the strip",
        GoesBy::Plants => "for the bed, by plants",
    };
    form::follows(ui, by);
    let part = |part: crate::quantity::Fraction| total * part.get();
    let Analysis { n, p2o5, k2o } = plan.analysis;
    let brings = nutrients(part(n), part(p2o5), part(k2o), units);
    if !brings.is_empty() {
        form::follows(ui, format!("brings {brings}"));
    }
}

fn caution(ui: &mut Ui, material: Option<&Material>) {
    ui.add_space(4.0);
    let own = material.and_then(|material| material.caution.as_ref());
    if let Some(caution) = own {
        ui.label(RichText::new(&caution.value).small())
            .on_hover_text(source(caution));
    }
    form::follows(
        ui,
        "Go by the label of the bag and by your soil test. Do not breathe the dust.",
    );
}

/// An amount as growers write it.
fn amount_words(amount: Amount, units: Units) -> String {
    match amount {
        Amount::PerArea(rate) => rate.show_garden(units),
        Amount::PerRowLength(rate) => rate.show(units),
        Amount::PerPlant(mass) => format!("{}/plant", per_plant(mass, units)),
    }
}

fn per_plant(mass: Mass, units: Units) -> String {
    let (amount, unit) = match units {
        Units::Customary => (mass.to_ounces(), "oz"),
        Units::Metric => (mass.to_grams(), "g"),
    };
    let text = format!("{amount:.3}");
    format!("{} {unit}", text.trim_end_matches('0').trim_end_matches('.'))
}

/// Reads an amount over ground, along the row or to the plant.
fn read_amount(text: &str, units: Units) -> Result<Amount, String> {
    let lower = text.to_lowercase();
    for ending in ["/plant", "/ plant", "per plant", "a plant", "each"] {
        if let Some(mass) = lower.strip_suffix(ending) {
            return Mass::parse(mass.trim(), units)
                .map(Amount::PerPlant)
                .map_err(|error| error.to_string());
        }
    }
    let over_ground = MassPerArea::parse(text, units);
    match over_ground {
        Ok(rate) => Ok(Amount::PerArea(rate)),
        Err(error) => match MassPerLength::parse(text, units) {
            Ok(rate) => Ok(Amount::PerRowLength(rate)),
            Err(_) => Err(error.to_string()),
        },
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_amount_is_read_over_ground_along_the_row_or_to_the_plant() {
        let read = |text| read_amount(text, Units::Customary);
        assert!(matches!(read("10 lb/1000 sq ft"), Ok(Amount::PerArea(_))));
        assert!(matches!(read("3 lb/100 ft"), Ok(Amount::PerRowLength(_))));
        let Ok(Amount::PerPlant(mass)) = read("2 oz/plant") else {
            panic!("to the plant")
        };
        assert!((mass.to_ounces() - 2.0).abs() < 1e-9);
        assert!(read("a lot").is_err());
    }

    #[test]
    fn an_amount_reads_back_as_it_is_shown() {
        for units in [Units::Customary, Units::Metric] {
            for amount in [
                Amount::PerArea(MassPerArea::pounds_per_1000_square_feet(10.0)),
                Amount::PerRowLength(MassPerLength::pounds_per_100_feet(3.0)),
                Amount::PerPlant(Mass::ounces(2.0)),
            ] {
                let shown = amount_words(amount, units);
                let again = read_amount(&shown, units).map(|amount| amount_words(amount, units));
                assert_eq!(again.as_deref(), Ok(shown.as_str()));
            }
        }
    }
}
