//! Slips in the files are named with their place, and only the entry they are in is left out.

use quillet::catalog::{Catalog, CatalogTexts, CropId, Mark, SourceKey};

const SOURCES: &str = r#"[(key: "PRACTICE", text: "Common practice, no source"), (key: "A", text: "A text"), (key: "B", text: "Another")]"#;

/// A crop with the value that `from` names replaced.
fn crops(from: &str, to: &str) -> String {
    let good = r#"(id: "corn", name: "Corn", botanical: "Zea mays", family: "Poaceae",
        row_spacing_in: ((30, "A", Read), (42, "B", FromMemory)), in_row_in: ((6, "A", Read), (12, "A", Read)),
        in_row_watered_in: (6, "PRACTICE", CommonPractice), in_row_dry_in: (10, "A + B", FromMemory),
        depth_in: ((1, "A", Read), (2, "A", Read)), method: (Drilled, "A", Read), seeds_per_plant: (2, "A", Read),
        seeds_per_oz: (150, "A", Read), least_germination_pct: (75, "A", Read), days_to_harvest: ((60, "A", Read), (90, "A", Read)))"#;
    assert!(from.is_empty() || good.contains(from), "{from:?} is not in the entry");
    let other = good.replace("\"corn\"", "\"other\"");
    format!(
        "#![enable(implicit_some)]\n[{}, {other}]",
        if from.is_empty() {
            good.to_owned()
        } else {
            good.replacen(from, to, 1)
        }
    )
}

#[track_caller]
fn check(from: &str, to: &str, problem: &str) {
    let catalog = Catalog::read(&crops(from, to), "[]", SOURCES);
    assert_eq!(catalog.problems(), [problem]);
    assert_eq!(catalog.crops().len(), 1, "the other entry stays");
}

#[test]
fn a_good_entry_keeps_each_values_own_sources() {
    let catalog = Catalog::read(&crops("", ""), "[]", SOURCES);
    assert!(catalog.problems().is_empty(), "{:?}", catalog.problems());
    let corn = catalog.crop(&CropId("corn".to_owned())).expect("it is there");
    assert_eq!(
        corn.in_row_dry.as_ref().unwrap().sources,
        [SourceKey("A".to_owned()), SourceKey("B".to_owned())]
    );
    assert_eq!(corn.row_spacing.as_ref().unwrap().high.mark, Mark::FromMemory);
    assert!(corn.height.is_none());
}

#[test]
fn slips_are_named() {
    check(
        "(30, \"A\", Read)",
        "(30, \"C\", Read)",
        "corn: row_spacing_in names the source “C”, which is not in sources.ron",
    );
    check(
        "(30, \"A\", Read)",
        "(50, \"A\", Read)",
        "corn: row_spacing_in has its ends the wrong way round",
    );
    check(
        "(30, \"A\", Read)",
        "(-30, \"A\", Read)",
        "corn: row_spacing_in is outside of what it can be",
    );
    check(
        "(30, \"A\", Read)",
        "(NaN, \"A\", Read)",
        "corn: row_spacing_in is outside of what it can be",
    );
    check(
        "(30, \"A\", Read)",
        "(30, \"A\", CommonPractice)",
        "corn: row_spacing_in must be marked CommonPractice exactly when its source is PRACTICE",
    );
    check(
        "(75, \"A\", Read)",
        "(175, \"A\", Read)",
        "corn: least_germination_pct is outside of what it can be",
    );
    check(
        "(150, \"A\", Read)",
        "(0, \"A\", Read)",
        "corn: seeds_per_oz is outside of what it can be",
    );
    check(
        "seeds_per_plant: (2,",
        "seeds_per_plant: (0.5,",
        "corn: seeds_per_plant is outside of what it can be",
    );
    check(
        "(10, \"A + B\"",
        "(5, \"A + B\"",
        "corn: in_row_watered_in must not be over in_row_dry_in, both within in_row_in",
    );
    check(
        "(10, \"A + B\"",
        "(14, \"A + B\"",
        "corn: in_row_watered_in must not be over in_row_dry_in, both within in_row_in",
    );
    check(
        "Drilled",
        "Transplant",
        "corn: seeds_per_plant belongs to crops that are sown, and to each of them",
    );
    check("name: \"Corn\"", "name: \" \"", "corn: id and name must not be empty");
    check(
        "id: \"corn\"",
        "id: \"other\"",
        "other: stands there twice, the second time in crops.ron",
    );
}

#[test]
fn an_entry_with_a_key_that_is_none_is_left_out_and_named_with_its_place() {
    for (second, line, column) in [("", 2, 15), ("\n\n  ", 4, 16)] {
        let text = crops("name: \"Corn\"", "nmae: \"Corn\"").replacen("[(", &format!("[{second}("), 1);
        let catalog = Catalog::read(&text, "[]", SOURCES);
        let [problem] = catalog.problems() else {
            panic!("{:?}", catalog.problems())
        };
        let said = format!("crops.ron: {line}:{column}: Unexpected field named `nmae`");
        assert!(problem.starts_with(&said), "{problem}");
        let left: Vec<_> = catalog.crops().iter().map(|crop| crop.id.0.as_str()).collect();
        assert_eq!(left, ["other"]);
    }
}

