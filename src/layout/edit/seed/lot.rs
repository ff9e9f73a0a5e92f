//! A lot put on the shelf, changed, and taken away.

use std::sync::Arc;

use crate::catalog::CropId;
use crate::layout::check_seed::check_lot;
use crate::layout::document::Layout;
use crate::layout::edit::{EditError, fresh_id, replace, sound, tidy};
use crate::layout::ids::LotId;
use crate::layout::item::Item;
use crate::layout::shelf::{Form, LotGermination, SeedAmount, SeedLot};

/// A lot without its id.
#[derive(Clone, Debug, PartialEq)]
pub struct LotContents {
    /// The crop.
    pub crop: CropId,
    /// The cultivar; may be empty.
    pub cultivar: String,
    /// Its form; `None` for the one in which the crop usually lies on the shelf.
    pub form: Option<Form>,
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
            form: self.form,
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
            form: lot.form,
            year: lot.year,
            amount: lot.amount,
            germination: lot.germination,
        }
    }
}

/// Puts a lot on the shelf; it gets the next id.
pub(super) fn add(layout: &mut Layout, contents: &LotContents) -> Result<(), EditError> {
    let lot = contents.with_id(LotId(fresh_id(layout)?));
    sound(check_lot(&lot))?;
    layout.lots.push(Arc::new(lot));
    Ok(())
}

/// Gives a lot other contents.
pub(super) fn set(layout: &mut Layout, id: LotId, contents: &LotContents) -> Result<(), EditError> {
    let mut lots = layout.lots.iter_mut();
    let slot = lots.find(|lot| lot.id == id).ok_or(EditError::Gone(Item::Lot(id)))?;
    let lot = contents.with_id(id);
    sound(check_lot(&lot))?;
    replace(slot, lot);
    Ok(())
}

/// Takes a lot away.
pub(super) fn remove(layout: &mut Layout, id: LotId) -> Result<(), EditError> {
    layout.lot(id).ok_or(EditError::Gone(Item::Lot(id)))?;
    layout.lots.retain(|lot| lot.id != id);
    Ok(())
}
