//! The feeding as lines of text, for a terminal.

use std::fmt::Write as _;

use crate::layout::Layout;
use crate::plan::Plan;
use crate::sheets::feeding_list::{AccountWords, DressingWords, FedBed, FeedingList, RunWords, rate_unit};

/// The feeding in words: bed by bed every dressing with what each row gets, then the accounts, what to buy, runs through
/// the tape, and what to watch out for.
pub fn feed_text(layout: &Layout, plan: &Plan) -> String {
    let list = FeedingList::of(layout, plan);
    let mut text = String::new();
    if list.is_empty() {
        text.push_str("Nothing is put down yet.\n");
        return text;
    }
    // Writing to a string does not fail.
    for bed in &list.beds {
        let _ = writeln!(text, "{}", bed.name);
        for dressing in &bed.dressings {
            set_dressing(&mut text, dressing);
        }
        set_accounts(&mut text, bed, rate_unit(layout.units));
        text.push('\n');
    }
    set_shopping(&mut text, &list);
    if !list.runs.is_empty() {
        text.push_str("\nThrough the tape\n");
        for run in &list.runs {
            set_run(&mut text, run);
        }
    }
    text.push_str("\nMind\n");
    for caution in &list.cautions {
        let _ = writeln!(text, "  {}\n    {}", caution.sentence, caution.source);
    }
    text.replace('\u{a0}', " ")
}

/// A line with a name in front, left out when there is nothing to say.
fn say(text: &mut String, name: &str, words: &str) {
    if !words.is_empty() {
        let _ = writeln!(text, "    {name:<10} {words}");
    }
}

fn set_dressing(text: &mut String, words: &DressingWords) {
    let amount = match words.amount_planned.as_str() {
        "" => words.amount.clone(),
        planned => format!("{} ({planned})", words.amount),
    };
    let _ = writeln!(text, "  {}: {}, {amount}", words.name, words.material);
    say(text, "so far", &words.done);
    say(text, "where", &words.where_and_when());
    say(text, "counted", &words.goes_by);
    say(text, "problem", &words.problem);
    if !words.problem.is_empty() {
        return;
    }
    let with_scoops = |weight: &str, scoops: &str| match scoops {
        "" => weight.to_owned(),
        scoops => format!("{weight}, {scoops}"),
    };
    for row in &words.rows {
        let amount = with_scoops(&row.weight, &row.scoops);
        say(
            text,
            &format!("row {}", row.number),
            &format!("{amount}, on {}", row.length),
        );
    }
    say(text, "in all", &with_scoops(&words.total, &words.scoops));
    say(text, "pace", &words.pace_and_scoop());
    say(text, "note", words.scoops_note);
    say(text, "changed", &words.changed);
}

fn set_accounts(text: &mut String, bed: &FedBed, unit: &str) {
    let _ = writeln!(text, "  Account in {unit}");
    for account in &bed.accounts {
        let AccountWords { has, planned, done, .. } = account;
        let wanted = match account.wanted.as_str() {
            "" => String::new(),
            wanted => format!("wanted {wanted}, "),
        };
        let to_give = match account.to_give.as_str() {
            "" => String::new(),
            to_give => format!("to give {to_give}, "),
        };
        let words = format!(
            "{wanted}has {has}, {to_give}planned {planned}, done {done}: {}",
            account.standing
        );
        say(text, account.nutrient.name(), &words);
    }
    for credit in &bed.credits {
        say(text, "has", credit);
    }
    say(text, "lime", &bed.lime);
}

fn set_shopping(text: &mut String, list: &FeedingList) {
    text.push_str("To buy\n");
    for words in &list.shopping {
        let mut parts = vec![format!("{} of {} needed", words.to_buy, words.need)];
        parts.extend((!words.bags.is_empty()).then(|| words.bags.clone()));
        parts.extend((!words.cost.is_empty()).then(|| words.cost.clone()));
        parts.extend((!words.at_hand.is_empty()).then(|| format!("{} at hand", words.at_hand)));
        parts.extend((!words.left_over.is_empty()).then(|| format!("{} left over", words.left_over)));
        let _ = writeln!(text, "  {}: {}", words.name, parts.join(", "));
    }
    if !list.cost.is_empty() {
        let note = match list.cost_note.as_str() {
            "" => String::new(),
            note => format!(", {note}"),
        };
        let _ = writeln!(text, "  All bags {}{note}", list.cost);
    }
}

fn set_run(text: &mut String, run: &RunWords) {
    let _ = writeln!(text, "  {}, {}: {} of {}", run.zone, run.name, run.each, run.material);
    say(text, "beds", &run.beds);
    say(text, "when", run.when());
    for feeding in run.one_by_one() {
        say(text, "", &feeding.line());
    }
    say(text, "stock", &run.tank);
    if run.problem.is_empty() || !run.stock.is_empty() {
        say(
            text,
            "strength",
            &format!("{}, {} N at the outlets", run.stock, run.nitrogen),
        );
    }
    say(text, "water", &run.dissolves);
    say(text, "time", &run.how_long());
    say(text, "brings", &run.water());
    say(text, "problem", &run.problem);
}
