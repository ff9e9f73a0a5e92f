//! The front door.

use std::path::PathBuf;
use std::process::ExitCode;

fn main() -> ExitCode {
    let file = std::env::args_os().nth(1).map(PathBuf::from);
    match quillet::app::open_window(file) {
        Ok(()) => ExitCode::SUCCESS,
        Err(sentence) => {
            use std::io::Write as _;
            let _ = writeln!(std::io::stderr(), "{sentence}");
            ExitCode::FAILURE
        }
    }
}
