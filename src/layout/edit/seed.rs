//! Edits of the seed shelf, of packets, and of the grower's own crops and cultivars.

use std::sync::Arc;

use super::{EditError, fresh_id, replace, sound, tidy};
use crate::catalog::{Catalog, CropId};
use crate::layout::check_seed::{check_cultivar, check_lot, check_own_crop, check_packets, check_twice};
use crate::layout::document::Layout;
use crate::layout::ids::LotId;
use crate::layout::item::Item;
use crate::layout::own::{OwnCrop, OwnCultivar, OwnValues};
use crate::layout::shelf::{LotGermination, Packet, PacketList, SeedAmount, SeedLot, same_cultivar};

/// One change to the shelf, to packets, or to own crops and cultivars.
#[derive(Clone, Debug, PartialEq)]
pub enum SeedEdit {
    /// A new lot on the shelf; it gets the next id.
    AddLot(LotContents),
    /// A lot changed.
    SetLot(LotId, LotContents),
    /// A lot taken away.
    RemoveLot(LotId),
    /// What a supplier sells of a cultivar; an empty list takes it away.
    SetPackets {
        /// The crop.
        crop: CropId,
        /// The cultivar; empty for the crop without one.
        cultivar: String,
        /// The sizes.
        sizes: Vec<Packet>,
    },
    /// A new crop of the grower's own. Its id is made from its name.
    AddOwnCrop {
        /// The crop of the catalogue that it is based on.
        based_on: CropId,
        /// Its name, which no other crop has.
        name: String,
        /// What differs.
        values: OwnValues,
    },
    /// Another name or other values for a crop of the grower's own.
    SetOwnCrop {
        /// The crop.
        crop: CropId,
        /// Its name.
        name: String,
        /// What differs.
        values: OwnValues,
    },
    /// Own values over those of a crop of the catalogue; none at all gives the catalogue's back.
    SetOwnValues {
        /// The crop of the catalogue.
        crop: CropId,
        /// What differs.
        values: OwnValues,
    },
    /// A crop of the grower's own taken away; refused while a bed, a lot, packets or a cultivar name it.
    RemoveOwnCrop(CropId),
    /// A new cultivar.
    AddCultivar(OwnCultivar),
    /// A cultivar, known by its crop and name, becomes this. Beds, lots and packets that named it name it still.
    SetCultivar {
        /// The name it has.
        name: String,
        /// What it becomes; of the same crop.
        to: OwnCultivar,
    },
    /// A cultivar's own values taken away. Beds keep its name.
    RemoveCultivar {
        /// The crop it is of.
        crop: CropId,
        /// Its name.
        name: String,
    },
}

/// A lot without its id.
#[derive(Clone, Debug, PartialEq)]
pub struct LotContents {
    /// The crop.
    pub crop: CropId,
    /// The cultivar; may be empty.
    pub cultivar: String,
    /// The year on the tag, or that it was grown in.
    pub year: i16,
    /// How much is left.
    pub amount: SeedAmount,
    /// How much of it comes up.
    pub germination: LotGermination,
}

impl LotContents {
    fn with_id(&self, id: LotId) -> SeedLot {
        SeedLot {
            id,
            crop: self.crop.clone(),
            cultivar: tidy(&self.cultivar),
            year: self.year,
            amount: self.amount,
            germination: self.germination,
        }
    }
}

impl From<&SeedLot> for LotContents {
    fn from(lot: &SeedLot) -> Self {
        Self {
            crop: lot.crop.clone(),
            cultivar: lot.cultivar.clone(),
            year: lot.year,
            amount: lot.amount,
            germination: lot.germination,
        }
    }
}

/// Carries out one change.
pub(super) fn change(layout: &mut Layout, edit: &SeedEdit) -> Result<(), EditError> {
    match edit {
        SeedEdit::AddLot(contents) => {
            let lot = contents.with_id(LotId(fresh_id(layout)?));
            sound(check_lot(&lot))?;
            layout.lots.push(Arc::new(lot));
        }
        SeedEdit::SetLot(id, contents) => {
            let mut lots = layout.lots.iter_mut();
            let slot = lots.find(|lot| lot.id == *id).ok_or(EditError::Gone(Item::Lot(*id)))?;
            let lot = contents.with_id(*id);
            sound(check_lot(&lot))?;
            replace(slot, lot);
        }
        SeedEdit::RemoveLot(id) => {
            layout.lot(*id).ok_or(EditError::Gone(Item::Lot(*id)))?;
            layout.lots.retain(|lot| lot.id != *id);
        }
        SeedEdit::SetPackets { crop, cultivar, sizes } => set_packets(layout, crop, cultivar, sizes)?,
        SeedEdit::AddOwnCrop { based_on, name, values } => {
            let name = tidy(name);
            name_is_free(layout, &name, None)?;
            let crop = OwnCrop {
                id: free_crop_id(layout, &name),
                based_on: based_on.clone(),
                name,
                values: *values,
            };
            sound(check_own_crop(&crop))?;
            layout.own_crops.push(Arc::new(crop));
        }
        SeedEdit::SetOwnCrop { crop, name, values } => {
            let name = tidy(name);
            name_is_free(layout, &name, Some(crop))?;
            let slot = own_crop(layout, crop)?;
            let changed = OwnCrop {
                name,
                values: *values,
                ..slot.as_ref().clone()
            };
            sound(check_own_crop(&changed))?;
            replace(slot, changed);
        }
        SeedEdit::SetOwnValues { crop, values } => set_own_values(layout, crop, *values)?,
        SeedEdit::RemoveOwnCrop(crop) => remove_own_crop(layout, crop)?,
        SeedEdit::AddCultivar(cultivar) => {
            let cultivar = tidy_cultivar(cultivar);
            sound(check_cultivar(&cultivar))?;
            cultivar_is_free(layout, &cultivar, None)?;
            layout.cultivars.push(Arc::new(cultivar));
        }
        SeedEdit::SetCultivar { name, to } => set_cultivar(layout, name, to)?,
        SeedEdit::RemoveCultivar { crop, name } => {
            let place = place_of_cultivar(layout, crop, name)?;
            layout.cultivars.remove(place);
        }
    }
    sound(check_twice(layout).into_iter().map(|(problem, _)| problem).collect())
}

