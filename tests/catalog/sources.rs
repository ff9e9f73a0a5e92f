//! Every value names a source that stands in the list, with a mark that fits it, and every source is used.

use std::collections::BTreeSet;

use quillet::catalog::{
    Catalog, Crop, Ends, GeneralNeed, Mark, Material, Programme, RowMeasure, SourceKey, Sourced, StepAmount,
};

/// The sources and the mark of a value, and where it stands.
struct Seen {
    place: String,
    sources: Vec<SourceKey>,
    mark: Mark,
}

#[derive(Default)]
struct Notes(Vec<Seen>);

impl Notes {
    fn one<T>(&mut self, place: &str, value: &Sourced<T>) {
        self.0.push(Seen {
            place: place.to_owned(),
            sources: value.sources.clone(),
            mark: value.mark,
        });
    }

    fn any<T>(&mut self, place: &str, value: &Option<Sourced<T>>) {
        value.iter().for_each(|value| self.one(place, value));
    }

    fn ends<T>(&mut self, place: &str, ends: &Ends<T>) {
        self.one(place, &ends.low);
        self.one(place, &ends.high);
    }

    fn any_ends<T>(&mut self, place: &str, ends: &Option<Ends<T>>) {
        ends.iter().for_each(|ends| self.ends(place, ends));
    }

    fn measure(&mut self, place: &str, measure: &RowMeasure) {
        match measure {
            RowMeasure::Weight(ends) => self.ends(place, ends),
            RowMeasure::Number(ends) => self.ends(place, ends),
        }
    }

    fn crop(&mut self, crop: &Crop) {
        let at = |field: &str| format!("{}: {field}", crop.id.0);
        self.any_ends(&at("row_spacing"), &crop.row_spacing);
        self.any_ends(&at("in_row"), &crop.in_row);
        self.any(&at("in_row_watered"), &crop.in_row_watered);
        self.any(&at("in_row_dry"), &crop.in_row_dry);
        self.any_ends(&at("depth"), &crop.depth);
        self.one(&at("method"), &crop.method);
        self.any(&at("also_method"), &crop.also_method);
        self.any(&at("seeds_per_plant"), &crop.seeds_per_plant);
        self.any(&at("seed_weight"), &crop.seed_weight);
        self.any_ends(&at("seed_weight_range"), &crop.seed_weight_range);
        self.any_ends(&at("field_seed"), &crop.field_seed);
        self.any(&at("least_germination"), &crop.least_germination);
        self.any(&at("seed_keeps_years"), &crop.seed_keeps_years);
        self.any_ends(&at("days_to_harvest"), &crop.days_to_harvest);
        self.any(&at("hardiness"), &crop.hardiness);
        self.any_ends(&at("weeks_from_last_frost"), &crop.weeks_from_last_frost);
        self.any(&at("height"), &crop.height);
        self.any_ends(&at("height_range"), &crop.height_range);
        self.any(&at("hilled"), &crop.hilled);
        self.any(&at("least_rows"), &crop.least_rows);
        self.any(&at("nitrogen_need"), &crop.nitrogen_need);
        self.any(&at("season_nitrogen"), &crop.season_nitrogen);
        for amount in crop.buying.iter().chain(&crop.harvest) {
            self.measure(&at("buying or harvest"), &amount.measure);
        }
        if let Some(soil) = &crop.soil {
            self.any(&at("soil"), &soil.least);
            self.any_ends(&at("soil"), &soil.good);
            self.any(&at("soil"), &soil.best);
            self.any(&at("soil"), &soil.most);
        }
        if let Some(water) = &crop.water_use {
            for value in [&water.initial, &water.middle, &water.end] {
                self.one(&at("water_use"), value);
            }
            self.any(&at("water_use"), &water.height);
        }
        if let Some(roots) = &crop.roots {
            self.one(&at("roots"), &roots.effective);
            self.one(&at("roots"), &roots.deepest);
            self.one(&at("roots"), &roots.depletion);
        }
        if let Some(stages) = &crop.stages {
            self.one(&at("stages"), &stages.lengths);
        }
        crop.notes.iter().for_each(|note| self.one(&at("notes"), note));
    }

