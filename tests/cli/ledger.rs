//! The ledger in its three forms, and the check.

use quillet::catalog::Catalog;

use super::{done, folder_with_corners, json, sample};

#[test]
fn the_json_has_every_promised_key() {
    let folder = tempfile::tempdir().unwrap();
    let ledger = json(folder.path(), sample("alder-bend.ron").to_str().unwrap());
    assert_eq!(ledger["program"], "quillet");
    assert!(ledger["version"].is_string() && ledger["heads_up"].is_array());
    assert_eq!(ledger["layout"], "Alder Bend");
    let bed = &ledger["beds"][0];
    for key in ["name", "plot", "crop", "water"] {
        assert!(bed[key].is_string(), "{key}");
    }
    for key in [
        "area_m2",
        "row_bearing_deg",
        "row_spacing_m",
        "in_row_spacing_m",
        "across_m",
        "remainder_m",
    ] {
        assert!(bed[key].is_f64(), "{key}");
    }
    assert!(bed["row_lines"].is_u64());
    let row = &bed["rows"][0];
    for key in ["number", "plants", "seeds"] {
        assert!(row[key].is_u64(), "{key}");
    }
    assert!(row["length_m"].is_f64() && row["seed_g"].is_f64());
    let piece = &row["pieces"][0];
    assert!(piece["start_m"][1].is_f64() && piece["end_m"][0].is_f64() && piece["length_m"].is_f64());
    assert!(piece["plants"].is_u64());
    let dressing = &row["dressings"][1];
    assert_eq!(dressing["name"], "1st side-dress");
    assert_eq!(dressing["material"], "sodium_nitrate_15");
    for key in ["product_kg", "n_kg", "p2o5_kg", "k2o_kg"] {
        assert!(dressing[key].is_f64(), "{key}");
    }
    for key in ["rows", "plants", "seeds"] {
        assert!(bed["totals"][key].is_u64(), "{key}");
    }
    assert!(bed["totals"]["row_length_m"].is_f64() && bed["totals"]["seed_g"].is_f64());
}

#[test]
fn the_three_forms_tell_the_same() {
    let folder = tempfile::tempdir().unwrap();
    let file = sample("alder-bend.ron");
    let file = file.to_str().unwrap();
    let ledger = json(folder.path(), file);
    let corn = &ledger["beds"][0];
    assert_eq!(corn["totals"]["rows"], 10);
    assert_eq!(corn["totals"]["plants"], 880);

    let table = done(folder.path(), &["ledger", file]);
    assert!(table.contains("440\u{a0}ft") && table.contains("880"), "{table}");
    assert!(table.contains("1st side-dress"), "{table}");

    let csv = done(folder.path(), &["ledger", file, "--format", "csv"]);
    let mut lines = csv.lines();
    let heads: Vec<&str> = lines.next().unwrap().split(',').collect();
    assert_eq!(heads[..6], ["bed", "plot", "crop", "water", "row", "length (ft)"]);
    let plants = heads.iter().position(|head| *head == "plants").unwrap();
    let of_corn = lines.filter(|line| line.starts_with("Corn block,"));
    let sum: u64 = of_corn
        .map(|line| line.split(',').nth(plants).unwrap().parse::<u64>().unwrap())
        .sum();
    assert_eq!(sum, 880);
}

#[test]
fn a_new_layout_takes_the_programs_defaults() {
    let folder = folder_with_corners();
    done(
        folder.path(),
        &[
            "new",
            "--corners",
            "corners.csv",
            "-o",
            "plot.ron",
            "--name",
            "North ground",
        ],
    );
    let ledger = json(folder.path(), "plot.ron");
    assert_eq!(ledger["layout"], "North ground");
    let bed = &ledger["beds"][0];
    assert!((bed["row_spacing_m"].as_f64().unwrap() - 0.9144).abs() < 1e-9);
    assert_eq!(bed["water"], "buried-drip");
    assert_eq!(bed["crop"], serde_json::Value::Null);
    assert_eq!(bed["rows"].as_array().unwrap().len(), 10);
}

