//! What to buy of every material: need less what is at hand, in whole bags.

use std::collections::BTreeMap;
use std::sync::Arc;

use super::super::types::BedPlan;
use super::material_book::MaterialBook;
use crate::agronomy;
use crate::catalog::MaterialId;
use crate::quantity::Mass;

/// What to buy of fertilizer.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Shopping {
    /// One line a material that any dressing needs, by name.
    pub lines: Vec<ShoppingLine>,
    /// What all lines with a price cost.
    pub cost: f64,
    /// How many lines need buying and have no price.
    pub unpriced: usize,
}

/// What to buy of one material.
#[derive(Clone, Debug, PartialEq)]
pub struct ShoppingLine {
    /// The material.
    pub material: MaterialId,
    /// Its name.
    pub name: String,
    /// What the dressings take: what was really used of those done, and what is planned after it of those ahead.
    pub need: Mass,
    /// What of that is done.
    pub done: Mass,
    /// What was at hand at the start of the season.
    pub at_hand: Mass,
    /// What is missing.
    pub to_buy: Mass,
    /// What a bag holds, when known.
    pub bag: Option<Mass>,
    /// Whole bags to buy, when a bag is known.
    pub bags: Option<u64>,
    /// What they cost, when a price is known; nothing where nothing is to be bought.
    pub cost: Option<f64>,
    /// What is left at the end, when a bag is known or nothing is bought.
    pub left_over: Option<Mass>,
}

/// Adds up the dressings of all beds.
pub(in crate::plan) fn shopping(beds: &[Arc<BedPlan>], book: &MaterialBook) -> Shopping {
    let mut needs: BTreeMap<(&str, &MaterialId), (Mass, Mass)> = BTreeMap::new();
    for dressing in beds.iter().flat_map(|bed| &bed.dressings) {
        // Of one that cannot be worked out, what was used counts.
        if dressing.problem.is_some() && dressing.done <= Mass::ZERO {
            continue;
        }
        let key = (dressing.material_name.as_str(), &dressing.material);
        let (need, done) = needs.entry(key).or_default();
        *need += dressing.total;
        *done += dressing.done;
    }
    let mut shopping = Shopping::default();
    for ((name, material), (need, done)) in needs {
        let line = line(material, name, need, done, book);
        match line.cost {
            Some(cost) => shopping.cost += cost,
            None => shopping.unpriced += 1,
        }
        shopping.lines.push(line);
    }
    shopping
}

fn line(material: &MaterialId, name: &str, need: Mass, done: Mass, book: &MaterialBook) -> ShoppingLine {
    let known = book.get(material);
    let at_hand = known.and_then(|known| known.at_hand).unwrap_or(Mass::ZERO);
    let to_buy = (need - at_hand).max(Mass::ZERO);
    let bag = known.and_then(|known| known.bag);
    let bags = bag.and_then(|bag| agronomy::bags(to_buy, bag).ok());
    let price = known.and_then(|known| known.price);
    let nothing_to_buy = to_buy == Mass::ZERO;
    ShoppingLine {
        material: material.clone(),
        name: name.to_owned(),
        need,
        done,
        at_hand,
        to_buy,
        bag,
        bags,
        cost: if nothing_to_buy {
            Some(0.0)
        } else {
            bags.zip(price).map(|(bags, price)| bags as f64 * price)
        },
        left_over: if nothing_to_buy {
            Some(at_hand - need)
        } else {
            bags.zip(bag).map(|(bags, bag)| at_hand + bag * bags as f64 - need)
        },
    }
}