    fn material(&mut self, material: &Material) {
        let at = |field: &str| format!("{}: {field}", material.id.0);
        self.one(&at("analysis"), &material.analysis);
        self.any(&at("bulk_density"), &material.bulk_density);
        self.any(&at("salt_index"), &material.salt_index);
        self.any(&at("solubility"), &material.solubility);
        self.any(&at("sodium_part"), &material.sodium_part);
        self.any_ends(&at("available_n"), &material.available_n);
        self.any(&at("stock"), &material.stock);
        self.any(&at("not_for_injection"), &material.not_for_injection);
        self.any(&at("organic"), &material.organic);
        self.any(&at("note"), &material.note);
        self.any(&at("caution"), &material.caution);
    }

    fn needs(&mut self, crop: &Crop, need: &GeneralNeed) {
        let at = |nutrient: &str| format!("needs of {}: {nutrient}", crop.id.0);
        self.any_ends(&at("n"), &need.n);
        self.any_ends(&at("p2o5"), &need.p2o5);
        self.any_ends(&at("k2o"), &need.k2o);
    }

    fn programme(&mut self, programme: &Programme) {
        self.one(&programme.id.0, &programme.note);
        for step in &programme.steps {
            let place = format!("{}: {}", programme.id.0, step.name);
            self.one(&place, &step.stage);
            match &step.rate.amount {
                StepAmount::OverGround(ends) => self.ends(&place, ends),
                StepAmount::AlongRow(ends) => self.ends(&place, ends),
            }
            if let Some(repeat) = &step.repeat {
                self.one(&place, &repeat.times);
                self.one(&place, &repeat.every_days);
            }
        }
    }

    fn feeding(&mut self, catalog: &Catalog) {
        for stage in catalog.stages() {
            self.one(&stage.id.0, &stage.name);
            self.one(&stage.id.0, &stage.at);
        }
        for crop in catalog.crops() {
            catalog
                .needs_of(&crop.id)
                .iter()
                .for_each(|need| self.needs(crop, need));
        }
        catalog
            .programmes()
            .iter()
            .for_each(|programme| self.programme(programme));
        for caution in catalog.cautions() {
            self.one(&format!("{:?}", caution.topic), &caution.sentence);
        }
    }
}

fn all() -> Vec<Seen> {
    let mut notes = Notes::default();
    let catalog = Catalog::built_in();
    catalog.crops().iter().for_each(|crop| notes.crop(crop));
    catalog.materials().iter().for_each(|material| notes.material(material));
    notes.feeding(catalog);
    notes.0
}

#[test]
fn every_value_has_a_source_that_resolves_and_every_source_is_used() {
    let catalog = Catalog::built_in();
    let seen = all();
    assert!(seen.len() > 3000, "only {} values", seen.len());
    let mut used = BTreeSet::new();
    for Seen { place, sources, .. } in seen {
        assert!(!sources.is_empty(), "{place}");
        for key in sources {
            let citation = catalog.citation(&key);
            assert!(
                citation.is_some_and(|citation| citation.text.len() > 20),
                "{place}: {key:?}"
            );
            used.insert(key);
        }
    }
    used.extend(super::cite::keys_in_code());
    let unused: Vec<_> = catalog
        .citations()
        .filter(|citation| !used.contains(&citation.key))
        .collect();
    assert!(unused.is_empty(), "{unused:?}");
}

#[test]
fn texts_that_were_not_read_are_not_marked_as_read() {
    for Seen { place, sources, mark } in all() {
        for key in &sources {
            match key.0.as_str() {
                // Bulletin and targets that nobody has looked at again.
                "USDA-HG202" | "IFAS-N" | "PNW646" => assert!(mark >= Mark::FromMemory, "{place}"),
                // Texts seen only where others quote them.
                "AR-PG" | "HO203" | "OK-HLA6004" | "CLEM-SP" | "UMD-FEED" | "OK-OKRA" | "UGA-GARLIC" | "SH2-SHEET"
                | "KNOTTS" | "MORTVEDT" | "PINT-LIST" | "TAMU-EKF" | "OSU-FG62" | "UT-GARDEN" | "KSU-COLUMN"
                | "KSU-TOMATO" | "ACES-LIST" | "UMAINE-POTATO" | "CLEM-POTATO" | "CORN-UPTAKE" | "YAWALKAR"
                | "UGA-C963" | "IFAS-SP103" | "FAO56" | "MWVG-2022" | "UMN-MANURE" => {
                    assert!(mark >= Mark::ReadInReprint, "{place}");
                }
                "PRACTICE" => {
                    assert_eq!(mark, Mark::CommonPractice, "{place}");
                    assert_eq!(sources.len(), 1, "{place}: practice stands alone");
                }
                _ => assert_ne!(mark, Mark::CommonPractice, "{place}"),
            }
        }
    }
}