#[test]
fn slips_in_what_is_known_of_growth_are_named() {
    // Put in before the days to harvest.
    let with = |field: &str| format!("{field}, days_to_harvest: ((60");
    let slip = |field: &str, problem: &str| check("days_to_harvest: ((60", &with(field), problem);
    slip(
        r#"soil_f: (least: (60, "A", Read), good: ((50, "A", Read), (90, "A", Read)))"#,
        "corn: soil_f must rise from the least over the good and the best to the most",
    );
    slip(
        r#"soil_f: (best: (95, "A", Read), most: (90, "A", Read))"#,
        "corn: soil_f must rise from the least over the good and the best to the most",
    );
    slip(
        r#"soil_f: (least: (600, "A", Read))"#,
        "corn: soil_f is outside of what it can be",
    );
    slip(
        r#"soil_f: (least: (60, "A", StandIn))"#,
        "corn: soil_f must name the row that stands in, and only then",
    );
    slip(
        r#"seeds_per_oz_range: ((200, "A", Read), (300, "A", Read))"#,
        "corn: seeds_per_oz_range must have seeds_per_oz within it",
    );
    slip(
        r#"height_ft: (9, "A", Read), height_range_ft: ((5, "A", Read), (8, "A", Read))"#,
        "corn: height_range_ft must have height_ft within it",
    );
    slip(
        r#"buying_per_100_ft: Ounces("seed", (3, "A", Read), (2, "A", Read))"#,
        "corn: buying_per_100_ft has its ends the wrong way round",
    );
    slip(
        r#"harvest_per_100_ft: Number("ears", (0, "A", Read), (2, "A", Read))"#,
        "corn: harvest_per_100_ft is outside of what it can be",
    );
    slip(
        r#"water_use: (row: "x", initial: (0.3, "A", Read), middle: (11.5, "A", Read), end: (1, "A", Read))"#,
        "corn: water_use is outside of what it can be",
    );
    slip(
        r#"roots: (row: "x", effective_m: (2, "A", Read), deepest_m: (1, "A", Read), depletion: (0.5, "A", Read))"#,
        "corn: roots must not be watered deeper than they go",
    );
    slip(
        r#"stages: (row: "x", lengths: ([(days: (1, 2, 3, 4), printed_total: 10, planted: "Apr", region: "r")], "A", Read))"#,
        "corn: stages adds up, so printed_total is not wanted",
    );
    slip(
        r#"stages: (row: "x", lengths: ([], "A", Read))"#,
        "corn: stages must have a place",
    );
    slip(
        r#"stages: (row: "x", lengths: ([(days: (60000, 60000, 3, 4), planted: "Apr", region: "r")], "A", Read))"#,
        "corn: stages must last from a day to two years in all",
    );
    slip(
        r#"notes: [("Words", "C", Read)]"#,
        "corn: notes names the source “C”, which is not in sources.ron",
    );
}

#[test]
fn crops_may_come_from_several_files() {
    let one = crops("id: \"corn\"", "id: \"first\"").replace("\"other\"", "\"second\"");
    let catalog = Catalog::read_texts(&CatalogTexts {
        crops: &[("a.ron", &one), ("b.ron", &one), ("c.ron", "[(")],
        sources: SOURCES,
        ..CatalogTexts::default()
    });
    assert_eq!(catalog.crops().len(), 2);
    let problems = catalog.problems();
    assert_eq!(problems[0], "first: stands there twice, the second time in b.ron");
    assert!(problems[2].starts_with("c.ron: 1:"), "{problems:?}");
}

#[test]
fn a_file_that_is_no_list_is_named_with_the_place() {
    let catalog = Catalog::read("[\n(id: 3)]", "[]", SOURCES);
    assert!(catalog.crops().is_empty());
    assert!(
        catalog
            .problems()
            .iter()
            .any(|problem| problem.starts_with("crops.ron: 2:")),
        "{:?}",
        catalog.problems()
    );
    let catalog = Catalog::read("[]", "[(id: \"x\", nmae: \"X\")]", SOURCES);
    assert!(
        catalog
            .problems()
            .iter()
            .any(|problem| problem.starts_with("materials.ron: 1:")),
        "{:?}",
        catalog.problems()
    );
    let catalog = Catalog::read(
        "[]",
        "[(id: \"x\", name: \"X\", analysis_pct: ((60, 60, 0), \"A\", Read))]",
        SOURCES,
    );
    assert_eq!(catalog.problems(), ["x: analysis_pct is outside of what it can be"]);
}
