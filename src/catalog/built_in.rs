//! The catalogue that comes with the program.

use std::sync::LazyLock;

use super::lookup::Catalog;
use super::texts::CatalogTexts;

/// A file of crops: its name for messages, and its text.
macro_rules! crop_file {
    ($name:literal) => {
        (
            concat!("crops/", $name),
            include_str!(concat!("../../assets/crops/", $name)),
        )
    };
}

/// The files of crops, by kinship. A new crop goes into one of them.
const CROP_FILES: [(&str, &str); 12] = [
    crop_file!("beans.ron"),
    crop_file!("beets_and_spinach.ron"),
    crop_file!("cabbages.ron"),
    crop_file!("carrots_and_celery.ron"),
    crop_file!("corn_and_sorghum.ron"),
    crop_file!("lettuce_and_sunflower.ron"),
    crop_file!("onions.ron"),
    crop_file!("others.ron"),
    crop_file!("peas_and_soybeans.ron"),
    crop_file!("squash_and_melons.ron"),
    crop_file!("tomatoes_and_potatoes.ron"),
    crop_file!("turnips_and_mustards.ron"),
];

static BUILT_IN: LazyLock<Catalog> = LazyLock::new(|| {
    Catalog::read_texts(&CatalogTexts {
        crops: &CROP_FILES,
        materials: include_str!("../../assets/materials.ron"),
        sources: include_str!("../../assets/sources.ron"),
        stages: include_str!("../../assets/feeding/stages.ron"),
        needs: include_str!("../../assets/feeding/needs.ron"),
        programmes: include_str!("../../assets/feeding/programmes.ron"),
        cautions: include_str!("../../assets/feeding/cautions.ron"),
    })
});

impl Catalog {
    /// The one that comes with the program, read on first use.
    pub fn built_in() -> &'static Self {
        &BUILT_IN
    }
}
