//! What the grower calls a thing, and whether it is still there.

use super::bed::BedGround;
use super::document::Layout;
use super::item::Item;
use super::shelf::SeedLot;
use crate::catalog::{Catalog, CropId, MaterialId};

impl Layout {
    /// Whether the thing is in the layout. Rows follow from a bed: a row is there as long as its bed is.
    pub fn has(&self, item: Item) -> bool {
        match item {
            Item::Layout => true,
            Item::Plot(plot) => self.plot(plot).is_some(),
            Item::Corner(plot, corner) | Item::Side(plot, corner) => {
                self.plot(plot).is_some_and(|plot| corner < plot.outline.len())
            }
            Item::Obstacle(plot, obstacle) => self.plot(plot).is_some_and(|plot| plot.obstacle(obstacle).is_some()),
            Item::Bed(bed) | Item::Row(bed, _) => self.bed(bed).is_some(),
            Item::BedCorner(bed, corner) => self.bed(bed).is_some_and(|bed| match &bed.ground {
                BedGround::WholePlot => false,
                BedGround::Corners(corners) => corner < corners.len(),
            }),
            Item::Dressing(bed, dressing) => self.bed(bed).is_some_and(|bed| bed.dressing(dressing).is_some()),
            Item::Note(note) => self.note(note).is_some(),
            Item::Lot(lot) => self.lot(lot).is_some(),
            Item::Shed(kept) => self.shed_entry(kept).is_some(),
        }
    }

    /// What people call a crop: the grower's own name, the catalogue's, or at last its id.
    pub(super) fn crop_name<'a>(&'a self, crop: &'a CropId) -> &'a str {
        let own = self.own_crops.iter().find(|own| own.id == *crop);
        own.map(|own| own.name.as_str())
            .filter(|name| !name.is_empty())
            .or_else(|| Catalog::built_in().crop(crop).map(|crop| crop.name.as_str()))
            .unwrap_or(&crop.0)
    }

    /// What people call a material: the grower's own name, the catalogue's, or at last its id.
    pub fn material_name<'a>(&'a self, material: &'a MaterialId) -> &'a str {
        let own = self.shed_material(material).map(|kept| kept.label.name.as_str());
        own.filter(|name| !name.is_empty())
            .or_else(|| {
                Catalog::built_in()
                    .material(material)
                    .map(|material| material.name.as_str())
            })
            .unwrap_or(&material.0)
    }

    /// What the grower calls the thing: "Lower plot", "row 4 of Corn block". Corners and sides count from 1. A thing
    /// that is not there has a plain word for its kind.
    pub fn name_of(&self, item: Item) -> String {
        let plot_name = |id| self.plot(id).map_or("a plot", |plot| plot.name.as_str());
        let bed_name = |id| self.bed(id).map_or("a bed", |bed| bed.name.as_str());
        match item {
            Item::Layout => self.name.clone(),
            Item::Plot(plot) => plot_name(plot).to_owned(),
            Item::Corner(plot, corner) => format!("corner {} of {}", corner.saturating_add(1), plot_name(plot)),
            Item::Side(plot, side) => format!("side {} of {}", side.saturating_add(1), plot_name(plot)),
            Item::Obstacle(plot, id) => {
                let obstacle = self.plot(plot).and_then(|plot| plot.obstacle(id));
                obstacle.map_or_else(|| "something in the way".to_owned(), |obstacle| obstacle.name.clone())
            }
            Item::Bed(bed) => bed_name(bed).to_owned(),
            Item::BedCorner(bed, corner) => format!("corner {} of {}", corner.saturating_add(1), bed_name(bed)),
            Item::Row(bed, row) => format!("row {row} of {}", bed_name(bed)),
            Item::Dressing(bed, id) => {
                let dressing = self.bed(bed).and_then(|bed| bed.dressing(id));
                let name = dressing.map_or("a dressing", |dressing| dressing.name.as_str());
                format!("{name} of {}", bed_name(bed))
            }
            Item::Note(_) => "a note".to_owned(),
            Item::Shed(id) => self.shed_entry(id).map_or_else(
                || "a material".to_owned(),
                |kept| self.material_name(&kept.material).to_owned(),
            ),
            Item::Lot(id) => self
                .lot(id)
                .map_or_else(|| "a lot of seed".to_owned(), |lot| lot.name(self.crop_name(&lot.crop))),
        }
    }
}

/// A crop with its cultivar: "Sweet corn, Early Amber"; the crop alone where no cultivar is named.
pub fn with_cultivar(crop: &str, cultivar: &str) -> String {
    match cultivar.trim() {
        "" => crop.to_owned(),
        cultivar => format!("{crop}, {cultivar}"),
    }
}

impl SeedLot {
    /// The lot in words: "Early Amber of 2025", or "Sweet corn of 2025" without a cultivar.
    pub fn name(&self, crop: &str) -> String {
        match self.cultivar.trim() {
            "" => format!("{crop} of {}", self.year),
            cultivar => format!("{cultivar} of {}", self.year),
        }
    }
}
