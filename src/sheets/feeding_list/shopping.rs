//! What to buy, in words.

use super::measure::bag_words;
use crate::plan::feeding::{Shopping, ShoppingLine};
use crate::quantity::{Mass, Units, counted};
use crate::sheets::order_list::price_words;

/// What to buy of one material.
#[derive(Clone, Debug, PartialEq)]
pub struct ShoppingWords {
    /// The material.
    pub name: String,
    /// What the dressings take.
    pub need: String,
    /// What of that is put down already; empty when nothing.
    pub done: String,
    /// Whether all of it is.
    pub is_done: bool,
    /// What was at hand at the start of the season; empty when nothing.
    pub at_hand: String,
    /// What is missing; "nothing" when all is at hand.
    pub to_buy: String,
    /// Whole bags: "2 bags of 50 lb"; what to say in the shed where a bag is not known; empty where nothing is missing.
    pub bags: String,
    /// What is left at the end; empty when not known.
    pub left_over: String,
    /// What the bags cost, or "no price"; empty where nothing is missing.
    pub cost: String,
}

const NOTHING: &str = "nothing";

impl ShoppingWords {
    /// Whether anything has to be bought.
    pub fn is_to_buy(&self) -> bool {
        self.to_buy != NOTHING
    }
}

/// A line a material.
pub(super) fn lines(shopping: &Shopping, units: Units) -> Vec<ShoppingWords> {
    shopping.lines.iter().map(|line| words_of(line, units)).collect()
}

fn words_of(line: &ShoppingLine, units: Units) -> ShoppingWords {
    let some = |mass: Mass| {
        if mass > Mass::ZERO {
            mass.show_product(units)
        } else {
            String::new()
        }
    };
    let buys = line.to_buy > Mass::ZERO;
    let bags = match (line.bags, line.bag) {
        _ if !buys => String::new(),
        (Some(bags), Some(bag)) => format!("{} of {}", counted(bags, "bag", "bags"), bag_words(bag, units)),
        _ => "no bag size".to_owned(),
    };
    ShoppingWords {
        name: line.name.clone(),
        need: line.need.show_product(units),
        done: some(line.done),
        is_done: line.need > Mass::ZERO && line.done >= line.need,
        at_hand: some(line.at_hand),
        to_buy: if buys {
            line.to_buy.show_product(units)
        } else {
            NOTHING.to_owned()
        },
        bags,
        left_over: line
            .left_over
            .map_or_else(String::new, |left| left.max(Mass::ZERO).show_product(units)),
        cost: match line.cost {
            _ if !buys => String::new(),
            Some(cost) => price_words(cost),
            None => "no price".to_owned(),
        },
    }
}

/// What all lines with a price cost, and what that leaves out.
pub(super) fn cost(shopping: &Shopping) -> (String, String) {
    let bought = shopping.lines.iter().filter(|line| line.to_buy > Mass::ZERO);
    if !bought.into_iter().any(|line| line.cost.is_some()) {
        return (String::new(), String::new());
    }
    let note = match shopping.unpriced {
        0 => String::new(),
        1 => "without 1 material that has no price".to_owned(),
        more => format!("without {more} materials that have no price"),
    };
    (price_words(shopping.cost), note)
}