#[test]
fn lengths_are_read_as_growers_write_them() {
    let folder = folder_with_corners();
    for (spacing, metres) in [
        ("3'6\"", 1.0668),
        ("42 in", 1.0668),
        ("3 1/2 ft", 1.0668),
        ("1.1m", 1.1),
        ("3", 0.9144),
    ] {
        done(
            folder.path(),
            &[
                "new",
                "--corners",
                "corners.csv",
                "-o",
                "plot.ron",
                "--row-spacing",
                spacing,
            ],
        );
        let found = json(folder.path(), "plot.ron")["beds"][0]["row_spacing_m"]
            .as_f64()
            .unwrap();
        assert!((found - metres).abs() < 1e-9, "{spacing}: {found}");
    }
}

#[test]
fn spacing_without_a_crop_still_counts_plants() {
    let folder = folder_with_corners();
    let words = [
        "new",
        "--corners",
        "corners.csv",
        "-o",
        "p.ron",
        "--bearing",
        "90",
        "--in-row",
        "6in",
    ];
    done(folder.path(), &words);
    let ledger = json(folder.path(), "p.ron");
    assert_eq!(ledger["beds"][0]["totals"]["plants"], 660);
    assert_eq!(ledger["heads_up"], serde_json::json!([]));
}

#[test]
fn clear_ground_is_kept_along_the_outline_and_round_obstacles() {
    let folder = tempfile::tempdir().unwrap();
    let corners = "ring,east_ft,north_ft\n0,0,0\n0,40,0\n0,40,40\n0,0,40\n7,18,18\n7,22,18\n7,22,22\n7,18,22\n";
    std::fs::write(folder.path().join("corners.csv"), corners).unwrap();
    let words = [
        "new",
        "--corners",
        "corners.csv",
        "-o",
        "p.ron",
        "--bearing",
        "0",
        "--clear",
        "2 ft",
        "--row-spacing",
        "4 ft",
    ];
    done(folder.path(), &words);
    let ledger = json(folder.path(), "p.ron");
    let bed = &ledger["beds"][0];
    // 36 ft are left: rows at 4, 8, 12, 16, 20, … ft; the one at 20 ft runs into the obstacle grown to 16–24 ft.
    let rows = bed["rows"].as_array().unwrap();
    assert_eq!(rows.len(), 9);
    let cut = rows.iter().find(|row| row["number"] == 5).unwrap();
    assert_eq!(cut["pieces"].as_array().unwrap().len(), 2);
    assert!(
        (cut["length_m"].as_f64().unwrap() - 28.0 * 0.3048).abs() < 1e-3,
        "{cut}"
    );
    let whole = rows.iter().find(|row| row["number"] == 1).unwrap();
    assert!(
        (whole["length_m"].as_f64().unwrap() - 36.0 * 0.3048).abs() < 1e-3,
        "{whole}"
    );
}

#[test]
fn the_check_says_what_a_neighbour_would() {
    let folder = folder_with_corners();
    let words = [
        "new",
        "--corners",
        "corners.csv",
        "-o",
        "p.ron",
        "--crop",
        "sweet_corn",
        "--row-spacing",
        "20 in",
    ];
    done(folder.path(), &words);
    let said = done(folder.path(), &["check", "p.ron"]);
    assert!(
        said.contains("closer than the 30 in") && said.contains("Source:"),
        "{said}"
    );
    assert!(said.contains("FN1799"), "{said}");
    for name in [
        "alder-bend.ron",
        "hazel-croft.ron",
        "fence-field-before.ron",
        "fence-field-after.ron",
    ] {
        let said = done(folder.path(), &["check", sample(name).to_str().unwrap()]);
        assert!(said.contains("nothing to mention"), "{name}: {said}");
    }
}

