//! Cultivars with values of the grower's own.

use std::sync::Arc;

use crate::catalog::CropId;
use crate::layout::check_seed::check_cultivar;
use crate::layout::document::Layout;
use crate::layout::edit::{EditError, replace, sound, tidy};
use crate::layout::own::OwnCultivar;
use crate::layout::shelf::{PacketList, SeedLot, same_cultivar};

/// Adds a cultivar, if its crop has none of that name.
pub(super) fn add(layout: &mut Layout, cultivar: &OwnCultivar) -> Result<(), EditError> {
    let cultivar = tidy_cultivar(cultivar);
    sound(check_cultivar(&cultivar))?;
    cultivar_is_free(layout, &cultivar, None)?;
    layout.cultivars.push(Arc::new(cultivar));
    Ok(())
}

/// Changes a cultivar, and its name wherever it stands.
pub(super) fn set(layout: &mut Layout, name: &str, to: &OwnCultivar) -> Result<(), EditError> {
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

/// Takes a cultivar's own values away.
pub(super) fn remove(layout: &mut Layout, crop: &CropId, name: &str) -> Result<(), EditError> {
    let place = place_of_cultivar(layout, crop, name)?;
    layout.cultivars.remove(place);
    Ok(())
}

fn tidy_cultivar(cultivar: &OwnCultivar) -> OwnCultivar {
    OwnCultivar {
        name: tidy(&cultivar.name),
        ..cultivar.clone()
    }
}

fn place_of_cultivar(layout: &Layout, crop: &CropId, name: &str) -> Result<usize, EditError> {
    layout
        .cultivars
        .iter()
        .position(|cultivar| cultivar.crop == *crop && same_cultivar(&cultivar.name, name))
        .ok_or_else(|| EditError::NoneOfItsOwn(format!("cultivar \"{name}\"")))
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
