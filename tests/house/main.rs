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

/// A text without its comments. What stands behind two slashes in a string goes too; no floor is named there.
fn code(text: &str) -> String {
    let lines = text.lines().map(|line| line.split("//").next().unwrap_or_default());
    lines.collect::<Vec<_>>().join("\n")
}

/// Every floor that a text names after `crate::`, alone or in braces.
fn floors_named(text: &str) -> BTreeSet<&'static str> {
    let mut named = BTreeSet::new();
    for part in code(text).split("crate::").skip(1) {
        for word in first_words(part) {
            named.extend(FLOORS.iter().map(|(name, _)| *name).filter(|name| *name == word));
        }
    }
    named
}

/// The word a path goes on with, or each of those in its braces: `a` and `b` of `{a::x, b::{y, z}}`.
fn first_words(path: &str) -> Vec<String> {
    let word = |text: &str| -> String {
        let text = text.trim_start();
        text.chars().take_while(|c| c.is_alphanumeric() || *c == '_').collect()
    };
    let Some(inside) = path.trim_start().strip_prefix('{') else {
        return vec![word(path)];
    };
    let mut words = vec![word(inside)];
    let mut depth = 1;
    for (at, sign) in inside.char_indices() {
        match sign {
            '{' => depth += 1,
            '}' => depth -= 1,
            ',' if depth == 1 => words.push(word(&inside[at + 1..])),
            _ => {}
        }
        if depth == 0 {
            break;
        }
    }
    words
}

#[test]
fn names_in_braces_are_seen_and_those_in_comments_are_not() {
    let seen = |text: &str| floors_named(text).into_iter().collect::<Vec<_>>();
    assert_eq!(seen("use crate::plan::Plan;"), ["plan"]);
    assert_eq!(
        seen("use crate::{geometry::{Point, layout}, quantity};\nuse super::plan;"),
        ["geometry", "quantity"]
    );
    assert_eq!(seen("use crate::{\n    app,\n    cli::run,\n};"), ["app", "cli"]);
    assert_eq!(seen("// as crate::sheets does"), [""; 0]);
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
            let code = code(&text);
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
