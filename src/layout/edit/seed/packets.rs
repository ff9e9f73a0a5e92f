//! The sizes in which a supplier sells a cultivar.

use std::sync::Arc;

use crate::catalog::CropId;
use crate::layout::check_seed::check_packets;
use crate::layout::document::Layout;
use crate::layout::edit::{EditError, replace, sound, tidy};
use crate::layout::shelf::{Form, Packet, PacketList, same_cultivar};

/// Sets the sizes; none at all takes the list away.
pub(super) fn set(
    layout: &mut Layout,
    crop: &CropId,
    cultivar: &str,
    form: Option<Form>,
    sizes: &[Packet],
) -> Result<(), EditError> {
    let is_it = |list: &PacketList| list.crop == *crop && list.form == form && same_cultivar(&list.cultivar, cultivar);
    if sizes.is_empty() {
        layout.packets.retain(|list| !is_it(list));
        return Ok(());
    }
    let list = PacketList {
        crop: crop.clone(),
        cultivar: tidy(cultivar),
        form,
        sizes: sizes.to_vec(),
    };
    sound(check_packets(&list))?;
    match layout.packets.iter_mut().find(|list| is_it(list)) {
        Some(slot) => replace(slot, list),
        None => layout.packets.push(Arc::new(list)),
    }
    Ok(())
}