#[test]
fn the_fence_field_grew() {
    let folder = tempfile::tempdir().unwrap();
    let rows = |name: &str| json(folder.path(), sample(name).to_str().unwrap())["beds"][0]["totals"]["rows"].as_u64();
    // 14 ft more at 3 ft a row: from 14 rows to 18.
    assert_eq!(rows("fence-field-before.ron"), Some(14));
    assert_eq!(rows("fence-field-after.ron"), Some(18));
}

#[test]
fn every_water_and_the_shortest_row_come_through() {
    let folder = tempfile::tempdir().unwrap();
    // Rows run north in a triangle: 28.5, 25.5, … 1.5 ft long.
    let corners = "ring,east_ft,north_ft\n0,0,0\n0,30,0\n0,0,30\n";
    std::fs::write(folder.path().join("corners.csv"), corners).unwrap();
    let bed = |more: &[&str]| {
        let words = ["new", "--corners", "corners.csv", "-o", "p.ron", "--bearing", "0"];
        done(folder.path(), &[&words, more].concat());
        json(folder.path(), "p.ron")["beds"][0].clone()
    };
    for water in ["buried-drip", "surface-drip", "overhead", "rain"] {
        assert_eq!(bed(&["--water", water])["water"], water);
    }
    for (shortest, rows) in [("0", 10), ("4 ft", 9), ("5 ft", 8), ("31 ft", 0)] {
        let bed = bed(&["--shortest", shortest]);
        assert_eq!(
            (bed["row_lines"].as_u64(), bed["totals"]["rows"].as_u64()),
            (Some(10), Some(rows)),
            "{shortest}"
        );
    }
}

#[test]
fn nutrients_and_tape_are_what_the_material_and_the_rows_make_them() {
    let folder = tempfile::tempdir().unwrap();
    let material = Catalog::built_in().materials().iter().find(|material| {
        let analysis = material.analysis.value;
        let parts = [analysis.n.get(), analysis.p2o5.get(), analysis.k2o.get()];
        parts[0] != parts[1] && parts[1] != parts[2] && parts[0] != parts[2]
    });
    let material = material.unwrap();
    let layout = format!(
        "(version: 1, name: \"x\", year: 2027, plots: [(name: \"A\", corners_ft: [(0, 0), (30, 0), (30, 35), (0, 35)])],
        beds: [(name: \"B\", plot: \"A\", bearing_deg: 0, row_spacing_ft: 3, water: drip,
        dressings: [(name: \"D\", material: \"{}\", lb_per_1000_sq_ft: 10)])])",
        material.id.0
    );
    std::fs::write(folder.path().join("x.ron"), layout).unwrap();
    let row = json(folder.path(), "x.ron")["beds"][0]["rows"][0].clone();
    let found = |key: &str| row["dressings"][0][key].as_f64().unwrap();
    let close = |found: f64, expected: f64| assert!((found - expected).abs() < 1e-9, "{found}, not {expected}");
    // 1,050 sq ft at 10 lb per 1,000 over ten rows alike.
    close(found("product_kg"), 1.05 * 0.453_592_37);
    let analysis = material.analysis.value;
    for (key, part) in [
        ("n_kg", analysis.n),
        ("p2o5_kg", analysis.p2o5),
        ("k2o_kg", analysis.k2o),
    ] {
        close(found(key), 1.05 * 0.453_592_37 * part.get());
    }
    let csv = done(folder.path(), &["ledger", "x.ron", "--format", "csv"]);
    let cells: Vec<Vec<&str>> = csv.lines().map(|line| line.split(',').collect()).collect();
    let cell = |head: &str| cells[1][cells[0].iter().position(|found| *found == head).unwrap()];
    // The first version of the file had no spare tape.
    assert_eq!(
        (cell("length (ft)"), cell("tape (ft)"), cell("D (lb)")),
        ("35", "35", "1.05")
    );
}
