//! Whatever is wrong is said in a sentence, with status 1; wrong words have status 2; nothing is lost.

use std::fs;

use super::{done, folder_with_corners, quillet, refused};

#[test]
fn wrong_words_have_a_status_of_their_own() {
    let folder = tempfile::tempdir().unwrap();
    for words in [
        &["ledger"][..],
        &["ledger", "a.ron", "--format", "xml"],
        &["map", "a.ron"],
        &["new", "--corners"],
        &["--nonsense"],
    ] {
        assert_eq!(quillet(folder.path(), words).status.code(), Some(2), "{words:?}");
    }
    for words in [&["--help"][..], &["--version"], &["map", "--help"]] {
        assert_eq!(quillet(folder.path(), words).status.code(), Some(0), "{words:?}");
    }
}

#[test]
fn without_a_display_the_window_names_the_way_to_the_map() {
    let folder = tempfile::tempdir().unwrap();
    let said = refused(folder.path(), &[]);
    if cfg!(all(unix, not(target_os = "macos"))) {
        assert!(said.contains("no display") && said.contains("quillet map"), "{said}");
    }
}

#[test]
fn files_that_are_no_layout_are_refused() {
    let folder = tempfile::tempdir().unwrap();
    let at = |name: &str| folder.path().join(name);
    fs::write(at("empty.ron"), "").unwrap();
    fs::write(at("letter.ron"), "Dear neighbour, the beans are up.").unwrap();
    fs::write(at("bytes.ron"), [0xff, 0xfe, 0x00, 0x01]).unwrap();
    fs::write(at("newer.ron"), "(version: 99, name: \"x\")").unwrap();
    fs::create_dir(at("folder.ron")).unwrap();
    let big = fs::File::create(at("big.ron")).unwrap();
    // Sparse: 200 MB by name, nothing on the disk.
    big.set_len(200_000_000).unwrap();
    for (name, expected) in [
        ("empty.ron", "empty"),
        ("letter.ron", "line 1"),
        ("bytes.ron", "line 1"),
        ("newer.ron", "99"),
        ("folder.ron", "folder"),
        ("big.ron", "191 mb"),
        ("missing.ron", "no such"),
    ] {
        for job in ["ledger", "check"] {
            let said = refused(folder.path(), &[job, name]);
            assert!(said.contains(name), "{name}: {said}");
            assert!(said.to_lowercase().contains(expected), "{name}: {said}");
        }
    }
}

#[test]
fn corners_that_bound_no_ground_are_refused() {
    let folder = tempfile::tempdir().unwrap();
    for (rows, expected) in [
        ("0,0,0\n0,10,0\n", "at least three"),
        ("0,0,0\n0,10,0\n0,20,0\n", "encloses no ground"),
        ("0,0,0\n0,30,30\n0,30,0\n0,0,30\n", "crosses itself"),
        ("0,0,0\n0,1e999,0\n0,0,30\n", "line 3"),
        ("0,0,0\n0,inf,0\n0,0,30\n", "line 3"),
        ("0,0,0\n0,9e9,0\n0,0,30\n", "1,000 km"),
    ] {
        fs::write(folder.path().join("c.csv"), format!("ring,east_ft,north_ft\n{rows}")).unwrap();
        let said = refused(folder.path(), &["new", "--corners", "c.csv", "-o", "p.ron"]);
        assert!(said.contains(expected) && said.contains("c.csv"), "{said}");
        assert!(!folder.path().join("p.ron").exists());
    }
    let said = refused(folder.path(), &["new", "--corners", "none.csv", "-o", "p.ron"]);
    assert!(said.contains("none.csv"), "{said}");
}

