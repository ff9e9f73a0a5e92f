//! The packets of a line in words: how many of each size, why these, what they cost and what is left over.

use super::amount_words;
use crate::plan::OrderLine;
use crate::quantity::{Units, count};

/// What the packets of a line cost; `None` where nothing is to buy, or no price is known.
pub fn cost_of(line: &OrderLine) -> Option<f64> {
    let packets = line.packets.as_ref().filter(|_| line.to_buy.count > 0)?;
    packets.cost
}

/// Why these packets: "cheapest", or "fewest left over" where no price is known; empty without packets.
pub(super) fn chosen_as(line: &OrderLine) -> &'static str {
    match &line.packets {
        Some(packets) if packets.sizes.is_empty() => "",
        Some(packets) if packets.cost.is_some() => "cheapest",
        Some(_) => "fewest left over",
        None => "",
    }
}

/// "2 × 1 oz, 1 × 250 seeds": how many of each size, and what has to be said of the choice; why there is none; empty where
/// no sizes are given, or nothing is to buy.
pub fn packets_words(line: &OrderLine, units: Units) -> String {
    if let Some(problem) = &line.packets_problem {
        return problem.clone();
    }
    let Some(packets) = line.packets.as_ref().filter(|packets| !packets.sizes.is_empty()) else {
        return String::new();
    };
    let sizes: Vec<String> = packets
        .sizes
        .iter()
        .map(|of| {
            let holds = amount_words(of.packet.amount, line.things, units);
            format!("{} × {holds}", count(of.count))
        })
        .collect();
    let mut words = sizes.join(", ");
    if !packets.proven {
        words.push_str("; a cheaper choice may be left");
    }
    match packets.unpriced_sizes {
        0 => {}
        1 => words.push_str("; 1 size without a price is left out"),
        more => words.push_str(&format!("; {more} sizes without a price are left out")),
    }
    words
}

/// "120 seeds left over".
pub(super) fn left_over_words(line: &OrderLine) -> String {
    let held = line.packets.as_ref().map_or(0, |packets| packets.amount.count);
    match held.saturating_sub(line.to_buy.count) {
        0 => String::new(),
        over => format!("{} left over", line.things.counted(over)),
    }
}

/// A price in the grower's own currency, which the program does not ask for.
pub fn price_words(price: f64) -> String {
    format!("{price:.2}")
}
