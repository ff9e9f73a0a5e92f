//! What crops are grouped by: family and season.

use std::collections::BTreeSet;

use quillet::catalog::{Catalog, Season};

#[test]
fn families_are_written_alike() {
    let crops = Catalog::built_in().crops();
    let families: BTreeSet<&str> = crops.iter().map(|crop| crop.family.as_str()).collect();
    assert!(families.contains("Solanaceae"));
    // A slip of the pen would make a family of its own. All names of plant families end so (International Code of
    // Nomenclature for algae, fungi, and plants, article 18, from memory).
    assert!(families.iter().all(|family| family.ends_with("aceae")), "{families:?}");
    let grasses: Vec<&str> = crops
        .iter()
        .filter(|crop| crop.family == "Poaceae")
        .map(|crop| crop.id.0.as_str())
        .collect();
    assert_eq!(grasses, ["field_corn", "popcorn", "sweet_corn", "sorghum_sweet"]);
}

#[test]
fn seasons_follow_hardiness() {
    let of = |season: Season| -> Vec<&str> {
        let crops = Catalog::built_in().crops().iter();
        crops
            .filter(|crop| crop.season() == Some(season))
            .map(|crop| crop.id.0.as_str())
            .collect()
    };
    let (cool, warm) = (of(Season::Cool), of(Season::Warm));
    // Texas Vegetable Grower's Handbook, Table 1: cabbage is hardy, lettuce semi-hardy, okra very tender.
    assert!(cool.contains(&"cabbage") && cool.contains(&"lettuce_head") && !cool.contains(&"okra"));
    assert!(warm.contains(&"okra") && warm.contains(&"tomato"));
    assert_eq!(cool.len() + warm.len(), Catalog::built_in().crops().len());
}
