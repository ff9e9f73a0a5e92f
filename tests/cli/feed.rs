//! The feeding in its five forms.

use serde_json::Value;

use super::{done, quillet, refused, sample};
use crate::fed_garden::fed;

/// A folder with the fed garden in `fed.ron`.
fn folder() -> tempfile::TempDir {
    let folder = tempfile::tempdir().unwrap();
    let text = ::quillet::layout::file::write(&fed(::quillet::quantity::Units::Customary));
    std::fs::write(folder.path().join("fed.ron"), text).unwrap();
    folder
}

fn feed_json(folder: &tempfile::TempDir) -> Value {
    serde_json::from_str(&done(folder.path(), &["feed", "fed.ron", "--format", "json"])).unwrap()
}

fn sum(rows: &Value, key: &str) -> f64 {
    let rows = rows.as_array().unwrap().iter();
    rows.map(|row| row[key].as_f64().unwrap()).sum()
}

#[test]
fn the_json_has_the_keys_that_are_promised() {
    let json = feed_json(&folder());
    for key in [
        "program", "version", "layout", "beds", "shopping", "cost", "unpriced", "runs", "cautions",
    ] {
        assert!(json.get(key).is_some(), "{key}");
    }
    let bed = &json["beds"][0];
    for key in [
        "name",
        "plot",
        "crop",
        "area_m2",
        "row_length_m",
        "planted",
        "days_to_harvest",
        "dressings",
        "accounts",
        "credits",
        "lime",
    ] {
        assert!(bed.get(key).is_some(), "{key}");
    }
    assert_eq!(bed["planted"], "2027-05-10");
    let dressing = &bed["dressings"][1];
    for key in [
        "name",
        "material",
        "material_name",
        "analysis",
        "available_n",
        "when",
        "stage",
        "day",
        "expected_day",
        "place",
        "goes_by",
        "counted_m2",
        "times",
        "times_done",
        "planned_kg",
        "total_kg",
        "used_kg",
        "done",
        "done_on",
        "feedings",
        "total_l",
        "per_row_kg_m",
        "problem",
        "rows",
    ] {
        assert!(dressing.get(key).is_some(), "{key}");
    }
    assert_eq!(dressing["done"], true);
    assert_eq!(dressing["done_on"], "2027-06-09");
    assert_eq!(dressing["day"], Value::Null, "a stage is no day");
    assert_eq!(dressing["feedings"][0]["day"], "2027-06-09");
    assert_eq!(dressing["feedings"][0]["done"], true);
    let (total, planned) = (&dressing["total_kg"], &dressing["planned_kg"]);
    // 12 lb used of 9.9 lb planned.
    assert!((total.as_f64().unwrap() / planned.as_f64().unwrap() - 12.0 / 9.9).abs() < 1e-9);
    assert!((sum(&dressing["rows"], "product_kg") - total.as_f64().unwrap()).abs() < 1e-9);
    assert_eq!(
        json["beds"][1]["dressings"][0]["total_l"],
        Value::Null,
        "no density, no litres"
    );
    let nitrogen = &bed["accounts"][0];
    assert_eq!(nitrogen["nutrient"], "nitrogen");
    assert_eq!(nitrogen["standing"], "over");
    let run = &json["runs"][0];
    assert_eq!(run["times"], 4);
    for key in [
        "stock_g_l",
        "nitrogen_ppm",
        "inject_min",
        "to_last_outlet_min",
        "rinse_min",
        "depth_mm",
    ] {
        assert!(run["strength"][key].as_f64().unwrap() > 0.0, "{key}");
    }
    let meal = json["shopping"].as_array().unwrap().iter();
    let meal = meal.clone().find(|line| line["material"] == "alfalfa_meal").unwrap();
    assert_eq!(meal["cost"], Value::Null, "no price is not nothing");
    assert!(json["cautions"].as_array().unwrap().len() > 5);
}

