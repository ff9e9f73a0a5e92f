//! Edits of the seed shelf, of packets, and of the grower's own crops and cultivars: which there are, and who carries
//! each out.

mod as_meant;
mod cultivar;
mod label;
mod lot;
mod own_crop;
mod packets;

use super::{EditError, sound};
use crate::catalog::CropId;
use crate::layout::check_seed::check_twice;
use crate::layout::document::Layout;
use crate::layout::ids::LotId;
use crate::layout::own::{Kind, OwnCultivar, OwnStart, OwnValues};
use crate::layout::shelf::{Form, Packet};

pub use lot::LotContents;

/// One change to the shelf, to packets, or to own crops and cultivars.
///
/// Where a change makes a crop or cultivar usually lie on the shelf as another thing, sets instead of seed, say, then lots
/// and packets that name no form get the one that they have meant so far, and what one weighs is not known again unless the
/// same change says it.
#[derive(Clone, Debug, PartialEq)]
pub enum SeedEdit {
    /// A new lot on the shelf; it gets the next id.
    AddLot(LotContents),
    /// A lot changed.
    SetLot(LotId, LotContents),
    /// A lot taken away.
    RemoveLot(LotId),
    /// What a supplier sells of a cultivar in one form; an empty list takes it away.
    SetPackets {
        /// The crop.
        crop: CropId,
        /// The cultivar; empty for the crop without one.
        cultivar: String,
        /// The form it is sold in; `None` for the one in which the crop usually lies on the shelf.
        form: Option<Form>,
        /// The sizes.
        sizes: Vec<Packet>,
    },
    /// A new crop of the grower's own. Its id is made from its name.
    AddOwnCrop {
        /// What it starts from.
        start: OwnStart,
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
    /// Botanical name and family of a crop that starts from nothing.
    SetOwnKind {
        /// The crop.
        crop: CropId,
        /// What kind of plant it is.
        kind: Kind,
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

/// Carries out one change.
pub(super) fn change(layout: &mut Layout, edit: &SeedEdit) -> Result<(), EditError> {
    let before = as_meant::Meant::by(layout);
    match edit {
        SeedEdit::AddLot(contents) => lot::add(layout, contents)?,
        SeedEdit::SetLot(id, contents) => lot::set(layout, *id, contents)?,
        SeedEdit::RemoveLot(id) => lot::remove(layout, *id)?,
        SeedEdit::SetPackets {
            crop,
            cultivar,
            form,
            sizes,
        } => packets::set(layout, crop, cultivar, *form, sizes)?,
        SeedEdit::AddOwnCrop { start, name, values } => own_crop::add(layout, start, name, values)?,
        SeedEdit::SetOwnCrop { crop, name, values } => own_crop::set(layout, crop, name, values)?,
        SeedEdit::SetOwnKind { crop, kind } => own_crop::set_kind(layout, crop, kind)?,
        SeedEdit::SetOwnValues { crop, values } => own_crop::set_values(layout, crop, *values)?,
        SeedEdit::RemoveOwnCrop(crop) => own_crop::remove(layout, crop)?,
        SeedEdit::AddCultivar(cultivar) => cultivar::add(layout, cultivar)?,
        SeedEdit::SetCultivar { name, to } => cultivar::set(layout, name, to)?,
        SeedEdit::RemoveCultivar { crop, name } => cultivar::remove(layout, crop, name)?,
    }
    let is_of_crops = !matches!(
        edit,
        SeedEdit::AddLot(_) | SeedEdit::SetLot(..) | SeedEdit::RemoveLot(_) | SeedEdit::SetPackets { .. }
    );
    if is_of_crops {
        before.keep_in(layout);
    }
    sound(check_twice(layout).into_iter().map(|(problem, _)| problem).collect())
}
