//! The command line, run as a grower or a script would: words in, answers and files out, and every bad input.

#![expect(clippy::unwrap_used, reason = "a test stops where something is missing")]

mod bad_input;
mod cases;
#[path = "../fed/garden.rs"]
mod fed_garden;
mod feed;
mod ledger;
mod map;
mod on_a_day;
mod order;

use std::path::{Path, PathBuf};
use std::process::{Command, Output};

use serde_json::Value;

/// Runs the program with no display and no settings of the person who runs the tests.
fn quillet(folder: &Path, words: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_quillet"))
        .args(words)
        .current_dir(folder)
        .env_remove("DISPLAY")
        .env_remove("WAYLAND_DISPLAY")
        .env_remove("WAYLAND_SOCKET")
        .env("HOME", folder)
        .env("XDG_CONFIG_HOME", folder)
        .env("XDG_DATA_HOME", folder)
        .output()
        .unwrap()
}

/// What it printed, when it was done.
#[track_caller]
fn done(folder: &Path, words: &[&str]) -> String {
    let output = quillet(folder, words);
    let errors = String::from_utf8_lossy(&output.stderr);
    assert_eq!(output.status.code(), Some(0), "{words:?}: {errors}");
    String::from_utf8(output.stdout).unwrap()
}

/// What it said on standard error, when the input had something wrong.
#[track_caller]
fn refused(folder: &Path, words: &[&str]) -> String {
    let output = quillet(folder, words);
    let errors = String::from_utf8_lossy(&output.stderr).into_owned();
    assert_eq!(output.status.code(), Some(1), "{words:?}: {errors}");
    assert!(output.stdout.is_empty(), "nothing is printed beside an error");
    assert!(!errors.contains("panicked"), "{errors}");
    assert!(errors.trim().lines().count() >= 1);
    errors
}

fn json(folder: &Path, file: &str) -> Value {
    serde_json::from_str(&done(folder, &["ledger", file, "--format", "json"])).unwrap()
}

fn sample(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("sample-layouts").join(name)
}

/// A folder with the corners of a 30 by 35 ft plot in `corners.csv`.
fn folder_with_corners() -> tempfile::TempDir {
    let folder = tempfile::tempdir().unwrap();
    let corners = "ring,east_ft,north_ft\n0,0,0\n0,30,0\n0,30,35\n0,0,35\n";
    std::fs::write(folder.path().join("corners.csv"), corners).unwrap();
    folder
}