#[test]
fn the_ledger_says_what_was_planned_and_done() {
    let folder = folder();
    let ledger = super::json(folder.path(), "fed.ron");
    let row = &ledger["beds"][0]["rows"][0];
    let [start, first, second] = [0, 1, 2].map(|at| &row["dressings"][at]);
    assert_eq!(
        (&start["done"], &first["done"], &second["done"]),
        (&true.into(), &true.into(), &false.into())
    );
    // 0.9 lb a row was planned; 12 lb over eleven rows was used.
    let close = |value: &Value, pounds: f64| (value.as_f64().unwrap() - pounds * 0.453_592_37).abs() < 1e-9;
    assert!(close(&first["planned_kg"], 0.9) && close(&second["planned_kg"], 0.9));
    assert!(close(&first["product_kg"], 12.0 / 11.0));
}

#[test]
fn text_and_csv_tell_the_same() {
    let folder = folder();
    let text = done(folder.path(), &["feed", "fed.ron"]);
    for expected in [
        "1st side-dressing",
        "12.00 lb",
        "21 % more than",
        "no cup weight: weigh a level cup",
        "no price",
        "by row feet: 330 ft × 3 ft = 990 sq ft",
        "Through the tape",
        "Wear gloves",
    ] {
        assert!(text.contains(expected), "{expected}: {text}");
    }
    let csv = done(folder.path(), &["feed", "fed.ron", "--format", "csv"]);
    let mut reader = csv::Reader::from_reader(csv.as_bytes());
    let heads = reader.headers().unwrap().clone();
    assert!(heads.iter().any(|head| head == "product (lb)"), "{heads:?}");
    // Three dressings on 11 rows, two on 10.
    assert_eq!(reader.records().count(), 3 * 11 + 2 * 10);
}

#[test]
fn a_spreadsheet_and_a_pdf_go_to_a_file() {
    let folder = folder();
    for format in ["xlsx", "pdf"] {
        let refused = refused(folder.path(), &["feed", "fed.ron", "--format", format]);
        assert!(refused.contains("--output"), "{refused}");
    }
    let words = ["feed", "fed.ron", "--format", "xlsx", "--output", "feed.xlsx"];
    done(folder.path(), &words);
    let bytes = std::fs::read(folder.path().join("feed.xlsx")).unwrap();
    assert!(
        bytes.starts_with(b"PK\x03\x04") && bytes.len() > 5000,
        "{}",
        bytes.len()
    );
    let words = [
        "feed",
        "fed.ron",
        "--format",
        "pdf",
        "-o",
        "feed.pdf",
        "--paper",
        "a4",
        "--black-and-white",
    ];
    done(folder.path(), &words);
    let pdf = lopdf::Document::load(folder.path().join("feed.pdf")).unwrap();
    assert!(pdf.get_pages().len() > 1);
}

#[test]
fn a_layout_where_nothing_is_put_down_says_so() {
    let folder = super::folder_with_corners();
    done(folder.path(), &["new", "--corners", "corners.csv", "-o", "plot.ron"]);
    assert!(done(folder.path(), &["feed", "plot.ron"]).contains("Nothing is put down yet"));
    let output = quillet(
        folder.path(),
        &["feed", "plot.ron", "--format", "pdf", "-o", "feed.pdf"],
    );
    assert_eq!(output.status.code(), Some(1));
    assert!(String::from_utf8_lossy(&output.stderr).contains("add a dressing to a bed first"));
    assert!(!folder.path().join("feed.pdf").exists());
}

#[test]
fn every_sample_can_be_fed_by() {
    let folder = tempfile::tempdir().unwrap();
    for name in ["alder-bend.ron", "fence-field-before.ron", "hazel-croft.ron"] {
        let file = sample(name);
        let text = done(folder.path(), &["feed", file.to_str().unwrap()]);
        assert!(
            text.contains("Mind") || text.contains("Nothing is put down yet"),
            "{name}"
        );
    }
}
