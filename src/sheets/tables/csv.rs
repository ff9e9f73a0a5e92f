//! The ledger of every bed as one table with plain numbers, for spreadsheets. Units stand in the heads.

use crate::layout::Layout;
use crate::plan::{BedPlan, DressingPlan, Plan};
use crate::quantity::{Length, Mass, Units, Volume};

/// The ledger of every bed as comma separated values: one line a row, the same columns for all beds; cells of
/// dressings that a bed does not get stay empty. Numbers have four decimals, small ones four figures, with a decimal point.
///
/// # Errors
/// When the writer cannot write, which writing to memory does not.
pub fn ledger_csv(layout: &Layout, plan: &Plan) -> Result<String, csv::Error> {
    let units = layout.units;
    let dressings = dressing_names(plan);
    let mut writer = csv::Writer::from_writer(Vec::new());
    writer.write_record(heads(units, &dressings))?;
    for bed in &plan.beds {
        write_bed(&mut writer, layout, bed, &dressings)?;
    }
    let bytes = writer
        .into_inner()
        .map_err(|error| csv::Error::from(error.into_error()))?;
    Ok(String::from_utf8_lossy(&bytes).into_owned())
}

/// The names of all dressings, in the order they are met.
fn dressing_names(plan: &Plan) -> Vec<&str> {
    let mut names: Vec<&str> = Vec::new();
    for dressing in plan.beds.iter().flat_map(|bed| &bed.dressings) {
        if dressing.problem.is_none() && !names.contains(&dressing.name.as_str()) {
            names.push(&dressing.name);
        }
    }
    names
}

fn heads(units: Units, dressings: &[&str]) -> Vec<String> {
    let (length, seed, product, volume) = match units {
        Units::Customary => ("ft", "oz", "lb", "cups"),
        Units::Metric => ("m", "g", "kg", "litres"),
    };
    let mut heads: Vec<String> = ["bed", "plot", "crop", "water", "row"].map(str::to_owned).into();
    heads.extend([format!("length ({length})"), "plants".to_owned(), "seeds".to_owned()]);
    heads.extend([format!("seed ({seed})"), format!("tape ({length})"), "cells".to_owned()]);
    heads.extend(["set out (count)".to_owned(), format!("set out ({seed})")]);
    for name in dressings {
        heads.extend([format!("{name} ({product})"), format!("{name} ({volume})")]);
    }
    heads
}

fn write_bed(
    writer: &mut csv::Writer<Vec<u8>>,
    layout: &Layout,
    plan: &BedPlan,
    dressings: &[&str],
) -> Result<(), csv::Error> {
    let Some(bed) = layout.bed(plan.bed) else { return Ok(()) };
    let plot = layout.plot(bed.plot).map_or("", |plot| plot.name.as_str());
    let crop = plan.crop.as_ref().map_or("", |crop| crop.name.as_str());
    let units = layout.units;
    let length = |length: Length| {
        if units == Units::Customary {
            length.to_feet()
        } else {
            length.to_metres()
        }
    };
    for (index, row) in plan.rows.iter().enumerate() {
        let mut cells: Vec<String> = [&bed.name, plot, crop, bed.water.name()].map(str::to_owned).into();
        cells.extend([
            row.number.to_string(),
            number(length(row.length)),
            row.plants.to_string(),
            row.seeds.to_string(),
        ]);
        let weight = |mass: Option<Mass>| {
            let mass = mass.map(|mass| match units {
                Units::Customary => mass.to_ounces(),
                Units::Metric => mass.to_grams(),
            });
            mass.map(number).unwrap_or_default()
        };
        cells.extend([weight(row.seed_mass), number(length(row.tape))]);
        cells.extend([row.cells.to_string(), row.set_out.to_string(), weight(row.set_out_mass)]);
        for name in dressings {
            let (product, volume) = dressing_cells(&plan.dressings, name, index, units);
            cells.extend([product, volume]);
        }
        writer.write_record(cells)?;
    }
    Ok(())
}

/// What a row gets of all dressings of that name: weight, and room where the density of every one is known.
fn dressing_cells(dressings: &[DressingPlan], name: &str, row: usize, units: Units) -> (String, String) {
    let given: Vec<(Mass, Option<Volume>)> = dressings
        .iter()
        .filter(|dressing| dressing.name == name && dressing.problem.is_none())
        .filter_map(|dressing| Some((dressing, *dressing.rows.get(row)?)))
        .map(|(dressing, mass)| (mass, dressing.volume(mass)))
        .collect();
    if given.is_empty() {
        return (String::new(), String::new());
    }
    let product: Mass = given.iter().map(|(mass, _)| *mass).sum();
    let volume: Option<Volume> = given.iter().map(|(_, volume)| *volume).sum();
    let (product, volume) = match units {
        Units::Customary => (product.to_pounds(), volume.map(Volume::to_cups)),
        Units::Metric => (product.to_kilograms(), volume.map(Volume::to_litres)),
    };
    (number(product), volume.map(number).unwrap_or_default())
}

/// Four decimals, or below a tenth so many that four figures stand, without zeros at the end.
pub(super) fn number(value: f64) -> String {
    let small = value.abs();
    let zeros = if small > 0.0 && small < 0.1 {
        (-small.log10()).floor().min(12.0) as usize
    } else {
        0
    };
    let text = format!("{value:.decimals$}", decimals = 4 + zeros);
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}
