//! Sources are cited in one way, also those of formulas.

use std::path::Path;

use quillet::catalog::{Catalog, Mark, SourceKey};

/// The keys that the code itself cites.
pub(super) fn keys_in_code() -> Vec<SourceKey> {
    cited_in_code().into_iter().map(|(key, _)| key).collect()
}

/// The keys that the code itself cites, each with the name of its mark.
pub(super) fn cited_in_code() -> Vec<(SourceKey, String)> {
    let mut keys = Vec::new();
    look_in(&Path::new(env!("CARGO_MANIFEST_DIR")).join("src"), &mut keys);
    keys
}

fn look_in(folder: &Path, keys: &mut Vec<(SourceKey, String)>) {
    for entry in std::fs::read_dir(folder).into_iter().flatten().flatten() {
        let path = entry.path();
        if path.is_dir() {
            look_in(&path, keys);
            continue;
        }
        let text = std::fs::read_to_string(&path).unwrap_or_default();
        for call in text.split(".cite_key(").skip(1) {
            let key = call
                .trim_start()
                .strip_prefix('"')
                .and_then(|key| key.split('"').next());
            // A key has to stand in the call; what stands there else is in no list.
            let key = key.map_or_else(|| path.display().to_string(), str::to_owned);
            let mark = call.split_once("Mark::").map_or("", |(_, mark)| mark);
            let mark = mark.chars().take_while(|letter| letter.is_alphabetic()).collect();
            keys.push((SourceKey(key), mark));
        }
    }
}

#[test]
fn every_source_that_the_code_cites_is_in_the_list() {
    let keys = keys_in_code();
    assert!(keys.len() >= 8, "{keys:?}");
    for key in keys {
        assert!(Catalog::built_in().citation(&key).is_some(), "{key:?}");
    }
}

#[test]
fn a_citation_names_every_source_and_says_how_it_was_read() {
    let catalog = Catalog::built_in();
    let keys = ["UVM-GRUB", "PSU-LIME"].map(|key| SourceKey(key.to_owned()));
    assert_eq!(
        catalog.cite(&keys, Mark::Read),
        "University of Vermont Extension, V. Grubinger, Nitrogen Management for Annual Vegetable Crops; Pennsylvania State \
         University, Agricultural Analytical Services Laboratory, home garden report notes (read in the source)"
    );
    let one = catalog.cite_key("PSU-LIME", Mark::FromMemory);
    assert!(one.ends_with("report notes (from memory, not read again)"), "{one}");
    assert_eq!(catalog.cite_key("no such key", Mark::Read), "Read in the source");
}

#[test]
fn common_practice_and_the_grower_s_own_are_said_once() {
    let catalog = Catalog::built_in();
    assert_eq!(
        catalog.cite_key("PRACTICE", Mark::CommonPractice),
        "Common practice, no source"
    );
    assert_eq!(catalog.cite(&[], Mark::Grower), "The grower's own");
}
