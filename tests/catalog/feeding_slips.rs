//! Slips in materials and in the files on feeding are named with their place, and only the entry they are in is left
//! out.

use quillet::catalog::{Catalog, CatalogTexts, CropId};

const SOURCES: &str = r#"[(key: "PRACTICE", text: "Common practice, no source"), (key: "A", text: "A text")]"#;

const CROPS: &str = r#"#![enable(implicit_some)]
[(id: "corn", name: "Corn", botanical: "Zea mays", family: "Poaceae",
    row_spacing_in: ((30, "A", Read), (42, "A", Read)), in_row_in: ((6, "A", Read), (12, "A", Read)),
    in_row_watered_in: (6, "A", Read), in_row_dry_in: (10, "A", Read),
    depth_in: ((1, "A", Read), (2, "A", Read)), method: (Drilled, "A", Read), seeds_per_plant: (2, "A", Read))]"#;

const UREA: &str = r#"(id: "urea", name: "Urea", analysis_pct: ((46, 0, 0), "A", Read))"#;
const MEAL: &str = r#"(id: "meal", name: "Meal", analysis_pct: ((6, 2, 1), "A", Read),
    not_for_injection: ("Does not dissolve.", "A", Read))"#;
const STAGE: &str = r#"(id: "knee_high", name: ("knee-high", "A", Read), crops: ["corn"], at: (0.45, "A", Read))"#;
const LATE: &str = r#"(id: "tassels", name: ("as tasselling starts", "A", Read), at: (0.7, "A", Read))"#;
const EARLY: &str = r#"(id: "planting", name: ("at planting", "A", Read), at: (0, "A", Read))"#;

/// A catalogue with one good entry of everything, and the texts given in place of those of their names.
fn catalog(name: &str, text: &str) -> Catalog {
    let with_options = |entries: &[&str]| format!("#![enable(implicit_some)]\n[{}]", entries.join(", "));
    let given = with_options(&[text]);
    let materials = with_options(&[UREA, MEAL]);
    let stages = with_options(&[LATE, STAGE, EARLY]);
    let pick = |this: &str| if name == this { given.as_str() } else { "[]" };
    let both_materials = with_options(&[UREA, text]);
    let both_stages = with_options(&[STAGE, text]);
    Catalog::read_texts(&CatalogTexts {
        crops: &[("crops.ron", CROPS)],
        sources: SOURCES,
        materials: if name == "materials" {
            &both_materials
        } else {
            &materials
        },
        stages: if name == "stages" { &both_stages } else { &stages },
        needs: pick("needs"),
        programmes: pick("programmes"),
        cautions: pick("cautions"),
    })
}

#[track_caller]
fn slip(name: &str, good: &str, from: &str, to: &str, problem: &str) {
    let whole = catalog(name, good);
    assert!(whole.problems().is_empty(), "{:?}", whole.problems());
    assert!(good.contains(from), "{from:?} is not in the entry");
    let slipped = catalog(name, &good.replacen(from, to, 1));
    assert_eq!(slipped.problems(), [problem]);
    assert!(slipped.crop(&CropId("corn".to_owned())).is_some(), "the rest stays");
    let entries = |catalog: &Catalog| {
        let needs = catalog.needs_of(&CropId("corn".to_owned())).len();
        let feeding = catalog.stages().len() + catalog.programmes().len() + catalog.cautions().len();
        catalog.materials().len() + feeding + needs
    };
    assert_eq!(entries(&slipped) + 1, entries(&whole), "only the entry is left out");
}

