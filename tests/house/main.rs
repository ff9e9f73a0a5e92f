//! The house stands as drawn: floors import only downwards, and nothing below the window names its library.

#![expect(
    clippy::unwrap_used,
    reason = "a test or bench that cannot go on says so by stopping"
)]

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};

/// The floors from the ground up. A folder may name itself and every folder of a lower floor.
const FLOORS: &[(&str, usize)] = &[
    ("quantity", 0),
    ("geometry", 1),
    ("catalog", 2),
    ("layout", 3),
    ("agronomy", 4),
    ("plan", 5),
    ("sheets", 6),
    ("app", 7),
    ("cli", 8),
];

fn rust_files(folder: &Path, files: &mut Vec<PathBuf>) {
    let mut entries: Vec<PathBuf> = std::fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .collect();
    entries.sort();
    for entry in entries {
        if entry.is_dir() {
            rust_files(&entry, files);
        } else if entry.extension().is_some_and(|ending| ending == "rs") {
            files.push(entry);
        }
    }
}

fn source() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("src")
}

/// Every floor that a text names after `crate::`, comments left out.
fn floors_named(text: &str) -> BTreeSet<&'static str> {
    let mut named = BTreeSet::new();
    for line in text.lines().map(|line| line.split("//").next().unwrap_or_default()) {
        for part in line.split("crate::").skip(1) {
            let word: String = part.chars().take_while(|c| c.is_alphanumeric() || *c == '_').collect();
            named.extend(FLOORS.iter().map(|(name, _)| *name).filter(|name| *name == word));
        }
    }
    named
}

#[test]
fn every_folder_is_a_floor() {
    let floors: BTreeSet<&str> = FLOORS.iter().map(|(name, _)| *name).collect();
    for entry in std::fs::read_dir(source()).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            let name = path.file_name().unwrap().to_str().unwrap().to_owned();
            assert!(floors.contains(name.as_str()), "src/{name} stands on no floor");
        }
    }
}

#[test]
fn floors_import_only_from_below() {
    let heights: BTreeMap<&str, usize> = FLOORS.iter().copied().collect();
    for (floor, height) in FLOORS {
        let folder = source().join(floor);
        assert!(folder.is_dir(), "src/{floor} is missing");
        let mut files = Vec::new();
        rust_files(&folder, &mut files);
        assert!(!files.is_empty(), "src/{floor} is empty");
        for file in files {
            for named in floors_named(&std::fs::read_to_string(&file).unwrap()) {
                assert!(
                    named == *floor || heights[named] < *height,
                    "{} names {named}, which is not below {floor}",
                    file.display()
                );
            }
        }
    }
}

#[test]
fn only_the_window_names_its_library() {
    for (floor, _) in FLOORS.iter().filter(|(_, height)| *height < 7) {
        let mut files = Vec::new();
        rust_files(&source().join(floor), &mut files);
        for file in files {
            let text = std::fs::read_to_string(&file).unwrap();
            let code = text
                .lines()
                .map(|line| line.split("//").next().unwrap_or_default())
                .collect::<Vec<_>>()
                .join("\n");
            for library in ["egui", "eframe", "rfd"] {
                assert!(!code.contains(library), "{} names {library}", file.display());
            }
        }
    }
}

#[test]
fn the_top_level_holds_what_the_map_says() {
    let expected: BTreeSet<&str> = [
        "Cargo.lock",
        "Cargo.toml",
        "DEVELOPERS.md",
        "LICENSE-APACHE",
        "LICENSE-MIT",
        "README.md",
        "assets",
        "clippy.toml",
        "rustfmt.toml",
        "sample-layouts",
        "src",
        "target",
        "tests",
    ]
    .into();
    for entry in std::fs::read_dir(env!("CARGO_MANIFEST_DIR")).unwrap() {
        let name = entry.unwrap().file_name().into_string().unwrap();
        assert!(
            name.starts_with('.') || expected.contains(name.as_str()),
            "{name} has no place at the top level"
        );
    }
}
