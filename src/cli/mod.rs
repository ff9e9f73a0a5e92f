//! The command line: the same plan without a window.
//!
//! Exit status: 0 done; 1 the input has something wrong, said on standard error; 2 the words are wrong.

mod check;
mod corners;
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

use crate::layout::{Layout, store};
use words::{Job, Words};

/// Carries out what the words say; without a job, opens the window.
pub fn run(words: impl IntoIterator<Item = OsString>) -> ExitCode {
    let words = match Words::try_parse_from(words) {
        Ok(words) => words,
        Err(asked) => return answer_words(&asked),
    };
    let done = match words.job {
        None => crate::app::open_window(words.file.as_deref()),
        Some(Job::New(job)) => new::new_layout(&job),
        Some(Job::Ledger(job)) => ledger::print_ledger(&job),
        Some(Job::Order(job)) => order::write_order(&job),
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
