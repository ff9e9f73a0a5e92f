//! What lots, packets and own weights mean stays what it was, when the usual way of a crop changes under them.

use std::sync::Arc;

use crate::catalog::{Catalog, CropId, PlantingMethod};
use crate::layout::document::Layout;
use crate::layout::own::{OwnCrop, OwnCultivar};
use crate::layout::shelf::{Form, PacketList, SeedLot, same_cultivar};

/// The layout as it was before a change of crops: what its lots, packets and weights meant there.
pub(super) struct Meant {
    /// Lists of what is shared: nothing of it is copied.
    own_crops: Vec<Arc<OwnCrop>>,
    cultivars: Vec<Arc<OwnCultivar>>,
    lots: Vec<Arc<SeedLot>>,
    packets: Vec<Arc<PacketList>>,
}

impl Meant {
    /// What everything means in a layout.
    pub(super) fn by(layout: &Layout) -> Self {
        Self {
            own_crops: layout.own_crops.clone(),
            cultivars: layout.cultivars.clone(),
            lots: layout.lots.clone(),
            packets: layout.packets.clone(),
        }
    }

    /// Keeps it in the changed layout, whose lots and packets stand in the same order.
    pub(super) fn keep_in(&self, layout: &mut Layout) {
        self.keep_lots(layout);
        self.keep_packets(layout);
        self.forget_weights(layout);
    }

    fn keep_lots(&self, layout: &mut Layout) {
        let after = Self::by(layout);
        for (slot, before) in layout.lots.iter_mut().zip(&self.lots) {
            let meant = self.form(&before.crop, &before.cultivar);
            if slot.form.is_none() && meant != after.form(&slot.crop, &slot.cultivar) {
                Arc::make_mut(slot).form = Some(meant);
            }
        }
    }

    fn keep_packets(&self, layout: &mut Layout) {
        let after = Self::by(layout);
        let mut kept: Vec<Arc<PacketList>> = Vec::with_capacity(after.packets.len());
        for (list, before) in after.packets.iter().zip(&self.packets) {
            let meant = self.form(&before.crop, &before.cultivar);
            if list.form.is_some() || meant == after.form(&list.crop, &list.cultivar) {
                kept.push(list.clone());
                continue;
            }
            let is_named = |other: &Arc<PacketList>| {
                other.crop == list.crop && same_cultivar(&other.cultivar, &list.cultivar) && other.form == Some(meant)
            };
            // The list that names the form was bought from, and the other stood behind it.
            if !after.packets.iter().any(is_named) {
                let mut list = list.as_ref().clone();
                list.form = Some(meant);
                kept.push(Arc::new(list));
            }
        }
        layout.packets = kept;
    }

    /// The weight that a grower gave is that of what the crop lay on the shelf as when it was given.
    fn forget_weights(&self, layout: &mut Layout) {
        let after = Self::by(layout);
        let is_other = |crop: &CropId, cultivar: &str| match (self.method(crop, cultivar), after.method(crop, cultivar))
        {
            (Some(before), Some(now)) => !now.is_same_on_shelf(before),
            _ => false,
        };
        for slot in &mut layout.own_crops {
            let before = self.own_crops.iter().find(|own| own.id == slot.id);
            let weight = before.and_then(|own| own.values.seed_weight);
            if weight.is_some() && weight == slot.values.seed_weight && is_other(&slot.id, "") {
                Arc::make_mut(slot).values.seed_weight = None;
            }
        }
        for slot in &mut layout.cultivars {
            let before = self.cultivar(&slot.crop, &slot.name);
            let weight = before.and_then(|own| own.values.seed_weight);
            if weight.is_some() && weight == slot.values.seed_weight && is_other(&slot.crop, &slot.name) {
                Arc::make_mut(slot).values.seed_weight = None;
            }
        }
    }

    /// The form in which a cultivar usually lies on the shelf; seed where nothing is known of the crop.
    fn form(&self, crop: &CropId, cultivar: &str) -> Form {
        self.method(crop, cultivar).map_or(Form::Seed, Form::usual)
    }

    /// How a cultivar is usually put in the ground: as its own entry says, its crop's, or the catalogue's.
    fn method(&self, crop: &CropId, cultivar: &str) -> Option<PlantingMethod> {
        let own = self.own_crops.iter().find(|own| own.id == *crop);
        let of_cultivar = || self.cultivar(crop, cultivar)?.values.method;
        let of_crop = || own?.values.method;
        let of_catalogue = || {
            let based_on = own.map_or(Some(crop), |own| own.based_on())?;
            Catalog::built_in().crop(based_on).map(|crop| crop.method.value)
        };
        of_cultivar().or_else(of_crop).or_else(of_catalogue)
    }

    fn cultivar(&self, crop: &CropId, name: &str) -> Option<&OwnCultivar> {
        let mut own = self.cultivars.iter().map(Arc::as_ref);
        own.find(|own| own.crop == *crop && same_cultivar(&own.name, name))
    }
}
