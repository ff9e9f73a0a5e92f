//! The order as lines of text, for a terminal, in the words of the order list.

use std::fmt::Write as _;

use crate::layout::Layout;
use crate::plan::Plan;
use crate::sheets::order_list::{HARVEST_BASIS, OrderList, OrderWords};

/// The order in words: for each cultivar what its beds take, what the shelf gives, what to buy, and where it goes.
pub fn order_text(layout: &Layout, plan: &Plan) -> String {
    let list = OrderList::of(layout, plan);
    if list.lines.is_empty() && list.not_counted.is_empty() {
        return "Nothing is planted yet.\n".to_owned();
    }
    let mut text = String::new();
    for words in &list.lines {
        set_line(&mut text, words);
        text.push('\n');
    }
    for sentence in &list.not_counted {
        let _ = writeln!(text, "{sentence}");
    }
    for trays in &list.trays {
        // Writing to a string does not fail.
        let _ = writeln!(text, "{}", trays.sentence());
    }
    if list.lines.iter().any(|line| !line.harvest.is_empty()) {
        let _ = writeln!(text, "What a crop may give is {HARVEST_BASIS}.");
    }
    if let Some(cost) = list.cost_sentence() {
        let _ = writeln!(text, "{cost}");
    }
    text
}

fn set_line(text: &mut String, words: &OrderWords) {
    let _ = writeln!(text, "{}", words.name);
    let may_give = match words.harvest.as_str() {
        "" => String::new(),
        harvest => format!("{harvest}, never a promise"),
    };
    let (from_shelf, goes_to) = (words.from_shelf.join("; "), words.goes_to.join("; "));
    for (what, said) in [
        ("need", &words.need),
        ("comes up", &words.comes_up),
        ("plants", &words.plants),
        ("shelf", &from_shelf),
        ("to buy", &words.to_buy),
        ("packets", &words.packets),
        ("cost", &words.cost),
        ("goes to", &goes_to),
        ("may give", &may_give),
    ] {
        if !said.is_empty() {
            let _ = writeln!(text, "  {what:<11}{said}");
        }
    }
}
