//! Looking crops up by family, season and hardiness.

use quillet::catalog::{Catalog, Crop, Hardiness, Season};

fn ids<'a>(crops: impl Iterator<Item = &'a Crop>) -> Vec<&'a str> {
    crops.map(|crop| crop.id.0.as_str()).collect()
}

#[test]
fn families_are_in_order_and_hold_every_crop() {
    let catalog = Catalog::built_in();
    let families = catalog.families();
    assert!(families.is_sorted() && families.contains(&"Solanaceae"));
    let held: usize = families
        .iter()
        .map(|family| catalog.crops_of_family(family).count())
        .sum();
    assert_eq!(held, catalog.crops().len());
    assert_eq!(
        ids(catalog.crops_of_family("poaceae")),
        ["field_corn", "popcorn", "sweet_corn", "sorghum_sweet"]
    );
    assert_eq!(catalog.crops_of_family("Nonesuch").count(), 0);
}

#[test]
fn seasons_follow_hardiness() {
    let catalog = Catalog::built_in();
    let cool = ids(catalog.crops_of_season(Season::Cool));
    let warm = ids(catalog.crops_of_season(Season::Warm));
    // Texas Vegetable Grower's Handbook, Table 1: cabbage is hardy, lettuce semi-hardy, okra very tender.
    assert!(cool.contains(&"cabbage") && cool.contains(&"lettuce_head") && !cool.contains(&"okra"));
    assert!(warm.contains(&"okra") && warm.contains(&"tomato"));
    assert_eq!(cool.len() + warm.len(), catalog.crops().len());
    assert!(ids(catalog.crops_of_hardiness(Hardiness::VeryHardy)).contains(&"spinach"));
}