#[test]
fn lengths_that_are_none_are_refused() {
    let folder = folder_with_corners();
    for (option, value) in [
        ("--row-spacing", "0"),
        ("--row-spacing", "-3 ft"),
        ("--row-spacing", "three"),
        ("--row-spacing", "NaN"),
        ("--row-spacing", "0.0009 mm"),
        ("--headland", "-1"),
        ("--edge", "-1 ft"),
        ("--clear", "-2"),
        ("--in-row", "0 in"),
        ("--bearing", "up"),
        ("--crop", "moon_cabbage"),
    ] {
        let words = ["new", "--corners", "corners.csv", "-o", "p.ron", option, value];
        refused(folder.path(), &words);
        assert!(!folder.path().join("p.ron").exists(), "{option} {value}");
    }
}

#[test]
fn ten_million_rows_are_refused_with_count_and_limit() {
    let folder = tempfile::tempdir().unwrap();
    let corners = "ring,east_ft,north_ft\n0,0,0\n0,30000,0\n0,30000,35\n0,0,35\n";
    fs::write(folder.path().join("wide.csv"), corners).unwrap();
    let words = [
        "new",
        "--corners",
        "wide.csv",
        "-o",
        "w.ron",
        "--bearing",
        "0",
        "--row-spacing",
        "0.003 ft",
    ];
    let said = refused(folder.path(), &words);
    assert!(said.contains("10,000,000 rows") && said.contains("1,000,000"), "{said}");
    assert!(!folder.path().join("w.ron").exists());
}

#[test]
fn a_file_that_is_no_layout_is_never_written_over() {
    let folder = folder_with_corners();
    fs::write(folder.path().join("letter.ron"), "Dear neighbour").unwrap();
    refused(folder.path(), &["new", "--corners", "corners.csv", "-o", "letter.ron"]);
    assert_eq!(
        fs::read_to_string(folder.path().join("letter.ron")).unwrap(),
        "Dear neighbour"
    );
}

#[test]
fn a_map_that_cannot_be_written_leaves_nothing_behind() {
    let folder = folder_with_corners();
    done(folder.path(), &["new", "--corners", "corners.csv", "-o", "p.ron"]);
    let said = refused(folder.path(), &["map", "p.ron", "-o", "nowhere/map.pdf"]);
    assert!(said.contains("nowhere"), "{said}");
    fs::create_dir(folder.path().join("map.pdf")).unwrap();
    refused(folder.path(), &["map", "p.ron", "-o", "map.pdf"]);
    let left: Vec<_> = fs::read_dir(folder.path())
        .unwrap()
        .map(|entry| entry.unwrap().file_name())
        .collect();
    assert_eq!(left.len(), 3, "{left:?}");
}

/// Two plots and a bed in each; the second plot's outline crosses itself.
const HALF_WRONG: &str = "(version: 1, name: \"Half\", year: 2027, plots: [
    (name: \"Good\", corners_ft: [(0, 0), (30, 0), (30, 35), (0, 35)]),
    (name: \"Bow tie\", corners_ft: [(50, 0), (80, 30), (80, 0), (50, 30)]),
], beds: [
    (name: \"Beans\", plot: \"Good\", bearing_deg: 0, row_spacing_ft: 3, water: rain),
    (name: \"Corn\", plot: \"Bow tie\", bearing_deg: 0, row_spacing_ft: 3, water: rain),
])";

#[test]
fn ground_that_can_have_no_rows_is_said_beside_all_that_can() {
    let folder = tempfile::tempdir().unwrap();
    fs::write(folder.path().join("half.ron"), HALF_WRONG).unwrap();
    for words in [
        &["ledger", "half.ron"][..],
        &["check", "half.ron"],
        &["map", "half.ron", "-o", "half.pdf"],
    ] {
        let output = quillet(folder.path(), words);
        let said = String::from_utf8(output.stderr).unwrap();
        assert_eq!(output.status.code(), Some(1), "{words:?}: {said}");
        assert!(
            said.contains("half.ron, Bow tie: ") && said.contains("crosses itself"),
            "{said}"
        );
        assert_eq!(said.lines().count(), 1, "once, not again for the bed: {said}");
        let printed = String::from_utf8(output.stdout).unwrap();
        assert!(words[0] != "ledger" || printed.contains("350\u{a0}ft"), "{printed}");
    }
    assert!(folder.path().join("half.pdf").exists());
}
