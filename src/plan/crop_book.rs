//! The crop book of a layout: the catalogue, the grower's own crops and cultivars, and own values over the rest.

use std::collections::BTreeMap;
use std::sync::Arc;

use crate::catalog::{Catalog, Crop, CropId, Ends, Mark, RowAmount, RowMeasure, SourceKey, Sourced};
use crate::layout::{Layout, OwnCrop, OwnCultivar, OwnHarvest, OwnValues, cultivar_key};

/// All crops that a layout can name, with the grower's own values in them. Cheap to make where there are none, and
/// cheap to bring up to date.
#[derive(Clone, Debug)]
pub struct CropBook {
    catalog: &'static Catalog,
    /// What the own entries were made from.
    made_from: (Vec<Arc<OwnCrop>>, Vec<Arc<OwnCultivar>>),
    crops: BTreeMap<CropId, Arc<Crop>>,
    cultivars: BTreeMap<(CropId, String), Arc<Crop>>,
}

impl Default for CropBook {
    fn default() -> Self {
        Self {
            catalog: Catalog::built_in(),
            made_from: Default::default(),
            crops: BTreeMap::new(),
            cultivars: BTreeMap::new(),
        }
    }
}

impl CropBook {
    /// The crop book of a layout.
    pub fn of(layout: &Layout) -> Self {
        let mut book = Self::default();
        book.update(layout);
        book
    }

    /// Brings it up to date with a layout. An entry whose values are as before stays the very same. Whether anything
    /// was done.
    pub(super) fn update(&mut self, layout: &Layout) -> bool {
        if same(&self.made_from.0, &layout.own_crops) && same(&self.made_from.1, &layout.cultivars) {
            return false;
        }
        self.made_from = (layout.own_crops.clone(), layout.cultivars.clone());
        let before = std::mem::take(&mut self.crops);
        for own in &layout.own_crops {
            let Some(base) = self.catalog.crop(&own.based_on) else {
                continue;
            };
            let mut crop = with_own(base, &own.values);
            crop.id = own.id.clone();
            if !own.name.trim().is_empty() {
                own.name.trim().clone_into(&mut crop.name);
            }
            let crop = kept(before.get(&own.id), crop);
            self.crops.insert(own.id.clone(), crop);
        }
        let before = std::mem::take(&mut self.cultivars);
        for own in &layout.cultivars {
            let Some(base) = self.crop(&own.crop) else { continue };
            let key = (own.crop.clone(), cultivar_key(&own.name));
            let crop = kept(before.get(&key), with_own(base, &own.values));
            self.cultivars.insert(key, crop);
        }
        true
    }

    /// The grower's own crops that are based on one that the catalogue has not, so that nothing of them is in the book.
    pub(super) fn without_base(&self) -> impl Iterator<Item = &OwnCrop> {
        let own = self.made_from.0.iter().map(Arc::as_ref);
        own.filter(|own| self.catalog.crop(&own.based_on).is_none())
    }

    /// The catalogue that it starts from.
    pub const fn catalog(&self) -> &'static Catalog {
        self.catalog
    }

    /// The crop of this id, with the grower's own values in it.
    pub fn crop(&self, id: &CropId) -> Option<&Crop> {
        match self.crops.get(id) {
            Some(own) => Some(own),
            None => self.catalog.crop(id),
        }
    }

    /// A cultivar of a crop: the crop, with the cultivar's own values where the grower gave any. A cultivar that the
    /// book does not know is the crop itself.
    pub fn cultivar(&self, crop: &CropId, cultivar: &str) -> Option<&Crop> {
        match self.own(crop, cultivar) {
            Some(own) => Some(own),
            None => self.catalog.crop(crop),
        }
    }

    /// The own entry behind a cultivar of a crop; `None` where the catalogue alone speaks.
    pub(super) fn own(&self, crop: &CropId, cultivar: &str) -> Option<&Arc<Crop>> {
        if self.crops.is_empty() && self.cultivars.is_empty() {
            return None;
        }
        let of_cultivar = if self.cultivars.is_empty() || cultivar.is_empty() {
            None
        } else {
            self.cultivars.get(&(crop.clone(), cultivar_key(cultivar)))
        };
        of_cultivar.or_else(|| self.crops.get(crop))
    }

    /// Whether a crop is one of the grower's own, not of the catalogue.
    pub fn is_own(&self, id: &CropId) -> bool {
        self.crops.contains_key(id) && self.catalog.crop(id).is_none()
    }

    /// Every crop, by name.
    pub fn crops(&self) -> Vec<&Crop> {
        let of_catalogue = self.catalog.crops().iter().map(|crop| match self.crops.get(&crop.id) {
            Some(own) => own.as_ref(),
            None => crop,
        });
        let own = self
            .crops
            .values()
            .map(Arc::as_ref)
            .filter(|crop| self.is_own(&crop.id));
        let mut crops: Vec<&Crop> = of_catalogue.chain(own).collect();
        crops.sort_by(|a, b| a.name.cmp(&b.name).then_with(|| a.id.cmp(&b.id)));
        crops
    }

    /// Crops with all the words typed somewhere in one of their names, the botanical one, their family, or the name of one
    /// of their cultivars, by name; upper and lower case are the same.
    pub fn find(&self, part: &str) -> Vec<&Crop> {
        let words: Vec<String> = part.split_whitespace().map(str::to_lowercase).collect();
        let mut crops = self.crops();
        crops.retain(|crop| {
            let mut text = format!("{} {} {}", crop.name, crop.botanical, crop.family);
            for other in &crop.also_called {
                text.push(' ');
                text.push_str(other);
            }
            for cultivar in self.cultivars_of(&crop.id) {
                text.push(' ');
                text.push_str(&cultivar.name);
            }
            let text = text.to_lowercase();
            words.iter().all(|word| text.contains(word))
        });
        crops
    }

    /// The grower's own cultivars of a crop, in the layout's order.
    pub fn cultivars_of<'a>(&'a self, crop: &'a CropId) -> impl Iterator<Item = &'a OwnCultivar> {
        let all = self.made_from.1.iter().map(Arc::as_ref);
        all.filter(move |cultivar| cultivar.crop == *crop)
    }
}

