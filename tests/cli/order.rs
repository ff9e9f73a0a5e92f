//! The order in its four forms.

use serde_json::Value;

use super::{done, refused, sample};

#[test]
fn every_form_tells_the_same_order() {
    let folder = tempfile::tempdir().unwrap();
    let file = sample("alder-bend.ron");
    let file = file.to_str().unwrap();
    let order: Value = serde_json::from_str(&done(folder.path(), &["order", file, "--format", "json"])).unwrap();
    let corn = order["lines"]
        .as_array()
        .unwrap()
        .iter()
        .find(|line| line["crop"] == "sweet_corn")
        .unwrap();
    let ledger = super::json(folder.path(), file);
    let beds = ledger["beds"].as_array().unwrap().iter();
    let seeds: u64 = beds
        .filter(|bed| bed["crop"] == "sweet_corn")
        .map(|bed| bed["totals"]["seeds"].as_u64().unwrap())
        .sum();
    assert_eq!(corn["need"].as_u64(), Some(seeds));

    let table = done(folder.path(), &["order", file]);
    assert!(
        table.contains(corn["name"].as_str().unwrap()) && table.contains("goes to"),
        "{table}"
    );

    let csv = done(folder.path(), &["order", file, "--format", "csv"]);
    let mut reader = csv::Reader::from_reader(csv.as_bytes());
    let heads = reader.headers().unwrap().clone();
    let column = |name: &str| heads.iter().position(|head| head == name).unwrap();
    let (need, crop) = (column("need (count)"), column("crop"));
    assert!(heads.iter().any(|head| head == "to buy (oz)"), "{heads:?}");
    let rows: Vec<_> = reader.records().map(Result::unwrap).collect();
    let of_corn = rows
        .iter()
        .find(|row| Some(&row[crop]) == corn["name"].as_str())
        .unwrap();
    assert_eq!(of_corn[need].parse::<u64>().unwrap(), seeds);
}

#[test]
fn a_spreadsheet_goes_to_a_file() {
    let folder = tempfile::tempdir().unwrap();
    let file = sample("hazel-croft.ron");
    let file = file.to_str().unwrap();
    let words = ["order", file, "--format", "xlsx"];
    assert!(refused(folder.path(), &words).contains("--output"));
    done(
        folder.path(),
        &["order", file, "--format", "xlsx", "--output", "order.xlsx"],
    );
    let bytes = std::fs::read(folder.path().join("order.xlsx")).unwrap();
    // A zip file, as every such spreadsheet is.
    assert!(
        bytes.starts_with(b"PK\x03\x04") && bytes.len() > 3000,
        "{}",
        bytes.len()
    );
    done(folder.path(), &["order", file, "--output", "order.txt"]);
    assert!(
        std::fs::read_to_string(folder.path().join("order.txt"))
            .unwrap()
            .contains("need")
    );
}

#[test]
fn the_ending_of_the_file_says_how_it_is_written() {
    let folder = tempfile::tempdir().unwrap();
    let file = sample("alder-bend.ron");
    let file = file.to_str().unwrap();
    for job in ["order", "ledger", "feed"] {
        done(folder.path(), &[job, file, "-o", "out.csv"]);
        let csv = done(folder.path(), &[job, file, "--format", "csv"]);
        assert_eq!(
            std::fs::read_to_string(folder.path().join("out.csv")).unwrap(),
            csv,
            "{job}"
        );
        done(folder.path(), &[job, file, "-o", "out.JSON"]);
        let json = std::fs::read_to_string(folder.path().join("out.JSON")).unwrap();
        assert!(serde_json::from_str::<Value>(&json).is_ok(), "{job}");
        // A form that is asked for goes before the ending.
        done(folder.path(), &[job, file, "--format", "table", "-o", "out.csv"]);
        let text = std::fs::read_to_string(folder.path().join("out.csv")).unwrap();
        assert_eq!(text, done(folder.path(), &[job, file]), "{job}");
        let said = refused(folder.path(), &[job, file, "-o", "out.svg"]);
        assert!(said.contains("not written as .svg"), "{job}: {said}");
    }
}
