//! The order as lines of text, for a terminal.

use std::fmt::Write as _;

use super::rows::{amount_in_words, packets_in_words};
use crate::layout::{Item, Layout};
use crate::plan::{OrderLine, Plan};
use crate::quantity::{count, counted};

/// The order in words: for each cultivar what its beds take, what the shelf gives, what to buy, and where it goes.
pub fn order_text(layout: &Layout, plan: &Plan) -> String {
    let mut text = String::new();
    for line in &plan.order.lines {
        // Writing to a string does not fail.
        let _ = writeln!(text, "{}", line.name());
        set_line(&mut text, layout, line);
        text.push('\n');
    }
    if plan.order.lines.is_empty() {
        text.push_str("Nothing is planted yet.\n");
        return text;
    }
    if plan.order.cost > 0.0 {
        let _ = write!(text, "All packets with a price: {:.2}", plan.order.cost);
        if plan.order.unpriced > 0 {
            let _ = write!(text, "; {} to buy without a price", plan.order.unpriced);
        }
        text.push('\n');
    }
    text
}

fn set_line(text: &mut String, layout: &Layout, line: &OrderLine) {
    let units = layout.units;
    let _ = writeln!(text, "  need       {}", amount_in_words(line, line.need, units));
    if line.plants_before_thinning > line.plants {
        let (before, after) = (count(line.plants_before_thinning), count(line.plants));
        let _ = writeln!(text, "  plants     {after}, thinned from {before}");
    } else {
        let _ = writeln!(text, "  plants     {}", count(line.plants));
    }
    for drawn in &line.drawn {
        let amount = amount_in_words(line, drawn.amount, units);
        let lot = layout.name_of(Item::Lot(drawn.lot));
        let _ = writeln!(text, "  shelf      {amount} from {lot}");
    }
    let _ = writeln!(text, "  to buy     {}", amount_in_words(line, line.to_buy, units));
    if let Some(packets) = line.packets.as_ref().filter(|packets| !packets.sizes.is_empty()) {
        let _ = write!(text, "  packets    {}", packets_in_words(packets, units));
        if let Some(cost) = packets.cost {
            let _ = write!(text, " for {cost:.2}");
        }
        text.push('\n');
    }
    if let Some(problem) = &line.packets_problem {
        let _ = writeln!(text, "  packets    {problem}");
    }
    for tray in &line.trays {
        let bed = layout.name_of(Item::Bed(tray.bed));
        let _ = write!(text, "  trays      {} cells", count(tray.cells));
        if let Some(trays) = tray.trays {
            let _ = write!(text, " in {}", counted(trays, "tray", "trays"));
        }
        if let Some(day) = tray.sow_on {
            let _ = write!(text, ", sow on {}", day.strftime("%-d %B %Y"));
        }
        let _ = writeln!(text, ", for {bed}");
    }
    let beds: Vec<String> = line
        .beds
        .iter()
        .map(|of| format!("{} ({})", layout.name_of(Item::Bed(of.bed)), count(of.amount.count)))
        .collect();
    let _ = writeln!(text, "  goes to    {}", beds.join(", "));
}
