//! The crop book of a layout: the catalogue, the grower's own crops and cultivars, and own values over the rest.

mod own_values;

use std::borrow::Cow;
use std::collections::BTreeMap;
use std::sync::Arc;

use own_values::{blank, with_own};

use crate::catalog::{Catalog, Crop, CropId};
use crate::layout::{Layout, OwnCrop, OwnCultivar, OwnStart, cultivar_key};

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
            let Some(base) = self.under(own) else {
                continue;
            };
            let mut crop = with_own(&base, &own.values);
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
    pub(super) fn without_base(&self) -> impl Iterator<Item = (&OwnCrop, &CropId)> {
        let own = self.made_from.0.iter();
        let based = own.filter_map(|own| Some((own.as_ref(), own.based_on()?)));
        based.filter(|(_, base)| self.catalog.crop(base).is_none())
    }

    /// What stands under the values of a crop of the grower's own: the crop of the catalogue that it is based on, or one
    /// without any value where it starts from nothing. `None` where the catalogue has no such crop.
    pub fn under(&self, own: &OwnCrop) -> Option<Cow<'static, Crop>> {
        match &own.start {
            OwnStart::Crop(base) => self.catalog.crop(base).map(Cow::Borrowed),
            OwnStart::Blank(kind) => Some(Cow::Owned(blank(own, kind))),
        }
    }

    /// Whether a crop is one of the grower's own that starts from nothing, so that what it does not say is not known.
    pub fn starts_from_nothing(&self, id: &CropId) -> bool {
        let mut own = self.made_from.0.iter();
        own.any(|own| own.id == *id && own.based_on().is_none())
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
