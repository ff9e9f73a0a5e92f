//! The command line: the same plan without a window.
//!
//! Exit status: 0 done; 1 the input has something wrong, said on standard error; 2 the words are wrong. Where only a part
//! of a layout is wrong, the rest is still printed or drawn.

mod check;
mod corners;
mod feed;
mod format;
mod ledger;
mod map;
mod new;
mod order;
mod words;

use std::ffi::OsString;
use std::io::Write as _;
use std::path::Path;
use std::process::ExitCode;

use clap::Parser as _;

use crate::layout::{Item, Layout, store};
use crate::plan::Plan;
use words::{Job, Words};

/// Carries out what the words say; without a job, opens the window.
pub fn run(words: impl IntoIterator<Item = OsString>) -> ExitCode {
    let words = match Words::try_parse_from(words) {
        Ok(words) => words,
        Err(asked) => return answer_words(&asked),
    };
    let done = match words.job {
        None => match words.file.as_deref().filter(|file| !file.exists()) {
            Some(file) => Err(format!(
                "There is no such file: {}. quillet --help lists what can be done without one.",
                file.display()
            )),
            None => crate::app::open_window(words.file.as_deref()),
        },
        Some(Job::New(job)) => new::new_layout(&job),
        Some(Job::Ledger(job)) => ledger::print_ledger(&job),
        Some(Job::Order(job)) => order::write_order(&job),
        Some(Job::Feed(job)) => feed::write_feeding(&job),
        Some(Job::Map(job)) => map::write_map(&job),
        Some(Job::Check(job)) => check::print_check(&job),
    };
    match done {
        Ok(()) => ExitCode::SUCCESS,
        Err(sentence) => {
            say_wrong(&format!("quillet: {sentence}"));
            ExitCode::from(1)
        }
    }
}

/// Help and version go to standard output and are no mistake; wrong words go to standard error.
fn answer_words(asked: &clap::Error) -> ExitCode {
    // Nothing can be done about a closed terminal.
    let _ = asked.print();
    ExitCode::from(if asked.use_stderr() { 2 } else { 0 })
}

/// The layout in a file.
fn read(path: &Path) -> Result<Layout, String> {
    store::load(path).map_err(|error| error.to_string())
}

/// Nothing, or a sentence for every plot and bed that can have no rows. Said after all that can be worked out.
fn sound(file: &Path, layout: &Layout, plan: &Plan) -> Result<(), String> {
    let plots = plan
        .plots
        .iter()
        .filter_map(|plot| Some((Item::Plot(plot.plot), plot.ground.as_ref().err()?)));
    let wrong_plots: Vec<(Item, &String)> = plots.collect();
    let is_wrong = |plot| wrong_plots.iter().any(|(item, _)| *item == Item::Plot(plot));
    // A bed of a plot that is no ground says the same again.
    let beds = plan
        .beds
        .iter()
        .filter(|bed| !layout.bed(bed.bed).is_some_and(|bed| is_wrong(bed.plot)))
        .filter_map(|bed| Some((Item::Bed(bed.bed), bed.problem.as_ref()?)));
    let sentences: Vec<String> = wrong_plots
        .iter()
        .copied()
        .chain(beds)
        .map(|(item, problem)| format!("{}, {}: {problem}", file.display(), layout.name_of(item)))
        .collect();
    if sentences.is_empty() {
        Ok(())
    } else {
        Err(sentences.join("\n"))
    }
}

/// Prints to standard output. A reader that went away is no mistake of ours.
fn say(text: &str) -> Result<(), String> {
    let mut out = std::io::stdout().lock();
    match out.write_all(text.as_bytes()).and_then(|()| out.flush()) {
        Err(error) if error.kind() != std::io::ErrorKind::BrokenPipe => {
            Err(format!("The answer could not be written: {error}."))
        }
        _ => Ok(()),
    }
}

/// Prints a sentence to standard error.
fn say_wrong(sentence: &str) {
    // When even this cannot be written, the exit status still says it.
    let _ = writeln!(std::io::stderr().lock(), "{sentence}");
}