fn set_packets(layout: &mut Layout, crop: &CropId, cultivar: &str, sizes: &[Packet]) -> Result<(), EditError> {
    let is_it = |list: &PacketList| list.crop == *crop && same_cultivar(&list.cultivar, cultivar);
    if sizes.is_empty() {
        layout.packets.retain(|list| !is_it(list));
        return Ok(());
    }
    let list = PacketList {
        crop: crop.clone(),
        cultivar: tidy(cultivar),
        sizes: sizes.to_vec(),
    };
    sound(check_packets(&list))?;
    match layout.packets.iter_mut().find(|list| is_it(list)) {
        Some(slot) => replace(slot, list),
        None => layout.packets.push(Arc::new(list)),
    }
    Ok(())
}

fn set_own_values(layout: &mut Layout, crop: &CropId, values: OwnValues) -> Result<(), EditError> {
    if values.is_empty() {
        layout
            .own_crops
            .retain(|own| !(own.id == *crop && own.is_over_catalogue()));
        return Ok(());
    }
    let own = OwnCrop {
        id: crop.clone(),
        based_on: crop.clone(),
        name: String::new(),
        values,
    };
    sound(check_own_crop(&own))?;
    match layout.own_crops.iter_mut().find(|own| own.id == *crop) {
        // A crop of the grower's own keeps what it is based on and its name.
        Some(slot) => {
            let changed = OwnCrop {
                values,
                ..slot.as_ref().clone()
            };
            replace(slot, changed);
        }
        None => layout.own_crops.push(Arc::new(own)),
    }
    Ok(())
}

fn remove_own_crop(layout: &mut Layout, crop: &CropId) -> Result<(), EditError> {
    let own = own_crop(layout, crop)?.clone();
    if !own.is_over_catalogue() {
        let planted = layout.beds.iter().find(|bed| {
            let planting = bed.planting.as_ref();
            planting.is_some_and(|planting| planting.crop == *crop)
        });
        let by = planted
            .map(|bed| bed.name.clone())
            .or_else(|| {
                let lot = layout.lots.iter().find(|lot| lot.crop == *crop);
                lot.map(|lot| layout.name_of(Item::Lot(lot.id)))
            })
            .or_else(|| {
                let packets = layout.packets.iter().any(|list| list.crop == *crop);
                packets.then(|| "a list of packets".to_owned())
            })
            .or_else(|| {
                let cultivar = layout.cultivars.iter().find(|cultivar| cultivar.crop == *crop);
                cultivar.map(|cultivar| format!("the cultivar {}", cultivar.name))
            });
        if let Some(by) = by {
            return Err(EditError::StillNamed {
                name: own.name.clone(),
                by,
            });
        }
    }
    layout.own_crops.retain(|own| own.id != *crop);
    Ok(())
}

/// Changes a cultivar, and its name wherever it stands.
fn set_cultivar(layout: &mut Layout, name: &str, to: &OwnCultivar) -> Result<(), EditError> {
    let to = tidy_cultivar(to);
    let place = place_of_cultivar(layout, &to.crop, name)?;
    sound(check_cultivar(&to))?;
    cultivar_is_free(layout, &to, Some(place))?;
    let (crop, new) = (to.crop.clone(), to.name.clone());
    if let Some(slot) = layout.cultivars.get_mut(place) {
        replace(slot, to);
    }
    for slot in &mut layout.beds {
        let planting = slot.planting.as_ref();
        if planting.is_some_and(|planting| planting.crop == crop && same_cultivar(&planting.cultivar, name)) {
            let mut bed = slot.as_ref().clone();
            if let Some(planting) = &mut bed.planting {
                planting.cultivar.clone_from(&new);
            }
            replace(slot, bed);
        }
    }
    for slot in &mut layout.lots {
        if slot.crop == crop && same_cultivar(&slot.cultivar, name) {
            let cultivar = new.clone();
            let lot = SeedLot {
                cultivar,
                ..slot.as_ref().clone()
            };
            replace(slot, lot);
        }
    }
    for slot in &mut layout.packets {
        if slot.crop == crop && same_cultivar(&slot.cultivar, name) {
            let cultivar = new.clone();
            let list = PacketList {
                cultivar,
                ..slot.as_ref().clone()
            };
            replace(slot, list);
        }
    }
    Ok(())
}

