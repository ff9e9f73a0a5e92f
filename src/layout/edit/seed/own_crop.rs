//! Crops of the grower's own, and own values over the catalogue's.

use std::sync::Arc;

use crate::catalog::{Catalog, CropId};
use crate::layout::check_seed::check_own_crop;
use crate::layout::document::Layout;
use crate::layout::edit::{EditError, free_id, replace, sound, tidy};
use crate::layout::item::Item;
use crate::layout::own::{Kind, OwnCrop, OwnStart, OwnValues};

/// Adds a crop; its id is made from its name.
pub(super) fn add(layout: &mut Layout, start: &OwnStart, name: &str, values: &OwnValues) -> Result<(), EditError> {
    let name = tidy(name);
    name_is_free(layout, &name, None)?;
    let crop = OwnCrop {
        id: free_crop_id(layout, &name),
        start: tidy_start(start),
        name,
        values: *values,
    };
    sound(check_own_crop(&crop))?;
    layout.own_crops.push(Arc::new(crop));
    Ok(())
}

/// Gives a crop another name and other values.
pub(super) fn set(layout: &mut Layout, crop: &CropId, name: &str, values: &OwnValues) -> Result<(), EditError> {
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
    Ok(())
}

/// Gives a crop that starts from nothing another botanical name and family.
pub(super) fn set_kind(layout: &mut Layout, crop: &CropId, kind: &Kind) -> Result<(), EditError> {
    let slot = own_crop(layout, crop)?;
    if slot.based_on().is_some() {
        return Err(EditError::NoneOfItsOwn(format!(
            "crop \"{}\" that starts from nothing",
            crop.0
        )));
    }
    let changed = OwnCrop {
        start: tidy_start(&OwnStart::Blank(kind.clone())),
        ..slot.as_ref().clone()
    };
    sound(check_own_crop(&changed))?;
    replace(slot, changed);
    Ok(())
}

/// Puts own values over a crop of the catalogue; none at all gives the catalogue's back.
pub(super) fn set_values(layout: &mut Layout, crop: &CropId, values: OwnValues) -> Result<(), EditError> {
    if values.is_empty() {
        layout
            .own_crops
            .retain(|own| !(own.id == *crop && own.is_over_catalogue()));
        return Ok(());
    }
    let own = OwnCrop {
        id: crop.clone(),
        start: OwnStart::Crop(crop.clone()),
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
            sound(check_own_crop(&changed))?;
            replace(slot, changed);
        }
        None => layout.own_crops.push(Arc::new(own)),
    }
    Ok(())
}

/// Takes a crop away, unless something names it.
pub(super) fn remove(layout: &mut Layout, crop: &CropId) -> Result<(), EditError> {
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

fn own_crop<'a>(layout: &'a mut Layout, crop: &CropId) -> Result<&'a mut Arc<OwnCrop>, EditError> {
    layout
        .own_crops
        .iter_mut()
        .find(|own| own.id == *crop)
        .ok_or_else(|| EditError::NoneOfItsOwn(format!("crop \"{}\"", crop.0)))
}

fn tidy_start(start: &OwnStart) -> OwnStart {
    match start {
        OwnStart::Crop(crop) => OwnStart::Crop(crop.clone()),
        OwnStart::Blank(kind) => OwnStart::Blank(Kind {
            botanical: tidy(&kind.botanical),
            family: tidy(&kind.family),
        }),
    }
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

/// An id for an own crop: its name in small letters, with a number where that is taken.
fn free_crop_id(layout: &Layout, name: &str) -> CropId {
    let is_taken = |id: &str| {
        let mut named_by_beds = layout.beds.iter().filter_map(|bed| bed.planting.as_ref());
        Catalog::built_in().crop(&CropId(id.to_owned())).is_some()
            || layout.own_crops.iter().any(|crop| crop.id.0 == id)
            || named_by_beds.any(|planting| planting.crop.0 == id)
    };
    CropId(free_id(name, is_taken))
}
