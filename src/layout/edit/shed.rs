//! Edits of the fertilizer shed.

use std::sync::Arc;

use super::{EditError, fresh_id, replace, sound, tidy};
use crate::catalog::{Catalog, MaterialId};
use crate::layout::check_feeding::{check_material_twice, check_shed_material};
use crate::layout::document::Layout;
use crate::layout::ids::ShedId;
use crate::layout::item::Item;
use crate::layout::shed::{Label, ShedMaterial};

/// One change to the fertilizer shed.
#[derive(Clone, Debug, PartialEq)]
pub enum ShedEdit {
    /// A material of the grower's own, by its label. The id that dressings name it by is made from its name.
    AddOwn(Label),
    /// A material of the catalogue put into the shed, with what is known of the bag.
    Put(MaterialId, Label),
    /// What is known of a material in the shed changed.
    Set(ShedId, Label),
    /// A material taken out of the shed; one of the grower's own only when no dressing names it.
    Remove(ShedId),
}

/// Carries out one change.
pub(super) fn change(layout: &mut Layout, edit: &ShedEdit) -> Result<(), EditError> {
    match edit {
        ShedEdit::AddOwn(label) => {
            let label = tidy_label(label);
            name_is_free(layout, &label.name, None)?;
            let material = free_material_id(layout, &label.name);
            add(layout, material, label)?;
        }
        ShedEdit::Put(material, label) => add(layout, material.clone(), tidy_label(label))?,
        ShedEdit::Set(id, label) => {
            let label = tidy_label(label);
            name_is_free(layout, &label.name, Some(*id))?;
            let mut shed = layout.shed.iter_mut();
            let slot = shed
                .find(|kept| kept.id == *id)
                .ok_or(EditError::Gone(Item::Shed(*id)))?;
            let changed = ShedMaterial {
                label,
                ..slot.as_ref().clone()
            };
            sound(check_shed_material(&changed))?;
            replace(slot, changed);
        }
        ShedEdit::Remove(id) => {
            let kept = layout.shed_entry(*id).ok_or(EditError::Gone(Item::Shed(*id)))?;
            if let Some(by) = still_names(layout, &kept.material) {
                let name = kept.label.name.clone();
                return Err(EditError::StillNamed { name, by });
            }
            layout.shed.retain(|kept| kept.id != *id);
        }
    }
    sound(check_material_twice(layout))
}

fn add(layout: &mut Layout, material: MaterialId, label: Label) -> Result<(), EditError> {
    let kept = ShedMaterial {
        id: ShedId(fresh_id(layout)?),
        material,
        label,
    };
    sound(check_shed_material(&kept))?;
    layout.shed.push(Arc::new(kept));
    Ok(())
}

/// The bed whose dressing needs the shed to know a material.
fn still_names(layout: &Layout, material: &MaterialId) -> Option<String> {
    if Catalog::built_in().material(material).is_some() {
        return None;
    }
    let names = |dressing: &crate::layout::Dressing| dressing.material == *material;
    let bed = layout.beds.iter().find(|bed| bed.dressings.iter().any(names))?;
    Some(bed.name.clone())
}

fn tidy_label(label: &Label) -> Label {
    Label {
        name: tidy(&label.name),
        ..label.clone()
    }
}

/// Refuses a name that another material of the catalogue or of the shed has.
fn name_is_free(layout: &Layout, name: &str, but: Option<ShedId>) -> Result<(), EditError> {
    // No name at all is refused where names are checked.
    let same = |other: &str| !name.is_empty() && other.trim().to_lowercase() == name.to_lowercase();
    let own = but.and_then(|id| layout.shed_entry(id)).map(|kept| &kept.material);
    let mut catalogue = Catalog::built_in().materials().iter();
    let in_catalogue = catalogue.any(|material| Some(&material.id) != own && same(&material.name));
    if in_catalogue
        || layout
            .shed
            .iter()
            .any(|kept| Some(kept.id) != but && same(&kept.label.name))
    {
        return Err(EditError::MaterialTaken(name.to_owned()));
    }
    Ok(())
}

/// An id for an own material: its name in small letters, with a number where that is taken.
fn free_material_id(layout: &Layout, name: &str) -> MaterialId {
    let is_taken = |id: &str| {
        let id = MaterialId(id.to_owned());
        Catalog::built_in().material(&id).is_some()
            || layout.shed_material(&id).is_some()
            || still_names(layout, &id).is_some()
    };
    MaterialId(super::free_id(name, is_taken))
}

impl ShedEdit {
    /// The name of the step.
    pub(super) fn label(&self, layout: &Layout) -> String {
        match self {
            Self::AddOwn(label) => format!("add {}", label.name.trim()),
            Self::Put(material, _) => format!("put {} in the shed", layout.material_name(material)),
            Self::Set(id, _) => format!("change {}", layout.name_of(Item::Shed(*id))),
            Self::Remove(id) => format!("take {} out of the shed", layout.name_of(Item::Shed(*id))),
        }
    }
}