fn tidy_cultivar(cultivar: &OwnCultivar) -> OwnCultivar {
    OwnCultivar {
        name: tidy(&cultivar.name),
        ..cultivar.clone()
    }
}

fn own_crop<'a>(layout: &'a mut Layout, crop: &CropId) -> Result<&'a mut Arc<OwnCrop>, EditError> {
    layout
        .own_crops
        .iter_mut()
        .find(|own| own.id == *crop)
        .ok_or_else(|| EditError::NoneOfItsOwn(format!("crop \"{}\"", crop.0)))
}

fn place_of_cultivar(layout: &Layout, crop: &CropId, name: &str) -> Result<usize, EditError> {
    layout
        .cultivars
        .iter()
        .position(|cultivar| cultivar.crop == *crop && same_cultivar(&cultivar.name, name))
        .ok_or_else(|| EditError::NoneOfItsOwn(format!("cultivar \"{name}\"")))
}

/// Refuses a name that another crop of the catalogue or of the layout has.
fn name_is_free(layout: &Layout, name: &str, but: Option<&CropId>) -> Result<(), EditError> {
    // No name at all is refused where names are checked.
    let taken = |id: &CropId, other: &str| {
        !name.is_empty() && Some(id) != but && other.trim().to_lowercase() == name.to_lowercase()
    };
    let in_catalogue = Catalog::built_in()
        .crops()
        .iter()
        .any(|crop| taken(&crop.id, &crop.name));
    if in_catalogue || layout.own_crops.iter().any(|crop| taken(&crop.id, &crop.name)) {
        return Err(EditError::NameTaken(name.to_owned()));
    }
    Ok(())
}

/// Refuses a name that another cultivar of the crop has; `but` is the cultivar that is to have it.
fn cultivar_is_free(layout: &Layout, cultivar: &OwnCultivar, but: Option<usize>) -> Result<(), EditError> {
    let mut others = layout.cultivars.iter().enumerate();
    let taken = others.any(|(place, other)| {
        Some(place) != but && other.crop == cultivar.crop && same_cultivar(&other.name, &cultivar.name)
    });
    if taken {
        return Err(EditError::CultivarTaken {
            crop: layout.crop_name(&cultivar.crop).to_owned(),
            name: cultivar.name.clone(),
        });
    }
    Ok(())
}

/// An id for an own crop: its name in small letters, with a number where that is taken.
fn free_crop_id(layout: &Layout, name: &str) -> CropId {
    let is_taken = |id: &str| {
        let mut named_by_beds = layout.beds.iter().filter_map(|bed| bed.planting.as_ref());
        Catalog::built_in().crop(&CropId(id.to_owned())).is_some()
            || layout.own_crops.iter().any(|crop| crop.id.0 == id)
            || named_by_beds.any(|planting| planting.crop.0 == id)
    };
    CropId(super::free_id(name, is_taken))
}

impl SeedEdit {
    /// The name of the step.
    pub(super) fn label(&self, layout: &Layout) -> String {
        let of = |crop: &CropId| layout.crop_name(crop).to_owned();
        let cultivar_of = |crop: &CropId, cultivar: &str| match cultivar.trim() {
            "" => of(crop),
            cultivar => cultivar.to_owned(),
        };
        match self {
            Self::AddLot(lot) => format!("shelve {}", cultivar_of(&lot.crop, &lot.cultivar)),
            Self::SetLot(id, _) => format!("change {}", layout.name_of(Item::Lot(*id))),
            Self::RemoveLot(id) => format!("remove {}", layout.name_of(Item::Lot(*id))),
            Self::SetPackets { crop, cultivar, .. } => format!("set the packets of {}", cultivar_of(crop, cultivar)),
            Self::AddOwnCrop { name, .. } => format!("add {}", name.trim()),
            Self::SetOwnCrop { crop, .. } => format!("change {}", of(crop)),
            Self::SetOwnValues { crop, .. } => format!("set own values of {}", of(crop)),
            Self::RemoveOwnCrop(crop) => format!("remove {}", of(crop)),
            Self::AddCultivar(cultivar) => format!("add {}", cultivar.name.trim()),
            Self::SetCultivar { name, .. } => format!("change {}", name.trim()),
            Self::RemoveCultivar { name, .. } => format!("remove {}", name.trim()),
        }
    }
}