/// Whether two lists hold the very same things.
pub(super) fn same<T>(one: &[Arc<T>], other: &[Arc<T>]) -> bool {
    one.len() == other.len() && one.iter().zip(other).all(|(one, other)| Arc::ptr_eq(one, other))
}

/// The entry from before, where it is equal to the new one.
fn kept(before: Option<&Arc<Crop>>, new: Crop) -> Arc<Crop> {
    match before {
        Some(before) if **before == new => before.clone(),
        _ => Arc::new(new),
    }
}

/// A crop with other values in it, each marked as the grower's own.
fn with_own(base: &Crop, values: &OwnValues) -> Crop {
    let mut crop = base.clone();
    if let Some(spacing) = values.row_spacing {
        crop.row_spacing = both(spacing);
    }
    if let Some(spacing) = values.in_row_watered {
        crop.in_row_watered = own(spacing);
    }
    if let Some(spacing) = values.in_row_dry {
        crop.in_row_dry = own(spacing);
    }
    if let Some(depth) = values.depth {
        crop.depth = both(depth);
    }
    if let Some(weight) = values.seed_weight {
        crop.seed_weight = Some(own(weight));
    }
    if let Some(method) = values.method {
        crop.method = own(method);
    }
    if let Some(seeds) = values.seeds_per_plant {
        crop.seeds_per_plant = Some(own(seeds));
    }
    if let Some(height) = values.height {
        crop.height = Some(own(height));
        crop.height_range = Some(both(height));
    }
    if let Some(part) = values.germination {
        crop.germination = Some(own(part));
    }
    if let Some(days) = values.days_to_harvest {
        crop.days_to_harvest = Some(both(days));
    }
    if let Some(harvest) = values.harvest {
        crop.harvest = Some(own_harvest(base.harvest.as_ref(), harvest));
    }
    if let Some(nitrogen) = values.season_nitrogen {
        crop.season_nitrogen = Some(own(nitrogen));
    }
    crop
}

/// What the grower harvests, of what the catalogue weighs or counts where it weighs or counts as the grower does.
fn own_harvest(base: Option<&RowAmount>, harvest: OwnHarvest) -> RowAmount {
    let (measure, or_else) = match harvest {
        OwnHarvest::Weight(rate) => (RowMeasure::Weight(both(rate)), "produce"),
        OwnHarvest::Number(number) => (RowMeasure::Number(both(number)), "pieces"),
    };
    let alike = base.filter(|base| std::mem::discriminant(&base.measure) == std::mem::discriminant(&measure));
    RowAmount {
        what: alike.map_or_else(|| or_else.to_owned(), |base| base.what.clone()),
        measure,
    }
}

fn own<T>(value: T) -> Sourced<T> {
    Sourced {
        value,
        sources: vec![SourceKey(GROWER.to_owned())],
        mark: Mark::Grower,
    }
}

fn both<T: Copy>(value: T) -> Ends<T> {
    Ends {
        low: own(value),
        high: own(value),
    }
}

/// The key of values of the grower's own; no source of the catalogue has it.
const GROWER: &str = "GROWER";