/// What the list of sources says of a text that was read only where somebody else gives it.
const IN_ANOTHER_TEXT: [&str; 7] = [
    " reprint",
    "transcription",
    "reproduces",
    "quotes",
    "a page repeats it",
    "page that lists its values",
    "cites it",
];

#[test]
fn the_list_of_sources_and_the_marks_of_values_agree() {
    let catalog = Catalog::built_in();
    let elsewhere: BTreeSet<_> = catalog
        .citations()
        // Of that page only one sentence was read where another text quotes it.
        .filter(|citation| citation.key.0 != "UMN-CHEM")
        .filter(|citation| IN_ANOTHER_TEXT.iter().any(|words| citation.extent.contains(words)))
        .map(|citation| citation.key.clone())
        .collect();
    assert!(elsewhere.len() >= 20, "only {} of them", elsewhere.len());
    for Seen { place, sources, mark } in all() {
        let was_read = mark == Mark::Read && sources.iter().any(|key| elsewhere.contains(key));
        assert!(!was_read, "{place}: {sources:?}");
    }
    for (key, mark) in super::cite::cited_in_code() {
        assert!(!elsewhere.contains(&key) || mark != "Read", "{key:?}");
    }
}

#[test]
fn rows_that_stand_in_for_another_crop_say_so() {
    let stands_in = |id: &str| {
        let crop = Catalog::built_in().crops().iter().find(|crop| crop.id.0 == id).unwrap();
        let soil = crop
            .soil
            .as_ref()
            .is_some_and(|soil| soil.row.is_some() && soil.least.as_ref().unwrap().mark == Mark::StandIn);
        let water = crop
            .water_use
            .as_ref()
            .is_some_and(|water| water.middle.mark == Mark::StandIn);
        let roots = crop
            .roots
            .as_ref()
            .is_some_and(|roots| roots.effective.mark == Mark::StandIn);
        (soil, water, roots)
    };
    // Crops that FAO-56 does not list by name.
    for id in [
        "okra",
        "kale",
        "collard",
        "mustard",
        "kohlrabi",
        "cabbage_chinese",
        "chard",
        "endive",
        "leek",
        "chives",
        "parsley",
        "basil",
        "dill",
        "cilantro",
        "salsify",
        "tomatillo",
    ] {
        let (_, water, roots) = stands_in(id);
        assert!(water && roots, "{id}");
    }
    assert_eq!(stands_in("rhubarb"), (false, true, false));
    // Its lines in the table are its own.
    for id in ["tomato", "sweet_corn", "potato", "cabbage", "carrot"] {
        assert_eq!(stands_in(id), (false, false, false), "{id}");
    }
    // Crops whose soil temperatures are those of another.
    for id in [
        "broccoli",
        "kale",
        "leek",
        "endive",
        "edamame",
        "bean_broad",
        "mustard",
        "celeriac",
    ] {
        assert!(stands_in(id).0, "{id}");
    }
    // Outside of soil, water and roots, where the row is named, a note says what stands in.
    for (id, words) in [
        ("honeydew", "muskmelon"),
        ("onion_green", "bulb onions"),
        ("popcorn", "sweet corn"),
        ("field_corn", "sweet corn"),
    ] {
        let crop = Catalog::built_in().crops().iter().find(|crop| crop.id.0 == id).unwrap();
        assert!(
            crop.notes
                .iter()
                .any(|note| note.mark == Mark::StandIn && note.value.contains(words)),
            "{id}"
        );
    }
}
