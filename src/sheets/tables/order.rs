//! The order list as a table with plain numbers, for spreadsheets. Units stand in the heads.

use super::csv::number;
use crate::layout::Layout;
use crate::plan::{OrderLine, Plan, Quantity};
use crate::quantity::{Mass, Units};
use crate::sheets::order_list::OrderList;

/// The order list as comma separated values: one line a cultivar. Numbers are unrounded to four decimals, with a
/// decimal point.
///
/// # Errors
/// When the writer cannot write, which writing to memory does not.
pub fn order_csv(layout: &Layout, plan: &Plan) -> Result<String, csv::Error> {
    let units = layout.units;
    let mut writer = csv::Writer::from_writer(Vec::new());
    writer.write_record(heads(units))?;
    let words = OrderList::of(layout, plan);
    for (line, words) in plan.order.lines.iter().zip(&words.lines) {
        let mut cells = vec![
            line.crop_name.clone(),
            line.cultivar.clone(),
            line.things.name().to_owned(),
            line.plants_before_thinning.to_string(),
            line.plants.to_string(),
            number(line.germination.to_percent()),
        ];
        for quantity in [line.need, drawn(line), line.to_buy] {
            cells.push(quantity.count.to_string());
            cells.push(
                quantity
                    .mass
                    .map(|mass| number(weight(mass, units)))
                    .unwrap_or_default(),
            );
        }
        cells.push(words.packets.clone());
        let cost = line.packets.as_ref().and_then(|packets| packets.cost);
        cells.push(cost.map(number).unwrap_or_default());
        cells.push(words.goes_to.clone());
        cells.push(words.from_shelf.clone());
        writer.write_record(cells)?;
    }
    let bytes = writer
        .into_inner()
        .map_err(|error| csv::Error::from(error.into_error()))?;
    Ok(String::from_utf8_lossy(&bytes).into_owned())
}

fn heads(units: Units) -> Vec<String> {
    let unit = match units {
        Units::Customary => "oz",
        Units::Metric => "g",
    };
    let mut heads: Vec<String> = [
        "crop",
        "cultivar",
        "what",
        "plants before thinning",
        "plants",
        "germination (%)",
    ]
    .map(str::to_owned)
    .into();
    for part in ["needed", "from the shelf", "to buy"] {
        heads.push(format!("{part} (count)"));
        heads.push(format!("{part} ({unit})"));
    }
    heads.extend(["packets", "cost", "goes to", "lots on the shelf"].map(str::to_owned));
    heads
}

/// What comes off the shelf, over all lots.
fn drawn(line: &OrderLine) -> Quantity {
    let mut sum = Quantity {
        count: 0,
        mass: Some(Mass::ZERO),
    };
    for drawn in &line.drawn {
        sum.count = sum.count.saturating_add(drawn.amount.count);
        sum.mass = sum.mass.zip(drawn.amount.mass).map(|(sum, mass)| sum + mass);
    }
    sum
}

fn weight(mass: Mass, units: Units) -> f64 {
    match units {
        Units::Customary => mass.to_ounces(),
        Units::Metric => mass.to_grams(),
    }
}
