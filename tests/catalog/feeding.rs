//! Stages of growth and cautions on feeding.

use quillet::catalog::{Catalog, CautionTopic, CropId, StageId};
use quillet::quantity::Units;

fn stages_of(id: &str) -> Vec<&'static str> {
    let crop = CropId(id.to_owned());
    Catalog::built_in()
        .stages()
        .iter()
        .filter(|stage| stage.is_of(&crop))
        .map(|stage| stage.id.0.as_str())
        .collect()
}

#[test]
fn stages_stand_in_order_of_time_and_each_crop_has_its_own() {
    let catalog = Catalog::built_in();
    assert!(catalog.stages().is_sorted_by(|a, b| a.at.value <= b.at.value));
    assert_eq!(
        stages_of("sweet_corn"),
        [
            "before_planting",
            "at_planting",
            "tape_from_week_2",
            "corn_8_to_10_in",
            "corn_12_to_18_in",
            "corn_8_to_10_leaves",
            "knee_high",
            "tasselling_starts",
            "week_after_tassels",
        ]
    );
    assert_eq!(
        stages_of("radish"),
        ["before_planting", "at_planting", "tape_from_week_2"]
    );
    let corn = CropId("sweet_corn".to_owned());
    assert!(
        catalog
            .stages_for(&corn)
            .map(|stage| stage.id.0.as_str())
            .eq(stages_of("sweet_corn"))
    );
    assert!(
        catalog
            .stage(&StageId("knee_high".to_owned()))
            .is_some_and(|stage| stage.name.value == "knee-high")
    );
    assert!(catalog.stage(&StageId("ankle_high".to_owned())).is_none());
}

#[test]
fn names_of_a_crops_stages_are_unlike_each_other() {
    for crop in Catalog::built_in().crops() {
        let mut names: Vec<&str> = Catalog::built_in()
            .stages_for(&crop.id)
            .map(|stage| stage.name.value.as_str())
            .collect();
        let number = names.len();
        names.sort_unstable();
        names.dedup();
        assert_eq!(names.len(), number, "{}", crop.name);
    }
}

#[test]
fn every_topic_has_one_plain_sentence() {
    let catalog = Catalog::built_in();
    assert_eq!(catalog.cautions().len(), CautionTopic::ALL.len());
    for topic in CautionTopic::ALL {
        let caution = catalog.caution(topic).unwrap();
        let sentence = &caution.sentence.value;
        assert!(
            sentence.ends_with('.') && !sentence.contains(". "),
            "{topic:?}: {sentence}"
        );
        assert!(sentence.len() <= 150, "{topic:?}");
    }
    let shown: Vec<CautionTopic> = catalog.cautions().iter().map(|caution| caution.topic).collect();
    assert_eq!(shown, CautionTopic::ALL);
}

#[test]
fn cautions_say_what_the_texts_say() {
    let sentence = |topic| &Catalog::built_in().caution(topic).unwrap().sentence.value;
    // University of Tennessee Extension: 4 to 6 in from the base of the plants.
    assert!(sentence(CautionTopic::SaltsBurn).contains("4 to 6 in"));
    // Kansas State University Agronomy eUpdate: 6 to 8 lb per acre at 30-in rows, 0.55 to 0.73 oz for 100 ft.
    assert!(sentence(CautionTopic::SeedContact).contains("6 to 8 lb/acre"));
    // U.S. Environmental Protection Agency: 10 mg/L as nitrogen.
    let wells = sentence(CautionTopic::NitrateAndWells);
    assert!(wells.contains("10 mg/L as nitrogen") && wells.contains("local health authority"));
    // Rules on backflow differ by state.
    assert!(sentence(CautionTopic::Backflow).contains("differ by state"));
    let organic = sentence(CautionTopic::Organic);
    assert!(organic.contains("205.602(h)") && organic.contains("2026") && organic.contains("certifier decides"));
    // No more than 20 % of the crop's total nitrogen requirement, whatever it was given.
    assert!(organic.contains("20 % of the nitrogen the crop requires"));
    // 7 CFR 205.203(c)(1): not less than 120 days, and not less than 90 days.
    assert!(sentence(CautionTopic::RawManure).contains("at least 120 days"));
    // Both of Kansas State University, 2 lb of it in 2 pints, and Louisiana State University, 23 oz to the pint.
    let cups = Catalog::built_in().caution(CautionTopic::Cups).unwrap();
    assert!(cups.sentence.value.contains("8 oz or 11 1/2 oz"));
    assert_eq!(cups.sentence.sources.len(), 2);
    // Kansas State University: no side-dressing of carrots; not said of sweet corn.
    let too_much = Catalog::built_in().caution(CautionTopic::TooMuchNitrogen).unwrap();
    assert!(too_much.crops.contains(&CropId("carrot".to_owned())));
    assert!(!too_much.crops.contains(&CropId("sweet_corn".to_owned())));
}

#[test]
fn cautions_with_measures_are_there_in_metric_too() {
    // Within a tenth: 1 in is 25.4 mm, 1 oz 28.35 g, 1 lb/acre 1.121 kg/ha.
    let pairs = [
        (CautionTopic::SaltsBurn, "4 to 6 in", "10 to 15 cm", 4.0 * 2.54 / 10.0),
        (
            CautionTopic::SeedBand,
            "2 in beside and 2 in below",
            "5 cm beside and 5 cm below",
            2.0 * 2.54 / 5.0,
        ),
        (CautionTopic::SeedContact, "8 lb/acre", "9 kg/ha", 8.0 * 1.121 / 9.0),
        (
            CautionTopic::SeedContact,
            "30-in rows",
            "76 cm apart",
            30.0 * 2.54 / 76.0,
        ),
        (CautionTopic::LightSand, "100 lb/acre", "110 kg/ha", 112.1 / 110.0),
        (CautionTopic::Cups, "8 oz", "230 g", 8.0 * 28.35 / 230.0),
        (CautionTopic::Cups, "11 1/2 oz", "330 g", 11.5 * 28.35 / 330.0),
    ];
    for (topic, customary, metric, same) in pairs {
        let caution = Catalog::built_in().caution(topic).unwrap();
        assert!(caution.words(Units::Customary).contains(customary), "{topic:?}");
        assert!(caution.words(Units::Metric).contains(metric), "{topic:?}");
        assert!((0.9..1.1).contains(&same), "{topic:?}: {same}");
    }
    for caution in Catalog::built_in().cautions() {
        let words = caution.words(Units::Metric);
        for unit in ["lb", "oz", "ft", "acre", "-in"] {
            let said = words
                .split(' ')
                .any(|word| word.trim_end_matches([',', '.', ';']).ends_with(unit));
            assert!(!said, "{words}");
        }
    }
}
