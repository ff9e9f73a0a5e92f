//! All reference cases of row fitting, through `new` and `ledger`, as a script would ask for them.
//!
//! The cases and where they come from: `tests/geometry/rows-cases.json`.

use std::fmt::Write as _;
use std::path::Path;

use serde_json::Value;

use super::{done, json};

const METRES_PER_FOOT: f64 = 0.3048;

fn rings(case: &Value) -> String {
    let mut text = "ring,east_ft,north_ft\n".to_owned();
    let holes = case["holes"].as_array().unwrap();
    for (ring, corners) in std::iter::once(&case["outer"]).chain(holes).enumerate() {
        for corner in corners.as_array().unwrap() {
            writeln!(text, "{ring},{},{}", corner[0], corner[1]).unwrap();
        }
    }
    text
}

#[track_caller]
fn close(found: &Value, feet: &Value, what: &str) {
    let (found, expected) = (found.as_f64().unwrap(), feet.as_f64().unwrap() * METRES_PER_FOOT);
    // The file gives feet to four decimals, so a millimetre is what can be asked.
    assert!(
        (found - expected).abs() < 1e-3,
        "{what}: {found} m, expected {expected} m"
    );
}

fn check_case(folder: &Path, case: &Value, placement: &str, remainder: &str) {
    let name = format!("{} {placement}", case["id"].as_str().unwrap());
    let expected = &case["expected"][placement];
    std::fs::write(folder.join("corners.csv"), rings(case)).unwrap();
    let feet = |key: &str| format!("{} ft", case[key]);
    for (index, planting) in case["plantings"].as_array().unwrap().iter().enumerate() {
        let file = format!("{}-{placement}-{index}.ron", case["id"].as_str().unwrap());
        let (bearing, spacing) = (case["bearing_deg"].to_string(), feet("row_spacing_ft"));
        let (edge, headland) = (feet("edge_margin_ft"), feet("headland_ft"));
        let (in_row, end_gap) = (
            format!("{} in", planting["in_row_in"]),
            format!("{} in", planting["end_gap_in"]),
        );
        let words = [
            "new",
            "--corners",
            "corners.csv",
            "-o",
            &file,
            "--bearing",
            &bearing,
            "--row-spacing",
            &spacing,
            "--edge",
            &edge,
            "--headland",
            &headland,
            "--remainder",
            remainder,
            "--crop",
            "sweet_corn",
            "--in-row",
            &in_row,
            "--end-gap",
            &end_gap,
        ];
        done(folder, &words);
        let ledger = json(folder, &file);
        let bed = &ledger["beds"][0];
        close(
            &bed["across_m"],
            &expected["across_width_ft"],
            &format!("{name}: across"),
        );
        assert_eq!(bed["row_lines"], expected["row_lines"], "{name}: lines");
        if expected["row_lines"].as_u64().unwrap() > 0 {
            close(
                &bed["remainder_m"],
                &expected["remainder_ft"],
                &format!("{name}: left over"),
            );
        }
        let rows = bed["rows"].as_array().unwrap();
        assert_eq!(
            rows.len() as u64,
            expected["rows_with_length"].as_u64().unwrap(),
            "{name}: rows"
        );
        let plants = &expected["plantings"][index];
        for (at, row) in rows.iter().enumerate() {
            close(
                &row["length_m"],
                &expected["row_lengths_ft"][at],
                &format!("{name}: row {at}"),
            );
            assert_eq!(
                row["plants"], plants["plants_per_row"][at],
                "{name}: plants of row {at}"
            );
            let pieces = row["pieces"].as_array().unwrap();
            let segments = expected["segments_xyxy"][at].as_array().unwrap();
            assert_eq!(pieces.len(), segments.len(), "{name}: pieces of row {at}");
            for (piece, segment) in pieces.iter().zip(segments) {
                for (end, first) in [("start_m", 0), ("end_m", 2)] {
                    for axis in 0..2 {
                        close(
                            &piece[end][axis],
                            &segment[first + axis],
                            &format!("{name}: row {at} {end}"),
                        );
                    }
                }
            }
        }
        assert_eq!(bed["totals"]["plants"], plants["plants_total"], "{name}: plants");
    }
}

#[test]
fn every_case_comes_out_of_the_command_line() {
    let folder = tempfile::tempdir().unwrap();
    let text = std::fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/geometry/rows-cases.json"));
    let cases: Value = serde_json::from_str(&text.unwrap()).unwrap();
    let cases = cases["cases"].as_array().unwrap();
    assert_eq!(cases.len(), 25);
    for case in cases {
        check_case(folder.path(), case, "from_edge", "right");
        check_case(folder.path(), case, "centered", "centred");
    }
}
