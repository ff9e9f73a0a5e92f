//! The front door: the window, or the command line.

fn main() -> std::process::ExitCode {
    quillet::cli::run(std::env::args_os())
}