#[test]
fn in_materials() {
    let good = r#"(id: "x", name: "X", analysis_pct: ((10, 10, 10), "A", Read), 
        bulk_density_lb_per_cu_ft: (60, "A", Read),
        solubility_lb_per_gal: (3, "A", Read), sodium_pct: (26, "A", Read),
        available_n_pct: ((21, "A", Read), (87, "A", Read)), stock: ([Calcium, Phosphate], "A", Read),
        organic: ((Restricted(most_of_nitrogen_pct: 20), "Ask."), "A", Read))"#;
    let check = |from: &str, to: &str, problem: &str| slip("materials", good, from, to, problem);
    check(
        "(10, 10, 10)",
        "(50, 50, 10)",
        "x: analysis_pct is outside of what it can be",
    );
    check(
        "(10, 10, 10)",
        "(-1, 10, 10)",
        "x: analysis_pct is outside of what it can be",
    );
    check(
        "(60, \"A\"",
        "(0, \"A\"",
        "x: bulk_density_lb_per_cu_ft is outside of what it can be",
    );
    check(
        "(3, \"A\"",
        "(inf, \"A\"",
        "x: solubility_lb_per_gal is outside of what it can be",
    );
    check(
        "(26, \"A\"",
        "(126, \"A\"",
        "x: sodium_pct is outside of what it can be",
    );
    check(
        "(87, \"A\"",
        "(20, \"A\"",
        "x: available_n_pct has its ends the wrong way round",
    );
    check(
        "Calcium, Phosphate",
        "Calcium, Calcium",
        "x: stock is outside of what it can be",
    );
    check("Calcium, Phosphate", "", "x: stock is outside of what it can be");
    check("pct: 20)", "pct: 200)", "x: organic is outside of what it can be");
    check("\"Ask.\"", "\"\"", "x: organic is outside of what it can be");
    check(
        "sodium_pct",
        "liquid_lb_per_gal: (11, \"A\", Read), sodium_pct",
        "x: liquid_lb_per_gal stands instead of bulk_density_lb_per_cu_ft",
    );
    check("id: \"x\"", "id: \"urea\"", "urea: stands in materials.ron twice");
}

#[test]
fn in_stages() {
    let good = r#"(id: "x", name: ("tall", "A", Read), crops: ["corn"], at: (0.5, "A", Read))"#;
    let check = |from: &str, to: &str, problem: &str| slip("stages", good, from, to, problem);
    check("(0.5", "(1.5", "x: at is outside of what it can be");
    check("(0.5", "(NaN", "x: at is outside of what it can be");
    check(
        "[\"corn\"]",
        "[\"maize\"]",
        "x: crops names “maize”, which is no crop of the catalogue",
    );
    check("[\"corn\"]", "[\"corn\", \"corn\"]", "x: crops names “corn” twice");
    check("\"tall\"", "\" \"", "x: id and name must not be empty");
    check(
        "\"tall\", \"A\"",
        "\"tall\", \"B\"",
        "x: name names the source “B”, which is not in sources.ron",
    );
    check(
        "id: \"x\"",
        "id: \"knee_high\"",
        "knee_high: stands in feeding/stages.ron twice",
    );
}

#[test]
fn in_needs() {
    let good = r#"(crops: ["corn"], kind: Recommendation, n_lb_per_acre: ((110, "A", Read), (130, "A", Read)))"#;
    let check = |from: &str, to: &str, problem: &str| slip("needs", good, from, to, problem);
    check(
        "(130, \"A\"",
        "(100, \"A\"",
        "needs of corn: n_lb_per_acre has its ends the wrong way round",
    );
    check(
        "(110",
        "(-110",
        "needs of corn: n_lb_per_acre is outside of what it can be",
    );
    check(
        "(130",
        "(13000",
        "needs of corn: n_lb_per_acre is outside of what it can be",
    );
    check("[\"corn\"]", "[]", "needs of : crops must not be empty");
    check(
        ", n_lb_per_acre: ((110, \"A\", Read), (130, \"A\", Read))",
        "",
        "needs of corn: n_lb_per_acre or another nutrient must be there",
    );
}

