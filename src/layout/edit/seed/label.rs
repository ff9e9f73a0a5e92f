//! What a step is called that changed the shelf, packets, or own crops.

use super::SeedEdit;
use crate::catalog::CropId;
use crate::layout::document::Layout;
use crate::layout::item::Item;

impl SeedEdit {
    /// The name of the step.
    pub(in crate::layout::edit) fn label(&self, layout: &Layout) -> String {
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
            Self::SetOwnCrop { crop, .. } | Self::SetOwnKind { crop, .. } => format!("change {}", of(crop)),
            Self::SetOwnValues { crop, .. } => format!("set own values of {}", of(crop)),
            Self::RemoveOwnCrop(crop) => format!("remove {}", of(crop)),
            Self::AddCultivar(cultivar) => format!("add {}", cultivar.name.trim()),
            Self::SetCultivar { name, .. } => format!("change {}", name.trim()),
            Self::RemoveCultivar { name, .. } => format!("remove {}", name.trim()),
        }
    }
}
