//! Twenty-five row-fitting cases, each with the left-over width on the right and shared between both sides.
//!
//! `rows-cases.json` was made with Shapely 2.2 (intersection of lines with polygons) and confirmed by a separate
//! scan-line computation written without it. Its conventions stand in its first block. Values are in feet, rounded to
//! four decimals; no count in it hangs on rounding.

use quillet::geometry::{Clearing, Lines, PlantRule, Point, Remainder, RowRule, fit_rows, ground};
use quillet::quantity::{Bearing, Length};
use serde_json::Value;

const CASES: &str = include_str!("rows-cases.json");

fn feet(value: &Value) -> Length {
    Length::feet(value.as_f64().unwrap())
}

fn points(ring: &Value) -> Vec<Point> {
    let point = |p: &Value| Point::feet(p[0].as_f64().unwrap(), p[1].as_f64().unwrap());
    ring.as_array().unwrap().iter().map(point).collect()
}

#[track_caller]
fn near(case: &str, got: Length, want: Length, millimetres: f64) {
    let off = (got - want).abs().to_metres() * 1000.0;
    assert!(off <= millimetres, "{case}: {got:?} is {off} mm off {want:?}");
}

/// Checks every case with one placement; returns how many rows and pieces were compared.
fn check_placement(placement: &str, remainder: Remainder) -> (usize, usize) {
    let file: Value = serde_json::from_str(CASES).unwrap();
    let cases = file["cases"].as_array().unwrap();
    assert_eq!(cases.len(), 25);
    let (mut rows, mut pieces) = (0, 0);
    for case in cases {
        let id = format!("{} {placement}", case["id"].as_str().unwrap());
        let holes: Vec<Clearing> = case["holes"]
            .as_array()
            .unwrap()
            .iter()
            .map(|hole| Clearing {
                ring: points(hole),
                clear: Length::ZERO,
            })
            .collect();
        let region = ground(&points(&case["outer"]), None, &holes, Length::ZERO).unwrap();
        let area = case["polygon_area_sqft"].as_f64().unwrap();
        assert!(
            (region.area().to_square_feet() - area).abs() < 1e-3 * area.max(1.0).sqrt(),
            "{id}: area"
        );
        let rule = RowRule {
            bearing: Bearing::degrees(case["bearing_deg"].as_f64().unwrap()),
            spacing: feet(&case["row_spacing_ft"]),
            edge_margin: feet(&case["edge_margin_ft"]),
            remainder,
            headland: feet(&case["headland_ft"]),
            shortest: Length::ZERO,
        };
        let fit = fit_rows(&region, &rule).unwrap();
        let want = &case["expected"][placement];
        let count = |key: &str| want[key].as_u64().unwrap() as usize;
        near(&id, fit.across, feet(&want["across_width_ft"]), 1.0);
        near(&id, fit.remainder, feet(&want["remainder_ft"]), 1.0);
        assert_eq!(fit.row_lines, count("row_lines"), "{id}: lines");
        assert_eq!(fit.row_count(), count("rows_with_length"), "{id}: rows");
        assert_eq!(fit.piece_count(), count("segment_count"), "{id}: pieces");
        let ten_thousandths = 1.0 + 0.1 * fit.row_count() as f64;
        near(
            &id,
            fit.total_length(),
            feet(&want["total_row_length_ft"]),
            ten_thousandths,
        );
        for (row, (length, segments)) in fit.rows().zip(
            want["row_lengths_ft"]
                .as_array()
                .unwrap()
                .iter()
                .zip(want["segments_xyxy"].as_array().unwrap()),
        ) {
            near(&id, row.length(), feet(length), 1.0);
            let segments = segments.as_array().unwrap();
            assert_eq!(row.piece_count(), segments.len(), "{id}: pieces of row {}", row.index);
            for (piece, segment) in row.pieces().zip(segments) {
                near(&id, Length::metres(piece.start().x), feet(&segment[0]), 1.0);
                near(&id, Length::metres(piece.start().y), feet(&segment[1]), 1.0);
                near(&id, Length::metres(piece.end().x), feet(&segment[2]), 1.0);
                near(&id, Length::metres(piece.end().y), feet(&segment[3]), 1.0);
                near(&id, piece.length(), piece.start().distance(piece.end()), 1e-6);
                pieces += 1;
            }
            rows += 1;
        }
        for planting in want["plantings"].as_array().unwrap() {
            let inches = |key: &str| Length::inches(planting[key].as_f64().unwrap());
            let plants = PlantRule::new(inches("in_row_in"), inches("end_gap_in"), Lines::SINGLE).unwrap();
            let per_row: Vec<u64> = fit
                .rows()
                .map(|row| row.pieces().map(|p| plants.on(p.length())).sum())
                .collect();
            let wanted: Vec<u64> = planting["plants_per_row"]
                .as_array()
                .unwrap()
                .iter()
                .map(|n| n.as_u64().unwrap())
                .collect();
            assert_eq!(per_row, wanted, "{id}: plants of each row");
            assert_eq!(
                per_row.iter().sum::<u64>(),
                planting["plants_total"].as_u64().unwrap(),
                "{id}: plants"
            );
        }
    }
    (rows, pieces)
}

#[test]
fn twenty_five_cases_with_the_left_over_width_on_the_right() {
    // As many as the file lists.
    assert_eq!(check_placement("from_edge", Remainder::Right), (752, 803));
}

#[test]
fn twenty_five_cases_with_the_left_over_width_shared() {
    // As many as the file lists.
    assert_eq!(check_placement("centered", Remainder::Centred), (751, 800));
}
