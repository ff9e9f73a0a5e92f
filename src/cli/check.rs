//! `quillet check`: what is wrong with a layout, and what a careful neighbour would mention.

use std::fmt::Write as _;

use super::words::Check;
use super::{read, say, sound};
use crate::plan::Planner;

/// Prints the heads-up list. A file that is no sound layout is an error, as everywhere, and so is ground that can have
/// no rows; what a neighbour would mention is not.
pub(super) fn print_check(words: &Check) -> Result<(), String> {
    let layout = read(&words.file)?;
    let plan = Planner::default().plan(&layout);
    let mut text = String::new();
    for heads_up in &plan.heads_up {
        // Writing to a string does not fail.
        let _ = writeln!(text, "{}: {}", layout.name_of(heads_up.about), heads_up.what);
        let _ = writeln!(text, "    {}", heads_up.why);
        let _ = writeln!(text, "    Source: {}", heads_up.source);
    }
    let _ = match plan.heads_up.len() {
        0 => writeln!(text, "{}: nothing to mention.", layout.name),
        1 => writeln!(text, "1 thing to mention."),
        n => writeln!(text, "{n} things to mention."),
    };
    say(&text)?;
    sound(&words.file, &layout, &plan)
}
