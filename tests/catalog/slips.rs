//! Slips in the files are named with their place, and only the entry they are in is left out.

use quillet::catalog::{Catalog, CropId, Mark, SourceKey};

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
        corn.in_row_dry.sources,
        [SourceKey("A".to_owned()), SourceKey("B".to_owned())]
    );
    assert_eq!(corn.row_spacing.high.mark, Mark::FromMemory);
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
    check("id: \"corn\"", "id: \"other\"", "other: stands in crops.ron twice");
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