#[test]
fn in_programmes() {
    let good = r#"(id: "x", name: "X", crops: ["corn"], note: ("Words.", "A", Read), steps: [
        (name: "First", stage: ("planting", "A", Read), rate: LbPer100Ft(Product, (1, "A", Read), (2, "A", Read)),
            material: "meal", placement: Band),
        (name: "Feed", stage: ("knee_high", "A", Read), rate: LbPerAcre(Nitrogen, (5, "A", Read), (10, "A", Read)),
            material: "urea", placement: Injected, times: (3, "A", Read), every_days: (7, "A", Read))])"#;
    let check = |from: &str, to: &str, problem: &str| slip("programmes", good, from, to, problem);
    check(
        "\"knee_high\"",
        "\"waist_high\"",
        "x: stage names “waist_high”, which is not in stages.ron",
    );
    check(
        "\"urea\"",
        "\"ash\"",
        "x: material names “ash”, which is not in materials.ron",
    );
    check("\"urea\"", "\"meal\"", "x: material “meal” must not go through tape");
    check(
        "LbPerAcre(Nitrogen",
        "LbPerAcre(Potash",
        "x: material “urea” has none of what is weighed",
    );
    check("(5, \"A\"", "(0, \"A\"", "x: rate is outside of what it can be");
    check("(10, \"A\"", "(1, \"A\"", "x: rate has its ends the wrong way round");
    check(
        ", every_days: (7, \"A\", Read)",
        "",
        "x: times and every_days belong together",
    );
    check("(3, \"A\"", "(1, \"A\"", "x: times is outside of what it can be");
    check("\"planting\"", "\"tassels\"", "x: steps must stand in order of time");
    check("name: \"First\"", "name: \"\"", "x: steps must have a name each");
    check("crops: [\"corn\"]", "crops: []", "x: crops must not be empty");
    let none = good.split("steps: [").next().unwrap().to_owned() + "steps: [])";
    assert_eq!(catalog("programmes", &none).problems(), ["x: steps must not be empty"]);
}

#[test]
fn a_stage_of_another_crop_is_a_slip() {
    let crops = CROPS.replace(
        "[(id: \"corn\"",
        "[(id: \"pea\", name: \"Pea\", botanical: \"Pisum\", family: \"Fabaceae\",
            row_spacing_in: ((30, \"A\", Read), (42, \"A\", Read)), in_row_in: ((6, \"A\", Read), (12, \"A\", Read)),
            in_row_watered_in: (6, \"A\", Read), in_row_dry_in: (10, \"A\", Read),
            depth_in: ((1, \"A\", Read), (2, \"A\", Read)),
            method: (Drilled, \"A\", Read), seeds_per_plant: (2, \"A\", Read)), (id: \"corn\"",
    );
    let catalog = Catalog::read_texts(&CatalogTexts {
        crops: &[("crops.ron", &crops)],
        sources: SOURCES,
        materials: &format!("#![enable(implicit_some)]\n[{UREA}]"),
        stages: &format!("[{STAGE}]"),
        programmes: r#"[(id: "x", name: "X", crops: ["pea"], note: ("Words.", "A", Read), steps: [
            (name: "First", stage: ("knee_high", "A", Read), rate: LbPerAcre(Product, (1, "A", Read), (2, "A", Read)),
            material: "urea", placement: Band)])]"#,
        ..CatalogTexts::default()
    });
    assert_eq!(catalog.problems(), ["x: stage “knee_high” is none of pea"]);
    assert!(catalog.programmes().is_empty());
}

#[test]
fn in_cautions() {
    let good = r#"(topic: Backflow, sentence: ("Words.", "A", Read), crops: ["corn"])"#;
    let check = |from: &str, to: &str, problem: &str| slip("cautions", good, from, to, problem);
    check("\"Words.\"", "\"\"", "Backflow: id and name must not be empty");
    check(
        "[\"corn\"]",
        "[\"x\"]",
        "Backflow: crops names “x”, which is no crop of the catalogue",
    );
    let twice = format!("{good}, {good}");
    let catalog = catalog("cautions", &twice);
    assert_eq!(catalog.problems(), ["Backflow: stands in feeding/cautions.ron twice"]);
    assert_eq!(catalog.cautions().len(), 1);
}

#[test]
fn in_a_file_that_is_no_list() {
    for name in ["materials", "stages", "needs", "programmes", "cautions"] {
        let catalog = catalog(name, "(nonsense: 3)");
        let problems = catalog.problems();
        assert!(
            problems
                .iter()
                .any(|problem| problem.contains(&format!("{name}.ron: "))),
            "{problems:?}"
        );
        assert!(catalog.crop(&CropId("corn".to_owned())).is_some());
    }
}
